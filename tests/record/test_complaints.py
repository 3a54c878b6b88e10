"""What the schema refuses is one sentence with its place and the way out, in the words of the record."""

# Long because it is one table: each mistake stands with its sentence.

from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim.record import complaints, schema
from undertrim.record.mending import without
from undertrim.record.source import MAX_PROBLEMS, Source, read_text
from undertrim.record.store import entry
from undertrim.resources import table
from undertrim.words import sentence, way_out

PATH = Path("records/vehicles/brindleway/otter-2014-2018.yaml")
GEAR = """format: 1
gear:
  kind: speaker
  maker: Sandmartin
  model: Bank 65
  basket: {shape: round, diameter: 127 mm}
  flange: {shape: round, diameter: 165 mm}
  depth: 58 mm
  impedance: 4 ohm
"""


def read(old: str, new: str, text: str = BASE) -> Source:
    assert text.count(old) >= 1, old
    return read_text(text.replace(old, new, 1), PATH)


def said(source: Source, kind: str = "vehicle") -> list[str]:
    problems = [complaints.as_problem(source, found) for found in complaints.complaints(source, kind)]
    return [f"{p.position.line}:{p.position.column}: {p.message} ({p.hint})" for p in problems]


BLANK = "write the value, for example {}, or remove the line"
RELEASES = "one of: " + ", ".join(schema.load("vehicle")["$defs"]["part"]["properties"]["release"]["enum"])
PIN = "connectors:\n  main: {name: Plug, view: wires, rows: 1, columns: 8, pins: {%s}}\nparts:"
KINDS_OF_FASTENER = ", ".join(table("fasteners"))


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        # keys
        ("takes: 3 min", "taks: 3 min", "28:5: 'taks' is not a field of part (did you mean 'takes'?)"),
        ("takes: 3 min", "takes: at least 3 min", "28:12: 'at least 3 min' is a lower bound, and this field wants the value itself (write the value, such as '3 min', or 'unknown' where the field takes it)"),
        ("clear: 170 mm", "clear: '> 170 mm'", "37:20: '> 170 mm' cannot be read as a number and a unit (write 'at least 170 mm' where there is so much or more)"),
        ("takes: 3 min", "minutes: 3", "28:5: 'minutes' is not a field of part (write 'takes')"),
        ("release: slide", "releas: slide", "23:5: 'releas' is not a field of part (did you mean 'release'?)"),
        ("screw: T20", "screws: T20", "24:16: 'screws' is not a field of fastener (did you mean 'screw'?)"),
        ("count: 4", "qty: 4", "24:28: 'qty' is not a field of fastener (write 'count')"),
        ("ignition: off", "ignitin: off", "15:13: 'ignitin' is not a field of needs (did you mean 'ignition'?)"),
        ("parts:", PIN % "1: {function: ground, color: red}", "20:85: 'color' is not a field of pin (write 'colour')"),
        ("parts:", "prts:", "19:1: 'prts' is not a field of vehicle record (did you mean 'parts'?)"),
        ("kit: needed", "kit: needed\n    room_to_grille: 22 mm", "36:5: 'room_to_grille' does not belong to 'kind: receiver' (remove it, or write 'kind: speaker')"),
        ("vehicle:", "areas: {engine: {high_voltage: near}}\nvehicle:", "3:9: 'engine' does not belong here (write 'engine-bay')"),
        ("vehicle:", "functions: {sped: {by: data}}\nvehicle:", "3:13: 'sped' does not belong here (did you mean 'speed'?)"),
        ("  radio:\n", "  Vent Trim:\n", "20:3: 'Vent Trim' is not a valid id (write 'vent-trim')"),
        ("  radio:\n", "  ---:\n", "20:3: '---' is not a valid id (use small letters, digits and hyphens, for example 'vent-trim')"),
        ("parts:", PIN % "P4: {function: ground}", "20:63: 'P4' is not a valid pin (a pin is a number such as 4, or a letter and a number such as A4)"),
        # what is missing
        ("    release: slide\n", "", "20:3: 'release' is missing from 'radio' (add 'release': the motion that frees it once its screws are out, for example pull)"),
        ("    kit: needed\n", "", "30:3: 'kit' is missing from 'dash' (add 'kit': whether a dash kit is needed to hold the new receiver, for example needed)"),
        ("screw: T20, ", "", f"24:15: a fastener names none of {KINDS_OF_FASTENER} (say what it is, for example 'screw: T20')"),
        ("screw: T20", "screw: T20, clip: push", "24:15: one fastener has 'screw' and 'clip' (make one entry of each)"),
        ("make: Brindleway", "make:", f"4:3: 'make' is blank ({BLANK.format('Kelbrook')})"),
        ("behind: [radio]", "behind: [radio, ~]", f"34:21: entry 2 of 'behind' is blank ({BLANK.format('vent-trim')})"),
        ("behind: [radio]", "behind: []", "34:13: behind is an empty list (for example [factory-radio])"),
        ("name: Factory radio", 'name: ""', "21:11: name is empty (for example Upper vent trim)"),
        ("{ignition: off}", "{}", "15:12: needs has too few entries: 0 of at least 1 (for example {battery: on})"),
        # types
        ("behind: [radio]", "behind: radio", "34:13: behind must be a list, not 'radio' (write '[radio]')"),
        ("name: Factory radio", "name: {a: b}", "21:11: name must be text, not a mapping (for example Upper vent trim)"),
        ("release: slide", "release: [slide]", f"23:14: release is one word, not a list ({RELEASES})"),
        ("[{screw: T20, count: 4}]", "[T20]", "24:15: fastener must be a mapping, not 'T20' (for example {screw: hex 7 mm, count: 4, at: {corners: 4}})"),
        ("[{screw: T20, count: 4}]", "{screw: T20}", "24:14: held by must be a list, not a mapping (for example [{screw: T20, count: 4}])"),
        ("source: e1\nafter", "source: {e1: x}\nafter", "38:13: source must be text or a list, not a mapping (for example e1)"),
        ("name: Factory radio", "name: |\n      Factory\n      radio", "21:11: name 'Factory?radio?' runs over a line (write it on one line, without '|' or '>')"),
        # words
        ("release: slide", "release: slid", "23:14: 'slid' is not a known release (did you mean 'slide'?)"),
        ("release: slide", "release: zzz", f"23:14: 'zzz' is not a known release ({RELEASES})"),
        ("replaced: yes", "replaced: true", "27:15: 'replaced' is yes or no, not 'true' (write 'yes')"),
        ("replaced: yes", "replaced: FALSE", "27:15: 'replaced' is yes or no, not 'FALSE' (write 'no')"),
        ("replaced: yes", "replaced: Yes", "27:15: 'replaced' is yes or no, not 'Yes' (write 'yes')"),
        ("high_voltage: no", "high_voltage: off", "8:17: 'high_voltage' is yes, no or unknown, not 'off' (write 'no')"),
        ("behind: [radio]", "behind: [Vent Trim]", "34:14: 'Vent Trim' is not a valid id (write 'vent-trim')"),
        ("drive_side: [left]", "drive_side: [left, left]", "7:22: 'left' stands twice in this list (remove one)"),
        ("name: Factory radio", "name: " + "x" * 121, "21:11: name has 121 characters, more than 120 (shorten it)"),
        # numbers
        ("format: 1", "format: 3", "1:9: format '3' is more than 2 (this program knows formats 1 and 2: write 'format: 2'; a record of a later format needs a later program)"),
        ("format: 1", "format: one", "1:9: format must be a whole number, not 'one' (this program knows formats 1 and 2: write 'format: 2'; a record of a later format needs a later program)"),
        ("count: 4", "count: four", "24:35: count must be a whole number, not 'four' (write '4')"),
        ("count: 4", "count: 1.0", "24:35: count must be a whole number, not '1.0' (for example 4 or unknown)"),
        ("count: 4", "count: 0x10", "24:35: count must be a whole number, not '0x10' (for example 4 or unknown)"),
        ("count: 4", "count: 1e3", "24:35: count must be a whole number, not '1e3' (for example 4 or unknown)"),
        ("count: 4", "count: 04", "24:35: count must be a whole number, not '04' (write '4')"),
        ("count: 4", "count: 61", "24:35: count '61' is more than 60 (mend the number)"),
        ("count: 4", "count: -1", "24:35: count '-1' is less than 0 (mend the number)"),
        # quantities, drives, days
        ("takes: 3 min", "takes: 62", "28:12: '62' has no unit (write '62 s', '62 min' or '62 h')"),
        ("takes: 3 min", "takes: unknown", "28:12: 'unknown' cannot be read as a number and a unit (write one number and one unit, such as '12 min')"),
        ("width: 182 mm", "width: 7/32 mm", "36:19: '7/32 mm' is a fraction of a unit that has none (write '7/32 in')"),
        ("width: 182 mm", "width: 12 min", "36:19: '12 min' is a time, not a length (write it in mm or in, such as '62 mm')"),
        ("screw: T20", "screw: hex 7.32 mm", "24:23: no tool is made for 'hex 7.32 mm' (did you mean hex 7/32 in (5.56 mm), close to hex 5.5 mm?)"),
        ("from: 2014-01", "from: 2016-13", "6:17: '2016-13' is not a valid month (write year-month, for example 2016-05)"),
        ("on: 2026-03-02", "on: 2026-2-3", "10:27: '2026-2-3' is not a valid day (write '2026-02-03')"),
        ("on: 2026-03-02", "on: 2026-02-30", "10:27: '2026-02-30' is not a day of the calendar (mend the day)"),
        ("on: 2026-03-02", "on: 2025-02-29", "10:27: '2025-02-29' is not a day of the calendar (mend the day)"),
    ],
)  # fmt: skip
def test_one_mistake_is_one_sentence(old: str, new: str, message: str) -> None:
    assert said(read(old, new)) == [message]


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("count: 4", 'count: "4"'),
        ("count: 4", "count: unknown"),
        ("count: 4", "count: 0"),
        ("on: 2026-03-02", "on: 2024-02-29"),
        ("source: e1\nafter", "source: [e1]\nafter"),
        ("name: Factory radio", 'name: "no"'),
        ("name: Factory radio", "name: " + "x" * 120),
        ("how: Take the clamp off the negative terminal and cover it.", "how: |\n      One.\n\n      Two.\n"),
    ],
)
def test_near_misses_are_right(old: str, new: str) -> None:
    assert said(read(old, new)) == []


