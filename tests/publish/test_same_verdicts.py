"""What an opening takes is the same on the page, on the sheet and on the command line, for every opening of every vehicle; the stock is ranked by commands and scripts alone.

That a page's scripts rank the stock as the commands do is tested in `tests/node/test_fit_place_script.py`.
"""

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from undertrim.check.shelf import stock
from undertrim.cli import main
from undertrim.derive.fit.joining import Joining
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.publish.build import beside
from undertrim.publish.facts.fit import TO_GET, VERDICTS
from undertrim.publish.facts.with_stock import with_stock
from undertrim.record.gear import GEAR
from undertrim.record.model.kinds.receiver import ReceiverGear
from undertrim.words import say
from vehicle_pages import all_pages
from wired import PLACE, ROOT, VEHICLES, body, known, made, sheet


def answered(path: Path, capsys: pytest.CaptureFixture[str]) -> list[dict[str, Any]]:
    """What the command says of all openings, the stock ranked."""
    assert main(["fit", path.stem, "--in", str(ROOT), "--format", "json"]) == 0
    found: list[dict[str, Any]] = json.loads(capsys.readouterr().out)["openings"]
    return found


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_page_and_sheet_say_what_the_command_says_that_an_opening_takes(
    path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    page, text = " ".join(body(path, "openings").split()), " ".join(" ".join(sheet(path)).split())
    told = {(one["opening"], *one["takes"]) for one in answered(path, capsys)}
    shown = {(one["id"], *found["takes"]) for one in made(path)["openings"] for found in one["limits"]}
    assert told == shown
    for _, *limits in shown:
        assert "; ".join(limits) in page
        assert "; ".join(limits) in text


def test_the_stock_gives_every_verdict(capsys: pytest.CaptureFixture[str]) -> None:
    every = [one for path in VEHICLES for one in answered(path, capsys)]
    assert {fit["verdict_words"] for one in every for fit in one["fits"]} == {*map(say, (*VERDICTS.values(), TO_GET))}
    shelf = stock(PLACE)
    for one in every:
        assert len(one["fits"]) == (len(shelf.of(GEAR[one["kind"]])) if one["there"] else 0)


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_what_joins_a_receiver_is_all_that_the_file_on_the_shelf_rests_on(path: Path) -> None:
    """It is the same with that part of the stock alone, which is what its key rests on."""
    vehicle = known(path)
    part = Joining(vehicle.stock).of(vehicle.address)
    assert with_stock(replace(vehicle, stock=part)) == with_stock(vehicle)
    assert len(part.items) < len(vehicle.stock.items) / 2
    assert not {item.facts.kind for item in part.items} & {"speaker", "tweeter", "amplifier", "spacer", "crossover"}


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_pages_and_data_name_no_gear(path: Path) -> None:
    told = all_pages(made(path)) + beside.data(made(path))[1].decode()
    assert [item.name for item in stock(PLACE).items if item.name in told] == []


def test_the_key_follows_that_part_and_no_more() -> None:
    whole = stock(PLACE)
    finch = "kelbrook/finch-2014-2018"
    without = {item.id: Joining(Stock(tuple(one for one in whole.items if one is not item))) for item in whole.items}
    told = {name for name, found in without.items() if found.key(finch) != Joining(whole).key(finch)}
    assert told == {item.id for item in Joining(whole).of(finch).items}
    assert Joining(Stock(tuple(map(longer, whole.items)))).key(finch) == Joining(whole).key(finch)


def longer(item: Gear) -> Gear:
    """A receiver whose depth nobody has measured; all else as it is."""
    return (
        replace(item, facts=replace(item.facts, chassis_depth=None)) if isinstance(item.facts, ReceiverGear) else item
    )
