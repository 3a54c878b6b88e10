"""Where some positions of a plug are said to be blank, all the others have a pin.

## What it finds

A plug that lists `blanks`, with a position that is neither a pin nor blank.

## Why it matters

Whoever listed the blanks went through the whole plug. A position left over then is a wire that was forgotten, and the
tech finds it with the meter on the table.

## Bad

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 3
        blanks: ["2"]    # here
        pins:
          1: {function: battery-feed}
          3: {function: ground}
          6: {function: mute}

warning: nobody says what is at '4', '5' of 'main', and its blanks are listed (add the pin, or list it under 'blanks')

## Good

    connectors:
      main:
        name: Main radio plug
        view: wires
        rows: 2
        columns: 3
        blanks: ["2", "4", "5"]
        pins:
          1: {function: battery-feed}
          3: {function: ground}
          6: {function: mute}
      second:
        name: Nobody looked for blanks here
        view: wires
        rows: 1
        columns: 8
        pins:
          1: {function: battery-feed}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message, some_of

LEVEL = Level.WARNING

_NAMED = 6
"""So many positions are named, the rest counted."""


def check(subject: Subject) -> Iterator[Finding]:
    """Every plug with blanks and with a position nobody speaks of."""
    for plug in subject.record.connectors.values():
        said = {*plug.pins, *plug.blanks}
        place = ("connectors", plug.id)
        if plug.blanks and all(name.isdecimal() for name in said) and subject.intact(place):
            left = [str(number) for number in range(1, plug.rows * plug.columns + 1) if str(number) not in said]
            if left:
                positions = some_of(left, _NAMED)
                found = message("rules/position-not-said/nobody-says", positions=positions, plug=plug.id)
                yield Finding((*place, "blanks"), found, key=True)
