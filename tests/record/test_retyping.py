"""What YAML would not read is read as it was meant, and said with the line as it must be typed."""

import re
from dataclasses import replace

import pytest

from said_at import PATH, said
from undertrim.record.mends import mended
from undertrim.record.retyping import readable, with_line
from undertrim.record.source import read_text
from undertrim.words import sentence, way_out

SLIPS = [
    # what is typed, what is said of it, and what it is read as
    ('name: "Vent trim\nhow: Pull.', '1:7: this quote is not closed (write: name: "Vent trim")', {"name": "Vent trim", "how": "Pull."}),
    ("name: 'Vent trim\nhow: 'Pull.'", "1:7: this quote is not closed (write: name: 'Vent trim')", {"name": "Vent trim", "how": "Pull."}),
    ('a: {how: seen, note: "Grey, worn}\nb: "c"', '1:22: this quote is not closed (write: a: {how: seen, note: "Grey, worn"})', {"a": {"how": "seen", "note": "Grey, worn"}, "b": "c"}),
    ('a: {note: "Grey, worn, how: seen}', '1:11: this quote is not closed (write: a: {note: "Grey, worn", how: seen})', {"a": {"note": "Grey, worn", "how": "seen"}}),
    ("name: 'Driver's trim'", "1:7: a quote stands inside quotes of the same sort (write: name: \"Driver's trim\")", {"name": "Driver's trim"}),
    ('name: "The "MAP" key"', "1:7: a quote stands inside quotes of the same sort (write: name: 'The \"MAP\" key')", {"name": 'The "MAP" key'}),
    ('name: "MAP" key', "1:7: text stands after the end of a value (write: name: '\"MAP\" key')", {"name": '"MAP" key'}),
    (r'name: "C:\quiet"', r"1:7: a backslash in double quotes begins no known sign here (write: name: 'C:\quiet')", {"name": r"C:\quiet"}),
    ("name: Vent: trim", "1:7: a colon stands in a text without quotes (write: name: 'Vent: trim')", {"name": "Vent: trim"}),
    ("a: {note: Off: three, how: seen}", "1:11: a colon stands in a text without quotes (write: a: {note: 'Off: three', how: seen})", {"a": {"note": "Off: three", "how": "seen"}}),
    ("a: {note: 12:30, worn, how: seen}", "1:11: a colon stands in a text without quotes (write: a: {note: '12:30, worn', how: seen})", {"a": {"note": "12:30, worn", "how": "seen"}}),
    ("a: [12:30]", "1:5: a colon stands in a text without quotes (write: a: ['12:30'])", {"a": ["12:30"]}),
    ("name: @home", "1:7: no value can begin with '@' (write: name: '@home')", {"name": "@home"}),
    ("name: %x", "1:7: no value can begin with '%' (write: name: '%x')", {"name": "%x"}),
    ("name: & so on", "1:7: '&' begins no value (write: name: '& so on')", {"name": "& so on"}),
    ("name: !<x", "1:7: '!' begins no value (write: name: '!<x')", {"name": "!<x"}),
    ("name:Vent trim\nhow: Pull.", "1:6: a field name has a colon behind it, and a space (write: name: Vent trim)", {"name": "Vent trim", "how": "Pull."}),
    ("how: Pull.\nname = Vent trim", "2:5: a field name has a colon behind it, and a space (write: name: Vent trim)", {"how": "Pull.", "name": "Vent trim"}),
    ("how: Pull.\nname Vent trim", "2:5: a field name has a colon behind it, and a space (write: name: Vent trim)", {"how": "Pull.", "name": "Vent trim"}),
    ("a:\n- b\n-c", "3:2: an entry of a list begins with '-' and a space (write: - c)", {"a": ["b", "c"]}),
    ("a:\n- b\n– c", "3:1: an entry of a list begins with '-' and a space (write: - c)", {"a": ["b", "c"]}),
    ("after: - b\n       - c\nhow: Pull.", "1:8: a list begins with '-' where none can (write: after: [b, c])", {"after": ["b", "c"], "how": "Pull."}),
    ("after: - b", "1:8: a list begins with '-' where none can (write: after: [b])", {"after": ["b"]}),
    ("a: {clip: push count: 6}", "1:15: a comma is missing before the next field (write: a: {clip: push, count: 6})", {"a": {"clip": "push", "count": "6"}}),
    ("a: {clip: push; count: 6}", "1:15: in brackets stand commas between fields, and a colon with a space behind it after each name (write: a: {clip: push, count: 6})", {"a": {"clip": "push", "count": "6"}}),
    ("a: {clip: push, count: 6\nb: c", "1:24: this '{' is not closed, or a comma is missing in it (write: a: {clip: push, count: 6})", {"a": {"clip": "push", "count": "6"}, "b": "c"}),
    ("a: [b, c\nd: e", "1:8: this '[' is not closed, or a comma is missing in it (write: a: [b, c])", {"a": ["b", "c"], "d": "e"}),
    ("a: {at: {top: 2, left: 1}\nd: e", "1:25: this '{' is not closed, or a comma is missing in it (write: a: {at: {top: 2, left: 1}})", {"a": {"at": {"top": "2", "left": "1"}}, "d": "e"}),
    ("a: [1, 2}", "1:9: a bracket is closed by one of the other sort (write: a: [1, 2])", {"a": ["1", "2"]}),
    ("a: {b: c}}", "1:10: a bracket is closed that is not open (write: a: {b: c})", {"a": {"b": "c"}}),
    ("a:\n  name: x\n   how: Pull.", "3:4: the indent of this line fits none of the lines above (indent it by 2 spaces, no more and no fewer)", {"a": {"name": "x", "how": "Pull."}}),
    ("a:\n  name: x\n\thow: Pull.", "3:1: a tab stands in the indent (indent it by 2 spaces, no more and no fewer)", {"a": {"name": "x", "how": "Pull."}}),
    ("a:\n  b: 1\n c: 2\nd: 3", "3:2: the indent of this line fits none of the lines above (indent it by 2 spaces, no more and no fewer)", {"a": {"b": "1", "c": "2"}, "d": "3"}),
    ("name: “Vent trim”", "1:7: curly quotes are letters: this value is not in quotes (write: name: Vent trim)", {"name": "Vent trim"}),
    ("a: {with: “Rule 1 mm, tape”, how: seen}", "1:11: curly quotes are letters: this value is not in quotes (write: a: {with: 'Rule 1 mm, tape', how: seen})", {"a": {"with": "Rule 1 mm, tape", "how": "seen"}}),
    ("a: {note: Grey, worn}", "1:17: a comma cuts this text in two: what stands behind it is read as a field of its own (write: a: {note: 'Grey, worn'})", {"a": {"note": "Grey, worn"}}),
    ("a: {note: Grey, worn, torn, how: seen}", "1:17: a comma cuts this text in two: what stands behind it is read as a field of its own (write: a: {note: 'Grey, worn, torn', how: seen})", {"a": {"note": "Grey, worn, torn", "how": "seen"}}),
    ("a: {length: 16,5 mm}", "1:16: a comma stands in a number (write: a: {length: 16.5 mm})", {"a": {"length": "16.5 mm"}}),
    ('a: {car: "2016, left, with: "Rule"}\nb: c', '1:10: this quote is not closed (write: a: {car: "2016, left", with: "Rule"})', {"a": {"car": "2016, left", "with": "Rule"}, "b": "c"}),
    ('a: {car: 2016, grey", how: seen}', "1:16: this text ends with a quote that nothing opens (write: a: {car: '2016, grey', how: seen})", {"a": {"car": "2016, grey", "how": "seen"}}),
    ("a: {by: wire, note: Off, left, source: e1}", "1:26: a comma cuts this text in two: what stands behind it is read as a field of its own (write: a: {by: wire, note: 'Off, left', source: e1})", {"a": {"by": "wire", "note": "Off, left", "source": "e1"}}),
    ("held_by:\n- {clip: push, count: 4},\n- {hook: tab}", "2:25: a comma stands behind the end of the line's value (write: - {clip: push, count: 4})", {"held_by": [{"clip": "push", "count": "4"}, {"hook": "tab"}]}),
    ("name: Vent trim,", "1:16: a comma stands behind the end of the line's value (write: name: Vent trim)", {"name": "Vent trim"}),
    ('name: Vent trim"', "1:16: this text ends with a quote that nothing opens (write: name: Vent trim)", {"name": "Vent trim"}),
    ("parts:\nvent:\n    name: x\n  radio:\n    name: y", "2:1: this stands beside 'parts' instead of below it (indent it by 2 spaces, no more and no fewer)", {"parts": {"vent": {"name": "x"}, "radio": {"name": "y"}}}),
    ("a: 62\u00a0mm", "1:6: character U+00A0 (no-break space) may not stand in a record (type an ordinary space instead)", {"a": "62 mm"}),
    ("a: b\u200b", "1:5: character U+200B (zero width space) may not stand in a record (remove it; it may not be visible)", {"a": "b"}),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "told", "meant"), SLIPS)
