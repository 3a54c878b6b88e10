"""The joint of a vehicle with every lead set is the same in what pages fetch, on the sheet of a visit and on the command line: each row, its state, its order."""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from pdf_text import texts
from undertrim.cli import main
from undertrim.derive.visit import text
from undertrim.derive.visit.understanding import visit
from undertrim.publish.encoding import said
from undertrim.publish.facts import joints
from undertrim.publish.facts.joint import STATES
from undertrim.publish.printed import pdf
from undertrim.words import say
from wired import DAY, ROOT, URL, VEHICLES, bare, joined, known, stem, stocked

Data = dict[str, Any]
each_vehicle = pytest.mark.parametrize("path", VEHICLES, ids=stem)


def rows(tables: list[Data]) -> list[tuple[str, str, str]]:
    return [(row["id"], row["state"], row["do"]) for table in tables for row in table["rows"]]


@each_vehicle
def test_the_command_line_makes_the_joints_of_the_page(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert len({joint["leads"] for joint in joined(path)}) >= 2
    for joint in joined(path):
        assert main(["wiring", path.stem, joint["leads"], "--in", str(ROOT), "--format", "json"]) == 0
        assert rows(json.loads(capsys.readouterr().out)["tables"]) == rows(joint["tables"])


@each_vehicle
def test_the_file_on_the_shelf_has_the_joints_with_what_is_known_of_each_end(path: Path) -> None:
    """What its pages make of it is asked in `tests/browser/test_with_stock.py`."""
    shown = stocked(path)
    assert [(joint["opening"], joint["leads"]) for joint in shown["joints"]] == [(one["opening"], one["leads"]) for one in joined(path)]  # fmt: skip
    for joint, whole in zip(shown["joints"], joined(path), strict=True):
        assert rows(joint["tables"]) == rows(whole["tables"])
        for table, meant in zip(joint["tables"], whole["tables"], strict=True):
            for row, told in zip(table["rows"], meant["rows"], strict=True):
                assert row["state_words"] == f"{told['sign']} {told['state_words']}"
                assert bare("".join(_ends(row, shown["colours"]))) == bare("".join(_cells(told, meant["harness"])))


def _ends(row: Data, colours: list[Data]) -> Iterator[str]:
    """Function, car, adapter and lead of a row as they follow each other in a table."""
    yield row["function"]
    for end in (*row["car"], *row["contacts"]):
        colour = "" if end["colour"] is None else colours[end["colour"]]["words"]
        yield f"{end['at']}{colour if end['pin'] or end in row['contacts'] else ''}{', ' if end['more'] else ''}{end['more']}"
    if not row["contacts"]:
        yield row["through"]
    if row["lead"]:
        yield f"{row['lead']['at']}{colours[row['lead']['colour']]['words']}"


@each_vehicle
def test_the_sheet_of_a_visit_prints_every_row_in_its_order_below_the_words_of_its_state(path: Path) -> None:
    first = joined(path)[0]
    one = visit(
        known(path), text.parse(f"{path.stem}?jobs={first['opening']}&{first['opening']}.leads={first['leads']}")
    )
    (joint,) = (said(joints.of(one.record, found)) for found in one.joints)
    assert rows(joint["tables"]) == rows(first["tables"])
    whole = bare("".join(texts(pdf.render_visit(one, URL, "a4", DAY))))
    at = whole.index(bare(f"Joint with {joint['name']}{joint['opening_name']}"))
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
