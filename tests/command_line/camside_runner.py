"""Runs the camside program for the tests beside this file. argv: path of the program, folder of the sources."""
import os
import pathlib
import subprocess
import sys
import unittest

PROGRAM = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else None
SOURCE = pathlib.Path(sys.argv[2]) if len(sys.argv) > 2 else None


class Ran:
    def __init__(self, done):
        self.out, self.err, self.code = done.stdout, done.stderr, done.returncode

    @property
    def both(self):
        return self.out + self.err


def camside(*args, stdin=b"", seconds=60):
    """Runs the program; a crash or a sanitizer report has its own exit code, so a test that wants 0, 1 or 2 sees it."""
    environment = dict(os.environ, ASAN_OPTIONS="exitcode=99", UBSAN_OPTIONS="exitcode=98:print_stacktrace=1")
    done = subprocess.run([PROGRAM, *map(str, args)], input=stdin, capture_output=True, timeout=seconds, env=environment)
    done.stdout = done.stdout.decode("utf-8", errors="strict")
    done.stderr = done.stderr.decode("utf-8", errors="strict")
    return Ran(done)


def main():
    unittest.main(argv=[sys.argv[0]], verbosity=1)
