"""What is drawn of an opening agrees with what is reckoned of it, and says what it cannot show. Numbers derived by hand stand beside their case."""

# Long because the door, the gear and the dispute that its pictures are drawn of stand in it whole.

from pathlib import Path
from typing import Any

import pytest

from making import record
from svg_reading import assert_sound, described, length, parsed, part
from undertrim.check.shelf import stock
from undertrim.derive.fit import disputed
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Gear, Stock, Stocked, only
from undertrim.publish.encoding import said
from undertrim.publish.facts import drawn, measures
from undertrim.publish.facts.kinds.receiver import drawn as receiver_drawn
from undertrim.publish.facts.kinds.speaker import drawn as speaker_drawn
from undertrim.publish.pictures import openings as opening_pictures
from undertrim.publish.pictures.drawings import dash, section
from undertrim.record import build
from undertrim.record.gear import GearFacts
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear, ReceiverOpening
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]
PLACE = Workspace(ROOT)
STOCK = stock(PLACE)

SPEAKER = {
    "kind": "speaker",
    "maker": "Skerrowe",
    "model": "Shoal",
    "basket": {"shape": "round", "diameter": "127 mm"},
    "flange": {"shape": "round", "diameter": "165 mm"},
    "bolts": {"pattern": "circle", "count": "4", "diameter": "156 mm"},
    "depth": "58 mm",
    "magnet": "90 mm",
    "protrusion": "10 mm",
    "gasket": "none",
    "impedance": "4 ohm",
}
DISPUTE = """
evidence:
  e1: {how: measured, on: 2026-03-02, by: rk, car: one}
  e2: {how: measured, on: 2026-03-03, by: tw, car: other}
conflicts:
  depth:
    about: openings/front-door/depth/clear
    claims: [{says: 62 mm, source: e1}, {says: 60 mm, source: e2}]
"""
RECEIVER = {
    "kind": "receiver",
    "maker": "Skerrowe",
    "model": "Cleft",
    "body": {"width": "180 mm", "height": "50 mm"},
    "chassis_depth": "100 mm",
    "outputs": ["speaker"],
    "needs": [],
}


def gear(base: dict[str, Any], **changed: Any) -> Gear:
    facts = build.section("gear", {**base, **changed})
    assert isinstance(facts, GearFacts)
    return Stocked(f"{facts.maker}-{facts.model}".lower(), facts)


def door(**changed: str) -> VehicleRecord:
    facts = {
        "kind": "speaker",
        "behind": "[radio]",
        "hole": "{shape: round, diameter: 130 mm}",
        "bolts": "{pattern: circle, count: 4, diameter: 156 mm}",
        "depth": "{clear: 62 mm, datum: skin, over: whole-travel, to: Window glass, leans: none}",
        "panel": "{width: 300 mm, height: 300 mm}",
        "channel": "front",
        "room_to_grille": "20 mm",
        "factory_spacer": "none",
    }
    lines = "".join(f"    {key}: {value}\n" for key, value in {**facts, **changed}.items() if value)
    return record(
        f"sound: {{only: {{output: speaker, least_load: 4 ohm}}}}\nparts:\n  radio:\nopenings:\n  front-door:\n{lines}"
    )


def vehicle(made: VehicleRecord, *shelf: Gear) -> Vehicle:
    return Vehicle(made, "brindleway/otter-2014-2018", Stock(shelf), clearances())


def pictures(made: VehicleRecord, *shelf: Gear) -> dict[str, str]:
    """What a page shows of the first opening: the drawings by title."""
    about, opening = vehicle(made, *shelf), next(iter(made.openings.values()))
    return dict(opening_pictures.openings(said(drawn.drawn(about, opening, answer(about, opening, None, {})))))


def one(title: str, made: VehicleRecord, *shelf: Gear) -> str:
    (found,) = (svg for name, svg in pictures(made, *shelf).items() if title in name)
    assert_sound(found)
    return found


