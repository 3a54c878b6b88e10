"""Nothing that a person reads says the id of what has a name: every text of every shipped vehicle is walked.

An id may stand beside its name, in brackets, where it is what the next command wants, and in the address of a contact (`radio-main/1`).
Only ids with a hyphen are looked for: `dash` is also a word.
"""

import re
from collections.abc import Iterator, Mapping
from datetime import date
from functools import cache
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from undertrim.check.shelf import stock
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.shopping import orders
from undertrim.derive.fit.stock import Stock
from undertrim.derive.procedure.planning import Target, targets
from undertrim.derive.wiring.groups import joints
from undertrim.publish.facts import coverage, mirror
from undertrim.publish.facts import joint as joint_facts
from undertrim.publish.facts.car_wiring import car_wiring
from undertrim.publish.facts.vehicle import vehicle as facts_of
from undertrim.publish.facts.visit import visit
from undertrim.publish.printed.sheet import view, wiring
from undertrim.publish.terminal.coverage import vehicle_text
from undertrim.publish.terminal.fit import fit_text
from undertrim.publish.terminal.mirror import mirror_text
from undertrim.publish.terminal.plan import plan_text
from undertrim.publish.terminal.shop import shop_data, shop_text
from undertrim.publish.terminal.wiring import joint_text, plugs_text
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.receiver import LeadsGear
from undertrim.record.store import Entry, Workspace
from vehicle_pages import all_pages

WORKSPACE = Workspace.holding(Path(__file__).parent)
SHIPPED = [path for path in WORKSPACE.files() if WORKSPACE.kind(path) == "vehicle"]
UNREAD = {"id", "jobs", "url", "href", "address", "anchor", "tick", "picture", "svg", "page", "file"}
"""Keys of a sheet's data whose text is not printed."""


@cache
def shelf() -> Stock:
    return stock(WORKSPACE)


def loaded(path: Path) -> tuple[Entry, Vehicle]:
    entry = WORKSPACE.load(path)
    assert isinstance(entry.record, VehicleRecord)
    return entry, Vehicle(entry.record, entry.address, shelf(), clearances())


def named(record: VehicleRecord) -> dict[str, str]:
    """What has a name: its name by its id."""
    things: dict[str, Any] = {**record.parts, **record.preps, **record.openings, **record.connectors}
    known = {name: thing.name for name, thing in things.items()}
    for variant in record.variants.values():
        known |= {name: choice.label for name, choice in variant.choices.items()}
    known |= {gear.id: gear.name for gear in shelf().items}
    return {name: called for name, called in known.items() if "-" in name}


@cache
def any_of(ids: tuple[str, ...]) -> re.Pattern[str]:
    either = "|".join(sorted(map(re.escape, ids), key=len, reverse=True))
    return re.compile(rf"(?<![\w-])({either})(?![\w-])")


def ids_in(text: str, known: Mapping[str, str]) -> list[str]:
    """Ids that a text says without need, each with what stands round it."""
    flat = " ".join(text.split())
    found = any_of(tuple(known)).finditer(flat)
    return [flat[max(0, hit.start() - 40) : hit.end() + 20] for hit in found if not _needed(flat, hit, known[hit[1]])]


def _needed(flat: str, hit: re.Match[str], name: str) -> bool:
    before, after = flat[: hit.start()], flat[hit.end() :]
    if re.match(r"/\w", after):
        return True
    if (before[-1:], after[:1]) in (("(", ")"), ("<", ">")):
        return name in before.rsplit("<", 2)[-2 if before[-1] == "<" else -1][-600:]
    return False


def visits(vehicle: Vehicle) -> Iterator[tuple[Target, ...]]:
    every = targets(vehicle.record)
    yield every
    yield from ((target,) for target in every)


def of_plan(_: Entry, vehicle: Vehicle) -> Iterator[str]:
    for chosen in visits(vehicle):
        yield plan_text(visit(vehicle.record, vehicle.address, chosen, {}, shelf()))


