"""What the pages reckon with: the opening as it is reckoned, and the shelf with sizes, units, clearances."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from making import record
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Gear, Stock, Stocked
from undertrim.publish.encoding import said
from undertrim.publish.facts import fit_page
from undertrim.publish.facts import shelf as shelf_facts
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.facts.plain import plain
from undertrim.publish.packing import unpacked
from undertrim.record import build
from undertrim.record.gear import GearFacts
from undertrim.record.store import Workspace
from undertrim.record.unit_table import kinds
from undertrim.record.units import parse, show
from undertrim.words import say
from vehicle_pages import all_pages

ROOT = Path(__file__).parents[2]
ADDRESS = "brindleway/otter-2014-2018"
CAR = """
evidence:
  e1: {how: measured, on: 2026-03-02, by: rk}
  e2: {how: told, on: 2026-03-02, by: rk}
variants:
  radio:
    ask: Which radio is in it?
    choices: {map: {label: Map, tell: A key}, plain: {label: Plain, tell: No key}}
parts:
  radio:
openings:
  dash: {kind: receiver, kit: needed, face: {width: 182 mm, height: unknown}, depth: {clear: 6.7 in}, behind: [radio]}
  front-door: {kind: speaker, behind: [radio], hole: {shape: round, diameter: 130 mm}, depth: {clear: 62 mm, datum: skin}, factory_spacer: none}
"""
CONFLICT = """
conflicts:
  depth:
    about: openings/front-door/depth/clear
    claims: [{says: 62 mm, source: e1}, {says: 2 1/4 in, source: e2}]
