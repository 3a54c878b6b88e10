"""What is drawn of an opening, as data: its dimensions, and the piece of stock that fits it best with what goes between."""

from dataclasses import asdict
from typing import Any

from undertrim.derive.fit import disputed
from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.derive.fit.margins import Check, both
from undertrim.derive.fit.receiver import plug_room
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.drawings.axis import Datum, Margin, Section, Speaker, Verdict
from undertrim.publish.drawings.dash import Dash, Frame
from undertrim.publish.drawings.dimensions import UNKNOWN, Measure
from undertrim.publish.drawings.front import Front, Outline, Pattern
from undertrim.publish.facts import words
from undertrim.record.model import Blank, Bolts, Depth, Face, Hole, Opening
from undertrim.record.units import Quantity

Data = dict[str, Any]

_FACES: dict[str, tuple[Datum, str]] = {
    "skin": ("skin", "mounting face"),
    "bracket": ("bracket", "face of the factory bracket"),
}
_VERDICTS: dict[str, Verdict] = {"fits": "fits", "marginal": "close", "fails": "strikes", "unknown": "unknown"}


def drawn(vehicle: Vehicle, opening: Opening, answers: list[Answer]) -> Data:
    """The inputs of the drawings by their name, with the gear in them; empty where nothing of the opening is measured."""
    reckoned, _ = disputed.cautious(vehicle.record, opening)
    fit = next((answer.fits[0] for answer in answers if answer.there and answer.fits), None)
    gear = {item.id: item for item in vehicle.stock.items}
    shown = gear[fit.gear] if fit else None
    between = gear.get(fit.way.between) if fit else None
    if opening.kind == "receiver":
        return {"dash": asdict(dash(vehicle, reckoned, fit, shown, between))} if opening.face else {}
    made: Data = {}
    if reckoned.hole:
        made["front"] = asdict(front(reckoned, fit, shown))
    if reckoned.depth and isinstance(reckoned.depth.clear, Quantity):
        made["section"] = asdict(section(reckoned, fit, shown, between))
    return made


def section(opening: Opening, fit: Fit | None, gear: Gear | None, between: Gear | None) -> Section:
    """The opening cut along its axis."""
    depth = opening.depth or Depth(Blank.UNKNOWN)
    datum, name = _FACES.get(depth.datum, ("other", depth.datum or "face that the depth is measured from"))
    if datum == "skin" and opening.in_a_door:
        name = "door skin"
    lean = depth.leans if isinstance(depth.leans, Quantity) else None
    bracket = opening.factory_spacer
    return Section(
        title=f"{opening.name} in section" + (f", with {gear.name}" if gear else ""),
        clear=_measure(depth.clear),
        room=_measure(opening.room_to_grille),
        hole=_across(opening.hole),
        datum=datum,
        datum_name=name,
        behind=(depth.to or "first thing behind")[:60],
        lean=lean.value if lean else None,
        lean_text=lean.text if lean else "",
        bracket=None if bracket in (None, Blank.NONE) else _measure(bracket),
        bracket_stays=bool(fit and fit.way.on_bracket),
        spacer=_measure(between.facts.thickness) if between else None,
        spacer_name=between.name if between else "spacer",
        gasket=_measure(gear.facts.gasket) if gear and gear.facts.gasket not in (None, Blank.NONE) else None,
        speaker=_speaker(gear) if gear else None,
        margin_behind=_margin(fit, "depth"),
        margin_front=_margin(fit, "grille"),
        far="outside" if opening.in_a_door else "behind",
    )


def _speaker(gear: Gear) -> Speaker:
    facts = gear.facts
    return Speaker(
        gear.name,
        _measure(facts.depth),
        _measure(facts.protrusion),
        _across(facts.flange),
        _across(facts.basket),
        _measure(facts.magnet),
    )


