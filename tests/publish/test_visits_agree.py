"""A visit's plan, its printed sheet, and what the vehicle's page selects from the published data and reckons of the gear say the same: random visits to every record.

UNDERTRIM_TESTS=thorough tries 500 of them.
"""

import json
import os
import random
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

from asked_of_pages import asked
from in_node import Run
from undertrim.check.shelf import stock
from undertrim.derive import cars
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.derive.jobs import BadRequest
from undertrim.derive.procedure.planning import targets
from undertrim.derive.visit import text
from undertrim.derive.visit.understanding import visit
from undertrim.derive.visit.visit import Visit
from undertrim.publish.encoding import indented, said
from undertrim.publish.facts import electrical_tables, shelf, spans
from undertrim.publish.facts.visit import of
from undertrim.publish.packing import unpacked
from undertrim.publish.printed.sheet import visited
from undertrim.publish.web import pages
from undertrim.record.model import Opening, VehicleRecord
from undertrim.record.units import parse
from wired import DAY, PLACE, URL, VEHICLES, made

NUMBER = 500 if os.environ.get("UNDERTRIM_TESTS") == "thorough" else 24
FATES = ("out", "back", "moved", "bagged", "binned", "new")
SELECT = """({ pages, asks }) => asks.map(({ page, jobs, car, kinds }) => {
  const { plans, steps } = page_data.whole(pages[page]);
  const chosen = (of) => visit_selection.selection(plans, jobs, of);
  return { steps: chosen(car).map((n) => [steps[n].id, steps[n].minutes]),
    shown: visit_spans.spanned(visit_spans.kinds({ plans, steps }, jobs, car)),
    totals: kinds.map((kind) => visit_totals.totals(chosen(kind).map((n) => steps[n]), kind)) };
})"""


FITTING = """({ shelf, asks }) => {
  fit_place.use(shelf);
  const byId = Object.fromEntries(shelf.stock.map((item) => [item.id, item]));
  return asks.map((one) => fit_time.fittings(one.map(({ opening, gear, count, fitted, ...more }) => ({ opening, gear: byId[gear], count, asked:
    { ...more, usual: shelf.usual, stock: shelf.stock, fitted: Object.fromEntries(Object.keys(fitted).map((name) => [name, byId[fitted[name]]])) } })))
    .map((found) => found.time));
}"""


def some(draw: random.Random, path: Path) -> Visit | None:
    """A visit to some jobs of a record with some answers and some gear; None for one that is refused."""
    vehicle = known(path)
    about = vehicle.record
    every = targets(about)
    jobs = draw.sample(every, draw.randint(1, min(4, len(every))))
    words = ["jobs=" + ",".join(map(str, jobs))]
    for name, variant in cars.asked(about).items():
        if draw.random() < 0.6:
            words.append(f"{name}.choice={draw.choice(list(variant.choices))}")
    for opening in dict.fromkeys(about.openings[job.job] for job in jobs if job.job in about.openings):
        if draw.random() < 0.5 and (taken := vehicle.stock.taken(opening)):
            words.append(f"{opening.written}.gear={draw.choice(taken).id}")
    try:
        found = visit(vehicle, text.parse(f"{path.stem}?{'&'.join(words)}"))
        of(found)
    except BadRequest:
        return None
    return visit(vehicle, text.parse(text.write(found)))


@cache
def known(path: Path) -> Vehicle:
    entry = PLACE.load(path)
    assert isinstance(entry.record, VehicleRecord)
    return Vehicle(entry.record, entry.address, timed(), clearances())


@cache
def timed() -> Stock:
    """The stock, of which two pieces of three say how long they take to fit."""
    times = [None, parse("8 min", "time"), parse("12.5 min", "time")]
    return Stock(tuple(replace(item, facts=replace(item.facts, fitting=times[at % 3])) for at, item in enumerate(stock(PLACE).items)))  # fmt: skip


def visits() -> Iterator[tuple[Path, Visit]]:
    """Random ones, every record in its turn."""
    draw, number = random.Random(20260504), 0  # noqa: S311 - the same visits in every run
    while number < NUMBER:
        path = VEHICLES[number % len(VEHICLES)]
        found = some(draw, path)
        if found is not None:
            number += 1
            yield path, found


def jobs_of(path: Path, asked: Visit) -> list[str]:
    """The jobs as the boxes of the page stand."""
    wanted = set(map(str, asked.targets))
    return [target["id"] for target in made(path)["targets"] if target["id"] in wanted]


def planned(totals: dict[str, Any]) -> dict[str, Any]:
    """Totals of a plan in the form of the page's script."""
    return {
        "time": totals["time_text"],
        "tools": sorted(tool["name"] for tool in totals["tools"]),
        "buy": sorted([json.dumps(item, sort_keys=True) for item in totals["buy"]]),
        "tally": {row["sort"]: [row.get(fate, 0) for fate in FATES] for row in totals["fasteners"]},
    }


