"""The one way in which a record is laid out: order of its fields, lines, blank lines. Nothing that it says changes.

Our own lines over the nodes of the text, and no emitter of a library: those lay out quotes, long texts and comments as they see
fit, and a comment would end up beside what it does not speak of.
"""

from undertrim.record.layout.lines import Page
from undertrim.record.migrations import leaving_out, shortening, side_by_side
from undertrim.record.migrations.marked import Text, comments
from undertrim.record.migrations.moved import CannotMove
from undertrim.record.migrations.same import checked
from undertrim.record.source import Data, Source, read_text
from undertrim.record.spreading import SAYS_ONCE
from undertrim.words import SaidError, message

__all__ = ["CannotLayOut", "laid_out", "shorter"]


class CannotLayOut(SaidError):  # noqa: N818 - it names the state of the record
    """A record that stays as it is; `said` says why."""


def laid_out(source: Source, kind: str) -> str:
    """The text of a record (`vehicle` or `gear`) in the one layout. Raises CannotLayOut where it would not say the same."""
    typed = source.as_typed
    if typed.problems or not isinstance(typed.data, dict):
        raise CannotLayOut(message("layout/broken"))
    marked = Text.of(typed.text)
    text = marked.newline.join([*Page(marked, kind).lines(), ""])
    again = read_text(text, typed.path)
    if again.problems or not _same(typed.data, again.data):
        raise CannotLayOut(message("layout/says-otherwise"))
    if sorted(comments(typed.text)) != sorted(comments(text)):
        raise CannotLayOut(message("layout/comments"))
    return text


def shorter(source: Source) -> Source:
    """A vehicle record of format 2 without what follows anyway, and in short forms; any other as it is. Raises CannotLayOut."""
    typed = source.as_typed
    if typed.problems or not isinstance(typed.data, dict) or typed.data.get("format") != SAYS_ONCE:
        return typed
    text = typed.text
    for step in (leaving_out.left_out, side_by_side.listed, shortening.shortened):
        text = step(text)
    made = read_text(text, typed.path)
    try:
        checked(typed, made)
    except CannotMove as error:
        raise CannotLayOut(error.said) from error
    return made


def _same(one: Data, other: Data) -> bool:
    """Whether two say the same, and name in one order whatever has names of its own."""
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(_same(value, other[key]) for key, value in one.items())
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(_same, one, other))
    return bool(one == other)
