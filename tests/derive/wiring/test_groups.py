"""Which gear is taken from stock for a joint, and how cars with the same table are put together."""

import re
from dataclasses import replace

import pytest

from joining import ADDRESS, SPEAKERS, car, gear, harness, interface, leads, shelf
from undertrim.derive.fit.stock import Gear
from undertrim.derive.wiring.groups import Group, joints
from undertrim.derive.wiring.leads import NoLeads, lead_set
from undertrim.record.model import VehicleRecord, When
from undertrim.words import say, sentence, way_out

SET = leads("battery: {function: battery-feed}\nswitched: {function: switched-feed}\nleft: {function: front-left-plus}")
PINS = "1: {function: battery-feed}\n2: {function: front-left-plus}"
BY_DATA = "functions: {switched-feed: {by: data}}\n"


def made(about: VehicleRecord, *stock: Gear, by_hand: bool = False, **chosen: str) -> list[Group]:
    return joints(about, ADDRESS, about.openings["dash"], SET, shelf(SET, *stock), by_hand=by_hand, chosen=chosen)


def receiver(more: str = "") -> Gear:
    return gear(
        "receiver",
        f"body: {{width: 180 mm, height: 50 mm}}\nchassis_depth: 100 mm\noutputs: [speaker]\nneeds: [battery-feed, reverse]\n{more}",
        "Burrow",
    )


def test_a_receiver_is_joined_by_the_lead_set_it_names() -> None:
    assert lead_set(SET, shelf()) is SET
    assert lead_set(receiver("lead_set: pellworth-cord"), shelf(SET)) is SET
    about = car(PINS)
    found = joints(about, ADDRESS, about.openings["dash"], receiver("lead_set: pellworth-cord"), shelf(SET))
    assert tuple(map(say, found[0].joint.notes)) == (
        "Pellworth Burrow needs reverse, and its lead set has no such lead: look in its manual",
    )


@pytest.mark.parametrize(
    ("item", "said"),
    [
        (receiver(), "'Pellworth Burrow' names no lead set"),
        (receiver("lead_set: gone"), "names lead set 'gone', which is not in stock"),
        (harness("1: {function: ground}"), "'Pellworth Knot' is a harness and has no leads"),
    ],
)
def test_gear_without_leads_says_so(item: Gear, said: str) -> None:
    with pytest.raises(NoLeads) as error:
        lead_set(item, shelf(SET))
    assert re.search(said, f"{sentence(error.value.said)}: {way_out(error.value.said)}")


def test_the_harness_that_brings_most_is_taken() -> None:
    small, large = harness("1: {function: battery-feed}", "A"), harness(PINS, "B")
    about = car(PINS, SPEAKERS)
    adapter = made(about, small, large)[0].joint.adapter
    assert adapter
    assert adapter.id == "pellworth-b"
    assert made(about, small, large, by_hand=True)[0].joint.adapter is None
    assert made(about)[0].joint.adapter is None


def test_an_interface_is_taken_for_data_alone_and_its_loom_keeps_a_harness_out() -> None:
    box = interface("provides: [switched-feed]\nplugs: {radio-main: {1: {function: battery-feed}}}")
    about = car(PINS, SPEAKERS, BY_DATA)
    assert [item.id for item in made(about, box)[0].joint.interfaces] == ["pellworth-weir"]
    assert made(about, box, harness(PINS))[0].joint.adapter is None
    assert made(about, interface("provides: [switched-feed]"), harness(PINS))[0].joint.adapter is not None
    assert made(car(PINS, SPEAKERS), box)[0].joint.interfaces == ()


def test_a_converter_is_taken_where_no_lead_has_the_level() -> None:
    converter = gear("converter", "takes: speaker\ngives: line", "Sluice")
    line = car(PINS, "sound: {a: {output: line}}\n")
    assert [item.id for item in made(line, converter)[0].joint.interfaces] == ["pellworth-sluice"]
    assert made(car(PINS, SPEAKERS), converter)[0].joint.interfaces == ()
    unneeded = gear("converter", "takes: line\ngives: speaker", "Sluice")
    assert made(car(PINS, SPEAKERS), unneeded)[0].joint.interfaces == ()
    to_any = interface("provides: [chime]\ngives: speaker")
    assert made(car(PINS, SPEAKERS), to_any)[0].joint.interfaces == ()


VARIANTS = """
variants:
  a: {ask: Which, choices: {one: {label: One, tell: One}, two: {label: Two, tell: Two}}}
  b: {ask: Which, choices: {one: {label: One, tell: One}, two: {label: Two, tell: Two}}}
"""


def test_cars_with_the_same_table_are_one_group() -> None:
    pins = f"{PINS}\n5: {{function: switched-feed, when: {{a: one}}}}\n6: {{function: spare, when: {{b: one}}}}"
    found = made(car(pins, SPEAKERS, VARIANTS))
    assert [[dict(kind) for kind in group.cars] for group in found] == [
        [{"a": "one", "b": "one"}, {"a": "one", "b": "two"}],
        [{"a": "two", "b": "one"}, {"a": "two", "b": "two"}],
    ]
    assert [group.cars for group in made(car(pins, SPEAKERS, VARIANTS), a="one")] == [()]


def test_a_harness_named_for_another_car_is_said() -> None:
    other = gear(
        "harness", "suits: [{vehicle: a/b, opening: dash}]\nplugs: {radio-main: {1: {function: battery-feed}}}"
    )
    about = car(PINS, SPEAKERS)
    found = joints(about, ADDRESS, about.openings["dash"], SET, shelf(SET, other), harness=other)
    assert "not made for this car" in say(found[0].joint.notes[0])
    assert made(about, other)[0].joint.adapter is None


def test_cars_without_the_opening_have_no_table() -> None:
    about = car(PINS, VARIANTS, SPEAKERS)
    opening = replace(about.openings["dash"], when=When((("a", ("one",)),)))
    found = joints(about, ADDRESS, opening, SET, shelf(SET))
    assert [group.cars for group in found] == [({"a": "one"},)]
    assert [group.cars for group in joints(about, ADDRESS, opening, SET, shelf(SET), chosen={"a": "one"})] == [()]
    assert joints(about, ADDRESS, opening, SET, shelf(SET), chosen={"a": "two"}) == []
