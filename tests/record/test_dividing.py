"""A fact may be a list of values, each with its cars: the whole then has what is around it once for each kind of car."""

from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given, settings

from differing import BODY, HEAD, PATH, changed, whole
from junk import answered_with_sentences, spoilt
from undertrim.check import one_file
from undertrim.record import shapes
from undertrim.record.problem import Position
from undertrim.record.redirecting import may_be_several
from undertrim.record.shapes import Shape
from undertrim.record.source import read_text
from undertrim.record.store import entry

LINES = len(HEAD.splitlines())


def at(data: Any, place: str) -> Any:
    for step in place.split("/"):
        data = data[int(step) if step.isdecimal() and isinstance(data, list) else step]
    return data


@pytest.mark.parametrize(
    ("place", "value"),
    [
        ("openings/dash-map/face/height", "146 mm"),
        ("openings/dash-plain/face/height", "112 mm"),
        ("openings/dash-map/when", {"radio": "map"}),
        ("openings/dash-plain/not_in", [{"radio": "map"}]),
        ("openings/dash-plain/depth/clear", "170 mm"),
        ("openings/dash-plain/area", "dash"),
        ("openings/dash-plain/name", "Dash (Plain radio)"),
        ("parts/bezel-map/name", "Bezel"),
        ("parts/bezel-map/takes", "2 min"),
        ("parts/bezel-plain/held_by", [{"clip": "push", "count": "6"}]),
        ("parts/radio/after", ["bezel-map", "bezel-plain"]),
        ("parts/radio/held_by/0/under", "bezel-map"),
        ("parts/radio/held_by/1/when", {"radio": "plain"}),
        ("connectors/main-amplified/pins/4/function", "amplifier-turn-on"),
        ("connectors/main-bare/pins/4", {"colour": "orange", "function": "illumination", "behaves": "dimmed-plus"}),
        ("connectors/main-bare/at", "radio/main"),
        ("ladders/wheel-bare/pin", "main-bare/2"),
        ("ladders/wheel-bare/return", "main-bare/3"),
        ("ladders/wheel-amplified/when", {"sound": "amplified"}),
        ("conflicts/depth-plain/about", "openings/dash-plain/depth/clear"),
    ],
)
def test_each_kind_of_car_has_its_own(place: str, value: Any) -> None:
    assert at(whole(HEAD + BODY).data, place) == value


def test_only_what_differs_stands_twice_and_nothing_is_wrong() -> None:
    found = whole(HEAD + BODY).data
    assert list(found["parts"]) == ["bezel-map", "bezel-plain", "radio"]
    assert list(found["openings"]) == ["dash-map", "dash-plain"]
    assert list(found["ladders"]) == ["wheel-amplified", "wheel-bare"]
    assert "when" not in found["parts"]["radio"]
    assert entry(PATH, "vehicle", read_text(HEAD + BODY, PATH)).problems == ()


def told(text: str) -> list[tuple[int, int, str]]:
    """Line, column and code of all that is wrong."""
    found = one_file.look(entry(PATH, "vehicle", read_text(text, PATH))).problems
    return [(problem.position.line - LINES, problem.position.column, problem.said.code) for problem in found]


PLAIN = "{when: {radio: plain}, is: 1 min}"


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [
        ("height: 112 mm}", "height: 112 mmm}", [(21, 111, "schema/fault")]),
        (PLAIN, "{when: {radio: [map, plain]}, is: 1 min}", [(6, 47, "spread/two-values")]),
        (f", {PLAIN}", "", [(6, 13, "spread/one-value")]),
        (f"[{{when: {{radio: map}}, is: 2 min}}, {PLAIN}]", "{when: {radio: map}, is: 2 min}", [(6, 12, "spread/one-value")]),
        (PLAIN, "1 min", [(6, 46, "spread/value-without-when")]),
        (PLAIN, "{when: plain, is: 1 min}", [(6, 53, "schema/wrong-type")]),
        (PLAIN, "{when: {radio: plane}, is: 1 min}", [(6, 61, "spread/no-choice")]),
        (PLAIN, "{when: {radioo: plain}, is: 1 min}", [(6, 54, "spread/no-variant")]),
        (PLAIN, "{when: {radio: plain}, is: 1 min, note: x}", [(6, 80, "spread/beside-is")]),
        (PLAIN, "{when: {radio: plain, sound: bare}, is: 1 min}", [(6, 5, "spread/no-value")]),
        ("drive_side: left", "drive_side: [{when: {radio: map}, is: left}, {when: {radio: plain}, is: right}]", [(-7, 15, "spread/cannot-differ")]),
        ("  radio:\n    area", "  bezel-map: {release: pull, area: dash}\n  radio:\n    area", [(8, 3, "spread/id-twice")]),
        ("under: bezel}", "under: bezell}", [(12, 44, "rules/named-but-absent/none-near")]),
        ("kit: needed", "kit: needd", [(22, 10, "schema/not-known")]),
        ("kit: needed", "kitt: needed", [(22, 5, "schema/no-field")]),
        ("[orange, illumination, dimmed-plus]", "[orange, illuminatio, dimmed-plus]", [(38, 123, "schema/not-known")]),
        ("blue/white, function", "blue/white, functio", [(38, 58, "schema/no-field")]),
        ("    behind: radio\n", "    behind: radio\n    when: {radio: map}\n    not_in: {radio: plain}\n", [(23, 72, "spread/no-such-car")]),
    ],
)  # fmt: skip
def test_a_mistake_is_one_sentence_where_it_was_typed(old: str, new: str, wanted: list[tuple[int, int, str]]) -> None:
    assert told(changed(old, new)) == wanted


