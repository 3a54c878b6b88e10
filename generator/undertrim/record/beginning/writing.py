"""The text of a new car's record: one block for each thing, with comments where something is to be known or to be done."""

from collections.abc import Iterator, Mapping, Sequence

from undertrim.record.beginning.car import NewCar
from undertrim.record.beginning.whole import sections
from undertrim.record.changing.writing_values import typed
from undertrim.record.fields import Node, root
from undertrim.record.source import Data
from undertrim.words import message, say, spoken

_ON_ONE_LINE = ("restraint", "after_battery")
_LINES = ("vehicle", "evidence")
"""Sections that are one line, and those of which each entry is one; of all others each thing is a block."""

_SHARED = ("parts", "openings", "runs")
"""What a sister says in its stead."""


def begun(car: NewCar, shared: Sequence[str] = ()) -> str:
    """The text, in format 2 and in the reader's language; `shared` are the lines by which it takes its parts and openings from a sister."""
    return "".join(f"{line}\n" for line in _lines(car, shared))


def _lines(car: NewCar, shared: Sequence[str]) -> Iterator[str]:
    yield from _comment("head-shared" if shared else "head")
    yield from (*_comment("head-usual"), *_comment("head-correct", name=car.path.stem))
    yield from (*_comment("head-ask", name=car.path.stem), "format: 2", f"lang: {spoken().tag}")
    notes, told = _notes(car), sections(car)
    for section in [name for name in told if not (shared and name in _SHARED)]:
        yield from ("", *notes.get(section, ()), *_section(section, told[section]))
        if section == "vehicle" and shared:
            yield from ("", *shared)


def _notes(car: NewCar) -> Mapping[str, list[str]]:
    """What is said above the sections."""
    named = {name: list(_comment(name)) for name in ("areas", "openings", "functions")}
    named["restraint"] = [f"# {say(message('copy/look-up'))}"]
    named |= {"parts": list(_comment("split"))} if car.said["dash"] == "split" else {}
    return named | ({"vehicle": list(_comment("years"))} if car.only_years else {})


def _section(name: str, said: Data) -> Iterator[str]:
    node = root("vehicle").child(name)
    if name in _ON_ONE_LINE:
        yield f"{name}: {typed(said, node, in_brackets=False)}"
        return
    yield f"{name}:"
    for key, value in said.items():
        yield from _entry(key, value, node.child(key) if node else None, depth=1 if name in _LINES else 0)


def _entry(key: str, value: Data, node: Node | None, *, depth: int, indent: str = "  ") -> Iterator[str]:
    """A thing with its fields below it, the parts of a group each with theirs; what is deeper stands on one line."""
    if not isinstance(value, dict) or depth:
        yield f"{indent}{key}: {typed(value, node, in_brackets=False)}"
        return
    yield f"{indent}{key}:"
    for name, inner in value.items():
        below = node.child(name) if node else None
        if name == "parts":
            yield f"{indent}  parts:"
            for part, fields in inner.items():
                of_part = root("vehicle").child("parts")
                yield from _entry(part, fields, of_part and of_part.child(part), depth=0, indent=f"{indent}    ")
        else:
            yield from _entry(name, inner, below, depth=1, indent=f"{indent}  ")


def _comment(code: str, **values: str) -> Iterator[str]:
    yield f"# {say(message(f'beginning/{code}', **values))}"
