"""usage: term_rules.py house | planted

One thing has one name wherever people read it: in the program's sentences, in what is known of engines, in the README. What
is a name inside the program (a field, a kind, a folder) is none of this rule's business: only text with a blank in it is
read as a sentence. planted: each word that isn't ours must be caught.
"""
import json
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]

# what we don't say -> what we say
TERMS = {
    r"renew(s|ed|al|ing)?": "replace",
    r"(invoice|receipt)s?": "bill",
    r"sprung": "spring-loaded",
    r"(clock|speedo) (was |is )?(swap(ped)?|change[ds]?|read|shows?)": "odometer",
    r"mileage": "odometer, or miles",
    r"jugs?": "barrel",
    r"closing reading(s)?": "back to zero",
    r"facings?": "lobe face, or roller",
    r"support plate": "cam plate",
    r"FIM": "TIR",
    r"snooze[ds]?": "put off",
    r"tappets?": "lifter",
    r"undo the entry": "take back",
}
LITERAL = re.compile(r'"((?:[^"\\\n]|\\.)*)"')
NAMES = {"two cams, sprung chains"}  # words of the files, not of people
FEWEST = 2000  # sentences; fewer: the scan looks in the wrong place


def sentences_of_code(text: str):
    """(line, text) of each literal that is a sentence; neighbours are one, as the compiler joins them."""
    text = re.sub(r'"\s*\n\s*"', "", text)
    for at, line in enumerate(text.splitlines(), 1):
        if line.lstrip().startswith(("//", "#include")):
            continue
        for match in LITERAL.finditer(line):
            if " " in match[1] and match[1] not in NAMES:
                yield at, match[1]


def sentences_of_data(value):
    if isinstance(value, dict):
        for one in value.values():
            yield from sentences_of_data(one)
    elif isinstance(value, list):
        for one in value:
            yield from sentences_of_data(one)
    elif isinstance(value, str) and " " in value:
        yield value


def wrong_words(where: str, sentence: str) -> list[str]:
    return [f"{where}: “{found[0]}”, we say {ours}: {sentence[:90]}" for term, ours in TERMS.items()
            if (found := re.search(rf"\b{term}\b", sentence, re.IGNORECASE))]


def all_sentences():
    for folder in ("core", "app-desktop", "app-web"):
        for path in sorted((ROOT / folder).rglob("*.[ch]pp")):
            if "primer" not in path.name:  # bytes of a format
                for at, text in sentences_of_code(path.read_text(encoding="utf-8")):
                    yield f"{path.relative_to(ROOT)}:{at}", text
    for path in sorted((ROOT / "assets" / "knowledge").glob("*.json")):
        for text in sentences_of_data(json.loads(path.read_text(encoding="utf-8"))):
            yield path.name, text
    for at, line in enumerate((ROOT / "README.md").read_text(encoding="utf-8").splitlines(), 1):
        yield f"README.md:{at}", line


def house() -> list[str]:
    every = list(all_sentences())
    if len(every) < FEWEST:
        return [f"only {len(every)} sentences were found; the scan looks in the wrong place"]
    return [wrong for where, text in every for wrong in wrong_words(where, text)]


def planted() -> list[str]:
    missed = []
    for said in ("Renew it", "no receipt", "sprung shoes", "the clock was swapped", "its mileage", "both jugs", "a closing reading",
                 "the facing", "the support plate", "FIM of it", "snoozed it", "a tappet", "undo the entry"):
        code = f'return note(1, "f",\n    "Well: "\n    "{said} here");\n'
        if not any(wrong_words("", text) for _, text in sentences_of_code(code)):
            missed.append(f"“{said}” is not caught")
    for fine in ('kind("two cams, odometer")', 'word("renew")', '// we renew it', '"lengthen, clockwise seen from above"'):
        if any(wrong_words("", text) for _, text in sentences_of_code(fine)):
            missed.append(f"{fine} is caught")
    return missed


if __name__ == "__main__":
    found = {"house": house, "planted": planted}[sys.argv[1]]()
    print("\n".join(found))
    sys.exit(1 if found else 0)
