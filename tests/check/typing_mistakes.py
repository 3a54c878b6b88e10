"""What people mistype in a record, and what must be said for the message alone to be enough.

Each mistake is a change of `typed.yaml`, a record without fault: a piece of its text and what stands there instead. The words that a message must
have were written before anybody looked at what the program says: they name what is wrong, or the text that mends it, so that nobody has to look elsewhere.
A mistake that is said on the line of the change needs no mark; else the mark is a piece of the line.
"""

# Long because it is a table, one line for each mistake; the kinds of mistakes stand together.

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Told:
    """On which line something must be said, by a piece of it, and which words that must have."""

    line: str
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Mistake:
    """A piece of the record, what was typed instead, and all that must be told; what is read as it was `meant`, needs no word."""

    name: str
    right: str
    typed: str
    told: tuple[Told, ...]
    meant: str = ""


def _one(name: str, right: str, typed: str, *words: str, line: str = "") -> Mistake:
    first = next((new for new in typed.split("\n") if new not in right.split("\n")), typed)
    return Mistake(name, right, typed, (Told(line or first, words),))


_NOTE = "note: Both doors were open."
_HOW = "how: Take out the screws and unplug the speaker."

COMMAS = (
    _one("a comma in a text in braces", _NOTE, "note: Both doors open, seats out", "note: 'Both doors open, seats out'"),
    _one("a comma in a text before another field", "note: A switch at the lever., source", "note: At the lever, left, source", "note: 'At the lever, left'"),
    _one("a comma in a text in a list", "[Plain radio, Six number keys under the display]", "[Plain radio, Six number keys, under the display]", "quotes", "Six number keys, under the display"),
    _one("two commas in a text in braces", _NOTE, "note: One, two, three", "'One, two, three'"),
    _one("a comma in a name in a list", "windows: {name: Window switch plug, kind", "windows: {name: Plug, window switch, kind", "name: 'Plug, window switch'"),
    _one("a decimal comma in braces", "length: 16 mm", "length: 16,5 mm", "16.5 mm"),
    _one("a decimal comma on a line of its own", "takes: 4 min", "takes: 4,5 min", "4.5 min"),
    _one("a decimal comma in a list of sizes", "face: [182 mm, 112 mm]", "face: [182,5 mm, 112 mm]", "182.5 mm"),
    _one("a comma missing between fields", "{screw: T20, count: 3}", "{screw: T20 count: 3}", "comma", "{screw: T20, count: 3}"),
    _one("a comma at the wrong end of a brace", "{clip: fir-tree, count: 7}", "{clip: fir-tree, count: 7},", "- {clip: fir-tree, count: 7}"),
)  # fmt: skip

QUOTES = (
    _one("a quote never closed on a line", "name: Upper vent trim", 'name: "Upper vent trim', 'name: "Upper vent trim"'),
    _one("a quote never closed in braces", 'car: "2015, right-hand drive, plain radio", with', 'car: "2015, right-hand drive, plain radio, with', '"2015, right-hand drive, plain radio"'),
    _one("a quote never opened", 'car: "2015, right-hand drive, plain radio", with', 'car: 2015, right-hand drive, plain radio", with', "quote", "2015, right-hand drive, plain radio"),
    _one("curly quotes round a text", "name: Upper vent trim", "name: “Upper vent trim”", "curly", "name: Upper vent trim"),
    _one("curly quotes in braces, with a comma", 'car: "2015, right-hand drive, plain radio"', "car: “2015, right-hand drive, plain radio”", "curly", "'2015, right-hand drive, plain radio'"),
    _one("low and high quotes", "name: Upper vent trim", "name: „Upper vent trim“", "quotes", "name: Upper vent trim"),
    _one("an apostrophe in single quotes", "name: Upper vent trim", "name: 'Driver's vent trim'", "\"Driver's vent trim\""),
    _one("quotes in quotes", "name: Upper vent trim", 'name: "The "upper" trim"', "'The \"upper\" trim'"),
    _one("an inch sign closes the quotes", "name: Upper vent trim", 'name: "Trim 6" wide"', "'Trim 6\" wide'"),
    _one("text behind a quoted value", "name: Upper vent trim", 'name: "Upper" vent trim', "'\"Upper\" vent trim'"),
)  # fmt: skip

