"""A ground point says whether it is painted.

## What it finds

A `ground_point` of an amplifier place without `paint`.

## Why it matters

Paint or sealant under a ground terminal is the usual cause of noise, heat and an amplifier that switches itself off. Whether it
must be scraped off is a step of the job.

## Bad

    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        ground_point: {at: Stud behind the left lining}    # here
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}

warning: the ground point of 'bay' does not say whether it is painted (add 'paint': yes, no or unknown)

## Good

    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        ground_point: {at: Stud behind the left lining, paint: unknown}
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every ground point of which nothing is said of paint."""
    for bay in subject.record.openings_of(AmplifierOpening):
        pointer = ("openings", bay.id, "ground_point")
        if bay.ground_point and bay.ground_point.paint is None and subject.intact(pointer):
            yield Finding(pointer, message("rules/ground-paint-not-said/unsaid", opening=bay.id), key=True)
