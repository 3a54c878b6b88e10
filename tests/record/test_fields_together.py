"""Fields that stand together in a mapping, a word that stands as a key, and groups that only name what they hold: one whole, and one sentence for a mistake."""

import random
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from junk import answered_with_sentences, spoilt
from spreading import HEAD, LINES, PATH, told, whole
from undertrim.record import shapes
from undertrim.record.examples import typed
from undertrim.record.shapes import Shape
from undertrim.record.source import read_text
from undertrim.record.spreading import spread
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]

PAIRS = [
    ("connectors: {a: {face: {view: wires, rows: 2, columns: 8, numbering: [rows, top-left]}}}", "connectors: {a: {view: wires, rows: 2, columns: 8, numbering: rows, starts: top-left}}"),
    ("connectors: {a: {face: {blanks: '4'}, latch: top}}", "connectors: {a: {latch: top, blanks: ['4']}}"),
    ("parts: {a: {where: {area: dash, on_side: left, mirrors: no}}}", "parts: {a: {area: dash, on_side: left, mirrors: no}}"),
    ("parts: {g: {where: {area: dash, mirrors: no}, parts: {a: {release: lift}, b: {where: {mirrors: yes}}, c: {where: {mirrors: none}}}}}", "parts: {a: {area: dash, mirrors: no, release: lift}, b: {area: dash, mirrors: yes}, c: {area: dash}}"),
    ("openings: {a: {sizes: {hole: [round, 146 mm], bolts: [circle, 4, 160 mm], panel: [190 mm, 184 mm], room_to_grille: 22 mm}}}", "openings: {a: {hole: {shape: round, diameter: 146 mm}, bolts: {pattern: circle, count: 4, diameter: 160 mm}, panel: {width: 190 mm, height: 184 mm}, room_to_grille: 22 mm}}"),
    ("openings: {a: {kind: [receiver, no kit], sizes: {face: [182 mm, 53 mm]}}}", "openings: {a: {kind: receiver, kit: not-needed, face: {width: 182 mm, height: 53 mm}}}"),
    ("preps: {a: {state: {needs: {bonnet: open}, sets: {battery: off}}}}", "preps: {a: {needs: {bonnet: open}, sets: {battery: off}}}"),
    ("runs: {a: {way: {from: Here, to: There, carries: plus, length: 4 m}}}", "runs: {a: {from: Here, to: There, carries: [plus], length: 4 m}}"),
    ("vehicle: {came_with: {bodies: saloon, drive_side: [left, right]}}", "vehicle: {bodies: [saloon], drive_side: [left, right]}"),
    ("after_battery: unknown", "after_battery: {not_listed: unknown}"),
    ("parts: {a: {held_by: {rivet: [blind, 4.8 mm], count: 2}}}", "parts: {a: {held_by: [{rivet: blind, diameter: 4.8 mm, count: 2}]}}"),
    ("parts: {a: {release: [slide, up, 3 min, replaced]}}", "parts: {a: {release: slide, direction: up, takes: 3 min, replaced: yes}}"),
    ("parts: {a: {cautions: {CAUTION: [Sharp., Cuts., Gloves.]}}}", "parts: {a: {cautions: [{signal: CAUTION, hazard: Sharp., consequence: Cuts., avoid: Gloves.}]}}"),
    ("parts: {a: {cautions: [{CAUTION: {hazard: Sharp., consequence: Cuts., avoid: Gloves., when: {radio: map}}}, {NOTICE: [Soft., Tears., Warm it.]}]}}", "parts: {a: {cautions: [{signal: CAUTION, hazard: Sharp., consequence: Cuts., avoid: Gloves., when: {radio: map}}, {signal: NOTICE, hazard: Soft., consequence: Tears., avoid: Warm it.}]}}"),
    ("functions: {absent: {source: e3, functions: [mute, speed]}, data: {functions: reverse}}", "functions: {mute: {by: absent, source: e3}, speed: {by: absent, source: e3}, reverse: {by: data}}"),
    ("functions: {looked: {by: absent, when: {radio: map}, functions: {mute: {source: e1}, speed: {by: wire}}}}", "functions: {mute: {by: absent, when: {radio: map}, source: e1}, speed: {by: wire, when: {radio: map}}}"),
]  # fmt: skip


def plain(data: Any) -> Any:
    """The same without the names that follow from ids: a group gives none."""
    if isinstance(data, dict):
        return {key: plain(value) for key, value in data.items() if key != "name"}
    return [plain(item) for item in data] if isinstance(data, list) else data


@pytest.mark.parametrize(("short", "long"), PAIRS, ids=[short[:60] for short, _ in PAIRS])
def test_a_short_form_is_the_long_one(short: str, long: str) -> None:
    source = whole(f"format: 2\n{short}\n")
    assert source.origin
    assert source.origin.faults == ()
    assert plain(source.data) == plain({"format": "1", **read_text(long, PATH).data})


