"""A thread has a head that goes with it.

## What it finds

A fastener whose drive is neither what the standards put on its thread nor what they put on the next thread up
or down. Flange heads and makers' own screws are often one size off, so that much passes. The heads are from
ISO 4014, DIN 931, ISO 14583 and ISO 7046; how far off is common practice, no source.

## Why it matters

One of the two was misread. The tech brings the wrong socket, or buys the wrong bolt. It may well be right all
the same.

## Bad

    parts:
      amplifier:
        name: Amplifier
        release: unscrew
        held_by:
          - {nut: hex 7 mm, count: 3, thread: M6}    # here
          - {bolt: T20, count: 2, thread: M8x1.25}    # here
          - {screw: PH3, count: 2, thread: ST4.2}    # here

warning: 'nut: hex 7 mm' with thread 'M6': ISO 4014 gives an M6 hexagon 10 mm across flats (it may well be right: measure both again, then allow it with what you measured)
warning: 'bolt: T20' with thread 'M8x1.25': ISO 14583 gives an M8 pan head the hexalobular drive T45 (it may well be right: measure both again, then allow it with what you measured)
warning: 'screw: PH3' with thread 'ST4.2': an ST4.2 tapping screw usually takes PH2 (it may well be right: measure both again, then allow it with what you measured)

## Good

    parts:
      amplifier:
        name: Amplifier
        release: unscrew
        held_by:
          - {nut: hex 10 mm, count: 3, thread: M6}
          - {bolt: hex 8 mm, count: 2, thread: M6, note: Flange heads.}
          - {bolt: hex 17 mm, count: 2, thread: M10}
          - {bolt: hex 12 mm, count: 2, thread: M8}
          - {bolt: T25, count: 1, thread: M6}
          - {screw: PH2, count: 2, thread: ST3.5}
          - {screw: hex key 5 mm, count: 2, thread: M6}
"""

from collections.abc import Iterator

from undertrim.check.fasteners import held
from undertrim.check.findings import Finding, Subject
from undertrim.record.drives import thread_note
from undertrim.record.problem import Level
from undertrim.record.thread_heads import near_head
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every fastener whose head is far from what its thread usually has."""
    for item in held(subject):
        thread, drive = item.fastener.thread, item.fastener.drive
        note = thread_note(thread, drive) if thread and drive else None
        if note and drive and not near_head(thread, drive):
            kind, what = item.fastener.kind, item.fastener.what
            found = message("rules/thread-and-head/unusual-head", kind=kind, what=what, thread=thread, note=note)
            yield Finding((*item.pointer, "thread"), found)
