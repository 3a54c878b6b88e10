"""What a new block asks for, field by field, from its schema: a car that has no record yet, a piece of gear."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from undertrim.derive.questions.forms import UNKNOWN, form
from undertrim.derive.questions.question import AnswerForm
from undertrim.record.changing.edits import nested
from undertrim.record.fields import Node
from undertrim.record.refusals import refusals
from undertrim.record.schema import asked_by
from undertrim.record.sentences import write
from undertrim.record.source import Data, Pointer
from undertrim.words import Message, Value, WayOut, message

_TEXTS = ("string", "integer")


@dataclass(frozen=True, slots=True)
class BlockField:
    """One value of a block: where it stands in the file (its schema called `schema`), what it is called and means, and the form of its answer.

    It is asked only where the answer at `only_if` has one of these values. One that is not `optional` must be answered; a field of a block that
    may be left out is `optional` as the first of it, and `whole` names the block, which is left out with its first.
    """

    schema: str
    place: Pointer
    title: Value
    means: Value
    form: AnswerForm
    optional: bool = False
    only_if: tuple[Pointer, tuple[str, ...]] | None = None
    whole: Pointer = ()
    named: str = ""
    reads: Callable[[str], str] = str.strip

    @property
    def name(self) -> str:
        """How it is called where it is typed: as it is `named`, else the keys below the block, joined with '/'."""
        return self.named or "/".join(map(str, self.place[1:]))

    def read(self, typed: str) -> Data:
        """What is typed, as the file has it: words at commas where there may be several, else what `reads` makes of it."""
        if self.form.sort != "choices":
            return self.reads(typed)
        return [word.strip() for word in typed.split(",") if word.strip()]

    def wrong(self, typed: str) -> Message | None:
        """What the schema has against it; None for what it takes."""
        for refusal in refusals(nested(self.place, self.read(typed)), self.schema):
            if refusal.pointer[: len(self.place)] == self.place:
                complaint = next(write(refusal))
                return message("schema/fault", said=complaint.said, hint=WayOut(complaint.said))
        return None


def fields(schema: str, node: Node, home: Pointer, needed: Mapping[str, bool]) -> Iterator[BlockField]:
    """The fields of a block that are single values, or words of a list, in the order of `needed`: by name whether one must be answered."""
    for name, must in needed.items():
        below = node.child(name)
        if below:
            yield from _below(schema, below, (*home, name), optional=not must)


def _below(schema: str, node: Node, place: Pointer, *, optional: bool) -> Iterator[BlockField]:
    """The field itself, or all that a block must have; of a list of blocks its first."""
    says = node.schema
    if "properties" in says:
        conditions = dict(_conditions(says, place))
        block = place if optional else ()
        for number, name in enumerate([one for one in says["properties"] if _is_needed(says, one, conditions)]):
            for one in _below(schema, node.child(name) or node, (*place, name), optional=optional and not number):
                yield replace(one, only_if=conditions.get(name, one.only_if), whole=one.whole or block)
        return
    item = node.child(0) if says.get("type") == "array" else None
    if item and "properties" in item.schema:
        yield from _below(schema, item, (*place, 0), optional=optional)
    elif says.get("type") in _TEXTS or "enum" in says or (item and "enum" in item.schema):
        asked = form(says, place)
        if item:  # its words may stand elsewhere in the schema
            asked = replace(asked, choices=tuple(word for word in item.schema["enum"] if word != UNKNOWN))
        title, means = says.get("title", str(place[-1])), says.get("description", "")
        yield BlockField(schema, place, title, means, asked, optional)


def _is_needed(says: Mapping[str, Data], name: str, conditions: Mapping[str, object]) -> bool:
    return name in says.get("required", ()) or name in conditions


def _conditions(says: Mapping[str, Data], place: Pointer) -> Iterator[tuple[str, tuple[Pointer, tuple[str, ...]]]]:
    """The fields that are needed only beside another one's word."""
    for branch in says.get("allOf", ()):
        asked, words = asked_by(branch["if"])
        for name in branch["then"].get("required", ()):
            yield name, ((*place, asked), tuple(words))
