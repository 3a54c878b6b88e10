"""Bad YAML is told in our own words, with line and column, and whatever can be read is text."""

import os
import re
import unicodedata
from pathlib import Path

import pytest

from undertrim.record import source, syntax, unseen_signs
from undertrim.record.problem import Position
from undertrim.record.source import MAX_BYTES, MAX_PROBLEMS, Source, read, read_bytes, read_text
from undertrim.words import sentence

PATH = Path("x.yaml")


def said(found: Source) -> list[str]:
    return [f"{p.position.line}:{p.position.column}: {p.message} ({p.hint})" for p in found.problems]


def data(text: str) -> object:
    found = read_text(text, PATH)
    assert found.problems == ()
    return found.data


TAB = "a tab stands in the indent (indent with spaces)"
QUOTE = "this quote is not closed (close it on the line it began on)"
INDENT = "the indent of this line fits none of the lines above (indent it as far as the line it belongs with)"
COLON = (
    "a colon stands where no value can begin "
    "(put quotes around a text that holds ': ', or mend the indent of this line or the one above)"
)
SQUARE = "this '[' is not closed, or a comma is missing in it (close it with ']' and put a comma between two entries)"
BRACE = "this '{' is not closed, or a comma is missing in it (close it with '}' and put a comma between two entries)"
BEHIND = "text stands after the end of a value (put the whole value in quotes, or remove what follows it)"
NO_FIELD = "this line is neither a field nor a list entry (write 'field: value' or '- value')"
ESCAPE = "a backslash in double quotes begins no known sign here (use single quotes, or write '\\\\')"
AFTER_END = "text stands after the end of the record (remove '...' or what follows it)"
PERCENT = "a line that begins with '%' is an instruction to the parser (remove it, or put the text in quotes)"
BAR = "after '|' or '>' nothing may stand on the line (begin the text on the next line, indented with spaces)"
SIGN = "a bracket, comma or sign stands where a value should (write the value, or put it in quotes)"


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("a:\n\t- b\n", f"2:1: {TAB}"),
        ("\ta: b", f"1:1: {TAB}"),
        ("a:\n  \tb: c\n", f"2:3: {TAB}"),
        ("a: >\n\tx\n", f"2:1: {TAB}"),
        ('a: 1\nb: "c', f"2:4: {QUOTE}"),
        ("a: 'b\nc: d\n", f"1:4: {QUOTE}"),
        ('a: "b\n---\nc"', "2:1: a quote above this line is not closed (close it)"),
        ("a: [b\nc: d\n", f"1:4: {SQUARE}"),
        ("a: [b c: d\n\n\n", f"1:4: {SQUARE}"),
        ("a: [1, 2}", f"1:4: {SQUARE}"),
        ("a:\n  b: {c: 1, d: 2\ne: 3\n", f"2:6: {BRACE}"),
        ("a: b: c", f"1:5: {COLON}"),
        ("a: 1\n  b: 2", f"2:4: {COLON}"),
        ("a:\n  b: 1\n c: 2", f"3:2: {INDENT}"),
        ("a:\n  - b\n  c: d", f"3:3: {INDENT}"),
        ("- a\nb: 1", f"2:1: {INDENT}"),
        ("a: |\n  b\n c\n", f"3:2: {INDENT}"),
        ('a: "x" y', f"1:8: {BEHIND}"),
        ("a: [b] c", f"1:8: {BEHIND}"),
        ("a: {b: c} d", f"1:11: {BEHIND}"),
        (": a", "1:1: no field name stands before the colon (write 'field: value')"),
        ("a: b\nc\n", f"2:1: {NO_FIELD}"),
        ("a:\n- b\n-c\n", f"3:1: {NO_FIELD}"),
        ("a: @x", "1:4: no value can begin with '@' (put the value in quotes)"),
        ("a: `x", "1:4: no value can begin with '`' (put the value in quotes)"),
        ("a: %x", "1:4: no value can begin with '%' (put the value in quotes)"),
        ("a: &", "1:4: '&' begins no value (put the value in quotes)"),
        ("a: *", "1:4: '*' begins no value (put the value in quotes)"),
        ("a: !<x", "1:4: '!' begins no value (put the value in quotes)"),
        (r'a: "\q"', f"1:5: {ESCAPE}"),
        (r'a: "\xzz"', f"1:7: {ESCAPE}"),
        (r'a: "\ud800"', f"1:7: {ESCAPE}"),
        ("a: b\n...\nc: d\n", f"3:1: {AFTER_END}"),
        ("{a: 1}}", f"1:7: {AFTER_END}"),
        ("%FOO\na: b", f"1:4: {PERCENT}"),
        ("a: | x", f"1:6: {BAR}"),
        ("a: [12:30]", "1:7: a colon stands inside a plain value in brackets (put the value in quotes)"),
        ("a: ]", f"1:4: {SIGN}"),
        ("a: ,", f"1:4: {SIGN}"),
        ("a: - b", "1:4: a list begins with '-' where none can (begin the list on a line of its own below its field)"),
        ("a: ?", "1:4: this '?' means something to YAML here (put the value in quotes)"),
    ],
)  # fmt: skip
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
        "2:1: 'a' stands twice (first on line 1; keep one of them)",
        "4:13: 'd' stands twice (first on line 4; keep one of them)",
        "5:3: 'c' stands twice (first on line 4; keep one of them)",
        "5:13: 'e' stands twice (first on line 5; keep one of them)",
        "6:12: 'g' stands twice (first on line 6; keep one of them)",
        "7:1: 'b' stands twice (first on line 3; keep one of them)",
        "8:1: 'a' stands twice (first on line 1; keep one of them)",
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
    assert said(found) == ["3:1: 'a' stands twice (first on line 1; keep one of them)"]