SPACES = (
    _one("a no-break space before a unit", "clear: 58 mm", "clear: 58\u00a0mm", "U+00A0", "ordinary space"),
    _one("a narrow space before a unit", "clear: 58 mm", "clear: 58\u202fmm", "U+202F", "ordinary space"),
    _one("a zero width space", "name: Upper vent trim", "name: Upper\u200b vent trim", "U+200B", "remove"),
    _one("a no-break space in the indent", "    name: Upper vent trim", "   \u00a0name: Upper vent trim", "U+00A0", "ordinary space"),
    _one("a tab in the indent", "    name: Upper vent trim", "\tname: Upper vent trim", "tab", "4 spaces"),
    Mistake("a tab behind the colon", "takes: 4 min", "takes:\t4 min", (), meant="takes: 4 min"),
    _one("one space too many", "    name: Upper vent trim", "     name: Upper vent trim", "indent", "4 spaces"),
    _one("one space too few", "    how: Start at", "   how: Start at", "indent", "4 spaces"),
    _one("a field at the wrong depth", "    source: e1\n  factory-radio:", "  source: e1\n  factory-radio:", "source", "indent it", line="  source: e1"),
    _one("a part at the depth of its section", "  vent-trim:\n", "vent-trim:\n", "below", "parts", "indent it by 2 spaces"),
)  # fmt: skip

COLONS = (
    _one("no space behind the colon", "takes: 4 min", "takes:4 min", "takes: 4 min"),
    _one("no colon", "    name: Upper vent trim", "    name Upper vent trim", "colon", "name: Upper vent trim"),
    _one("an equals sign", "takes: 4 min", "takes = 4 min", "takes: 4 min"),
    _one("no space behind a colon in braces", "{screw: T20, count: 3}", "{screw: T20, count:3}", "count: 3"),
    _one("a colon in a text", "how: Start at the top corners", "how: Careful: start at the top corners", "quotes", "'Careful: start at the top corners"),
    _one("a semicolon between fields", "{screw: T20, count: 3}", "{screw: T20; count: 3}", "{screw: T20, count: 3}"),
    _one("a dash list behind its name", "    after: vent-trim", "    after: - vent-trim", "after: [vent-trim]"),
    _one("a dash list behind its name, two lines", "    source: [e1, e2]", "    source: - e1\n            - e2", "source: [e1, e2]"),
    _one("no space behind the dash", "      - {clip: fir-tree, count: 7}", "      -{clip: fir-tree, count: 7}", "- {clip: fir-tree, count: 7}"),
    _one("a brace not closed", "{nut: hex 10 mm, count: 1}", "{nut: hex 10 mm, count: 1", "not closed", "{nut: hex 10 mm, count: 1}"),
    _one("a bracket closed by a brace", "[e1, e2]\n\nconnectors", "[e1, e2}\n\nconnectors", "[e1, e2]"),
    _one("a round bracket", "[e1, e2]\n\nconnectors", "(e1, e2)\n\nconnectors", "[e1, e2]"),
    Mistake("three slips of one evening", _HOW, "how: Pull: both sides\n    refit_how:Press it home.\n    refit_takes: 2\u00a0min", (
        Told("Pull: both", ("'Pull: both sides'",)), Told("refit_how:", ("refit_how: Press it home.",)), Told("refit_takes", ("U+00A0",)),
    )),
)  # fmt: skip

BLANKS = (
    _one("n/a for a wait", "wait: 2 min, memory", "wait: n/a, memory", "n/a", "unknown", "none"),
    _one("a question mark for a size", "room_to_grille: 20 mm", "room_to_grille: ?", "?", "unknown"),
    _one("a dash for a size", "room_to_grille: 20 mm", "room_to_grille: -", "unknown"),
    _one("nothing at all", "clear: 58 mm,", "clear:,", "clear", "unknown"),
    _one("tbc for a torque", "{screw: T25, count: 2, length: 30 mm}", "{screw: T25, count: 2, torque: tbc}", "tbc", "unknown"),
    _one("don't know for a sensor", "crash_sensor: no", "crash_sensor: dont know", "unknown"),
    _one("a blank field", "    takes: 4 min", "    takes:", "takes", "3 min"),
    _one("zero for nothing there", "room_to_grille: 20 mm", "room_to_grille: 0", "unit"),
)  # fmt: skip

IDS = (
    _one("a part copied with its id", "  door-speaker:\n", "  door-panel:\n", "door-panel", "twice", "id of its own", line="door-panel:\n    name: Factory"),
    _one("evidence copied with its id", "  e3: {how: seen", "  e2: {how: seen", "e2", "twice"),
    _one("a field twice", "    takes: 4 min", "    takes: 4 min\n    takes: 5 min", "takes", "twice", line="takes: 5 min"),
    _one("an id with a capital and a space", "  door-panel:\n", "  Door panel:\n", "Door panel", "door-panel"),
    _one("an id with an underscore", "  door-panel:\n", "  door_panel:\n", "door_panel", "door-panel"),
    _one("a misspelt key", "    restore: Put", "    restroe: Put", "restroe", "restore"),
    _one("a key under another name", "    name: Upper vent trim", "    title: Upper vent trim", "title", "name"),
    _one("a misspelt part", "behind: door-speaker", "behind: door-speeker", "door-speeker", "door-speaker"),
    _one("evidence that is not there", "    source: e2\n\nfunctions", "    source: e7\n\nfunctions", "e7", "e1, e2"),
    _one("a part by its name", "after: vent-trim", "after: Upper vent trim", "Upper vent trim", "vent-trim"),
    _one("a plug of a part that has none", "at: factory-radio/radio-main", "at: factory-radio/main", "main", "radio-main"),
)  # fmt: skip

