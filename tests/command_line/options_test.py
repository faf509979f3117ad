"""Options, exit codes, units, tables of readings."""
import json
import math
import subprocess

from camside_runner import PROGRAM, SOURCE, camside, main, unittest

EXAMPLES = SOURCE / "examples"


def load(name):
    return json.loads((EXAMPLES / f"{name}.json").read_text())


def solve(data, *options):
    return camside("solve", "-", *options, stdin=json.dumps(data).encode())


def results(data):
    return json.loads(solve(data, "--json").out)["records"][0]


def lash_with_window(least, most):
    data = load("backlash")
    data["records"][0]["entered"]["window"].update(min=least, max=most)
    return data


class Options(unittest.TestCase):
    def test_bad_arguments_are_bad_input(self):
        for args in ([], ["sovle"], ["solve"], ["solve", "a", "b"], ["check"], ["example"], ["schema", "nothing"],
                     ["example", "nothing"], ["solve", "x", "--units", "furlongs"], ["solve", "x", "--csv", "y"]):
            with self.subTest(args):
                ran = camside(*args)
                self.assertEqual((ran.code, ran.out), (2, ""))
                self.assertTrue(ran.err)

    def test_help_is_good(self):
        ran = camside("--help")
        self.assertEqual(ran.code, 0)
        for word in ("solve", "check", "import", "kinds", "schema", "example"):
            self.assertIn(word, ran.out)

    def test_an_unknown_kind_lists_the_known(self):
        self.assertIn("gear_pair", camside("schema", "gear_pear").err)

    def test_strict_says_by_its_exit_what_the_verdict_is(self):
        for window, verdict, code in ((("0.0005 in", "0.0040 in"), "Within", 0),
                                      (("0.0030 in", "0.0050 in"), "Outside", 1),
                                      (("0.0018 in", "0.0040 in"), "Not proven", 1)):
            data = lash_with_window(*window)
            with self.subTest(verdict):
                self.assertEqual(results(data)["verdict"], verdict)
                self.assertEqual(solve(data).code, 0)
                self.assertEqual(solve(data, "--strict").code, code)

    def test_bad_input_goes_before_the_verdict(self):
        data = lash_with_window("0.0030 in", "0.0050 in")
        data["records"].append({"kind": "backlash", "entered": {}})
        self.assertEqual(solve(data, "--strict").code, 2)

    def test_the_answer_stands_first(self):
        lines = solve(load("backlash")).out.splitlines()
        heading = next(i for i, line in enumerate(lines) if line.startswith("Backlash"))
        self.assertRegex(lines[heading + 1], r"^  Outside: Lowest lash \d\.\d+ ± \d\.\d+ in$")
        self.assertRegex(lines[heading + 2], r"^  Judged: Highest lash .*; limit .* in \(.*sheet.*\)$")

    def test_units(self):
        inch = solve(load("gear_pair")).out
        metric = solve(load("gear_pair"), "--units", "metric").out
        self.assertRegex(inch, r"Lash along the operating circles +\d\.\d+ in\n")
        self.assertRegex(metric, r"Lash along the operating circles +\d\.\d+ mm\n")

    def test_working_is_printed_on_demand(self):
        self.assertNotIn("Working", solve(load("gear_pair")).out)
        self.assertIn("Working\n    1 ", solve(load("gear_pair"), "--working").out)

    def test_json_has_every_value_with_its_unit(self):
        record = results(load("backlash"))
        self.assertEqual(record["id"], load("backlash")["records"][0]["id"])
        for figure in record["figures"]:
            self.assertEqual({"key", "label", "value", "unit"} - set(figure), set())
            self.assertTrue(math.isfinite(figure["value"]))
        lowest = next(f for f in record["figures"] if f["key"] == record["judgement"]["figure"])
        self.assertEqual(lowest["unit"], "mm")
        self.assertGreater(lowest["uncertainty"], 0)
        self.assertEqual(record["judgement"]["source"]["basis"], "makers sheet")
        self.assertTrue(record["working"])
        self.assertTrue(record["judgement"]["reason"] or record["findings"] is not None)

    def test_json_has_all_digits(self):
        data = load("gear_pair")
        data["records"][0]["entered"]["centre_distance"] = "40.48 mm"
        first = {f["key"]: f["value"] for f in results(data)["figures"]}
        data["records"][0]["entered"]["centre_distance"] = "40.480000000001 mm"
        second = {f["key"]: f["value"] for f in results(data)["figures"]}
        self.assertNotEqual(first["lash"], second["lash"])  # a difference of 1e-12 mm shows
        self.assertAlmostEqual(first["lash"], second["lash"], delta=2e-12)

    def test_several_records_begin_with_a_summary(self):
        data = load("backlash")
        data["records"] += load("gear_pair")["records"]
        lines = solve(data).out.splitlines()
        self.assertEqual(lines[0], "Brindle")
        self.assertIn("2 measurements · 1 Outside · 1 No verdict", lines)

    def test_a_full_disk_is_not_good(self):
        with open("/dev/full", "wb") as full:
            done = subprocess.run([PROGRAM, "kinds"], stdout=full, check=False)
        self.assertEqual(done.returncode, 2)


