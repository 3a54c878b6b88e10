"""The joint of a vehicle with every lead set is the same on the page, on the wiring sheet and on the command line: each row, its state, its order."""

import html
import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from undertrim.cli import main
from undertrim.publish.facts.joint import STATES
from undertrim.words import say
from wired import ROOT, VEHICLES, bare, body, made, printed, stem

Data = dict[str, Any]
each_vehicle = pytest.mark.parametrize("path", VEHICLES, ids=stem)


def rows(tables: list[Data]) -> list[tuple[str, str, str]]:
    return [(row["id"], row["state"], row["do"]) for table in tables for row in table["rows"]]


@each_vehicle
def test_the_command_line_makes_the_joints_of_the_page(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    joints = made(path)["joints"]
    assert len({joint["leads"] for joint in joints}) >= 2
    for joint in joints:
        assert main(["wiring", path.stem, joint["leads"], "--in", str(ROOT), "--format", "json"]) == 0
        assert rows(json.loads(capsys.readouterr().out)["tables"]) == rows(joint["tables"])


@each_vehicle
def test_the_page_shows_every_row_in_its_order_with_its_state_and_what_to_do(path: Path) -> None:
    shown = [
        (name, state, html.unescape(do[-1] if (do := re.findall("<b>(.*?)</b>", rest)) else ""))
        for state, name, rest in re.findall(
            r'<tr class="ut-row-([a-z-]+)" data-row="([^"]+)">.*?data-label="Do">(.*?)</td></tr>', body(path)
        )
    ]
    assert shown == [row for joint in made(path)["joints"] for row in rows(joint["tables"])]


@each_vehicle
def test_the_page_says_each_state_in_words(path: Path) -> None:
    shown = re.findall(r'<tr class="ut-row-[^>]*><th scope="row">. ([^<]*)</th>', body(path))
    tables = [table for joint in made(path)["joints"] for table in joint["tables"]]
    assert shown == [row["state_words"] for table in tables for row in table["rows"]]


@each_vehicle
def test_the_sheet_prints_every_row_in_its_order_below_the_words_of_its_state(path: Path) -> None:
    whole, at = bare("".join(printed(path))), 0
    for joint in made(path)["joints"]:
        at = whole.index(bare(f"Joint with {joint['name']}{joint['opening_name']}"), at)
        for table in joint["tables"]:
            at = _printed(table, whole, at)


def _printed(table: Data, whole: str, at: int) -> int:
    """Where the last row of the table ends. Each row stands below the line of its state, and one of both says what to do."""
    at = whole.index(bare(f"{table['counts_words']}."), at)
    places = [at]
    for row in table["rows"]:
        said = bare("".join(_cells(row, table["harness"])))
        places += [start := whole.index(said, places[-1]), start + len(said)]
    for number, row in enumerate(table["rows"]):
        start, end = places[2 * number + 1 : 2 * number + 3]
        title, line = _last_state(whole[at:start])
        assert title == bare(f"{row['sign']}{row['state_words']}({table['counts'][row['state']]})"), row["id"]
        after = places[2 * number + 3] if number + 1 < len(table["rows"]) else end + 1000
        assert bare(row["do"]) in line or bare(row["do"]) in whole[end:after], row["id"]
    return places[-1]


_TITLE = re.compile("|".join(rf".{re.escape(bare(say(words)))}\(\d+\)" for words in STATES.values()))


def _last_state(before: str) -> tuple[str, str]:
    """The last line of a state before a row, and it with all that follows."""
    last = list(_TITLE.finditer(before))[-1]
    return last[0], before[last.start() :]


def _cells(row: Data, harness: Data | None) -> Iterator[str]:
    """Function, car, adapter and lead of a row as they follow each other on the sheet."""
    yield row["function_words"]
    for point in row["car"]:
        yield f"{point['address']}{_colour(point)}" if point["address"] else point["words"]
        if point["supply"]:
            yield f", {point['supply']}"
    for contact in row["contacts"]:
        yield contact["gear_name"] if harness and contact["gear"] != harness["id"] else ""
        yield f"{contact['address']}{_colour(contact)}"
    if not row["contacts"]:
        yield row["through"]
    if row["lead"]:
        yield f"{row['lead']['id']}{_colour(row['lead'])}"


def _colour(end: Data) -> str:
    return str(end["colour"]["words"]) if end["colour"] else "colour not recorded"
