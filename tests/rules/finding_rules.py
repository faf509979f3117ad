"""usage: finding_rules.py house | planted

Every finding's number is permanent and belongs to one remark: it stands in one function of one <topic>_remarks.cpp,
inside the range of its topic, and beside that function's declaration in the header. And a test asserts that it is raised.
planted: each of these rules is shown a slip that it must catch.
"""
import pathlib
import re
import sys

TESTS = pathlib.Path(__file__).resolve().parents[1]
CORE = TESTS.parent / "core"
RANGES = {  # those of questions stand in their descriptors, calc/NAME/NAME_question.cpp; "numbers = {1000, 1099}"
    "file": (100, 199), "field": (200, 299), "log": (300, 399), "lash_temperature": (1150, 1199), "data": (1930, 1936),
    "knowledge": (1937, 1949), "safety": (1900, 1999),
}
NUMBERS_OF_A_QUESTION = re.compile(r"q\.numbers = \{(\d+), (\d+)\};")
for descriptor in CORE.glob("calc/*/*_question.cpp"):
    RANGES[descriptor.parent.name] = tuple(map(int, NUMBERS_OF_A_QUESTION.search(descriptor.read_text(encoding="utf-8")).groups()))
FUNCTION = re.compile(r"^[A-Z]\w*(?:<[^>]*>)? (\w+)\(", re.M)  # a function that returns a Finding starts its line
NUMBER = re.compile(r"(?:\b(?:return|=)\s+(?:\w+\s*\(|\w*\s*\{)|[?:]\s+\w+\s*\()\s*(\d{1,4})\s*,")
COMMENTS = re.compile(r"//[^\n]*")

# How tests say that a number is raised. Anything else is not taken for an assertion, EXPECT_FALSE least of all.
TOLD = {"has", "says", "has_finding", "refused", "doubted"}  # true when it is raised: EXPECT_TRUE(has(f, 1002))
FOUND = {"finding", "find", "field_of", "remedy_of", "text_of", "doubtful"}  # what was raised: EXPECT_EQ(field_of(f, 1502), "…")
NOT_RAISED = {"0", "false", "nullptr", '""', "Severity::Note"}  # what these give for a number that was not raised
NO_RAISING = {"bench", "oracle", "findings", "rules"}  # folders of tests/ in which no finding comes from the code that raises it
WORDS = re.compile(r'R"(\w*)\(.*?\)\1"|"((?:\\.|[^"\\\n])*)"|(?<!\w)\'(?:\\.|[^\'\\\n])+\'|//[^\n]*|/\*.*?\*/', re.S)
MACRO = re.compile(r"\b(?:EXPECT|ASSERT)_(TRUE|EQ|NE)\(")
CALL = re.compile(r"(!\s*)?\b(\w+)\(")
ROWS_NUMBER = re.compile(r"\b(?:EXPECT|ASSERT)_EQ\([^;]*\bnumber, \w+\.number\)")
EACH_OF = re.compile(r"for \(const int (\w+) : \{([\d, ]+)\}\)\s*(?:EXPECT|ASSERT)_TRUE\((?:has|says)\([^;]*, \1\)\)")
PRINTED = re.compile(r'^\s*self\.assert(?:In|Regex)\((?:[\w.]+, )?f?"(?:(?:note|caution|doubt|refusal) )?(\d{3,4})(?=[ :"])', re.M)  # what the program prints
PLACED = re.compile(r'"[\w.\[\]]*:(\d{3,4})"')  # "records[1].taken:118", a finding as field and number


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


def bare(source: str) -> str:
    """without comments; of texts only whether they are empty is left, and those that name a number"""
    def word(m):
        if m[0].startswith("/"):
            return " "
        return m[0] if PLACED.fullmatch(m[0]) else '""' if m[2] == "" else '"…"'
    return WORDS.sub(word, source)