@pytest.mark.parametrize("path", PLACE.files([PLACE.records / "vehicles"]), ids=lambda path: path.stem)
def test_every_gap_is_drawn_as_long_as_it_is_reckoned(path: Path) -> None:
    """Over the whole stock: the gap between gear and car comes out of the drawing's own geometry, the other out of `derive.fit`."""
    # Long because it is one walk over the stock, and each kind of opening has its drawing and its gaps.
    entry = PLACE.load(path)
    assert isinstance(entry.record, VehicleRecord)
    about, compared = Vehicle(entry.record, entry.address, STOCK, clearances()), 0
    shelf = {item.id: item for item in STOCK.items}
    for opening in entry.record.openings.values():
        reckoned, _ = disputed.cautious(entry.record, opening)
        for fit in (fit for found in answer(about, opening, None, {}) for fit in found.fits):
            checks = {check.name: check for check in fit.checks}
            between = shelf.get(fit.way.between)
            if isinstance(reckoned, ReceiverOpening):
                kit = only(between, KitGear) if between else None
                receiver = only(shelf[fit.gear], ReceiverGear)
                shown = dash.opening(receiver_drawn.dash(about.usual, reckoned, fit, receiver, kit))
                wanted = {"margin": checks["depth"].margin}
            elif isinstance(reckoned, SpeakerOpening):
                spacer = only(between, SpacerGear) if between else None
                shown = section.door(speaker_drawn.section(reckoned, fit, only(shelf[fit.gear], SpeakerGear), spacer))
                wanted = {
                    name: checks[check].gap
                    for name, check in (("behind", "depth"), ("front", "grille"))
                    if check in checks
                }
            else:
                continue  # a kind whose drawings dimension no gap
            clear = measures.measure(reckoned.depth.clear if reckoned.depth else None).mm
            for name, gap in wanted.items():
                if clear and gap is not None and part(shown, f"dimension {name}"):
                    unit = length(shown, "clear") / clear
                    assert length(shown, name) == pytest.approx(abs(gap) * unit, abs=0.05), (opening.id, fit.name, name)
                    compared += 1
    assert compared > 20


def test_a_gap_is_named_with_what_is_kept_of_it_free() -> None:
    """62 - 54 = 8 mm behind, of which 5 mm to the glass are wanted (usual.toml); 20 - 10 = 10 in front, less 3."""
    said = described(one("section", door(), gear(SPEAKER, depth="54 mm")))
    assert "behind, fits: 8 mm (0.315 in) free, 3 mm (0.118 in) to spare" in said
    assert "in front, fits: 10 mm (0.39 in) free, 7 mm (0.276 in) to spare" in said


def test_a_speaker_that_nothing_helps_is_drawn_where_it_strikes() -> None:
    """62 - 65 = 3 mm too much, with 5 mm to the glass 8 short; 12 - 10 in front leave 2, 1 mm less than the 3 that are wanted."""
    shown = one("section", door(room_to_grille="12 mm"), gear(SPEAKER, depth="65 mm"))
    assert "behind, strikes: 3 mm (0.118 in) too much, 8 mm (0.315 in) short" in described(shown)
    assert "in front, too close: 2 mm (0.079 in) free, 1 mm (0.039 in) short" in described(shown)
    assert len(part(shown, "strike")) == 1  # in front nothing touches


def test_a_receiver_with_the_usual_room_for_plugs_has_that_room_drawn_and_the_rest_named() -> None:
    """170 - 100 - 30 mm of usual plug room (usual.toml) leave 40 mm, which is the length that is drawn."""
    made = record("""
        parts:
          radio:
        openings:
          dash:
            kit: not-needed
            face: {width: 182 mm, height: 53 mm}
            depth: {clear: 170 mm, datum: face}
            behind: [radio]
        """)
    shown = one("with", made, gear(RECEIVER))
    assert "behind, fits, 40 mm (1.57 in) to spare" in described(shown)
    assert "free" not in described(shown)
    assert length(shown, "margin") / length(shown, "clear") == pytest.approx(40 / 170, abs=0.001)
    assert "(usual)" in described(shown)


def test_a_depth_that_is_not_from_the_front_of_the_dash_is_not_drawn_from_there() -> None:
    made = record("""
        parts:
          radio:
        openings:
          dash:
            kit: not-needed
            face: {width: 182 mm, height: 53 mm}
            depth: {clear: 170 mm, datum: bracket}
            behind: [radio]
        """)
    shown = one("with", made, gear(RECEIVER))
    assert part(shown, "behind") == part(shown, "dimension clear") == []
    assert "behind, unknown, cannot be told" in described(shown)


@pytest.mark.parametrize(("area", "name"), [("front-door", "door skin"), ("pillar", "mounting face")])
def test_only_a_door_has_a_door_skin_and_an_outside(area: str, name: str) -> None:
    said = described(one("section", door(area=area), gear(SPEAKER)))
    assert name in said
    assert ("outside at the right" in said) == (area == "front-door")


def test_what_the_evidence_disagrees_on_is_drawn_by_its_cautious_value() -> None:
    """62 mm are recorded and 60 mm were measured too: less is safe (data/cautious.toml). Of 60 mm, 54 leave 6, 5 of which are kept to the glass."""
    made = record(f"""
parts:
  radio:
openings:
  front-door: {{kind: speaker, behind: [radio], hole: {{shape: round, diameter: 130 mm}}, depth: {{clear: 62 mm, datum: skin, over: whole-travel, to: Window glass, leans: none}}, room_to_grille: 20 mm, factory_spacer: none}}
{DISPUTE}""")
    said = described(one("section", made, gear(SPEAKER, depth="54 mm")))
    assert "clear depth 60 mm" in said
    assert "6 mm (0.236 in) free, 1 mm (0.039 in) to spare" in said


