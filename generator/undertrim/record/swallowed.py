"""Finds what YAML would swallow without a word: the end of a text behind a '#', and a '?' before a word in brackets.

A comment behind a plain value is taken for one where it is set off as people set comments off: an allow, or '#' with a space behind
it and two before it. One space before it is enough behind a single word, unless a digit follows: 'no # checked', but not 'Clip # 2'.
"""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field

from ruamel.yaml.events import CollectionEndEvent, CollectionStartEvent, Event, ScalarEvent

from undertrim.record.problem import Position
from undertrim.record.yaml_text import LONGEST, in_quotes
from undertrim.words import Message, message

Report = Callable[[Position, Message], None]

_COMMENT = re.compile(r"(?P<gap>[ \t]+)(?P<said>#.*?)[ \t]*$")
_ALLOW = re.compile(r"#\s*allow\s+[\w-]+\s*(?::|$)", re.IGNORECASE)
_SET_OFF = re.compile(r"#+(?:[ \t]|$)")
_NUMBERED = re.compile(r"#[ \t]*(?:[0-9]|$)")
_IN_BRACKETS = re.compile(r"[ \t]*[,\]}]")


@dataclass
class Watch:
    """Looks at the events of one text, given as `lines`, and reports what was about to be lost."""

    lines: Sequence[str]
    report: Report
    found: list[Position] = field(default_factory=list)
    brackets: list[bool] = field(default_factory=list)
    """For each list or mapping that is open, whether it is one in brackets."""

    def over(self, events: Iterator[Event]) -> Iterator[Event]:
        """The events as they come; a text that was cut is given on whole."""
        for event in events:
            if isinstance(event, CollectionStartEvent | CollectionEndEvent):
                self._enter_or_leave(event)
            elif isinstance(event, ScalarEvent):
                self._question(event)
                if not event.style:
                    self._cut(event)
            yield event

    def accounts_for(self, place: Position) -> bool:
        """Whether what cannot be read at a place, or ends there, only follows from what was found on its line or above it."""
        return any(found.line in (place.line, place.line - 1) for found in self.found)

    def _enter_or_leave(self, event: CollectionStartEvent | CollectionEndEvent) -> None:
        if isinstance(event, CollectionStartEvent):
            self.brackets.append(bool(event.flow_style))
        else:
            self.brackets.pop()

    def _say(self, line: int, column: int, said: Message) -> None:
        self.found.append(Position(line + 1, column + 1))
        self.report(self.found[-1], said)

    def _question(self, event: ScalarEvent) -> None:
        mark = event.start_mark
        before = self._line(mark.line)[: mark.column].rstrip()
        if before.endswith("?") and event.end_mark.index > mark.index:
            said = message("yaml/lost-question", whole=in_quotes(f"?{event.value}"))
            self._say(mark.line, len(before) - 1, said)

    def _cut(self, event: ScalarEvent) -> None:
        mark = event.end_mark
        line = self._line(mark.line)
        found = _COMMENT.match(line, mark.column) if "#" in line else None
        if found and not _is_comment(event.value, found["gap"], found["said"]):
            lost = _IN_BRACKETS.split(found["said"])[0] if self.brackets[-1:] == [True] else found["said"]
            self._say(mark.line, found.start("said"), _lost(event.value, lost))
            event.value = f"{event.value} {lost}".lstrip()

    def _line(self, number: int) -> str:
        return self.lines[number] if number < len(self.lines) else ""


def _is_comment(value: str, gap: str, said: str) -> bool:
    if _ALLOW.match(said):
        return True
    if not _SET_OFF.match(said):
        return False
    return not value or "\t" in gap or len(gap) > 1 or (" " not in value and not _NUMBERED.match(said))


def _lost(value: str, lost: str) -> Message:
    whole = f"{value} {lost}".lstrip()
    if len(whole) >= LONGEST:
        return message("yaml/lost-text", lost=in_quotes(lost), whole=in_quotes(whole))
    comment = f"{value}  # {lost.lstrip('# ')}".strip()
    return message("yaml/lost-text-or-comment", lost=in_quotes(lost), whole=in_quotes(whole), comment=comment)
