"""Slips in duties, sound and buttons, and in what guards people."""

import itertools

from slips.making import (
    Data,
    Spoilt,
    at,
    changed,
    each,
    gone,
    is_text,
    key,
    number,
    slip,
    swapped,
    times,
    word,
)  # fmt: skip


@slip
def duty_kept_otherwise(data: Data) -> Spoilt:
    yield from each(
        data, key("kept_by"), word({"none": "stays", "stays": "none", "moved": "stays", "interface": "stays"})
    )


@slip
def duty_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: len(pointer) == 2 and pointer[0] == "duties", gone)


@slip
def level_of_the_sound_changed(data: Data) -> Spoilt:
    yield from each(data, key("output"), word({"speaker": "line", "line": "speaker", "digital-ring": "line"}))


@slip
def amplifier_left_out(data: Data) -> Spoilt:
    yield from each(data, key("amplifier"), gone)


@slip
def amplifier_woken_otherwise(data: Data) -> Spoilt:
    yield from each(data, key("turn_on"), word({"wire": "signal", "data": "wire", "signal": "wire"}))


@slip
def least_load_doubled(data: Data) -> Spoilt:
    yield from each(data, key("least_load"), number(times(2)))


@slip
def channel_changed(data: Data) -> Spoilt:
    yield from each(data, key("channel"), word({"front": "rear", "rear": "front", "centre": "front", "bass": "rear"}))


@slip
def button_ten_times(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: len(pointer) == 4 and pointer[2] == "buttons", number(times(10)))


@slip
def buttons_exchanged(data: Data) -> Spoilt:
    for name, ladder in data.get("ladders", {}).items():
        buttons = list(ladder["buttons"])
        for one, other in itertools.pairwise(buttons):
            here = ("ladders", name, "buttons")
            yield f"{one} {other}", swapped(data, (*here, one), (*here, other))


@slip
def tolerance_ten_times(data: Data) -> Spoilt:
    yield from each(data, key("tolerance"), number(times(10)))


@slip
def ladder_on_another_pin(data: Data) -> Spoilt:
    yield from each(data, key("pin", within="ladders"), lambda value: f"{value.partition('/')[0]}/1")


@slip
def sensor_denied(data: Data) -> Spoilt:
    yield from each(data, key("crash_sensor"), word({"yes": "no", "unknown": "no"}))


@slip
def high_voltage_denied(data: Data) -> Spoilt:
    yield from each(data, key("high_voltage"), word({"yes": "no", "unknown": "no", "near": "clear", "inside": "near"}))


@slip
def restraints_of_an_area_left_out(data: Data) -> Spoilt:
    yield from each(data, key("restraints"), gone)


@slip
def area_of_restraints_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: len(pointer) == 2 and pointer[0] == "areas", gone)


@slip
def memory_keeper_allowed(data: Data) -> Spoilt:
    yield from each(data, key("memory_keeper"), word({"forbidden": "allowed", "unknown": "allowed"}))


@slip
def faults_not_read_first(data: Data) -> Spoilt:
    yield from each(data, key("read_faults_first"), word({"yes": "no", "unknown": "no"}))


@slip
def restraints_denied(data: Data) -> Spoilt:
    if isinstance(data.get("restraint"), dict):
        yield "restraint", changed(data, ("restraint", "fitted"), "no")


@slip
def latch_mechanical(data: Data) -> Spoilt:
    yield from each(data, key("latch", within="closures"), word({"electric": "mechanical", "unknown": "mechanical"}))


@slip
def key_barrel_flipped(data: Data) -> Spoilt:
    yield from each(data, key("key", within="closures"), word({"no": "yes", "yes": "no", "unknown": "yes"}))


@slip
def kit_flipped(data: Data) -> Spoilt:
    yield from each(data, key("kit"), word({"needed": "not-needed", "not-needed": "needed"}))


@slip
def thing_to_do_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: len(pointer) == 3 and pointer[0] == "after_battery" and not is_text(at(data, pointer)), gone)  # fmt: skip
