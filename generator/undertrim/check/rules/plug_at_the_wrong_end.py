"""What a plug beyond the radio joins is what its place takes.

## What it finds

A plug at the factory speaker of an opening that does not say `end: speaker`; a plug with a `side` at a part that is not done there;
and, at a plug with another `end` than the radio, a wire of the other side, a wire of both where the plug has no `side`, and a wire
of another channel than that of the opening.

## Why it matters

The tech looks up at the door which wire is plus. With the wires of the other side he reads the wrong colour, and a plug that does
not say its end counts as one behind the radio: its wires then seem to be there twice.

## Bad

    parts:
      door-speaker:
        name: Factory front speaker
        area: front-door
        each: [left, right]
        release: unscrew
        replaced: yes
        tethers:
          speaker: {name: Speaker plug, kind: plug}
      rear-speaker:
        name: Factory rear speaker
        area: rear-door
        each: [left]
        release: unscrew
        replaced: yes
        tethers:
          speaker: {name: Speaker plug, kind: plug}
    openings:
      front-door: {name: Front door speakers, kind: speaker, channel: front, behind: [door-speaker], each: [left, right], hole: {shape: round, diameter: 146 mm}, depth: {clear: 64 mm, datum: skin}}
    connectors:
      near: {name: Plug of nobody's end, at: door-speaker/speaker, view: wires, rows: 1, columns: 2, pins: {1: {function: spare}}}    # here
      both: {name: Plug of both, at: door-speaker/speaker, end: speaker, view: wires, rows: 1, columns: 2, pins: {1: {function: front-left-plus}, 2: {function: front-left-minus}}}    # here
      left:
        name: Plug of the left
        at: door-speaker/speaker
        end: speaker
        side: left
        view: wires
        rows: 1
        columns: 3
        pins:
          1: {function: front-right-plus}    # here
          2: {function: rear-left-minus}    # here
          3: {function: rear-left-plus}    # here
      rear:
        name: Plug of the rear
        at: rear-speaker/speaker
        end: speaker
        side: right    # here
        view: wires
        rows: 1
        columns: 2
        pins:
          1: {function: rear-right-plus}
          2: {function: rear-right-minus}

warning: 'near' is at 'door-speaker', a speaker, and counts as a plug of the radio (write 'end: speaker', or name the tether that it is at)
warning: 'both' has 'front-left-plus' on both sides (say with 'side' what the left and the right have, or on which side the plug is)
warning: 'front-right-plus' is no wire of the left (let the plug of each side have its own wires)
warning: 'rear-left-minus' does not feed 'front-door', which is on the channel front (mend the function, or the channel of the opening)
warning: 'rear-left-plus' does not feed 'front-door', which is on the channel front (mend the function, or the channel of the opening)
warning: 'rear-speaker' is not done on the right (mend 'side', or 'each' of the part)

## Good

    parts:
      door-speaker:
        name: Factory front speaker
        area: front-door
        each: [left, right]
        release: unscrew
        replaced: yes
        tethers:
          speaker: {name: Speaker plug, kind: plug}
    openings:
      front-door: {name: Front door speakers, kind: speaker, channel: front, behind: [door-speaker], each: [left, right], hole: {shape: round, diameter: 146 mm}, depth: {clear: 64 mm, datum: skin}}
    connectors:
      left: {name: Left plug, at: door-speaker/speaker, end: speaker, side: left, view: wires, rows: 1, columns: 2, pins: {1: {function: front-left-plus}, 2: {function: front-left-minus}}}
      right: {name: Right plug, at: door-speaker/speaker, end: speaker, side: right, view: wires, rows: 1, columns: 2, pins: {1: {function: front-right-plus}, 2: {function: front-right-minus}}}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.check.pins import tether_of
from undertrim.derive.wiring.ends import side_of, wires_of
from undertrim.derive.wiring.leads import is_sound
from undertrim.record.model import Connector, Opening, Part, VehicleRecord
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every plug, with the part whose tether it is."""
    for plug in subject.record.connectors.values():
        found = tether_of(subject.record, plug)
        if found is None:
            continue
        part, opening = found[0], _fed(subject.record, found[0])
        if plug.at_radio:
            yield from _no_end(plug, part, opening)
        else:
            yield from _side(plug, part) if plug.side else ()
            yield from _wires(plug, part, opening)


def _fed(record: VehicleRecord, part: Part) -> Opening | None:
    """The opening with a channel whose factory unit a part is."""
    replaced = part.replaced == "yes"
    behind = (one for one in record.openings.values() if one.channel and part.id in one.behind)
    return next(behind, None) if replaced else None


def _no_end(plug: Connector, part: Part, opening: Opening | None) -> Iterator[Finding]:
    if opening:
        said = message("rules/plug-at-the-wrong-end/no-end", plug=plug.id, part=part.id)
        yield Finding(("connectors", plug.id), said, key=True, about=(part.id,))


def _side(plug: Connector, part: Part) -> Iterator[Finding]:
    if plug.side not in part.each:
        said = message("rules/plug-at-the-wrong-end/not-there", part=part.id, side=message(f"sides/{plug.side}"))
        yield Finding(("connectors", plug.id, "side"), said, about=(part.id,))


def _wires(plug: Connector, part: Part, opening: Opening | None) -> Iterator[Finding]:
    """The wires of a speaker that do not belong to the plug."""
    wires = [pin for pin in plug.pins.values() if is_sound(pin.function)]
    if plug.side is None and len(part.each) > 1 and (sided := [pin for pin in wires if side_of(pin.function)]):
        said = message("rules/plug-at-the-wrong-end/both-sides", plug=plug.id, wire=sided[0].function)
        yield Finding(("connectors", plug.id), said, key=True, about=(part.id,))
        return
    for pin in wires:
        place = ("connectors", plug.id, "pins", pin.id, "function")
        if plug.side and side_of(pin.function) not in (None, plug.side):
            side = message(f"sides/{plug.side}")
            yield Finding(place, message("rules/plug-at-the-wrong-end/other-side", wire=pin.function, side=side))
        elif opening and pin.function not in wires_of(opening):
            yield Finding(place, _other(opening, pin.function), about=(opening.id,))


def _other(opening: Opening, wire: str) -> Message:
    channel = message(f"channels/{opening.channel}")
    return message("rules/plug-at-the-wrong-end/other-channel", wire=wire, opening=opening.id, channel=channel)
