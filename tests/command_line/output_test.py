"""What can't be written is said and has its exit status: standard output and files on a full disk, closed, or given up by
their reader. And what is no file is refused as input, where reading it would take for ever."""
import os
import pathlib
import subprocess
import tempfile
import threading
import time

from camside_runner import PROGRAM, SOURCE, Ran, camside, main, unittest

FIXTURE = SOURCE / "tests" / "files" / "log_version_1.json"
FULL = "/dev/full"
EXAMPLE = SOURCE / "examples" / "runout_swing.json"


class Output(unittest.TestCase):
    def setUp(self):
        self.temporary = tempfile.TemporaryDirectory()
        self.addCleanup(self.temporary.cleanup)
        self.top = pathlib.Path(self.temporary.name)
        self.folder = self.top / "a"
        self.assertEqual(camside("take-in", "--folder", self.folder, FIXTURE).code, 0)

    def commands(self):
        log = ["--folder", self.folder]
        table = self.top / "table.csv"
        table.write_text("angle (deg),reading (in)\n0,0\n90,0.001\n180,0.002\n270,0.001\n")
        yield ["export", *log]
        yield ["export", *log, "--bike", "Brindle", "--csv"]
        yield ["log", *log]
        yield ["log", *log, "--bike", "Brindle", "--all"]
        yield ["take-in", *log, "--preview", FIXTURE]
        yield ["due", *log]
        yield ["due", *log, "--calendar", "-"]
        yield ["solve", EXAMPLE]
        yield ["solve", "--json", SOURCE / "examples" / "whole_job.json"]
        yield ["solve", "--csv", table, "--kind", "runout", "--json"]
        yield ["import", table, "--kind", "runout"]
        yield ["check", SOURCE / "examples" / "whole_job.json"]
        yield ["schema"]
        yield ["schema", "knowledge"]
        yield ["example", "runout"]
        yield ["kinds"]
        yield ["--help"]
        yield ["solve", "--help"]

    def run_into(self, command, how):
        """With the output redirected as a shell is told to."""
        shell = ["bash", "-c", f'exec "$0" "$@" {how}', PROGRAM, *map(str, command)]
        done = subprocess.run(shell, capture_output=True, text=True, timeout=60,
                              env=dict(os.environ, ASAN_OPTIONS="exitcode=99", UBSAN_OPTIONS="exitcode=98"))
        return Ran(done)

    def test_a_full_disk_is_said_whatever_is_printed(self):
        for command in self.commands():
            with self.subTest(command):
                if camside(*command).out == "":
                    continue  # a good file has no findings
                ran = self.run_into(command, f"> {FULL}")
                self.assertEqual(ran.code, 2)
                self.assertRegex(ran.err, "333: Standard output could not be written whole: No space left on device")

    def test_a_disk_that_is_full_halfway_is_said(self):
        big = self.top / "big.json"
        entry = '{"id": "%d", "bike": "b", "kind": "note", "made": "2024-05-14T10:20:00-05:00", "text": "%s"}'
        big.write_text('{"camside": 1, "kind": "log", "entries": [\n'
                       + ",\n".join(entry % (n, "x" * 1000) for n in range(300)) + "\n]}\n")
        self.assertEqual(camside("take-in", "--folder", self.folder, big).code, 0)
        part = self.top / "part"
        ran = self.run_into(["export", "--folder", self.folder], f"> {part}; ")
        self.assertEqual(ran.code, 0)
        limit = f'ulimit -f 64; trap "" XFSZ; exec "$0" "$@" > {part}'
        done = subprocess.run(["bash", "-c", limit, PROGRAM, "export", "--folder", self.folder], capture_output=True, text=True)
        self.assertEqual(done.returncode, 2)
        self.assertIn("333: Standard output could not be written whole: File too large", done.stderr)
        self.assertEqual(part.stat().st_size, 64 << 10)

    def test_closed_output_and_an_unheard_word_have_their_exit_status(self):
        ran = self.run_into(["export", "--folder", self.folder], ">&-")
        self.assertEqual(ran.code, 2)
        self.assertIn("Bad file descriptor", ran.err)
        self.assertEqual(self.run_into(["solve", "/no/such/file"], f"2> {FULL}").code, 2)
        damaged = self.top / "damaged.json"
        lines = FIXTURE.read_text().split("\n")
        damaged.write_text("\n".join(lines[:7] + lines[7:8][:0] + ["}{"] + lines[8:]))
        self.assertEqual(camside("take-in", "--folder", self.top / "b", "--preview", damaged).code, 0)
        self.assertEqual(self.run_into(["take-in", "--folder", self.top / "b", "--preview", damaged], f"2> {FULL}").code, 2)

    def test_a_calendar_that_cannot_be_written_is_said(self):
        ran = camside("due", "--folder", self.folder, "--calendar", FULL)
        self.assertEqual(ran.code, 2)
        self.assertIn(f"333: {FULL} could not be written whole: No space left on device", ran.err)
        self.assertNotIn("Saved", ran.out)
        self.assertEqual(camside("due", "--folder", self.folder, "--calendar", "/no/such/place").code, 2)
        self.assertEqual(camside("due", "--folder", self.folder, "--calendar", self.top / "due.ics").code, 0)

    def test_a_slow_reader_gets_all_of_it(self):
        ran = self.run_into(["schema"], "| (sleep 0.3; cat)")
        self.assertEqual(ran.out, camside("schema").out)


