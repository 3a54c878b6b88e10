"""Inline allows: `# allow <rule>: <reason>` on the guilty line, or alone on the line above it.

An allow needs a reason, names a rule that exists, and expires when it hides nothing. What looks like one inside a
quoted text or a text of several lines is text.
"""

import re
from bisect import bisect_right
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from undertrim.record.problem import Level, Position, Problem
from undertrim.record.source import Source
from undertrim.words import Message, message

RULE = "allow"
FIXED = ("yaml", "schema", "crash", "limit", "defeats-safety", RULE)
"""What cannot be allowed."""

_ALLOW = re.compile(r"(?:^|\s)#\s*allow\s+(?P<rule>[\w-]+)\s*(?P<rest>.*)$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Allow:
    """One allow: where it stands, the line it speaks of, the rule and the reason."""

    position: Position
    line: int
    rule: str
    reason: str


def allows(source: Source) -> list[Allow]:
    """The allows written in a file."""
    lines = source.text.splitlines()
    found = []
    for number, line in enumerate(lines, 1):
        for match in _ALLOW.finditer(line):
            place = Position(number, line.index("#", match.start()) + 1)
            if not _inside_text(source, place) and (not match["rest"] or match["rest"][0] == ":"):
                alone = line.lstrip().startswith("#")
                found.append(Allow(place, 0 if alone else number, match["rule"], match["rest"].lstrip(": ")))
    return list(_aimed(found, lines))


def _inside_text(source: Source, place: Position) -> bool:
    """Whether a place is in one of the texts; they stand in the order of the file, and none in another."""
    before = bisect_right(source.spans, place, key=lambda span: span[0])
    return before > 0 and place < source.spans[before - 1][1]


def _aimed(found: Sequence[Allow], lines: Sequence[str]) -> Iterator[Allow]:
    """The allows, those that stand alone aimed at the next line that is neither blank nor only a comment."""
    speaking = [number for number, line in enumerate(lines, 1) if line.strip() and not line.lstrip().startswith("#")]
    for allow in found:
        after = bisect_right(speaking, allow.position.line)
        following = speaking[after] if after < len(speaking) else allow.position.line
        yield allow if allow.line else replace(allow, line=following)


def apply(
    path: Path, written: Sequence[Allow], problems: Iterable[Problem], rules: Collection[str], ran: Collection[str]
) -> Iterator[Problem]:
    """The problems of one file that none of its allows hides, and problems with the allows themselves.

    `rules` are all there are, `ran` those that looked at the whole file: only their allows can be found to hide nothing.
    """
    good = {
        (allow.line, allow.rule): allow
        for allow in written
        if allow.reason and allow.rule in rules and allow.rule not in FIXED
    }
    used = set()
    for problem in problems:
        key = (problem.position.line, problem.rule)
        if key in good:
            used.add(key)
        else:
            yield problem
    for allow in written:
        complaint = _complaint(allow, rules, ran, used)
        if complaint:
            yield Problem(path, allow.position, Level.ERROR, RULE, complaint)


def _complaint(
    allow: Allow, rules: Collection[str], ran: Collection[str], used: Collection[tuple[int, str]]
) -> Message | None:
    if allow.rule in FIXED:
        return message("check/not-allowable", rule=allow.rule)
    if allow.rule not in rules:
        return message("check/no-rule", rule=allow.rule)
    if not allow.reason:
        return message("check/no-reason", rule=allow.rule)
    if allow.rule in ran and (allow.line, allow.rule) not in used:
        return message("check/hides-nothing", rule=allow.rule)
    return None