def of_fit(_: Entry, vehicle: Vehicle) -> Iterator[str]:
    for opening in vehicle.record.openings.values():
        found = answer(vehicle, opening, None, {})
        yield fit_text(vehicle, found, full=False)
        yield fit_text(vehicle, found, full=True)


def of_shop(_: Entry, vehicle: Vehicle) -> Iterator[str]:
    record = vehicle.record
    for opening in record.openings.values():
        chosen = tuple(target for target in targets(record) if target.job == opening.id)
        for gear in shelf().taken(opening)[::9]:
            yield shop_text(shop_data(vehicle, chosen, orders(vehicle, chosen, [(opening, gear)], {})))


def of_wiring(_: Entry, vehicle: Vehicle) -> Iterator[str]:
    record, address = vehicle.record, vehicle.address
    yield plugs_text(car_wiring(record, address, {}))
    opening = next(item for item in record.openings.values() if item.takes_over)
    for leads in shelf().of(LeadsGear):
        found = joints(record, address, opening, leads, shelf())
        yield joint_text(joint_facts.joints(record, address, leads, found))


def of_coverage(_: Entry, vehicle: Vehicle) -> Iterator[str]:
    yield vehicle_text(coverage.report(vehicle.record, vehicle.address))


def of_mirror(_: Entry, vehicle: Vehicle) -> Iterator[str]:
    yield mirror_text(mirror.mirror(vehicle.record, vehicle.address, "left"))
    yield mirror_text(mirror.mirror(vehicle.record, vehicle.address, "right"))


def of_page(entry: Entry, _: Vehicle) -> Iterator[str]:
    body = re.sub(r"<script.*?</script>", " ", all_pages(facts_of(entry)), flags=re.DOTALL)
    yield unescape(re.sub(r"<[^>]+>", " ", body))
    for attribute in ("title", "aria-label", "alt", "placeholder"):
        yield from map(unescape, re.findall(rf'\s{attribute}="([^"]*)"', body))


def of_sheet(entry: Entry, _: Vehicle) -> Iterator[str]:
    facts = facts_of(entry)
    made = date(2026, 1, 1)
    page = view(facts, "https://example.org/", "a4", made)
    linking = (
        {**entry, "opening": "", "openings": []} for entry in (*page["targets"], *page["blockers"])
    )  # in no cell
    yield from strings({**page, "targets": list(linking), "blockers": []})
    yield from strings(wiring.view(facts, "https://example.org/", "a4", made))


def strings(data: Any) -> Iterator[str]:
    """All that is said in plain data, without keys and addresses."""
    if isinstance(data, Mapping):
        for key, value in data.items():
            if key not in UNREAD:
                yield from strings(value)
    elif isinstance(data, list | tuple):
        for value in data:
            yield from strings(value)
    elif isinstance(data, str) and not data.startswith("<svg"):
        yield data


TEXTS = {
    "plan": of_plan, "fit": of_fit, "shop": of_shop, "wiring": of_wiring, "coverage": of_coverage, "mirror": of_mirror,
    "page": of_page, "sheet": of_sheet,
}  # fmt: skip


@pytest.mark.parametrize("where", TEXTS)
@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_names_are_said_and_no_ids(path: Path, where: str) -> None:
    entry, vehicle = loaded(path)
    known = named(vehicle.record)
    texts = list(TEXTS[where](entry, vehicle))
    assert any(name in text for text in texts for name in known.values())
    assert sorted({found for text in texts for found in ids_in(text, known)}) == []


def test_an_id_is_found_wherever_it_is_not_needed() -> None:
    known = {"front-door": "Front door speakers"}
    for text in (
        "measure 'front-door'",
        "fit front-door, left",
        "parts: front-door",
        "at openings/front-door",
        "(front-door)",
    ):
        assert ids_in(text, known), text
    for text in (
        "Front door speakers (front-door)",
        "Front door speakers: fit\n <front-door>",
        "front-door/1",
        "front-doors",
    ):
        assert not ids_in(text, known), text
