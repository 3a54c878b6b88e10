"""Every tether must end joined to something, or be let go with its part.

## What it finds

A tether that stays joined to a part which leaves the car or moves over; one that is joined to the new gear
though its part goes back, or joined again to a part that does not; a restraint plug that is parked or bridged; a cable
or rod that is parked though its part goes back; and a tether of the high voltage or of a 48 V net that is to be undone, or
moved, at all.

## Why it matters

A part that is still on its cable tears it out when it leaves. A plug that goes nowhere is a lamp on the
dash, a dead handle, or an airbag that does not fire.

## Bad

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        tethers:
          main: {name: Main plug, kind: plug, then: leave}    # here
          antenna: {name: Antenna plug, kind: coax, then: rejoin}    # here
          pigtail: {name: Captive lead, kind: plug, then: goes-with}    # here
      climate-panel:
        name: Climate panel
        release: unscrew
        goes_to: dash
        tethers:
          climate: {name: Climate plug, kind: plug, then: leave}    # here
          dial: {name: Dial cable, kind: cable, then: to-gear}    # here
      bezel:
        name: Radio bezel
        release: pull
        tethers:
          hazard: {name: Hazard switch plug, kind: plug, then: to-gear}    # here
          lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: park}    # here
          ring: {name: Restraint data ring, kind: fibre, circuit: restraint, then: bridge}    # here
      door-panel:
        name: Door panel
        release: lift
        tethers:
          handle: {name: Inner handle cable, kind: cable, then: park}    # here

error: 'main' stays joined, but 'radio' leaves the car (leave 'then' out: it is joined to the new gear)
error: 'antenna' is joined again, but 'radio' leaves the car (leave 'then' out: it is joined to the new gear, or write 'then: park')
error: 'pigtail' stays joined, but 'radio' leaves the car (record the plug at its far end, where it can be undone)
error: 'climate' stays joined, but 'climate-panel' moves over to 'dash' (write 'then: rejoin', or 'then: goes-with' if it cannot be undone)
error: 'dial' is joined to the new gear, but 'climate-panel' is not replaced (write 'then: rejoin', or 'replaced: yes' if new gear takes its place)
error: 'hazard' is joined to the new gear, but 'bezel' is not replaced (write 'then: rejoin', or 'replaced: yes' if new gear takes its place)
error: the restraint plug 'lamp' is left open (write 'then: leave' where it can stay joined, else 'then: rejoin')
error: the restraint fibre 'ring' is left open (write 'then: leave' where it can stay joined, else 'then: rejoin')
error: the cable 'handle' is left loose, but 'door-panel' goes back (write 'then: rejoin')

    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: yes
    parts:
      floor:
        name: Boot floor
        release: lift
        tethers:
          charger: {name: Charger plug, kind: plug, circuit: high-voltage}    # here
          pump: {name: Pump plug, kind: plug, circuit: high-voltage, then: rejoin}    # here
          starter: {name: Starter cable, kind: plug, circuit: 48-volt}    # here

error: 'charger' is high-voltage and would be undone: that is work for trained persons (write 'then: leave', or leave the part where it is)
error: 'pump' is high-voltage and would be undone: that is work for trained persons (write 'then: leave', or leave the part where it is)
error: 'starter' is of a 48 V net and would be undone: it draws an arc (write 'then: leave': how that net is shut down is in the maker's procedure, not here)

## Good

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        tethers:
          main: {name: Main plug, kind: plug}
          antenna: {name: Antenna plug, kind: coax, then: to-gear}
          map-antenna: {name: Position antenna plug, kind: coax, then: park}
      climate-panel:
        name: Climate panel
        release: unscrew
        goes_to: dash
        tethers:
          climate: {name: Climate plug, kind: plug}
          dial: {name: Dial cable, kind: cable, then: rejoin}
          flap: {name: Air flap cable, kind: cable, then: goes-with}
      bezel:
        name: Radio bezel
        release: pull
        tethers:
          hazard: {name: Hazard switch plug, kind: plug}
          lamp: {name: Airbag lamp plug, kind: plug, circuit: restraint, then: leave}
          charger: {name: Charger plug, kind: plug, circuit: high-voltage, then: leave}
          strap: {name: Strap, kind: strap, then: leave}
      console-lid:
        name: Console lid
        release: lift
        tethers:
          socket: {name: Socket of the factory radio, kind: plug, then: park}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.procedure import states
from undertrim.derive.procedure.fates import STAYING
from undertrim.record.model import Part, Tether
from undertrim.record.problem import Level
from undertrim.words import Message, Word, message, word

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every tether that ends where it cannot."""
    intact = (part for part in subject.record.parts.values() if subject.intact(("parts", part.id)))
    for part in intact:
        for tether in part.tethers.values():
            complaint = _complaint(part, tether)
            if complaint:
                home = ("parts", part.id, "tethers", tether.id)
                place = (*home, "then") if tether.then else home
                yield Finding(place, complaint, key=not tether.then, about=(part.goes_to,))


def _complaint(part: Part, tether: Tether) -> Message | None:
    if tether.circuit == "48-volt" and tether.then != "leave":
        return message("rules/tether-left-open/48-volt", tether=tether.id)
    if tether.circuit == "high-voltage" and tether.then != "leave":
        return message("rules/tether-left-open/high-voltage", tether=tether.id)
    if tether.circuit == "restraint" and tether.then in ("park", "bridge"):
        return message("rules/tether-left-open/restraint-open", kind=_kind(tether), tether=tether.id)
    return _of_replaced(part, tether) if part.replaced == "yes" else _of_kept(part, tether)


def _kind(tether: Tether) -> Word:
    return word("tethers", "kind", tether.kind, "noun")


def _of_replaced(part: Part, tether: Tether) -> Message | None:
    if tether.then in STAYING:
        return _staying(part, tether)
    if tether.then == "rejoin":
        return message("rules/tether-left-open/rejoined-at-replaced", tether=tether.id, part=part.id)
    return None


def _staying(part: Part, tether: Tether) -> Message:
    if tether.circuit == "high-voltage":
        return message("rules/tether-left-open/high-voltage-at-replaced", tether=tether.id, part=part.id)
    if tether.circuit == "restraint":
        return message("rules/tether-left-open/restraint-at-replaced", tether=tether.id, part=part.id)
    if tether.then == "goes-with":
        return message("rules/tether-left-open/goes-with-replaced", tether=tether.id, part=part.id)
    return message("rules/tether-left-open/stays-at-replaced", tether=tether.id, part=part.id)


def _of_kept(part: Part, tether: Tether) -> Message | None:
    if tether.then == "leave" and part.goes_to:
        return _moving(part, tether)
    if tether.then == "park" and states.tether_kind(tether.kind).mechanical:
        return message("rules/tether-left-open/left-loose", kind=_kind(tether), tether=tether.id, part=part.id)
    if tether.then == "to-gear":
        return message("rules/tether-left-open/to-gear-at-kept", tether=tether.id, part=part.id)
    return None


def _moving(part: Part, tether: Tether) -> Message:
    ends = {"tether": tether.id, "part": part.id, "opening": part.goes_to}
    if tether.circuit == "high-voltage":
        return message("rules/tether-left-open/high-voltage-at-moved", **ends)
    return message("rules/tether-left-open/stays-at-moved", **ends)
