#!/usr/bin/env python3
"""usage: later.py PROGRAM.wasm SITE

Divides the page's program in two, so that a first visit can measure a crank while the rest still comes: SITE gets
camside_web.wasm and camside_rest.HASH.wasm, and its parts.js the name of the latter. PROGRAM must carry its functions' names.

What comes later is found by reachability. From all that the page or a table of functions may call, every call is followed,
except into the doors below; what was not reached is the rest. A door is a function that the screens enter only when the rest is
here: the log's once the log was opened, which waits for it (page/host.js), a question's once its tile can be pressed
(core/calc/questions.def). tests/browser/parts.mjs holds the rest back and tries everything else.
"""
import collections
import hashlib
import pathlib
import re
import subprocess
import sys

# Called straight from the first part.
DOORS = ["screens::BikesScreen::draw_page", "screens::BikesScreen::draw_list", "screens::BikesScreen::draw_bottom",
         "screens::BikeLog::look_again", "screens::LogToBike::draw", "screens::LogTransfer::take", "screens::LogTransfer::read",
         "screens::LookOverScreen::draw_middle", "screens::LookOverScreen::draw_list", "screens::LookOverScreen::draw_side",
         "screens::LookOverScreen::draw_bottom", "screens::LookOverScreen::bottom_height", "screens::LookOverScreen::title",
         "screens::LookOverScreen::back", "page::BrowserLog::told", "page::BrowserLog::appended"]
# Called through tables: calculators and drawings of the questions that the list says come later, and the ways of zlib. Two
# looks stay: they keep clocks and choices that the page looks after from its start.
QUESTIONS = pathlib.Path(__file__).resolve().parents[1] / "core" / "calc" / "questions.def"
LATER_ONES = re.findall(r"^QUESTION\((\w+), \w+, Later\)", QUESTIONS.read_text(), re.M)
LOOKS = sorted(set(LATER_ONES) - {"pushrod", "gear_pick"})
LATER = re.compile(rf"camside::(records::entered|{'|'.join(LATER_ONES)})::|({'|'.join(LOOKS)})_look|^deflate_(stored|fast|slow)$")
# A std::function is copied with the table of kinds, long before it is called.
COPIED = re.compile(r"__func<.*::(__clone|destroy\w*)\(")
# A small function may stand for others with the same code, whatever its name says; so does one with several places in the tables.
SMALL = 300  # characters of text

FEATURES = ["--enable-bulk-memory", "--enable-sign-ext", "--enable-nontrapping-float-to-int", "--enable-mutable-globals"]


class Program:
    def __init__(self, wasm):
        self.calls, self.size, self.tables, self.exports = {}, {}, collections.Counter(), set()
        name = ""
        text = subprocess.run(["wasm-dis", *FEATURES, wasm], check=True, capture_output=True).stdout
        for line in text.decode(errors="replace").splitlines():
            if line.startswith(" (func $"):
                name = re.match(r" \(func \$(\S+)", line)[1]
                self.calls[name], self.size[name] = set(), 0
            elif line.startswith("  "):
                self.size[name] += len(line.strip())
                self.calls[name].update(re.findall(r"\(call \$([^\s)]+)", line))
            elif line.startswith(" (elem"):
                self.tables.update(re.findall(r"\$([^\s)]+)", line))
            elif line.startswith((" (export", " (start")):
                self.exports.update(re.findall(r"\$([^\s)]+)", line))
        for calls in self.calls.values():
            calls.intersection_update(self.calls)  # imports are no functions of ours
        plain = subprocess.run(["c++filt"], input="\n".join(self.calls), check=True, capture_output=True, text=True)
        self.plain = dict(zip(self.calls, plain.stdout.split("\n")))

    def surely_later(self):
        """Named like what comes later, and not by chance: too big to stand for another, or calling one that is."""
        named = {name for name, plain in self.plain.items()
                 if LATER.search(plain) and not COPIED.search(plain) and self.tables[name] < 2}
        sure = {name for name in named if self.size[name] > SMALL}
        while more := {name for name in named - sure if self.calls[name] & sure}:
            sure |= more
        return sure

    def later(self):
        doors = set()
        for door in DOORS:
            found = {name for name, plain in self.plain.items() if plain.startswith(f"camside::{door}(")}
            if not found:
                sys.exit(f"later: no function is called {door}; was it put into its caller?")
            doors |= found
        at_hand = set()
        ahead = [name for name in (self.exports | self.tables.keys() - self.surely_later()) & self.calls.keys()]
        while ahead:
            name = ahead.pop()
            if name not in at_hand:
                at_hand.add(name)
                ahead.extend(self.calls[name] - doors - at_hand)
        return sorted(self.calls.keys() - at_hand)


def divide(wasm, site):
    names = site / "later.txt"
    names.write_text("".join(f"{name}\n" for name in Program(wasm).later()))
    rest = site / "camside_rest.wasm"
    subprocess.run(["wasm-split", *FEATURES, wasm, f"--split-funcs=@{names}", "-o1", site / "camside_web.wasm", "-o2", rest,
                    "--import-namespace=first", "--placeholder-namespace=rest", "--export-prefix=%"], check=True)
    names.unlink()
    # A rest of another version would be another program: its name says which it is.
    named = rest.with_name(f"camside_rest.{hashlib.sha256(rest.read_bytes()).hexdigest()[:8]}.wasm")
    rest.rename(named)
    parts = site / "parts.js"
    text = parts.read_text()
    if text.count(rest.name) != 1:
        sys.exit(f"later: {parts} must name {rest.name} once")
    parts.write_text(text.replace(rest.name, named.name))


divide(sys.argv[1], pathlib.Path(sys.argv[2]))
