"""An instruction begins with what to do.

## What it finds

A text of a part, preparation or opening that begins with "do not", "don't" or "never".

## Why it matters

A hand at work reads the first words. What must not be done belongs into `cautions`, where it stands before the step and says why;
and a "not" that slipped in while editing turns the step round.

## Bad

    parts:
      bezel:
        name: Radio bezel
        release: pull
        how: Do not start at the top corners.    # here

warning: the text begins with 'Do not' (say first what to do; a prohibition is a caution and says why)

## Good

    parts:
      bezel:
        name: Radio bezel
        release: pull
        how: Start at the lower corners. Do not pull at the top.
"""

import re
from collections.abc import Iterator

from undertrim.check.findings import Finding, Subject
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

_TEXTS = ("how", "refit_how", "restore", "install_how", "test_how", "test")
_NOT = re.compile(r"\s*(do not|don['’]t|never)\b", re.IGNORECASE)


def check(subject: Subject) -> Iterator[Finding]:
    """Every instruction that begins with a prohibition."""
    for item in subject.fields:
        told = item.pointer[-1:] and item.pointer[-1] in _TEXTS and "maxLength" in item.node.schema
        found = _NOT.match(item.value) if told and isinstance(item.value, str) else None
        if found:
            yield Finding(item.pointer, message("rules/starts-with-do-not/prohibition", words=found[1]))