@pytest.mark.parametrize("typed", ["off", "no", "1.10", "2014", "0x10", "1e3", "2026-03-02", "true"])
def test_text_may_look_like_anything(typed: str) -> None:
    source = read("name: Factory radio", f"name: {typed}")
    assert said(source) == []
    assert source.data["parts"]["radio"]["name"] == typed


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("depth: 58 mm", "depth: 58 mm\n  chassis_depth: 160 mm", "9:3: 'chassis_depth' does not belong to 'kind: speaker' (remove it, or write 'kind: receiver')"),
        ("depth: 58 mm", "depth: 58 mm\n  suits: [{vehicle: a/b, opening: dash}]", "9:3: 'suits' does not belong to 'kind: speaker' (remove it)"),
        ("kind: speaker", "kind: speeker", "3:9: 'speeker' is not a known kind (did you mean 'speaker'?)"),
        ("  depth: 58 mm\n", "", "2:1: 'depth' is missing from 'gear' (add 'depth': from the underside of the flange to the back, for example 58 mm)"),
        ("round, diameter: 127 mm", "oval, width: 9 mm, height: 9 mm, diameter: 9 mm", "6:52: 'diameter' does not belong to 'shape: oval' (remove it, or write 'shape: round')"),
    ],
)  # fmt: skip
def test_gear_is_told_the_same_way(old: str, new: str, message: str) -> None:
    assert said(read(old, new, GEAR), "gear") == [message]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "1:1: the file holds no record (begin with 'format: 2')"),
        ("# nothing\n", "1:1: the file holds no record (begin with 'format: 2')"),
        ("\n- a\n", "2:1: a list stands where the record should be (begin with 'format: 2')"),
        ("word", "1:1: a text stands where the record should be (begin with 'format: 2')"),
    ],
)
def test_a_file_that_is_no_record_says_so(text: str, message: str) -> None:
    assert said(read_text(text, PATH)) == [message]


