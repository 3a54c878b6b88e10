"""What is drawn of an opening, as data: its dimensions, and the piece of stock that fits it best with what goes between."""

from collections.abc import Iterator
from dataclasses import asdict
from typing import Any

from undertrim.derive.fit import disputed
from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.derive.fit.margins import Check, both
from undertrim.derive.fit.receiver import plug_room
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.verdict import Fit, listed
from undertrim.publish.drawings.axis import Datum, Margin, Section, Speaker, Verdict
from undertrim.publish.drawings.dash import Dash
from undertrim.publish.drawings.dimensions import UNKNOWN, Measure
from undertrim.publish.drawings.frames import Frame
from undertrim.publish.drawings.front import Front
from undertrim.publish.facts import measures
from undertrim.record.model import Blank, Depth, Opening
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
        made["front"] = asdict(front(reckoned, fit, shown, between))
    if reckoned.depth and isinstance(reckoned.depth.clear, Quantity):
        made["section"] = asdict(section(reckoned, fit, shown, between))
    return made


def section(opening: Opening, fit: Fit | None, gear: Gear | None, between: Gear | None) -> Section:
    """The opening cut along its axis."""
    depth = opening.depth or Depth(Blank.UNKNOWN)
    datum, name = _FACES.get(depth.datum, ("other", depth.datum or "face that the depth is measured from"))
    if datum == "skin" and opening.in_a_door:
        name = "door skin"
    lean = None if depth.leans is Blank.NONE else measures.measure(depth.leans)
    turned = bool(fit and fit.way.turned)
    return Section(
        title=f"{opening.name} in section" + (f", with {gear.name}" if gear else ""),
        clear=measures.measure(depth.clear),
        room=measures.measure(opening.room_to_grille),
        hole=measures.across(opening.hole),
        datum=datum,
        datum_name=name,
        behind=(depth.to or "first thing behind")[:60],
        lean=lean.mm if lean else None,
        lean_text=lean.text if lean else "",
        bracket=_bracket(opening, datum),
        bracket_stays=bool(fit and fit.way.on_bracket),
        spacer=measures.measure(between.facts.thickness) if between else None,
        spacer_name=between.name if between else "spacer",
        gasket=measures.measure(gear.facts.gasket) if gear and gear.facts.gasket not in (None, Blank.NONE) else None,
        speaker=_speaker(gear, turned=turned) if gear else None,
        margin_behind=_margin(fit, "depth"),
        margin_front=_margin(fit, "grille"),
        far="outside" if opening.in_a_door else "behind",
        more=tuple(_to_get(fit)),
    )


def _bracket(opening: Opening, datum: Datum) -> Measure | None:
    """The factory bracket. Where the depth counts from its face there is one, of whatever height, unless the record says that there is none."""
    height = opening.factory_spacer
    if height is Blank.NONE or (height is None and datum != "bracket"):
        return None
    return measures.measure(height)


def _speaker(gear: Gear, *, turned: bool) -> Speaker:
    facts = gear.facts
    return Speaker(
        gear.name,
        measures.measure(facts.depth),
        measures.measure(facts.protrusion),
        measures.across(facts.flange, turned=turned),
        measures.across(facts.basket, turned=turned),
        measures.measure(facts.magnet),
    )


def front(opening: Opening, fit: Fit | None, gear: Gear | None, between: Gear | None) -> Front:
    """The opening from the cabin."""
    assert opening.hole
    return Front(
        title=f"{opening.name} from the front" + (f", with {gear.name}" if gear else ""),
        hole=measures.outline(opening.hole),
        bolts=measures.pattern(opening.bolts),
        panel=measures.panel(opening.panel),
        gear=gear.name if gear else "",
        basket=measures.outline(gear.facts.basket) if gear and gear.facts.basket else None,
        flange=measures.outline(gear.facts.flange) if gear and gear.facts.flange else None,
        gear_bolts=measures.pattern(gear.facts.bolts) if gear else None,
        turned=bool(fit and fit.way.turned),
        more=(*((f"It goes on {between.name}, which is not drawn.",) if between else ()), *_to_get(fit)),
    )


def dash(vehicle: Vehicle, opening: Opening, fit: Fit | None, gear: Gear | None, kit: Gear | None) -> Dash:
    """The opening in the dash."""
    depth = opening.depth or Depth(Blank.UNKNOWN)
    check = _check(fit, "depth")
    plugs = plug_room(gear.facts, vehicle.usual) if gear else None
    return Dash(
        title=opening.name + (f" with {gear.name}" if gear else ""),
        face=measures.frame(opening.face) or Frame(),
        kit=kit.name if kit else "",
        kit_opening=measures.frame(kit.facts.opening) if kit else None,
        clear_front=measures.frame(opening.clear_front),
        gear=gear.name if gear else "",
        body=measures.frame(gear.facts.body) if gear else None,
        trim=measures.frame(gear.facts.trim) if gear else None,
        clear=measures.measure(depth.clear) if depth.datum in ("", "face") else UNKNOWN,
        behind=depth.to or "first thing behind",
        chassis=measures.measure(gear.facts.chassis_depth) if gear else UNKNOWN,
        plug_room=Measure(plugs.value, f"{plugs.text}{' (usual)' if plugs.default else ''}") if plugs else UNKNOWN,
        margin=f"{_VERDICTS[check.verdict]}, {_amount(check.margin)}" if check else "",
        strikes=check is not None and check.verdict == "fails",
        more=tuple(_to_get(fit)),
    )


def _margin(fit: Fit | None, name: str) -> Margin | None:
    """The margin of one check; None where it was not reckoned so."""
    check = _check(fit, name)
    if check is None:
        return None
    # What only lacks the usual clearance touches nothing.
    close = check.verdict == "fails" and check.gap is not None and check.gap >= 0
    return Margin(_spare(check), "too close" if close else _VERDICTS[check.verdict])


def _check(fit: Fit | None, name: str) -> Check | None:
    return next((one for one in fit.checks if one.name == name), None) if fit else None


def _amount(margin: float | None) -> str:
    if margin is None:
        return "cannot be told"
    return f"{both(abs(margin))} {'to spare' if margin >= 0 else 'short'}"


def _spare(check: Check) -> str:
    """The margin, and the gap as it is drawn: before any usual clearance is taken off."""
    said, gap = _amount(check.margin), check.gap
    if gap is None or gap == check.margin:
        return said
    return f"{both(abs(gap))} {'free' if gap >= 0 else 'too much'}, {said}"


def _to_get(fit: Fit | None) -> Iterator[str]:
    """What it takes and is not in stock, and so in no picture."""
    if fit and fit.to_get:
        yield f"Drawn without what would have to be got: {listed(fit.to_get)}."
