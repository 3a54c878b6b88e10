"""Slips in drives, order, conditions, states, plugs and words of parts and preparations."""

from slips.making import (
    Data,
    Spoilt,
    changed,
    each,
    gone,
    is_text,
    key,
    number,
    plus,
    slip,
    values,
    word,
)  # fmt: skip

_DRIVES = ("screw", "bolt", "nut")
_SIDES = {"left": "right", "right": "left"}


@slip
def torx_one_size_off(data: Data) -> Spoilt:
    yield from each(data, key(*_DRIVES), word({"T20": "T25", "T25": "T20", "T30": "T25", "T15": "T20", "T50": "T45"}))


@slip
def hexagon_one_millimetre_off(data: Data) -> Spoilt:
    yield from each(data, key(*_DRIVES), lambda value: number(plus(1))(value) if value.startswith("hex") else None)


@slip
def cross_of_another_make(data: Data) -> Spoilt:
    yield from each(data, key(*_DRIVES), word({"PH2": "PZ2", "PZ2": "PH2", "PH1": "PH2"}))


@slip
def thread_two_sizes_up(data: Data) -> Spoilt:
    yield from each(data, key("thread"), number(plus(2)))


@slip
def clip_of_another_kind(data: Data) -> Spoilt:
    yield from each(data, key("clip"), word({"push": "metal", "metal": "push", "fir-tree": "push", "snap-in": "push"}))


@slip
def motion_changed(data: Data) -> Spoilt:
    yield from each(data, key("release"), word({"pull": "slide", "slide": "pull", "lift": "pull", "swing": "pull", "unscrew": "pull"}))  # fmt: skip


@slip
def direction_reversed(data: Data) -> Spoilt:
    turn = {"forward": "rearward", "up": "down", "inboard": "outboard", **_SIDES}
    yield from each(data, key("direction"), word({**turn, **{new: old for old, new in turn.items()}}))


@slip
def side_exchanged(data: Data) -> Spoilt:
    yield from each(data, key("on_side"), word(_SIDES))


@slip
def side_left_out(data: Data) -> Spoilt:
    yield from each(data, key("on_side"), gone)


@slip
def one_side_only(data: Data) -> Spoilt:
    yield from each(data, key("each"), lambda value: value[:1] if len(value) > 1 else None)


@slip
def sides_left_out(data: Data) -> Spoilt:
    yield from each(data, key("each"), gone)


@slip
def mirroring_flipped(data: Data) -> Spoilt:
    yield from each(data, key("mirrors"), word({"yes": "no", "no": "yes", "unknown": "yes"}))


@slip
def side_word_exchanged_in_a_text(data: Data) -> Spoilt:
    def other(value: object) -> object:
        text = str(value)
        return text.replace(" left", " right") if " left" in text else text.replace(" right", " left")

    yield from each(data, key("how", "refit_how", "name"), other)


@slip
def area_changed(data: Data) -> Spoilt:
    doors = {
        "front-door": "rear-door",
        "rear-door": "front-door",
        "dash": "console",
        "footwell": "dash",
        "pillar": "side",
    }
    yield from each(data, key("area"), word(doors))


@slip
def area_left_out(data: Data) -> Spoilt:
    yield from each(data, key("area"), gone)


@slip
def prerequisite_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda at: len(at) == 4 and at[2] == "after", gone)


@slip
def cover_over_a_screw_left_out(data: Data) -> Spoilt:
    yield from each(data, key("under"), gone)


@slip
def part_in_front_of_an_opening_left_out(data: Data) -> Spoilt:
    yield from each(
        data, lambda at: len(at) == 4 and at[2] == "behind" and len(data["openings"][at[1]]["behind"]) > 1, gone
    )


@slip
def part_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda at: len(at) == 2 and at[0] == "parts", gone)


@slip
def opening_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda at: len(at) == 2 and at[0] == "openings", gone)


@slip
def condition_left_out(data: Data) -> Spoilt:
    yield from each(data, key("when"), gone)


@slip
def condition_of_the_other_choice(data: Data) -> Spoilt:
    for pointer, value in values(data):
        if pointer[-2:-1] == ("when",) and is_text(value) and pointer[-1] in data.get("variants", {}):
            for other in data["variants"][pointer[-1]]["choices"]:
                if other != value:
                    yield "/".join(map(str, pointer)), changed(data, pointer, other)


@slip
def condition_too_many(data: Data) -> Spoilt:
    for name, variant in data.get("variants", {}).items():
        for pointer, value in values(data):
            if pointer[0] in ("parts", "openings") and len(pointer) == 2 and "when" not in value:
                yield f"{pointer[1]}", changed(data, (*pointer, "when"), {name: next(iter(variant["choices"]))})


@slip
def need_left_out(data: Data) -> Spoilt:
    yield from each(data, lambda pointer: len(pointer) == 4 and pointer[2] == "needs", gone)


@slip
def need_flipped(data: Data) -> Spoilt:
    flip = {
        "on": "off",
        "off": "on",
        "up": "down",
        "lowest": "park",
        "neutral": "park",
        "open": "closed",
        "forward": "rearward",
    }
    yield from each(data, lambda pointer: len(pointer) == 4 and pointer[2] == "needs", word(flip))


@slip
def way_back_left_out(data: Data) -> Spoilt:
    yield from each(data, key("restore"), gone)


@slip
def replaced_left_out(data: Data) -> Spoilt:
    yield from each(data, key("replaced"), gone)


@slip
def replaced_too_many(data: Data) -> Spoilt:
    for name, part in data["parts"].items():
        if "replaced" not in part:
            yield name, changed(data, ("parts", name, "replaced"), "yes")


@slip
def new_home_left_out(data: Data) -> Spoilt:
    yield from each(data, key("goes_to"), gone)


@slip
def leave_alone_left_out(data: Data) -> Spoilt:
    yield from each(data, key("leave"), gone)


@slip
def single_use_left_out(data: Data) -> Spoilt:
    yield from each(data, key("reuse"), gone)


@slip
def moving_over_left_out(data: Data) -> Spoilt:
    yield from each(data, key("moves"), gone)


@slip
def role_left_out(data: Data) -> Spoilt:
    yield from each(data, key("role"), gone)
