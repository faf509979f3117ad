"""Every file of examples/ is solved and gives what stands in examples/expected/, as text to the letter, as JSON to 1e-12.

A change that is meant: python3 tests/command_line/examples_test.py PROGRAM SOURCES --update, then read the difference.
"""
import json
import sys

from camside_runner import SOURCE, camside, main, unittest

EXAMPLES = sorted((SOURCE / "examples").glob("*.json"))


def expected(example, ending):
    return SOURCE / "examples" / "expected" / (example.stem + ending)


def text_of(example):
    return camside("solve", example, "--working").out


def json_of(example):
    return camside("solve", example, "--json").out


def close(a, b):
    """The same but for the last digits of numbers."""
    if isinstance(a, dict) and isinstance(b, dict):
        return list(a) == list(b) and all(close(a[k], b[k]) for k in a)
    if isinstance(a, list) and isinstance(b, list):
        return len(a) == len(b) and all(close(x, y) for x, y in zip(a, b))
    if isinstance(a, float) or isinstance(b, float):
        return abs(a - b) <= 1e-12 * max(1.0, abs(a), abs(b))
    return a == b


class Examples(unittest.TestCase):
    def test_there_is_one_for_every_kind_and_a_whole_job(self):
        kinds = set()
        for example in EXAMPLES:
            kinds |= {record["kind"] for record in json.loads(example.read_text())["records"]}
        listed = {line.split()[0] for line in camside("kinds").out.splitlines()}
        self.assertEqual(kinds, listed)
        whole = json.loads((SOURCE / "examples" / "whole_job.json").read_text())
        self.assertEqual({record["kind"] for record in whole["records"]}, listed)

    def test_each_says_that_it_is_invented(self):
        for example in EXAMPLES:
            with self.subTest(example.name):
                self.assertIn("Invented data", json.loads(example.read_text())["note"])

    def test_a_look_over_carries_the_book_of_this_version(self):
        """Else the example would count with figures that the program no longer holds."""
        book = json.loads((SOURCE / "assets" / "knowledge" / "air_cooled_v_twin.json").read_text())
        for example in EXAMPLES:
            for record in json.loads(example.read_text())["records"]:
                if record["kind"] == "look_over":
                    for part in ("drives", "engines", "questions", "risks"):
                        self.assertEqual(record["entered"]["known"][part], book[part])

    def test_placeholder_money_gives_no_offer_until_taken(self):
        """The first bike's prices are made up; the second's were confirmed."""
        file = json.loads((SOURCE / "examples" / "look_over.json").read_text())
        unconfirmed, confirmed = json.loads(camside("solve", SOURCE / "examples" / "look_over.json", "--json").out)["records"]
        self.assertNotIn("offer", json.dumps([f["key"] for f in unconfirmed["figures"]]))
        self.assertIn("offer", [f["key"] for f in confirmed["figures"]])
        file["records"][0]["entered"]["money_confirmed"] = True
        file["records"][1]["entered"]["money_confirmed"] = False
        now, then = json.loads(camside("solve", "-", "--json", stdin=json.dumps(file).encode()).out)["records"]
        self.assertIn("offer", [f["key"] for f in now["figures"]])
        self.assertNotIn("offer", json.dumps([f["key"] for f in then["figures"]]))

    def test_text_for_people(self):
        for example in EXAMPLES:
            with self.subTest(example.name):
                ran = camside("solve", example, "--working")
                self.assertEqual((ran.code, ran.err), (0, ""))
                self.assertEqual(ran.out, expected(example, ".txt").read_text())

    def test_json_for_programs(self):
        for example in EXAMPLES:
            with self.subTest(example.name):
                ran = camside("solve", example, "--json")
                self.assertEqual((ran.code, ran.err), (0, ""))
                self.assertTrue(close(json.loads(ran.out), json.loads(expected(example, ".json").read_text())))

    def test_check_finds_nothing_to_refuse(self):
        for example in EXAMPLES:
            with self.subTest(example.name):
                ran = camside("check", example)
                self.assertEqual(ran.code, 0, ran.out)
                self.assertNotIn("refusal", ran.out)

    def test_the_program_prints_the_same_examples(self):
        for kind in (line.split()[0] for line in camside("kinds").out.splitlines()):
            with self.subTest(kind):
                ran = camside("example", kind)
                self.assertEqual(ran.code, 0)
                self.assertIn(ran.out, [example.read_text() for example in EXAMPLES])

    def test_an_example_solves_the_same_through_a_pipe(self):
        example = EXAMPLES[0]
        self.assertEqual(camside("solve", "-", stdin=example.read_bytes()).out, camside("solve", example).out)


if __name__ == "__main__":
    if "--update" in sys.argv:
        for one in EXAMPLES:
            expected(one, ".txt").write_text(text_of(one))
            expected(one, ".json").write_text(json_of(one))
    else:
        main()
