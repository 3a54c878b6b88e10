"""What the pages of the wiring rules do not show: boundaries, conditions, and what the schema refused."""

import json
import re

import pytest
from fragments import findings, messages, subject

from undertrim.check.register import RECORD_RULES
from undertrim.derive.electrical.wires import Limit, carries
from undertrim.resources import top

TRIM = """
variants:
  trim:
    ask: Which trim is it?
    choices:
      low: {label: Low, tell: Steel wheels}
      high: {label: High, tell: Alloy wheels}
"""


def said(rule: str, piece: str) -> list[str]:
    return messages(RECORD_RULES[rule], piece)


def plug(pins: str, more: str = "") -> str:
    return f"""
connectors:
  main:
    name: Main radio plug
    view: wires
    rows: 2
    columns: 4
    pins:
{pins}
{more}
"""


# 33 CFR 183.425, Table 5, column 105 °C: 18 AWG 20 A, 12 AWG 45 A, 8 AWG 80 A. 1.5 mm2 lies between 16 AWG (1.309 mm2, 25 A)
# and 14 AWG (2.081 mm2, 35 A); 13 AWG (2.62 mm2) between 14 and 12. Areas by ASTM B258.
@pytest.mark.parametrize(
    ("gauge", "limit"),
    [
        ("18 AWG", Limit(20)),
        ("12 AWG", Limit(45)),
        ("8 AWG", Limit(80)),
        ("4/0 AWG", Limit(445)),
        ("13 AWG", Limit(35)),
        ("1.5 mm2", Limit(25)),
        ("0.85 mm2", Limit(20)),
        # below the table: 20 A x (d/d18)^1.5; 18 AWG is 1.0237 mm across and 24 AWG 0.5106 mm (ASTM B258), 0.5 mm2 is 0.7979 mm across
        ("0.5 mm2", Limit(20 * (0.79788 / 1.02362) ** 1.5, derived=True)),
        ("24 AWG", Limit(20 * (0.51056 / 1.02362) ** 1.5, derived=True)),
        ("99 AWG", None),
        ("0 mm2", None),
    ],
)
def test_what_a_wire_carries(gauge: str, limit: Limit | None) -> None:
    found = carries(gauge)
    assert (found and found.derived) == (limit and limit.derived)
    assert (found and found.current) == (limit and pytest.approx(limit.current, rel=2e-4))


@pytest.mark.parametrize("gauge", ["99 AWG", "41 AWG", "0 AWG", "0 mm2", "0.0 mm2", "5/0 AWG"])
def test_a_gauge_that_does_not_exist_is_refused(gauge: str) -> None:
    """Else a fuse above it would pass. AWG runs from 40 to 4/0 (ASTM B258)."""
    pattern = re.compile(gauge_pattern())
    assert not pattern.fullmatch(gauge)
    assert all(
        pattern.fullmatch(one) for one in ("0.5 mm2", "0.05 mm2", "10 mm2", "40 AWG", "8 AWG", "20 AWG", "4/0 AWG")
    )


def gauge_pattern() -> str:
    schema = json.loads((top("schema") / "vehicle.schema.json").read_text(encoding="utf-8"))
    return str(schema["$defs"]["gauge"]["pattern"])


@pytest.mark.parametrize(("fuse", "found"), [("13 A", 0), ("14 A", 1), ("15 A", 1), ("20 A", 1)])
def test_a_fuse_above_a_thin_wire_does_not_pass(fuse: str, found: int) -> None:
    """0.5 mm2 carries 13.76 A by the same reckoning."""
    assert (
        len(said("fuse-above-wire", plug(f"      1: {{function: illumination, fuse: {fuse}, gauge: 0.5 mm2}}")))
        == found
    )


@pytest.mark.parametrize(("trim", "found"), [("low", 1), ("high", 0)])
def test_a_partner_stated_for_other_cars_is_no_partner(trim: str, found: int) -> None:
    pins = "      1: {function: front-left-plus, when: {trim: high}}"
    piece = TRIM + plug(pins, f"functions:\n  front-left-minus: {{by: absent, when: {{trim: {trim}}}}}")
    assert len(said("speaker-pair-half", piece)) == found


def test_a_half_pair_is_found_in_the_cars_that_have_it() -> None:
    (message,) = said("speaker-pair-half", TRIM + plug("      1: {function: bass-plus, when: {trim: high}}"))
    assert message == "'bass-plus' is on a pin and 'bass-minus' is nowhere where trim=high"


def test_a_half_pair_is_shown_at_its_first_pin() -> None:
    pins = "      2: {function: bass-plus, when: {trim: low}}\n      3: {function: bass-plus, when: {trim: high}}"
    (finding,) = findings(RECORD_RULES["speaker-pair-half"], TRIM + plug(pins))
    assert finding.pointer == ("connectors", "main", "pins", "2", "function")


@pytest.mark.parametrize(("trim", "found"), [("low", 1), ("high", 0)])
def test_a_wire_on_a_pin_of_other_cars_is_nowhere(trim: str, found: int) -> None:
    pins = "      1: {function: reverse, when: {trim: high}}"
    piece = TRIM + plug(pins, f"functions:\n  reverse: {{by: wire, when: {{trim: {trim}}}}}")
    assert len(said("wire-without-pin", piece)) == found


def test_a_pin_with_another_function_is_no_place_for_a_wire() -> None:
    piece = plug("      1: {function: speed}", "functions:\n  reverse: {by: wire}")
    assert len(said("wire-without-pin", piece)) == 1


