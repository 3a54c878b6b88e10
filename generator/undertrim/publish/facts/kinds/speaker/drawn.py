"""What is drawn of a speaker's opening."""

from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts import measures
from undertrim.publish.facts.drawn_margins import margin, to_get
from undertrim.publish.pictures.drawings.axis import Datum, Section, Speaker
from undertrim.publish.pictures.drawings.dimensions import Measure
from undertrim.publish.pictures.drawings.front import Front
from undertrim.record.model import Blank, Depth
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.words import Value, message

_DATUMS: dict[str, Datum] = {"skin": "skin", "bracket": "bracket"}


def section(
    opening: SpeakerOpening, fit: Fit | None, gear: Stocked[SpeakerGear] | None, between: Stocked[SpacerGear] | None
) -> Section:
    """The opening cut along its axis."""
    # Long because it is one table: what the drawing is told, a line each.
    depth = opening.depth or Depth(Blank.UNKNOWN)
    datum = _DATUMS.get(depth.datum, "other")
    face = "door-skin" if datum == "skin" and opening.in_a_door else depth.datum or "unknown"
    lean = None if depth.leans is Blank.NONE else measures.measure(depth.leans)
    turned = bool(fit and fit.way.turned)
    return Section(
        title=_title("section", opening, gear),
        clear=measures.measure(depth.clear),
        room=measures.measure(opening.room_to_grille),
        hole=measures.across(opening.hole),
        datum=datum,
        datum_name=message(f"drawn-fit/face-{face}"),
        behind=depth.to[:60] or message("drawings/first-behind"),
        lean=lean.mm if lean else None,
        lean_text=lean.text if lean else "",
        bracket=_bracket(opening, datum),
        bracket_stays=bool(fit and fit.way.on_bracket),
        spacer=measures.measure(between.facts.thickness) if between else None,
        spacer_name=between.name if between else message("gear-kinds/spacer"),
        gasket=measures.measure(gear.facts.gasket) if gear and gear.facts.gasket not in (None, Blank.NONE) else None,
        speaker=_speaker(gear, turned=turned) if gear else None,
        margin_behind=margin(fit, "depth"),
        margin_front=margin(fit, "grille"),
        far=message("drawings/outside" if opening.in_a_door else "drawn-fit/behind"),
        more=tuple(to_get(fit)),
    )


def _title(view: str, opening: SpeakerOpening, gear: Stocked[SpeakerGear] | None) -> Value:
    if gear:
        return message(f"drawn-fit/{view}-with", opening=opening.name, gear=gear.name)
    return message(f"drawn-fit/{view}", opening=opening.name)


def _bracket(opening: SpeakerOpening, datum: Datum) -> Measure | None:
    """The factory bracket. Where the depth counts from its face there is one, of whatever height, unless the record says that there is none."""
    height = opening.factory_spacer
    if height is Blank.NONE or (height is None and datum != "bracket"):
        return None
    return measures.measure(height)


def _speaker(gear: Stocked[SpeakerGear], *, turned: bool) -> Speaker:
    facts = gear.facts
    return Speaker(
        gear.name,
        measures.measure(facts.depth),
        measures.measure(facts.protrusion),
        measures.across(facts.flange, turned=turned),
        measures.across(facts.basket, turned=turned),
        measures.measure(facts.magnet),
    )


def front(
    opening: SpeakerOpening, fit: Fit | None, gear: Stocked[SpeakerGear] | None, between: Stocked[SpacerGear] | None
) -> Front:
    """The opening from the cabin."""
    assert opening.hole
    return Front(
        title=_title("front", opening, gear),
        hole=measures.outline(opening.hole),
        bolts=measures.pattern(opening.bolts),
        panel=measures.panel(opening.panel),
        gear=gear.name if gear else "",
        basket=measures.outline(gear.facts.basket) if gear and gear.facts.basket else None,
        flange=measures.outline(gear.facts.flange) if gear and gear.facts.flange else None,
        gear_bolts=measures.pattern(gear.facts.bolts) if gear else None,
        turned=bool(fit and fit.way.turned),
        more=(*((message("drawn-fit/goes-on", name=between.name),) if between else ()), *to_get(fit)),
    )
