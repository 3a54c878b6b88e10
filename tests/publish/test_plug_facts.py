"""A plug as data: both faces, other maps in words, the standard beside what is recorded. Worked by hand."""

import json
import re
from typing import Any

import pytest

from making import record
from undertrim.publish.encoding import said
from undertrim.publish.facts.pin_colours import colour
from undertrim.publish.facts.plugs import plug
from undertrim.publish.pictures import plugs as plug_pictures
from undertrim.record.model import Connector, VehicleRecord

RECORD = """
    variants:
      half:
        ask: When was it built?
        choices:
          early: {label: Before May 2016, built: {from: 2014-01, to: 2016-05}}
          late: {label: From May 2016, tell: The plate says 05/16 or later, built: {from: 2016-05, to: 2018-01}}
    parts:
      radio: {tethers: {main: {name: Main plug, kind: plug}, power: {name: Power plug, kind: plug}}}
    openings: {dash: {behind: [radio]}}
    connectors:
      early:
        name: Main plug
        at: radio/main
        view: wires
        rows: 1
        columns: 4
        latch: left
        numbering: rows
        when: {half: early}
        blanks: ["3"]
        pins:
          1: {colour: red/white, function: battery-feed}
          2: {colour: GR, function: mute, when: {half: early}}
      late:
        name: Main plug, later cars
        at: radio/main
        view: wires
        rows: 1
        columns: 4
        when: {half: late}
        scheme: scandinavian
        pins:
          1: {colour: W-R, function: ground}
          3: {colour: GR, function: speed}
          4: {function: mute}
      power:
        name: Power plug
        at: radio/power
        view: contacts
        rows: 2
        columns: 4
        standard: iso-10487-a
        pins:
          A4: {colour: red, function: switched-feed, metered: yes}
          A7: {colour: yellow, function: battery-feed}
          A8: {colour: brown, function: ground}
      wrong:
        name: Wrong plug
        view: wires
        rows: 1
        columns: 2
        numbering: rows
        pins: {3: {function: ground}}
"""


def plain(about: VehicleRecord, item: Connector) -> dict[str, Any]:
    return dict(said(plug(about, item)))


@pytest.fixture(scope="module")
def about() -> VehicleRecord:
    return record(RECORD)


@pytest.fixture(scope="module")
def plugs(about: VehicleRecord) -> dict[str, dict[str, Any]]:
    return {item.id: plain(about, item) for item in about.connectors.values()}


def test_it_is_plain_data(plugs: dict[str, dict[str, Any]]) -> None:
    assert json.loads(json.dumps(plugs)) == plugs


def test_both_faces_with_every_position_in_words(plugs: dict[str, dict[str, Any]]) -> None:
    wires, contacts = plugs["early"]["faces"]
    assert (wires["words"], contacts["words"]) == ("looking at the wires", "looking at the contacts")
    assert (wires["recorded"], contacts["recorded"]) == (True, False)
    assert (wires["latch"], contacts["latch"]) == ("left", "right")
    said = [cell["words"] for cell in wires["cells"]]
    assert said == [
        "Pin 1: battery feed, red with white tracer",
        "Pin 2: mute, GR, only in: Before May 2016",
        "Position 3: looked at, empty",
        "Position 4: not recorded",
    ]
    assert [cell["words"] for cell in contacts["cells"]] == said[::-1]
    assert [cell["link"] for cell in wires["cells"]] == ["#pin-early-1", "#pin-early-2", "", ""]
    assert [cell["mark"] for cell in wires["cells"]] == ["BAT+", "MUTE", "", ""]
    assert wires["cells"][1]["clauses"] == {"half": ["early"]}
    assert plugs["early"]["legend"] == [
        "crossed out: looked at, empty",
        "question mark: not recorded",
        "dashed frame: not in every car",
        "question mark in place of the wire: colour not recorded",
    ]


def test_a_face_is_drawn_from_its_facts(plugs: dict[str, dict[str, Any]]) -> None:
    drawn = plug_pictures.face(plugs["early"]["faces"][1])
    assert 'aria-label="Main plug, looking at the contacts"' in drawn
    for cell in plugs["early"]["faces"][1]["cells"]:
        assert re.search(rf'aria-label="([^"]+, )?{re.escape(cell["words"])}"', drawn)
    assert 'href="#pin-early-2"' in drawn
    assert drawn.count("stroke-dasharray") == 2  # the contact of some cars, and its wire of no known colour