@pytest.mark.parametrize(("first", "second", "found"), [("", "", 1), ("Fuse 4", "", 0), ("", "Fuse 9", 0)])
def test_two_feeds_are_explained_by_a_note_on_either_pin(first: str, second: str, found: int) -> None:
    notes = [f", note: {note}" if note else "" for note in (first, second)]
    pins = "\n".join(f"      {n}: {{function: battery-feed{note}}}" for n, note in enumerate(notes, 1))
    assert len(said("function-stated-twice", plug(pins))) == found


def test_a_placed_pin_meets_a_later_one_that_its_number_places() -> None:
    piece = plug("      2: {function: speed, place: {row: 1, column: 3}}\n      3: {function: mute}")
    (message,) = said("pin-place-twice", piece.replace("    pins:", "    numbering: rows\n    pins:"))
    assert message == "pin 2 is at row 1, column 3, where pin 3 is"


def test_a_number_outside_its_plug_without_a_place_is_another_rules_business() -> None:
    piece = plug("      9: {function: speed}").replace("    pins:", "    numbering: rows\n    pins:")
    assert said("pin-place-twice", piece) == []
    assert len(said("pin-outside-plug", piece)) == 1


@pytest.mark.parametrize(("blank", "found"), [("A7", 0), ("A8", 0), ("A9", 1)])
def test_a_blank_of_a_block_is_one_of_its_eight(blank: str, found: int) -> None:
    block = f"    standard: iso-10487-a\n    blanks: [{blank}]\n    pins:"
    piece = plug("      A1: {function: speed}").replace("    pins:", block).replace("columns: 4", "columns: 5")
    assert len(said("pin-place-twice", piece)) == found


def test_a_plug_on_a_tether_that_is_nowhere_is_found() -> None:
    piece = plug("      1: {function: ground}").replace("    view:", "    at: radio/mian\n    view:")
    (finding,) = findings(RECORD_RULES["named-but-absent"], piece)
    assert (finding.pointer, finding.message) == (("connectors", "main", "at"), "no tether 'radio/mian'")
    assert said("named-but-absent", piece.replace("mian", "main")) == []


def ladder(buttons: str, tolerance: str = "10 %") -> str:
    rows = f"  wheel: {{pin: main/1, tolerance: {tolerance}, buttons: {buttons}}}"
    return plug("      1: {function: wheel-buttons}", f"ladders:\n{rows}")


# 0 ohm reaches to 2 ohm (data/functions.toml), 2.5 ohm less 20 % is 2 ohm
def test_bands_that_only_touch_share_one_value() -> None:
    assert said("ladder-bands", ladder("{mute: 0 ohm, next: 2.5 ohm}", "20 %")) == ["'mute' and 'next' share 2 ohm"]
    assert said("ladder-bands", ladder("{mute: 0 ohm, next: 2.51 ohm}", "20 %")) == []


def test_the_later_button_answers_for_an_overlap() -> None:
    (finding,) = findings(RECORD_RULES["ladder-bands"], ladder("{previous: 390 ohm, next: 330 ohm}"))
    assert finding.message == "'previous' and 'next' share 351 to 363 ohm"
    assert finding.pointer == ("ladders", "wheel", "buttons", "next")


def built(choices: str) -> str:
    return f"variants:\n  plug:\n    ask: When was it built?\n    choices:\n{choices}\n"


def choice(name: str, begins: str, ends: str) -> str:
    return f"      {name}: {{label: {name}, built: {{from: {begins}, to: {ends}}}}}\n"


# The base record is built from 2014-01 up to 2018-01, not included. Closed ranges that share 2016-05 overlap, half-open ones that meet there do not.
@pytest.mark.parametrize(
    ("early", "late", "message"),
    [
        ("2016-05", "2016-05", []),
        ("2016-06", "2016-05", ["'early' and 'late' overlap in 2016-05"]),
        ("2016-03", "2016-05", ["'early' and 'late' leave a gap [2016-03, 2016-05)"]),
    ],
)
def test_two_maps_of_one_plug(early: str, late: str, message: list[str]) -> None:
    piece = built(choice("early", "2014-01", early) + choice("late", late, "2018-01"))
    assert said("build-ranges", piece) == message


def test_a_choice_inside_another_leaves_no_gap_behind_it() -> None:
    piece = built(
        choice("all", "2014-01", "2018-01")
        + choice("short", "2015-01", "2015-03")
        + choice("next", "2016-01", "2016-03")
    )
    assert said("build-ranges", piece) == [
        "'all' and 'short' overlap [2015-01, 2015-03)",
        "'all' and 'next' overlap [2016-01, 2016-03)",
    ]


def test_choices_of_which_none_is_possible_leave_nothing_to_compare() -> None:
    piece = built(choice("one", "2010-01", "2011-01") + choice("two", "2012-02", "2012-02"))
    assert len(said("build-ranges", piece)) == 2


@pytest.mark.parametrize(
    "piece",
    [
        built(choice("early", "2014-01", "2016-5") + choice("late", "2016-05", "2018-01")),
        built("      one: {label: One}\n" + choice("early", "2014-01", "May 2016")),
    ],
)
def test_months_that_cannot_be_read_are_the_schemas_business(piece: str) -> None:
    about = subject(piece)
    assert about.entry.problems
    assert list(RECORD_RULES["build-ranges"].check(about)) == []
