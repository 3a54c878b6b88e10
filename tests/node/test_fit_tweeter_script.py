"""Whether a tweeter goes into its place is on the pages as in the program: the shipped places and tweeters, varied at random."""

import random
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from in_node import Run
from undertrim.check.shelf import stock
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.kinds import room
from undertrim.derive.fit.stock import Gear, Stocked, of_kind
from undertrim.publish.encoding import said
from undertrim.publish.facts import fit_page, shelf
from undertrim.record.model import Blank, Depth, VehicleRecord
from undertrim.record.model.kinds.tweeter import CrossoverGear, CrossoverPlace, Cup, Mount, TweeterGear, TweeterOpening
from undertrim.record.store import Workspace
from undertrim.record.units import Quantity, parse
from vectors.printed import printed

ROOT = Path(__file__).parents[2]
SPACE = Workspace(ROOT)
EACH = """({ units, usual, cases }) => {
  lengths.use(units);
  return cases.map((one) => fit_tweeter.tweeter(one.gear, one.opening, one.between, usual, one.to_get));
}"""


def mm(chance: random.Random, least: int, most: int, lost: float = 0.15) -> Quantity | Blank:
    if chance.random() < lost:
        return Blank.UNKNOWN
    return parse(f"{chance.randint(least * 2, most * 2) / 2} mm", "length")


def hertz(chance: random.Random) -> Quantity:
    return parse(f"{chance.choice([2500, 3000, 3500, 4000, 5000])} Hz", "frequency")


def opening(chance: random.Random, base: TweeterOpening) -> TweeterOpening:
    """A place like a shipped one in which any fact may be another, or not recorded."""
    depth = Depth(mm(chance, 12, 40), chance.choice(["skin", "", "panel"]), chance.choice(["", "glass-down", "no-glass", "whole-travel"]), obstruction=chance.choice(["", "glass", "steel"]))  # fmt: skip
    return replace(
        base,
        mount=chance.choice(["", "unknown", "flush", "flush", "surface", "angled"]),
        cut_out=chance.choice([None, mm(chance, 30, 55), mm(chance, 30, 55)]),
        cup=chance.choice([None, Cup(mm(chance, 30, 60), mm(chance, 10, 30))]),
        flat=chance.choice([None, mm(chance, 30, 60)]),
        depth=chance.choice([None, depth, depth]),
        room_in_front=chance.choice([Blank.NONE, mm(chance, 2, 20)]),
        feed=chance.choice(["crossover", "own-filter", "parallel", "unknown", ""]),
        corner=chance.choice([None, Blank.UNKNOWN, hertz(chance), hertz(chance)]),
        crossover_place=chance.choice([None, place(chance), place(chance)]),
    )


def place(chance: random.Random) -> CrossoverPlace:
    return CrossoverPlace("Behind the panel", mm(chance, 60, 160), mm(chance, 30, 120), mm(chance, 20, 80, 0))


def tweeter(chance: random.Random, item: Stocked[TweeterGear]) -> Stocked[TweeterGear]:
    kinds = chance.sample(["flush", "surface", "angled"], chance.randint(0, 3))
    mounts = tuple(Mount(kind, mm(chance, 30, 55), chance.choice([Blank.NONE, mm(chance, 8, 30)]), mm(chance, 1, 15), chance.choice([None, Blank.NONE, mm(chance, 40, 60)])) for kind in kinds)  # fmt: skip
    facts = item.facts
    needed = facts.high_pass and replace(facts.high_pass, frequency=hertz(chance) if chance.random() < 0.7 else Blank.UNKNOWN, filter_order=chance.choice(["first", "second", "third"]))  # fmt: skip
    impedance = chance.choice([None, facts.impedance, facts.impedance, parse("6 ohm", "resistance")])
    own = chance.choice([(), (), ("capacitor",), ("crossover",), ("grille",)])
    return replace(item, facts=replace(facts, mounts=mounts, high_pass=chance.choice([needed, needed, None]), impedance=impedance, comes_with=own))  # fmt: skip


def places() -> list[TweeterOpening]:
    """The shipped ones."""
    records = (SPACE.load(path).record for path in SPACE.files([SPACE.records / "vehicles"]))
    openings = (one for record in records if isinstance(record, VehicleRecord) for one in record.openings.values())
    return [one for one in openings if isinstance(one, TweeterOpening)]


@pytest.mark.parametrize("seed", [1, 20261127])
def test_random_tweeters_in_random_places(run: Run, seed: int) -> None:
    chance, shipped, items = random.Random(seed), places(), stock(SPACE)  # noqa: S311
    crossovers: list[Gear] = list(items.of(CrossoverGear))
    cases = [(opening(chance, chance.choice(shipped)), tweeter(chance, chance.choice(of_kind(items.items, TweeterGear))), chance.sample(crossovers, min(2, len(crossovers)))) for _ in range(600)]  # fmt: skip
    asks = [{"opening": fit_page.opening_data(at), **asked(item), "between": list(map(asked, held))} for at, item, held in cases]  # fmt: skip
    found = run(EACH, said({"units": shelf.length_units(), "usual": shelf.usual_data(clearances()), "cases": asks}), "lengths", "fit-tweeter")  # fmt: skip
    met = set()
    for (at, item, held), theirs in zip(cases, found, strict=True):
        ours = room(at).by_size(item, held, clearances())
        told = said({"kind": ours.kind, "headline": ours.headline, "parts": list(ours.parts), "to_get": list(ours.to_get), "checks": [one.words for one in ours.checks]})  # fmt: skip
        assert printed({**{key: theirs[key] for key in told}, "checks": [one["words"] for one in theirs["checks"]]}) == printed(told), (at, item)  # fmt: skip
        met.add((ours.kind, bool(ours.parts), bool(ours.to_get)))
    assert len(met) > 7


def asked(item: Gear) -> dict[str, Any]:
    """A piece of gear as the shelf has it."""
    made: dict[str, Any] = said(shelf.of(item))
    return made
