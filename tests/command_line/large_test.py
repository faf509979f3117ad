"""Files made to kill: said in a moment, on every way in; a large table is taken in; where memory is short, that is said."""
import pathlib
import resource
import subprocess
import tempfile

from camside_runner import PROGRAM, camside, main, unittest

SANITIZED = b"__asan_init" in PROGRAM.read_bytes()  # which needs all the room there is


def seconds_used():
    """Of the processor, by the programs run so far: how busy the machine is makes no difference."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def hostile(megabytes, before='{"camside": 1, "kind": "log", "entries": [', after="{}]}"):
    return before.encode() + b"{}," * (megabytes * 1_000_000 // 3) + after.encode()


class Large(unittest.TestCase):
    def setUp(self):
        temporary = tempfile.TemporaryDirectory()
        self.addCleanup(temporary.cleanup)
        self.top = pathlib.Path(temporary.name)

    def file(self, content):
        file = self.top / "file"
        file.write_bytes(content)
        return file

    def refused(self, words, *args):
        begun = seconds_used()
        ran = camside(*args)
        self.assertEqual(ran.code, 2, ran.both[:500])
        self.assertIn(words, ran.both[:2000], args)
        self.assertLess(len(ran.both), 20_000)
        self.assertLess(seconds_used() - begun, 60 if SANITIZED else 5)

    def test_hostile_copies(self):
        for content, words in ((hostile(5), "refusal 334"), (hostile(60), "refusal 334"), (hostile(100), "refusal 100"),
                               (hostile(5, after=""), "refusal 334"), (hostile(5, before="x"), "refusal 103")):
            file = self.file(content)
            self.refused(words, "take-in", "--folder", self.top / "log", file)
            self.refused(words, "due", file)

    def test_the_same_limit_for_measurements_and_tables(self):
        for content, words in ((hostile(100), "refusal 100"), (hostile(60, before="["), "refusal 125")):
            file = self.file(content)
            for command in ("solve", "check"):
                self.refused(words, command, file)
        self.refused("refusal 100", "import", self.file(b"angle (deg),reading (in)\n" + b"0,0\n" * 25_000_000), "--kind", "runout")

    def test_a_table_of_many_rows(self):
        rows = 20_000 if SANITIZED else 1_000_000
        table = "angle (deg),reading (in)\n" + "".join(f"{n * 360 / rows:.5f},{n % 17 / 10000:.4f}\n" for n in range(rows))
        begun = seconds_used()
        ran = camside("import", self.file(table.encode()), "--kind", "runout")
        self.assertEqual(ran.code, 0, ran.err)
        self.assertEqual(ran.out.count('"angle"'), rows)
        self.assertLess(seconds_used() - begun, 15)

    @unittest.skipIf(SANITIZED, "the sanitizer takes more memory than there is here")
    def test_too_little_memory_is_said(self):
        file = self.file(hostile(60, before="["))
        few = lambda: resource.setrlimit(resource.RLIMIT_AS, (200_000_000, 200_000_000))
        ran = subprocess.run([PROGRAM, "solve", file], preexec_fn=few, capture_output=True, text=True)
        self.assertEqual(ran.returncode, 2, ran.stderr)
        self.assertIn("refusal 126", ran.stderr)


main()
