"""Every bad file of tests/files/bad_files.py is refused with exit 2 and words that help; nothing crashes on any bytes."""
import os
import random
import sys
import tempfile

from camside_runner import SOURCE, camside, main, unittest

sys.path.insert(0, str(SOURCE / "tests" / "files"))
from bad_files import GOOD, REFUSED, REFUSED_RECORDS, REMARKED  # noqa: E402


class BadFiles(unittest.TestCase):
    def run_file(self, command, content, *options):
        with tempfile.NamedTemporaryFile(suffix=".json") as file:
            file.write(content)
            file.flush()
            return camside(command, file.name, *options)

    def test_the_sound_file_is_taken(self):
        self.assertEqual(self.run_file("check", GOOD).code, 0)
        self.assertEqual(self.run_file("solve", GOOD).code, 0)

    def test_files_are_refused(self):
        for name, content, words in REFUSED:
            with self.subTest(name):
                checked = self.run_file("check", content)
                self.assertEqual(checked.code, 2, checked.both)
                self.assertIn(words, checked.out)
                solved = self.run_file("solve", content)
                self.assertEqual((solved.code, solved.out), (2, ""))
                self.assertIn(words, solved.err)

    def test_records_are_refused_by_path(self):
        for name, content, path in REFUSED_RECORDS:
            with self.subTest(name):
                checked = self.run_file("check", content)
                self.assertEqual(checked.code, 2, checked.both)
                self.assertTrue(any(line.startswith(path) and " refusal " in line for line in checked.out.splitlines()),
                                checked.out)
                solved = self.run_file("solve", content)
                self.assertEqual(solved.code, 2)
                self.assertIn(path, solved.err)
                self.assertEqual(self.run_file("solve", content, "--json").code, 2)

    def test_what_is_taken_with_a_remark(self):
        for name, content, words in REMARKED:
            with self.subTest(name):
                ran = self.run_file("check", content)
                self.assertEqual(ran.code, 0, ran.both)
                self.assertIn(words, ran.out)

    def test_a_bad_record_does_not_shut_out_the_others(self):
        content = GOOD.replace(b"]}", b', {"kind": "gear_pair", "entered": {"module": "x"}}]}')
        ran = self.run_file("solve", content)
        self.assertEqual(ran.code, 2)
        self.assertIn("Lash along the operating circles", ran.out)
        self.assertIn("records[1].entered.module: ", ran.err)

    def test_changed_bytes_never_crash(self):
        chance = random.Random(20240514)
        for _ in range(60):
            content = bytearray(GOOD)
            for _ in range(chance.randint(1, 6)):
                where = chance.randrange(len(content))
                how = chance.randrange(3)
                if how == 0:
                    content[where] = chance.randrange(256)
                elif how == 1:
                    del content[where]
                else:
                    content[where:where] = bytes([chance.choice(b'{}[]",:0e-\\')])
            self.assertIn(self.run_file("solve", bytes(content), "--json").code, (0, 2), bytes(content))

    def test_things_that_are_no_files(self):
        self.assertEqual(camside("solve", tempfile.gettempdir()).code, 2)
        self.assertIn("directory", camside("solve", tempfile.gettempdir()).err.lower())
        self.assertEqual(camside("solve", "/no/such/file").code, 2)
        self.assertIn("/no/such/file", camside("check", "/no/such/file").both)
        self.assertIn("refusal 155", camside("check", "/no/such/file").both)
        self.assertEqual(camside("solve", os.devnull).code, 2)
        self.assertEqual(camside("solve", "-", stdin=b"").code, 2)
        self.assertEqual(camside("check", "-", stdin=b"[" * (40 << 20)).code, 2)

    def test_terminal_codes_of_others_are_not_passed_on(self):
        content = GOOD.replace(b'"kind": "gear_pair"', b'"kind": "gear_pair", "name": "\\u001b[2J\\u009b31m"')
        ran = self.run_file("solve", content)
        self.assertEqual(ran.code, 0)
        self.assertNotIn("\x1b", ran.out)
        self.assertNotIn("\x9b", ran.out)


if __name__ == "__main__":
    main()
