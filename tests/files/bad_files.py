"""Files that must be refused: name, bytes, and a piece of the message. The large ones are made here, not kept."""
import json

HEAD = '{"camside": 1, "kind": "measurements", "records": ['


def with_entered(**changes):
    """A sound gear pair with some fields changed; None takes a field out."""
    entered = {
        "gear1": {"teeth": 17},
        "gear2": {"teeth": 34},
        "module": "16 DP",
        "centre_distance": "1.5938 in",
    }
    for name, value in changes.items():
        if value is None:
            entered.pop(name)
        else:
            entered[name] = value
    record = {"kind": "gear_pair", "entered": entered}
    return json.dumps({"camside": 1, "kind": "measurements", "records": [record]}).encode()


GOOD = with_entered()

# Whole files
REFUSED = [
    ("empty", b"", "nothing in it"),
    ("blanks", b" \n\t\r\n", "nothing in it"),
    ("NUL alone", b"\0", "NUL"),
    ("NUL behind the value", GOOD + b"\0", "NUL"),
    ("NUL inside", GOOD.replace(b"16 DP", b"16\0DP"), "NUL"),
    ("NUL escaped", GOOD.replace(b"16 DP", b"16\\u0000DP"), "NUL"),
    ("not UTF-8", GOOD.replace(b"16 DP", b"16 \xb5m"), "not UTF-8"),
    ("UTF-16", GOOD.decode().encode("utf-16"), "not UTF-8"),
    ("UTF-8 cut", GOOD + b"\xe2\x82", "not UTF-8"),
    ("overlong UTF-8", GOOD.replace(b"16 DP", b"16 \xc0\xaf"), "not UTF-8"),
    ("binary", bytes(range(256)), "NUL"),
    ("larger than 64 MiB", GOOD + b" " * (64 << 20), "larger than 64 MiB"),
    ("deep lists", b"[" * 100_000 + b"]" * 100_000, "deeper than 64"),
    ("deep objects", b'{"a":' * 100_000, "deeper than 64"),
    ("endless depth", b"[" * (32 << 20), "deeper than 64"),
    ("wide object", b"{" + b",".join(b'"n%d":0' % i for i in range(300)) + b"}", "more than 256 names"),
    ("truncated", GOOD[: len(GOOD) // 2], "too early"),
    ("last bracket missing", GOOD[:-1], "too early"),
    ("text cut", b'{"camside": 1, "ki', "too early"),
    ("trailing text", GOOD + b" {}", "more text after the end"),
    ("two values", GOOD + GOOD, "more text after the end"),
    ("comment", b"// note\n" + GOOD, "comment"),
    ("trailing comma", GOOD.replace(b"]}", b",]}"), "not JSON"),
    ("single quotes", GOOD.replace(b'"', b"'"), "not JSON"),
    ("name twice", GOOD.replace(b'"camside": 1', b'"camside": 1, "camside": 1'), "second time"),
    ("name twice, escaped", GOOD.replace(b'"camside": 1', b'"camside": 1, "\\u0063amside": 1'), "second time"),
    ("infinite number", GOOD.replace(b'"teeth": 17', b'"teeth": 1e999'), "too large to compute"),
    ("infinity by name", GOOD.replace(b'"teeth": 17', b'"teeth": Infinity'), "not JSON"),
    ("not a number", GOOD.replace(b'"teeth": 17', b'"teeth": NaN'), "not JSON"),
    ("a number", b"17", "not a measurement file"),
    ("a list", b"[]", "not a measurement file"),
    ("other JSON", b'{"name": "x"}', "not a measurement file"),
    ("other kind", GOOD.replace(b'"measurements"', b'"report"'), "not a measurement file"),
    ("version as text", GOOD.replace(b'"camside": 1', b'"camside": "1"'), "not a measurement file"),
    ("negative version", GOOD.replace(b'"camside": 1', b'"camside": -1'), "not a measurement file"),
    ("records as text", b'{"camside": 1, "kind": "measurements", "records": "none"}', "not a measurement file"),
    ("table in place of JSON", b"angle (deg), reading (in)\n0, 0.001\n", "not JSON"),
]

# Records in a sound file: with the path that must be named
REFUSED_RECORDS = [
    ("record null", (HEAD + "null]}").encode(), "records[0]: "),
    ("record a number", (HEAD + "5]}").encode(), "records[0]: "),
    ("no kind", (HEAD + '{"entered": {}}]}').encode(), "records[0].kind: "),
    ("unknown kind", GOOD.replace(b'"gear_pair"', b'"gear_pear"'), "records[0].kind: "),
    ("entered a list", (HEAD + '{"kind": "gear_pair", "entered": []}]}').encode(), "records[0].entered: "),
    ("nothing entered", (HEAD + '{"kind": "gear_pair"}]}').encode(), "records[0].entered.module: "),
    ("bad time", GOOD.replace(b'"kind": "gear_pair"', b'"kind": "gear_pair", "taken": "noon"'), "records[0].taken: "),
    ("field missing", with_entered(module=None), "records[0].entered.module: "),
    ("wrong unit", with_entered(centre_distance="1.5938 °C"), "records[0].entered.centre_distance: "),
    ("unknown unit", with_entered(centre_distance="1.5938 furlongs"), "records[0].entered.centre_distance: "),
    ("no unit", with_entered(centre_distance="1.5938"), "records[0].entered.centre_distance: "),
    ("number for a length", with_entered(centre_distance=1.5938), "records[0].entered.centre_distance: "),
    ("infinite length", with_entered(centre_distance="inf in"), "records[0].entered.centre_distance: "),
    ("huge length", with_entered(centre_distance="1e400 in"), "records[0].entered.centre_distance: "),
    ("out of range", with_entered(centre_distance="1e9 in"), "records[0].entered.centre_distance: "),
    ("negative length", with_entered(centre_distance="-1.5938 in"), "records[0].entered.centre_distance: "),
    ("ambiguous comma", with_entered(centre_distance="40,481 mm"), "records[0].entered.centre_distance: "),
    ("three teeth", with_entered(gear1={"teeth": 3}), "records[0].entered.gear1.teeth: "),
    ("half a tooth", with_entered(gear1={"teeth": 17.5}), "records[0].entered.gear1.teeth: "),
    ("teeth beyond int", with_entered(gear1={"teeth": 1e18}), "records[0].entered.gear1.teeth: "),
    ("teeth as list", with_entered(gear1={"teeth": [17]}), "records[0].entered.gear1.teeth: "),
    ("group as text", with_entered(gear1="17"), "records[0].entered.gear1: "),
    ("group null", with_entered(gear1=None, gear2=None), "records[0].entered.gear1"),
    ("no such choice", with_entered(place="crank to crank"), "records[0].entered.place: "),
    ("flag as number", with_entered(sizes_confirmed=1), "records[0].entered.sizes_confirmed: "),
]

# Taken, but remarked on: exit 0, with the message of `check`
REMARKED = [
    ("byte order mark", b"\xef\xbb\xbf" + GOOD, ""),
    ("newer version", GOOD.replace(b'"camside": 1', b'"camside": 2'), "newer Camside"),
    ("typing mistake", with_entered(presure_angle="20°"), "Did you mean “pressure_angle”?"),
    ("no records", b'{"camside": 1, "kind": "measurements", "records": []}', "no measurement in it"),
]
