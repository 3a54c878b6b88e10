"""A signal word is not louder than the consequence behind it.

## What it finds

DANGER, WARNING or CAUTION over a consequence that speaks of things alone, and DANGER over one that speaks of lesser
injury. The words are those of ANSI Z535.6; what counts as a thing is a list of ours, common practice. A consequence
that names airbags, belts, brakes, steering or seats is never about things alone.

## Why it matters

Where every scratch is a WARNING, nobody reads the one about the airbag.

## Bad

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        cautions:
          - signal: WARNING    # here
            hazard: Brittle clips.
            consequence: The trim breaks.
            avoid: Warm it first.
          - signal: DANGER    # here
            hazard: Sharp edges.
            consequence: Cut hands.
            avoid: Wear gloves.

warning: 'WARNING' is too strong for 'breaks': nobody is hurt (write 'NOTICE', or say who is hurt)
warning: 'DANGER' is too strong for 'Cut' (write 'CAUTION', or 'WARNING' if it can be serious)

## Good

    parts:
      radio:
        name: Factory radio
        release: slide
        replaced: yes
        cautions:
          - {signal: NOTICE, hazard: Brittle clips., consequence: The trim breaks., avoid: Warm it first.}
          - {signal: CAUTION, hazard: Brittle clips., consequence: The trim breaks and cuts fingers., avoid: Wear gloves.}
          - {signal: WARNING, hazard: The leaking door., consequence: A torn seal can keep the airbag from firing., avoid: Renew it.}
          - {signal: WARNING, hazard: The spring., consequence: Eye injury., avoid: Wear glasses.}
          - {signal: DANGER, hazard: Orange cables., consequence: Touching them kills., avoid: Stop.}
"""

from collections.abc import Iterator

from undertrim.check import hazards
from undertrim.check.findings import Finding, Subject
from undertrim.check.severity import Severity, judge
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every caution that says more than its consequence."""
    for pointer, caution in hazards.stated(subject):
        severity, word = judge(caution.consequence)
        signal = caution.signal
        if severity is Severity.PROPERTY and signal != "NOTICE":
            found = message("rules/signal-word-overstated/nobody-hurt", signal=signal, word=word)
            yield Finding((*pointer, "signal"), found)
        elif severity is Severity.INJURY and signal == "DANGER":
            found = message("rules/signal-word-overstated/danger-for-injury", signal=signal, word=word)
            yield Finding((*pointer, "signal"), found)
