"""The log on a failing disk: the n-th system call on the store's files fails, for every n until there is none left."""
import errno
import itertools
import json
import os
import pathlib
import subprocess
import tempfile

from camside_runner import PROGRAM, camside, main, unittest

CALLS = ["openat", "read", "write", "fsync", "rename", "truncate", "flock", "unlink", "fstat", "stat", "newfstatat"]
ERRORS = ["ENOSPC", "EIO"]
FILES = ["", "log.camside", "log.lock", "log.camside.tmp", "log.previous.camside", "log.torn.txt", "log.damaged.camside"]


class DiskFaults(unittest.TestCase):
    def setUp(self):
        self.temporary = tempfile.TemporaryDirectory()
        self.addCleanup(self.temporary.cleanup)
        self.folder = pathlib.Path(self.temporary.name) / "log"
        self.confirmed = {self.said_saved(camside("log", "--folder", self.folder, "--new-bike", "Brindle"))}
        self.reading = 41300
        self.faults = 0

    def said_saved(self, ran):
        self.assertEqual(ran.code, 0, ran.both)
        return ran.out.split()[-1]

    def add(self):
        self.reading += 1
        return ["log", "--folder", str(self.folder), "--bike", "Brindle", "--add", "odometer", "--set",
                f"reading={self.reading} mi"]

    def with_fault(self, call, error, n):
        """Adds a reading while the n-th such call on the store fails. None: there was no n-th call."""
        trace = self.folder.parent / "trace"
        watched = [option for name in FILES for option in ("-P", str(self.folder / name).rstrip("/"))]
        command = ["strace", "-f", "-qq", "-o", str(trace), *watched, "-e", f"trace={call}", "-e",
                   f"inject={call}:error={error}:when={n}", str(PROGRAM), *self.add()]
        # The leak check can't run under strace.
        environment = dict(os.environ, ASAN_OPTIONS="exitcode=99:detect_leaks=0", UBSAN_OPTIONS="exitcode=98")
        done = subprocess.run(command, capture_output=True, text=True, timeout=60, env=environment)
        return done if "(INJECTED)" in trace.read_text() else None

    def entries(self):
        ran = camside("export", "--folder", self.folder)
        self.assertEqual(ran.code, 0, ran.both)
        return {one[key] for one in json.loads(ran.out)["entries"] for key in ("id", "bike")}

    def check_after(self, done, what):
        self.assertIn(done.returncode, (0, 2), f"{what}: {done.stdout}{done.stderr}")
        if done.returncode == 0:
            self.confirmed.add(done.stdout.split()[-1])
            self.assertNotIn("352", done.stderr, f"{what}: saved, and said not to be")
        else:
            self.assertRegex(done.stderr, r"\d+: .*\. .", f"{what}: no word of what happened and what to do")
        self.confirmed.add(self.said_saved(camside(*self.add())))  # the disk is well again
        self.assertLessEqual(self.confirmed, self.entries(), f"{what}: a confirmed entry is gone")

    def try_all(self, before=lambda: None, errors=ERRORS):
        for call, error in itertools.product(CALLS, errors):
            for n in itertools.count(1):
                before()
                done = self.with_fault(call, error, n)
                if done is None:
                    break
                self.faults += 1
                self.check_after(done, f"{call} {n} fails with {error}")

    def test_every_call_of_an_append_fails_once(self):
        self.try_all()
        self.assertGreaterEqual(self.faults, 16)

    def test_every_call_of_mending_a_cut_off_end_fails_once(self):
        def cut():
            with open(self.folder / "log.camside", "ab") as log:
                log.write(b"99 0123456789abcdef {\"id\": \"cut o")
        self.try_all(cut)
        self.assertGreaterEqual(self.faults, 16)

    def test_every_call_of_mending_damage_before_a_cut_off_end_fails_once(self):
        def damage():
            for old in self.folder.glob("log.damaged*"):
                old.unlink()
            lost = self.said_saved(camside(*self.add()))
            log = self.folder / "log.camside"
            log.write_bytes(log.read_bytes().replace(f'"{lost}"'.encode(), b'"changed"', 1) + b"99 0123456789abcdef {cut o")
        self.try_all(damage, ["EIO"])
        self.assertGreaterEqual(self.faults, 16)

    def test_what_is_injected_is_what_is_told(self):
        done = self.with_fault("write", "ENOSPC", 1)
        self.assertEqual(done.returncode, 2)
        self.assertIn(os.strerror(errno.ENOSPC), done.stderr)


main()