class Tables(unittest.TestCase):
    def table(self, separator=",", decimal="."):
        rows = [separator.join(["angle (deg)", "reading (in)"])]
        for reading in load("backlash")["records"][0]["entered"]["readings"]:
            angle, value = reading["angle"].rstrip("°"), reading["reading"].split()[0]
            rows.append(separator.join([angle, value.replace(".", decimal)]))
        return "\n".join(rows).encode()

    def test_a_table_gives_the_same_as_the_file(self):
        wanted = results(load("backlash"))["figures"]
        for table in (self.table(), self.table(";"), self.table(";", ","), self.table("\t", ",")):
            ran = camside("solve", "--csv", "-", "--kind", "backlash", "--with", EXAMPLES / "backlash.json", "--json",
                          stdin=table)
            self.assertEqual(ran.code, 0, ran.err)
            self.assertEqual(json.loads(ran.out)["records"][0]["figures"], wanted)

    def test_import_makes_a_measurement_file(self):
        ran = camside("import", "-", "--kind", "backlash", "--with", EXAMPLES / "backlash.json", "--set",
                      "contact_radius=1.0626 in", stdin=self.table())
        self.assertEqual(ran.code, 0, ran.err)
        data = json.loads(ran.out)
        self.assertEqual(data["records"][0]["entered"]["contact_radius"], "1.0626 in")
        self.assertEqual(data["records"][0]["entered"]["readings"][0], {"angle": "0 deg", "reading": load("backlash")["records"][0]["entered"]["readings"][0]["reading"]})
        self.assertEqual(camside("solve", "-", stdin=ran.out.encode()).code, 0)

    def test_errors_name_the_line_or_the_field(self):
        def run(table, *options):
            return camside("import", "-", "--kind", "backlash", *options, stdin=table)

        for table, options, words in (
                (b"angle (deg),reading (in)\n0,0.001\n90,x\n", [], "Line 3"),
                (b"0,0.001\n", [], "no header"),
                (b"", [], "nothing in it"),
                (self.table(), ["--set", "contact_radus=1 in"], "Did you mean “contact_radius”?"),
                (self.table(), ["--set", "contact_radius=wide"], "contact_radius"),
                (self.table(), ["--with", str(EXAMPLES / "gear_pair.json")], "no record of kind backlash")):
            with self.subTest(words):
                ran = run(table, *options)
                self.assertEqual((ran.code, ran.out), (2, ""))
                self.assertIn(words, ran.err)
        self.assertIn("kind", camside("import", "-", "--kind", "nothing", stdin=self.table()).err)
        self.assertIn("can't be taken", camside("import", "-", "--kind", "gear_pair", stdin=self.table()).err)


if __name__ == "__main__":
    main()
