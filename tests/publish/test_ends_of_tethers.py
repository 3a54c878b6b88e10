"""Whatever becomes of a tether is said at the step where it is done, and everywhere the same: plan, page, sheet and data."""

import re
from collections.abc import Mapping
from functools import cache
from itertools import product
from typing import Any

import pytest

from making import made
from undertrim.derive.jobs import wanted
from undertrim.derive.procedure.states import tether_kind
from undertrim.publish.facts.vehicle import vehicle as facts_of
from undertrim.publish.facts.visit import visit
from undertrim.publish.printed.sheet import pictures
from undertrim.publish.printed.sheet.steps import sections
from undertrim.publish.terminal.plan import plan_text
from undertrim.record.model import VehicleRecord
from undertrim.resources import table
from undertrim.words import say, word
from vehicle_pages import all_pages

Data = Mapping[str, Any]

KINDS = ("plug", "coax", "fibre", "cable", "rod", "strap", "hose")
PARTS = {"replaced": "radio", "moved": "climate", "refitted": "bezel", "elsewhere": "tray"}
"""A part for each way a part can end, and one that is replaced by gear of an opening which a visit to the dash does not fit."""
STEPS = {"replaced": "install:dash:seat", "moved": "move:climate", "refitted": "refit:bezel", "elsewhere": "refit:tray"}
ENDS = {
    ("replaced", "to-gear"): "to-gear",
    ("replaced", "park"): "park",
    ("replaced", "bridge"): "bridge",
    ("moved", "rejoin"): "rejoin",
    ("moved", "park"): "park",
    ("moved", "bridge"): "bridge",
    ("moved", "goes-with"): "lay-in",
    ("refitted", "rejoin"): "rejoin",
    ("refitted", "park"): "park",
    ("refitted", "bridge"): "bridge",
    ("refitted", "goes-with"): "lay-in",
    ("elsewhere", "to-gear"): "rejoin",
    ("elsewhere", "park"): "rejoin",
    ("elsewhere", "bridge"): "rejoin",
}
"""What is done in the end with a tether of a part, by what becomes of the part and what is written of the tether."""


def name(part: str, then: str, kind: str) -> str:
    return f"{part} {then} {kind}"


@cache
def entry() -> Any:
    def tethers(part: str) -> dict[str, Any]:
        thens = [then for one, then in ENDS if one == part] + (["leave"] if part == "refitted" else [])
        return {
            f"{then}-{kind}": {"name": name(part, then, kind), "kind": kind, "then": then}
            for then, kind in product(thens, KINDS)
        }

    return made({
        "parts": {
            "bezel": {"tethers": tethers("refitted"), "laid": "On the dash top"},
            "tray": {"replaced": "yes", "after": ["bezel"], "tethers": tethers("elsewhere")},
            "climate": {"goes_to": "dash", "after": ["tray"], "tethers": tethers("moved"), "laid": "Hung on a cord"},
            "radio": {"replaced": "yes", "after": ["tray"], "tethers": tethers("replaced")},
        },
        "openings": {"dash": {"behind": ["radio"]}, "low": {"behind": ["tray"]}},
    })  # fmt: skip


@cache
def seen() -> Data:
    record = entry().record
    assert isinstance(record, VehicleRecord)
    return visit(record, "brindleway/otter-2014-2018", wanted(record, ["dash"]), {})


@cache
def whole() -> Data:
    facts: Data = facts_of(entry())
    return facts


def in_data(step: str, tether: str) -> str:
    item = next(item for item in seen()["steps"] if item["id"] == step)
    return " | ".join(
        f"{line['act_words']} ({line['later_words']})" for line in item["tethers"] if line["name"] == tether
    )


def in_plan(step: str, tether: str) -> str:
    number = [item["id"] for item in seen()["steps"]].index(step) + 1
    block = re.split(r"\n *\d+\. ", re.split(rf"\n *{number}\. ", plan_text(seen()))[1])[0]
    items = [" ".join(item.split()) for item in re.split(r"\n      - ", block)]
    return " | ".join(item for item in items if item.startswith(tether))


def in_page(step: str, tether: str) -> str:
    body = all_pages(whole())
    block = body.split(f'id="step-{step}"')[1].split('class="ut-foot"')[0]
    items = [re.sub(r"<[^>]+>", "", item) for item in re.split(r"<li ", block)]
    return " | ".join(" ".join(item.split()) for item in items if tether in item)


def in_sheet(step: str, tether: str) -> str:
    number = 1 + [item["id"] for item in whole()["steps"]].index(step)
    rows = (row for part in sections(whole(), pictures.Pictures()) for row in part["steps"])
    items = next(row["items"] for row in rows if row["number"] == number)
    return " | ".join(f"{item['act']} {item['rest']}" for item in items if item["lead"].startswith(tether))


WHERE = {"data": in_data, "plan": in_plan, "page": in_page, "sheet": in_sheet}


def words(act: str, kind: str) -> str:
    usual = tether_kind(kind)
    own = {"undo": usual.undo, "rejoin": usual.rejoin, "park": usual.park}
    return say(own.get(act) or word("tethers", "act", act, "label"))


@pytest.mark.parametrize("where", WHERE)
@pytest.mark.parametrize(("part", "then"), ENDS)
def test_where_it_ends_is_said(where: str, part: str, then: str) -> None:
    for kind in KINDS:
        said = WHERE[where](end_of(part, then, kind), name(part, then, kind))
        assert words(ENDS[part, then], kind) in said
        assert said.count(" | ") == 0, "it ends once"


def end_of(part: str, then: str, kind: str) -> str:
    """The step in which a tether ends: a wire of a part that goes back is joined before the tests, since any may use it."""
    early = ENDS[part, then] == "rejoin" and part != "moved" and tether_kind(kind).electric
    return f"join:{PARTS[part]}" if early else STEPS[part]


@pytest.mark.parametrize("where", WHERE)
@pytest.mark.parametrize("part", ["refitted", "elsewhere"])
def test_what_the_tests_have_joined_is_named_as_its_part_goes_back(where: str, part: str) -> None:
    then = "rejoin" if part == "refitted" else "to-gear"
    assert words("joined", "plug") in WHERE[where](STEPS[part], name(part, then, "plug"))


@pytest.mark.parametrize("where", WHERE)
@pytest.mark.parametrize(("part", "then"), ENDS)
def test_what_will_become_of_it_is_said_as_its_part_comes_off(where: str, part: str, then: str) -> None:
    for kind in KINDS:
        said = WHERE[where](f"remove:{PARTS[part]}", name(part, then, kind))
        if then == "goes-with":
            assert words("goes-with", kind) in said
        else:
            assert words("undo", kind) in said
            assert table("tethers")["later"][then]["label"] in said
            assert (table("tethers")["later"]["rejoin"]["label"] in said) == (part == "elsewhere" or then == "rejoin")


@pytest.mark.parametrize("where", WHERE)
def test_what_is_left_joined_is_said_once(where: str) -> None:
    assert words("leave", "plug") in WHERE[where]("remove:bezel", name("refitted", "leave", "plug"))
    assert WHERE[where]("refit:bezel", name("refitted", "leave", "plug")) == ""


def test_no_step_says_that_all_plugs_are_joined() -> None:
    assert "join all plugs" not in plan_text(seen())


def test_a_part_that_stays_on_its_cable_is_laid_where_the_record_says() -> None:
    assert "While it is off: Hung on a cord." in plan_text(seen())