def test_several_mistakes_of_one_block_are_all_told() -> None:
    source = read("{screw: T20, count: 4}", "{screw: X9, cuont: 4, finish: red}")
    assert [line.split(": ", 1)[1].split(" (")[0] for line in said(source)] == [
        "'cuont' is not a field of fastener",
        "'finish' is not a field of fastener",
        "'X9' cannot be read as a drive",
    ]


def test_control_characters_and_length_do_not_reach_a_message() -> None:
    source = read("release: slide", "release: " + "z" * 5000)
    assert said(source)[0].startswith(f"23:14: '{'z' * 39}…' is not a known release")


def test_a_number_of_five_thousand_digits_is_no_crash() -> None:
    [message] = said(read("count: 4", "count: " + "9" * 5000))
    assert message.startswith("24:35: count must be a whole number, not '999")


@pytest.mark.parametrize("number", [MAX_PROBLEMS, 100_000])
def test_complaints_are_capped_and_it_says_so(number: int) -> None:
    keys = "".join(f"k{n}: 1\n" for n in range(number))
    source = read_text(BASE + keys, PATH)
    found = complaints.complaints(source, "vehicle")
    told = entry(PATH, "vehicle", source)
    if number == MAX_PROBLEMS:
        assert len(found) == MAX_PROBLEMS
        assert told.record is not None
    else:
        assert len(found) == MAX_PROBLEMS + 1
        assert sentence(found[-1].said) == f"more than {MAX_PROBLEMS} problems"
        assert way_out(found[-1].said) == "mend those shown; the rest was not looked at"
        assert told.record is None


