"""The wiring on the printed sheet: what stands on every page, where joints are told, that faces stay whole, and that PDF/UA-1 holds."""

# Long because one sheet is asked everything that holds of it on paper, for every vehicle.

import copy
import io
import json
import re
from datetime import date
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from pypdf import PdfReader

from pdf_text import texts
from undertrim.derive.wiring.functions import expected, functions
from undertrim.publish.build import beside
from undertrim.publish.facts.expecting import band_words, of_pattern
from undertrim.publish.facts.ladders import RungWords
from undertrim.publish.printed import pdf
from undertrim.publish.printed.sheet import Paper, glyphs, wiring
from undertrim.publish.printed.sheet.joints import joint
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.record.model import VehicleRecord
from undertrim.words import say
from wired import DAY, PLACE, URL, VEHICLES, bare, joined, made, printed, stem

Data = dict[str, Any]
each_vehicle = pytest.mark.parametrize("path", VEHICLES, ids=stem)
PLOVER, FINCH, GANT = (
    next(path for path in VEHICLES if path.stem.startswith(name)) for name in ("plover", "finch", "gant")
)
HOSTILE = ['#import "@preview/x:1.0.0": *', "$x$ *b* _i_", '#read("/etc/passwd")', "]]})", "= H <label> @ref"]


def view(facts: Data) -> Data:
    return dict(wiring.view(facts, URL, "a4", DAY))


def sheet(facts: Data) -> tuple[str, ...]:
    return texts(pdf.render(facts, {"wiring": URL}, "a4", DAY))


def without(facts: Data, *names: str) -> Data:
    """Short facts print fast."""
    return {**facts, **{name: [] for name in names}}


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
@each_vehicle
def test_every_page_says_what_it_belongs_to(path: Path, paper: Paper) -> None:
    facts, pages = made(path), printed(path, paper)
    for number, page in enumerate(pages, start=1):
        assert bare(f"{facts['title']} {facts['years']}") in bare(page)
        assert "Demonstration data: invented vehicle" in page
        assert f"Data date {facts['data_date']}" in page
        assert "Sheet made 2026-11-25" in page
        assert f"page {number} of {len(pages)}" in page
        assert bare("The maker's information, local codes and licensed practice come first.") in bare(page)
        assert ("DANGER High-voltage vehicle." in page) == (facts["high_voltage"] == "yes")


# ISO 216 A4 and ANSI/ASME Y14.1 size A, in points of 1/72 in.
@pytest.mark.parametrize(("paper", "size"), [("a4", (595.3, 841.9)), ("us-letter", (612, 792))])
def test_paper_size(paper: Paper, size: tuple[float, float]) -> None:
    facts = made(FINCH)
    for page in PdfReader(io.BytesIO(pdf.render(facts, {"wiring": URL}, paper, DAY))).pages:
        assert (page.mediabox.width, page.mediabox.height) == pytest.approx(size, abs=0.1)


@each_vehicle
def test_it_says_where_the_joints_are_told(path: Path) -> None:
    assert bare(f"undertrim sheet {path.stem}") in bare("".join(printed(path)))


@each_vehicle
def test_every_pin_is_printed_with_its_colour_letters_and_function(path: Path) -> None:
    whole, at = bare("".join(printed(path))), 0
    for plug in made(path)["connectors"]:
        for pin in plug["pins"]:
            colour = pin["colour"] or {"words": "not recorded", "iec": ""}
            at = whole.index(bare(f"{pin['id']}{colour['words']}{colour['iec']}{pin['function_words']}"), at) + 1


@each_vehicle
def test_functions_duties_buttons_and_runs_are_printed(path: Path) -> None:
    facts, whole = made(path), bare("".join(printed(path)))
    for row in view(facts)["functions"]:
        assert bare(row["name"] + row["by_words"]) in whole
    for entry in facts["functions"]:
        assert bare(entry["name"]) in whole
    for entry in facts["duties"]:
        assert bare(entry["name"] + entry["kept_words"]) in whole
    for entry in facts["ladders"]:
        assert all(bare(rung["name"] + rung["band"]) in whole for rung in entry["rungs"])
    for run in facts["runs"]:
        assert all(
            bare(words) in whole for words in (run["name"], run["from"], run["to"], run["length"], run["assumed"])
        )
        assert all(bare(f"{number}. {words}") in whole for number, words in enumerate(run["passes"], start=1))
        assert all(bare("".join(cable.values())) in whole for cable in run["cables"])


