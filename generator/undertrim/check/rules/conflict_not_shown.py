"""A conflict leads to its fact, and the fact takes a side that can be defended.

## What it finds

A conflict about something that is not one value of the record; one whose claims are the same value in other words
(`30 min` and `1800 s`, `yellow` and `YE`); a value that none of its claims gives; an open conflict about a safety fact that does not hold the cautious value; and a `settled_by` that settles nothing: no
evidence, not measured, not among the claims, or its value does not stand in the record. Which value is the
cautious one is written beside each fact in the program's table; where no side is safe, it is `unknown`.

## Why it matters

The average of two claims is a third one that nobody measured. And where people can be hurt, the tech must be
told the worse of the two until somebody has looked. Two claims of one value are no conflict: the mark would only hide
those that are.

## Bad

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 62.5 mm, datum: skin, over: whole-travel}    # here
        crash_sensor: no    # here
    evidence:
      e2: {how: told, on: 2026-03-09, by: tw}
    conflicts:
      depth:
        about: openings/front-door/depth/clear
        claims: [{says: 64 mm, source: e1}, {says: 61 mm, source: e2}]
      sensor:
        about: openings/front-door/crash_sensor
        claims: [{says: no, source: e1}, {says: yes, source: e2}]
      room:
        about: openings/front-door/room_to_grille    # here
        claims: [{says: 20 mm, source: e1}, {says: 22 mm, source: e2}]
      hole:
        about: openings/front-door/hole/diameter
        claims: [{says: 146 mm, source: e1}, {says: 14.6 cm, source: e2}]    # here

error: '62.5 mm' stands here, which the conflict 'depth' does not know: it has '64 mm' and '61 mm' (write the cautious one, '61 mm', until a measurement settles it)
error: 'no' stands here while the conflict 'sensor' is open, and people can be hurt (write the cautious one, 'yes', until a measurement settles it)
error: the record has no single value at 'openings/front-door/room_to_grille' (write the fact down there, or mend the keys that lead to it)
error: the claims of the conflict 'hole' are one value: '146 mm' and '14.6 cm' (take the conflict out, and name both as sources of the fact)

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 64 mm, datum: skin, over: whole-travel}
        room_to_grille: 22 mm
    evidence:
      e2: {how: told, on: 2026-03-09, by: tw}
      e3: {how: measured, on: 2026-03-09, by: tw}
    conflicts:
      depth:
        about: openings/front-door/depth/clear
        claims: [{says: 64 mm, source: e1}, {says: 61 mm, source: e2}]
        settled_by: e2    # here
      room:
        about: openings/front-door/room_to_grille
        claims: [{says: 20 mm, source: e1}, {says: 22 mm, source: e2}]
        settled_by: e1    # here
      hole:
        about: openings/front-door/hole/diameter
        claims: [{says: 146 mm, source: e1}, {says: 145 mm, source: e2}]
        settled_by: e3    # here
      width:
        about: openings/dash/face/width
        claims: [{says: 182 mm, source: e1}, {says: 181 mm, source: e2}]
        settled_by: e4    # here

error: 'e2' was not measured, so it settles nothing (measure, add it as evidence and as a claim, and name that)
error: 'e1' settles the conflict 'room', but its value does not stand in the record: '22 mm' does (write what it says: '20 mm')
error: 'e3' is none of the sources of the conflict 'hole' (add what it says as a claim)
error: no evidence 'e4' (evidence ids here: e1, e2, e3)

## Good

    openings:
      front-door:
        name: Front door speakers
        kind: speaker
        area: front-door
        behind: [radio]
        hole: {shape: round, diameter: 146 mm}
        depth: {clear: 6.4 cm, datum: skin, over: whole-travel}
        room_to_grille: 22 mm
        crash_sensor: yes
        high_voltage: clear
    restraint: {wait: 3 min}
    evidence:
      e2: {how: told, on: 2026-03-09, by: tw}
    conflicts:
      depth:
        about: openings/front-door/depth/clear
        claims: [{says: 64 mm, source: e1}, {says: 61 mm, source: e2}]
        settled_by: e1
      room:
        about: openings/front-door/room_to_grille
        claims: [{says: 20 mm, source: e1}, {says: 22 mm, source: e2}]
      sensor:
        about: openings/front-door/crash_sensor
        claims: [{says: no, source: e1}, {says: yes, source: e2}]
      cables:
        about: openings/front-door/high_voltage
        claims: [{says: clear, source: e1}, {says: near, source: e2}]
        settled_by: e1
      wait:
        about: restraint/wait
        claims: [{says: 2 min, source: e1}, {says: 180 s, source: e2}]
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.derive.evidence.conflicts import Dispute, Unsettled, disputes
from undertrim.derive.evidence.facts import Fact
from undertrim.record.complaints import nearest
from undertrim.record.problem import Level

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every conflict that leads nowhere, is passed over by its fact, or is settled by nothing."""
    for dispute in disputes(subject.record):
        home = ("conflicts", dispute.conflict.id)
        if not subject.intact(home):
            continue
        if dispute.fact is None:
            message = f"the record has no single value at '{dispute.conflict.about}'"
            hint = "write the fact down there, or mend the keys that lead to it"
            yield Finding((*home, "about"), message, hint, about=tuple(dispute.conflict.about.split("/")))
            continue
        if dispute.agreed:
            yield _agreed(dispute)
            continue
        yield from _standing(dispute, dispute.fact)
        yield from _settling(dispute, dispute.fact, list(subject.record.evidence))


