"""The schemas in assets/schema/ are those the program writes; examples hold to them and broken files don't.

Needs python3-jsonschema; without it the test fails.  python3 tests/command_line/schema_test.py PROGRAM SOURCES --update
writes the files anew.
"""
import copy
import json
import sys

from jsonschema import Draft202012Validator

from camside_runner import SOURCE, camside, main, unittest

FOLDER = SOURCE / "assets" / "schema"
EXAMPLES = sorted((SOURCE / "examples").glob("*.json"))


def kinds():
    return [line.split()[0] for line in camside("kinds").out.splitlines()]


def written():
    """File name to text, as the program writes them."""
    files = {f"{kind}.schema.json": camside("schema", kind).out for kind in kinds()}
    files["measurements.schema.json"] = camside("schema").out
    files["log.schema.json"] = camside("schema", "log").out
    files["knowledge.schema.json"] = camside("schema", "knowledge").out
    return files


def validator(name):
    schema = json.loads((FOLDER / name).read_text())
    return Draft202012Validator(schema)


def fields(schema, path=""):
    """Every field of a schema with its path."""
    for name, field in schema.get("properties", {}).items():
        yield f"{path}.{name}", field
        yield from fields(field, f"{path}.{name}")
        yield from fields(field.get("items", {}), f"{path}.{name}[]")


