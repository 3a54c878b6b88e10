"""What is drawn of an opening in the dash."""

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.receiver.fit import plug_room
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts import measures
from undertrim.publish.facts.drawn_margins import amount, check, plain_or_usual, to_get
from undertrim.publish.pictures.drawings.dash import Dash
from undertrim.publish.pictures.drawings.dimensions import UNKNOWN, Measure
from undertrim.publish.pictures.drawings.frames import Frame
from undertrim.record.model import Blank, Depth
from undertrim.record.model.kinds.receiver import KitGear, ReceiverGear, ReceiverOpening
from undertrim.words import message


def dash(
    usual: Clearances,
    opening: ReceiverOpening,
    fit: Fit | None,
    gear: Stocked[ReceiverGear] | None,
    kit: Stocked[KitGear] | None,
) -> Dash:
    """The opening in the dash."""
    depth = opening.depth or Depth(Blank.UNKNOWN)
    found = check(fit, "depth")
    plugs = plug_room(gear.facts, usual) if gear else None
    return Dash(
        title=message("drawn-fit/dash-with", opening=opening.name, gear=gear.name) if gear else opening.name,
        face=measures.frame(opening.face) or Frame(),
        kit=kit.name if kit else "",
        kit_opening=measures.frame(kit.facts.opening) if kit else None,
        clear_front=measures.frame(opening.clear_front),
        gear=gear.name if gear else "",
        body=measures.frame(gear.facts.body) if gear else None,
        trim=measures.frame(gear.facts.trim) if gear else None,
        clear=measures.measure(depth.clear) if depth.datum in ("", "face") else UNKNOWN,
        behind=depth.to or message("drawings/first-behind"),
        chassis=measures.measure(gear.facts.chassis_depth) if gear else UNKNOWN,
        plug_room=Measure(plugs.value, plain_or_usual(plugs)) if plugs else UNKNOWN,
        margin=message(f"drawn-fit/{found.verdict}", margin=amount(found.margin)) if found else "",
        strikes=found is not None and found.verdict == "fails",
        more=tuple(to_get(fit)),
    )
