"""The stamp goes to the end of a record, and everything before it stays to the byte."""

import textwrap
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from undertrim.record import unseen_signs
from undertrim.record.source import read_text
from undertrim.record.stamping import CannotStamp, stamped
from undertrim.resources import top

PATH = Path("x.yaml")
RECORDS = sorted((top("records") / "vehicles").rglob("*.yaml"))


def unstamped(path: Path) -> str:
    """A record's text without the stamp it may end in."""
    return path.read_text(encoding="utf-8").partition("\nverified:")[0].rstrip("\n") + "\n"


FACTS = {"vehicle": "0e490655", "parts/vent-trim": "12345678", "openings/dash": "1e234567"}
BLOCK = """verified:
  on: 2026-04-02
  by: rk
  car: 2016, left-hand drive
  facts:
    vehicle: "0e490655"
    parts/vent-trim: "12345678"
    openings/dash: "1e234567"
"""
ODD = """# Whose is this?
format:   1     # aligned   by hand
vehicle: {make:  Brindleway,   model: "Otter" , tell: 'It''s round'}


parts:
    vent-trim:
        held_by:
        - {clip: push}
        -   clip: metal
        how: >-
          Folded
          text.   \n
        source: e1   # last
"""


def stamp(text: str, car: str = "2016, left-hand drive", by: str = "rk") -> str:
    return stamped(read_text(text, PATH), "2026-04-02", by, car, FACTS)


@pytest.mark.parametrize("text", [ODD, *(unstamped(path) for path in RECORDS)])
def test_everything_before_the_block_stays_and_the_block_is_at_the_end(text: str) -> None:
    assert stamp(text) == f"{text}\n{BLOCK}"


@pytest.mark.parametrize("text", [ODD, RECORDS[0].read_text(encoding="utf-8")])
def test_a_new_stamp_takes_the_place_of_the_old_one(text: str) -> None:
    old = stamped(read_text(text, PATH), "2020-01-01", "zz", "another car: 2", {"vehicle": "ffffffff"})
    assert old != stamp(text)
    assert stamp(old) == stamp(text)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("format: 1\n", "format: 1\n\n"),
        ("format: 1", "format: 1\n\n"),
        ("format: 1\n\n\n", "format: 1\n\n\n"),
        ("format: 1\n# the end\n", "format: 1\n# the end\n\n"),
        ("verified: {on: x}\nformat: 1\n", "format: 1\n\n"),
        ("format: 1\nverified:\n  on: x\n# about demo\ndemo: yes\n", "format: 1\n# about demo\ndemo: yes\n\n"),
        ("format: 1\nverified:\n  on: x  # within\n\n# the end\n", "format: 1\n\n# the end\n\n"),
        ("format: 1\nverified:\n  # within\n  on: x\n", "format: 1\n\n"),
        ("---\nformat: 1\n", "---\nformat: 1\n\n"),
    ],
)
def test_where_the_block_goes(before: str, after: str) -> None:
    assert stamp(before) == after + BLOCK


def test_line_ends_stay_as_they_are() -> None:
    assert stamp("format: 1\r\ndemo: yes\r\n") == f"format: 1\r\ndemo: yes\r\n\r\n{BLOCK}".replace(
        "\r\n", "\n"
    ).replace("\n", "\r\n")


def test_a_record_that_is_set_in_gets_a_block_that_is_set_in() -> None:
    assert stamp("  format: 1\n  demo: yes\n") == "  format: 1\n  demo: yes\n\n" + textwrap.indent(BLOCK, "  ")


@pytest.mark.parametrize("text", ["{format: 1, demo: yes}\n", "format: 1\n...\n", "{verified: x, format: 1}\n"])
def test_a_layout_that_takes_no_block_is_refused(text: str) -> None:
    with pytest.raises(CannotStamp, match="no block can be added"):
        stamp(text)


@settings(deadline=None)
@example("null", "rk")
@example("\u034f", "rk")  # printable to Python, and seen by nobody
@given(st.text(min_size=1).filter(lambda text: "\r" not in text), st.sampled_from(["rk", "yes", "#", "1"]))
def test_whatever_is_typed_is_read_back(car: str, by: str) -> None:
    try:
        text = stamp("format: 1\n", car, by)
    except CannotStamp:  # a sign that no record may hold
        assert not car.isprintable() or any(map(unseen_signs.refused, car))
        return
    again = read_text(text, PATH).data
    assert isinstance(again, dict)
    assert again["verified"] == {"on": "2026-04-02", "by": by, "car": car, "facts": FACTS}


@pytest.mark.parametrize("version", ["1.1", "1.2"])
@pytest.mark.parametrize(
    "said", ["1e999999", "0e490655", "12345678", "00012345", "2016", "no", "On", "y", "0x1f", "1_000", "12:30"]
)
def test_any_reader_of_yaml_takes_every_word_of_the_stamp_for_text(version: str, said: str) -> None:
    """Read by ruamel.yaml's own loader, which resolves scalars as YAML 1.1 or 1.2 does."""
    from ruamel.yaml import YAML

    source = read_text("format: 1\n", PATH)
    text = stamped(source, "2026-04-02", said, said, {"vehicle": said})
    loader = YAML(typ="safe", pure=True)
    loader.version = version
    stamp = loader.load(text.replace("  on:", "  'on':"))["verified"]
    assert (stamp["by"], stamp["car"], stamp["facts"]) == (said, said, {"vehicle": said})


def test_fingerprints_are_read_with_and_without_quotes() -> None:
    assert read_text('a: {b: "1e234567"}\n', PATH).data == read_text("a: {b: 1e234567}\n", PATH).data


@pytest.mark.parametrize("path", RECORDS, ids=[path.stem for path in RECORDS])
def test_shipped_stamps_hold_their_fingerprints_in_quotes(path: Path) -> None:
    source = read_text(path.read_text(encoding="utf-8"), path)
    facts = {place for place in source.values if place[:2] == ("verified", "facts") and len(place) > 2}
    assert facts <= source.quoted