class Schemas(unittest.TestCase):
    def test_files_are_what_the_program_writes(self):
        for name, text in written().items():
            with self.subTest(name):
                self.assertEqual((FOLDER / name).read_text(), text)
        self.assertEqual({p.name for p in FOLDER.glob("*.schema.json")}, set(written()))

    def test_they_are_valid_schemas(self):
        for name in written():
            with self.subTest(name):
                Draft202012Validator.check_schema(json.loads((FOLDER / name).read_text()))

    def test_every_field_has_title_description_and_unit(self):
        for name in written():
            for path, field in fields(json.loads((FOLDER / name).read_text())):
                with self.subTest(f"{name} {path}"):
                    if path == ".records[].kind" and "title" not in field:
                        continue
                    self.assertTrue(field.get("title"))
                    self.assertGreater(len(field.get("description", "")), 3)
                    if "pattern" in field and field.get("type") == "string" and "unit" not in field:
                        self.assertIn("[0-9]{4}-", field["pattern"])  # a day or a time

    def test_examples_hold(self):
        for example in EXAMPLES:
            data = json.loads(example.read_text())
            names = {f"{record['kind']}.schema.json" for record in data["records"]}
            for name in ["measurements.schema.json"] + (list(names) if len(names) == 1 else []):
                with self.subTest(f"{example.name} {name}"):
                    errors = [f"{list(e.path)}: {e.message}" for e in validator(name).iter_errors(data)]
                    self.assertEqual(errors, [])

    def test_the_log_of_every_version_holds_and_broken_ones_do_not(self):
        check = validator("log.schema.json")
        for file in sorted((SOURCE / "tests" / "files").glob("log_version_*.json")):
            data = json.loads(file.read_text())
            self.assertEqual([e.message for e in check.iter_errors(data)], [])
            entries = {entry["kind"]: i for i, entry in enumerate(data["entries"])}
            changes = {
                "kind of file": lambda d: d.update(kind="measurements"),
                "no id": lambda d: d["entries"][0].pop("id"),
                "no time": lambda d: d["entries"][0].update(made="yesterday"),
                "no unit": lambda d: d["entries"][entries["odometer"]]["entered"].update(reading="41,300"),
                "no such grade": lambda d: d["entries"][entries["finding"]]["entered"].update(grade="so so"),
                "nothing done": lambda d: d["entries"][entries["service"]]["entered"].update(items=[]),
                "no measurement": lambda d: d["entries"][entries["measurement"]].pop("record"),
                "replaces a number": lambda d: d["entries"][0].update(replaces=7),
            }
            for name, change in changes.items():
                with self.subTest(name):
                    broken = copy.deepcopy(data)
                    change(broken)
                    self.assertFalse(check.is_valid(broken))

    def test_what_is_known_of_engines_holds_and_broken_ones_do_not(self):
        check = validator("knowledge.schema.json")
        for file in sorted((SOURCE / "assets" / "knowledge").glob("*.json")):
            data = json.loads(file.read_text())
            self.assertEqual([f"{list(e.path)}: {e.message}" for e in check.iter_errors(data)], [])
            changes = {
                "kind of file": lambda d: d.update(kind="log"),
                "no source": lambda d: d["items"][0].pop("source"),
                "no unit": lambda d: d["items"][0].update(every="30000"),
                "no such basis": lambda d: d["risks"][0]["source"].update(basis="hearsay"),
                "a certain chance": lambda d: d["risks"][0]["chances"][0].update(chance=1),
                "no engines": lambda d: d.update(engines=[]),
            }
            for name, change in changes.items():
                with self.subTest(name):
                    broken = copy.deepcopy(data)
                    change(broken)
                    self.assertFalse(check.is_valid(broken))

    def broken(self, change, kind="gear_pair"):
        data = json.loads((SOURCE / "examples" / f"{kind}.json").read_text())
        change(data)
        for name in (f"{kind}.schema.json", "measurements.schema.json"):
            self.assertFalse(validator(name).is_valid(data), name)

    def test_broken_files_do_not_hold(self):
        def entered(data):
            return data["records"][0]["entered"]

        changes = {
            "no version": lambda d: d.pop("camside"),
            "version as text": lambda d: d.update(camside="1"),
            "other kind of file": lambda d: d.update(kind="report"),
            "records as object": lambda d: d.update(records={}),
            "record without entered": lambda d: d["records"][0].pop("entered"),
            "unknown kind": lambda d: d["records"][0].update(kind="gear_pear"),
            "bad time": lambda d: d["records"][0].update(taken="yesterday"),
            "missing field": lambda d: entered(d).pop("module"),
            "missing field in a group": lambda d: entered(d)["gear1"].pop("teeth"),
            "number without unit": lambda d: entered(d).update(centre_distance=1.5938),
            "text without unit": lambda d: entered(d).update(centre_distance="1.5938"),
            "unit of another kind": lambda d: entered(d).update(centre_distance="1.5938 °C"),
            "words": lambda d: entered(d).update(centre_distance="about an inch"),
            "infinite": lambda d: entered(d).update(centre_distance="inf in"),
            "fraction of a tooth": lambda d: entered(d)["gear1"].update(teeth=17.5),
            "three teeth": lambda d: entered(d)["gear1"].update(teeth=3),
            "no such choice": lambda d: entered(d).update(place="crank to crank"),
            "flag as text": lambda d: entered(d).update(sizes_confirmed="yes"),
            "group as text": lambda d: entered(d).update(gear1="17 teeth"),
        }
        for name, change in changes.items():
            with self.subTest(name):
                self.broken(change)

    def test_what_people_may_write_holds(self):
        data = json.loads((SOURCE / "examples" / "gear_pair.json").read_text())
        check = validator("gear_pair.schema.json")
        for text in ["1.5938 in", "1,5938 in", '1-19/32"', "40.48 mm", "1593.8 thou", "40480 µm", "1 19/32 in", " 1.6 in ",
                     "4.05e1 mm", "+1.6in", "0.133 ft"]:
            with self.subTest(text):
                changed = copy.deepcopy(data)
                changed["records"][0]["entered"]["centre_distance"] = text
                self.assertTrue(check.is_valid(changed))
                ran = camside("check", "-", stdin=json.dumps(changed).encode())
                self.assertNotIn("refusal", ran.out)


if __name__ == "__main__":
    if "--update" in sys.argv:
        FOLDER.mkdir(parents=True, exist_ok=True)
        for file_name, schema_text in written().items():
            (FOLDER / file_name).write_text(schema_text)
    else:
        main()
