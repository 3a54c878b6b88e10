"""Finds texts that tell to cut, drill or blow out (words in data/forbidden.toml)."""

import re
from collections.abc import Iterator
from functools import cache

from undertrim.check.instructions import clauses, sentences, told
from undertrim.check.phrases import Rough, compiled
from undertrim.resources import table

_BEHIND = 5
"""How many words behind a verb tell what it is done to."""


def find(text: str) -> Iterator[str]:
    """Every word or phrase of a text that tells to alter what is there, once a sentence."""
    if not _any().may_stand_in(text):
        return
    for sentence in sentences(text):
        found = [word for clause in clauses(sentence) for word in (*_verbs(clause), *_phrases(clause))]
        yield from found[:1]


def _verbs(clause: str) -> Iterator[str]:
    for match in told(clause, _orders()):
        behind = re.findall(r"\w+", clause[match.end() :].lower())[:_BEHIND]
        if not set(behind) & set(table("forbidden")["alteration"]["harmless"]):
            yield match["verb"] or match["doing"]


def _phrases(clause: str) -> Iterator[str]:
    yield from (match[0] for match in told(clause, _means()))


@cache
def _any() -> Rough:
    words = table("forbidden")["alteration"]
    return Rough((*words["verbs"], *words["gerunds"], *words["phrases"]))


@cache
def _orders() -> re.Pattern[str]:
    """A verb where an order stands: at the head of a clause, behind a comma or a word that leads to one; or 'by drilling'."""
    words = table("forbidden")["alteration"]
    lead = rf"(?:^\s*|,\s*|\b(?:{'|'.join(words['orders'])})\s+)(?:\w+ly\s+)?"
    either = rf"{lead}(?P<verb>{'|'.join(words['verbs'])})\b(?!-)"
    return re.compile(rf"(?:{either})|\bby\s+(?P<doing>{'|'.join(words['gerunds'])})\b", re.IGNORECASE)


@cache
def _means() -> re.Pattern[str]:
    return compiled(table("forbidden")["alteration"]["phrases"], table("forbidden")["groups"])
