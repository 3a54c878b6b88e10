"""What a record says itself lies over what it takes from another."""

from pathlib import Path

import pytest

from sisters import ALL, OTTER, Place
from undertrim.record.model import Blank, VehicleRecord
from undertrim.record.store import Workspace


@pytest.fixture
def place(tmp_path: Path) -> Place:
    return Place(tmp_path)


def test_own_fields_lie_over_it_one_by_one(place: Place) -> None:
    found = place.record(ALL + "parts:\n  vent: {takes: 9 min, source: e1}\n")
    vent = found.parts["vent"]
    assert (vent.name, vent.source, vent.held_by[0].count) == ("Upper vent", ("e1",), 4)
    assert str(vent.takes) != str(place.record(ALL).parts["vent"].takes)
    assert ("parts", "vent", "takes") not in found.taken
    assert found.taken["parts", "vent", "held_by"].own == (("parts", "takes"),)


def test_pins_and_tethers_are_overlaid_by_id_and_none_takes_back(place: Place) -> None:
    found = place.record(
        ALL
        + "parts:\n  radio: {tethers: {map-lead: none}}\nconnectors:\n  main: {pins: {3: {colour: pink}, 4: [blue, mute]}}\n"
    )
    assert list(found.parts["radio"].tethers) == ["main"]
    pins = found.connectors["main"].pins
    assert {pin.id: (pin.colour, pin.function) for pin in pins.values()} == {
        "1": ("yellow", "battery-feed"),
        "2": ("black", "ground"),
        "3": ("pink", "switched-feed"),
        "4": ("blue", "mute"),
    }
    taken = [spot[3:] for spot in found.taken if spot[:3] == ("connectors", "main", "pins")]
    assert sorted(taken) == [("1",), ("2",), ("3", "function")]
    assert found.parts["seat"].takes is not None
    assert place.record(ALL + "parts:\n  seat: {takes: none}\n").parts["seat"].takes is None


def test_none_that_is_a_value_of_the_field_takes_nothing_back(place: Place) -> None:
    place.write(
        "brindleway/otter-2014-2018",
        OTTER.replace("    room_to_grille", "    factory_spacer: 12 mm\n    room_to_grille"),
    )
    found = place.record(ALL + "openings:\n  front-door: {factory_spacer: none, source: e1}\n")
    assert getattr(found.openings["front-door"], "factory_spacer") is Blank.NONE  # noqa: B009


def test_what_the_car_does_not_have_is_left_out_of_links_too(place: Place) -> None:
    text = ALL.replace("connectors: all", "connectors: all, without: brace")
    found = place.record(text + "parts:\n  radio: {tethers: {map-lead: none}}\n")
    assert [ref.part for ref in found.parts["radio"].after] == ["vent"]
    assert "brace" not in found.parts


def test_an_opening_of_its_own_follows_a_part_that_is_taken(place: Place) -> None:
    own = "openings:\n  low: {name: Low, kind: speaker, behind: panel, hole: {shape: round, diameter: 100 mm}, depth: {clear: 50 mm}}\n"
    found = place.record("shares:\n  otter-2014-2018: {parts: front-door}\n" + own)
    assert (found.openings["low"].area, found.openings["low"].each) == ("front-door", ("left", "right"))


def test_the_other_record_stays_as_it_is(place: Place) -> None:
    path = place.folder / "records/vehicles/brindleway/otter-2014-2018.yaml"
    alone = Workspace(place.folder).load(path)
    place.vole(ALL + "parts:\n  radio: {tethers: {map-lead: none}}\n")
    again = Workspace(place.folder).load(path)
    assert alone.source.data == again.source.data
    assert alone.record == again.record
    assert isinstance(again.record, VehicleRecord)
    assert again.record.taken == {}