def test_what_no_value_is_for_is_unknown_or_left_out_but_never_guessed() -> None:
    third = changed(
        "plain: {label: Plain radio, tell: Six keys}",
        "plain: {label: Plain, tell: Six keys}, disc: {label: Disc, tell: A slot}",
    )
    spoken = third.replace(
        "count: [{when: {radio: map}, is: 4}, {when: {radio: plain}, is: 6}]",
        "count: [{when: {radio: map}, is: 4}, {when: {radio: disc}, is: 6}]",
    )
    assert at(whole(spoken).data, "parts/bezel-plain/held_by/0/count") == "unknown"
    assert {code for _, _, code in told(spoken)} == {"spread/no-value"}  # of 'takes' and 'face', for the disc radio
    unsaid = changed("{when: {radio: plain}, is: 1 min}", "{when: {radio: plain}, is: unknown}")
    assert "takes" not in whole(unsaid).data["parts"]["bezel-plain"]
    assert not any(code.startswith(("spread/", "schema/")) for _, _, code in told(unsaid))


def test_a_group_may_share_what_differs() -> None:
    text = (
        HEAD
        + """parts:
  dash:
    takes: [{when: {radio: map}, is: 2 min}, {when: {radio: plain}, is: 1 min}]
    source: e2
    parts:
      bezel: {release: pull}
      vent: {release: pull, takes: 30 s}
"""
    )
    found = whole(text)
    assert list(found.data["parts"]) == ["bezel-map", "bezel-plain", "vent"]
    assert found.data["parts"]["bezel-plain"] == {
        "release": "pull", "takes": "1 min", "source": "e2", "area": "dash", "name": "Bezel", "when": {"radio": "plain"},
    }  # fmt: skip
    assert found.position(("parts", "bezel-plain", "takes")) == Position(LINES + 3, 73)


def test_a_value_along_others_in_one_list_may_differ() -> None:
    text = changed(
        "    release: pull\n",
        "    release: [{when: {radio: map}, is: [pull, inboard]}, {when: {radio: plain}, is: [slide, forward]}]\n",
    )
    parts = whole(text).data["parts"]
    assert (parts["bezel-map"]["direction"], parts["bezel-plain"]["direction"]) == ("inboard", "forward")


JUNK: list[Any] = [
    None,
    "",
    "yes",
    "dash",
    "radio",
    [],
    {},
    [{}],
    {"when": {"radio": "map"}, "is": "x"},
    [{"when": {"radio": "map"}}, {"when": {}, "is": []}],
    [{"when": [], "is": {}}],
]


@settings(max_examples=150, deadline=None)
@given(spoilt(read_text(HEAD + BODY, PATH).data, JUNK))
def test_junk_is_answered_with_sentences(text: str) -> None:
    answered_with_sentences(text, PATH)


def names_of_one(shape: Shape, several: bool = False, place: tuple[str, ...] = ()) -> Iterator[tuple[bool, str]]:
    """Each field below a shape that names one thing only, and whether what it stands in may stand there several times."""
    below = [*shape.fields.items(), *([("*", shape.other)] if shape.other else [])]
    for key, one in below:
        if one.leads and not one.is_list:
            yield several, "/".join((*place, key))
        yield from names_of_one(one, not one.is_list and may_be_several(shape, one), (*place, key))
    if shape.items:
        yield from names_of_one(shape.items, True, (*place, "0"))


def test_whatever_names_one_thing_can_stand_several_times() -> None:
    """It could not say which form is meant otherwise."""
    assert [place for several, place in names_of_one(shapes.whole("vehicle")) if not several] == []
    lone = Shape(fields={"block": Shape(fields={"of": Shape(leads="part")})})
    assert list(names_of_one(lone)) == [(False, "block/of")]


@pytest.mark.parametrize(("variant", "field", "typed", "ids", "labels"), [
    ("gearbox", "gearboxes", "[manual, automatic]", ["manual", "automatic"], ["manual", "automatic"]),
    ("engine", "engines", "[1.6 diesel, 1.2 petrol]", ["1-6-diesel", "1-2-petrol"], ["1.6 diesel", "1.2 petrol"]),
    ("trim-level", "trim_levels", "[Base, Long Line]", ["base", "long-line"], ["Base", "Long Line"]),
    ("body", "bodies", "[estate, hatchback]", ["estate", "hatchback"], ["estate", "hatchback"]),
])  # fmt: skip
def test_a_value_may_differ_by_what_follows_from_the_vehicle(
    variant: str, field: str, typed: str, ids: list[str], labels: list[str]
) -> None:
    head = HEAD.replace("  drive_side: left\n", f"  drive_side: left\n  {field}: {typed}\n")
    sizes = f"[{{when: {{{variant}: {ids[0]}}}, is: 170 mm}}, {{when: {{{variant}: {ids[1]}}}, is: 160 mm}}]"
    made = whole(head + BODY.replace("clear: 170 mm", f"clear: {sizes}", 1).replace("height: 112 mm", "height: 146 mm"))
    assert made.origin
    assert made.origin.faults == ()
    names = {opening["name"] for opening in made.data["openings"].values()}
    assert all(any(label in name for name in names) for label in labels)
    assert {f"dash-map-{one}" for one in ids} <= set(made.data["openings"])
