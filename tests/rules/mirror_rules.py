"""usage: mirror_rules.py house | planted

Every question of core/calc/questions.def has its header, descriptor, tests, published rows, example, expected output and
schema, or says here why not. And what a public header or a page for readers names is there: files, and numbers of findings.
planted: each of these rules is shown a slip that it must catch.
"""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
QUESTION = re.compile(r"^QUESTION\((\w+), \w+, \w+\)", re.M)
WANTED = {  # what: where, with {0} for the question's name
    "header": "core/calc/{0}/{0}.hpp",
    "descriptor": "core/calc/{0}/{0}_question.cpp",
    "test": "tests/calc/{0}/{0}_test.cpp",
    "properties": "tests/calc/{0}/{0}_properties_test.cpp",
    "independent route": "tests/calc/{0}/{0}_independent_test.cpp",
    "published rows": "tests/oracle/{0}_rows.hpp",
    "example": "examples/{0}.json",
    "expected text": "examples/expected/{0}.txt",
    "expected figures": "examples/expected/{0}.json",
    "schema": "assets/schema/{0}.schema.json",
}
REASONS = {
    ("runout", "example"): "two: runout_swing and runout_stations",
    ("runout", "expected text"): "of those two",
    ("runout", "expected figures"): "of those two",
    ("gear_pair", "independent route"): "its geometry is checked by tests/maths/involute_independent_test.cpp",
}
OURS = re.compile(r"(?<![\w/.-])((?:[\w-]+/)*[\w-]+\.(?:hpp|cpp|mjs|py|js|def|schema\.json)|(?:examples|assets|scripts|tests|core|app-web|app-desktop)/[\w/.-]*\w)(?![\w/*{(])")
ELSEWHERE = re.compile(r"^(?:fmt|nlohmann|tl|date|CLI|gtest|Eigen|boost|imgui)")
FINDINGS_OF = re.compile(r"Findings?(?: it can raise| raised)?: ((?:[^.]|\.(?=\w))*)")
NUMBERS = re.compile(r"\b(\d{3,4})(?:-(\d{3,4}))?\b")
MADE = re.compile(r"(?:\b(?:return|=)\s+(?:\w+\s*\(|\w*\s*\{)|[?:]\s+\w+\s*\()\s*(\d{1,4})\s*,")
LINE_OF_A_COMMENT = re.compile(r"^\s*// ?(.*)$", re.M)


def not_mirrored(questions: list[str], there) -> list[str]:
    return [f"{name} has no {what}: {where.format(name)}" for name in questions for what, where in WANTED.items()
            if (name, what) not in REASONS and not there(where.format(name))]


def stale_reasons(questions: list[str], there) -> list[str]:
    return [f"{name} has its {what} after all" for name, what in REASONS
            if name not in questions or there(WANTED[what].format(name))]


PLACEHOLDER = re.compile(r"NAME|KIND|TOPIC|_N\.|^_|^\.|^X\.")  # any of a kind: NAME_question.cpp, log_version_N.json, <topic>_remarks.cpp


def files_named(text: str) -> set[str]:
    return {m[1] for m in OURS.finditer(text) if not ELSEWHERE.match(m[1]) and not PLACEHOLDER.search(m[1].rsplit("/")[-1])}


def files_missing(where: str, text: str, known: set[str]) -> list[str]:
    """A path must be there from the root or from its folder on; a bare name anywhere."""
    ends = {"/" + path for path in known}
    return [f"{where} names {name}, which isn't there" for name in sorted(files_named(text))
            if not any(end.endswith("/" + name) or f"/{name}/" in end or f"/{name}." in end for end in ends)]


def numbers_missing(where: str, comments: str, made: set[int]) -> list[str]:
    wrong = []
    for paragraph in FINDINGS_OF.findall(comments):
        for first, last in NUMBERS.findall(paragraph):
            low, high = int(first), int(last or first)
            if low < 100 or high > 1999:
                continue
            if not any(low <= number <= high for number in made):
                wrong.append(f"{where} names finding {first}{'-' + last if last else ''}, which nothing raises")
    return wrong


def comments_of(text: str) -> str:
    return " ".join(LINE_OF_A_COMMENT.findall(text))


def house() -> list[str]:
    questions = QUESTION.findall((ROOT / "core/calc/questions.def").read_text(encoding="utf-8"))
    if len(questions) < 8:
        return [f"only {len(questions)} questions were found; the scan looks in the wrong place"]
    there = lambda path: (ROOT / path).exists()
    wrong = not_mirrored(questions, there) + stale_reasons(questions, there)
    folders = ("core", "tests", "app-web", "app-desktop", "assets", "examples", "scripts")
    known = {p.relative_to(ROOT).as_posix() for folder in folders for p in (ROOT / folder).rglob("*") if p.is_file()}
    made = {int(m[1]) for p in (ROOT / "core").rglob("*.cpp") for m in MADE.finditer(p.read_text(encoding="utf-8"))}
    for path in sorted((ROOT / "core").rglob("*.hpp")):
        comments = comments_of(path.read_text(encoding="utf-8"))
        where = path.relative_to(ROOT).as_posix()
        wrong += files_missing(where, comments, known) + numbers_missing(where, comments, made)
    for page in ("README.md", "DEVELOPERS.md"):
        text = re.sub(r"\bbuild/[\w/.-]+|\bNAME\w*", "", (ROOT / page).read_text(encoding="utf-8"))
        wrong += files_missing(page, text, known)
    return wrong


def planted() -> list[str]:
    wrong = []
    if not_mirrored(["tiny"], lambda path: "oracle" not in path) != ["tiny has no published rows: tests/oracle/tiny_rows.hpp"]:
        wrong.append("a question without rows was not caught")
    known = {"core/calc/runout/runout.hpp", "examples/runout_swing.json"}
    for text, caught in (("see runout.hpp and examples/runout_swing.json", 0), ("Example: examples/runout.json.", 1),
                         ("held by app-desktop/disk_files.cpp", 1), ("calc/runout/runout.hpp", 0), ("<fmt/format.hpp>", 0)):
        if len(files_missing("x", text, known)) != caught:
            wrong.append(f"{'not caught' if caught else 'caught though harmless'}: {text}")
    for text, caught in (("Findings: 1001-1008 refusals · 1020 a doubt.", 0), ("Findings: 1003-1008 refusals.", 1),
                         ("Findings: 1020-1032 doubts · 1077.", 1)):
        if len(numbers_missing("x", text, {1001, 1020})) != caught:
            wrong.append(f"{'not caught' if caught else 'caught though harmless'}: {text}")
    if not stale_reasons(["runout", "gear_pair"], lambda path: True):
        wrong.append("a reason for what is there was not caught")
    return wrong


found = {"house": house, "planted": planted}[sys.argv[1]]()
print("\n".join(found))
sys.exit(1 if found else 0)