@each_vehicle
def test_how_to_tell_a_map_and_what_differs_is_printed(path: Path) -> None:
    whole = bare("".join(printed(path)))
    for plug in made(path)["connectors"]:
        for asked in plug["drawn"]["told_by"]:
            assert bare(asked["ask"]) in whole
            assert all(bare(choice["label"]) in whole and bare(choice["tell"]) in whole for choice in asked["choices"])
        for other in plug["drawn"]["maps"]:
            assert all(bare(line["words"]) in whole for line in other["differences"])


def test_two_maps_of_one_plug_name_each_other() -> None:
    whole = bare("".join(printed(GANT)))
    assert whole.count(bare("Another map of this plug: ")) == 2


@each_vehicle
def test_every_source_that_is_named_is_listed(path: Path) -> None:
    shown = view(made(path))
    listed = {entry["id"] for entry in shown["evidence"]}
    named = set(re.findall(r"\be\d+\b", " ".join(re.findall(r"[Ss]ource ([e\d, ]+)", json.dumps(shown)))))
    assert named or "\nshares:\n" in path.read_text(encoding="utf-8")  # what is taken rests on no evidence of its own
    assert named == listed


@each_vehicle
def test_both_faces_of_a_plug_are_whole_and_to_one_scale(path: Path) -> None:
    shown = view(made(path))
    for plug in shown["plugs"]:
        for face in plug["faces"]:
            drawn = ElementTree.fromstring(shown["pictures"][face["picture"]])  # noqa: S314 - our own drawing
            assert drawn.get("width") == f"{face['width']}px"
        assert len(plug["faces"]) in (0, 2)
        assert bool(plug["faces"]) != bool(plug["no_face"])


@each_vehicle
def test_the_words_of_both_faces_stand_on_one_page_with_the_first_pins(path: Path) -> None:
    for plug in made(path)["connectors"]:
        if plug["drawn"]["faces"]:
            held = [
                page for page in printed(path) if re.search(rf"^{re.escape(plug['name'])}( \[|$)", page, re.MULTILINE)
            ]
            assert len(held) == 1
            after = held[0][held[0].index("\n" + plug["name"]) :]
            first = plug["pins"][0]
            assert "Looking at the wires" in after
            assert "Looking at the contacts" in after
            assert bare(f"{first['id']}{first['colour']['words'] if first['colour'] else 'not recorded'}") in bare(
                after
            )


def test_a_reading_of_most_states_names_none_of_them_and_stands_last() -> None:
    volts, ohms, *_ = made(FINCH)["connectors"][0]["expect"][0]["lines"]
    assert (
        volts
        == "volts to ground: about half the battery voltage, 4.5 V to 8.5 V: radio on; nothing, −0.3 V to 0.5 V: in all other states"
    )
    assert (
        ohms == "ohms to ground: open, 100 kohm and up: key off"
    )  # in other states nobody measures ohms, so "other" would say too much


def test_other_states_are_said_only_where_every_state_shows_something() -> None:
    known, seen = functions(), set()
    for pattern in known.patterns.values():
        lines = iter(list(map(say, of_pattern(pattern, None))))
        for kind in known.kinds.values():
            bands = [band for state in known.states if (band := expected(pattern, kind.id, state, None))]
            if bands:
                line, count = next(lines), len({say(band_words(band, kind.unit)) for band in bands})
                whole = len(bands) == len(known.states)
                assert ("in all other states" in line) <= (whole and count > 1)
                assert ("in every state" in line) == (whole and count == 1)
                seen.add((whole, min(count, 2)))
    assert {(True, 1), (True, 2), (False, 1)} <= seen


@each_vehicle
def test_functions_that_come_alike_share_a_row_and_none_is_lost(path: Path) -> None:
    facts, rows = made(path), view(made(path))["functions"]
    assert len({(row["by_words"], row["note"], row["when"]) for row in rows}) == len(rows)
    for entry in facts["functions"]:
        assert [row["by_words"] for row in rows if entry["name"] in row["name"].split(", ")].count(entry["by_words"])


