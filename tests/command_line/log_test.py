"""camside log, merge and export on folders: two stores apart and together, damage, newer files, a full disk."""
import json
import os
import pathlib
import re
import shutil
import signal
import subprocess
import tempfile
import time

from camside_runner import PROGRAM, SOURCE, camside, main, unittest

FIXTURE = SOURCE / "tests" / "files" / "log_version_1.json"


class Folders(unittest.TestCase):
    def setUp(self):
        self.temporary = tempfile.TemporaryDirectory()
        self.addCleanup(self.temporary.cleanup)
        self.top = pathlib.Path(self.temporary.name)

    def run_on(self, name, *args, **more):
        return camside(args[0], "--folder", self.top / name, *args[1:], **more)

    def good(self, name, *args, **more):
        ran = self.run_on(name, *args, **more)
        self.assertEqual(ran.code, 0, ran.both)
        return ran.out

    def begin(self, name="a"):
        out = self.good(name, "log", "--new-bike", "Brindle", "--set", "model_year=2003", "--set", "odometer_unit=mi")
        return out.split()[-1]

    def add(self, name, *args):
        return self.good(name, "log", "--bike", "Brindle", *args).split()[-1]

    def file(self, name, content):
        path = self.top / name
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
        return path


class Log(Folders):
    def test_a_bike_from_its_first_entry_to_undo(self):
        self.assertIn("No bikes yet", self.good("a", "log"))
        self.begin()
        reading = self.add("a", "--add", "odometer", "--set", "reading=41,300 mi", "--by", "The Lantern Shed")
        self.add("a", "--add", "service", "--set", "items=Engine oil", "--set", "items=Filter", "--set", "proof=paper",
                 "--day", "2024-05-14")
        self.add("a", "--add", "finding", "--set", "part=Shoes", "--set", "grade=worn", "--set", "wear[0].what=Groove",
                 "--set", "wear[0].measured=0.012 in")
        self.assertIn("Brindle (2003) · 41,300 mi · 4 entries", self.good("a", "log"))
        listed = self.good("a", "log", "--bike", "Brindle")
        self.assertRegex(listed, "2024-05-14  Service: Engine oil; Filter · paper")
        better = self.add("a", "--correct", reading, "--set", "reading=41,303 mi")
        listed = self.good("a", "log", "--bike", "Brindle")
        self.assertIn("41,303 mi", listed)
        self.assertNotIn("41,300 mi", listed)
        self.assertIn("41,300 mi", self.good("a", "log", "--bike", "Brindle", "--all"))
        self.add("a", "--take-back", better)
        self.assertIn("41,300 mi", self.good("a", "log", "--bike", "Brindle"))
        gone = re.search(r"Finding.*id (\S+)", listed)[1]
        deletion = self.add("a", "--delete", gone)
        self.assertNotIn("Finding", self.good("a", "log", "--bike", "Brindle"))
        self.add("a", "--take-back", deletion)
        self.assertIn("Finding", self.good("a", "log", "--bike", "Brindle"))

    def test_measurements_go_into_the_log_as_they_were_entered(self):
        self.begin()
        example = SOURCE / "examples" / "whole_job.json"
        self.good("a", "log", "--bike", "Brindle", "--measurements", example)
        wanted = json.loads(example.read_text())["records"]
        kept = [e["record"] for e in json.loads(self.good("a", "export"))["entries"] if e["kind"] == "measurement"]
        order = lambda record: json.dumps(record, sort_keys=True)
        self.assertEqual(sorted(kept, key=order), sorted(wanted, key=order))

    def test_old_words_answer_with_the_new_one(self):
        self.begin()
        before = self.good("a", "export")
        for new, args in (("take-in", ["merge", FIXTURE]), ("--take-back", ["log", "--bike", "Brindle", "--undo", "x"])):
            with self.subTest(new):
                ran = self.run_on("a", *args)
                self.assertEqual(ran.code, 2, ran.both)
                self.assertIn(f"“{new}”", ran.err)
        self.assertEqual(self.good("a", "export"), before)

    def test_what_cannot_be_entered_is_refused_and_nothing_is_written(self):
        self.begin()
        before = self.good("a", "export")
        for args in (["--add", "odometer", "--set", "reading=41,300"], ["--add", "odometer"], ["--add", "gizmo"],
                     ["--add", "odometer", "--set", "reading=1 mi", "--day", "yesterday"],
                     ["--add", "odometer", "--set", "reeding=1 mi"], ["--correct", "nothing"], ["--delete", "nothing"],
                     ["--take-back", "nothing"], ["--measurements", FIXTURE], ["--measurements", "/nothing"]):
            with self.subTest(args):
                ran = self.run_on("a", "log", "--bike", "Brindle", *args)
                self.assertEqual(ran.code, 2, ran.both)
                self.assertIn("refusal", ran.err)
        self.assertEqual(self.run_on("a", "log", "--bike", "Nobody").code, 2)
        self.assertEqual(self.good("a", "export"), before)

    def test_two_bikes_of_one_name_need_the_id(self):
        first = self.begin()
        self.begin()
        self.assertIn("refusal 327", self.run_on("a", "log", "--bike", "Brindle").err)
        self.assertIn("Brindle", self.good("a", "log", "--bike", first))