def parts(code: str, at: int) -> list[str]:
    """what stands between the bracket that opens before at and the one that closes it, parted at its commas"""
    found, depth, start = [], 0, at
    for i in range(at, len(code)):
        if code[i] in "([{":
            depth += 1
        elif code[i] in ")]}" and depth > 0:
            depth -= 1
        elif code[i] in ")]}" or (code[i] == "," and depth == 0):
            found.append(code[start:i].strip())
            start = i + 1
            if code[i] != ",":
                break
    return found


def asked_for(text: str, names: set[str]):
    """the numbers that one of these functions is asked for, unless what it says is turned round"""
    for m in CALL.finditer(text):
        if m[2] in names and not m[1]:
            yield from (int(part) for part in parts(text, m.end()) if part.isdecimal())


def compared(one: str, other: str):
    """the numbers that EXPECT_EQ(one, other) proves to be raised; it is called for both orders"""
    numbers = re.fullmatch(r"(?:std::vector<int>\{)?(\d+)\}?", one)
    if numbers and re.search(r"\bnumber|\b_?refusals?(?:_of)?\(", other):
        yield int(numbers[1])
    if one not in NOT_RAISED and "npos" not in one:
        yield from asked_for(other, TOLD | FOUND)


def tabled(code: str):
    """of the rows {what, path, 1930, field} of a struct that has an int number, when each row's is expected"""
    if not ROWS_NUMBER.search(code):
        return
    for m in re.finditer(r"\bstruct (\w+) \{([^{}]*\bint number;[^{}]*)\}", code):
        fields = [f.split()[-1] for f in m[2].split(";") if f.strip()]
        for row in re.finditer(r"\{", code):
            given = parts(code, row.end())
            at = fields.index("number")
            if len(given) == len(fields) and given[at].isdecimal() and '"…"' in given:
                yield int(given[at])


def asserted(source: str):
    """the numbers of findings that a test in C++ proves to be raised"""
    code = bare(source)
    for m in MACRO.finditer(code):
        given = parts(code, m.end())
        if m[1] == "TRUE" and "||" not in given[0]:
            yield from asked_for(given[0], TOLD)
        if m[1] == "NE" and len(given) == 2 and (given[1] == "nullptr" or given[1].endswith("npos")):
            yield from asked_for(given[0], FOUND)
        if m[1] == "EQ" and len(given) == 2:
            yield from (int(n) for part in given for n in PLACED.findall(part))
            yield from compared(*given)
            yield from compared(*reversed(given))
    for m in EACH_OF.finditer(code):
        yield from (int(n) for n in m[2].split(","))
    yield from tabled(code)


def unasserted(files: dict[str, str], tests: dict[str, str]) -> list[str]:
    proved = set()
    for name, text in tests.items():
        proved.update(map(int, PRINTED.findall(text)) if name.endswith(".py") else asserted(text))
    made = {(number, name) for name in files if name.endswith("_remarks.cpp") for number, _ in numbers_of(files[name])}
    return [f"{number} ({name}) is raised by no test" for number, name in sorted(made) if number not in proved]


def house() -> list[str]:
    files = {p.name: p.read_text(encoding="utf-8") for p in CORE.rglob("*.?pp")}
    tests = {str(p): p.read_text(encoding="utf-8") for p in TESTS.rglob("*") if p.suffix in (".cpp", ".hpp", ".py")
             and p.relative_to(TESTS).parts[0] not in NO_RAISING}
    count = sum(1 for n in files if n.endswith("_remarks.cpp") for _ in numbers_of(files[n]))
    print(f"{count} findings in {len(files)} files, {len(tests)} files of tests")
    if count < 20 or len(tests) < 50:
        return ["too few findings or tests were found; the scan looks in the wrong place"]
    return problems(files) + unasserted(files, tests)


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
    either = "Finding a() {\n  return bad ? refusal(299, x) : doubt(299, x);\n}\n"
    slips["299 (field_remarks.cpp: a) does not stand"] = {**good, "field_remarks.cpp": either}
    for rule, files in slips.items():
        if not any(rule in found for found in problems(files)):
            wrong.append(f"not caught: {rule}")
    return wrong + planted_tests()


