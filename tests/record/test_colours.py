"""Wire colours: codes and names after IEC 60757:2021; words and short forms are common practice."""

import re

import pytest

from undertrim import resources
from undertrim.record import colours
from undertrim.record.colours import ColourError, parse
from undertrim.words import sentence, way_out

WRITE_WORDS = "write the colours as words, base first, for example 'red/white'"

# IEC 60757:2021, table 1, in its order; GNYE from clause 5.1.
IEC = {
    "BK": "black",
    "BN": "brown",
    "RD": "red",
    "OG": "orange",
    "YE": "yellow",
    "GN": "green",
    "BU": "blue",
    "VT": "violet",
    "GY": "grey",
    "WH": "white",
    "PK": "pink",
    "GD": "gold",
    "TQ": "turquoise",
    "SR": "silver",
    "GNYE": "green-and-yellow",
}


def codes(text: str) -> list[str]:
    wire = parse(text)
    return [wire.base.code, *(tracer.code for tracer in wire.tracers)]


def test_the_standard_codes_stand_first_in_the_order_of_the_standard() -> None:
    assert {c.code: c.name for c in colours.colours() if not c.local} == IEC
    assert [c.code for c in colours.colours()][: len(IEC)] == list(IEC)


def test_no_code_name_or_word_means_two_things() -> None:
    table = resources.table("wire-colours")
    said = [word for row in table["colour"] for word in (row["code"].casefold(), row["name"], *row["words"])]
    said += [code.casefold() for code in table["ambiguous"]]
    assert sorted(said) == sorted(set(said))


def test_every_colour_looks_different() -> None:
    looks = [(c.hex, c.stripe) for c in colours.colours()]
    assert len(set(looks)) == len(looks)


@pytest.mark.parametrize("code", IEC)
@pytest.mark.parametrize("fold", [str.upper, str.lower])
def test_code_and_name_read_back(code: str, fold: type[str]) -> None:
    assert parse(fold(code)).base.code == code
    assert parse(fold(IEC[code])).base.code == code


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("lime green", ["LGN"]),
        ("LG", ["LGN"]),
        ("lt grn", ["LGN"]),
        ("Lt. Grn", ["LGN"]),
        ("ltgrn", ["LGN"]),
        ("light-green", ["LGN"]),
        ("light   green / black", ["LGN", "BK"]),
        ("black/light green", ["BK", "LGN"]),
        ("dk blue", ["DBU"]),
        ("dkblu", ["DBU"]),
        ("red/white", ["RD", "WH"]),
        ("RD/WH", ["RD", "WH"]),
        ("WH-RD", ["WH", "RD"]),
        ("R-W", ["RD", "WH"]),
        ("W-R", ["WH", "RD"]),
        ("W/R", ["WH", "RD"]),
        ("red w/white stripe", ["RD", "WH"]),
        ("white with red stripe", ["WH", "RD"]),
        ("white wire, red tracer", ["WH", "RD"]),
        ("white, stripe red", ["WH", "RD"]),
        ("white red stripe", ["WH", "RD"]),
        ("WH/BN/BK", ["WH", "BN", "BK"]),
        ("white with brown and black stripes", ["WH", "BN", "BK"]),
        ("GNYE", ["GNYE"]),
        ("green/yellow", ["GN", "YE"]),
        ("purple", ["VT"]),
        ("slate", ["GY"]),
        ("gray", ["GY"]),
        ("tan", ["TN"]),
    ],
)
def test_what_people_write(text: str, expected: list[str]) -> None:
    assert codes(text) == expected


def test_base_and_tracer_are_never_sorted() -> None:
    assert parse("red/white") != parse("white/red")
    assert parse("red/white").iec == "RD/WH"
    assert parse("white/red").iec == "WH/RD"  # IEC 60757:2021, 5.1 would print RDWH for both


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("RD", "red"),
        ("RD/WH", "red with white tracer"),
        ("WH/BN/BK", "white with brown and black tracers"),
        ("lt grn/bk", "light green with black tracer"),
    ],
)
def test_words_say_it_and_read_back(text: str, words: str) -> None:
    assert parse(text).words == words
    assert codes(words) == codes(text)


def test_green_and_yellow_is_one_colour_drawn_with_two() -> None:
    wire = parse("GNYE/RD")
    assert wire.stripes == (wire.base.stripe, wire.tracers[0].hex)
    assert parse("RD/WH").stripes == (parse("white").base.hex,)


@pytest.mark.parametrize("code", ["BL", "B", "GR", "G", "P", "V", "L", "BR", "OR"])
def test_a_code_with_several_readings_is_not_guessed(code: str) -> None:
    for text in (code, code.lower(), f"{code}/red", f"red/{code}"):
        with pytest.raises(ColourError) as caught:
            parse(text)
        assert sentence(caught.value.said) == f"'{code}' has no single meaning"
        assert re.fullmatch("it may be .+ or .+; write the word", way_out(caught.value.said))


@pytest.mark.parametrize(
    ("text", "message", "hint"),
    [
        ("BL", "'BL' has no single meaning", "it may be blue or black; write the word"),
        ("gren", "'gren' is no known wire colour", "did you mean 'green' or 'grey'?"),
        ("red/whote", "'whote' is no known wire colour", "did you mean 'white'?"),
        ("RDWH", "'RDWH' does not say which colour is the base", "write 'RD/WH' or 'WH/RD'"),
        ("light red", "no wire colour is called 'light red'", "there is light blue, light green, light grey"),
        ("", "no colour in ''", "write the colours as words, base first, for example 'red/white'"),
        ("stripe", "'stripe' does not say which colour is the base", WRITE_WORDS),
        ("red/red", "'red/red' has red as base and as tracer", "write one colour only"),
        ("red " * 3000, "12000 characters is no wire colour", WRITE_WORDS),
        ("qzx", "'qzx' is no known wire colour", WRITE_WORDS),
    ],
)
def test_what_is_not_read_says_why(text: str, message: str, hint: str) -> None:
    with pytest.raises(ColourError) as caught:
        parse(text)
    assert (sentence(caught.value.said), way_out(caught.value.said)) == (message, hint)
    assert str(caught.value) == f"{message}: {hint}"


@pytest.mark.parametrize(
    "text",
    ["red on white", "red stripe on white", "red stripe, white", "white stripe red", "lime green stripe"],
)
def test_an_open_order_is_refused(text: str) -> None:
    with pytest.raises(ColourError, match="does not say which colour is the base"):
        parse(text)
