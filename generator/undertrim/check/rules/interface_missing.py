"""What a receiver in stock needs and the car sends as data, an interface in stock brings.

## What it finds

A function that comes as data and that some receiver in stock needs, where no interface in stock made for that opening brings it;
and a duty that is kept by an interface, where none of them keeps it. Where no receiver is in stock, nothing.

## Why it matters

The receiver is sold, the dash is open, and there is no way to tell it that the car is in reverse.

## Bad

    # file: brindleway/otter-2014-2018.yaml
    functions:
      reverse: {by: data}    # here
      mute: {by: data}
    duties:
      chime: {kept_by: interface}    # here
    # file: receivers/skerrowe-cleft.yaml
    gear:
      kind: receiver
      maker: Skerrowe
      model: Cleft
      body: {width: 180 mm, height: 50 mm}
      chassis_depth: 98 mm
      outputs: [speaker]
      needs: [reverse]

warning: 'reverse' comes as data, and no interface in stock brings it to 'dash' (record the interface that does, or say in the record why there is none)
warning: 'chime' is kept by an interface, and none in stock keeps it at 'dash' (record the interface that does, or say in the record why there is none)

## Good

    # file: brindleway/otter-2014-2018.yaml
    functions:
      reverse: {by: data}
    duties:
      chime: {kept_by: interface}
    # file: receivers/skerrowe-cleft.yaml
    gear:
      kind: receiver
      maker: Skerrowe
      model: Cleft
      body: {width: 180 mm, height: 50 mm}
      chassis_depth: 98 mm
      outputs: [speaker]
      needs: [reverse]
    # file: interfaces/tidewrack-bell.yaml
    gear:
      kind: interface
      maker: Tidewrack
      model: Bell
      suits:
        - {vehicle: brindleway/otter-2014-2018, opening: dash}
      provides: [reverse]
      keeps: [chime]
"""

from collections.abc import Iterator, Sequence

from undertrim.check import bonds
from undertrim.check.findings import Card, Finding
from undertrim.check.gear import gear
from undertrim.record.problem import Level

LEVEL = Level.WARNING

_HINT = "record the interface that does, or say in the record why there is none"


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """Every function and duty without its interface."""
    receivers = [item.facts for item in gear(cards) if item.facts.kind == "receiver"]
    wanted = {function for receiver in receivers for function in receiver.needs}
    for address, card in bonds.vehicles(cards).items() if receivers else ():
        for opening, kind in card.bonds["openings"].items():
            if kind == "receiver":
                for finding in _missing(cards, card, (address, opening), wanted):
                    yield card, finding


def _missing(cards: Sequence[Card], card: Card, place: tuple[str, str], wanted: set[str]) -> Iterator[Finding]:
    interfaces = [item.facts for item in bonds.suiting(cards, *place, "interface")]
    brought = {function for facts in interfaces for function in facts.brings}
    kept = {duty for facts in interfaces for duty in facts.keeps}
    for function in card.bonds["data"]:
        if function in wanted and function not in brought:
            message = f"'{function}' comes as data, and no interface in stock brings it to '{place[1]}'"
            yield Finding(("functions", function), message, _HINT)
    for duty in card.bonds["duties"]:
        if duty not in kept:
            message = f"'{duty}' is kept by an interface, and none in stock keeps it at '{place[1]}'"
            yield Finding(("duties", duty), message, _HINT)
