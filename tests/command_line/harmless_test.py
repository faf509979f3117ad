"""Other people's text reaches the terminal, a table and a calendar as text and nothing else: what could steer a terminal, turn
a line round or begin one is put into every text of every example and of a log, and looked for in everything printed."""
import copy
import csv
import io
import json
import pathlib
import re
import tempfile

from camside_runner import SOURCE, camside, main, unittest

# ESC, BEL, CR, a control of Latin-1, marks of direction, separators of lines and paragraphs, a byte order mark.
HOSTILE = "\x1b[31m\a\r\x9b31m\u202e\u2066\u200f\u061c\u2028\u2029\ufeff\nFORGED"
HARM = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]")

FREE = ("name", "note", "by", "title", "what", "label", "part", "bike")


def texts_in(value, path=()):
    """Paths of all texts below."""
    if isinstance(value, str):
        yield path
    children = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, child in children:
        yield from texts_in(child, (*path, key))


def with_harm_at(value, path):
    changed = copy.deepcopy(value)
    place = changed
    for key in path[:-1]:
        place = place[key]
    place[path[-1]] = place[path[-1]] + HOSTILE
    return changed


class Harmless(unittest.TestCase):
    def setUp(self):
        temporary = tempfile.TemporaryDirectory()
        self.addCleanup(temporary.cleanup)
        self.top = pathlib.Path(temporary.name)

    def look(self, what, *args, stdin=b""):
        ran = camside(*args, stdin=stdin)
        self.assertIn(ran.code, (0, 1, 2), what)
        found = HARM.findall(ran.both.replace("\r\n", "\n"))
        self.assertEqual(found, [], f"{what}: {ran.both!r}")
        if "--csv" not in args:  # there it stands within quotes
            self.assertNotIn("\nFORGED", ran.both, f"{what}: a line was begun")
        return ran

    def test_the_text_of_a_measurement(self):
        named = 0
        for file in sorted((SOURCE / "examples").glob("*.json")):
            whole = json.loads(file.read_text(encoding="utf-8"))
            paths = list(texts_in(whole))
            names = [path for path in paths if path[-1] in FREE]  # what may be any text: such a file is solved
            named += len(names)
            changed = whole
            for path in names:
                changed = with_harm_at(changed, path)
            self.look(file.name, "solve", "--working", "-", stdin=json.dumps(changed).encode())
            self.look(file.name, "solve", "--json", "-", stdin=json.dumps(changed, ensure_ascii=False).encode())
            for path in paths:
                changed = with_harm_at(changed, path)
            self.look(file.name, "check", "-", stdin=json.dumps(changed).encode())
        self.assertGreater(named, 100)

    def test_a_log(self):
        bike = "Brindle" + HOSTILE
        log = self.top / "log"
        def add(*args):
            self.assertEqual(self.look(args, "log", "--folder", log, *args).code, 0)
        add("--new-bike", bike, "--set", "odometer_unit=mi", "--set", "engine=two cams, sprung chains")
        add("--bike", bike, "--add", "odometer", "--set", "reading=41,300 mi", "--note", HOSTILE, "--by", HOSTILE)
        add("--bike", bike, "--add", "rule", "--set", "item=Oil" + HOSTILE, "--set", "months=1", "--set", "why=" + HOSTILE)
        add("--bike", bike, "--add", "snooze", "--set", "item=Tensioner shoes", "--set", "until=2024-09-01", "--set", "reason=" + HOSTILE)
        add("--bike", bike, "--add", "service", "--set", "items=" + HOSTILE)
        for args in (("log",), ("log", "--bike", bike, "--all"), ("due", "--today", "2024-06-01"), ("export",),
                     ("due", "--today", "2024-06-01", "--calendar", "-"), ("export", "--csv", "--bike", bike),
                     ("log", "--bike", HOSTILE), ("log", "--take-back", HOSTILE), ("take-in", self.top / ("no" + HOSTILE[:8])),
                     ("due", self.top / ("no" + HOSTILE[:8])), ("due", "--bike", HOSTILE)):
            self.look(args, args[0], "--folder", log, *args[1:])
        exported = self.top / "exported\x1b\u202e.json"
        exported.write_text(self.look("export", "export", "--folder", log).out, encoding="utf-8")
        self.look("take-in", "take-in", "--folder", self.top / "other", exported)
        again = json.loads(self.look("again", "export", "--folder", self.top / "other").out)
        self.assertEqual(again, json.loads(exported.read_text(encoding="utf-8")))
        self.assertEqual(again["entries"][0]["entered"]["nickname"], bike, "what was entered stays as it was")

    def test_no_cell_of_a_table_is_a_formula(self):
        log = self.top / "log"
        camside("log", "--folder", log, "--new-bike", "Brindle")
        notes = [before + mark + "1+1" for mark in "=+-@＝＋－＠" for before in
                 ("", " ", "\n", "\r\n", "\t", "\u2028", "\u00a0", "\u3000", "\u200b", " \n\u2028 ", "\ufeff")]
        for note in notes:
            ran = camside("log", "--folder", log, "--bike", "Brindle", "--add", "note", "--set", "text=x", "--note", note)
            self.assertEqual(ran.code, 0, ran.both)
        rows = list(csv.reader(io.StringIO(self.look("csv", "export", "--folder", log, "--csv", "--bike", "Brindle").out)))
        at = rows[0].index("note")
        cells = [row[at] for row in rows[1:] if row[at]]
        self.assertEqual(len(cells), len(notes))
        for cell in cells:
            self.assertTrue(cell.startswith("'"), repr(cell))


main()
