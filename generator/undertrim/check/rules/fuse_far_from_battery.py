"""The main fuse of an amplifier sits close to the battery.

## What it finds

A `fuse_place` whose `from_battery` is longer than common practice allows (0.45 m along the cable).

## Why it matters

The cable between battery and fuse is guarded by nothing: chafed through there it burns. 0.45 m is common practice of mobile audio
without a source; 33 CFR 183.455(b) asks for less in boats, and for no land vehicle.

## Bad

    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        fuse_place: {at: Beside the spare wheel, from_battery: 4.2 m}    # here
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}

warning: the main fuse of 'bay' is '4.2 m' from the battery, and common practice is 0.45 m along the cable (find a place nearer to the battery terminal, or mend the length)

## Good

    openings:
      bay:
        name: Amplifier place
        kind: amplifier
        behind: [radio]
        space: {width: 300 mm, height: 70 mm, depth: 200 mm}
        run: to-boot
        fuse_place: {at: Battery tray, from_battery: 0.3 m}
    runs:
      to-boot: {name: Battery to the boot, from: Battery, to: Boot floor, length: 4.8 m}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.record.problem import Level
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every main fuse that is farther away than usual."""
    within = float(table("electrical-fuses")["place"]["within"])
    for bay in subject.record.openings_of(AmplifierOpening):
        far = bay.fuse_place.from_battery if bay.fuse_place else None
        if isinstance(far, Quantity) and far.value / 1000 > within:
            found = message("rules/fuse-far-from-battery/far", opening=bay.id, far=far.text, within=within)
            yield Finding(("openings", bay.id, "fuse_place", "from_battery"), found)
