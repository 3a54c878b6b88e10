"""What the sheets say: whose they are, what is unknown, and cautions."""

import pytest
from template_words import ADDRESS, said, small

from making import record
from undertrim.derive.fit.stock import Gear, Stocked
from undertrim.publish.printed import paper
from undertrim.publish.printed.paper import Template
from undertrim.publish.printed.paper.drawing import drawing
from undertrim.record.gear import Place
from undertrim.record.model import When
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening

DEFER = "The maker's information, local codes and licensed practice come first."


def test_every_sheet_says_what_it_belongs_to() -> None:
    # Long because what a sheet has to say stands in it, a sentence a line.
    about = record("""
        vehicle: {model_years: {first: 2014, last: 2017}}
        parts: {panel: {}}
        evidence:
          e1: {how: measured, on: 2026-02-16, by: mh, car: one, with: Calliper 0.05 mm}
          e2: {how: seen, on: 2026-03-18, by: jl}
        openings:
          corner: {behind: [panel], each: [left, right], hole: {shape: oval, width: 153 mm, height: 223 mm}, source: e1}
    """)
    corner = about.openings["corner"]
    assert isinstance(corner, SpeakerOpening)
    flange = corner.hole
    over = Stocked("skerrowe-y", SpeakerGear("Skerrowe", "Y", flange=flange))
    sheets = said(Template(ADDRESS, about, about.openings["corner"], over))
    assert len(sheets) == 2
    for number, page in enumerate(sheets, start=1):
        assert "Brindleway Otter 2014–2017" in page
        assert "Corner, left and right, with Skerrowe Y" in page
        assert f"sheet r{number}c1, page {number} of 2" in page
        assert "Invented: demonstration data" in page
        assert "Data date 2026-03-18, record brindleway/otter-2014-2018" in page
        assert "hole of the car, oval, 153 mm (6.02 in) wide × 223 mm (8.78 in) high [e1]" in page
        assert (
            "flange of Skerrowe Y, oval, 153 mm (6.02 in) wide × 223 mm (8.78 in) high [gear record skerrowe-y]" in page
        )
        assert "Sources: e1 measured 2026-02-16 by mh with Calliper 0.05 mm." in page
        assert "Print at 100 %, never “fit to page”" in page
        assert "measure this square both ways and the bar" in page
        assert "more than 0.5 mm, do not use the sheet" in page
        assert "Sheets overlap by 10 mm" in page
        assert DEFER in page


def test_one_sheet_has_no_words_on_joining() -> None:
    (page,) = said(small("hole: {shape: round, diameter: 146 mm}"))
    assert "page 1 of 1" in page
    assert "overlap" not in page
    assert "r1c1" not in page


def test_real_data_is_not_called_invented() -> None:
    asked = small("hole: {shape: round, diameter: 146 mm}", "demo: no\n")
    assert "Invented" not in said(asked)[0]


@pytest.mark.parametrize(
    ("sensor", "words"),
    [
        ("crash_sensor: yes,", "WARNING Crash pressure sensor behind this panel: no cutting, no drilling."),
        (
            "crash_sensor: unknown,",
            "sensor is behind this panel is unknown: no cutting, no drilling until it is answered",
        ),
        ("", "sensor is behind this panel is unknown: no cutting, no drilling until it is answered"),
        ("crash_sensor: no,", ""),
    ],
)
def test_a_door_that_may_hold_a_crash_sensor_is_for_offering_up_only(sensor: str, words: str) -> None:
    (page,) = said(small(f"{sensor} hole: {{shape: round, diameter: 146 mm}}"))
    assert words in page
    assert ("This sheet is for offering up only" in page) == bool(words)
    assert ("drilling" in page) == bool(words)


def test_a_shelf_without_a_word_on_sensors_has_no_caution() -> None:
    assert "WARNING" not in said(small("hole: {shape: round, diameter: 146 mm}", name="rear-shelf"))[0]


@pytest.mark.parametrize(
    ("high", "words"), [("yes", "DANGER High-voltage"), ("unknown", "WARNING Whether"), ("no", "")]
)
def test_high_voltage_follows_the_record(high: str, words: str) -> None:
    asked = small("crash_sensor: no, hole: {shape: round, diameter: 146 mm}", f"vehicle: {{high_voltage: {high}}}\n")
    (page,) = said(asked)
    assert words in page
    assert ("voltage" in page) == bool(words)