class Merge(Folders):
    def test_two_stores_edited_apart_are_the_same_after_merging_in_both_orders(self):
        self.begin("a")
        reading = self.add("a", "--add", "odometer", "--set", "reading=41,300 mi")
        self.good("b", "take-in", self.file("first.json", self.good("a", "export")))
        self.assertEqual(self.good("b", "export"), self.good("a", "export"))
        self.add("a", "--correct", reading, "--set", "reading=41,030 mi")
        self.add("b", "--correct", reading, "--set", "reading=41,003 mi")
        self.add("b", "--add", "note", "--set", "text=Apart")
        a, b = self.file("a.json", self.good("a", "export")), self.file("b.json", self.good("b", "export"))
        preview = self.good("a", "take-in", "--preview", b)
        self.assertIn("2 new, 2 known, 0 replaced, 0 that differ from yours, 1 in two versions", preview)
        self.assertEqual(self.good("a", "export"), a.read_text())  # it only looked
        self.good("a", "take-in", b)
        self.good("b", "take-in", a)
        self.assertEqual(self.good("a", "export"), self.good("b", "export"))
        listed = self.run_on("a", "log", "--bike", "Brindle")
        self.assertIn("41,030 mi", listed.out)
        self.assertIn("41,003 mi", listed.out)
        self.assertEqual(listed.out.count("in two versions"), 2)
        self.assertIn("caution 308", listed.err)
        before = self.good("a", "export")
        self.assertIn("0 new", self.good("a", "take-in", a, b))
        self.assertEqual(self.good("a", "export"), before)
        # three files into a fresh store, in any order
        files = [a, b, self.file("c.json", before)]
        for name, order in (("x", files), ("y", files[::-1])):
            self.good(name, "take-in", *order)
            self.assertEqual(self.good(name, "export"), before)

    def test_export_import_export_is_byte_for_byte_the_same(self):
        self.good("a", "take-in", FIXTURE)
        first = self.good("a", "export")
        self.good("b", "take-in", self.file("first.json", first))
        self.assertEqual(self.good("b", "export"), first)
        self.assertEqual(self.good("b", "export", "--bike", "Brindle"), first)
        self.assertIn('"of": {"unheard of": [1, 2.50, null]}', first)

    def test_one_id_with_two_contents_keeps_both(self):
        self.good("a", "take-in", FIXTURE)
        changed = FIXTURE.read_text().replace("41,300 mi\"}}", "14,300 mi\"}}")
        out = self.good("a", "take-in", self.file("changed.json", changed))
        self.assertIn("1 that differ from yours", out)
        text = self.good("a", "export")
        self.assertIn("41,300 mi\"}}", text)
        self.assertIn("14,300 mi\"}}", text)

    def test_a_damaged_file_gives_what_is_good(self):
        lines = FIXTURE.read_text().split("\n")
        lines[7] = lines[7][:100]
        ran = self.run_on("a", "take-in", self.file("damaged.json", "\n".join(lines)))
        self.assertEqual(ran.code, 0)
        self.assertIn("8 new", ran.out)
        self.assertIn("Line 8 is damaged", ran.err)
        self.assertIn("9 entries, but 8 are there", ran.err)

    def test_a_newer_file_and_other_files_are_refused_and_change_nothing(self):
        self.good("a", "take-in", FIXTURE)
        before = self.good("a", "export")
        newer = FIXTURE.read_text().replace('"camside": 1', '"camside": 2')
        for content in (newer, "{}", "", "\0", (SOURCE / "examples" / "runout_swing.json").read_text()):
            with self.subTest(content[:20]):
                ran = self.run_on("a", "take-in", self.file("other.json", content))
                self.assertEqual(ran.code, 2, ran.both)
        self.assertEqual(self.good("a", "export"), before)


class Export(Folders):
    def test_a_table_for_a_spreadsheet(self):
        self.good("a", "take-in", FIXTURE)
        table = camside("export", "--folder", self.top / "a", "--bike", "Brindle", "--csv").out
        self.assertTrue(table.startswith("day,kind,what,odometer (mi),wear (in),grade"), table)
        self.assertEqual(self.run_on("a", "export", "--csv").code, 2)


