"""The tech's way: find the car on a phone, from a folder on disk, choose the job, see the planner's steps and nothing else."""

import json
import random
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

import pytest
from browsing import ROOT
from playwright.sync_api import Locator, Page

from undertrim.cli import main
from undertrim.derive import cars, jobs
from undertrim.derive.procedure.planning import targets
from undertrim.publish.facts.visit import visit
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

VISIBLE_STEPS = "[...document.querySelectorAll('#ut-steps [data-tick]')].filter(box => box.offsetParent).map(box => box.dataset.tick)"


def open_home(page: Page, site: Path) -> None:
    page.goto((site / "index.html").as_uri())


def choose(page: Page, name: str) -> Locator:
    """The box of a job or variant."""
    return page.locator(".ut-choose").get_by_label(name)


def test_finch_16_map_radio_dash_and_front_doors(phone: Page, site: Path, capsys: pytest.CaptureFixture[str]) -> None:
    open_home(phone, site)
    phone.get_by_role("combobox").fill("finch 16")
    phone.get_by_role("option").first.tap()
    assert phone.locator("h1").inner_text().startswith("Kelbrook Finch")
    # the page's scripts put its boxes back as they were left, and are the last to load
    phone.wait_for_load_state("load")
    for name in ("Radio opening", "Front door speakers, left", "Front door speakers, right", "Map radio"):
        choose(phone, name).check()
    asked = ["--job", "dash", "--job", "front-door", "--variant", "radio=map"]
    assert main(["plan", "finch-2014-2018", *asked, "--format", "json", "--in", str(ROOT)]) == 0
    planned = json.loads(capsys.readouterr().out)
    assert phone.evaluate(VISIBLE_STEPS) == [step["id"] for step in planned["steps"]]
    assert "remove:climate-panel" in phone.evaluate(VISIBLE_STEPS)
    assert "remove:rear-door-panel@left" not in phone.evaluate(VISIBLE_STEPS)


SHOWN = """(visits) => visits.map(([jobs, car]) => {
  document.querySelectorAll('input[name=job]').forEach(box => { box.checked = jobs.includes(box.value); });
  document.querySelectorAll('.ut-variant').forEach(set => set.querySelectorAll('input').forEach(box => {
    box.checked = car[set.dataset.variant] === box.value; }));
  document.querySelector('input[name=job]').dispatchEvent(new Event('change', {bubbles: true}));
  return [STEPS, {
  time: document.getElementById('ut-time').textContent,
  tools: [...document.querySelectorAll('#ut-tools li')].map(item => [...item.childNodes].filter(node => node.nodeName !== 'SMALL').map(node => node.textContent).join('').trim()),
  tally: [...document.querySelectorAll('#ut-tally tbody tr')].map(row => [...row.cells].map(cell => cell.firstChild.textContent)),
  buy: [...document.querySelectorAll('#ut-buy li')].map(item => item.textContent),
  }];
})""".replace("STEPS", VISIBLE_STEPS)
"""What the page shows of each of some visits: its steps and its totals."""

VEHICLES = sorted(path for path in (ROOT / "records" / "vehicles").rglob("*.yaml"))


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_page_shows_what_the_planner_says_for_every_car(phone: Page, site: Path, path: Path) -> None:
    entry = Workspace(ROOT).load(path)
    assert isinstance(entry.record, VehicleRecord)
    phone.goto((site / "vehicles" / f"{entry.address}.html").as_uri())
    every = [str(target) for target in targets(entry.record)]
    chooser = random.Random(entry.id)  # noqa: S311 - repeatable picks of visits
    picks = (
        [[job] for job in every]
        + [every]
        + [[job for job in every if chooser.random() < 0.5] or every for _ in range(6)]
    )
    for car in cars.assignments(entry.record):
        planned: list[tuple[list[str], Mapping[str, Any]]] = []
        for pick in picks:
            with suppress(jobs.BadRequest):  # this car has none of the openings, or not all of them
                planned.append((pick, visit(entry.record, entry.address, jobs.wanted(entry.record, pick), car)))
        shown = phone.evaluate(SHOWN, [[pick, car] for pick, _ in planned])
        for (pick, expected), (steps, totals) in zip(planned, shown, strict=True):
            assert steps == [step["id"] for step in expected["steps"]], (pick, car)
            assert totals == _totals(expected["cars"][0]["totals"]), (pick, car)


def _totals(totals: dict[str, Any]) -> dict[str, Any]:
    fates = ("out", "back", "moved", "bagged", "binned", "new")
    buy = [
        f"{item['count'] if item['count'] is not None else 'unknown number'} × {item['what']} ({item['part']})"
        for item in totals["buy"]
    ]
    return {
        "time": totals["time_text"],
        "tools": [tool["name"] for tool in totals["tools"]],
        "tally": [[count["sort"], *(str(count[fate]) for fate in fates)] for count in totals["fasteners"]],
        "buy": buy or ["Nothing single-use is recorded."],
    }


def test_ticks_and_choices_are_kept_on_the_device(phone: Page, site: Path) -> None:
    phone.goto((site / "vehicles" / "kelbrook" / "finch-2014-2018.html").as_uri())
    choose(phone, "Radio opening").check()
    tick = phone.locator("[data-tick='remove:vent-trim']")
    tick.check()
    phone.reload()
    assert tick.is_checked()
    assert choose(phone, "Radio opening").is_checked()
    phone.get_by_role("button", name="Clear the choices").click()
    assert not choose(phone, "Radio opening").is_checked()
    assert tick.count() == 0
    phone.get_by_role("button", name="Show everything").click()
    assert tick.is_checked()
    phone.get_by_role("button", name="Next car").click()
    phone.reload()
    assert tick.count() == 0
    choose(phone, "Radio opening").check()
    assert not tick.is_checked()


def test_a_link_can_carry_job_and_car(phone: Page, site: Path) -> None:
    page = (site / "vehicles" / "kelbrook" / "finch-2014-2018.html").as_uri()
    phone.goto(f"{page}?jobs=dash,front-door@left&radio=map")
    assert choose(phone, "Radio opening").is_checked()
    assert choose(phone, "Front door speakers, left").is_checked()
    assert not choose(phone, "Front door speakers, right").is_checked()
    assert choose(phone, "Map radio").is_checked()


def test_both_sides_are_one_tap(phone: Page, site: Path) -> None:
    phone.goto((site / "vehicles" / "kelbrook" / "finch-2014-2018.html").as_uri())
    both, left = phone.locator("[data-both=front-door]"), choose(phone, "Front door speakers, left")
    both.tap()
    assert phone.url.endswith("?jobs=front-door")
    left.tap()
    assert phone.url.endswith("?jobs=front-door@right")
    assert (both.is_checked(), both.evaluate("box => box.indeterminate")) == (False, True)
    both.tap()
    assert phone.url.endswith("?jobs=front-door")
    both.tap()
    assert not left.is_checked()


def test_the_text_of_a_visit_behind_the_address_opens_that_visit(phone: Page, site: Path) -> None:
    """So does the code on its sheet, which holds it."""
    visit = "jobs=dash,front-door&radio=map&dash=skerrowe-broadside&front-door=tidewrack-haven-65"
    phone.goto(f"{(site / 'vehicles' / 'kelbrook' / 'finch-2014-2018.html').as_uri()}?{visit}")
    chosen = phone.evaluate("[...document.querySelectorAll('.ut-choose input[name]:checked')].map(box => box.value)")
    assert chosen == ["dash", "front-door@left", "front-door@right", "map"]
