"""Every part must be needed: by an opening, or by another part or preparation.

## What it finds

A part that in no car comes off before anything else, does not move over to an opening and is not `reached_for` its own sake. A fastener under
it that is marked `leave: yes` does not need it off.

## Why it matters

No procedure ever names such a part. It is a prerequisite somebody forgot to write down, and the tech levers
at what it still holds.

## Bad

    parts:
      screw-cap:    # here
        name: Screw cap
        release: unclip
        after: [screw-cap]
      console-lid:    # here
        name: Console lid
        release: lift
        after: [console-mat]
      console-mat:
        name: Console mat
        release: lift
      bezel:
        name: Radio bezel
        release: pull
        goes_to: dash
        held_by: [{bolt: T50, count: 1, leave: yes, under: screw-cap}]

error: nothing needs 'screw-cap' off (name it in 'behind', 'after' or 'under' of what it holds back, or remove it)
error: nothing needs 'console-lid' off (name it in 'behind', 'after' or 'under' of what it holds back, or remove it)

    variants:
      dash:
        ask: Which dash does it have?
        choices:
          early: {label: Early dash, tell: Round vents}
          late: {label: Late dash, tell: Square vents}
    parts:
      brace:    # here
        name: Brace
        release: unscrew
        when: {dash: early}
      radio:
        name: Factory radio
        release: slide
        after: [{part: brace, when: {dash: late}}]
        replaced: yes

error: nothing needs 'brace' off in any car that has it (see whether its 'when' agrees with the 'when' of what names it)

## Good

    variants:
      dash:
        ask: Which dash does it have?
        choices:
          early: {label: Early dash, tell: Round vents}
          late: {label: Late dash, tell: Square vents}
    preps:
      battery:
        name: Battery off
        sets: {battery: off}
        after: [battery-cover]
        how: Take the clamp off.
    parts:
      battery-cover:
        name: Battery cover
        release: lift
      brace:
        name: Brace
        release: unscrew
        when: {dash: late}
      knee-panel:
        name: Knee panel
        release: pull
      glovebox:
        name: Glovebox
        release: swing
      screw-cap:
        name: Screw cap
        release: unclip
      switch-panel:
        name: Switch panel
        release: pull
        goes_to: dash
      radio:
        name: Factory radio
        release: slide
        after: [brace]
        after_any: [{from-left: [knee-panel], from-right: [glovebox]}]
        held_by: [{screw: T20, count: 1, under: screw-cap}]
        replaced: yes
      sill-trim:
        name: Sill trim
        release: lift
      tailgate-lining:
        name: Tailgate lining
        release: pull
        reached_for: Camera cable
    runs:
      battery-to-boot:
        name: Battery to the boot
        from: Battery
        to: Boot floor
        length: 5 m
        trims: [sill-trim]
"""

from collections.abc import Iterator

from undertrim.check.conditions import undeclared
from undertrim.check.findings import Finding, Subject
from undertrim.check.links import read_in_full
from undertrim.derive.procedure.nodes import Layout
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every part that nothing waits for."""
    if not read_in_full(subject):
        return
    used = {name for car in subject.cars for name in _needed(subject.planner.layout(car))}
    used |= {name for run in subject.record.runs.values() for name in run.trims}
    idle = [part for part in subject.record.parts.values() if part.id not in used]
    if not idle:
        return
    anywhere = _needed(subject.planner.layout({}))
    mistyped = any(undeclared(subject.record))
    for part in idle:
        if part.id not in anywhere and part.goes_to in ("", *subject.record.openings):
            yield Finding(("parts", part.id), message("rules/unused-part/nothing-needs", part=part.id), key=True)
        elif part.id in anywhere and not mistyped:  # a mistyped choice is its own problem
            yield Finding(("parts", part.id), message("rules/unused-part/in-no-car", part=part.id), key=True)


def _needed(layout: Layout) -> set[str]:
    """The ids of what something else waits for in one car."""
    return {
        layout.nodes[other].thing.id
        for user, before in layout.graph.needs.items()
        for other in before
        if layout.nodes[other].thing is not layout.nodes[user].thing  # an opening may have a part's id
    }