def selected(totals: dict[str, Any]) -> dict[str, Any]:
    """What the page's script reckons, in the same form."""
    return {
        "time": totals["time"],
        "tools": sorted(totals["tools"]),
        "buy": sorted([json.dumps(item, sort_keys=True) for item in totals["buy"]]),
        "tally": {sort: [row[fate] for fate in FATES] for sort, row in totals["tally"].items()},
    }


def spanned(kinds: list[dict[str, Any]]) -> dict[str, Any]:
    """What the program says of several kinds of car, in the form of the page's script."""
    shown: dict[str, Any] = said(spans.spanned(kinds))
    return {
        "time": shown["time"],
        "tools": [{"name": tool["name"], "some": tool["some"]} for tool in shown["tools"]],
        "rows": shown["rows"],
        "buy": [{"what": one["name"], "part": one["part"], "number": one["number"]} for one in shown["buy"]],
    }


def ordered(shown: dict[str, Any]) -> dict[str, Any]:
    """The same whatever the order of tools and things to buy."""
    return {key: value if key in ("time", "rows") else sorted(map(json.dumps, value)) for key, value in shown.items()}


def test_page_and_program_say_the_same_of_cars_that_are_left_open(run: Run) -> None:
    """All jobs of every record, from the least to the most of its kinds of car."""
    shown = {path.stem: unpacked(json.loads(pages.page_data(made(path)))) for path in VEHICLES}
    asks = [{"page": path.stem, "jobs": [], "car": {}, "kinds": []} for path in VEHICLES]
    answers = run(SELECT, {"pages": shown, "asks": asks}, "page-data", "visit-selection", "visit-totals", "visit-spans")
    for path, page in zip(VEHICLES, answers, strict=True):
        assert ordered(page["shown"]) == ordered(spanned(made(path)["totals"])), path.stem


def test_page_plan_and_sheet_say_the_same_of_random_visits(run: Run) -> None:
    every = list(visits())
    plans = [json.loads(indented(of(one))) for _, one in every]
    asks = [
        {"page": path.stem, "jobs": jobs_of(path, one), "car": one.car, "kinds": [kinds["cars"][0] for kinds in plan["cars"]]}
        for (path, one), plan in zip(every, plans, strict=True)
    ]  # fmt: skip
    shown = {path.stem: unpacked(json.loads(pages.page_data(made(path)))) for path in VEHICLES}
    answers = run(SELECT, {"pages": shown, "asks": asks}, "page-data", "visit-selection", "visit-totals", "visit-spans")
    for (_, one), plan, page in zip(every, plans, answers, strict=True):
        name = text.write(one)
        assert page["steps"] == [[step["id"], step["minutes"]] for step in plan["steps"]], name
        assert ordered(page["shown"]) == ordered(spanned(plan["cars"])), name
        assert list(map(selected, page["totals"])) == [planned(entry["totals"]) for entry in plan["cars"]], name
        assert_printed(one, plan, name)


def test_page_and_plan_say_the_same_of_the_time_that_gear_takes(run: Run) -> None:
    every = [(path, one) for path, one in visits() if one.gear]
    held = timed()
    shared = {"units": shelf.length_units(), "electrical": electrical_tables.tables(), "usual": shelf.usual_data(clearances()), "stock": list(map(shelf.of, held.items))}  # fmt: skip
    asks = [[fitted(known(path), one, opening) for opening in one.openings if opening.id in one.gear] for path, one in every]  # fmt: skip
    answers = run(FITTING, said({"shelf": shared, "asks": asks}), "fit-place", "fit-time")
    told = 0
    for (_, one), page in zip(every, answers, strict=True):
        plan = json.loads(indented(of(one)))["fitting"]
        assert sorted(page) == sorted(entry["words"] for entry in plan), text.write(one)
        told += any(entry["minutes"] for entry in plan)
    assert told > len(every) / 2


def fitted(vehicle: Vehicle, one: Visit, opening: Opening) -> dict[str, Any]:
    """What the page asks of one piece of the gear of a visit."""
    made = replace(vehicle, record=one.record, visit=one.gear)
    asking = asked(made, one.record.openings[opening.id], {name: one.answers[name] for name in one.answers})
    return {**asking, "opening": opening.id, "gear": one.gear[opening.id].id, "count": sum(target.job == opening.id for target in one.targets)}  # fmt: skip


def assert_printed(one: Visit, plan: dict[str, Any], name: str) -> None:
    """The sheet has the steps, times, tools and tally of the plan."""
    sheet = visited.view(one, URL, "a4", DAY)
    rows = [row for section in sheet["sections"] for row in section["steps"]]
    said = [(row["number"], row["verb"], row["title"], row["time"]) for row in rows]
    steps = enumerate(plan["steps"], start=1)
    assert said == [(number, step["verb"], step["title"], step["time"]) for number, step in steps], name
    for totals, entry in zip(sheet["totals"], plan["cars"], strict=True):
        own = planned(entry["totals"])
        assert totals["time"] == own["time"], name
        assert {row["sort"]: row["counts"][: len(FATES)] for row in totals["rows"]} == own["tally"], name
        assert len(totals["tools"]) == len(own["tools"]), name
        assert all(any(tool in line for line in totals["tools"]) for tool in own["tools"]), name
