"""scripts/serve: what no file system has as a name is not here, and a client that sends or takes nothing is ended."""
import pathlib
import re
import socket
import subprocess
import sys
import tempfile
import time
import unittest

SOURCE = pathlib.Path(sys.argv[2])


class Serve(unittest.TestCase):
    def setUp(self):
        temporary = tempfile.TemporaryDirectory()
        self.addCleanup(temporary.cleanup)
        folder = pathlib.Path(temporary.name)
        (folder / "index.html").write_text("<p>here</p>")
        (folder / "large.png").write_bytes(b"x" * 30_000_000)
        self.server = subprocess.Popen([sys.executable, "-B", SOURCE / "scripts" / "serve", folder, "--port", "0", "--patience", "0.5"],
                                       stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        self.addCleanup(self.end)
        self.port = int(re.search(r":(\d+)/", self.server.stdout.readline())[1])

    def end(self):
        self.server.kill()
        self.server.communicate()

    def connected(self):
        client = socket.create_connection(("127.0.0.1", self.port), timeout=10)
        self.addCleanup(client.close)
        return client

    def asked(self, path):
        client = self.connected()
        client.sendall(b"GET " + path + b" HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
        answer = b""
        while part := client.recv(65536):
            answer += part
        return answer

    def test_names_that_no_file_has(self):
        for path in (b"/" + b"a" * 300, b"/" + b"a/" * 3000, b"/a\0b", b"/%00", b"/../../etc/passwd", b"/nothing"):
            self.assertTrue(self.asked(path).startswith(b"HTTP/1.1 404"), path[:40])
        self.assertTrue(self.asked(b"/").endswith(b"<p>here</p>"))
        self.server.kill()
        self.assertNotIn("Traceback", self.server.communicate()[1])

    def test_a_client_that_sends_nothing_is_ended(self):
        begun = time.monotonic()
        for sent in (b"", b"GET / HT"):
            client = self.connected()
            client.sendall(sent)
            self.assertEqual(client.recv(100), b"", sent)
        self.assertLess(time.monotonic() - begun, 5)

    def test_a_client_that_sends_a_byte_now_and_then_is_ended(self):
        client = self.connected()
        begun = time.monotonic()
        with self.assertRaises(OSError):
            while time.monotonic() - begun < 15:
                client.sendall(b"G")
                time.sleep(0.2)
        self.assertLess(time.monotonic() - begun, 10)

    def test_a_client_that_takes_nothing_is_ended(self):
        client = self.connected()
        client.sendall(b"GET /large.png HTTP/1.1\r\nHost: localhost\r\n\r\n")
        time.sleep(2.5)
        taken = 0
        try:
            while part := client.recv(1 << 20):
                taken += len(part)
        except OSError:
            pass
        self.assertLess(taken, 30_000_000)


unittest.main(argv=[sys.argv[0]])
