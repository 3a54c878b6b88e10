"""What becomes of what the factory unit also does is the same on the page with its stock and in plan, fit and shop; without the stock it stays open."""

import json
import re
from collections.abc import Iterator
from functools import cache
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from disputing import loaded, of
from undertrim.cli import main
from undertrim.publish.facts import duties
from undertrim.words import say
from vehicle_pages import all_pages
from wired import ROOT, VEHICLES, bare, known, made, printed, sheet, stem, stocked

HAVING = [path for path in VEHICLES if of(loaded(path)).duties]
RECEIVER = "skerrowe-broadside"


@cache
def on_page(path: Path) -> str:
    """The pages, and what they fetch from the shelf."""
    return bare(unescape(all_pages(made(path)))) + bare("".join(_texts(stocked(path))))


def _texts(data: Any) -> Iterator[str]:
    if isinstance(data, str):
        yield data
    for one in data.values() if isinstance(data, dict) else data if isinstance(data, list) else ():
        yield from _texts(one)


@cache
def on_sheet(path: Path) -> str:
    return bare("".join(sheet(path)))


@cache
def on_wiring_sheet(path: Path) -> str:
    return bare("".join(printed(path)))


def told(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    main([*words, "--in", str(ROOT)])
    return bare(capsys.readouterr().out)


def words_of(path: Path, *kinds: str) -> list[str]:
    """What is said of every duty that has one of these words, with the gear in stock."""
    vehicle = known(path)
    found = duties.duties(vehicle.record, vehicle.address, vehicle.stock)
    return [bare(say(item.kept_words)) for item in found if item.word in kinds]


@pytest.mark.parametrize("path", HAVING, ids=stem)
def test_page_and_commands_say_what_becomes_of_each(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    page = on_page(path)
    fit = told(capsys, "fit", path.stem, "dash")
    shop = told(capsys, "shop", path.stem, "--job", "dash", "--gear", RECEIVER)
    for said in words_of(path, "STOP", "LOST", "UNKNOWN"):
        assert all(said in where for where in (page, fit, shop)), said
    for said in words_of(path, "NEEDED"):
        assert all(said in where for where in (page, shop)), said


@pytest.mark.parametrize("path", HAVING, ids=stem)
def test_plan_and_page_have_the_same_blockers_with_stops_first(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    plan = told(capsys, "plan", path.stem, "--job", "dash")
    page = on_page(path)
    found = [item for item in stocked(path)["blockers"] if "dash" in item["openings"] or not item["openings"]]
    assert [item["weight"] for item in found] == sorted(
        (item["weight"] for item in found), key=["stop", "lost", "unknown", "need"].index
    )
    for item in found:
        for where in (plan, page):
            assert bare(item["title"]) in where
            assert bare(item["text"]) in where


@pytest.mark.parametrize("path", HAVING, ids=stem)
def test_the_sheet_says_of_each_what_holds_whatever_is_in_stock(path: Path) -> None:
    """A duty that gear may keep is lost unless it does, and the job is on the safe side of that."""
    for item in made(path)["duties"]:
        assert bare(item["kept_words"]) in on_wiring_sheet(path)
        assert item["fate"] != "kept"
        if item["kept_by"] in ("interface", "none"):
            assert re.search("unless (an interface|the new gear) keeps it", item["becomes"])
            assert item["word"] in ("STOP", "LOST")
    for item in made(path)["blockers"]:
        assert bare(item["title"]) in on_sheet(path)
        assert bare(item["text"]) in on_sheet(path)


def test_a_grave_duty_that_may_be_lost_is_no_order_to_rely_on(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["shop", "plover-2017-2022", "--job", "dash", "--gear", RECEIVER, "--format", "json", "--in", str(ROOT)]
    assert main(words) == 1
    data: dict[str, Any] = json.loads(capsys.readouterr().out)
    assert data["duties"][0]["word"] == "STOP"
    for entry in data["lists"]:
        assert {verdict["verdict"] for verdict in entry["verdicts"]} == {"stop"}
        assert all(not verdict["headline"].startswith("fits") for verdict in entry["verdicts"])


def test_speakers_lose_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    found = told(capsys, "plan", "plover-2017-2022", "--job", "front-door")
    assert "Chime" not in found
    assert "Emergencycall" not in found


def test_the_amplifier_of_a_shipped_car_is_woken_by_data(capsys: pytest.CaptureFixture[str]) -> None:
    """What wakes it is named in the plan and ordered, for a receiver that does not ask for it."""
    assert "OrderTidewrackDI-P17,whichswitchesiton" in told(capsys, "plan", "plover-2017-2022", "--job", "dash")
    shop = told(capsys, "shop", "plover-2017-2022", "--job", "dash", "--gear", "sandmartin-creek-1")
    assert "amplifierturnon:comesasdata:interfaceneeded,TidewrackDI-P17" in shop