def test_a_lean_that_is_not_known_is_not_drawn_as_upright() -> None:
    made = door(depth="{clear: 70 mm, datum: skin, over: whole-travel, to: Window glass, leans: unknown}")
    shown = one("section", made, gear(SPEAKER))
    assert "lean of the Window glass: unknown; only its place at the axis is drawn" in described(shown)
    assert part(shown, "dimension behind") == []
    assert "behind, unknown: cannot be told" in described(shown)


@pytest.mark.parametrize("height", ["", "unknown"])
def test_the_skin_behind_a_bracket_of_unknown_height_is_not_drawn(height: str) -> None:
    shown = one("section", door(depth="{clear: 62 mm, datum: bracket}", factory_spacer=height), gear(SPEAKER))
    assert part(shown, "skin") == part(shown, "bracket") == []
    assert part(shown, "datum")
    assert "height of the factory bracket:" in described(shown)
    assert part(shown, "flange")  # it sits on the face that was measured from


def test_without_a_bracket_the_face_measured_from_is_the_skin() -> None:
    shown = one("section", door(depth="{clear: 62 mm, datum: bracket}", factory_spacer="none"), gear(SPEAKER))
    assert part(shown, "skin")
    assert "height of the factory bracket" not in described(shown)


def test_a_turned_speaker_is_cut_along_its_other_side() -> None:
    """An upright oval in a lying hole: turned, 237 mm of flange lie in the level cut of the 223 mm hole, not 166."""
    held = {
        "basket": {"shape": "oval", "width": "150 mm", "height": "220 mm"},
        "flange": {"shape": "oval", "width": "166 mm", "height": "237 mm"},
        "bolts": {"pattern": "rectangle", "count": "4", "width": "110 mm", "height": "165 mm"},
        "depth": "40 mm",
        "magnet": "90 mm",
    }
    made = door(
        hole="{shape: oval, width: 223 mm, height: 153 mm}",
        bolts="{pattern: rectangle, count: 4, width: 165 mm, height: 110 mm}",
    )
    about, opening = vehicle(made, gear(SPEAKER, **held)), made.openings["front-door"]
    found = said(drawn.drawn(about, opening, answer(about, opening, None, {})))
    assert found["front"]["turned"]
    assert [found["front"]["hole"][side]["mm"] for side in ("width", "height")] == [223, 153]
    assert [found["front"]["gear_bolts"][side]["mm"] for side in ("width", "height")] == [110, 165]
    speaker = found["section"]["speaker"]
    assert (speaker["flange"]["mm"], speaker["basket"]["mm"], speaker["magnet"]["mm"]) == (237, 220, 90)
    assert "turned by 90 degrees" in described(one("front", made, gear(SPEAKER, **held)))


def test_what_would_have_to_be_got_is_said_below_each_picture() -> None:
    """60 mm of depth in 62 want a spacer of at least 3 mm (5 mm to the glass); 20 - 10 - 3 mm in front allow 7."""
    deep = gear(SPEAKER, depth="60 mm")
    for title in ("section", "front"):
        said = described(one(title, door(), deep))
        assert "Drawn without what would have to be got: a spacer 3 mm (0.118 in) to 7 mm (0.276 in) high" in said


def test_a_plate_from_stock_lies_under_the_speaker_and_is_named_from_the_front() -> None:
    """On 5 mm: 62 + 5 - 60 - 5 = 2 mm to spare behind, 20 - 5 - 10 - 3 = 2 in front."""
    ring = gear(
        {"kind": "spacer", "maker": "Tidewrack", "model": "Ledge"},
        thickness="5 mm",
        hole={"shape": "round", "diameter": "132 mm"},
        bolts={"pattern": "circle", "count": "4", "diameter": "156 mm"},
        flange={"shape": "round", "diameter": "172 mm"},
    )
    deep = gear(SPEAKER, depth="60 mm")
    shown = one("section", door(), deep, ring)
    assert length(shown, "spacer") / length(shown, "clear") == pytest.approx(5 / 62, abs=0.001)
    assert "Tidewrack Ledge: 5 mm (0.197 in)" in described(shown)
    assert "behind, fits: 7 mm (0.276 in) free, 2 mm (0.079 in) to spare" in described(shown)
    assert "It goes on Tidewrack Ledge, which is not drawn." in described(one("front", door(), deep, ring))


def test_an_opening_without_gear_shows_its_own_dimensions() -> None:
    found = pictures(door())
    assert list(found) == ["Front door in section", "Front door from the front"]
    for shown in found.values():
        assert_sound(shown)
        assert "Shoal" not in shown


def test_what_is_not_measured_has_no_picture() -> None:
    assert list(pictures(door(depth="{clear: unknown, datum: skin}"))) == ["Front door from the front"]


def test_names_of_gear_cannot_break_out() -> None:
    nasty = gear(SPEAKER, model='"><script>x</script>')
    for shown in pictures(door(), nasty).values():
        assert "<script" not in shown
        assert parsed(shown) is not None
