"""usage: font_characters.py house | planted

Every character that the core can show stands in the fonts as trimmed (scripts/make-fonts): none comes out as a box or a
question mark. planted: a character that they lack must be caught.
"""
import pathlib
import re
import sys

from fontTools.ttLib import TTFont

ROOT = pathlib.Path(__file__).resolve().parents[2]
FONT = ROOT / "build" / "fonts" / "regular.otf"
READ_ONLY = {"\u22c5"}  # understood when typed, never written
STRING = re.compile(r'"((?:[^"\\]|\\.)*)"')


def missing(text: str, there: set[int]) -> list[str]:
    code = re.sub(r"(?m)(^|\s)//.*$", "", text)
    shown = "".join(STRING.findall(code))
    return sorted({c for c in shown if ord(c) > 126 and ord(c) not in there and c not in READ_ONLY})


def main(check: str) -> int:
    there = set(TTFont(FONT).getBestCmap())
    if check == "planted":
        return 0 if missing('say("y\u0304 \u2264 2"); // \u0305', there) == ["\u0304"] else 1
    found = 0
    for path in sorted((ROOT / "core").rglob("*.[ch]pp")):
        for character in missing(path.read_text(encoding="utf-8"), there):
            print(f"{path.relative_to(ROOT)}: the fonts lack {character!r} (U+{ord(character):04X})")
            found += 1
    return 1 if found else 0


sys.exit(main(sys.argv[1]))
