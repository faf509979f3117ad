#!/usr/bin/python3
"""The examples tell one story, of one bike from the first look to the hand-over, and it must hold together: what one
measurement says, the next may not contradict.
"""
import functools
import json
import math

from camside_runner import SOURCE, camside, main, unittest

WHOLE = SOURCE / "examples" / "whole_job.json"


@functools.cache
def solved():
    """(what was entered, what came of it) of every measurement"""
    entered = json.loads(WHOLE.read_text())["records"]
    return list(zip(entered, json.loads(camside("solve", "--json", WHOLE).out)["records"], strict=True))


def of_kind(kind):
    return [pair for pair in solved() if pair[0]["kind"] == kind]


def figure(result, key):
    return next(f for f in result["figures"] if f["key"] == key)


def mm(result, key):
    return figure(result, key)["value"]


def u_mm(result, key):
    return figure(result, key)["uncertainty"]


def verdict(result):
    return result["judgement"]["verdict"]


class Story(unittest.TestCase):
    def test_goes_forward_in_time(self):
        days = [entered["taken"] for entered, _ in solved() if entered["kind"] != "look_over"]
        self.assertEqual(days, sorted(days))

    def test_the_lash_swings_by_the_runout_that_was_measured(self):
        runout = of_kind("runout")[0][1]
        for _, lash in of_kind("backlash"):
            apart = abs(mm(lash, "pinion_runout") - mm(runout, "judged"))
            self.assertLessEqual(apart, math.hypot(u_mm(lash, "pinion_runout"), u_mm(runout, "judged")))

    def test_sizes_on_the_bench_give_the_lash_in_the_engine(self):
        bench, engine = of_kind("gear_pair")[0][1], of_kind("backlash")[0][1]
        self.assertLessEqual(abs(mm(bench, "lash") - mm(engine, "mean")), 2 * u_mm(engine, "mean"))

    def test_gears_are_ordered_for_the_lash_that_was_measured(self):
        entered, result = of_kind("gear_pick")[0]
        lash = of_kind("backlash")[0][1]
        for end, key in (("lash_low", "lowest"), ("lash_high", "highest")):
            inches = float(entered["entered"]["meshes"][0][end].removesuffix(" in"))
            self.assertLessEqual(abs(inches * 25.4 - mm(lash, key)), u_mm(lash, key))
        self.assertEqual(verdict(lash), "Outside", "else there would be nothing to order")
        self.assertEqual(verdict(result), "Within")

    def test_with_the_gears_ordered_the_lash_is_what_was_foretold(self):
        pick = of_kind("gear_pick")[0][1]
        before, after = (result for _, result in of_kind("backlash"))
        for end, key in (("low", "lowest"), ("high", "highest")):
            foretold = mm(pick, f"meshes[0].pick.as_measured.{end}")
            self.assertLessEqual(abs(foretold - mm(after, key)), math.hypot(u_mm(before, key), u_mm(after, key)))
        self.assertEqual(verdict(after), "Within")

    def test_a_shoe_found_cracked_is_judged_no_more(self):
        names = [entered["kind"] for entered, _ in solved()]
        wear = names.index("wear")
        self.assertEqual(verdict(solved()[wear][1]), "Outside")
        self.assertNotIn("life", names[wear:], "no chance of a cracked shoe's lasting is asked for")

    def test_only_pressed_gears_are_called_so(self):
        joints = {gear["name"]: gear.get("joint") for gear in of_kind("gear_pick")[0][0]["entered"]["gears"]}
        for name, joint in joints.items():
            self.assertEqual(joint, "pressed" if "inner" in name else "bolted", name)


if __name__ == "__main__":
    main()
