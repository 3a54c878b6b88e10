"""Drives as they are typed, in the sizes of the standards named beside each table, and the messages people will read."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.record.drive_sizes import families
from undertrim.record.drives import DriveError, parse, size_note, tool
from undertrim.words import say, sentence

ISO_10664 = [6, 8, 10, 15, 20, 25, 30, 40, 45, 50, 55, 60]
EVERY_FAMILY = "write it like one of " + ", ".join(
    f"'{text}'"
    for text in ("hex 7 mm", "hex key 4 mm", "slot 5 mm", "T30", "T30 pin", "E10", "PH2", "PZ2", "hand", "unknown")
)


@pytest.mark.parametrize(
    ("text", "family", "size", "label", "tool_name"),
    [
        ("hex 7 mm", "hex", 7.0, "hex 7 mm", "socket 7 mm"),
        ("Hex 7mm", "hex", 7.0, "hex 7 mm", "socket 7 mm"),
        ("hex 5.50 mm", "hex", 5.5, "hex 5.5 mm", "socket 5.5 mm"),
        ("hex 7/32 in", "hex", 5.55625, "hex 7/32 in", "socket 7/32 in"),
        ('hex 7/32"', "hex", 5.55625, "hex 7/32 in", "socket 7/32 in"),
        ("hex 8/32 in", "hex", 6.35, "hex 1/4 in", "socket 1/4 in"),
        ("hex 0.25 in", "hex", 6.35, "hex 1/4 in", "socket 1/4 in"),
        ("hex 1-1/16 in", "hex", 26.9875, "hex 1 1/16 in", "socket 1 1/16 in"),
        ("hex key 4 mm", "hex-key", 4.0, "hex key 4 mm", "hex key 4 mm"),
        ("hex-key 1/8 in", "hex-key", 3.175, "hex key 1/8 in", "hex key 1/8 in"),
        ("T30", "hexalobular", 30, "T30", "T30 bit"),
        ("t30", "hexalobular", 30, "T30", "T30 bit"),
        ("T30 pin", "hexalobular-pin", 30, "T30 pin", "T30 bit with centre hole"),
        ("E10", "external-hexalobular", 10, "E10", "E10 socket"),
        ("PH2", "phillips", 2, "PH2", "PH2 screwdriver"),
        ("PH00", "phillips", -1, "PH00", "PH00 screwdriver"),
        ("PZ2", "pozidriv", 2, "PZ2", "PZ2 screwdriver"),
        ("slot 5 mm", "slot", 5.0, "slot 5 mm", "slotted screwdriver 5 mm"),
        ("hand", "hand", None, "hand", ""),
    ],
)
def test_what_people_type(text: str, family: str, size: float | None, label: str, tool_name: str) -> None:
    drive = parse(text)
    assert (drive.text, drive.family, drive.size, drive.label) == (text, family, size, label)
    assert say(tool(drive)) == tool_name


def test_every_size_reads_back_from_its_label() -> None:
    for family in families().values():
        for size in family.sizes:
            drive = parse(family.named(size))
            assert (drive.family, drive.size, drive.unit) == (family.key, float(size.value), size.unit)
            assert drive.label == family.named(size)
            assert size_note(drive) is None


def test_every_example_is_a_drive() -> None:
    for family in families().values():
        assert parse(family.example).family == family.key


@pytest.mark.parametrize("number", ISO_10664)
def test_numbers_of_iso_10664_exist(number: int) -> None:
    assert parse(f"T{number}").size == number


@pytest.mark.parametrize("number", range(5))
@pytest.mark.parametrize("letters", ["PH", "PZ"])  # ISO 4757 type H and type Z
def test_drivers_of_iso_4757_exist(letters: str, number: int) -> None:
    assert parse(f"{letters}{number}").size == number


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("hex 7.32 mm", "did you mean hex 7/32 in (5.56 mm), close to hex 5.5 mm?"),
        ("hex 5.16 mm", "did you mean hex 5/16 in (7.94 mm), close to hex 8 mm?"),
        ("hex 9.32 mm", "did you mean hex 9/32 in (7.14 mm)?"),
        ("hex 3.16 mm", "did you mean hex 3/16 in (4.76 mm)?"),
        ("hex 11.32 mm", "did you mean hex 11/32 in (8.73 mm)?"),
        ("hex 3.8 mm", "did you mean hex 3/8 in (9.53 mm)?"),
        ("hex 1.4 mm", "did you mean hex 1/4 in (6.35 mm)? if the fastener is that small, measure it again"),
        ("hex key 7.32 mm", "did you mean hex key 7/32 in (5.56 mm)?"),
        ("hex 10.5 mm", "sizes that exist near it: 10 mm, 11 mm"),
        ("hex 2.8 mm", "sizes that exist near it: 3 mm"),  # nobody writes 2/8
        ("hex 40 mm", "sizes that exist near it: 36 mm"),
        ("hex 0.219 in", "sizes that exist near it: 7/32 in, 1/4 in"),
        ("hex 0 mm", "sizes that exist near it: 3 mm"),
        ("slot 0 mm", "sizes that exist near it: 1 mm"),
        ("T22", "sizes that exist near it: T20, T25"),
        ("T18", "sizes that exist near it: T15, T20"),
        ("T12 pin", "sizes that exist near it: T10 pin, T15 pin"),
        ("PH5", "sizes that exist near it: PH4"),
        ("PZ00", "sizes that exist near it: PZ0"),
    ],
)
def test_a_size_no_tool_has(text: str, hint: str) -> None:
    with pytest.raises(DriveError) as caught:
        parse(text)
    assert (caught.value.message, caught.value.hint) == (f"no tool is made for '{text}'", hint)


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("T 30", "write 'T30'"),
        ("t-30", "write 'T30'"),
        ("tx30", "write 'T30'"),
        ("T30 bit", "write 'T30'"),
        ("T30 security", "write 'T30 pin'"),
        ("tr20", "write 'T20 pin'"),
        ("PH 2", "write 'PH2'"),
        ("phillips 2", "write 'PH2'"),
        ("philips #2", "write 'PH2'"),
        ("philips", "write it like 'PH2'"),
        ("pozi 2", "write 'PZ2'"),
        ("10 mm socket", "write 'hex 10 mm'"),
        ("hexx 7 mm", "write 'hex 7 mm'"),
        ("hex bit 4 mm", "write 'hex key 4 mm'"),
        ("flat blade 5 mm", "write 'slot 5 mm'"),
        ("flathead", "write it like 'slot 5 mm'"),
        ("thumb screw", "write 'hand'"),
        ("star 22", "sizes that exist near it: T20, T25"),
        ("T20H", "write 'T20 pin'"),
        ("T-20 H", "write 'T20 pin'"),
        ("T20TR", "write 'T20 pin'"),
        ("security star 20", "write 'T20 pin'"),
        ("T20 tamper resistant", "write 'T20 pin'"),
        ("T20S", f"{EVERY_FAMILY}; with the word s it may be none of them"),
        ("PZ2H", f"{EVERY_FAMILY}; with the word h it may be none of them"),
        ("PH2 security", f"{EVERY_FAMILY}; with the word security it may be none of them"),
        ("security hex 5 mm", f"{EVERY_FAMILY}; with the word security it may be none of them"),
        ("tri wing", f"{EVERY_FAMILY}; with the word tri it may be none of them"),
        ("square 2", EVERY_FAMILY),
        ("", EVERY_FAMILY),
    ],
)
def test_said_in_another_way(text: str, hint: str) -> None:
    with pytest.raises(DriveError) as caught:
        parse(text)
    assert (caught.value.message, caught.value.hint) == (f"'{text}' cannot be read as a drive", hint)


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("Torx 30", "write 'T30'"),
        ("torx t30", "write 'T30'"),
        ("security torx 30", "write 'T30 pin'"),
        ("torx e10", "write 'E10'"),
        ("torx", "write it like 'T30'"),
        ("torx security", "write it like 'T30 pin'"),
        ("torx plus 20", f"{EVERY_FAMILY}; with the word plus it may be none of them"),
        ("4 mm allen key", "write 'hex key 4 mm'"),
    ],
)
def test_brand_words(text: str, hint: str) -> None:
    with pytest.raises(DriveError) as caught:
        parse(text)
    assert (caught.value.message, caught.value.hint) == (f"'{text}' uses a brand word for the drive", hint)


@pytest.mark.parametrize(
    ("text", "message", "hint"),
    [
        ("7 mm", "'7 mm' does not say what turns it", "say what turns it: 'hex 7 mm'"),
        ("10mm", "'10mm' does not say what turns it", "say what turns it: 'hex 10 mm'"),
        ("7/32", "'7/32' does not say what turns it", "say what turns it: 'hex 7/32 in'"),
        ("30", "'30' does not say what turns it", "say what turns it: 'hex 30 mm' or 'T30'"),
        (
            "7.32 mm",
            "'7.32 mm' does not say what turns it",
            "did you mean hex 7/32 in (5.56 mm), close to hex 5.5 mm?",
        ),
        ("M6", "'M6' is a thread, not a drive", "say what turns it, such as 'hex 10 mm'"),
        ("hex 10.5", "'hex 10.5' has no unit", "sizes that exist near it: 10 mm, 11 mm"),
        ("hex 7", "'hex 7' has no unit", "write 'hex 7 mm'"),
        ("hex 7/32", "'hex 7/32' has no unit", "write 'hex 7/32 in'"),
        ("hex 7/32 mm", "'hex 7/32 mm' is a fraction of a unit that has none", "write 'hex 7/32 in'"),
        ("hex 0.7 cm", "'hex 0.7 cm' is in cm, and tools are sized in mm or in", "write 'hex 7 mm'"),
        ("hex 7 min", "'hex 7 min' is a time, not a length", "write it like 'hex 7 mm'"),
        ("T" * 41, f"'{'T' * 39}…' is too long for a drive", "write only what turns the fastener"),
    ],
)
def test_other_messages(text: str, message: str, hint: str) -> None:
    with pytest.raises(DriveError) as caught:
        parse(text)
    assert (caught.value.message, caught.value.hint) == (message, hint)


def test_decimal_comma_in_a_size() -> None:
    with pytest.raises(DriveError) as caught:
        parse("hex 5,5 mm")
    assert caught.value.hint == "write a decimal point: 'hex 5.5 mm'"


@pytest.mark.parametrize(
    ("text", "note"),
    [
        ("E9", "E9 is not a usual size; near it: E8, E10"),
        ("slot 5.2 mm", "slot 5.2 mm is not a usual size; near it: 5 mm, 5.5 mm"),
        ("hex key 1.4 mm", "hex key 1.4 mm is not a usual size; near it: 1.3 mm, 1.5 mm"),
    ],
)
def test_series_known_from_memory_only_note(text: str, note: str) -> None:
    found = size_note(parse(text))
    assert found
    assert sentence(found) == note


WORDS = [
    "hex",
    "hex key",
    "slot",
    "T",
    "E",
    "PH",
    "PZ",
    "torx",
    "pin",
    "mm",
    "in",
    "socket",
    "M",
    "x",
    '"',
    "/",
]
PIECES = st.one_of(st.sampled_from(WORDS), st.integers(0, 120).map(str), st.sampled_from([" ", ".", ",", "-", "#"]))


@given(st.one_of(st.text(max_size=45), st.lists(PIECES, max_size=8).map("".join)))
def test_any_text_is_read_or_refused_with_a_way_out_that_works(text: str) -> None:
    try:
        drive = parse(text)
    except DriveError as error:
        refusal = error
    else:
        assert parse(drive.label).label == drive.label
        return
    assert refusal.hint
    assert refusal.message.isprintable()
    for written in re.findall(r"'([^']*)'", refusal.hint):
        parse(written)