def test_contacts_of_the_same_readings_share_a_row() -> None:
    # Eight speaker wires of one kind are one row, and none is lost.
    plug = next(iter(view(made(GANT))["plugs"][-1:]))
    assert [len(row["pins"]) for row in plug["expect"]] == [8]
    for facts, shown in zip(made(PLOVER)["connectors"], view(made(PLOVER))["plugs"], strict=True):
        printed_rows = {pin["id"]: row["lines"] for row in shown["expect"] for pin in row["pins"]}
        assert printed_rows == {pin["id"]: pin["lines"] for pin in facts["expect"]}
        readings = [(row["lines"], row["when"]) for row in shown["expect"]]
        assert all(readings.count(one) == 1 for one in readings)


def block(table: Data) -> Data:
    """The first block of rows of one table."""
    found: Data = joint({**joined(PLOVER)[0], "tables": [table]}, Pictures())["tables"][0]["blocks"][0]
    return found


def test_what_most_rows_of_a_state_need_is_said_once_and_the_rest_in_its_row() -> None:
    table = copy.deepcopy(joined(PLOVER)[0]["tables"][0])
    row = {**table["rows"][0], "state": "joined"}
    table["rows"] = [{**row, "do": do} for do in ("join it", "meter it", "join it")]
    assert block(table)["do"] == "join it, if not said otherwise"
    assert [row["do"] for row in block(table)["rows"]] == ["", "meter it", ""]
    table["rows"] = table["rows"][::2]
    assert block(table)["do"] == "join it"
    table["rows"] = table["rows"][:1]
    assert (block(table)["do"], block(table)["rows"][0]["do"]) == ("", "join it")


def test_a_contact_beside_the_harness_says_whose_it_is() -> None:
    table = copy.deepcopy(joined(PLOVER)[0]["tables"][0])
    row = next(row for row in table["rows"] if row["contacts"])
    row["contacts"][0] |= {"gear": "another", "gear_name": "Another Weir"}
    table["rows"] = [row]
    assert block(table)["rows"][0]["adapter"][0]["name"] == f"Another Weir {row['contacts'][0]['address']}"


def test_what_is_not_recorded_of_a_colour_is_said() -> None:
    table = copy.deepcopy(joined(PLOVER)[0]["tables"][0])
    row = next(row for row in table["rows"] if row["car"] and row["car"][0]["address"])
    row["car"][0]["colour"] = None
    table["rows"] = [row]
    assert block(table)["rows"][0]["car"][0]["words"] == "colour not recorded"
    facts = copy.deepcopy(made(FINCH))
    facts["connectors"][0]["pins"] = [{**facts["connectors"][0]["pins"][0], "colour": None}]
    assert view(facts)["plugs"][0]["pins"][0]["colour"] == "not recorded"


def test_a_colour_to_doubt_and_one_that_cannot_be_read_say_so() -> None:
    facts = copy.deepcopy(made(FINCH))
    pin = facts["connectors"][0]["pins"][0]
    read = {**pin["colour"], "doubt": "look again", "may_be": []}
    unread = {**read, "words": "GNY", "base": None, "doubt": "", "may_be": ["green", "grey"]}
    facts["connectors"][0]["pins"] = [
        {**pin, "colour": read, "wire": ["pulses."], "note": "A note."},
        {**pin, "colour": unread},
    ]
    shown = view(facts)["plugs"][0]["pins"]
    assert shown[0]["note"] == "pulses. look again. A note."
    assert (shown[1]["colour"], shown[1]["picture"]) == ("GNY (may be green or grey)", "")


def test_a_plug_without_places_is_not_drawn_and_says_why() -> None:
    facts = without(copy.deepcopy(made(FINCH)), "runs")
    facts["connectors"][0]["drawn"] |= {"faces": [], "no_face": "The positions are not recorded."}
    pages = sheet(facts)
    assert "The positions are not recorded." in pages[0]
    assert "Looking at the wires" not in pages[0]


def test_a_car_without_plugs_says_so() -> None:
    pages = sheet(without(made(FINCH), "runs", "connectors", "ladders", "functions", "duties"))
    assert "No plug is recorded: meter every wire before joining it." in pages[0]