def test_a_byte_order_mark_is_taken_off_once() -> None:
    assert read_bytes(b"\xef\xbb\xbfa: 1", PATH).data == {"a": "1"}
    found = read_bytes(b"\xef\xbb\xbf\xef\xbb\xbfa: 1", PATH)
    assert said(found) == [
        "1:1: character U+FEFF (zero width no-break space) may not stand in a record (remove it; it may not be visible)"
    ]


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-16-be"])
def test_utf_16_is_named(encoding: str) -> None:
    found = read_bytes("format: 1\n".encode(encoding), PATH)
    assert said(found) == ["1:1: the file is UTF-16, not UTF-8 (save it as UTF-8)"]


def test_latin_1_is_found_at_its_first_letter() -> None:
    found = read_bytes("a: 1\r\nb: é£ü\r\n".encode("latin-1"), PATH)
    assert said(found) == ["2:4: the file is not UTF-8 from here on (save it as UTF-8)"]


_STEERING = {
    0x00: "a control character",
    0x01: "a control character",
    0x0B: "a control character",
    0x1B: "a control character",
    0x7F: "a control character",
    0x85: "a control character",
    0x9B: "a control character",
    0x2028: "line separator",
    0x202E: "right-to-left override",
    0x2066: "left-to-right isolate",
    0xFFFF: "a sign that means nothing",
}
_UNSEEN = {
    0xAD: "soft hyphen",
    0x200B: "zero width space",
    0x200D: "zero width joiner",
    0x200E: "left-to-right mark",
    0x2060: "word joiner",
    0x3164: "hangul filler",
    0xFE0F: "variation selector-16",
    0xFEFF: "zero width no-break space",
    0xE0041: "tag latin capital letter a",
    0xE000: "a letter of private use",
}
_SPACES = {0xA0: "no-break space", 0x2009: "thin space", 0x202F: "narrow no-break space", 0x3000: "ideographic space"}


@pytest.mark.parametrize(("code", "name"), {**_STEERING, **_UNSEEN}.items())
@pytest.mark.parametrize("before", ["a: ", "# ", "'"])
def test_characters_that_steer_or_are_not_seen_are_refused_wherever_they_stand(
    code: int, name: str, before: str
) -> None:
    text = f"x: 1\n{before}{chr(code)}"
    column = len(before) + 1
    assert said(read_bytes(text.encode(), PATH)) == [
        f"2:{column}: character U+{code:04X} ({name}) may not stand in a record (remove it; it may not be visible)"
    ]


@pytest.mark.parametrize(("code", "name"), _SPACES.items())
def test_other_spaces_are_replaced_by_hand(code: int, name: str) -> None:
    assert said(read_text(f"a: 62{chr(code)}mm\n", PATH)) == [
        f"1:6: character U+{code:04X} ({name}) may not stand in a record (type an ordinary space instead)"
    ]


def test_all_such_signs_of_a_file_are_named_in_one_run() -> None:
    found = read_text("a: 62\u00a0mm\nb: x\u200by\u200b\n", PATH)
    assert [(item.position.line, item.position.column) for item in found.problems] == [(1, 6), (2, 5), (2, 7)]