@pytest.mark.parametrize("short", [short for short, _ in PAIRS])
def test_every_value_of_a_short_form_stands_where_it_was_typed(short: str) -> None:
    source = whole(f"format: 2\n{short}\n")
    for pointer, value in leaves(source.data, ()):
        place = source.values[pointer]
        follows = pointer[-1] == "name" or value in ("yes", "not-needed") or pointer == ("format",)
        shared = source.origin and pointer in source.origin.inherited
        if not follows and not shared:
            assert place.line == 2, pointer
            assert short[place.column - 1 :].lstrip("'").startswith(value), pointer


def leaves(data: Any, pointer: tuple[Any, ...]) -> Any:
    entries = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else None
    if entries is None:
        yield pointer, data
        return
    for step, inner in entries:
        yield from leaves(inner, (*pointer, step))


def test_what_stands_together_may_differ_between_cars() -> None:
    sizes = "{hole: [{when: {radio: map}, is: [round, 146 mm]}, {when: {radio: plain}, is: [round, 100 mm]}], panel: [190 mm, unknown]}"
    text = f"format: 2\nvariants: {{radio: {{choices: {{map: Map, plain: Plain}}}}}}\nopenings: {{a: {{kind: speaker, sizes: {sizes}}}}}\n"
    source = whole(text)
    assert {name: (one["hole"]["diameter"], one["when"]) for name, one in source.data["openings"].items()} == {
        "a-map": ("146 mm", {"radio": "map"}),
        "a-plain": ("100 mm", {"radio": "plain"}),
    }


def test_what_the_vehicle_came_with_tells_its_cars_apart() -> None:
    text = "format: 2\nvehicle: {came_with: {bodies: [saloon, estate]}}\nopenings: {a: {kind: speaker, impedance: [{when: {body: saloon}, is: 4 ohm}, {when: {body: estate}, is: 2 ohm}]}}\n"
    source = whole(text)
    assert source.origin
    assert source.origin.faults == ()
    assert sorted(source.data["openings"]) == ["a-estate", "a-saloon"]


MISTAKES = [
    ("connectors: {a: {at: x/y, face: {veiw: wires, rows: 2, columns: 8}, pins: {1: ground}}}", "veiw", "'veiw' is not a field of connector (did you mean 'view'?)"),
    ("connectors: {a: {at: x/y, face: {view: wirs, rows: 2, columns: 8}, pins: {1: ground}}}", "wirs", "'wirs' is not a known view (did you mean 'wires'?)"),
    ("connectors: {a: {at: x/y, face: 2 x 8, view: wires, rows: 2, columns: 8, pins: {1: ground}}}", "face", "'face' holds fields with their values (write some of view, rows, columns, latch, numbering, starts, blanks, standard into it, or leave it out and write them beside it)"),
    ("connectors: {a: {at: x/y, face: {view: wires, rows: 2, columns: 8}, rows: 3, pins: {1: ground}}}", "rows: 2", "'rows' stands twice: in 'face', and by itself (leave one of them out)"),
    ("connectors: {a: {at: x/y, face: {view: wires, rows: 2, columns: 8, end: door}, pins: {1: ground}}}", "end", "'end' does not stand in 'face' (write it beside 'face', which holds view, rows, columns, latch, numbering, starts, blanks, standard)"),
    ("connectors: {a: {at: x/y, face: {view: wires, rows: two, columns: 8}, pins: {1: ground}}}", "two", "rows must be a whole number, not 'two' (write '2')"),
    ("functions: {absent: {functions: [mute, speeed]}}", "speeed", "'speeed' does not belong here (did you mean 'speed'?)"),
    ("functions: {absnt: {functions: [mute]}}", "mute", "'by' is missing from 'mute' (add 'by': 'wire' elsewhere than in a recorded plug, 'data' message, 'absent', or 'unknown', for example data)"),
    ("functions: {absent: {functions: 2}}", "2", "'2' does not belong here"),
    ("functions: {absent: {functions: [[mute]]}}", "[mute]", "function is one word, not a list"),
    ("functions: {absent: {sorce: e1, functions: [mute]}}", "sorce", "'sorce' is not a field of group of functions (did you mean 'source'?)"),
    ("functions: {absent: {functions: [mute]}, mute: unknown}", "mute: unknown", "'mute' stands twice: each id stands once in its section, also across groups"),
    ("parts: {a: {release: [lift, replacd]}}", "replacd", "'replacd' means nothing in the list under 'release' (did you mean 'replaced'?)"),
    ("parts: {a: {release: lift, cautions: {WARNNG: [Sharp., Cuts., Gloves.]}}}", "WARNNG", "'WARNNG' is not a known signal word (did you mean 'WARNING'?)"),
    ("parts: {a: {release: lift, cautions: {CAUTION: [Sharp., Cuts.]}}}", "{CAUTION", "behind 'CAUTION' stands no list of 3 (write [hazard, consequence, avoid] there in this order, or the fields by name)"),
    ("parts: {a: {release: lift, cautions: {CAUTION: {hazard: Sharp., consequence: Cuts., avoid: Gloves., adn: x}}}}", "adn", "'adn' is not a field of caution"),
    ("parts: {g: {where: {aera: dash}, parts: {a: {release: lift}}}}", "aera", "'aera' is not a field of group of parts (did you mean 'area'?)"),
    ("parts: {g: {where: {area: dsh}, parts: {a: {release: lift}}}}", "dsh", "'dsh' is not a known area (did you mean 'dash'?)"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "where", "said"), MISTAKES, ids=[said[:70] for _, _, said in MISTAKES])
