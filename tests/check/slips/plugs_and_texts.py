"""Slips in what hangs on parts, and in their words."""

import itertools

from slips.making import (
    GONE,
    Data,
    Pointer,
    Spoilt,
    at,
    changed,
    each,
    gone,
    key,
    slip,
    swapped,
    values,
    word,
)  # fmt: skip


def is_tether(pointer: Pointer) -> bool:
    return len(pointer) == 4 and pointer[2] == "tethers"


@slip
def plug_left_out(data: Data) -> Spoilt:
    yield from each(data, is_tether, gone)


@slip
def plugs_exchanged(data: Data) -> Spoilt:
    places = [pointer for pointer, _ in values(data) if is_tether(pointer)]
    for one, other in itertools.pairwise(places):
        if one[1] != other[1]:
            yield f"{one[1]} {other[1]}", swapped(data, one, other)


@slip
def plug_renamed(data: Data) -> Spoilt:
    for pointer, value in values(data):
        if is_tether(pointer):
            without = changed(data, pointer, GONE) if len(at(data, pointer[:-1])) > 1 else data
            tethers = {
                f"{name}x" if name == pointer[3] else name: item for name, item in at(data, pointer[:-1]).items()
            }
            yield "/".join(map(str, pointer)), changed(without, pointer[:-1], tethers) if value else data


@slip
def fate_changed(data: Data) -> Spoilt:
    yield from each(data, lambda at: at[-1] == "then", word({"leave": "rejoin", "rejoin": "leave", "park": "rejoin", "to-gear": "park", "bridge": "park"}))  # fmt: skip


@slip
def fate_left_out(data: Data) -> Spoilt:
    yield from each(data, key("then"), gone)


@slip
def circuit_left_out(data: Data) -> Spoilt:
    yield from each(data, key("circuit"), gone)


@slip
def kind_of_a_plug_changed(data: Data) -> Spoilt:
    yield from each(data, lambda at: is_tether(at[:-1]) and at[-1] == "kind", word({"plug": "coax", "coax": "plug", "cable": "rod", "rod": "cable"}))  # fmt: skip


@slip
def test_of_a_cable_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: is_tether(pointer[:-1]) and pointer[-1] == "test", gone)


@slip
def caution_left_out(data: Data) -> Spoilt:
    yield from each(data, key("cautions"), gone)


@slip
def text_negated(data: Data) -> Spoilt:
    yield from each(data, key("how", "refit_how", "restore"), lambda value: f"Do not {value[0].lower()}{value[1:]}")


@slip
def names_exchanged(data: Data) -> Spoilt:
    names = list(data["parts"])
    for one, other in itertools.pairwise(names):
        yield f"{one} {other}", swapped(data, ("parts", one, "name"), ("parts", other, "name"))


@slip
def how_of_another_part(data: Data) -> Spoilt:
    names = [name for name, part in data["parts"].items() if "how" in part]
    for one, other in itertools.pairwise(names):
        yield f"{one} {other}", swapped(data, ("parts", one, "how"), ("parts", other, "how"))
