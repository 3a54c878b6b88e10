"""Encodings and signs of a file: what steers or is not seen is refused wherever it stands, other letters pass."""

import unicodedata

import pytest

from said_at import PATH, said
from undertrim.record import unseen_signs
from undertrim.record.source import read_bytes, read_text
from undertrim.words import sentence


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
@pytest.mark.parametrize("before", ["a: ", "# ", "b: 'c' # "])
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
