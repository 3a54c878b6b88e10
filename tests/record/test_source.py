"""Bad YAML is told in our own words, with line and column, and whatever can be read is text."""

import pytest

from said_at import PATH, said
from undertrim.record import source
from undertrim.record.problem import Position
from undertrim.record.source import MAX_PROBLEMS, read_bytes, read_text


def data(text: str) -> object:
    found = read_text(text, PATH)
    assert found.problems == ()
    return found.data


TAB = "a tab stands in the indent (indent with spaces)"
INDENT = "the indent of this line fits none of the lines above (indent it as far as the line it belongs with)"
NO_FIELD = "this line is neither a field nor a list entry (write 'field: value' or '- value'; indent it further if it goes on with the text above)"
AFTER_END = "text stands after the end of the record (remove '...' or what follows it)"
PERCENT = "a line that begins with '%' is an instruction to the parser (remove it, or put the text in quotes)"


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("a: >\n\tx\n", f"2:1: {TAB}"),
        ("- a\nb: 1", f"2:1: {INDENT}"),
        (": a", "1:1: no field name stands before the colon (write 'field: value')"),
        ("a: b\nc\n", f"2:1: {NO_FIELD}"),
        ("a: b\n...\nc: d\n", f"3:1: {AFTER_END}"),
        ("%FOO\na: b", f"1:4: {PERCENT}"),
    ],
)
def test_a_syntax_error_is_told_in_our_own_words(text: str, message: str) -> None:
    found = read_text(text, PATH)
    assert said(found) == [message]
    assert found.data is None


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("a: &x 1\nb: *x\n", "1:4: '&x' is an anchor (remove it: records do not use aliases)"),
        ("a: *x\n", "1:4: '*x' is an alias (write the value out: records do not use aliases)"),
        ("a: &x [1]\n", "1:4: '&x' is an anchor (remove it: records do not use aliases)"),
        ("a:\n  <<: {b: c}\n", "2:3: '<<' is a merge key (write the values out: records do not merge)"),
        ("a: !!str 1\n", "1:4: '!!str' is a tag (remove it: the schema gives each value its type)"),
        ("a: !x {b: c}\n", "1:4: '!x' is a tag (remove it: the schema gives each value its type)"),
        ("a: 1\n---\nb: 2\n", "2:1: a second document starts here (keep one record in one file)"),
        ("? [a]\n: b\n", "1:3: a key is a list or mapping (quote it if it is text, for example 'a: b')"),
        ("? {a: b}\n: c\n", "1:3: a key is a list or mapping (quote it if it is text, for example 'a: b')"),
    ],
)
def test_what_a_record_has_no_use_for_is_refused(text: str, message: str) -> None:
    found = read_text(text, PATH)
    assert said(found) == [message]
    assert found.data is None


def test_a_laughing_file_stops_at_its_first_anchor() -> None:
    rows = ['a0: &a0 ["ha"]', *(f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 30))]
    assert said(read_text("\n".join(rows), PATH)) == ["1:5: '&a0' is an anchor (remove it: records do not use aliases)"]


@pytest.mark.parametrize("depth", [20, 100_000])
@pytest.mark.parametrize("opening", ["[", "{a: ", "- "])
def test_depth_is_bounded(opening: str, depth: int) -> None:
    text = opening * (depth + 1) + "x" + {"[": "]", "{a: ": "}", "- ": ""}[opening] * (depth + 1)
    column = len(opening) * 20 + 1
    assert said(read_text(text, PATH)) == [
        f"1:{column}: nested more than 20 deep (a record needs no such depth: close some brackets)"
    ]


def test_twenty_deep_is_read() -> None:
    assert read_text("[" * 20 + "]" * 20, PATH).problems == ()


