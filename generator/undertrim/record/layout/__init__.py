"""The one way in which the text of a record is laid out; nothing that it says, and no comment, is changed by that."""

from undertrim.record.layout import modeline
from undertrim.record.layout.laying import Laying
from undertrim.record.layout.notes import notes
from undertrim.record.layout.proof import CannotLay, proved
from undertrim.record.migrations import gathering, grouping_functions, leaving_out, shortening, side_by_side
from undertrim.record.migrations.marked import Text
from undertrim.record.source import Source, read_text
from undertrim.record.spreading import SAYS_ONCE
from undertrim.words import message

__all__ = ["CannotLay", "laid_out", "shorter"]


def laid_out(source: Source, kind: str, line: str = "") -> str:
    """The text of a file that was read without problems, laid out; `line` is put first where it has none such.

    Raises CannotLay where the file has problems or holds no record, and where the new text would not say the same.
    """
    before = _plain_ends(source.as_typed)
    if before.problems or not isinstance(before.data, dict) or not before.data:
        raise CannotLay(message("format/unreadable"))
    marked = Text.of(before.text)
    once = before.data.get("format") == SAYS_ONCE
    laying = Laying(kind, marked, notes(marked), once, before.data)
    text = modeline.with_line("\n".join(laying.lines()) + "\n", line)
    proved(before, read_text(text, source.path), kind)
    return text.replace("\n", "\r\n") if "\r\n" in source.text else text


def shorter(source: Source) -> Source:
    """A vehicle record of format 2 without what follows anyway, and in short forms; any other as it is. Raises CannotLay."""
    typed = source.as_typed
    if typed.problems or not isinstance(typed.data, dict) or typed.data.get("format") != SAYS_ONCE:
        return typed
    text = typed.text
    for step in (
        grouping_functions.grouped,
        leaving_out.left_out,
        side_by_side.listed,
        shortening.shortened,
        gathering.gathered,
    ):
        text = step(text)
    made = read_text(text, typed.path)
    proved(typed, made, "vehicle")
    return made


def _plain_ends(source: Source) -> Source:
    """The same with one sign at the end of each line."""
    text = source.text.replace("\r\n", "\n").replace("\r", "\n")
    return source if text == source.text else read_text(text, source.path)
