"""usage: function_length.py house | planted

No function of ours is longer than a screen. The sources are formatted by clang-format, so a function ends at the first
closing brace that stands as far in as the line it began on. planted: a long function must be caught.
"""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
MOST_LINES = 60
STATEMENT = re.compile(r"\s*(if|for|while|switch|do|else|return|case)\b|[^(]*(\.|->|=)")
NOT_A_FUNCTION = re.compile(r"^\s*(namespace|struct|class|enum|union|constexpr|const|static const|inline constexpr|#|//|\}|extern \"C\" \{)")


def indent_of(line: str) -> int:
    return len(line) - len(line.lstrip())


def head_of(lines: list[str], at: int) -> int:
    """Where a signature that runs over several lines begins: continuation lines and initialisers stand four further in."""
    while at > 0 and indent_of(lines[at]) >= 4 and lines[at - 1] and not re.search(r"[;}{]$", lines[at - 1]):
        at -= 1
    return at


def functions(text: str):
    """(line, length, first line) of each function, free or in a class."""
    lines = text.splitlines()
    for i, line in enumerate(lines):
        if not line.endswith("{"):
            continue
        start = head_of(lines, i)
        first = lines[start]
        if indent_of(first) > 2 or "(" not in "".join(lines[start:i + 1]) or NOT_A_FUNCTION.match(first) or STATEMENT.match(first):
            continue
        end = next((j for j in range(i + 1, len(lines)) if re.match(rf"^ {{{indent_of(first)}}}\}}", lines[j])), i)
        yield start + 1, end - start + 1, first.strip()


def too_long(path: str, text: str) -> list[str]:
    return [f"{path}:{at}: {length} lines: {head}" for at, length, head in functions(text) if length > MOST_LINES]


def house() -> list[str]:
    wrong, lengths = [], []
    for folder in ("core", "app-desktop", "app-web"):
        for path in sorted((ROOT / folder).rglob("*.[ch]pp")):
            text = path.read_text(encoding="utf-8")
            lengths += [length for _, length, _ in functions(text)]
            wrong += too_long(path.relative_to(ROOT).as_posix(), text)
    lengths.sort()
    if len(lengths) < 200:
        return [f"only {len(lengths)} functions were found; the scan looks in the wrong place"]
    print(f"{len(lengths)} functions, median {lengths[len(lengths) // 2]}, 90 % {lengths[len(lengths) * 9 // 10]}, longest {lengths[-1]}")
    return wrong


def planted() -> list[str]:
    body = "  ++i;\n" * 70
    wrong = []
    for text in (f"int f(int i) {{\n{body}}}\n", f"struct S {{\n  int f(int i) {{\n{body}  }}\n}};\n"):
        if not too_long("planted.cpp", text):
            wrong.append("a long function was not caught")
    if too_long("fine.cpp", f"constexpr int table[]{{\n{body}}};\nnamespace x {{\n{body}}}\nint f() {{\n  return 1;\n}}\n"):
        wrong.append("a table was taken for a function")
    return wrong


found = {"house": house, "planted": planted}[sys.argv[1]]()
print("\n".join(found))
sys.exit(1 if found else 0)