def test_a_long_mixed_list_is_looked_through_in_time() -> None:
    items = ", ".join(["a", "{b: c}"] * 20_000)
    found = said(read("behind: [radio]", f"behind: [{items}]"))
    assert len(found) == MAX_PROBLEMS + 1


def test_what_goes_takes_along_what_needs_it_and_nothing_else() -> None:
    source = read("release: slide", "release: slid")
    data, dropped = without(source.data, complaints.complaints(source, "vehicle"), "vehicle")
    assert data["parts"] == {}
    assert {("parts", "radio"), ("parts", "radio", "release")} == dropped
    assert data["openings"] == source.data["openings"]
    assert source.data["parts"]["radio"]["release"] == "slid"


def test_a_list_goes_as_a_whole_so_that_no_entry_moves() -> None:
    source = read("[{screw: T20, count: 4}]", "[{screw: T20, count: 4}, {clip: x, count: 2}]")
    data, dropped = without(source.data, complaints.complaints(source, "vehicle"), "vehicle")
    assert "held_by" not in data["parts"]["radio"]
    assert dropped == {("parts", "radio", "held_by", 1, "clip"), ("parts", "radio", "held_by")}


def test_a_value_of_the_right_kind_stays() -> None:
    source = read("name: Factory radio", "name: " + "x" * 121)
    data, dropped = without(source.data, complaints.complaints(source, "vehicle"), "vehicle")
    assert data["parts"]["radio"]["name"] == "x" * 121
    assert dropped == {("parts", "radio", "name")}


def test_without_its_vehicle_there_is_no_record() -> None:
    source = read("make: Brindleway", "make:")
    assert without(source.data, complaints.complaints(source, "vehicle"), "vehicle")[0] is None
    assert entry(PATH, "vehicle", source).record is None


def test_our_keywords_are_those_the_schemas_use() -> None:
    known = {
        "title", "description", "examples", "hint", "misnamed", "type", "properties", "required", "additionalProperties",
        "propertyNames", "items", "enum", "pattern", "minLength", "maxLength", "minItems", "maxItems", "minProperties", "maxProperties", "minimum", "maximum",
        "uniqueItems", "oneOf", "allOf", "$ref", "quantity", "drive", "mayBeUnknown", "calendar", "paragraphs", "order",
        "short", "follows", "unless", "group", "named", "aside", "also", "blanks", "leads", "bySide", "namedBy", "together", "among", "listed",
    }  # fmt: skip

    def walk(node: object) -> None:
        if isinstance(node, dict):
            assert set(node) - {"$schema", "$id", "$defs", "if", "then", "const"} <= known, set(node) - known
            for word, inner in node.items():
                if word in ("properties", "$defs"):
                    for field in inner.values():
                        walk(field)
                elif word in ("items", "additionalProperties", "propertyNames", "then"):
                    walk(inner)
                elif word in ("allOf", "oneOf"):
                    for branch in inner:
                        walk(branch)

    for name in schema.NAMES:
        walk(schema.load(name))