def test_what_is_not_recorded_is_said_and_not_drawn() -> None:
    bare = Stocked("pellworth-bare", SpeakerGear("Pellworth", "Bare"))
    asked = small("hole: {shape: round, diameter: 146 mm}", gear=bare)
    drawn, alone = drawing(asked), drawing(small("hole: {shape: round, diameter: 146 mm}"))
    assert drawn.shapes == alone.shapes
    (page,) = said(asked)
    for what in (
        "bolt holes of the car",
        "basket of Pellworth Bare",
        "flange of Pellworth Bare",
        "bolt holes of Pellworth",
    ):
        assert f"Not recorded, not drawn: {what}" in page
    assert "[no source recorded]" in page


@pytest.mark.parametrize(
    ("bolts", "words", "marks"),
    [
        ("pattern: circle, count: 4, diameter: 160 mm", "the angle of the bolt holes of the car (at 45 degrees)", 4),
        ("pattern: circle, count: 3, diameter: 160 mm", "bolt holes of the car (evenly, the first at the top)", 3),
        ("pattern: rectangle, count: 4, width: 90 mm, height: 80 mm", "", 4),
        ("pattern: rectangle, count: 6, width: 90 mm, height: 80 mm", "Where the other 2 sit is not recorded", 4),
        ("pattern: rectangle, count: 2, width: 90 mm, height: 80 mm", "At which corners the 2 sit is not recorded", 0),
    ],
)
def test_places_of_bolt_holes_that_the_record_does_not_give(bolts: str, words: str, marks: int) -> None:
    asked = small(f"hole: {{shape: round, diameter: 146 mm}}, bolts: {{{bolts}}}")
    assert (
        sum(shape.bounds.width == pytest.approx(4) for shape in drawing(asked).shapes if hasattr(shape, "radius"))
        == marks
    )
    (page,) = said(asked)
    assert words in page
    assert ("Assumed, not in the record" in page) == ("circle" in bolts)


def test_bolt_holes_are_spoken_of_where_some_are_marked() -> None:
    about = record(
        "parts: {panel: {}}\n", "openings: {dash: {behind: [panel], face: {width: 182 mm, height: 53 mm}}}\n"
    )
    (dash,) = said(Template(ADDRESS, about, about.openings["dash"]))
    (door,) = said(
        small("hole: {shape: round, diameter: 130 mm}, bolts: {pattern: circle, count: 3, diameter: 150 mm}")
    )
    assert ["bolt holes" in page for page in (dash, door)] == [False, True]


def test_an_opening_without_an_outline_is_refused_with_the_way_out() -> None:
    about = record("""
        parts: {panel: {}}
        openings:
          dash: {behind: [panel], face: {width: 182 mm, height: unknown}}
    """)
    with pytest.raises(paper.NotRecorded, match="'Dash' is not recorded: measure it and write 'face' with its width"):
        paper.render(Template(ADDRESS, about, about.openings["dash"]))


def test_an_unsettled_conflict_about_what_is_drawn_is_shown() -> None:
    asked = small(
        "source: e1, hole: {shape: round, diameter: 146 mm}",
        "evidence:\n  e1: {how: measured, on: 2026-03-01, by: ab, car: one}\n  e2: {how: seen, on: 2026-03-02, by: cd}\n",
        "conflicts: {c1: {about: openings/front-door/hole/diameter, "
        "claims: [{says: 146 mm, source: e1}, {says: 144 mm, source: e2}]}}\n",
    )
    (page,) = said(asked)
    assert "CONFLICT" in page
    assert "146 mm (5.75 in) (e1) or 144 mm (5.67 in) (e2)" in page
    assert "Drawn: 146 mm (5.75 in)" in page


def spacer(*suits: Place) -> Gear:
    return Stocked("pellworth-x", SpacerGear("Pellworth", "X", suits=suits))


@pytest.mark.parametrize(
    ("suits", "words"),
    [
        ((), ""),
        ((Place(ADDRESS, "front-door"),), ""),
        ((Place(ADDRESS, "rear-door"),), "Pellworth X is made for another opening"),
        ((Place(ADDRESS, "front-door", When((("radio", ("map",)),))),), "only in cars with: Map radio."),
    ],
)
def test_gear_made_for_another_opening_or_car(suits: tuple[Place, ...], words: str) -> None:
    radio = "variants: {radio: {ask: Which, choices: {map: {label: Map radio}, plain: {label: Plain radio}}}}\n"
    (page,) = said(small("hole: {shape: round, diameter: 146 mm}", radio, gear=spacer(*suits)))
    assert words in page
    assert ("made for" in page) == bool(words)


def test_an_opening_of_some_cars_says_of_which() -> None:
    radio = "variants: {radio: {ask: Which, choices: {map: {label: Map radio}, plain: {label: Plain radio}}}}\n"
    (page,) = said(small("when: {radio: map}, hole: {shape: round, diameter: 146 mm}", radio))
    assert "Only in cars with: Map radio." in page