def test_the_legend_has_only_the_signs_of_the_drawing() -> None:
    small = record(
        """
        parts: {radio: {}}
        openings: {dash: {behind: [radio]}}
        connectors:
          small: {name: Small, view: wires, rows: 1, columns: 1, numbering: rows, pins: {1: {colour: red, function: mute}}}
        """
    )
    assert plain(small, small.connectors["small"])["legend"] == []


@pytest.mark.parametrize(
    ("name", "words", "lost"),
    [
        ("early", "", []),
        (
            "late",
            "The positions in this plug are not recorded: go by the numbers on the plug itself, and meter.",
            ["1", "3", "4"],
        ),
        (
            "power",
            "The positions in this plug are not recorded: go by the numbers on the plug itself, and meter.",
            ["A4", "A7", "A8"],
        ),
        ("wrong", "The recorded positions contradict each other, so the plug is not drawn: 3.", []),
    ],
)
def test_a_plug_that_is_not_drawn_says_why(
    plugs: dict[str, dict[str, Any]], name: str, words: str, lost: list[str]
) -> None:
    assert plugs[name]["no_face"] == words
    assert plugs[name]["lost"] == lost
    assert bool(plugs[name]["faces"]) == (not words)


def test_the_other_map_in_words(plugs: dict[str, dict[str, Any]]) -> None:
    (other,) = plugs["early"]["maps"]
    assert (other["id"], other["when"], other["warning"]) == ("late", "From May 2016", "")
    assert [item["words"] for item in other["differences"]] == [
        "Pin 1: battery feed here, ground there; red with white tracer here, white with red tracer there",
        "Pin 2: mute here, not recorded there",
        "Pin 3: empty here, speed there",
        "Pin 4: not recorded here, mute there",
    ]
    assert other["told_by"] == [
        {
            "ask": "When was it built?",
            "choices": [
                {
                    "label": "From May 2016",
                    "tell": "The plate says 05/16 or later",
                    "built": "built from 2016-05 until before 2018-01",
                }
            ],
        }
    ]
    assert plugs["early"]["told_by"][0]["choices"][0]["label"] == "Before May 2016"
    assert plugs["power"]["maps"] == plugs["power"]["told_by"] == []


def test_two_maps_for_one_car_are_warned_of() -> None:
    found = record(RECORD.replace("when: {half: late}\n        scheme", "scheme"))
    (other,) = plain(found, found.connectors["early"])["maps"]
    assert other["warning"] == "Some car would have both maps: the record does not say which of them is for it."


def test_colours_are_read_in_the_scheme_of_the_plug(about: VehicleRecord, plugs: dict[str, dict[str, Any]]) -> None:
    assert plugs["late"]["scheme"] == "Scandinavian letters"
    assert plugs["early"]["scheme"] == ""
    drawn = record(RECORD.replace("scheme: scandinavian", "scheme: scandinavian\n        numbering: rows"))
    cells = plain(drawn, drawn.connectors["late"])["faces"][0]["cells"]
    assert [cell["words"] for cell in cells[::2]] == ["Pin 1: ground, white with red tracer", "Pin 3: speed, grey"]
    assert cells[2]["colour"]["iec"] == "GY"
    assert cells[3]["words"] == "Pin 4: mute, colour not recorded"


def test_the_standard_beside_what_is_recorded(plugs: dict[str, dict[str, Any]]) -> None:
    found = plugs["power"]["standard"]
    assert found["title"] == "ISO 10487 block A"
    assert found["exchanged"] == ["A4", "A7"]
    assert found["unproven"] == ["A7"]
    rows = {row["pin"]: (row["expected"], row["recorded"], row["agrees"]) for row in found["pins"]}
    assert rows["A3"] == ("left free", "", "unknown")
    assert rows["A4"] == ("battery feed", "switched feed", "no")
    assert rows["A8"] == ("ground", "ground", "yes")
    assert len(rows) == 8
    assert plugs["early"]["standard"] is None


def test_a_colour_as_data() -> None:
    assert colour("") is None
    read = colour("white/red")
    assert read
    assert (said(read.words), read.iec, read.iec_sorted) == ("white with red tracer", "WH/RD", "RDWH")
    assert (read.doubt, read.may_be) == ("", ())
    open_code = said(colour("BL"))
    assert open_code
    assert (open_code["words"], open_code["base"], open_code["may_be"]) == ("BL", None, ["blue", "black"])
    earth = said(colour("GNYE"))
    assert earth
    assert earth["doubt"].startswith("green-and-yellow as one colour marks protective earth")
