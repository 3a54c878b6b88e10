"""Begins the record of a piece of gear: what its kind must say is asked for, and what it may say besides."""

from collections.abc import Iterator, Mapping
from functools import cache

from undertrim.check.runner import check_entry
from undertrim.check.starting import Fresh
from undertrim.commands.gathering import Gathering, names, nested_all
from undertrim.derive.questions.blocks import BlockField, fields, takes_more
from undertrim.record import build, identity, layout
from undertrim.record.changing.writing_values import typed
from undertrim.record.fields import Node, root
from undertrim.record.layout import modeline
from undertrim.record.model import VehicleFacts
from undertrim.record.problem import printable
from undertrim.record.schema import asked_by
from undertrim.record.source import Data, read_text
from undertrim.record.store import Workspace
from undertrim.words import Message, message, spoken

_HOME = ("gear",)


@cache
def kinds() -> tuple[str, ...]:
    """The kinds of gear that can be asked for: those of which nothing that they must say takes more than single values."""
    return tuple(kind for kind, must in _by_kind().items() if not any(_takes_more(kind, must)))


def _by_kind() -> Mapping[str, list[str]]:
    """The fields that each kind must have."""
    found = {}
    for branch in _node().schema["allOf"]:
        for kind in asked_by(branch["if"])[1]:
            found[kind] = branch["then"]["required"]
    return found


def _takes_more(kind: str, must: list[str]) -> Iterator[str]:
    return takes_more(_node(), iter(must))


def questions(kind: str) -> list[BlockField]:
    """What is asked of a piece of a kind: what it must say first."""
    node = _node()
    branch = next(one for one in node.schema["allOf"] if kind in asked_by(one["if"])[1])["then"]
    must = ["maker", "model", *branch["required"]]
    may = [name for name in branch["propertyNames"]["enum"] if name not in (*must, "kind")]
    return list(fields("gear", node, _HOME, {**dict.fromkeys(must, True), **dict.fromkeys(may, False)}))


def _node() -> Node:
    return root("gear/gear")


def asked(place: Workspace, kind: str, given: dict[str, str], *, asks: bool) -> Fresh | Message:
    """The record, or why there is none; nothing is written. Raises Usage and Stopped."""
    gathering, wanted = Gathering(given, asks), questions(kind)
    gathering.refuse_unknown(names(wanted))
    said = {"kind": kind, **nested_all(gathering.of(wanted), _HOME)}
    facts = build.section("gear", said)
    assert not isinstance(facts, VehicleFacts)
    path = place.records / "gear" / identity.gear_path(facts)
    if path.exists():
        return message("copy/there", path=printable(str(place.shown(path))))
    text = layout.laid_out(read_text(_text(said), path), "gear", modeline.wanted(path, "gear", place.root))
    entry = place.entry(path, read_text(text, place.shown(path)))
    return Fresh(entry, tuple(check_entry(entry)))


def _text(said: Mapping[str, Data]) -> str:
    lines = (f"  {name}: {typed(value, _node().child(name), in_brackets=False)}" for name, value in said.items())
    return "\n".join(("format: 1", f"lang: {spoken().tag}", "", "gear:", *lines, ""))
