"""A signal word is as strong as the consequence behind it.

## What it finds

A caution whose consequence speaks of death or serious injury under CAUTION or NOTICE, or of any injury under
NOTICE. Also one that says the same text twice as hazard, consequence or avoidance. The words are those of ANSI
Z535.6: DANGER will and WARNING could cause death or serious injury, CAUTION could cause lesser injury, NOTICE is
about things.

## Why it matters

People read the word and its colour first. What can kill under a NOTICE is read when there is time.

## Bad

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        cautions:
          - signal: CAUTION    # here
            hazard: The bag may fire.
            consequence: It can kill.
            avoid: Battery off first.
          - signal: NOTICE    # here
            hazard: Sharp edges.
            consequence: Cut hands and torn cables.
            avoid: Wear gloves.
          - {signal: CAUTION, hazard: Sharp edges., consequence: Cut hands., avoid: sharp edges}    # here

error: 'CAUTION' is too weak for 'kill' in the consequence (write 'WARNING', or 'DANGER' if it will happen)
error: 'NOTICE' is too weak for 'Cut' in the consequence (write 'CAUTION', or 'WARNING' if it can be serious)
error: hazard and avoidance are the same text (say what the danger is, what happens, and how to avoid it)

## Good

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        cautions:
          - {signal: WARNING, hazard: The bag may fire., consequence: It can kill., avoid: Battery off first.}
          - {signal: CAUTION, hazard: Sharp edges., consequence: Cut hands., avoid: Wear gloves.}
          - {signal: NOTICE, hazard: Sharp edges., consequence: Cut cables and crushed clips; turned by hand they break., avoid: Lay cloth over them.}
          - {signal: NOTICE, hazard: A short circuit., consequence: It kills the radio and the battery dies., avoid: Battery off first.}
"""

from collections.abc import Iterator
from itertools import combinations

from undertrim.check import hazards
from undertrim.check.findings import Finding, Subject
from undertrim.check.severity import SIGNALS, Severity, judge
from undertrim.record.model import Caution
from undertrim.record.problem import Level
from undertrim.words import Message, message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every caution that says less than its consequence, and every one that says a text twice."""
    for pointer, caution in hazards.stated(subject):
        severity, word = judge(caution.consequence)
        if severity > SIGNALS[caution.signal]:
            yield Finding((*pointer, "signal"), _too_weak(caution.signal, severity, word))
        for one, other in _same(caution):
            yield Finding(pointer, message("rules/signal-word/same-text", one=one, other=other))


def _too_weak(signal: str, severity: Severity, word: str) -> Message:
    if severity is Severity.SERIOUS:
        return message("rules/signal-word/weak-for-serious", signal=signal, word=word)
    return message("rules/signal-word/weak-for-injury", signal=signal, word=word)


def _same(caution: Caution) -> Iterator[tuple[Message, Message]]:
    said = {
        message("rules/signal-word/hazard"): caution.hazard,
        message("rules/signal-word/consequence"): caution.consequence,
        message("rules/signal-word/avoidance"): caution.avoid,
    }
    for one, other in combinations(said, 2):
        if _plain(said[one]) == _plain(said[other]):
            yield one, other


def _plain(text: str) -> str:
    return " ".join(text.lower().split()).rstrip(".!")
