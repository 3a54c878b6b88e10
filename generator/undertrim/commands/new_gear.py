"""Begins the record of a piece of gear: what its kind must say is asked for, and what it may say besides."""

from collections.abc import Mapping
from functools import cache
from pathlib import Path, PurePosixPath

from undertrim.check.runner import check_entry
from undertrim.check.starting import Fresh
from undertrim.commands import wires_told
from undertrim.commands.gathering import Gathering, Lacking, names, nested_all
from undertrim.derive.evidence import readings
from undertrim.derive.questions.blocks import BlockField, fields
from undertrim.record import build, identity, layout
from undertrim.record.changing.writing_values import typed
from undertrim.record.fields import Node, root
from undertrim.record.layout import modeline
from undertrim.record.model import VehicleFacts
from undertrim.record.problem import printable
from undertrim.record.schema import asked_by
from undertrim.record.source import Data, Pointer, read_text
from undertrim.record.store import Workspace
from undertrim.words import Message, message, spoken

_HOME = ("gear",)
_NOT_ASKED = ("kind", "source", "tried")
"""What is said by the command, and what rests on evidence, which comes with answers about the gear."""


@cache
def kinds() -> tuple[str, ...]:
    """The kinds of gear."""
    return tuple(kind for branch in _node().schema["allOf"] for kind in asked_by(branch["if"])[1])


def questions(kind: str) -> list[BlockField]:
    """What is asked of a piece of a kind: what it must say first."""
    node = _node()
    branch = next(one for one in node.schema["allOf"] if kind in asked_by(one["if"])[1])["then"]
    must = ["maker", "model", *branch["required"]]
    may = [name for name in branch["propertyNames"]["enum"] if name not in (*must, *_NOT_ASKED)]
    wires = wires_told.fields(kind, tuple(must), tuple(may))
    first, then = ((dict.fromkeys(some, needed)) for some, needed in ((must, True), (may, False)))
    return [*fields("gear", node, _HOME, first), *wires, *fields("gear", node, _HOME, then)]


def _node() -> Node:
    return root("gear/gear")


def asked(place: Workspace, kind: str, given: dict[str, str], *, asks: bool) -> Fresh | Message:
    """The record, or why there is none; nothing is written. Raises Usage and Stopped."""
    gathering, wanted = Gathering(given, asks), questions(kind)
    gathering.refuse_unknown(names(wanted))
    wires = [one for one in wanted if isinstance(one, wires_told.Wires) and one.name not in given]
    if asks:
        gathering.of([one for one in wanted if one not in wires])
        gathering.given |= {one.name: text for one in wires if (text := wires_told.asked(one))}
        gathering.asks = False
    said = gathering.of(wanted)
    path = place.own("gear", _path(kind, said))
    if path.exists():
        return message("copy/there", path=printable(str(place.shown(path))))
    return _made(place, kind, said)


def wrong(kind: str, given: Mapping[str, str]) -> list[tuple[str, Message]]:
    """What is wrong with answers that are given by name, and which are lacking."""
    wanted = {one.name: one for one in questions(kind)}
    found = [(name, message("import/no-gear-field", name=name, kind=kind)) for name in given if name not in wanted]
    found += [(name, said) for name, value in given.items() if name in wanted and (said := wanted[name].wrong(value))]
    if found:
        return found
    try:
        Gathering(dict(given), asks=False).of(list(wanted.values()))
    except Lacking as error:
        return [("", error.lacking)]
    return found


def made(place: Workspace, kind: str, given: Mapping[str, str]) -> Fresh:
    """The record of answers that nothing is wrong with."""
    return _made(place, kind, Gathering(dict(given), asks=False).of(questions(kind)))


def there(place: Workspace, path: Path) -> dict[str, str] | None:
    """What the record of a piece says, by name; None where it has none that can be read."""
    data = place.load(path).source.data if path.exists() else None
    return flat(data["gear"]) if isinstance(data, dict) and isinstance(data.get("gear"), dict) else None


def flat(data: Data, home: str = "") -> dict[str, str]:
    """The single values of a block, each by the keys that lead to it."""
    found: dict[str, str] = {}
    for name, said in data.items():
        found |= flat(said, f"{home}{name}/") if isinstance(said, dict) else {f"{home}{name}": _words(said)}
    return found


def _words(said: Data) -> str:
    return ", ".join(map(str, said)) if isinstance(said, list) else str(said)


def same(name: str, one: str, other: str) -> bool:
    """Whether two values of a field mean the same: quantities by what they are, whatever their unit."""
    node: Node | None = _node()
    for key in name.split("/"):
        node = node.child(key) if node else None
    kind = node.schema.get("quantity", {}).get("kind", "") if node else ""
    return readings.same(readings.read(one, kind, "", ""), readings.read(other, kind, "", ""))


def _path(kind: str, said: Mapping[Pointer, Data]) -> PurePosixPath:
    facts = build.section("gear", {"kind": kind, **nested_all(said, _HOME)})
    assert not isinstance(facts, VehicleFacts)
    return identity.gear_path(facts)


def _made(place: Workspace, kind: str, answers: Mapping[Pointer, Data]) -> Fresh:
    path = place.own("gear", _path(kind, answers))
    said = {"kind": kind, **nested_all(answers, _HOME)}
    text = layout.laid_out(read_text(_text(said), path), "gear", modeline.wanted(path, "gear", place.root))
    entry = place.entry(path, read_text(text, place.shown(path)))
    return Fresh(entry, tuple(check_entry(entry)))


def _text(said: Mapping[str, Data]) -> str:
    lines = (f"  {name}: {typed(value, _node().child(name), in_brackets=False)}" for name, value in said.items())
    return "\n".join(("format: 1", f"lang: {spoken().tag}", "", "gear:", *lines, ""))
