"""No text tells how to defeat a safety device.

## What it finds

In any text of a vehicle or gear record: a way to bypass the parking-brake interlock or to tie its input to
something else than the car's own switch, moving pictures for the driver, a way to quieten or measure a restraint
circuit, to switch off a reversing camera or a seat-belt reminder. A sentence that forbids it passes. What a
caution names as hazard or consequence is not read: there the danger has its name. This cannot be allowed.

## Why it matters

People are killed by it, and in many countries a business may not do it; local law decides. A record that says how
is not ours.

## Bad

    parts:
      radio:
        name: Factory radio
        release: slide
        how: Bypass the parking brake.    # here
        tethers:
          lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: leave, how: Defeat the airbag.}    # here
        replaced: yes
    functions:
      parking-brake: {by: wire, note: Bypass it.}    # here
    duties:
      camera: {kept_by: none, note: Disable the reversing camera.}    # here
      chime: {kept_by: stays, note: "If it annoys the owner, disable the belt chime."}    # here

error: the text tells how to defeat the parking-brake interlock: 'Bypass the parking brake' (take it out: the input goes to the car's own switch, or to an interface)
error: the text tells how to defeat the restraint system: 'Defeat the airbag' (take it out: a fault in a restraint circuit is mended by the maker's procedure)
error: the text tells how to defeat the parking-brake interlock: 'Bypass it' (take it out: the input goes to the car's own switch, or to an interface)
error: the text tells how to defeat the reversing camera: 'Disable the reversing camera' (take it out: a display that is replaced keeps the camera)
error: the text tells how to defeat the seat-belt reminder: 'disable the belt chime' (take it out: the reminder stays)

    gear:
      kind: harness
      maker: Pellworth
      model: Knot P
      suits: [{vehicle: brindleway/otter-2014-2018, opening: dash}]
      plugs: {power: {8: {function: ground}}}
      note: With parking brake bypass.    # here

error: the text tells how to defeat the parking-brake interlock: 'parking brake bypass' (take it out: the input goes to the car's own switch, or to an interface)

## Good

    functions:
      parking-brake: {by: wire, note: The switch at the brake lever closes to ground. Never join the wire to anything else.}
    parts:
      radio:
        name: Factory radio
        release: slide
        how: Bypass the factory amplifier and join the parking brake lead to its switch. Do not bypass the parking brake.
        cautions:
          - {signal: WARNING, hazard: Bypassing the parking brake shows pictures to the driver., consequence: People can be killed., avoid: Do not do it.}
        tethers:
          lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: leave, how: No test lamp on this plug.}
        replaced: yes
    duties:
      camera: {kept_by: interface, note: The picture of the reversing camera must be kept.}

And of gear:

    gear:
      kind: harness
      maker: Pellworth
      model: Knot P
      suits: [{vehicle: brindleway/otter-2014-2018, opening: dash}]
      plugs: {power: {8: {function: ground}}}
      note: The parking brake lead goes to the car's own switch. Bypassing the brake lead is forbidden.
"""

from collections.abc import Iterable, Iterator

from undertrim.check import defeats
from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import message

LEVEL = Level.ERROR

_NAMED = ("hazard", "consequence")


def check(subject: Subject) -> Iterator[Finding]:
    """Every text of a vehicle record that tells it."""
    yield from _look(subject.texts, subject.record)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for a gear record."""
    yield from _look(subject.texts, None)


def _look(texts: Iterable[tuple[Pointer, str]], record: VehicleRecord | None) -> Iterator[Finding]:
    for pointer, text in texts:
        if pointer[-1] in _NAMED:
            continue
        for told in defeats.find(text, _about(pointer, record) if record else ""):
            what, hint = message(f"defeats/{told.defeat.what}"), message(f"defeats/{told.defeat.hint}")
            yield Finding(pointer, message("rules/defeats-safety/told", what=what, phrase=told.phrase, hint=hint))


def _about(pointer: Pointer, record: VehicleRecord) -> str:
    """What a text stands at, in words: a function, a duty, the function of a pin, or the plug of a part."""
    if pointer[0] in ("functions", "duties"):
        return str(pointer[1])
    if pointer[0] == "connectors" and pointer[2:3] == ("pins",):
        connector = record.connectors.get(str(pointer[1]))
        pin = connector.pins.get(str(pointer[3])) if connector else None
        return pin.function if pin else ""
    if pointer[0] == "parts" and pointer[2:3] == ("tethers",):
        part = record.parts.get(str(pointer[1]))
        tether = part.tethers.get(str(pointer[3])) if part else None
        return f"{tether.name}. {tether.circuit}" if tether else ""
    return ""