REQUIRED = (
    _one("a speaker opening without its depth", "    depth: {clear: 58 mm, datum: skin, over: whole-travel, obstruction: glass, to: Window glass}\n", "", "depth", line="front-door:\n    name: Door"),
    _one("a receiver opening without its face", "    sizes: {face: [182 mm, 112 mm]}\n", "", "face", line="dash:\n    name: Radio opening"),
    _one("a depth without its datum", "clear: 58 mm, datum: skin, over", "clear: 58 mm, over", "datum"),
    _one("a screw without its count", "{screw: T20, count: 3}", "{screw: T20}", "count"),
    _one("a preparation without its words", "    how: Take the clamp off the negative terminal and cover it.\n", "", "how", line="battery:\n    name: Battery off"),
    _one("evidence without a day", "{how: seen, on: 2026-03-02, by", "{how: seen, by", "on", "day"),
    _one("a measurement without an instrument", ", with: Calliper 0.05 mm}", "}", "with", line="e1: {how: measured"),
    _one("a vehicle without its sides", "drive_side: [left, right], high", "high", "drive_side", "left, right", line="vehicle:"),
    _one("an opening without a kind", "    kind: [receiver, kit needed]\n", "", "kind", "receiver", line="dash:\n    name: Radio opening"),
)  # fmt: skip

TRADE = (
    _one("ACC for a wire", "function: switched-feed", "function: ACC", "ACC", "switched-feed"),
    _one("earth for a wire", "function: ground", "function: earth", "earth", "ground"),
    _one("permanent live for a wire", "function: battery-feed", "function: permanent live", "battery-feed"),
    _one("SWC for a function", "  reverse: {by: wire", "  SWC: {by: wire", "SWC", "wheel-buttons"),
    _one("remote for a wire", "function: antenna-feed", "function: remote", "amplifier-turn-on"),
    _one("a christmas tree clip", "clip: fir-tree", "clip: christmas tree", "christmas tree", "fir-tree"),
    _one("pry for a motion", "release: [pull, rearward, 3 min]", "release: [pry, rearward, 3 min]", "pry", "pull", "unclip"),
    _one("a tailgate for an area", "    area: engine-bay", "    area: tailgate", "tailgate", "boot"),
    _one("a sedan", "bodies: hatchback", "bodies: sedan", "sedan", "saloon"),
    _one("a head unit", "kind: [receiver, kit needed]", "kind: [head unit, kit needed]", "head unit", "receiver"),
    _one("torx in words", "{screw: T20, count: 3}", "{screw: torx 20, count: 3}", "torx 20", "T20"),
)  # fmt: skip

UNITS = (
    _one("a number alone", "clear: 58 mm", "clear: 58", "58", "unit", "58 mm"),
    Mistake("an inch sign", "clear: 58 mm", 'clear: 2 1/4"', (), meant="clear: 2 1/4 in"),
    _one("a unit nobody knows", "takes: 4 min", "takes: 4 mins.", "4 min"),
    _one("a unit of another kind", "length: 30 mm", "length: 30 min", "30 min", "mm"),
    _one("a fraction read as a number", "{nut: hex 10 mm, count: 1}", "{nut: hex 7.32 mm, count: 1}", "7/32 in"),
    _one("a number in words", "count: 7", "count: seven", "seven", "7"),
    _one("a range", "clear: 58 mm", "clear: 55-58 mm", "55-58 mm", "55 mm"),
)  # fmt: skip

WORDS = (
    _one("Yes with a capital", "crash_sensor: no", "crash_sensor: No", "No", "write 'no'"),
    _one("YES in capitals", "read_faults_first: yes", "read_faults_first: YES", "YES", "yes"),
    _one("true for yes", "read_faults_first: yes", "read_faults_first: true", "true", "yes"),
    _one("a day the other way round", "on: 2026-03-09", "on: 09.03.2026", "09.03.2026", "2026-03-09"),
    _one("a day with slashes", "on: 2026-03-09", "on: 3/9/2026", "2026-09-03", "2026-03-09"),
    _one("a month without its year first", "from: 2014-01", "from: 01/2014", "2014-01"),
    _one("a month in words", "from: 2014-01", "from: Jan 2014", "2014-01"),
)  # fmt: skip

MISTAKES = (*COMMAS, *QUOTES, *SPACES, *COLONS, *BLANKS, *IDS, *REQUIRED, *TRADE, *UNITS, *WORDS)
