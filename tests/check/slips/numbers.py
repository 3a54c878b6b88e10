"""Slips in counts, lengths, times and other numbers of parts and openings."""

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
    transposed,
    unit,
    values,
)  # fmt: skip

_HOLES = ("hole", "face", "clear_front", "panel", "bolts")


def _sizes(pointer: Pointer) -> bool:
    return pointer[0] == "openings" and len(pointer) == 4 and pointer[2] in _HOLES


def _count(pointer: Pointer) -> bool:
    return pointer[-1] == "count" and "held_by" in pointer


def _plain_count(data: Data, step: int) -> Spoilt:
    for pointer, value in values(data):
        if _count(pointer) and "at" not in at(data, pointer[:-1]) and value.isdecimal():
            yield "/".join(map(str, pointer)), changed(data, pointer, str(int(value) + step))


@slip
def one_fastener_too_many(data: Data) -> Spoilt:
    yield from _plain_count(data, 1)


@slip
def one_fastener_too_few(data: Data) -> Spoilt:
    yield from _plain_count(data, -1)


@slip
def one_fastener_too_many_with_its_edge(data: Data) -> Spoilt:
    for pointer, value in values(data):
        if _count(pointer) and "at" in at(data, pointer[:-1]) and value.isdecimal():
            edge, there = next(iter(at(data, pointer[:-1])["at"].items()))
            more = changed(data, pointer, str(int(value) + 1))
            yield "/".join(map(str, pointer)), changed(more, (*pointer[:-1], "at", edge), str(int(there) + 1))


@slip
def fastener_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: len(pointer) == 4 and pointer[2] == "held_by", gone)


@slip
def depth_with_its_digits_exchanged(data: Data) -> Spoilt:
    yield from each(data, key("clear", within="openings"), number(transposed))


@slip
def depth_ten_times(data: Data) -> Spoilt:
    yield from each(data, key("clear", within="openings"), number(times(10)))


@slip
def depth_a_tenth(data: Data) -> Spoilt:
    yield from each(data, key("clear", within="openings"), number(times(0.1)))


@slip
def depth_in_inches(data: Data) -> Spoilt:
    yield from each(data, key("clear", within="openings"), unit({"mm": "in", "in": "mm"}))


@slip
def depth_five_millimetres_off(data: Data) -> Spoilt:
    yield from each(data, key("clear", within="openings"), number(plus(5)))


@slip
def size_with_its_digits_exchanged(data: Data) -> Spoilt:
    yield from each(data, _sizes, number(transposed))


@slip
def size_ten_times(data: Data) -> Spoilt:
    yield from each(data, _sizes, number(times(10)))


@slip
def size_in_centimetres(data: Data) -> Spoilt:
    yield from each(data, _sizes, unit({"mm": "cm"}))


@slip
def size_twenty_millimetres_more(data: Data) -> Spoilt:
    yield from each(data, _sizes, number(plus(20)))


@slip
def size_twenty_millimetres_less(data: Data) -> Spoilt:
    yield from each(data, _sizes, number(plus(-20)))


@slip
def width_and_height_exchanged(data: Data) -> Spoilt:
    for pointer, value in values(data):
        two = pointer[0] == "openings" and isinstance(value, dict) and {"width", "height"} <= value.keys()
        if two and value["width"] != value["height"]:
            yield "/".join(map(str, pointer)), swapped(data, (*pointer, "width"), (*pointer, "height"))


@slip
def hole_and_bolt_circle_exchanged(data: Data) -> Spoilt:
    for name, opening in data["openings"].items():
        if "diameter" in opening.get("hole", {}) and "diameter" in opening.get("bolts", {}):
            here = ("openings", name)
            yield name, swapped(data, (*here, "hole", "diameter"), (*here, "bolts", "diameter"))


@slip
def bolt_holes_one_more(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: pointer[-2:] == ("bolts", "count"), number(plus(1)))


@slip
def front_and_rear_door_exchanged(data: Data) -> Spoilt:
    doors = [name for name, opening in data["openings"].items() if opening["kind"] == "speaker"]
    for one, other in itertools.pairwise(doors):
        for field in ("hole", "depth", "panel", "bolts"):
            if field in data["openings"][one] and field in data["openings"][other]:
                yield f"{one} {field}", swapped(data, ("openings", one, field), ("openings", other, field))
