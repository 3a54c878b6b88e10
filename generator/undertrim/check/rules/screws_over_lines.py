"""Nothing is screwed or drilled where a line or a tank lies right underneath.

## What it finds

An amplifier place with `fixings: screws`, or with `alters`, that has a fuel line, fuel tank, brake line or high-voltage cable
`underneath`; and one that is altered while what is underneath is unknown or not recorded.

## Why it matters

A screw through a floor that meets a fuel line starts a fire, and one that meets a brake line takes the brakes. A bracket, studs of
the car or straps hold an amplifier too.

## Bad

    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        fixings: screws    # here
        underneath: [fuel-line, harness]
      shelf:
        name: Amplifier shelf
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        alters: [drill]    # here
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}

warning: screws go into 'bay', and right underneath is 'fuel-line' (hold the amplifier by a bracket, straps or studs of the car)
warning: 'shelf' is altered, and what lies underneath is not known (look from below, and record it under 'underneath')

## Good

    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        fixings: bracket
        underneath: [fuel-line]
      shelf:
        name: Amplifier shelf
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        fixings: screws
        alters: [drill]
        underneath: [nothing]
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.problem import Level
from undertrim.words import Items, message, quoted

LEVEL = Level.WARNING

_LINES = ("fuel-line", "fuel-tank", "brake-line", "high-voltage")


def check(subject: Subject) -> Iterator[Finding]:
    """Every place where a screw or drill may meet a line."""
    for bay in subject.record.openings_of(AmplifierOpening):
        field = "fixings" if bay.fixings == "screws" else "alters"
        lines = tuple(thing for thing in bay.underneath if thing in _LINES)
        if lines and (bay.alters or bay.fixings == "screws"):
            named = Items(tuple(quoted(line) for line in lines), "comma")
            yield Finding(
                ("openings", bay.id, field), message("rules/screws-over-lines/met", opening=bay.id, lines=named)
            )
        elif bay.alters and not lines and (not bay.underneath or "unknown" in bay.underneath):
            yield Finding(("openings", bay.id, "alters"), message("rules/screws-over-lines/unknown", opening=bay.id))
