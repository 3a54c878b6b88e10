"""One dispute at a time, about one fact of each kind that the shipped records hold: each is marked beside what shows it."""

from functools import cache
from pathlib import Path

import pytest

from disputing import addresses, disputing, loaded, of
from undertrim.derive.evidence.conflicts import disputes
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.procedure.choices import choices
from undertrim.derive.procedure.planning import Planner
from undertrim.publish.encoding import compact
from undertrim.publish.facts import evidence
from undertrim.publish.facts import vehicle as facts
from undertrim.record import fields
from wired import VEHICLES

ASIDE = ("conflicts", "standing")
"""Where all disputes are listed, far from their facts. That the page shows every mark of the data, the other tests of disputes say."""


def kind(about: str) -> str:
    """The address with a star for every id and place in a list: `parts/*/held_by/*/torque`."""
    node, steps = fields.root("vehicle"), []
    for step in about.split("/"):
        named = step in node.schema.get("properties", ())
        steps.append(step if named else "*")
        inner = node.child(int(step) if not named and "items" in node.schema else step)
        assert inner is not None
        node = inner
    return "/".join(steps)


def first_of_each() -> dict[str, tuple[Path, str]]:
    """The first fact of each kind, of those that a page shows whatever routes are taken."""
    found: dict[str, tuple[Path, str]] = {}
    for path in sorted(VEHICLES, key=lambda one: one.stat().st_size):  # the small ones are quick
        item = loaded(path)
        for about in addresses(item):
            keys = about.split("/")
            if (sort := kind(about)) not in found and (keys[0] != "parts" or keys[1] in _worked_on(path)):
                found[sort] = path, about
    return found


@cache
def _worked_on(path: Path) -> frozenset[str]:
    return frozenset(step.part for step in choices(Planner(of(loaded(path)))).steps)


FIRST = first_of_each()


def test_there_are_kinds_enough() -> None:
    assert len(FIRST) > 150
    assert {
        "parts/*/held_by/*/torque",
        "connectors/*/pins/*/colour",
        "duties/*/kept_by",
        "openings/*/depth/clear",
        "restraint/wait",
    } <= set(FIRST)


@pytest.mark.parametrize("which", FIRST)
def test_a_dispute_alone_is_marked_where_its_fact_is_shown(which: str) -> None:
    path, about = FIRST[which]
    item = disputing(path, [about])
    whole = reckoned(of(item))
    (dispute,) = disputes(whole)
    assert dispute.open
    made = facts.vehicle(item)
    beside = {name: value for name, value in made.items() if name not in ASIDE}
    assert compact(evidence.line(whole, dispute)) in compact(beside)
