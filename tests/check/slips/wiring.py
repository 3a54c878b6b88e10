"""Slips in plugs, colours, functions, duties, sound and what guards people."""

import itertools

from slips.making import (
    Data,
    Pointer,
    Spoilt,
    at,
    changed,
    each,
    gone,
    key,
    number,
    plus,
    slip,
    swapped,
    times,
    unit,
    values,
    word,
)  # fmt: skip


def _pins(data: Data) -> list[Pointer]:
    return [pointer for pointer, _ in values(data) if len(pointer) == 4 and pointer[2] == "pins"]


def _neighbours(data: Data) -> list[tuple[Pointer, Pointer]]:
    pins = _pins(data)
    return [(one, other) for one, other in itertools.pairwise(pins) if one[:2] == other[:2]]


def _both(data: Data, field: str) -> Spoilt:
    for one, other in _neighbours(data):
        if field in at(data, one) and field in at(data, other):
            yield f"{one[1]}/{one[3]} {other[3]}", swapped(data, (*one, field), (*other, field))


def _renamed(data: Data, old: str, new: str) -> Spoilt:
    """Exchanges functions that differ in one word, as a pair."""
    for one in _pins(data):
        name = at(data, one).get("function", "")
        for other in _pins(data):
            if old in name and other[:2] == one[:2] and at(data, other).get("function") == name.replace(old, new):
                yield f"{one[1]}/{one[3]} {other[3]}", swapped(data, (*one, "function"), (*other, "function"))


@slip
def pins_exchanged(data: Data) -> Spoilt:
    for one, other in _neighbours(data):
        yield f"{one[1]}/{one[3]} {other[3]}", swapped(data, one, other)


@slip
def colours_exchanged(data: Data) -> Spoilt:
    yield from _both(data, "colour")


@slip
def functions_exchanged(data: Data) -> Spoilt:
    yield from _both(data, "function")


@slip
def plus_and_minus_exchanged(data: Data) -> Spoilt:
    yield from _renamed(data, "plus", "minus")


@slip
def left_and_right_speaker_exchanged(data: Data) -> Spoilt:
    yield from _renamed(data, "left", "right")


@slip
def front_and_rear_speaker_exchanged(data: Data) -> Spoilt:
    yield from _renamed(data, "front", "rear")


@slip
def feeds_exchanged(data: Data) -> Spoilt:
    yield from _renamed(data, "battery", "switched")


@slip
def colour_misread(data: Data) -> Spoilt:
    swap = {"grey": "white", "white": "grey", "orange": "red", "red": "orange", "blue": "violet", "violet": "blue", "black": "brown", "brown": "black", "green": "light green", "pink": "red", "yellow": "orange"}  # fmt: skip
    yield from each(data, key("colour", within="connectors"), word(swap))


@slip
def base_and_stripe_exchanged(data: Data) -> Spoilt:
    def turned(value: object) -> object:
        base, slash, stripe = str(value).partition("/")
        return f"{stripe}/{base}" if slash else None

    yield from each(data, key("colour", within="connectors"), turned)


@slip
def stripe_left_out(data: Data) -> Spoilt:
    yield from each(data, key("colour", within="connectors"), lambda value: value.partition("/")[0])


@slip
def stripe_of_a_pair_on_its_plus(data: Data) -> Spoilt:
    for one in _pins(data):
        name = at(data, one).get("function", "")
        for other in _pins(data):
            partner = at(data, other).get("function", "")
            pair = name.endswith("-plus") and other[:2] == one[:2] and partner == name.replace("-plus", "-minus")
            if pair and ("/" in at(data, one).get("colour", "")) != ("/" in at(data, other).get("colour", "")):
                yield f"{one[1]}/{one[3]}", swapped(data, (*one, "colour"), (*other, "colour"))


@slip
def behaviour_changed(data: Data) -> Spoilt:
    yield from each(data, key("behaves"), word({"steady": "on-off", "on-off": "steady", "dimmed-plus": "dimmed-ground", "dimmed-ground": "dimmed-plus", "closes-to-ground": "closes-to-plus"}))  # fmt: skip


@slip
def behaviour_left_out(data: Data) -> Spoilt:
    yield from each(data, key("behaves"), gone)


@slip
def fuse_left_out(data: Data) -> Spoilt:
    yield from each(data, key("fuse"), gone)


@slip
def fuse_doubled(data: Data) -> Spoilt:
    yield from each(data, key("fuse"), number(times(2)))


@slip
def wire_ten_times_as_thick(data: Data) -> Spoilt:
    yield from each(data, key("gauge"), number(times(10)))


@slip
def wire_half_as_thick(data: Data) -> Spoilt:
    yield from each(data, key("gauge"), number(times(0.5)))


@slip
def ampere_for_milliampere(data: Data) -> Spoilt:
    yield from each(data, key("draws"), unit({"mA": "A", "A": "mA"}))


@slip
def drawn_from_the_other_side(data: Data) -> Spoilt:
    yield from each(data, key("view"), word({"wires": "contacts", "contacts": "wires"}))


@slip
def numbering_changed(data: Data) -> Spoilt:
    yield from each(data, key("numbering"), word({"rows": "columns", "columns": "rows", "snake": "rows"}))


@slip
def numbering_from_the_other_corner(data: Data) -> Spoilt:
    yield from each(
        data, key("starts"), word({"top-left": "top-right", "top-right": "top-left", "bottom-left": "top-left"})
    )


@slip
def rows_and_columns_exchanged(data: Data) -> Spoilt:
    for name, plug in data.get("connectors", {}).items():
        if plug.get("rows") != plug.get("columns"):
            yield name, swapped(data, ("connectors", name, "rows"), ("connectors", name, "columns"))


@slip
def pin_number_one_up(data: Data) -> Spoilt:
    for pointer in _pins(data):
        pins = at(data, pointer[:-1])
        new = number(plus(1))(pointer[3])
        if new not in pins:
            moved = {new if name == pointer[3] else name: pin for name, pin in pins.items()}
            yield f"{pointer[1]}/{pointer[3]}", changed(data, pointer[:-1], moved)


@slip
def pin_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: len(pointer) == 4 and pointer[2] == "pins", gone)


@slip
def blank_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: len(pointer) == 4 and pointer[2] == "blanks", gone)


@slip
def plug_at_another_part(data: Data) -> Spoilt:
    tethers = [f"{p}/{t}" for p, part in data["parts"].items() for t in part.get("tethers", {})]
    for name, plug in data.get("connectors", {}).items():
        for other in tethers[:3]:
            if "at" in plug and plug["at"] != other:
                yield f"{name} {other}", changed(data, ("connectors", name, "at"), other)


@slip
def absent_for_unknown(data: Data) -> Spoilt:
    yield from each(data, key("by", within="functions"), word({"unknown": "absent", "absent": "unknown"}))


@slip
def wire_for_data(data: Data) -> Spoilt:
    yield from each(data, key("by", within="functions"), word({"wire": "data", "data": "wire", "absent": "data"}))


@slip
def function_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: len(pointer) == 2 and pointer[0] == "functions", gone)
