"""usage: include_rules.py house | planted

house: scans the sources for anything a folder must not see. planted: gives every rule a violation and insists that it is
caught, and a harmless line that must pass.
"""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
# A row may use the rows above it.
ROWS = ["base", "units", "findings", "fields", "maths", "calc", "records", "log", "exchange", "knowledge", "due", "storage",
        "work", "screens"]
# Which question builds on which other; none else may.
LINKS = {
    "backlash": {"gear_pair", "lash_temperature"},
    "gear_pair": {"lash_temperature"},
    "gear_pick": {"gear_pair", "lash_temperature"},
    "look_over": {"life"},
    "wear": {"inspection_due"},
}

DEAR_IMGUI = re.compile(r'#include [<"](imgui|imstb)')
WINDOW = re.compile(r'#include [<"](SDL|GLFW|GL/|GLES|imgui_impl)')
BROWSER = re.compile(r'__EMSCRIPTEN__|#include [<"]emscripten|EM_JS|EM_ASM')
DISK = re.compile(r"#include <(fstream|filesystem|cstdio|stdio\.h|unistd\.h|fcntl\.h|sys/.*)>|\bfopen\s*\(")
CLOCK = re.compile(r"_clock::now|\bstd::time\s*\(|[^\w.:]time\s*\(\s*(nullptr|0|NULL)\s*\)|#include <(ctime|time\.h)>")
CHANCE = re.compile(r"#include <random>|\brandom_device\b|\bs?rand\s*\(")
LOCALE = re.compile(r"#include <(iostream|locale|clocale)>|\bsetlocale\s*\(|std::locale")
EXCEPTION = re.compile(r"\b(throw|try|catch|dynamic_cast|typeid)\b\s*[({<\w;]")
INCLUDED_ROW = re.compile(r'#include "(\w+)/')
INCLUDED_QUESTION = re.compile(r'#include "calc/(\w+)/(\w+)\.hpp"')
JSON = re.compile(r"\brecords::Json\b|#include [<\"](nlohmann/|records/(strict_json|json_))")

NEW_ID = ("records", "new_id.cpp")

# rule: its name, the files it is about, what they must not hold
PATTERN_RULES = [
    ("only screens and the apps see Dear ImGui", lambda p: p[0] == "core" and p[1] != "screens", DEAR_IMGUI),
    ("only the apps see windows", lambda p: p[0] == "core", WINDOW),
    ("only app-web sees the browser", lambda p: p[0] in ("core", "app-desktop"), BROWSER),
    ("only the apps' stores touch the disk", lambda p: p[0] == "core", DISK),
    ("the core has no clock", lambda p: p[0] == "core", CLOCK),
    ("only the names of new records come from chance", lambda p: p[0] == "core" and p[1:] != NEW_ID, CHANCE),
    ("the core has no locale", lambda p: p[0] == "core", LOCALE),
    ("errors are values in the core", lambda p: p[0] == "core", EXCEPTION),
    ("only what writes and reads files knows JSON", lambda p: p[:2] == ("core", "screens"), JSON),
]
LAYERS = "a folder of core uses only the rows above it"
DOORS = "only calc/X/X.hpp may be included from outside of calc/X"
LISTED = "questions build on each other only where LINKS says so"


def code_lines(text: str):
    """Lines without comments and without the insides of strings, numbered from 1."""
    text = re.sub(r"/\*.*?\*/", lambda m: "\n" * m.group().count("\n"), text, flags=re.S)
    for number, line in enumerate(text.splitlines(), 1):
        if not line.lstrip().startswith("#include"):
            line = re.sub(r'"(\\.|[^"\\])*"', '""', line)
        yield number, line.split("//")[0]


def layer_broken(parts: tuple[str, ...], line: str) -> bool:
    included = INCLUDED_ROW.search(line)
    if parts[0] != "core" or not included or parts[1] not in ROWS or included[1] not in ROWS:
        return False
    return ROWS.index(included[1]) > ROWS.index(parts[1])


def question_of(parts: tuple[str, ...]) -> str:
    return parts[2] if parts[:2] == ("core", "calc") and len(parts) > 3 else ""


def not_by_the_door(parts: tuple[str, ...], line: str) -> bool:
    included = INCLUDED_QUESTION.search(line)
    return bool(included) and included[1] != question_of(parts) and included[1] != included[2]


def link_not_listed(parts: tuple[str, ...], line: str) -> bool:
    included, question = INCLUDED_QUESTION.search(line), question_of(parts)
    return bool(included and question) and included[1] != question and included[1] not in LINKS.get(question, ())


def circles() -> list[str]:
    """A question that comes back to itself along the links."""
    def reaches(start: str, at: str, seen: frozenset) -> bool:
        return any(to == start or (to not in seen and reaches(start, to, seen | {to})) for to in LINKS.get(at, ()))
    return [f"the links of {question} come back to it" for question in LINKS if reaches(question, question, frozenset())]


def violations(path: str, text: str):
    parts = pathlib.PurePosixPath(path).parts
    for number, line in code_lines(text):
        for name, about, pattern in PATTERN_RULES:
            if about(parts) and pattern.search(line):
                yield f"{path}:{number}: {name}: {line.strip()}"
        if layer_broken(parts, line):
            yield f"{path}:{number}: {LAYERS}: {line.strip()}"
        if parts[0] in ("core", "app-desktop", "app-web") and not_by_the_door(parts, line):
            yield f"{path}:{number}: {DOORS}: {line.strip()}"
        if link_not_listed(parts, line):
            yield f"{path}:{number}: {LISTED}: {line.strip()}"