def test_a_slip_is_said_with_its_line_and_read_as_it_was_meant(typed: str, told: str, meant: object) -> None:
    found = read_text(f"{typed}\n", PATH)
    assert said(found) == [told]
    assert found.data == meant


@pytest.mark.parametrize(("typed", "told", "meant"), SLIPS)
def test_the_line_that_is_shown_is_the_mend(typed: str, told: str, meant: object) -> None:
    found = read_text(f"{typed}\n", PATH)
    lines = found.text.split("\n")
    for mend in found.mends:
        lines = with_line(lines, mend.edit)
        assert mend.said
        shown = re.fullmatch(r"write: (.*)", way_out(mend.said))
        assert not shown or shown[1] in lines[mend.edit[0][0]]
    again = read_text("\n".join(lines), PATH)
    assert again.problems == ()
    assert again.data == meant


def test_several_slips_of_a_file_are_said_in_one_run() -> None:
    text = 'name: "Vent\nhow: Pull: both\ntest:Try it\nnote: “Grey”\nafter: - a\ntakes: 4\u00a0min\nsource: {a: b\n'
    found = read_text(text, PATH)
    assert [problem.position.line for problem in found.problems] == [1, 2, 3, 4, 5, 6, 7]
    assert found.data == {"name": "Vent", "how": "Pull: both", "test": "Try it", "note": "Grey", "after": ["a"], "takes": "4 min", "source": {"a": "b"}}  # fmt: skip


