"""What becomes of what the factory unit also does is the same on page, sheets, in the JSON and in plan, fit and shop."""

import json
from functools import cache
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from disputing import loaded, of
from undertrim.cli import main
from vehicle_pages import all_pages
from wired import ROOT, VEHICLES, bare, made, sheet, stem

HAVING = [path for path in VEHICLES if of(loaded(path)).duties]
RECEIVER = "skerrowe-broadside"


@cache
def on_page(path: Path) -> str:
    return bare(unescape(all_pages(made(path))))


@cache
def on_sheet(path: Path) -> str:
    return bare("".join(sheet(path)))


def told(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    main([*words, "--in", str(ROOT)])
    return bare(capsys.readouterr().out)


def words_of(path: Path, *kinds: str) -> list[str]:
    """What is said of every duty that has one of these words."""
    return [bare(item["kept_words"]) for item in made(path)["duties"] if item["word"] in kinds]


@pytest.mark.parametrize("path", HAVING, ids=stem)
def test_page_and_sheet_and_commands_say_what_becomes_of_each(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    page = on_page(path)
    fit = told(capsys, "fit", path.stem, "dash")
    shop = told(capsys, "shop", path.stem, "--job", "dash", "--gear", RECEIVER)
    for said in words_of(path, "STOP", "LOST", "UNKNOWN"):
        assert all(said in where for where in (page, on_sheet(path), fit, shop)), said
    for said in words_of(path, "NEEDED"):
        assert all(said in where for where in (page, on_sheet(path), shop)), said


@pytest.mark.parametrize("path", HAVING, ids=stem)
def test_plan_page_and_sheet_have_the_same_blockers_with_stops_first(
    path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    plan = told(capsys, "plan", path.stem, "--job", "dash")
    page = on_page(path)
    found = [item for item in made(path)["blockers"] if "dash" in item["openings"] or not item["openings"]]
    assert [item["weight"] for item in found] == sorted(
        (item["weight"] for item in found), key=["stop", "lost", "unknown", "need"].index
    )
    for item in found:
        for where in (plan, page, on_sheet(path)):
            assert bare(item["title"]) in where
            assert bare(item["text"]) in where


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