"""


def gear(kind: str, model: str, **given: Any) -> Gear:
    made = build.section("gear", {"kind": kind, "maker": "Tidewrack", "model": model, **given})
    assert isinstance(made, GearFacts)
    return Stocked(model.lower(), made)


def suits(opening: str, vehicle: str = ADDRESS, **when: str) -> dict[str, Any]:
    return {"vehicle": vehicle, "opening": opening, **({"when": when} if when else {})}


FACE = {"width": "182 mm", "height": "104 mm"}
SHELF = Stock((
    gear("kit", "Both", opening=FACE, suits=[suits("dash")]),
    gear("kit", "Some", opening=FACE, suits=[suits("dash", radio="map"), suits("dash", radio="plain")]),
    gear("kit", "Elsewhere", opening=FACE, suits=[suits("dash", "kelbrook/finch-2014-2018")]),
    gear("spacer", "Any", thickness="6 mm", hole={"shape": "round", "diameter": "128 mm"}),
    gear("spacer", "Made", thickness="1/2 in", suits=[suits("front-door")]),
    gear("spacer", "Dashed", thickness="6 mm", suits=[suits("dash")]),
    gear("speaker", "Shoal", gasket="unknown", depth="2 3/16 in"),
    gear("harness", "Knot"),
))  # fmt: skip


def place(opening: str, *more: str) -> fit_page.Form:
    made = record(CAR, *more)
    return fit_page.form(Vehicle(made, ADDRESS, SHELF, clearances()), made.openings[opening])


def test_an_opening_says_in_which_cars_it_is_and_whether_anything_may_be_cut_there() -> None:
    assert (place("dash").clauses, place("dash").uncut, place("dash").closed) == ({}, False, [])
    assert place("front-door").uncut  # nobody recorded whether its door has a pressure sensor


def test_a_form_names_the_gear_that_it_can_be_filled_from() -> None:
    assert {name: place(name).gear for name in ("dash", "front-door")} == {
        "dash": "receiver",
        "front-door": "speaker",
    }


def test_an_opening_has_what_its_kind_is_form() -> None:
    dash, door = place("dash").opening, place("front-door").opening
    assert (dash["kit"], dash["face"]["height"], dash["clear_front"]) == ("needed", "unknown", None)
    assert said(dash["depth"]["clear"]) == {
        "value": 170.18,
        "step": 1.27,
        "text": "6.7 in",
        "shown": "6.7 in (170.2 mm)",
        "least": False,
    }
    assert (door["factory_spacer"], door["room_to_grille"], door["in_a_door"]) == ("none", None, True)
    assert "hole" not in dash
    assert "face" not in door


def test_a_dispute_is_form_its_cautious_side() -> None:
    found = place("front-door", CONFLICT)
    assert found.opening["depth"]["clear"]["value"] == 57.15  # 2 1/4 in
    assert any("the evidence disagrees on clear depth" in say(note) for note in found.notes)
    assert not place("front-door").notes


def shelf(items: Stock = SHELF, name: str = "start") -> Any:
    text = shelf_facts.files(items, clearances(grille="1/8 in"))[f"shelf/{name}.js"]
    found = re.fullmatch(r'undertrimShelf\("([\w-]+)",(.*)\);\n', text)
    assert found
    assert found[1] == name
    return unpacked(json.loads(found[2]))


def test_the_shelf_has_the_sizes_of_all_gear_and_what_it_is_made_for() -> None:
    found = {item["id"]: item for item in shelf()["stock"]}
    assert list(found) == ["both", "some", "elsewhere", "any", "made", "dashed", "shoal", "knot"]
    assert [place["clauses"] for place in found["some"]["suits"]] == [{"radio": ["map"]}, {"radio": ["plain"]}]
    assert found["elsewhere"]["suits"] == [{"vehicle": "kelbrook/finch-2014-2018", "opening": "dash", "clauses": {}}]
    assert found["any"]["suits"] == []
    assert found["shoal"]["name"] == "Tidewrack Shoal"
    assert (found["shoal"]["gear"]["gasket"], found["shoal"]["gear"]["magnet"]) == ("unknown", None)
    assert found["shoal"]["gear"]["depth"]["value"] == 55.5625
    assert found["any"]["gear"]["hole"]["diameter"]["text"] == "128 mm"


def test_gear_that_is_not_offered_is_named() -> None:
    assert shelf(Stock((), ("speakers/shoal", "kits/both")))["left_out"] == [
        {"kind": "speaker", "id": "shoal"},
        {"kind": "kit", "id": "both"},
    ]


def test_a_large_shelf_is_split_by_kind_in_the_order_of_the_stock(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(shelf_facts, "MOST_IN_ONE", 1000)
    start = shelf()
    assert start["stock"] == []
    assert start["pieces"] == {"kit": ["kit-1", "kit-2"], "spacer": ["spacer-1", "spacer-2"], "speaker": ["speaker-1"], "harness": ["harness-1"]}  # fmt: skip
    pieces = [shelf(name=name) for names in start["pieces"].values() for name in names]
    monkeypatch.undo()
    assert [item for piece in pieces for item in piece] == shelf()["stock"]


def test_clearances_are_usual_and_exact() -> None:
    grille = shelf()["usual"]["grille"]
    assert grille == {"label": "clearance to the grille", "value": 3.175, "step": 0, "text": "1/8 in (3.18 mm)", "default": True, "less": 0, "more": 0, "lacking": False}  # fmt: skip


def test_every_spelling_of_every_unit_is_there() -> None:
    units = shelf()["units"]
    lengths = {spelling for unit in units["units"].values() for spelling in unit["spellings"]}
    elsewhere = {spelling for kind in units["elsewhere"] for spelling in kind["exact"]}
    assert lengths == set(kinds()["length"].exact)
    assert elsewhere == {spelling for name, kind in kinds().items() if name != "length" for spelling in kind.exact}
    for kind, known in zip(
        units["elsewhere"], [kind for kind in kinds().values() if kind.key != "length"], strict=True
    ):
        assert (kind["name"], set(kind["any_case"])) == (known.name, set(known.folded))


def test_nothing_closes_the_script_element() -> None:
    odd = Stock((gear("kit", "</script><b>&", opening=FACE),))
    assert not set("<>&") & set("".join(shelf_facts.files(odd, clearances()).values()))
    assert shelf(odd)["stock"][0]["name"] == "Tidewrack </script><b>&"


@pytest.mark.parametrize("path", Workspace(ROOT).files([ROOT / "records" / "vehicles"]), ids=lambda path: path.stem)
def test_every_page_has_data_and_a_place_for_a_form_for_each_opening(path: Path) -> None:
    about = facts.vehicle(Workspace(ROOT).load(path))
    body = all_pages(about)
    forms = re.findall(r'<details class="ut-try" data-opening="([a-z0-9-]+)"></details>', body)
    data = re.findall(r'<script type="application/json" id="ut-fit-data">(.*?)</script>', body)
    assert len(data) == 2  # for the choice of a visit, and for what fits
    assert data[0] == data[1]
    assert forms == [opening["id"] for opening in about["openings"]] == list(unpacked(json.loads(data[0])))


def test_values_are_plain() -> None:
    typed = parse("7/32 in", "length")
    assert said(plain(typed)) == {
        "value": typed.value,
        "step": typed.step,
        "text": "7/32 in",
        "shown": show(typed),
        "least": False,
    }
    assert [plain(value) for value in (None, True, 4, "", ("a",))] == [None, True, 4, "", ["a"]]