def test_a_mistake_is_told_once_at_its_place(text: str, where: str, said: str) -> None:
    found = [one for one in told(f"{HEAD}{text}\n") if one.startswith(f"{LINES + 1}:")]
    place = f"{LINES + 1}:{text.index(where) + 1}: "
    assert [one for one in found if one.startswith(place + said)] != [], found
    assert len([one for one in found if one.startswith(place)]) == 1, found


# Whatever may stand together is the same beside each other


@cache
def shipped() -> list[Any]:
    place = Workspace(ROOT)
    return [
        read_text(path.read_text(encoding="utf-8"), path) for path in place.files() if place.kind(path) == "vehicle"
    ]


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 2**32), st.integers(0, 99))
def test_a_shipped_record_says_the_same_however_its_fields_stand_together(seed: int, number: int) -> None:
    source = shipped()[number % len(shipped())]
    moved = turned(source.data, shapes.whole("vehicle"), random.Random(seed), "")  # noqa: S311 - no secret
    again = read_text("\n".join(f"{key}: {typed(value)}" for key, value in moved.items()) + "\n", source.path)
    assert again.problems == ()
    assert spread(again).data == spread(source).data


def turned(data: Any, shape: Shape | None, chance: random.Random, section: str) -> Any:
    """The same with some fields put into their mappings, and some taken out."""
    if isinstance(data, list):
        return [turned(item, shape and shape.items, chance, "") for item in data]
    if not isinstance(data, dict) or shape is None:
        return data
    if shape.group and section and section in data:
        shape = shape.of_group(section)
    flat: dict[str, Any] = {}
    for key, value in data.items():
        flat |= value if key in shape.together else {key: value}
    made: dict[str, Any] = {}
    for key, value in flat.items():
        into = next((name for name, one in shape.together.items() if key in one.fields), "")
        one = shape.below(key)
        inner = turned(value, below(shape, key, value), chance, key if one and one.group else "")
        if into and chance.random() < 0.5:
            made.setdefault(into, {})[key] = inner
        else:
            made[key] = inner
    return made


def below(shape: Shape, key: str, value: Any) -> Shape | None:
    found = shape.aside.get(key) or shape.below(key)
    named = next((name for name in ("parts", "functions") if isinstance(value, dict) and name in value), "")
    return shape.of_group(named) if named and shape.group else found


# Whatever is typed into these forms, nothing is raised, and everything that is said has a place

RECORD = """format: 2
demo: yes
vehicle: {make: Brindleway, model: Otter, built: {from: 2014-01, to: 2018-01}, came_with: {bodies: [saloon, estate], drive_side: left, high_voltage: no}}
variants: {radio: {ask: Which?, choices: {map: [Map radio, MAP key], plain: [Plain radio, Keys]}, source: e1}}
evidence: {e1: {how: seen, on: 2026-03-02, by: rk, car: "2016"}}
preps: {battery: {where: {area: engine-bay, mirrors: no}, state: {needs: {bonnet: open}, sets: {battery: off}}, how: Undo it.}}
parts:
  dash:
    where: {area: dash, mirrors: no}
    source: e1
    parts:
      radio: {where: {mirrors: yes}, release: [slide, up, 3 min, replaced], held_by: {rivet: [blind, 4.8 mm], count: 2}, tethers: {main: [Plug, plug, sound]}, cautions: {CAUTION: [Sharp., Cuts., Gloves.]}, how: Do.}
openings: {dash: {kind: [receiver, no kit], behind: radio, sizes: {face: [{when: {radio: map}, is: [182 mm, 112 mm]}, {when: {radio: plain}, is: [182 mm, 53 mm]}]}, depth: {clear: 60 mm}}}
connectors: {main: {at: radio/main, face: {view: wires, rows: 2, columns: 8, numbering: [rows, top-left], blanks: "4"}, pins: {1: ground}}}
functions: {absent: {source: e1, functions: [mute, speed]}, data: {functions: {reverse: {source: e1}}}}
runs: {back: {way: {from: Here, to: There, carries: plus, length: 4 m}}}
after_battery: unknown
"""
JUNK: list[Any] = [None, "", "none", "unknown", "x", "2", [], [[]], {}, ["a", "b", "c", "d"], {"a": ["b"]}, {"CAUTION": {}}, {"functions": []}, {"face": {"rows": {}}}, [{"when": {"radio": "map"}, "is": {}}]]  # fmt: skip


@settings(max_examples=250, deadline=None)
@given(spoilt(read_text(RECORD, PATH).data, JUNK))
def test_junk_is_answered_with_sentences(text: str) -> None:
    answered_with_sentences(text, PATH)


def test_the_record_that_is_spoilt_reads() -> None:
    assert [one for one in told(RECORD) if "is missing" in one or "spread" in one or "not a field" in one] == []
