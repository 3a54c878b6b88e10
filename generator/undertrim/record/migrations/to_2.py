"""From format 1 to 2: what was said many times is said once, in the places and the words that stand there already.

One pass after the other, each over a text that reads: the groups, the cars, then what follows anyway is left out, then lists of fields, then short forms.
"""

from undertrim.record.migrations import (
    cars,
    gathering,
    grouping,
    grouping_functions,
    leaving_out,
    shortening,
    side_by_side,
)
from undertrim.record.migrations.marked import Edit, Text, edited
from undertrim.record.migrations.moved import CannotMove
from undertrim.record.source import Source, read_text
from undertrim.words import message

NUMBER = 2

_PASSES = (
    grouping.grouped,
    grouping_functions.grouped,
    cars.named,
    leaving_out.taken_back,
    leaving_out.left_out,
    side_by_side.listed,
    shortening.shortened,
    gathering.gathered,
)


def migrate(source: Source) -> str:
    """The text of a record of format 1 in format 2. Raises CannotMove where a pass leaves no record."""
    text = _renumbered(source.as_typed.text)
    for step in _PASSES:
        text = step(text)
        again = read_text(text, source.path)
        if again.problems or not isinstance(again.data, dict):
            raise CannotMove(message("upgrade/unreadable"))
    return text


def _renumbered(text: str) -> str:
    marked = Text.of(text)
    node = marked.at(("format",))
    assert node is not None
    return edited(text, [Edit(node.start_mark.index, marked.end(node), str(NUMBER))])