def sources():
    for folder in ("core", "app-desktop", "app-web"):
        for path in sorted((ROOT / folder).rglob("*")):
            if path.suffix in (".hpp", ".cpp", ".h", ".c"):
                yield path.relative_to(ROOT).as_posix(), path.read_text(encoding="utf-8")


def house() -> list[str]:
    files = list(sources())
    if len(files) < 20:
        return [f"only {len(files)} sources were found; the scan looks in the wrong place"]
    rooms = {path.name for path in (ROOT / "core").iterdir() if path.is_dir()}
    strangers = [f"core/{room} stands in no row" for room in sorted(rooms - set(ROWS))]
    return strangers + circles() + [found for path, text in files for found in violations(path, text)]


PLANTED = {  # file, line, rule that must catch it
    ("core/calc/planted.cpp", "#include <imgui.h>"): "Dear ImGui",
    ("core/screens/planted.cpp", "#include <SDL.h>"): "see windows",
    ("core/screens/planted.hpp", "#include <GLFW/glfw3.h>"): "see windows",
    ("core/storage/planted.cpp", "#ifdef __EMSCRIPTEN__"): "the browser",
    ("app-desktop/planted.cpp", "#include <emscripten/html5.h>"): "the browser",
    ("core/records/planted.cpp", "#include <fstream>"): "the disk",
    ("core/storage/planted.cpp", 'FILE* file = fopen("x", "r");'): "the disk",
    ("core/calc/planted.cpp", "auto now = std::chrono::system_clock::now();"): "no clock",
    ("core/calc/planted.cpp", "auto now = time(nullptr);"): "no clock",
    ("core/calc/planted.cpp", "srand(7);"): "from chance",
    ("core/records/planted.cpp", "#include <random>"): "from chance",
    ("core/units/planted.cpp", "#include <iostream>"): "no locale",
    ("core/units/planted.cpp", "throw std::runtime_error(text);"): "errors are values",
    ("core/screens/planted.cpp", "if (auto* row = dynamic_cast<Row*>(part)) {"): "errors are values",
    ("core/units/planted.hpp", '#include "calc/runout/runout.hpp"'): "rows above it",
    ("core/calc/planted.cpp", '#include "records/measurement.hpp"'): "rows above it",
    ("core/records/planted.cpp", '#include "screens/shell.hpp"'): "rows above it",
    ("core/calc/look_over/planted.cpp", '#include "knowledge/knowledge.hpp"'): "rows above it",
    ("core/knowledge/planted.cpp", '#include "storage/store.hpp"'): "rows above it",
    ("core/base/planted.hpp", '#include "units/unit.hpp"'): "rows above it",
    ("core/maths/planted.cpp", '#include "calc/wear/wear.hpp"'): "rows above it",
    ("core/fields/planted.cpp", '#include "maths/coverage.hpp"'): "rows above it",
    ("core/records/planted.cpp", '#include "log/log.hpp"'): "rows above it",
    ("core/log/planted.cpp", '#include "exchange/qr_code.hpp"'): "rows above it",
    ("core/exchange/planted.cpp", '#include "due/due_board.hpp"'): "rows above it",
    ("core/due/planted.cpp", '#include "work/settings.hpp"'): "rows above it",
    ("core/work/planted.cpp", '#include "screens/words.hpp"'): "rows above it",
    ("core/work/planted.hpp", "#include <imgui.h>"): "Dear ImGui",
    ("core/records/planted.cpp", '#include "calc/runout/runout_readings.hpp"'): "from outside",
    ("core/calc/wear/planted.cpp", '#include "calc/runout/runout_remarks.hpp"'): "from outside",
    ("app-desktop/planted.cpp", '#include "calc/gear_pick/gear_pick_sets.hpp"'): "from outside",
    ("core/calc/wear/planted.hpp", '#include "calc/runout/runout.hpp"'): "LINKS says so",
    ("core/calc/gear_pair/planted.cpp", '#include "calc/backlash/backlash.hpp"'): "LINKS says so",
    ("core/screens/bench/planted.cpp", "records::Json json;"): "knows JSON",
    ("core/screens/planted.hpp", '#include "records/strict_json.hpp"'): "knows JSON",
}
HARMLESS = [
    ("core/screens/fine.cpp", "#include <imgui.h>"),
    ("core/records/fine.cpp", '#include "calc/runout/runout.hpp"'),
    ("core/calc/runout/fine.cpp", '#include "calc/runout/runout_readings.hpp"'),
    ("core/calc/backlash/fine.cpp", '#include "calc/gear_pair/gear_pair.hpp"'),
    ("core/work/fine.cpp", '#include "records/strict_json.hpp"'),
    ("core/knowledge/fine.cpp", '#include "records/strict_json.hpp"'),
    ("core/calc/fine.cpp", "// try it, throw it away: no clock, #include <iostream>"),
    ("core/findings/fine.cpp", 'return "Try again, catch (the) needle";'),
    ("core/calc/fine.cpp", "const double settle_time(double s);"),
    ("core/records/new_id.cpp", "#include <random>"),
    ("core/calc/fine.cpp", "const double operand(double s);"),
    ("app-web/fine.cpp", "#include <emscripten/html5.h>"),
    ("app-desktop/fine.cpp", "#include <fstream>"),
]


def planted() -> list[str]:
    wrong = []
    for (path, line), rule in PLANTED.items():
        if not any(rule in found for found in violations(path, line + "\n")):
            wrong.append(f"not caught by '{rule}': {path}: {line}")
    for path, line in HARMLESS:
        wrong += [f"caught though harmless: {found}" for found in violations(path, line + "\n")]
    LINKS["life"] = {"look_over"}
    if not circles():
        wrong.append("a circle of links was not caught")
    return wrong


problems = {"house": house, "planted": planted}[sys.argv[1]]()
print("\n".join(problems))
sys.exit(1 if problems else 0)
