"""A text counts no fasteners that the fields beside it count otherwise.

## What it finds

"The four screws" in a text of a part or preparation that has six of them, and any number above what the
fields come to. A number below it passes where the text may mean some of them: "the two upper screws". One
fastener alone, rough numbers and fasteners of something else ("four screws of the speaker") are left alone;
so is everything whose count is not known.

## Why it matters

The tech who has taken out what the sentence says pulls, and the screws that it left out tear the plastic.

## Bad

    parts:
      bezel:
        name: Radio bezel
        release: slide
        held_by: [{screw: T20, count: 6}, {clip: push, count: 4, at: {top: 2, bottom: 2}}]
        how: Take out the four screws. Free the five upper clips.    # here
        refit_how: Put in all 8 screws.    # here
    preps:
      battery:
        name: Battery off
        sets: {battery: off}
        held_by: [{nut: hex 10 mm, count: 1}]
        how: Undo both nuts and lift the clamp off.    # here

error: the text says 'both nuts', the fields beside it come to 1 (mend one of them, or leave the number out of the text)
error: the text says 'five upper clips', the fields beside it come to 4 (mend one of them, or leave the number out of the text)
error: the text says 'four screws', the fields beside it come to 6 (mend one of them, or leave the number out of the text)
error: the text says '8 screws', the fields beside it come to 6 (mend one of them, or leave the number out of the text)

## Good

    parts:
      bezel:
        name: Radio bezel
        release: slide
        held_by:
          - {screw: T20, count: 2}
          - {bolt: hex 7 mm, count: 4, at: {corners: 4}}
          - {clip: push, count: unknown}
        how: Take out the two screws, then the four bolts. Take out all six screws. Free the nine clips.
        refit_how: Start the two upper bolts first. Four screws of the speaker stay in. Put in three of the six screws.
      mat:
        name: Mat
        release: lift
        held_by: [{clip: push, count: 2}]
        how: Free both clips. Four screws are under it.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator

from undertrim.check import numbers
from undertrim.check.fasteners import held
from undertrim.check.findings import Finding, Subject
from undertrim.check.numbers import Said
from undertrim.check.stated import stated
from undertrim.record.model import Fastener
from undertrim.record.problem import Level
from undertrim.record.source import Pointer
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every text that counts more, or all, and not what the fields count."""
    fasteners: dict[Pointer, list[Fastener]] = defaultdict(list)
    for item in held(subject):
        fasteners[item.pointer[:2]].append(item.fastener)
    for thing in stated(subject, ("parts", "preps")):
        for pointer, text in thing.texts:
            for said in numbers.find(text):
                yield from _look(pointer, said, fasteners[thing.place])


def _look(pointer: Pointer, said: Said, fasteners: Iterable[Fastener]) -> Iterator[Finding]:
    meant = [fastener for fastener in fasteners if fastener.kind in said.kinds]
    if not meant or not all(isinstance(fastener.count, int) for fastener in meant):
        return
    total = sum(fastener.count for fastener in meant if isinstance(fastener.count, int))
    sums = _sums(group for fastener in meant for group in _groups(fastener))
    if said.number > total or (said.whole and said.number not in sums):
        yield Finding(pointer, message("rules/count-in-text/counts-differ", text=said.text, total=total))


def _groups(fastener: Fastener) -> Iterator[int]:
    """The numbers that a text may speak of by themselves: each edge, two corners of four, or all."""
    if fastener.at and sum(fastener.at.values()) == fastener.count:
        for edge, number in fastener.at.items():
            yield from (number // 2, number - number // 2) if edge == "corners" else (number,)
    elif isinstance(fastener.count, int):
        yield fastener.count


def _sums(groups: Iterable[int]) -> set[int]:
    """Everything that some of the groups come to, as far as numbers in texts are read."""
    sums = {0}
    for group in groups:
        sums |= {total + group for total in sums if total + group <= numbers.LARGEST}
    return sums
