"""A text names no size that the fields beside it contradict.

## What it finds

A drive, thread, torque, or the size of a tool or fastener, in a text of a part or preparation whose fields
say something else, and a length in a text of an opening that none of its fields has. Limits ("at least
20 mm"), ways to go ("20 mm rearward") and lengths of cable are left alone. A size that stands in a field may
stand in a text, though it need not: the page shows it from the field.

## Why it matters

The field was mended and the text was not. The tech believes the sentence, and rounds off the screw.

## Bad

    parts:
      bezel:
        name: Radio bezel
        release: pull
        held_by: [{screw: hex 8 mm, count: 4, length: 16 mm}]
        how: Take out the four 7 mm screws and pull the bezel off.    # here
        refit_how: Tighten the screws with a T25 bit.    # here
        cautions:
          - {signal: NOTICE, hazard: The screws (20 mm) are soft., consequence: They shear., avoid: Turn by hand.}    # here

error: the text says '7 mm', the fields beside it 'hex 8 mm' and '16 mm' (mend one of them, or leave the size out of the text)
error: the text says 'T25', the fields beside it 'hex 8 mm' (mend one of them, or leave the size out of the text)
error: the text says '20 mm', the fields beside it 'hex 8 mm' and '16 mm' (mend one of them, or leave the size out of the text)

    preps:
      seat-bolts:
        name: Seat loosened
        sets: {seat: forward}
        held_by: [{bolt: T50, count: 4, thread: M10, torque: 40 N.m}]
        how: Take out the four T50 bolts.
        restore: Put in the M8 bolts and tighten them to 40 N.m.    # here

error: the text says 'M8', the fields beside it 'M10' (mend one of them, or leave the size out of the text)

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel}
        install_how: The glass comes as close as 46 mm.    # here

error: the text says '46 mm', which no field of this opening has (mend the field that it means, or leave it out of the text)

## Good

    parts:
      bezel:
        name: Radio bezel
        release: slide
        held_by:
          - {screw: hex 7/32 in, count: 4, length: 16 mm}
          - {screw: T50, count: 1, leave: yes}
        how: Take out the four 7/32 in (5.5 mm) screws with a 5.5 mm socket, not the T50 one. Slide the bezel 25 mm rearward.
        refit_how: Put the 16 mm screws at the top. The radio then works on 12 V and 10 A for 5 seconds.
        tethers:
          main: {name: Main plug T20, kind: plug, how: Push pin A4 in and lift the latch 3 mm.}
    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        behind: [radio]
        nominal: 6x9 in
        hole: {shape: oval, width: 152 mm, height: 221 mm}
        depth: {clear: 2 1/2 in, datum: skin, over: whole-travel}
        install_how: "Any 6x9 in speaker less than 60 mm deep. Depth is 2 1/2 in (63.5 mm). Leave 100 mm of cable. Put all 4 in."
"""

from collections.abc import Iterator

from undertrim.check import about, mentions
from undertrim.check.findings import Finding, Subject
from undertrim.check.mentions import Mention
from undertrim.check.stated import Stated, stated
from undertrim.record import drives, units
from undertrim.record.drives import Drive
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.record.units import Quantity
from undertrim.words import all_of, message, quoted

LEVEL = Level.ERROR

_EXACT = 0.01
"""mm; closer than any two sizes of tool."""


def check(subject: Subject) -> Iterator[Finding]:
    """Every text that says another size than its fields."""
    for thing in stated(subject, ("parts", "preps")):
        for pointer, text in thing.texts:
            yield from _against_fasteners(pointer, text, thing)
    for opening in stated(subject, ("openings",)):
        for pointer, text in opening.texts:
            yield from _against_opening(pointer, text, opening)


def _against_fasteners(pointer: Pointer, text: str, thing: Stated) -> Iterator[Finding]:
    for one, other in mentions.twins(text, mentions.find(text)):
        beside = _contradicting(text, one, thing)
        if beside and not (other and not _contradicting(text, other, thing)):
            fields = all_of(*map(quoted, dict.fromkeys(beside)))
            yield Finding(pointer, message("rules/size-in-text/against-fasteners", size=one.text, fields=fields))


def _contradicting(text: str, mention: Mention, thing: Stated) -> list[str]:
    """The fields that a size should be among and is not; none where nothing is stated or nothing is meant."""
    size = mention.size
    if about.is_name(text, mention):
        return []
    if isinstance(size, str):
        return [] if size in thing.threads else thing.threads
    if isinstance(size, Drive):
        return [] if _is_known(size, thing) or _is_fuel(text, mention) else [drive.label for drive in thing.drives]
    if size.kind == "torque":
        return _unless_agreed(size, thing.of("torque"))
    return _of_fasteners(text, mention, size, thing)


def _is_known(drive: Drive, thing: Stated) -> bool:
    """Whether a drive is one of the fields'; a pin in the middle may go unsaid."""
    same = {(stated.family.removesuffix("-pin"), stated.size) for stated in thing.drives}
    return drive in thing.drives or (drive.family, drive.size) in same


def _is_fuel(text: str, mention: Mention) -> bool:
    """Whether 'E10' is no socket for want of a fastener or tool beside it."""
    return mention.text[0] == "E" and not about.fastener_or_tool(text, mention)


def _unless_agreed(size: Quantity, beside: list[Quantity]) -> list[str]:
    return [] if any(units.agree(size, known) for known in beside) else [known.text for known in beside]


def _of_fasteners(text: str, mention: Mention, size: Quantity, thing: Stated) -> list[str]:
    sort = about.fastener_or_tool(text, mention)
    lengths = thing.of("length")
    if not sort or about.is_loose(text, mention):
        return []
    if about.is_length(text, mention):
        return _unless_agreed(size, lengths)
    if not thing.drives or any(_turns(size, drive) for drive in thing.drives):
        return []
    heads = [drive.label for drive in thing.drives]
    if sort == "tool":
        return heads
    return [] if any(units.agree(size, known) for known in lengths) else heads + [known.text for known in lengths]


def _turns(size: Quantity, drive: Drive) -> bool:
    """Whether a tool of this size is right for a drive, or goes on it from the other system."""
    near = [near.drive for near in drives.near_equals(drive) if near.verdict != "marginal"]
    return any(tool.unit and tool.size and abs(tool.size - size.value) < _EXACT for tool in (drive, *near))


def _against_opening(pointer: Pointer, text: str, opening: Stated) -> Iterator[Finding]:
    known = opening.of("length")
    for one, other in mentions.twins(text, mentions.find(text)):
        if about.is_loose(text, one) or about.fastener_or_tool(text, one):
            continue
        sizes = [*one.quantities, *(other.quantities if other else ())]
        strange = [size for size in sizes if size.kind == "length" and not any(units.agree(size, k) for k in known)]
        if strange and isinstance(one.size, Quantity) and not (other and len(strange) < len(sizes)):
            yield Finding(pointer, message("rules/size-in-text/against-opening", size=one.text))
