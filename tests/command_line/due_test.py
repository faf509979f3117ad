"""camside due: the list of a folder and of an exported log, and its calendar file read by a parser that isn't ours."""
import json
import pathlib
import subprocess
import tempfile

from camside_runner import SOURCE, camside, main, unittest


def events_of(file):
    """The events as ical.js reads them (tests/browser/package.json; scripts/setup installs it)."""
    ran = subprocess.run(["node", SOURCE / "tests" / "browser" / "calendar.mjs", file], capture_output=True, text=True)
    assert ran.returncode == 0, ran.stderr
    return json.loads(ran.stdout)


class Due(unittest.TestCase):
    def setUp(self):
        temporary = tempfile.TemporaryDirectory()
        self.addCleanup(temporary.cleanup)
        self.top = pathlib.Path(temporary.name)
        self.good("log", "--folder", self.top, "--new-bike", "Brindle", "--set", "engine=two cams, sprung chains", "--set",
                  "odometer_unit=mi")
        self.add("odometer", "2024-05-14", "reading=41,300 mi")

    def good(self, *args, **more):
        ran = camside(*args, **more)
        self.assertEqual(ran.code, 0, ran.both)
        return ran.out

    def add(self, kind, day, *fields):
        sets = [part for field in fields for part in ("--set", field)]
        self.good("log", "--folder", self.top, "--bike", "Brindle", "--add", kind, "--day", day, *sets)

    def due(self, *args, today="2024-06-01"):
        return self.good("due", "--folder", self.top, "--today", today, *args)

    def test_the_list_says_what_when_why_and_what_to_log(self):
        out = self.due()
        self.assertIn("Outer tensioner shoe: Due now, No proof\n", out)
        self.assertIn("every 30,000 mi (48,280 km); common practice, no published source", out)
        self.assertIn("log a finding of Inner tensioner shoe", out)
        self.assertIn("log a service of Inner cam bearings", out)

    def test_an_exported_log_gives_the_same_list(self):
        exported = self.good("export", "--folder", self.top)
        self.assertEqual(self.good("due", "-", "--today", "2024-06-01", stdin=exported.encode()), self.due())
        self.assertEqual(self.due("--bike", "Brindle"), self.due())

    def test_what_is_put_off_stays_with_its_reason(self):
        self.add("snooze", "2024-05-15", "item=Tensioner shoes", "until=2024-09-01", "reason=Parts on their way")
        self.assertIn("Due now, No proof\n    Put off until 2024-09-01: Parts on their way", self.due())
        self.assertNotIn("Put off", self.due(today="2024-09-01"))
        ran = camside("log", "--folder", self.top, "--bike", "Brindle", "--add", "snooze", "--set",
                      "item=Tensioner shoes", "--set", "until=2024-09-01")
        self.assertEqual(ran.code, 2, "nothing is put off without a reason")

    def test_another_parser_reads_the_calendar(self):
        why = "Commas, semicolons; backslashes \\ and −½ µm, so long that the line has to be folded somewhere in here"
        self.add("rule", "2024-05-14", "item=Engine oil and filter", "months=1", "why=" + why)
        self.add("service", "2024-01-31", "items=Engine oil and filter", "proof=paper")
        self.add("snooze", "2024-05-15", "item=Tensioner shoes", "until=2024-09-01", "reason=" + why)
        file = self.top / "due.ics"
        self.due("--calendar", file, today="2024-02-01T23:30:00-05:00")
        oil = {e["summary"]: e for e in events_of(file)}["Brindle: Engine oil and filter"]
        self.assertEqual((oil["day"], oil["whole_day"]), ("2024-02-29", True))
        self.assertEqual(oil["stamp"], "2024-02-02T04:30:00Z")
        self.assertEqual(sorted(oil["alarms"]), ["-P6DT15H", "PT9H"])
        self.due("--calendar", file)
        events = {e["summary"]: e for e in events_of(file)}
        self.assertEqual(len({e["uid"] for e in events.values()}), len(events))
        shoes = events["Brindle: Inner tensioner shoe"]
        self.assertEqual(shoes["day"], "2024-09-01")
        self.assertIn("Put off until 2024-09-01: " + why, shoes["description"].split("\n"))
        self.assertEqual(events["Brindle: Engine oil and filter"]["day"], "2024-06-01", "overdue: on the day of the list")

    def test_what_cannot_be_done_is_said(self):
        for args in (["--today", "tomorrow"], ["--bike", "Nobody"], ["--calendar", self.top / "none" / "x.ics"],
                     ["/nowhere/log.json"]):
            ran = camside("due", "--folder", self.top, *args)
            self.assertEqual(ran.code, 2, args)
            self.assertTrue(ran.err, args)


if __name__ == "__main__":
    main()