def planted_tests() -> list[str]:
    files = {"field_remarks.cpp": remark("a", 1234)}
    taken = [
        "EXPECT_TRUE(has(solved(in).outcome.findings, 1234)) << \"so\";",
        "ASSERT_TRUE(says(r, 1234));",
        "EXPECT_TRUE(refused(in, 1234, \"readings[3].turn\"));",
        "EXPECT_EQ(has(f, 1234), !fits);",
        "EXPECT_EQ(finding(in, 1234).severity, Severity::Caution);",
        "EXPECT_EQ(field_of(f, 1234), \"log\");",
        "EXPECT_NE(find(f, 1234)->text.find(\"3.200 in\"), std::string::npos);",
        "EXPECT_EQ(refusal_of(\"[\"), 1234);",
        "EXPECT_EQ(read(\"\").error().front().number, 1234);",
        "EXPECT_EQ(refusals(e), std::vector<int>{1234});",
        "EXPECT_EQ(fields, (std::vector<std::string>{\"bkie:113\", \"records[0].taken:1234\"}));",
        "for (const int number : {1233, 1234}) EXPECT_TRUE(has(f, number)) << number;",
        "struct Row {\n  const char* what;\n  int number;\n};\nconst Row rows[] = {{\"x\", 1}, {\"y\", 1234}};\n"
        "for (const Row& row : rows) EXPECT_EQ(f.number, row.number);",
    ]
    not_taken = {
        "asserted nowhere": "EXPECT_TRUE(has(f, 1235));",
        "only in a comment": "EXPECT_TRUE(has(f, 1235));  // and EXPECT_TRUE(has(f, 1234));\n/* EXPECT_TRUE(has(f, 1234)); */",
        "only in a text": "EXPECT_TRUE(good) << \"EXPECT_TRUE(has(f, 1234))\";",
        "only in EXPECT_FALSE": "EXPECT_FALSE(has(f, 1234));\nEXPECT_FALSE(says(r, 1234));",
        "turned round": "EXPECT_TRUE(!has(f, 1234));\nEXPECT_EQ(has(f, 1234), false);",
        "this one or another": "EXPECT_TRUE(has(f, 1234) || has(f, 1235));",
        "asked and not asserted": "if (has(f, 1234)) ++torn;\nRC_PRE(!has(f, 1234));",
        "not found": "EXPECT_EQ(finding(in, 1234).number, 0);\nEXPECT_EQ(text_of(f, 1234), \"\");\n"
                     "EXPECT_EQ(text_of(f, 1234).find(\"shoes\"), std::string::npos);\nEXPECT_EQ(find(f, 1234), nullptr);",
        "true of no finding as well": "EXPECT_EQ(finding(in, 1234).severity, Severity::Note);",
        "another number": "EXPECT_EQ(length_mm(in), 1234);\nEXPECT_TRUE(solve(bend(1234, 0)));",
        "a row of no table": "struct Row {\n  const char* what;\n  int number;\n};\nconst Row rows[] = {{\"y\", 1234}};",
        "another place of the row": "struct Row {\n  int miles;\n  int number;\n  const char* what;\n};\n"
                                    "const Row rows[] = {{1234, 1, \"y\"}};\nEXPECT_EQ(f.number, row.number);",
    }
    wrong = [f"taken for no assertion: {test}" for test in taken if unasserted(files, {"a_test.cpp": test})]
    wrong += [f"not caught: {slip}" for slip, test in not_taken.items() if not unasserted(files, {"a_test.cpp": test})]
    prints = {'    self.assertIn("refusal 1234", ran.err)': False, '    # self.assertIn("refusal 1234", ran.err)': True,
              '    self.assertNotIn("refusal 1234", ran.err)': True, '    self.assertIn("1,234 mi", ran.out)': True}
    return wrong + [f"wrongly read: {test}" for test, lacking in prints.items()
                    if bool(unasserted(files, {"a_test.py": test})) != lacking]


found = {"house": house, "planted": planted}[sys.argv[1]]()
print("\n".join(found))
sys.exit(1 if found else 0)
