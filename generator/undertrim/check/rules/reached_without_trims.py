"""What is reached for is covered by something.

## What it finds

A cable run that is `reached_for` something and names no `trims`.

## Why it matters

Reaching a run means taking off what lies over it. Without trims the visit is offered and has no steps: the tech stands before the
car and knows nothing more than before.

## Bad

    runs:
      to-tailgate: {name: To the tailgate, from: Dash, to: Tailgate, length: 5.2 m, reached_for: Camera cable}    # here

warning: 'to-tailgate' is reached for 'Camera cable', and nothing comes off for it (name under 'trims' what lies over it, or leave 'reached_for' out)

## Good

    runs:
      to-tailgate: {name: To the tailgate, from: Dash, to: Tailgate, length: 5.2 m, trims: [radio], reached_for: Camera cable}
      to-boot: {name: To the boot, from: Battery, to: Boot, length: 5 m}
"""

from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING


def check(subject: Subject) -> Iterator[Finding]:
    """Every run that is a job without steps."""
    for run in subject.record.runs.values():
        if run.reached_for and not run.trims and subject.intact(("runs", run.id)):
            said = message("rules/reached-without-trims/nothing", run=run.id, wanted=run.reached_for)
            yield Finding(("runs", run.id, "reached_for"), said, key=True)
