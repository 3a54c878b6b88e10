"""What may be said once, read from a schema: the words of ours that stand beside a field, laid out for going through a record.

`short` (a text or a list in place of a mapping), `follows` (what the field is where nothing is said), `unless` (a field beside which
nothing follows), `also` (fields that may stand behind it in one list), `group` (things that share what is said of all of them),
`named` (a text may be the id of what stands in that section), `aside` (sections that hold nothing but what is named elsewhere) and
`leads` (its text names what may stand in several forms), `bySide` (what is in it may differ by side), `namedBy` (the field by which its things say what they are about). A list of one needs no word: its brackets may be
left out wherever the schema asks for a list.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cache

from undertrim.record.fields import Node, node_at, root
from undertrim.record.schema import Schema, blanks
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class Follows:
    """A field that need not be said: from what it `follows`, and the field beside which it does not."""

    field: str
    source: str
    unless: str = ""


@dataclass(slots=True)
class Shape:
    """How the value of one field may be typed; `fields` are those of a mapping, `other` is what its own names lead to."""

    fields: dict[str, "Shape"] = field(default_factory=dict)
    other: "Shape | None" = None
    items: "Shape | None" = None
    is_list: bool = False
    short_text: str = ""
    short_list: tuple[str, ...] = ()
    named: str = ""
    follows: tuple[Follows, ...] = ()
    group: "Shape | None" = None
    aside: Mapping[str, "Shape"] = field(default_factory=dict)
    words: frozenset[str] = frozenset()
    unless: str = ""
    also: tuple[str, ...] = ()
    quantity: str = ""
    blanks: tuple[str, ...] = ()
    title: Value = ""
    prose: bool = False
    varies: bool = False
    """Whether it has a `when`, so that it can stand once for each kind of car."""
    free_ids: bool = False
    """Whether what stands in it has ids of the record's own."""
    named_by: str = ""
    """The field by which a form of a thing in it says whose it is, since its id is another."""
    may_be_unknown: bool = False
    is_open: bool = False
    """Whether nothing follows from its lack but that it is not known: no word of a list, and `unknown` may not stand in its place."""
    by_side: bool = False
    """Whether it can stand once for each side, as it has a `side` that says where alone it is."""
    leads: str = ""
    """What its text names: see `redirecting.py`."""
    plain: bool = True
    """Whether it is typed in one way only, and so is all below."""

    def below(self, step: str) -> "Shape | None":
        """The shape of what stands under a key."""
        return self.fields.get(step, self.other)

    def is_group(self, keys: Iterable[str], section: str) -> bool:
        """Whether what has these keys, in a section of this shape, is a group: it holds the name of the section."""
        return self.group is not None and section in keys

    def of_group(self, section: str) -> "Shape":
        """The shape of a group in a section of this shape, whose things are like those beside it."""
        assert self.group
        return Shape(fields={**self.group.fields, section: Shape(other=self.other)})


@cache
def whole(name: str) -> Shape:
    """The shape of a whole record of one kind."""
    return _shape(root(name))


def _shape(node: Node) -> Shape:
    """The shape of a node and of all below it."""
    says, short, quantity = node.schema, node.schema.get("short", {}), node.schema.get("quantity", {})
    made = Shape(
        is_list=says.get("type") == "array",
        short_text=short.get("text", ""),
        short_list=tuple(short.get("list", ())),
        named=says.get("named", ""),
        words=frozenset(says.get("enum", ())),
        unless=says.get("unless", ""),
        also=tuple(says.get("also", ())),
        quantity=quantity.get("kind", ""),
        blanks=blanks(quantity),
        title=says.get("title", ""),
        prose=says.get("paragraphs", False),
        varies="when" in says.get("properties", ()),
        by_side=bool(says.get("bySide")),
        free_ids=str(says.get("propertyNames", {}).get("$ref", "")).endswith("common#/$defs/id") or "namedBy" in says,
        named_by=says.get("namedBy", ""),
        may_be_unknown=_may_be_unknown(says),
        is_open=not _may_be_unknown(says) and "enum" not in says,
        leads=says.get("leads", ""),
    )
    _fill(made, node)
    made.plain = _is_plain(made)
    return made


def _is_plain(made: Shape) -> bool:
    """Whether it is typed in one way only, and so is all below."""
    below = (*made.fields.values(), *(one for one in (made.other, made.items) if one))
    own = made.is_list, made.short_text, made.short_list, made.named, made.follows, made.group, made.aside, made.also
    return not made.varies and not any(own) and all(one.plain for one in below)


def _fill(made: Shape, node: Node) -> None:
    children = {name: child for name in node.schema.get("properties", ()) if (child := node.child(name))}
    made.fields = {name: _shape(child) for name, child in children.items()}
    made.follows = tuple(_follows(name, child) for name, child in children.items() if "follows" in child.schema)
    if isinstance(node.schema.get("additionalProperties"), dict) and (child := node.child("*")):
        made.other = _shape(child)
    if "items" in node.schema and (child := node.child(0)):
        made.items = _shape(child)
    if "group" in node.schema:
        made.group = _shape(node_at(node.home, "group"))
    made.aside = {name: _shape(node_at(node.home, "aside", name)) for name in node.schema.get("aside", ())}


def _may_be_unknown(says: Schema) -> bool:
    """Whether the word `unknown` may stand in its place."""
    return bool(
        says.get("mayBeUnknown") or says.get("quantity", {}).get("unknown") or "unknown" in says.get("enum", ())
    )


def _follows(name: str, node: Node) -> Follows:
    return Follows(name, node.schema["follows"], node.schema.get("unless", ""))
