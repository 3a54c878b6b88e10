"""What fits is the same on the page, on the sheet and on the command line, for the whole stock and every opening of every vehicle."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from undertrim.check.shelf import stock
from undertrim.cli import main
from undertrim.publish.facts.fit import TO_GET, VERDICTS
from undertrim.record.gear import GEAR
from undertrim.words import say
from wired import PLACE, ROOT, VEHICLES, body, made, sheet


def verdicts(openings: list[dict[str, Any]], name: str) -> list[tuple[str, str, str, str]]:
    """Opening, cars, gear and headline in the order given."""
    return [
        (opening[name], str(answer["cars"]), fit["gear"], fit["headline"])
        for opening in openings
        for answer in opening.get("fit", [opening])
        for fit in answer["fits"]
    ]


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_the_command_line_says_what_the_page_says(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["fit", path.stem, "--in", str(ROOT), "--format", "json"]) == 0
    said = json.loads(capsys.readouterr().out)
    shown = verdicts(made(path)["openings"], "id")
    assert len(shown) > 40
    assert verdicts(said["openings"], "opening") == shown


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_the_page_shows_every_verdict_in_its_order(path: Path) -> None:
    shown = body(path, "openings")
    found = re.findall(r'<details class="ut-verdict ut-is-([a-z-]+)" data-gear="([a-z0-9-]+)">', shown)
    ranked = [(fit["verdict"], fit["gear"]) for o in made(path)["openings"] for a in o["fit"] for fit in a["fits"]]
    assert found == ranked


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_the_sheet_prints_every_verdict_in_its_order(path: Path) -> None:
    text = " ".join(" ".join(sheet(path)).split())
    at = text.index("What fits")
    for opening in made(path)["openings"]:
        for answer in opening["fit"]:
            for fit in answer["fits"]:
                at = text.index(f"{fit['verdict_words']} {fit['name']}", at) + 1


def test_the_stock_gives_every_verdict() -> None:
    found = {fit["verdict_words"] for path in VEHICLES for o in made(path)["openings"] for a in o["fit"] for fit in a["fits"]}  # fmt: skip
    assert found == {*map(say, (*VERDICTS.values(), TO_GET))}


def test_every_opening_of_every_kind_of_car_is_ranked() -> None:
    """The whole stock of its kind for each, once for each group of cars that has the opening."""
    shelf = stock(PLACE)
    for path in VEHICLES:
        for opening in made(path)["openings"]:
            assert any(answer["there"] for answer in opening["fit"])
            for answer in opening["fit"]:
                assert len(answer["fits"]) == (len(shelf.of(GEAR[opening["kind"]])) if answer["there"] else 0)