def front(opening: Opening, fit: Fit | None, gear: Gear | None) -> Front:
    """The opening from the cabin."""
    assert opening.hole
    return Front(
        title=f"{opening.name} from the front" + (f", with {gear.name}" if gear else ""),
        hole=_outline(opening.hole),
        bolts=_pattern(opening.bolts),
        panel=_panel(opening.panel),
        gear=gear.name if gear else "",
        basket=_outline(gear.facts.basket) if gear and gear.facts.basket else None,
        flange=_outline(gear.facts.flange) if gear and gear.facts.flange else None,
        gear_bolts=_pattern(gear.facts.bolts) if gear else None,
        turned=bool(fit and fit.way.turned),
    )


def dash(vehicle: Vehicle, opening: Opening, fit: Fit | None, gear: Gear | None, kit: Gear | None) -> Dash:
    """The opening in the dash."""
    depth = opening.depth or Depth(Blank.UNKNOWN)
    margin = _margin(fit, "depth")
    plugs = plug_room(gear.facts, vehicle.usual) if gear else None
    return Dash(
        title=opening.name + (f" with {gear.name}" if gear else ""),
        face=_frame(opening.face) or Frame(),
        kit=kit.name if kit else "",
        kit_opening=_frame(kit.facts.opening) if kit else None,
        clear_front=_frame(opening.clear_front),
        gear=gear.name if gear else "",
        body=_frame(gear.facts.body) if gear else None,
        trim=_frame(gear.facts.trim) if gear else None,
        clear=_measure(depth.clear) if depth.datum in ("", "face") else UNKNOWN,
        behind=depth.to or "first thing behind",
        chassis=_measure(gear.facts.chassis_depth) if gear else UNKNOWN,
        plug_room=Measure(plugs.value, f"{plugs.text}{' (usual)' if plugs.default else ''}") if plugs else UNKNOWN,
        margin=f"{margin.verdict}, {margin.text}" if margin else "",
        strikes=margin is not None and margin.verdict == "strikes",
    )


def _margin(fit: Fit | None, name: str) -> Margin | None:
    """The margin of one check; None where it was not reckoned so."""
    check: Check | None = next((one for one in fit.checks if one.name == name), None) if fit else None
    if check is None:
        return None
    if check.margin is None:
        return Margin("cannot be told", "unknown")
    return Margin(_spare(check, check.margin), _VERDICTS[check.verdict])


def _spare(check: Check, margin: float) -> str:
    """The margin, and the gap as it is drawn: before any usual clearance is taken off."""
    said = f"{both(abs(margin))} {'to spare' if margin >= 0 else 'short'}"
    gap = check.gap
    if gap is None or gap == margin:
        return said
    return f"{both(abs(gap))} {'free' if gap >= 0 else 'too much'}, {said}"


def _measure(value: Quantity | Blank | None) -> Measure:
    return Measure(value.value if isinstance(value, Quantity) else None, words.quantity(value) or "not recorded")


def _across(hole: Hole | None) -> Measure:
    """How large an outline is in the plane of a section: its diameter or width."""
    return _measure(hole.diameter or hole.width) if hole else UNKNOWN


def _outline(hole: Hole) -> Outline:
    if hole.shape == "round":
        return Outline("round", _measure(hole.diameter), _measure(hole.diameter))
    return Outline("oval" if hole.shape == "oval" else "rectangle", _measure(hole.width), _measure(hole.height))


def _panel(face: Face | None) -> Outline | None:
    return Outline("rectangle", _measure(face.width), _measure(face.height)) if face else None


def _frame(face: Face | None) -> Frame | None:
    return Frame(_measure(face.width), _measure(face.height)) if face else None


def _pattern(bolts: Bolts | None) -> Pattern | None:
    if bolts is None:
        return None
    if bolts.pattern == "circle":
        return Pattern(True, bolts.count, _measure(bolts.diameter), UNKNOWN)
    return Pattern(False, bolts.count, _measure(bolts.width), _measure(bolts.height))