def test_duplicate_keys_are_reported_at_every_depth_and_the_first_is_kept() -> None:
    text = "a: 1\na: 2\nb:\n  c: {d: 1, d: 2}\n  c: {e: 5, e: 6}\nf: [{g: 1, g: 2}]\nb: {h: 1}\na: 3\n"
    found = read_text(text, PATH)
    assert found.data == {"a": "1", "b": {"c": {"d": "1"}}, "f": [{"g": "1"}]}
    assert said(found) == [
        "2:1: 'a' stands twice (first on line 1: keep one of them; if this is another thing, give it an id of its own before the colon)",
        "4:13: 'd' stands twice (first on line 4: keep one of them; if this is another thing, give it an id of its own before the colon)",
        "5:3: 'c' stands twice (first on line 4: keep one of them; if this is another thing, give it an id of its own before the colon)",
        "5:13: 'e' stands twice (first on line 5: keep one of them; if this is another thing, give it an id of its own before the colon)",
        "6:12: 'g' stands twice (first on line 6: keep one of them; if this is another thing, give it an id of its own before the colon)",
        "7:1: 'b' stands twice (first on line 3: keep one of them; if this is another thing, give it an id of its own before the colon)",
        "8:1: 'a' stands twice (first on line 1: keep one of them; if this is another thing, give it an id of its own before the colon)",
    ]


def test_many_problems_are_capped_and_it_says_so() -> None:
    exact = "a: 1\n" * (MAX_PROBLEMS + 1)
    assert len(read_text(exact, PATH).problems) == MAX_PROBLEMS
    assert read_text(exact, PATH).data == {"a": "1"}
    found = read_text("a: 1\n" * 5000, PATH)
    assert len(found.problems) == MAX_PROBLEMS + 1
    assert said(found)[-1] == (
        f"{MAX_PROBLEMS + 2}:1: more than {MAX_PROBLEMS} problems (mend those above; the rest was not read)"
    )
    assert found.data is None


@pytest.mark.parametrize(
    "typed",
    [
        "no",
        "off",
        "on",
        "yes",
        "1.10",
        "2014",
        "0x10",
        "0o7",
        "1e3",
        ".inf",
        ".nan",
        "2026-03-02",
        "1_000",
        "true",
        "Null",
        "NULL",
        "=",
    ],
)
def test_scalars_stay_text(typed: str) -> None:
    assert data(f"a: {typed}\nb: [{typed}]\n") == {"a": typed, "b": [typed]}


def test_a_time_of_day_is_text() -> None:
    assert data("a: 12:30\n") == {"a": "12:30"}


@pytest.mark.parametrize("typed", ["~", "null", ""])
def test_a_blank_is_nothing_and_a_quoted_one_is_text(typed: str) -> None:
    assert data(f"a: {typed}\n") == {"a": None}
    assert data(f"a: '{typed}'\n") == {"a": typed}


def test_null_is_a_key_like_any_other() -> None:
    assert data("~: 1\nnull: 2\n'': 3\n") == {"~": "1", "null": "2", "": "3"}


@pytest.mark.parametrize(("text", "what"), [("", None), ("# only a comment\n", None), ("- a", ["a"]), ("a", "a")])
def test_what_holds_no_mapping_is_read_as_it_is(text: str, what: object) -> None:
    assert data(text) == what


def test_positions_count_from_one_in_characters() -> None:
    found = read_text("é: [ü, {x: y}]\n", PATH)
    assert found.position(("é", 1, "x")) == Position(1, 12)
    assert found.position(("é", 1, "x"), key=True) == Position(1, 9)
    assert found.position(("é", 1, "nothing", 3)) == Position(1, 8)
    assert found.position(("nothing",)) == Position(1, 1)


@pytest.mark.parametrize("newline", ["\n", "\r\n", "\r"])
def test_every_line_ending_counts_the_same(newline: str) -> None:
    text = newline.join(["a: 1", "b: 2", "a: 3", ""])
    found = read_bytes(text.encode(), PATH)
    assert found.data == {"a": "1", "b": "2"}
    assert said(found) == [
        "3:1: 'a' stands twice (first on line 1: keep one of them; if this is another thing, give it an id of its own before the colon)"
    ]


def test_a_field_name_is_one_line() -> None:
    found = read_text('"a\\nb": 1\n', PATH)
    assert found.data == {"a b": "1"}
    assert said(found) == ["1:1: the field name 'a b' runs over a line (write it on one line)"]


def test_every_entry_of_a_file_has_a_place() -> None:
    found = read_text("a: {b: [1, {c: 2}]}\n", PATH)
    assert set(found.values) == {(), ("a",), ("a", "b"), ("a", "b", 0), ("a", "b", 1), ("a", "b", 1, "c")}
    assert set(found.keys) == {("a",), ("a", "b"), ("a", "b", 1, "c")}
    assert source.Source.empty(PATH).position(("a",)) == Position(1, 1)
