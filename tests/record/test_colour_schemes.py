"""Named schemes of wire colours, against the published letter tables, each named beside its test."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.record import colours, schema
from undertrim.record.colour_schemes import schemes, vocabulary
from undertrim.record.colours import ColourError, WireColour, by_scheme, candidates, parse
from undertrim.words import sentence, way_out

WRITE_WORDS = "write the colours as words, base first, for example 'red/white'"

# DIN 47100 (withdrawn): the colours of cores 1 to 20, base first.
DIN_47100 = [
    "WH",
    "BN",
    "GN",
    "YE",
    "GY",
    "PK",
    "BU",
    "RD",
    "BK",
    "VT",
    "GYPK",
    "RDBU",
    "WHGN",
    "BNGN",
    "WHYE",
    "YEBN",
    "WHGY",
    "GYBN",
    "WHPK",
    "PKBN",
]

# Letters of German vehicle wiring, in the style of DIN 72551, with the older ro, li; as told by secondary texts.
GERMAN = {
    "black": "sw", "white": "ws", "grey": "gr", "pink": "rs", "red": "rt", "orange": "or", "yellow": "ge",
    "green": "gn", "blue": "bl", "light blue": "hb", "violet": "vi", "brown": "br",
}  # fmt: skip

# Letters of Scandinavian vehicle wiring, as told by secondary texts.
SCANDINAVIAN = {
    "blue": "BL", "brown": "BN", "green": "GN", "grey": "GR", "orange": "OR", "pink": "P", "red": "R", "black": "SB",
    "violet": "VO", "white": "W", "yellow": "Y", "light blue": "LBL", "light green": "LGN",
}  # fmt: skip

# Letters of Asian-market vehicle wiring: some told by secondary texts, Y BR O GR LG from memory.
ASIAN = {
    "black": "B", "white": "W", "red": "R", "green": "G", "blue": "L", "yellow": "Y", "brown": "BR", "orange": "O",
    "pink": "P", "violet": "V", "grey": "GR", "light green": "LG",
}  # fmt: skip


def iec(text: str, scheme: str | None = None) -> str:
    return parse(text, scheme).iec


@pytest.mark.parametrize(("scheme", "table"), [("german", GERMAN), ("scandinavian", SCANDINAVIAN), ("asian", ASIAN)])
def test_every_letter_of_a_published_table_is_read(scheme: str, table: dict[str, str]) -> None:
    for name, code in table.items():
        assert parse(code, scheme).words == parse(code.swapcase(), scheme).words == name
        assert parse(name, scheme).words == name


@pytest.mark.parametrize(("text", "meant"), [("ro", "red"), ("li", "violet")])
def test_older_german_letters_mean_the_same(text: str, meant: str) -> None:
    assert parse(text, "german").words == meant


def test_the_cores_of_din_47100_keep_their_base() -> None:
    for core in DIN_47100:
        wire = parse(core, "din")
        assert [colour.code for colour in wire.all] == [core[at : at + 2] for at in range(0, len(core), 2)]
    assert len({parse(core, "din").all for core in DIN_47100}) == 20


# The worked rows of normalising: input, scheme, base, tracers. Sources: R-W to BL/Y secondary texts, slate telephone
# usage, purple the note of IEC 60757 to violet, three colours the style of DIN 47100; the rest follows from the rules.
@pytest.mark.parametrize(
    ("text", "scheme", "expected"),
    [
        ("lime green", None, "LGN"),
        ("LG", None, "LGN"),
        ("LG", "asian", "LGN"),
        ("lt grn", None, "LGN"),
        ("LGN", "scandinavian", "LGN"),
        ("red/white", None, "RD/WH"),
        ("RD/WH", "iec", "RD/WH"),
        ("R-W", "asian", "RD/WH"),
        ("R-W", "scandinavian", "RD/WH"),
        ("W-R", "asian", "WH/RD"),
        ("W-R", "scandinavian", "WH/RD"),
        ("white with red stripe", None, "WH/RD"),
        ("rtws", "german", "RD/WH"),
        ("swge", "german", "BK/YE"),
        ("BL/Y", "scandinavian", "BU/YE"),
        ("GNYE", "iec", "GNYE"),
        ("SB", "scandinavian", "BK"),
        ("purple", None, "VT"),
        ("slate", None, "GY"),
        ("tan", None, "TN"),
        ("WHBNBK", "din", "WH/BN/BK"),
    ],
)
def test_the_worked_rows(text: str, scheme: str | None, expected: str) -> None:
    assert iec(text, scheme) == expected


def test_bl_alone_is_blue_or_black_and_is_not_guessed() -> None:
    assert [wire.iec for wire in candidates("BL")] == ["BU", "BK"]
    with pytest.raises(ColourError, match="'BL' has no single meaning"):
        parse("BL")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("red/white", ["RD/WH"]),
        ("BL/Y", ["BU/YE", "BK/YE"]),
        ("R-G", ["RD/GN", "RD/GY"]),
        ("G/BL", ["GN/BU", "GN/BK", "GY/BU", "GY/BK"]),
        ("G/G", ["GN/GY", "GY/GN"]),
        ("BR/R", ["BN/RD"]),  # not black with two red tracers
        ("RDWH", ["RD/WH", "WH/RD"]),
        ("rtws", ["RD/WH"]),
        ("SB", ["BK"]),
        ("red on white", []),
        ("qzx", []),
        ("B/" * 49, []),
    ],
)
def test_candidates(text: str, expected: list[str]) -> None:
    assert [wire.iec for wire in candidates(text)] == expected


def test_every_open_code_has_at_least_two_candidates() -> None:
    for code in vocabulary().ambiguous:
        assert len(candidates(code)) >= 2, code


def test_what_a_text_means_is_told_by_scheme() -> None:
    told = {name: wire.iec for name, wire in by_scheme("GR").items()}
    assert told == {"german": "GY", "scandinavian": "GY", "asian": "GY"}


@pytest.mark.parametrize(
    ("text", "scheme", "message", "hint"),
    [
        ("R-W", "iec", "'r' is no known wire colour in the scheme 'iec'", WRITE_WORDS),
        ("blk", "words", "'blk' is no known wire colour in the scheme 'words'", "write 'black'"),
        ("RD", "words", "'rd' is no known wire colour in the scheme 'words'", "write 'red'"),
        ("RDWH", "iec", "'RDWH' does not say which colour is the base", "write 'RD/WH' or 'WH/RD'"),
        ("rtxx", "german", "'rtxx' is no known wire colour in the scheme 'german'", WRITE_WORDS),
        ("rtrt", "german", "'rtrt' has red as base and as tracer", "write one colour only"),
        ("B", "german", "'B' has no single meaning", "it may be black or blue; write the word"),
        (
            "red",
            "finnish",
            "no colour scheme is called 'finnish'",
            "there is words, iec, din, german, scandinavian, asian, north-american",
        ),
    ],
)
def test_what_a_scheme_does_not_read(text: str, scheme: str, message: str, hint: str) -> None:
    with pytest.raises(ColourError) as caught:
        parse(text, scheme)
    assert (sentence(caught.value.said), way_out(caught.value.said)) == (message, hint)


@pytest.mark.parametrize("scheme", [name for name, scheme in schemes().items() if scheme.joined])
def test_two_codes_written_together_are_base_and_tracer(scheme: str) -> None:
    codes = schemes()[scheme].codes
    for base, base_colour in codes.items():
        for tracer, tracer_colour in codes.items():
            if base_colour != tracer_colour and base + tracer != "GNYE":
                assert parse(base + tracer, scheme).all == (base_colour, tracer_colour)


def test_a_code_of_the_scheme_wins_over_the_modifier_of_the_same_letter() -> None:
    assert iec("L W", "asian") == "BU/WH"
    assert iec("l grn") == "LGN"


def test_without_a_scheme_nothing_changes_by_naming_none() -> None:
    assert parse("lt grn/bk", "") == parse("lt grn/bk", None) == parse("lt grn/bk")


def test_the_schema_offers_exactly_the_schemes() -> None:
    fields = schema.load("vehicle")["$defs"]["connector"]["properties"]
    assert fields["scheme"]["enum"] == list(schemes())


def test_every_scheme_says_how_sure_it_is() -> None:
    for scheme in schemes().values():
        assert scheme.sure in ("standard", "secondary", "practice", "memory")
        assert scheme.source
        assert scheme.memory <= set(scheme.codes)


# The combined text of IEC 60757:2021, 5.1: letters in the order of table 1. Red with blue is the clause's own example.
@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("red/blue", "RDBU"),
        ("blue/red", "RDBU"),
        ("red/white", "RDWH"),
        ("white/red", "RDWH"),
        ("YEBN", "BNYE"),
        ("white with brown and black stripes", "BKBNWH"),
        ("red", "RD"),
        ("GNYE", "GNYE"),
        ("GNYE/red", "RDGNYE"),
        ("light green/black", "BKLGN"),
        ("green/yellow", ""),
        ("yellow/green", ""),
        ("green/yellow/red", ""),
    ],
)
def test_the_combined_text_of_the_standard(text: str, expected: str) -> None:
    assert parse(text, "din" if text.isupper() else None).iec_sorted == expected


@given(st.permutations(colours.colours()[:14]).flatmap(lambda some: st.integers(1, 3).map(lambda count: some[:count])))
def test_the_combined_text_forgets_the_order_and_nothing_else(some: list[colours.Colour]) -> None:
    turned = WireColour("", some[-1], tuple(some[:-1]))
    wire = WireColour("", some[0], tuple(some[1:]))
    assert wire.iec_sorted == turned.iec_sorted
    order = [colour.code for colour in colours.colours()]
    pieces = [wire.iec_sorted[at : at + 2] for at in range(0, len(wire.iec_sorted), 2)]
    if {"GN", "YE"} <= {colour.code for colour in some}:
        assert pieces == []
    else:
        assert sorted(pieces) == sorted(colour.code for colour in some)
        assert pieces == sorted(pieces, key=order.index)


def test_green_and_yellow_as_one_colour_is_to_be_doubted_in_a_car() -> None:
    assert parse("GNYE").protective_earth
    assert parse("red/GNYE").protective_earth
    assert not parse("green/yellow").protective_earth
