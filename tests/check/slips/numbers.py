"""Slips in counts, lengths, times and other numbers of parts and openings."""

import itertools

from slips.making import (
    GONE,
    Data,
    Pointer,
    Spoilt,
    at,
    below,
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
    word,
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


@slip
def datum_changed(data: Data) -> Spoilt:
    yield from each(
        data, key("datum"), word({"skin": "bracket", "bracket": "skin", "panel": "skin", "face": "bracket"})
    )


@slip
def datum_of_a_dash_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda at: at[-1] == "datum" and data["openings"][at[1]]["kind"] == "receiver", gone)


@slip
def glass_not_moved(data: Data) -> Spoilt:
    yield from each(data, key("over"), word({"whole-travel": "glass-down", "glass-down": "whole-travel", "no-glass": "whole-travel"}))  # fmt: skip


@slip
def glass_forgotten(data: Data) -> Spoilt:
    yield from each(data, key("over"), word({"whole-travel": "no-glass"}))


@slip
def lean_ten_times(data: Data) -> Spoilt:
    yield from each(data, key("leans"), number(times(10)))


@slip
def room_to_the_grille_ten_times(data: Data) -> Spoilt:
    yield from each(data, key("room_to_grille"), number(times(10)))


@slip
def room_to_the_grille_left_out(data: Data) -> Spoilt:
    yield from each(data, key("room_to_grille"), gone)


@slip
def spacer_height_for_none(data: Data) -> Spoilt:
    yield from each(data, key("factory_spacer"), lambda value: "19 mm" if value == "none" else "none")


@slip
def speaker_impedance_halved(data: Data) -> Spoilt:
    yield from each(data, key("impedance"), number(times(0.5)))


@slip
def speaker_impedance_ten_times(data: Data) -> Spoilt:
    yield from each(data, key("impedance"), number(times(10)))


@slip
def screw_length_with_its_digits_exchanged(data: Data) -> Spoilt:
    yield from each(data, below("held_by"), lambda value: None if "mm" not in str(value) or "hex" in str(value) else number(transposed)(value))  # fmt: skip


@slip
def screw_length_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: pointer[-1] == "length" and "held_by" in pointer, gone)


@slip
def torque_halved(data: Data) -> Spoilt:
    yield from each(data, key("torque"), number(times(0.5)))


@slip
def torque_in_another_unit(data: Data) -> Spoilt:
    yield from each(data, key("torque"), unit({"N.m": "lbf.ft", "lbf.ft": "N.m"}))


@slip
def torque_left_out(data: Data) -> Spoilt:
    yield from each(data, key("torque"), gone)


@slip
def restraint_wait_shortened(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: pointer == ("restraint", "wait"), number(times(0.5)))


@slip
def wait_in_seconds(data: Data) -> Spoilt:
    yield from each(data, key("time", "wait"), unit({"min": "s"}))


@slip
def wait_of_a_preparation_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: pointer[0] == "preps" and pointer[-1] == "wait", gone)


@slip
def minutes_for_seconds(data: Data) -> Spoilt:
    yield from each(data, key("takes", "refit_takes"), unit({"s": "min"}))


@slip
def hours_for_minutes(data: Data) -> Spoilt:
    yield from each(data, key("takes", "refit_takes"), unit({"min": "h"}))


@slip
def time_left_out(data: Data) -> Spoilt:
    yield from each(data, key("takes"), gone)


@slip
def cable_run_ten_times(data: Data) -> Spoilt:
    yield from each(data, key("length", within="runs"), number(times(10)))


@slip
def cable_run_in_feet(data: Data) -> Spoilt:
    yield from each(data, key("length", within="runs"), unit({"m": "ft"}))


@slip
def bulkhead_left_out_of_a_run(data: Data) -> Spoilt:
    yield from each(data, lambda at: len(at) == 4 and at[2] == "passes", lambda value: GONE)
