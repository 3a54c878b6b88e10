"""The table of functions: in step with the schema, whole in itself, and its ranges against what is known outside."""

import json
from pathlib import Path

import pytest

from undertrim.derive.wiring.functions import cautions, expected, functions, names, sureness
from undertrim.derive.wiring.suspects import suspects
from undertrim.publish.facts import wiring
from undertrim.resources import table
from undertrim.words import say

SCHEMA = json.loads((Path(__file__).parents[3] / "schema/vehicle.schema.json").read_text(encoding="utf-8"))["$defs"]
GROUPS = {"supply", "ground", "lamp", "output", "input", "speaker", "audio", "camera", "data", "spare"}


def test_every_function_of_the_schema_is_in_the_table_and_no_other() -> None:
    assert list(functions().functions) == SCHEMA["functionName"]["enum"]


def test_words_are_those_of_the_pages() -> None:
    assert {one.id: one.words for one in functions().functions.values()} == {
        name: wiring.function_name(name) for name in SCHEMA["functionName"]["enum"]
    }


def test_every_name_in_the_table_leads_somewhere() -> None:
    # Long because each sort of name in the table is looked up, a line each.
    everything = functions()
    cared = table("functions")["caution"]
    for one in everything.functions.values():
        assert one.patterns
        assert set(one.patterns) <= everything.patterns.keys()
        assert set(one.care) <= {id_ for id_, row in cared.items() if row["needs"] == "function"}
        assert one.group in GROUPS
        assert one.direction in ("in", "out", "both")
    assert {name for one in everything.functions.values() for name in one.patterns} == everything.patterns.keys()
    behaviours = set(SCHEMA["behaviour"]["enum"]) - {"unknown"}
    for pattern in everything.patterns.values():
        assert set(pattern.behaves) <= behaviours
        assert pattern.sure in everything.sure_order
        for reads in pattern.reads.values():
            assert reads.keys() <= {*everything.states, "always"}
            assert set(reads.values()) <= everything.bands.keys()
    named = {
        band for pattern in everything.patterns.values() for reads in pattern.reads.values() for band in reads.values()
    }
    suspected = {band for one in suspects() for bands in one.reads.values() for band in bands}
    assert named | suspected == everything.bands.keys()
    for suspect in suspects():
        assert suspect.where in ("unexplained", "instead", "unrecorded", "lone")
        assert set(suspect.reads) <= everything.kinds.keys()
        assert {*suspect.states} <= everything.states.keys()
        assert {*suspect.expects} <= everything.bands.keys()
        assert {*suspect.groups} <= GROUPS
        assert (suspect.where == "instead") == bool(suspect.expects)
    assert {one.needs for one in everything.patterns.values()} <= {*everything.states, ""}
    assert tuple(everything.sure) == everything.sure_order


def test_bands_are_ranges_of_the_unit_that_they_are_read_in() -> None:
    for band in functions().bands.values():
        assert band.low < band.high
        assert band.sure in functions().sure_order
    units = {
        band: {
            functions().kinds[kind].unit
            for pattern in functions().patterns.values()
            for kind in pattern.reads
            if band in pattern.reads[kind].values()
        }
        | {functions().kinds[kind].unit for one in suspects() for kind, bands in one.reads.items() if band in bands}
        for band in functions().bands
    }
    assert all(len(found) == 1 for found in units.values()), units


def test_an_ohm_reading_never_stands_in_a_state_with_power() -> None:
    for pattern in functions().patterns.values():
        for kind in ("ohms", "pair"):
            for state in functions().states.values():
                assert state.ohms or expected(pattern, kind, state.id) is None


@pytest.mark.parametrize("gravity", [1.12, 1.16, 1.19, 1.22, 1.25, 1.265, 1.28])
def test_a_resting_lead_acid_battery_is_in_its_band(gravity: float) -> None:
    """Six cells; volts per cell are about specific gravity + 0.84 (rule of battery handbooks, from memory)."""
    volts = 6 * (gravity + 0.84)
    band = functions().bands["battery"]
    assert band.low <= volts <= band.high


@pytest.mark.parametrize("name", ["battery", "charging"])
def test_supplies_stay_within_what_gear_must_stand(name: str) -> None:
    """ISO 16750-2, 12 V systems, code D: 10.5 to 16 V (from memory)."""
    band = functions().bands[name]
    assert band.low >= 10.5
    assert band.high <= 16


def test_charging_voltages_are_in_their_band() -> None:
    """Six cells at 2.30 to 2.45 V each, the usual charging range of lead-acid cells (from memory)."""
    band = functions().bands["charging"]
    assert band.low <= 6 * 2.30 < 6 * 2.45 <= band.high


def test_two_terminations_side_by_side() -> None:
    """ISO 11898-2: each termination 100 to 130 ohm, nominally 120 (from memory); parallel resistance by 1/(1/a + 1/b)."""
    band = functions().bands["terminated"]
    for one, other in ((120, 120), (100, 100), (130, 130), (100, 130)):
        assert band.low <= 1 / (1 / one + 1 / other) <= band.high
    assert not band.low <= 120 <= band.high  # one of them alone


@pytest.mark.parametrize("nominal", [2, 4, 6, 8])
def test_a_speaker_reads_below_its_nominal_impedance(nominal: int) -> None:
    """80 to 90 per cent of the nominal impedance: a 4 ohm one reads 3.2 to 3.6 ohm (common practice)."""
    coil, line = functions().bands["coil"], functions().bands["line-input"]
    for share in (0.8, 0.9, 1.0):
        assert coil.low <= nominal * share <= coil.high < line.low


def test_functions_that_no_lamp_goes_on() -> None:
    """Common practice: electronics cannot give the current of a lamp. Of data, audio and inputs every one says so."""
    for one in functions().functions.values():
        expected_care = one.group in ("data", "audio", "speaker") or (one.group == "input" and one.id != "reverse")
        assert ("no-lamp" in one.care) or not expected_care, one.id


def test_restraint_wiring_is_warned_of_always() -> None:
    for ohms in (False, True):
        texts = " ".join(map(say, cautions(ohms=ohms)))
        assert "Never put a test lamp or an ohmmeter on restraint wiring" in texts
        assert ("Ohms only with the power off" in texts) == ohms
    assert "No test lamp on this wire at any time." in map(say, cautions(ohms=False, care=("no-lamp",)))


def test_nothing_is_called_safe() -> None:
    assert "safe" not in json.dumps(table("functions"), ensure_ascii=False).lower()


def test_the_weaker_sureness_counts() -> None:
    patterns, bands = functions().patterns, functions().bands
    assert sureness(patterns["ground"], bands["zero"]) == "practice"
    assert sureness(patterns["bus-high"], bands["bus-high"]) == "memory"
    assert sureness(patterns["single-high"], bands["battery"]) == "memory"


def test_a_supply_of_its_own_takes_the_place_of_the_battery() -> None:
    pattern = functions().patterns["radio-output"]
    band = expected(pattern, "volts", "radio-on", 8.0)
    assert band is not None
    assert (band.low, band.high) == pytest.approx((6.8, 8.8))
    still = expected(pattern, "volts", "key-off", 8.0)
    assert still == functions().bands["zero"]


def test_a_whole_group_has_one_name() -> None:
    speakers = [one.id for one in functions().functions.values() if one.group == "speaker"]
    assert say(names(["mute", *speakers, "spare"])) == "mute, any speaker wire, spare"
    assert say(names(speakers[:2])) == "front left +, front left −"
