"""What may be said once, read from a schema: the words of ours that stand beside a field, laid out for going through a record.

`short` (a text or a list in place of a mapping), `follows` (what the field is where nothing is said), `unless` (a field beside which
nothing follows), `also` (fields that may stand behind it in one list), `group` (things that share what is said of all of them),
`named` (a text may be the id of what stands in that section), `aside` (sections that hold nothing but what is named elsewhere) and
`leads` (its text names what may stand in several forms), `together` (a mapping in which some fields of a block may stand on one line; each says
it by `among`), `bySide` (what is in it may differ by side), `namedBy` (the field by which its things say what they are about). A list of one needs no word: its brackets may be
left out wherever the schema asks for a list.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any

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
    keyed: str = ""
    """The field of which a word may be the only key of the mapping, with the others behind it."""
    keyed_list: tuple[str, ...] = ()
    """The fields that may stand behind such a key as a list."""
    listed: Mapping[str, str] = field(default_factory=dict)
    """Words by which a list of several fields says this one, each with the value that it stands for."""
    group_block: str = ""
    """The block of the schema that a group of such things is."""
    together: Mapping[str, "Shape"] = field(default_factory=dict)
    """Mappings of a block in which some of its fields may stand; the whole has those fields alone."""
    plain: bool = True
    """Whether it is typed in one way only, and so is all below."""

    def below(self, step: str) -> "Shape | None":
        """The shape of what stands under a key."""
        if self.keyed and self.is_keyed((step,)):
            return Shape(fields=self.fields, short_list=self.keyed_list, prose=True)
        return self.together.get(step) or self.fields.get(step, self.other)

    def is_keyed(self, keys: Iterable[str]) -> bool:
        """Whether a mapping with these keys is one of which a word of a field is the only key."""
        names = list(keys)
        return bool(self.keyed) and len(names) == 1 and names[0] not in self.fields

    @property
    def order(self) -> tuple[str, ...]:
        """The names of a mapping in the order of the schema: what stands together stands where its first field would."""
        return tuple(dict.fromkeys(one for name in self.fields for one in (*self._holding(name), name)))

    def _holding(self, name: str) -> Iterator[str]:
        return (mapping for mapping, shape in self.together.items() if name in shape.fields)

    def is_group(self, keys: Iterable[str], section: str) -> bool:
        """Whether what has these keys, in a section of this shape, is a group: it holds the name of the section."""
        return self.group is not None and section in keys

    def of_group(self, section: str) -> "Shape":
        """The shape of a group in a section of this shape, whose things are like those beside it."""
        assert self.group
        return replace(self.group, fields={**self.group.fields, section: Shape(other=self.other)})


@cache
def whole(name: str) -> Shape:
    """The shape of a whole record of one kind."""
    return _shape(root(name))


def _shape(node: Node) -> Shape:
    """The shape of a node and of all below it."""
    says, quantity = node.schema, node.schema.get("quantity", {})
    made = Shape(
        is_list=says.get("type") == "array",
        **_short_forms(says.get("short", {})),
        listed=says.get("listed", {}),
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


def _short_forms(short: Schema) -> dict[str, Any]:
    """The fields of a shape that say what may be typed in place of a mapping."""
    fields, key = tuple(short.get("list", ())), short.get("key", "")
    return {
        "short_text": short.get("text", ""),
        "short_list": () if key else fields,
        "keyed": key,
        "keyed_list": fields if key else (),
    }


def _is_plain(made: Shape) -> bool:
    """Whether it is typed in one way only, and so is all below."""
    below = (*made.fields.values(), *(one for one in (made.other, made.items) if one))
    own = (
        made.is_list,
        made.short_text,
        made.short_list,
        made.named,
        made.follows,
        made.group,
        made.aside,
        made.also,
        made.together,
        made.keyed,
    )
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
        group = node_at(node.home, "group")
        made.group, made.group_block = _shape(group), f"{group.home[0]}/{group.home[1][-1]}"
    made.together = {
        name: Shape(
            fields={one: made.fields[one] for one, child in children.items() if child.schema.get("among") == name}
        )
        for name in node.schema.get("together", ())
    }
    made.aside = {name: _shape(node_at(node.home, "aside", name)) for name in node.schema.get("aside", ())}


def _may_be_unknown(says: Schema) -> bool:
    """Whether the word `unknown` may stand in its place."""
    return bool(
        says.get("mayBeUnknown") or says.get("quantity", {}).get("unknown") or "unknown" in says.get("enum", ())
    )


def _follows(name: str, node: Node) -> Follows:
    return Follows(name, node.schema["follows"], node.schema.get("unless", ""))
