"""A record does not tell to use what its maker forbids: a memory keeper.

## What it finds

A text that tells to keep the memories alive with a supply of their own, in a record with `memory_keeper:
forbidden`. A sentence that forbids it passes.

## Why it matters

The supply feeds the restraint unit too. The battery is off, the wait is over, and the bag is live.

## Bad

    restraint: {wait: 2 min, memory_keeper: forbidden}
    after_battery:
      before:
        keeper: {do: Plug a memory keeper into the socket so that the presets stay.}    # here
      checked_none: [after]

error: the maker forbids a memory keeper, and the text tells to use one: 'Plug a memory keeper' (take it out: note the settings before, and set them again after)

## Good

    restraint: {wait: 2 min, memory_keeper: forbidden}
    after_battery:
      before:
        presets: {do: Write down the presets. Do not use a memory keeper.}
      checked_none: [after]

Where the maker allows it:

    restraint: {wait: 2 min, memory_keeper: allowed}
    after_battery:
      before:
        keeper: {do: Plug in a memory keeper.}
      checked_none: [after]
"""

from collections.abc import Iterator
from functools import cache
from re import Pattern

from undertrim.check.findings import Finding, Subject
from undertrim.check.instructions import clauses, sentences, told
from undertrim.check.phrases import Rough, compiled
from undertrim.record.problem import Level
from undertrim.resources import table
from undertrim.words import message

LEVEL = Level.ERROR


def check(subject: Subject) -> Iterator[Finding]:
    """Every text that tells to use one against the maker's word."""
    facts = subject.record.restraint
    if facts is None or facts.memory_keeper != "forbidden":
        return
    for pointer, text in subject.texts:
        phrase = next(_told(text), "") if _keepers().may_stand_in(text) else ""
        if phrase and pointer[-1] not in ("hazard", "consequence"):
            yield Finding(pointer, message("rules/memory-keeper/told", phrase=phrase))


def _told(text: str) -> Iterator[str]:
    for sentence in sentences(text):
        for clause in clauses(sentence):
            yield from (match[0] for match in told(clause, _phrases()))


@cache
def _keepers() -> Rough:
    """What every one of the phrases names."""
    return Rough(table("forbidden")["groups"]["keeper"])


@cache
def _phrases() -> Pattern[str]:
    words = table("forbidden")
    return compiled(words["keeper"]["phrases"], words["groups"])
