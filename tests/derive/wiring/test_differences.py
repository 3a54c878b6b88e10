"""Two maps of one plug: by pin, by car, and how to tell. The pins are worked by hand."""

import pytest

from making import record
from undertrim.derive.wiring.differences import answers, compare, comparisons, differences, maps_beside
from undertrim.record.model import VehicleRecord

TWO = """
    variants:
      half:
        ask: When was it built?
        choices:
          early: {label: Before May 2016, built: {from: 2014-01, to: 2016-05}}
          late: {label: From May 2016, tell: The plate in the left door opening says 05/16 or later, built: {from: 2016-05, to: 2018-01}}
    parts:
      radio: {tethers: {main: {name: Main plug, kind: plug}, second: {name: Second plug, kind: plug}}}
    openings: {dash: {behind: [radio]}}
    connectors:
      early:
        name: Main plug
        at: radio/main
        view: wires
        rows: 2
        columns: 8
        when: {half: early}
        blanks: ["9", "10"]
        pins:
          1: {colour: red/white, function: battery-feed}
          2: {colour: RD/WH, function: switched-feed}
          3: {colour: black, function: ground}
          4: {colour: green, function: mute}
          5: {colour: grey, function: speed}
          6: {colour: brown, function: reverse}
          7: {function: illumination}
          8: {colour: pink, function: spare}
      late:
        name: Main plug, later cars
        at: radio/main
        view: wires
        rows: 2
        columns: 8
        when: {half: late}
        scheme: scandinavian
        blanks: ["5"]
        pins:
          1: {colour: W-R, function: battery-feed}
          2: {colour: R-W, function: switched-feed}
          3: {colour: SB, function: illumination}
          4: {colour: BL, function: ground}
          7: {colour: OR, function: illumination}
          8: {colour: P, function: spare, when: {half: late}}
          9: {colour: Y, function: data-high}
          11: {colour: W, function: data-low}
      other:
        name: Second plug
        at: radio/second
        view: wires
        rows: 1
        columns: 2
        pins: {1: {function: ground}}
      nowhere:
        name: Loose plug
        view: wires
        rows: 1
        columns: 2
        pins: {1: {function: ground}}
      nowhere-either:
        name: Another loose plug
        view: wires
        rows: 1
        columns: 2
        pins: {1: {function: mute}}
"""


@pytest.fixture(scope="module")
def about() -> VehicleRecord:
    return record(TWO)


def test_pins_are_added_gone_changed_or_open(about: VehicleRecord) -> None:
    found = {
        item.pin: (item.kind, item.what) for item in differences(about.connectors["early"], about.connectors["late"])
    }
    assert found == {
        "1": ("changed", ("colour",)),
        "3": ("changed", ("function",)),
        "4": ("changed", ("function", "colour")),
        "5": ("gone", ()),
        "6": ("open", ()),
        "8": ("changed", ("cars",)),
        "9": ("added", ()),
        "11": ("open", ()),
    }


def test_the_other_way_round_added_is_gone(about: VehicleRecord) -> None:
    turned = {item.pin: item for item in differences(about.connectors["late"], about.connectors["early"])}
    assert (turned["5"].kind, turned["9"].kind, turned["6"].kind) == ("added", "gone", "open")
    assert turned["5"].first is None
    assert turned["9"].second is None


def test_a_map_differs_from_itself_in_nothing(about: VehicleRecord) -> None:
    for connector in about.connectors.values():
        assert not list(differences(connector, connector))


def test_maps_of_one_plug_are_those_at_one_tether(about: VehicleRecord) -> None:
    assert [item.id for item in maps_beside(about, about.connectors["early"])] == ["late"]
    assert [item.id for item in maps_beside(about, about.connectors["late"])] == ["early"]
    assert maps_beside(about, about.connectors["other"]) == ()
    assert maps_beside(about, about.connectors["nowhere"]) == ()
    assert [(item.first.id, item.second.id) for item in comparisons(about)] == [("early", "late")]


def test_no_car_has_both_maps(about: VehicleRecord) -> None:
    assert compare(about.connectors["early"], about.connectors["late"]).apart
    assert not compare(about.connectors["early"], about.connectors["other"]).apart


def test_the_choices_tell_which_map_is_for_the_car(about: VehicleRecord) -> None:
    (answer,) = answers(about, about.connectors["late"])
    assert answer.ask == "When was it built?"
    (late,) = answer.choices
    assert late.tell == "The plate in the left door opening says 05/16 or later"
    assert late.built
    assert (str(late.built.from_), str(late.built.to)) == ("2016-05", "2018-01")
    assert answers(about, about.connectors["other"]) == ()
