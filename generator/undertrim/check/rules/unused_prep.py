"""A preparation is there because something needs it.

## What it finds

A preparation of the record that no job of any car uses: nothing needs the state it sets, nothing names it under
`after`, or an earlier preparation sets the same state. Several batteries are each needed: the car is dead with all of them off.

## Why it matters

It is shown nowhere. Either a need is missing, and the tech meets a locked lever, or the text is a leftover that
nobody reads and nobody mends.

## Bad

    preps:
      lever-back:    # here
        name: Lever back
        sets: {gear: lowest}
        needs: {battery: on, parking-brake: on}
        how: Pull the lever back.
        restore: Push it forward.
      hood:
        name: Bonnet open
        sets: {bonnet: open}
        how: Pull the lever.
        restore: Shut it.
      hood-again:    # here
        name: Bonnet open
        sets: {bonnet: open}
        how: Pull the other lever.
        restore: Shut it.
    parts:
      radio:
        name: Factory radio
        release: slide
        needs: {bonnet: open}
        replaced: yes

error: no job uses 'lever-back' (add 'needs: {gear: lowest}' to what needs it, or remove it)
error: no job uses 'hood-again': 'hood' sets the same (limit one of them by 'when', or remove it)

## Good

    preps:
      lever-back:
        name: Lever back
        sets: {gear: lowest}
        needs: {battery: on, parking-brake: on}
        how: Pull the lever back.
        restore: Push it forward.
      brake:
        name: Parking brake
        sets: {parking-brake: on}
        how: Pull the switch up.
      second-battery:
        name: Second battery off
        sets: {battery: off}
        needs: {ignition: off}
        how: Take the other clamp off.
        restore: Put it back.
      cover-note:
        name: Photograph the dash
        sets: {steering-wheel: lowered}
        how: Photograph the dash.
    parts:
      bezel:
        name: Bezel
        release: pull
        needs: {gear: lowest}
      radio:
        name: Factory radio
        release: slide
        after: [bezel, cover-note]
        replaced: yes
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.check.links import read_in_full
from undertrim.derive.procedure.node import OPENING
from undertrim.derive.procedure.nodes import Layout
from undertrim.record.model import Prep
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every preparation that no opening leads to."""
    if not read_in_full(subject):
        return
    used = {name for car in [*subject.cars, {}] for name in _reached(subject.planner.layout(car))}
    preps = subject.record.preps
    for prep in preps.values():
        if prep.id in used:
            continue
        twin = next((other.id for other in preps.values() if other.id != prep.id and other.sets == prep.sets), "")
        yield Finding(("preps", prep.id), _idle(prep, twin), key=True, about=(twin,))


def _reached(layout: Layout) -> Iterator[str]:
    """The ids of all that some opening may need by any route."""
    for name in layout.nodes:
        if name.startswith(OPENING):
            yield from (layout.nodes[node].thing.id for node in layout.reached(name))


def _idle(prep: Prep, twin: str) -> Message:
    if twin:
        return message("rules/unused-prep/twin", prep=prep.id, twin=twin)
    state, value = next(iter(prep.sets.items()))
    return message("rules/unused-prep/no-job", prep=prep.id, state=state, value=value)
