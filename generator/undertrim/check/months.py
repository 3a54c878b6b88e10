"""Half-open spans of months, compared and shown."""

from undertrim.record.model import Built, Month
from undertrim.words import Message, message


def common(one: Built, other: Built) -> Built | None:
    """The months that two spans share; None if there are none."""
    span = Built(
        max(one.from_, other.from_, key=lambda month: month.index),
        min(one.to, other.to, key=lambda month: month.index),
    )
    return span if span.from_.index < span.to.index else None


def span(first: Month, end: Month) -> Message:
    """A span as people write a half-open one: '[2016-05, 2016-07)'."""
    return message("months/span", first=first, end=end)


def within(first: Month, end: Month) -> Message:
    """A span for the middle of a sentence: 'in 2016-05' for one month, else the span."""
    return message("months/one", month=first) if end.index - first.index == 1 else span(first, end)
