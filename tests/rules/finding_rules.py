"""usage: finding_rules.py house | planted

Every finding's number is permanent and belongs to one remark: it stands in one function of one <topic>_remarks.cpp,
inside the range of its topic, and beside that function's declaration in the header.
planted: each of these rules is shown a slip that it must catch.
"""
import pathlib
import re
import sys

CORE = pathlib.Path(__file__).resolve().parents[2] / "core"
RANGES = {  # as the catalogue in finding.hpp says
    "file": (100, 199), "field": (200, 299), "log": (300, 399), "runout": (1000, 1099), "gear_pair": (1100, 1149), "lash_temperature": (1150, 1199),
    "backlash": (1200, 1299), "gear_pick": (1300, 1399), "pushrod": (1400, 1499), "inspection_due": (1500, 1599),
    "wear": (1600, 1699), "life": (1700, 1799), "look_over": (1800, 1899), "data": (1930, 1936), "knowledge": (1937, 1949),
    "safety": (1900, 1999),
}
FUNCTION = re.compile(r"^[A-Z]\w*(?:<[^>]*>)? (\w+)\(", re.M)  # a function that returns a Finding starts its line
NUMBER = re.compile(r"\b(?:return|=)\s+(?:\w+\s*\(|\w*\s*\{)\s*(\d{1,4})\s*,")
COMMENTS = re.compile(r"//[^\n]*")


def numbers_of(source: str):
    """(number, name of the function it stands in) for each finding made."""
    code = COMMENTS.sub("", source)
    starts = [(m.start(), m[1]) for m in FUNCTION.finditer(code)]
    for m in NUMBER.finditer(code):
        yield int(m[1]), next((name for at, name in reversed(starts) if at < m.start()), "?")


def problems(files: dict[str, str]) -> list[str]:
    """files: name -> text of every *_remarks.cpp and .hpp"""
    wrong, owner = [], {}
    for name in sorted(n for n in files if n.endswith("_remarks.cpp")):
        topic = name.removesuffix("_remarks.cpp")
        header = files.get(name.replace(".cpp", ".hpp"), files.get(f"{topic}.hpp", ""))
        if topic not in RANGES:
            wrong.append(f"{name}: no range of numbers is set aside for {topic}")
            continue
        low, high = RANGES[topic]
        for number, function in numbers_of(files[name]):
            place = f"{name}: {function}"
            if owner.setdefault(number, place) != place:
                wrong.append(f"{number} is used twice: {owner[number]} and {place}")
            safety = RANGES["safety"][0] <= number <= RANGES["safety"][1]  # cautions at the step stand with their topic
            if not low <= number <= high and not safety:
                wrong.append(f"{number} ({place}) is outside {low} to {high}")
            if not re.search(rf"//.*\b{number}\b", header):
                wrong.append(f"{number} ({place}) does not stand in the header")
    return sorted(set(wrong))


def house() -> list[str]:
    files = {p.name: p.read_text(encoding="utf-8") for p in CORE.rglob("*.?pp")}
    count = sum(1 for n in files if n.endswith("_remarks.cpp") for _ in numbers_of(files[n]))
    print(f"{count} findings in {len(files)} files")
    return problems(files) if count > 20 else ["too few findings were found; the scan looks in the wrong place"]


def remark(name: str, number: int) -> str:
    return f'Finding {name}(std::string field) {{\n  return refusal({number}, std::move(field), "so", "do");\n}}\n'


def planted() -> list[str]:
    header = "Finding a();  // 200\nFinding b();  // 201\n"
    good = {"field_remarks.hpp": header, "field_remarks.cpp": remark("a", 200) + remark("b", 201)}
    slips = {
        "used twice": {**good, "field_remarks.cpp": remark("a", 200) + remark("b", 200)},
        "outside 200 to 299": {**good, "field_remarks.cpp": remark("a", 1000)},
        "does not stand in the header": {**good, "field_remarks.cpp": remark("a", 299)},
        "no range of numbers": {"other_remarks.cpp": remark("a", 200), "other_remarks.hpp": header},
    }
    wrong = [f"caught though harmless: {found}" for found in problems(good)]
    braces = {**good, "field_remarks.cpp": "Finding a() {\n  return {200, x};\n}\nFinding b() {\n  return {200, y};\n}\n"}
    slips["200 is used twice"] = braces
    for rule, files in slips.items():
        if not any(rule in found for found in problems(files)):
            wrong.append(f"not caught: {rule}")
    return wrong


found = {"house": house, "planted": planted}[sys.argv[1]]()
print("\n".join(found))
sys.exit(1 if found else 0)
