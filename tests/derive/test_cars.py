"""Which variants of a record matter, and where each condition stands."""

from making import record
from undertrim.derive import cars
from undertrim.derive.evidence.seen import seen
from undertrim.record.model import CarSeen, When
from undertrim.words import say

ABOUT = record("""
    vehicle: {drive_side: [right, left], bodies: [saloon, pick-up]}
    variants:
      radio: {ask: Which one, choices: {plain: {label: Plain}, map: {label: Map}, big: {label: Big}}}
      roof: {ask: Which one, choices: {steel: {label: Steel}, glass: {label: Glass}}}
    preps:
      battery:
        sets: {battery: off}
        held_by: [{nut: hex 10 mm, count: 1, when: {radio: map}}]
    parts:
      knee: {each: [left, right]}
      trim:
        after: [{part: knee, when: {drive-side: right}}]
        after_any: [{above: [{part: knee, when: {radio: [map, big]}}], below: [knee]}]
        tethers: {lamp: {name: Lamp, kind: plug, when: {radio: plain}}}
        cautions: [{signal: NOTICE, when: {radio: big}, hazard: Edge., consequence: It breaks., avoid: Go slowly.}]
    openings:
      dash: {behind: [trim], when: {radio: plain}}
    connectors:
      main:
        name: Main plug
        view: wires
        rows: 1
        columns: 2
        pins: {1: {function: ground, when: {radio: map}}}
    duties:
      clock: {kept_by: none, when: {radio: big}}
    after_battery:
      after: {clock: {do: Set it., when: {radio: plain}}}
""")


def test_variants_that_follow_from_the_vehicle() -> None:
    found = cars.variants(ABOUT)
    assert list(found) == ["radio", "roof", "drive-side", "body"]
    assert [say(choice.label) for choice in found["drive-side"].choices.values()] == [
        "Right-hand drive",
        "Left-hand drive",
    ]
    assert list(found["body"].choices) == ["saloon", "pick-up"]


def test_one_steering_side_and_one_body_are_no_variants() -> None:
    about = record("{vehicle: {bodies: [van]}, parts: {trim: {}}, openings: {dash: {behind: [trim]}}}")
    assert cars.variants(about) == {}
    assert cars.assignments(about) == [{}]


def test_a_variant_of_the_record_goes_before_one_that_follows() -> None:
    about = record("""
        vehicle: {drive_side: [left, right]}
        variants:
          drive-side: {ask: Own question, choices: {left: {label: Left}, right: {label: Right}}}
        parts: {trim: {}}
        openings: {dash: {behind: [trim]}}
    """)
    assert cars.variants(about)["drive-side"].ask == "Own question"


def test_every_condition_is_found_where_it_stands() -> None:
    assert list(cars.conditions(ABOUT)) == [
        (("parts", "trim", "after", 0, "when"), When((("drive-side", ("right",)),))),
        (("parts", "trim", "after_any", 0, "above", 0, "when"), When((("radio", ("map", "big")),))),
        (("parts", "trim", "tethers", "lamp", "when"), When((("radio", ("plain",)),))),
        (("parts", "trim", "cautions", 0, "when"), When((("radio", ("big",)),))),
        (("openings", "dash", "when"), When((("radio", ("plain",)),))),
        (("preps", "battery", "held_by", 0, "when"), When((("radio", ("map",)),))),
        (("connectors", "main", "pins", "1", "when"), When((("radio", ("map",)),))),
        (("duties", "clock", "when"), When((("radio", ("big",)),))),
        (("after_battery", "after", "clock", "when"), When((("radio", ("plain",)),))),
    ]


def test_only_variants_that_some_fact_depends_on_are_asked() -> None:
    assert list(cars.asked(ABOUT)) == ["radio", "drive-side"]
    assert cars.assignments(ABOUT) == [
        {"radio": radio, "drive-side": side} for radio in ("plain", "map", "big") for side in ("right", "left")
    ]
    assert cars.assignments(ABOUT, {"radio": "big"}) == [
        {"radio": "big", "drive-side": "right"},
        {"radio": "big", "drive-side": "left"},
    ]


LISTED = """
    vehicle: {drive_side: [left], gearboxes: [manual, automatic], engines: ["1.2 petrol", "1.6 Diesel"], trim_levels: [Base]}
    parts: {knob: {when: {gearbox: manual}}, cover: {when: {engine: 1-6-diesel}}}
    openings: {dash: {behind: [knob]}}
"""


def test_gearbox_and_engine_are_told_apart_like_sides_and_bodies() -> None:
    found = cars.variants(record(LISTED))
    assert {name: list(variant.choices) for name, variant in found.items()} == {
        "gearbox": ["manual", "automatic"],
        "engine": ["1-2-petrol", "1-6-diesel"],
    }
    assert [say(choice.label) for choice in found["engine"].choices.values()] == ["1.2 petrol", "1.6 Diesel"]
    assert say(found["gearbox"].choices["manual"].tell) == "Three pedals, and a lever with a shift pattern"
    assert len(cars.assignments(record(LISTED))) == 4


def test_a_car_that_was_looked_at_may_say_its_gearbox_and_engine() -> None:
    known = seen(record(LISTED), CarSeen(text="2016, automatic, 1.6 diesel"))
    assert known.choices == {"gearbox": "automatic", "engine": "1-6-diesel"}
