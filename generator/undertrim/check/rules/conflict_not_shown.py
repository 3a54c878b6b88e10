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

from undertrim.check.findings import Finding, GearSubject, Subject
from undertrim.derive.evidence.conflicts import Dispute, Unsettled, disputes
from undertrim.derive.evidence.facts import Fact
from undertrim.record.nearness import suggestion
from undertrim.record.problem import Level
from undertrim.words import Items, Message, all_of, message, one_of, quoted

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every conflict that leads nowhere, is passed over by its fact, or is settled by nothing."""
    yield from _found(subject)


def check_gear(subject: GearSubject) -> Iterator[Finding]:
    """The same for a gear record."""
    yield from _found(subject)


def _found(subject: Subject | GearSubject) -> Iterator[Finding]:
    for dispute in disputes(subject.record):
        home = ("conflicts", dispute.conflict.id)
        if not subject.intact(home):
            continue
        if dispute.fact is None:
            about = dispute.conflict.about
            found = message("rules/conflict-not-shown/no-such-fact", about=about)
            yield Finding((*home, "about"), found, about=tuple(about.split("/")))
            continue
        if dispute.agreed:
            yield _agreed(dispute)
            continue
        yield from _standing(dispute, dispute.fact)
        yield from _settling(dispute, dispute.fact, list(subject.record.evidence))


def _agreed(dispute: Dispute) -> Finding:
    name = dispute.conflict.id
    found = message("rules/conflict-not-shown/one-value", conflict=name, claims=_claimed(dispute))
    return Finding(("conflicts", name, "claims"), found)


def _claimed(dispute: Dispute) -> Items:
    return all_of(*(quoted(claim.says) for claim in dispute.claims))


def _standing(dispute: Dispute, fact: Fact) -> Iterator[Finding]:
    """Whether the value in the record is one that the conflict allows."""
    name = dispute.conflict.id
    both = {"fact": fact.text, "conflict": name, "cautious": dispute.cautious}
    if not dispute.stands and not dispute.holds_cautious:
        found = message("rules/conflict-not-shown/not-claimed", claims=_claimed(dispute), **both)
        yield Finding(fact.pointer, found, about=(name,))
    elif dispute.rule.safety and not dispute.settled and not dispute.holds_cautious:
        yield Finding(fact.pointer, message("rules/conflict-not-shown/incautious", **both), about=(name,))


def _settling(dispute: Dispute, fact: Fact, known: list[str]) -> Iterator[Finding]:
    """Whether what settles it does."""
    if dispute.unsettled is not None:
        found = _unsettled(dispute, dispute.unsettled, fact, known)
        yield Finding(("conflicts", dispute.conflict.id, "settled_by"), found, about=(dispute.conflict.settled_by,))


def _unsettled(dispute: Dispute, why: Unsettled, fact: Fact, known: list[str]) -> Message:
    """Why what is to settle it does not."""
    name, by = dispute.conflict.id, dispute.conflict.settled_by
    match why:
        case Unsettled.ABSENT:
            hint = suggestion(by, known, message("nearness/evidence"))
            return message("rules/conflict-not-shown/no-evidence", evidence=by, hint=hint)
        case Unsettled.NOT_MEASURED:
            return message("rules/conflict-not-shown/not-measured", evidence=by)
        case Unsettled.NO_CLAIM:
            return message("rules/conflict-not-shown/no-claim", evidence=by, conflict=name)
        case Unsettled.NOT_STANDING:
            says = one_of(*(quoted(claim.says) for claim in dispute.claims if by in claim.source))
            facts = {"evidence": by, "conflict": name, "fact": fact.text}
            return message("rules/conflict-not-shown/not-standing", claims=says, **facts)