class Trouble(Folders):
    def test_a_second_program_reads_only(self):
        self.begin()
        folder = self.top / "a"
        with open(folder / "log.lock") as lock:
            import fcntl
            fcntl.flock(lock, fcntl.LOCK_EX)
            listed = self.run_on("a", "log")
            self.assertEqual(listed.code, 0)
            self.assertIn("open in another Camside", listed.err)
            self.assertIn("Brindle", listed.out)
            ran = self.run_on("a", "log", "--bike", "Brindle", "--add", "note", "--set", "text=x")
            self.assertEqual(ran.code, 2)
            self.assertIn("reading only", ran.err)

    def test_a_folder_that_cannot_be_made(self):
        self.file("blocked", "a file")
        ran = self.run_on("blocked", "log", "--new-bike", "Brindle")
        self.assertEqual(ran.code, 2)
        self.assertRegex(ran.err, "35[12]: .*(Not a directory|File exists)")

    def test_a_folder_that_cannot_be_written_is_read_without_talk_of_saving(self):
        self.begin()
        lock = self.top / "a" / "log.lock"
        lock.unlink()
        lock.mkdir()  # even the superuser can't lock that
        listed = self.run_on("a", "log")
        self.assertEqual(listed.code, 0)
        self.assertNotIn("Not saved", listed.err)
        self.assertRegex(listed.err, "note 361: Nothing can be written in .*: Is a directory")
        ran = self.run_on("a", "log", "--bike", "Brindle", "--add", "note", "--set", "text=x")
        self.assertEqual(ran.code, 2)
        self.assertEqual(ran.err.count("Is a directory"), 1, ran.err)

    def test_many_who_add_at_once_wait_for_each_other(self):
        self.begin()
        command = [PROGRAM, "log", "--folder", self.top / "a", "--bike", "Brindle", "--add", "note", "--set", "text=x"]
        adders = [subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) for _ in range(20)]
        said = [[part.decode() for part in one.communicate()] for one in adders]
        saved = {one for out, _ in said for one in re.findall(r"Saved (\S+)", out)}
        refused = [err for one, (_, err) in zip(adders, said) if one.returncode != 0]
        # Each waits for two seconds, which is not enough for all on a busy machine; without waiting nearly all are refused.
        self.assertGreater(len(saved), len(adders) // 2, refused)
        self.assertEqual(len(saved) + len(refused), len(adders))
        for err in refused:
            self.assertIn("open in another Camside", err)
        self.assertLessEqual(saved, {entry["id"] for entry in json.loads(self.good("a", "export"))["entries"]})

    def test_the_folders_above_a_new_one_are_synced(self):
        if not shutil.which("strace"):
            self.skipTest("there is no strace here")
        folder = self.top / "share" / "camside"
        trace = self.top / "trace"
        subprocess.run(["strace", "-f", "-y", "-o", trace, "-e", "trace=fsync", PROGRAM, "log", "--folder", folder, "--new-bike", "B"],
                       check=True, capture_output=True, env=dict(os.environ, ASAN_OPTIONS="detect_leaks=0"))
        synced = re.findall(r"fsync\(\d+<([^>]*)>\)", trace.read_text())
        for name in (folder / "log.camside", folder, folder.parent, self.top):
            self.assertIn(str(name.resolve()), synced)

    def test_a_full_disk_is_said(self):
        self.begin()
        before = (self.top / "a" / "log.camside").read_bytes()
        limit = f"ulimit -f 1; trap '' XFSZ; exec {PROGRAM} log --folder {self.top / 'a'} --bike Brindle --add note --set text={'x' * 3000}"
        ran = subprocess.run(["bash", "-c", limit], capture_output=True, text=True)
        self.assertEqual(ran.returncode, 2, ran.stderr)
        self.assertIn("Not saved", ran.stderr)
        self.assertEqual((self.top / "a" / "log.camside").read_bytes(), before)
        self.add("a", "--add", "note", "--set", "text=later")

    def test_killed_again_and_again_no_saved_entry_is_lost(self):
        self.begin()
        saved = []
        for n in range(12):
            started = subprocess.Popen([PROGRAM, "log", "--folder", self.top / "a", "--bike", "Brindle", "--add", "note",
                                        "--set", f"text={n} " + "x" * 5000], stdout=subprocess.PIPE)
            time.sleep(0.02 + 0.015 * n)
            os.kill(started.pid, signal.SIGKILL)
            saved += re.findall(r"Saved (\S+)\n", started.communicate()[0].decode())
        ids = {entry["id"] for entry in json.loads(self.good("a", "export"))["entries"]}
        self.assertLessEqual(set(saved), ids)


if __name__ == "__main__":
    main()