def test_what_cannot_be_told_stops_the_reading_and_is_said() -> None:
    found = read_text("name: Vent: trim\nhow: Pull.\nnobody knows this\nx: y\n", PATH)
    assert [problem.position.line for problem in found.problems] == [1, 3]
    assert found.data is None


@pytest.mark.parametrize("text", ["a: {b: c, count}", "a:\n  b:\n  c: d", "a: ['“b” and “c”']", "a: Press “MAP” twice", "a: It’s off", "# “a”", 'a: Trim 6"', "a: [b,\n  c]"])  # fmt: skip
def test_what_is_no_slip_is_left_alone(text: str) -> None:
    found = read_text(text, PATH)
    assert found.problems == ()
    assert found.mends == ()


def test_a_mark_for_nothing_is_left_to_the_schema() -> None:
    found = read_text("a: {wait: ?}\n", PATH)
    assert found.problems == ()
    assert found.data == {"a": {"wait": "?"}}
    assert [mend.certain for mend in found.mends] == [False]


def test_a_mend_that_could_be_another_is_not_certain() -> None:
    retyped = readable(["a:", "  b: {c: 1}", "  c: 1", "   d: 2", "  e: 3"])
    assert [mend.certain for mend in retyped.mends] == [True]
    for lines in (["a:", "  b: {c: 1}", "   d: 2"], ["a: b", "how Pull."]):
        assert [mend.certain for mend in readable(lines).mends] == [False]


def test_a_long_line_is_shown_where_it_changed() -> None:
    note = " ".join(["grey and worn"] * 30)
    found = read_text(f'a: {{how: seen, note: "{note}}}\n', PATH)
    (problem,) = found.problems
    assert problem.hint.startswith("write: … ")
    assert problem.hint.endswith('grey and worn"}')
    assert len(problem.hint) < 80
    assert sentence(problem.said) == "this quote is not closed"


def test_a_line_that_needs_many_mends_is_said_once() -> None:
    found = read_text("name: Vent: trim\na: {b: c: d, e: f: g, h: i: j}\nx: y\n", PATH)
    assert [problem.position.line for problem in found.problems] == [1, 2]
    assert found.data is None


def test_a_heap_of_slips_ends_in_time() -> None:
    found = read_text("".join(f"x{number}: {{a: b\n" for number in range(5000)), PATH)
    assert 0 < len(found.problems) <= 51


def test_a_mend_that_would_say_something_else_is_not_written() -> None:
    source = read_text('name: "Vent trim\ncount: 3\n', PATH)
    (mend,) = source.mends
    assert mended(replace(source, mends=(replace(mend, certain=True),))) == 'name: "Vent trim"\ncount: 3\n'
    other = replace(mend, certain=True, edit=((0, 'name: "Vent"'),))
    assert mended(replace(source, mends=(other,))) == source.text


def test_places_stay_on_the_line_as_it_was_typed() -> None:
    text = "a: {note: Off: three, c: 3}"
    source = read_text(f"{text}\n", PATH)
    assert source.data == {"a": {"note": "Off: three", "c": "3"}}
    assert source.position(("a", "c")).column <= len(text)
