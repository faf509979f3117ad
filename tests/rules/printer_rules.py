"""usage: printer_rules.py house | planted

Text from somebody else's file leaves through a few doors, and each makes it harmless (base/harmless.hpp):
- a terminal: only say_on_command_line() writes to standard output or error;
- the screen: only write() of screens/widgets draws words, and only item.cpp tells the page what they are;
- a file for others: JSON, table and calendar have one writer each.
In the printers of lines, where a line break would begin a line of its own, each text of an entry or a record stands within
harmless(). And nobody makes text harmless in a way of his own.
planted: each of these rules is shown a slip that it must catch.
"""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
SOURCES = ("core", "app-desktop", "app-web")
DOORS = {  # file: what stands in it, and what of it must be there
    "app-desktop/command_line_files.cpp": ["harmless_lines(said.out)", "harmless_lines(said.err"],
    "core/screens/widgets/ui.cpp": ["const std::string shown = harmless_lines(text);"],
    "core/screens/widgets/item.cpp": ["text_in_json(harmless_lines(text))"],
    "core/records/strict_json.cpp": ["harmless_json(scalar_text(value))"],
    "core/log/log_csv.cpp": ["const std::string shown = harmless_lines(text);"],
    "core/exchange/calendar.cpp": ["for (const char c : harmless_lines(text))"],
    "core/records/field_reader.cpp": ["t.set(harmless("],
}
ONLY_IN = [  # what, where alone, in words
    (re.compile(r"\bstd::(?:cout|cerr|clog)\b|\b(?:f|v|vf)?printf\s*\(|\bf?puts\s*\(|\bfwrite\s*\(|\bSTD(?:OUT|ERR)_FILENO\b"),
     {"app-desktop/command_line_files.cpp"}, "writes to the terminal by itself"),
    (re.compile(r"\bAddText\s*\(|\bImGui::(?:Text|LabelText|BulletText|SeparatorText|SetTooltip)\w*\s*\("),
     {"core/screens/widgets/ui.cpp"}, "draws words by itself"),
    (re.compile(r"\biscntrl\b|<\s*0x20\b|'\\x1[bB]'"), {"core/base/harmless.cpp"}, "judges characters by itself"),
]
# Texts of an entry or a record as they were entered.
RAW = re.compile(r"\b(?:\w+(?:\.|->))?(?:entered_text|what_of|label_of_entry|text_of|first_of)\s*\(|"
                 r"\b\w+(?:\(\))?(?:\.|->)(?:name|note|by|day|made|id|bike|taken|kind|reference)\(|\.model_year\b|\bbike\.id\b")
PRINTS = re.compile(r"^(?:records::)?(?:Said|std::string) (\w*(?:line|lines|heading|table|block|print)\w*|print_\w+)\(", re.M)
SAFE = re.compile(r"(?:\b(?:harmless\w*|no_formula|number_in|escaped|find_kind|measured|bike_meant|find_bike|find_unit|sizeof)"
                  r"|\b(?:if|while|switch|return find))\s*$")
PRINTERS = ("core/log/log_commands.cpp", "core/due/due_words.cpp")


def without_comments(text: str) -> str:
    return re.sub(r"//[^\n]*", "", text)


def functions_that_print(text: str):
    """Name and body of each."""
    for found in PRINTS.finditer(text):
        start = text.find("{", found.end())
        end = text.find("\n}", start)
        yield found[1], text[start:end]


def enclosed(body: str, at: int) -> bool:
    """Is what stands here, or any bracket around it in this statement, given to a function that makes it harmless?"""
    depth = 0
    for i in range(at - 1, -1, -1):
        if body[i] in ";{}":
            return False
        if body[i] == ")":
            depth += 1
        elif body[i] == "(":
            if depth == 0 and SAFE.search(body[:i]):
                return True
            depth = max(0, depth - 1)
    return False