@pytest.mark.parametrize(("columns", "together"), [(8, True), (10, True), (11, False), (26, False)])
def test_faces_stand_side_by_side_as_long_as_their_letters_can_be_read(columns: int, together: bool) -> None:
    facts = without(copy.deepcopy(made(FINCH)), "runs")
    drawn = facts["connectors"][0]["drawn"]
    drawn["faces"] = [
        {**face, "columns": columns, "cells": [], "least_width": columns * 44 + 2} for face in drawn["faces"]
    ]
    page = PdfReader(io.BytesIO(pdf.render(facts, {"wiring": URL}, "a4", DAY))).pages[0]
    lines = page.extract_text(extraction_mode="layout").replace("\u200b", "").splitlines()
    assert sum("As recorded" in line or "from the other side" in line for line in lines) == (1 if together else 2)


def test_a_record_is_text_and_never_code() -> None:
    facts = without(copy.deepcopy(made(FINCH)), "functions", "duties")
    plug = facts["connectors"][0]
    plug["pins"] = [{**pin, "note": words, "wire": []} for pin, words in zip(plug["pins"], HOSTILE, strict=False)]
    facts["runs"][0] |= {"note": HOSTILE[2], "passes": HOSTILE, "from": HOSTILE[0]}
    whole = bare("".join(sheet(facts)))
    assert all(whole.count(bare(words)) >= 2 for words in HOSTILE)
    assert "root:" not in whole


@each_vehicle
def test_the_sheet_has_a_glyph_for_everything(path: Path) -> None:
    assert "[U+" not in json.dumps(view(made(path)), ensure_ascii=False)


def test_the_page_leads_to_where_it_begins_behind_the_fitting() -> None:
    """By a named destination (RFC 8118, section 3), and on paper by the number of the page."""
    record = PLACE.load(FINCH).record
    assert isinstance(record, VehicleRecord)
    (link,) = beside.printing(record, made(FINCH), ("a4",)).downloads.wiring
    reader = PdfReader(io.BytesIO(pdf.render(made(FINCH), {"fitting": URL, "wiring": URL}, "a4", DAY)))
    name = link.href.partition("#nameddest=")[2]
    at = reader.get_destination_page_number(reader.named_destinations[name])
    pages = [bare(page.extract_text()) for page in reader.pages]
    assert at is not None
    first = [bare(f"{made(FINCH)['title']} {made(FINCH)['years']}: wiring") in page for page in pages].index(True)
    assert 0 < first == at
    assert bare(f"from page {at + 1} on") in pages[at - 1]
    assert (
        sum(page.count(bare("Where the facts come from")) for page in pages) == 2
    )  # and where the wiring says on which page


def test_pdf_ua() -> None:
    # ISO 14289-1: the identifier in the metadata, a tagged document, its language and its title shown.
    facts = made(FINCH)
    reader = PdfReader(io.BytesIO(pdf.render(facts, {"wiring": URL}, "a4", DAY)))
    catalogue: Any = reader.root_object
    assert "<pdfuaid:part>1</pdfuaid:part>" in catalogue["/Metadata"].get_object().get_data().decode()
    assert catalogue["/MarkInfo"]["/Marked"]
    assert catalogue["/Lang"] == "en"
    assert catalogue["/ViewerPreferences"]["/DisplayDocTitle"]
    assert reader.metadata is not None
    assert reader.metadata.title == f"{facts['title']} {facts['years']}: fitting and wiring"


def test_the_same_input_gives_the_same_bytes() -> None:
    facts = made(FINCH)
    first = pdf.render(facts, {"wiring": URL}, "a4", DAY)
    assert pdf.render(facts, {"wiring": URL}, "a4", DAY) == first
    assert pdf.render(facts, {"wiring": URL}, "a4", date(2026, 11, 26)) != first


def test_texts_of_typed_facts_are_made_printable_too() -> None:
    assert glyphs.printable({"rungs": [RungWords("\u4e2d", "5 ohm")]}) == {"rungs": [{"name": "[U+4E2D]", "band": "5 ohm"}]}  # fmt: skip