class Input(unittest.TestCase):
    def setUp(self):
        self.temporary = tempfile.TemporaryDirectory()
        self.addCleanup(self.temporary.cleanup)
        self.pipe = pathlib.Path(self.temporary.name) / "pipe"
        os.mkfifo(self.pipe)

    def test_a_pipe_nobody_writes_into_does_not_hang(self):
        self.assertEqual(camside("solve", self.pipe, seconds=20).code, 2)

    def test_a_pipe_with_a_slow_writer_is_read_to_its_end(self):
        def write():
            time.sleep(0.3)
            with open(self.pipe, "wb") as pipe:
                bytes_ = EXAMPLE.read_bytes()
                for part in (bytes_[:100], bytes_[100:]):
                    pipe.write(part)
                    pipe.flush()
                    time.sleep(0.2)
        writer = threading.Thread(target=write)
        writer.start()
        ran = camside("solve", self.pipe, seconds=20)
        writer.join()
        self.assertEqual((ran.code, ran.out), (0, camside("solve", EXAMPLE).out))

    def test_devices_are_refused(self):
        for device in ("/dev/zero", "/dev/null", "/dev/ptmx"):
            if os.path.exists(device):
                ran = camside("solve", device, seconds=20)
                self.assertEqual(ran.code, 2)
                self.assertIn("device", ran.err)

    def test_a_pipe_in_place_of_the_log_or_beside_it_does_not_hang(self):
        folder = self.pipe.parent / "a"
        self.assertEqual(camside("take-in", "--folder", folder, FIXTURE).code, 0)
        for name in ("log.previous.camside", "log.camside.tmp", "log.torn.txt"):
            os.mkfifo(folder / name)
        ran = camside("log", "--folder", folder, "--bike", "Brindle", "--add", "note", "--set", "text=x", seconds=20)
        self.assertEqual(ran.code, 0, ran.both)
        with open(folder / "log.camside", "ab") as log:
            log.write(b"cut o")
        ran = camside("log", "--folder", folder, "--bike", "Brindle", "--add", "note", "--set", "text=y", seconds=20)
        self.assertEqual(ran.code, 0, ran.both)
        self.assertIn("358", ran.err)
        os.remove(folder / "log.camside")
        os.mkfifo(folder / "log.camside")
        ran = camside("log", "--folder", folder, seconds=20)
        self.assertEqual(ran.code, 2)
        self.assertIn("351", ran.err)


if __name__ == "__main__":
    main()