def raw_lines(path: str, text: str) -> list[str]:
    wrong = []
    for name, body in functions_that_print(without_comments(text)):
        for found in RAW.finditer(body):
            line = body[body.rfind("\n", 0, found.start()) + 1:body.find("\n", found.end())]
            kept = re.match(r"\s*const (?:auto|std::string)&? (\w+) = ", line)
            if enclosed(body, found.start()) or re.search(r"\.empty\(\)\)?$", line[:line.find(")", line.find(found[0])) + 12]):
                continue
            if kept and not re.search(r"\+ " + kept[1] + r"\b|\{\}.*\b" + kept[1] + r"\b", body):
                continue
            wrong.append(f"{path}: {name}() prints {found[0].strip()}…) as it was entered: {line.strip()}")
    return wrong


def by_itself(path: str, text: str) -> list[str]:
    code = without_comments(text)
    return [f"{path} {words}: {m[0]}" for what, where, words in ONLY_IN if path not in where for m in what.finditer(code)]


def open_doors(read) -> list[str]:
    return [f"{path} lets text out as it came: “{wanted}” isn't there" for path, all_wanted in DOORS.items()
            for wanted in all_wanted if re.sub(r"\s+", "", wanted) not in re.sub(r"\s+", "", read(path))]


def house() -> list[str]:
    read = lambda path: (ROOT / path).read_text(encoding="utf-8")
    wrong = open_doors(read)
    files = [p for folder in SOURCES for p in sorted((ROOT / folder).rglob("*.[ch]pp"))]
    if len(files) < 200:
        return [f"only {len(files)} sources were found; the scan looks in the wrong place"]
    for file in files:
        path = file.relative_to(ROOT).as_posix()
        wrong += by_itself(path, file.read_text(encoding="utf-8"))
    for path in PRINTERS:
        if not list(functions_that_print(read(path))):
            wrong.append(f"{path} has no printers; the scan looks in the wrong place")
        wrong += raw_lines(path, read(path))
    return wrong


def planted() -> list[str]:
    wrong = []
    for path, line, caught in (
            ("core/due/x.cpp", "std::cout << bike.name();", 1), ("app-desktop/x.cpp", "printf(\"%s\", name);", 1),
            ("app-desktop/x.cpp", "::write(STDOUT_FILENO, a, b);", 1), ("core/screens/x.cpp", "list->AddText(font, 1, at, ink, a, b);", 1),
            ("core/screens/x.cpp", "ImGui::TextUnformatted(a);", 1), ("core/log/x.cpp", "if (c < 0x20) return '?';", 1),
            ("core/log/x.cpp", "// std::cout is nobody's", 0), ("core/screens/x.cpp", "write(*list, font, 1, at, ink, text);", 0)):
        if len(by_itself(path, line)) != caught:
            wrong.append(f"{'not caught' if caught else 'caught though harmless'}: {line}")
    for body, caught in (("return bike.name() + \"\\n\";", 1), ("return harmless(bike.name()) + \"\\n\";", 0),
                         ("line += \" \" + entry.entered_text(\"grade\");", 1), ("if (!entry.note().empty()) return harmless(entry.note());", 0),
                         ("return fmt::format(\"{}\", what_of(entry));", 1), ("return fmt::format(\"{}\", harmless(what_of(entry)));", 0),
                         ("const std::string text = entry.entered_text(f);\n  return \"x\" + text;", 1),
                         ("const std::string text = entry.entered_text(f);\n  return \"x\" + harmless(text);", 0)):
        if len(raw_lines("x.cpp", f"std::string some_line(const Entry& e) {{\n  {body}\n}}\n")) != caught:
            wrong.append(f"{'not caught' if caught else 'caught though harmless'}: {body}")
    closed = {path: "".join(wanted) for path, wanted in DOORS.items()}
    if open_doors(closed.get):
        wrong.append("a closed door was taken for an open one")
    for path in DOORS:
        if len(open_doors(dict(closed, **{path: "said.out"}).get)) != len(DOORS[path]):
            wrong.append(f"an open door was not caught: {path}")
    return wrong


found = {"house": house, "planted": planted}[sys.argv[1]]()
print("\n".join(found))
sys.exit(1 if found else 0)
