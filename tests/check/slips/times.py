"""Slips in datum, torque, times and cable runs."""

from slips.making import (
    GONE,
    Data,
    Spoilt,
    below,
    each,
    gone,
    key,
    number,
    slip,
    times,
    transposed,
    unit,
    word,
)  # fmt: skip


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
