"""Asks the rules for the collection, and remembers what they found of records that they hold against each other a few at a time."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path

from undertrim.check import kept
from undertrim.check.findings import Card, CollectionRule, Finding, Meeting, MeetingRule
from undertrim.check.one_file import Looked, crashed
from undertrim.check.register import COLLECTION_RULES
from undertrim.record.digests import joined
from undertrim.record.ledger import Ledger
from undertrim.record.problem import Position, Problem


@dataclass(frozen=True)
class Across:
    """What the collection rules say, by file, and of each problem the records it rests on (none: it may rest on any)."""

    found: dict[Path, dict[Problem, frozenset[str]]] = field(default_factory=dict)

    def add(self, problem: Problem, *records: str) -> None:
        """Enter a problem; one that several pairs of records give rests on all of them."""
        here = self.found.setdefault(problem.file, {})
        here[problem] = here.get(problem, frozenset()) | frozenset(records)

    def of(self, looked: Looked) -> Sequence[Problem]:
        """Those of one file."""
        return list(self.found.get(looked.path, ()))


def across(looked: Sequence[Looked], known: Ledger | None = None, rules: Collection[str] = COLLECTION_RULES) -> Across:
    """What the collection rules say, or those of them in `rules`; what names a record that could not be read in full is left out. `known` is what was found before."""
    cards = [item.card for item in looked if item.card]
    unread = {item.id for item in looked if not item.card}
    keys = {item.path: item.key for item in looked}
    said = Across()
    for rule_id, rule in ((name, rule) for name, rule in COLLECTION_RULES.items() if name in rules):
        try:
            for card, finding in findings(rule, cards, rule_id, known):
                if not finding.rests_on(unread):
                    at = _place(card, finding, keys[card.path], known)
                    said.add(Problem(card.path, at, rule.LEVEL, rule_id, finding.said), *finding.beside)
        except Exception as error:  # noqa: BLE001 - whatever it is, the run goes on and the rule is named
            if cards:
                said.add(crashed(cards[0].path, rule_id, error))
    return said


def findings(
    rule: CollectionRule | MeetingRule, cards: Sequence[Card], rule_id: str = "", known: Ledger | None = None
) -> Iterator[tuple[Card, Finding]]:
    """What one rule says of the cards, with the card it is about."""
    if isinstance(rule, MeetingRule):
        ask = partial(_remembered, known, rule_id) if known else _found
        for meeting in rule.meetings(cards):
            yield from ((meeting.card, finding) for finding in ask(meeting))
    else:
        yield from rule.check_all(cards)


def _found(meeting: Meeting) -> list[Finding]:
    every = meeting.find()
    return [replace(finding, beside=meeting.beside) for finding in every] if meeting.beside else list(every)


def _remembered(known: Ledger, rule_id: str, meeting: Meeting) -> list[Finding]:
    """What was found when the same records met before, or is found now. The records that a meeting names beside it are those of today."""
    key = joined(rule_id, meeting.card.address, *meeting.rests_on)
    plain = known.get(key)
    if plain == []:
        return []
    try:
        found = [kept.as_finding(*one) for one in plain]
    except (TypeError, ValueError, AttributeError, ImportError):
        found = list(meeting.find())
        known.put(key, [kept.finding(one) for one in found])
    return [replace(one, beside=meeting.beside or one.beside) for one in found]


def _place(card: Card, finding: Finding, key: str, known: Ledger | None) -> Position:
    """Where a finding stands, or what is around it; remembered for as long as the file stays what it is, by its `key`."""
    name = f"{key} {finding.pointer}"
    place = known.get(name) if known and key else None
    if place:
        return Position(*place)
    pointer, places = finding.pointer, card.details.places
    while pointer and pointer not in places:
        pointer = pointer[:-1]
    at = places.get(pointer, Position(1, 1))
    if known and key:
        known.put(name, [at.line, at.column])
    return at