def test_every_sign_that_unicode_calls_ignorable_a_space_or_a_control_is_refused() -> None:
    """Categories as the `unicodedata` of Python knows them; what is assigned and neither letter, mark nor symbol."""
    for code in range(0x110000):
        kind = unicodedata.category(chr(code))
        if (kind in ("Cc", "Zs", "Zl", "Zp", "Cs", "Co") and chr(code) not in " \t\n\r") or (
            kind == "Cf" and not _PRINTS.get(code)
        ):
            assert unseen_signs.refused(chr(code)), hex(code)


_PRINTS = dict.fromkeys(
    [*range(0x600, 0x606), 0x6DD, 0x70F, 0x890, 0x891, 0x8E2, 0x110BD, 0x110CD, *range(0x13430, 0x13440)], True
)
"""Of category Cf, and yet drawn: Arabic and Kaithi number signs, joiners of hieroglyphs (Unicode 15, chapters 9, 11 and 15)."""


@pytest.mark.parametrize("letter", ["é", "中", "й", "😀", "\t", "½", "°", "−", "…", "e\u0301"])
def test_other_characters_pass(letter: str) -> None:
    assert read_text(f"a: 'b{letter}c'", PATH).problems == ()


@pytest.mark.parametrize(
    ("escape", "code"),
    [
        (r"\e", 0x1B),
        (r"\0", 0),
        (r"\x9b", 0x9B),
        (r"\u202e", 0x202E),
        (r"\L", 0x2028),
        (r"\_", 0xA0),
        (r"\u200b", 0x200B),
    ],
)
def test_an_escape_does_not_smuggle_them_in(escape: str, code: int) -> None:
    found = read_text(f'a:\n  b: "x{escape}y"\n', PATH)
    assert found.data == {"a": {"b": "xy"}}
    message = f"character {sentence(unseen_signs.named(chr(code)))} may not stand in a record (write the text without that escape)"
    assert said(found) == [f"2:6: {message}"]
    assert said(read_text(f'"x{escape}y": 1\n', PATH)) == [f"1:1: {message}"]


def test_a_field_name_is_one_line() -> None:
    found = read_text('"a\\nb": 1\n', PATH)
    assert found.data == {"a b": "1"}
    assert said(found) == ["1:1: the field name 'a b' runs over a line (write it on one line)"]


def test_a_large_file_is_refused_unparsed() -> None:
    found = read_bytes(b"a: 1\n" * 400_000, PATH)
    assert said(found) == [
        f"1:1: the file is larger than {MAX_BYTES // 1000} kB "
        "(a record is a few hundred lines: split it or remove what does not belong)"
    ]
    assert found.text == ""


def test_a_hundred_thousand_lines_are_read() -> None:
    found = read_text("- a\n" * 100_000, PATH)
    assert len(found.data) == 100_000
    assert found.position((99_999,)) == Position(100_000, 3)


def test_what_is_no_file_or_gone_is_a_problem_and_no_exception(tmp_path: Path) -> None:
    (tmp_path / "folder.yaml").mkdir()
    (tmp_path / "dangling.yaml").symlink_to(tmp_path / "nowhere")
    assert said(read(tmp_path / "folder.yaml")) == ["1:1: this is not a file (put a record here, or rename it)"]
    for name in ("dangling.yaml", "absent.yaml"):
        assert said(read(tmp_path / name)) == [
            "1:1: the file cannot be read (see whether it is still there and you may read it)"
        ]


def test_a_file_without_rights_is_a_problem(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> int:
        raise PermissionError(13, "EACCES")

    path = tmp_path / "x.yaml"
    path.write_text("a: 1")
    monkeypatch.setattr(os, "open", refuse)
    assert said(read(path)) == ["1:1: the file cannot be read (see whether it is still there and you may read it)"]


def test_every_known_fault_can_happen() -> None:
    """Each sentence of the table is one that the parser at hand can lead to (the texts of its errors are not ours)."""
    module = Path(__file__).read_text(encoding="utf-8")
    for fault in map(sentence, syntax._KNOWN.values()):
        assert re.sub(r"\W", "", fault) in re.sub(r"\W", "", module), fault


def test_every_entry_of_a_file_has_a_place() -> None:
    found = read_text("a: {b: [1, {c: 2}]}\n", PATH)
    assert set(found.values) == {(), ("a",), ("a", "b"), ("a", "b", 0), ("a", "b", 1), ("a", "b", 1, "c")}
    assert set(found.keys) == {("a",), ("a", "b"), ("a", "b", 1, "c")}
    assert source.Source.empty(PATH).position(("a",)) == Position(1, 1)
