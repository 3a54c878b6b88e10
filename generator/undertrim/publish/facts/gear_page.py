"""A piece of gear for its page: every size and word of its record under the title that the schema gives it, and where it is made for."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any

from undertrim.derive.fit.duty_kinds import named
from undertrim.derive.fit.stock import Gear
from undertrim.derive.fit.tried import told
from undertrim.publish.encoding import Published
from undertrim.publish.facts import claimable, dimensions, whose, words
from undertrim.publish.facts.gear_sketch import sketch
from undertrim.publish.facts.pin_colours import colour
from undertrim.publish.pictures.drawings.gear import Sketch
from undertrim.record.fields import Node, root
from undertrim.record.gear import Assembly
from undertrim.record.model import Blank, Bolts, Face, Hole, When
from undertrim.record.model.kinds import OPENINGS
from undertrim.record.model.kinds.receiver.gear import ReceiverGear
from undertrim.record.units import Quantity
from undertrim.words import Items, Message, Value, message, word

_WHOLE: Mapping[type, Callable[[Any], Value]] = {
    Assembly: lambda step: step.do,
    Bolts: dimensions.bolts,
    Face: dimensions.face,
    Hole: dimensions.hole,
}
"""What is said in one piece wherever it stands."""
_CODES: Mapping[str, Callable[[str], Value]] = {
    "function": lambda code: word("functions", "function", code, "words"),
    "needs": lambda code: word("functions", "function", code, "words"),
    "provides": lambda code: word("functions", "function", code, "words"),
    "keeps": named,
    "outputs": lambda code: message(f"levels/{code}"),
    "inputs": lambda code: message(f"levels/{code}"),
    "takes": lambda code: message(f"levels/{code}"),
    "gives": lambda code: message(f"levels/{code}"),
    "behaves": lambda code: message(f"behaviours/{code}"),
    "level": lambda code: message(f"levels/{code}"),
    "wakes_by": lambda code: message(f"amplifier-shown/by-{code}"),
    "comes_with": lambda code: message(f"gear-card/with-{code}"),
    "makes_turn_on": lambda code: message("facts/unknown" if code == "unknown" else f"new/{code}"),
    "filter_order": lambda code: message(f"filter-orders/{code}"),
    "mount": lambda code: message(f"tweeter-shown/mount-{code}"),
    "alters": lambda code: message(f"altering/{code}"),
    "colour": lambda text: made.words if (made := colour(text)) else text,
}
"""Fields whose values are codes, with what a code is called: a page says words."""
_ELSEWHERE = frozenset({"maker", "model", "note", "suits", "tried", "source"})
"""Fields that the page shows in a place of their own."""


@dataclass(frozen=True, slots=True)
class PieceOfGear:
    """What the page of a piece of gear shows; `suits` are the openings that it is made for, `goes_in` whether gear of its kind goes into openings by itself, `command` what says where on a terminal. `doubts` are sizes in dispute, `tried` what was seen in which opening of which vehicle, `claimable` its facts at their addresses."""

    id: str
    name: str
    sort: str
    kind: Value
    demo: bool
    whose: Value
    rows: Sequence[tuple[Value, Value]]
    note: str
    suits: Sequence[tuple[str, str]]
    goes_in: bool
    command: str
    sketch: Sketch | None
    doubts: Sequence[Message]
    evidence: Sequence[Message]
    tried: Sequence[tuple[str, str, Message]]
    claimable: Published | None


def piece(item: Gear, names: Mapping[str, str]) -> PieceOfGear:
    """A piece of gear as its page shows it; `names` are what the gear in stock is called, by id."""
    facts: Any = item.record.gear if item.record else item.facts
    if isinstance(facts, ReceiverGear):
        facts = replace(facts, lead_set=names.get(facts.lead_set, facts.lead_set))
    node = root("gear").child("gear")
    assert node
    return PieceOfGear(
        id=item.id,
        name=item.name,
        sort=item.facts.kind,
        kind=message(f"gear-kinds/{item.facts.kind}"),
        demo=item.demo,
        whose=whose.shown(item.whose).words,
        rows=[*_rows(facts, node), *_source(facts, node)],
        note=item.facts.note,
        suits=list(dict.fromkeys((place.vehicle, place.opening) for place in item.facts.suits)),
        goes_in=any(isinstance(item.facts, opening.takes) for opening in OPENINGS.values()),
        command=f"undertrim fit --everywhere {item.id}",
        sketch=sketch(item),
        doubts=item.doubts,
        evidence=[told(piece) for piece in item.record.evidence.values()] if item.record else (),
        tried=[(one.vehicle, one.opening, one.said) for one in item.tried],
        claimable=claimable.listed(item.record, item.id) if item.record else None,
    )


def _source(facts: Any, node: Node) -> Iterator[tuple[Value, Value]]:
    """The evidence that the sizes rest on, behind all of them."""
    named = node.child("source")
    if facts.source and named:
        yield named.schema["title"], Items(facts.source, "comma")


def _rows(facts: Any, node: Node) -> Iterator[tuple[Value, Value]]:
    """A field of a record with its title; one that says nothing is left out."""
    for one in fields(facts):
        below = node.child(one.name)
        said = _field(one.name, getattr(facts, one.name), below) if below and one.name not in _ELSEWHERE else ""
        if said != "":
            yield below.schema["title"] if below else "", said


def _field(name: str, value: Any, node: Node) -> Value:
    in_words = _CODES.get(name)
    if in_words and isinstance(value, tuple):
        return Items(tuple(map(in_words, value)), "semicolon") if value else ""
    return in_words(value) if in_words and value else _said(value, node)


def _said(value: Any, node: Node | None) -> Value:
    if value is None or value == "" or value == () or value == {}:
        return ""
    if isinstance(value, Quantity | Blank):
        return words.quantity(value)
    if isinstance(value, When):
        return ""
    if isinstance(value, tuple):
        return Items(tuple(_said(one, node.child(0) if node else None) for one in value), "semicolon")
    if isinstance(value, Mapping):
        named = (message("gear-page/unit", title=name, value=_said(one, node.child(name) if node else None)) for name, one in value.items())  # fmt: skip
        return Items(tuple(named), "semicolon")
    if type(value) in _WHOLE:
        return _WHOLE[type(value)](value)
    if is_dataclass(value):
        return Items(tuple(_titled(title, said) for title, said in _rows_of(value, node)), "comma")
    return value if isinstance(value, int | float) else str(value)


def _rows_of(value: Any, node: Node | None) -> Iterator[tuple[Value, Value]]:
    yield from _rows(value, node) if node else ()


def _titled(title: Value, said: Value) -> Value:
    return message("gear-page/unit", title=title, value=said)