def _agreed(dispute: Dispute) -> Finding:
    said = " and ".join(f"'{claim.says}'" for claim in dispute.claims)
    message = f"the claims of the conflict '{dispute.conflict.id}' are one value: {said}"
    hint = "take the conflict out, and name both as sources of the fact"
    return Finding(("conflicts", dispute.conflict.id, "claims"), message, hint)


def _standing(dispute: Dispute, fact: Fact) -> Iterator[Finding]:
    """Whether the value in the record is one that the conflict allows."""
    name = dispute.conflict.id
    hint = f"write the cautious one, '{dispute.cautious}', until a measurement settles it"
    if not dispute.stands and not dispute.holds_cautious:
        claimed = " and ".join(f"'{claim.says}'" for claim in dispute.claims)
        message = f"'{fact.text}' stands here, which the conflict '{name}' does not know: it has {claimed}"
        yield Finding(fact.pointer, message, hint, about=(name,))
    elif dispute.rule.safety and not dispute.settled and not dispute.holds_cautious:
        message = f"'{fact.text}' stands here while the conflict '{name}' is open, and people can be hurt"
        yield Finding(fact.pointer, message, hint, about=(name,))


def _settling(dispute: Dispute, fact: Fact, known: list[str]) -> Iterator[Finding]:
    """Whether what settles it does."""
    if dispute.unsettled is None:
        return
    name, by = dispute.conflict.id, dispute.conflict.settled_by
    says = " or ".join(f"'{claim.says}'" for claim in dispute.claims if by in claim.source)
    message, hint = {
        Unsettled.ABSENT: (f"no evidence '{by}'", nearest(by, known, "evidence ids here")),
        Unsettled.NOT_MEASURED: (
            f"'{by}' was not measured, so it settles nothing",
            "measure, add it as evidence and as a claim, and name that",
        ),
        Unsettled.NO_CLAIM: (f"'{by}' is none of the sources of the conflict '{name}'", "add what it says as a claim"),
        Unsettled.NOT_STANDING: (
            f"'{by}' settles the conflict '{name}', but its value does not stand in the record: '{fact.text}' does",
            f"write what it says: {says}",
        ),
    }[dispute.unsettled]
    yield Finding(("conflicts", name, "settled_by"), message, hint, about=(by,))
