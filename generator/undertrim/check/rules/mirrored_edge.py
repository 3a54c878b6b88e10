"""What exists on both sides is described by front and rear, where left and right would differ.

## What it finds

A part with `each: [left, right]` whose fasteners are spread over the left and right edges in different
numbers. Common practice, no source: the two doors of a pair are mirror images.

## Why it matters

"Left as one faces it" is the hinge edge of one door and the latch edge of the other. The tech pries at the
edge with one clip too few, and breaks the one that is at the other.

## Bad

    parts:
      door-panel:
        name: Door panel
        each: [left, right]
        release: lift
        held_by:
          - {clip: push, count: 5, at: {left: 3, right: 2}}    # here
          - {clip: fir-tree, count: 4, at: {bottom: 3, right: 1}}    # here

warning: 3 at the left edge and 2 at the right are exchanged on the other side (write 'front' and 'rear' instead of 'left' and 'right')
warning: 0 at the left edge and 1 at the right are exchanged on the other side (write 'front' and 'rear' instead of 'left' and 'right')

## Good

    parts:
      door-panel:
        name: Door panel
        each: [left, right]
        release: lift
        held_by:
          - {clip: push, count: 8, at: {left: 3, right: 3, bottom: 2}}
          - {clip: fir-tree, count: 5, at: {front: 3, rear: 2}}
      glovebox:
        name: Glovebox
        release: swing
        held_by: [{screw: T20, count: 3, at: {left: 1, right: 2}}]
      jack-cover:
        name: Cover of the jack
        each: [right]
        release: turn
        held_by: [{clip: metal, count: 3, at: {left: 1, right: 2}}]
"""

from collections.abc import Iterator

from undertrim.check.fasteners import held
from undertrim.check.findings import Finding, Subject
from undertrim.record.model import Part
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every fastener of a paired part that tells left from right."""
    for item in held(subject):
        pointer = (*item.pointer, "at")
        if not isinstance(item.thing, Part) or len(item.thing.each) < 2:
            continue
        left, right = (item.fastener.at.get(edge, 0) for edge in ("left", "right"))
        if left != right:
            yield Finding(pointer, message("rules/mirrored-edge/exchanged", left=left, right=right))
