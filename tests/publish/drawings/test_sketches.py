"""Drawings of how something is measured: each can be read, each field that names one finds it, and pages lead to them."""

import re
from dataclasses import fields
from typing import Any, get_args

import pytest

from svg_reading import assert_sound, texts
from undertrim.publish.pictures.drawings import measuring
from undertrim.publish.web import measuring as page
from undertrim.record.measuring import drawing_of, names
from undertrim.record.model import Opening
from undertrim.record.model.kinds import GearFacts
from undertrim.resources import table


@pytest.mark.parametrize("width", [240, 280, 360])
@pytest.mark.parametrize("name", measuring.SCENES)
def test_each_can_be_read(name: str, width: int) -> None:
    assert_sound(measuring.drawing(name, width))


def test_a_phone_of_320_shows_letters_of_11_px_at_least() -> None:
    drawn = measuring.drawing("depth")
    (width,) = re.findall(r'viewBox="0 0 (\d+) ', drawn)
    assert 12 * (320 - 2 * 16 - 4) / float(width) >= 11
    assert len(texts(drawn)) > 8


def test_the_table_names_every_drawing_and_no_other() -> None:
    assert set(measuring.SCENES) == names()


def _fields(kinds: Any, kind: str) -> set[str]:
    (found,) = (one for one in get_args(kinds) if one.kind == kind)
    return {one.name for one in fields(found)}


def test_what_the_table_speaks_of_are_fields() -> None:
    for what, kinds in (("opening", Opening), ("gear", GearFacts)):
        for kind, drawn in table("measuring")[what].items():
            assert drawn.keys() - {"over"} <= _fields(kinds, kind), (what, kind)


def test_a_dimension_leads_to_its_drawing() -> None:
    assert drawing_of("opening", "receiver", "face/width") == "radio-opening"
    assert drawing_of("opening", "receiver", "kit") == ""
    assert drawing_of("gear", "speaker", "depth") == "speaker-gear"


def test_the_page_has_a_place_for_each() -> None:
    assert set(re.findall(r'<section id="([a-z-]+)"', page.page())) == set(measuring.SCENES)


def test_the_handbook_shows_a_drawing_by_its_name() -> None:
    shown = page.with_drawings('<p>Text</p><p><img alt="A rod &amp; an edge" src="drawing:depth" /></p>')
    assert shown.startswith('<p>Text</p><figure class="ut-sketch"><figcaption>A rod &amp; an edge</figcaption><svg ')
    assert page.with_drawings('<img alt="Other" src="drawing:no-such" />') == "Other"
