"""What the preview says on the pages of a record with problems: each with its line, on top of the page and at what it is about."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from operator import itemgetter
from pathlib import Path

from markupsafe import Markup

from undertrim.publish.web import pages
from undertrim.publish.web.views import OPENINGS, RECORD, VIEWS, VISIT, WIRING, View
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.source import Pointer, Source

_SECTIONS: Mapping[str, tuple[View, str]] = {
    "parts": (VISIT, r"step-[a-z-]+:{id}(?:[@:][^\"]*)?"),
    "preps": (VISIT, r"step-[a-z-]+:{id}(?:[@:][^\"]*)?"),
    "openings": (OPENINGS, "opening-{id}"),
    "connectors": (WIRING, "plug-{id}"),
    "evidence": (RECORD, "evidence-{id}"),
    "conflicts": (RECORD, "conflict-{id}"),
}
"""Where a page shows what stands under an id of the record, and what its element is called there."""
_AROUND = 60
"""So many characters of a long line are shown before the place of a problem, and twice as many in all."""


@dataclass(frozen=True, slots=True)
class Noted:
    """A problem of a record for its pages: the line as it was typed up to the place and from there, and the link to what it is about."""

    number: int
    level: str
    line: int
    before: str
    after: str
    message: str
    hint: str
    view: View | None = None
    anchor: str = ""
    href: str = ""


def noted(source: Source, problems: Sequence[Problem], bodies: Mapping[str, str]) -> tuple[Noted, ...]:
    """The problems of a record, errors first; `bodies` are those of its pages, by the name of the view, as far as there are any."""
    lines = source.text.splitlines()
    ordered = sorted(problems, key=lambda problem: (problem.level is not Level.ERROR, problem.position))
    return tuple(_noted(number, one, lines, source, bodies) for number, one in enumerate(ordered, 1))


def _noted(number: int, one: Problem, lines: Sequence[str], source: Source, bodies: Mapping[str, str]) -> Noted:
    at = one.position
    line = lines[at.line - 1] if at.line <= len(lines) else ""
    start = max(at.column - 1 - _AROUND, 0)
    before, after = line[start : at.column - 1], line[at.column - 1 : start + 2 * _AROUND]
    made = Noted(number, str(one.level), at.line, before.lstrip(), after, one.message, one.hint)
    around = [pair for pair in pairwise(_around(source, at)) if pair[0] in _SECTIONS]
    if not around:
        return made
    section, name = map(str, around[-1])
    view, pattern = _SECTIONS[section]
    found = re.search(rf'id="({pattern.format(id=re.escape(name))})"', bodies.get(view.name, ""))
    return (
        replace(made, view=view, anchor=found[1], href=f"{view.file(source.path.stem)}#{found[1]}") if found else made
    )


def _around(source: Source, at: Position) -> Pointer:
    """What stands in the record at a position: the last that begins before it."""
    before = ((place, pointer) for pointer, place in source.keys.items() if place <= at)
    return max(before, key=itemgetter(0), default=(at, ()))[1]


def with_notes(path: Path, view: View, body: str, notes: Sequence[Noted]) -> str:
    """The body of a page with the problems below its head, and each where the page shows what it is about."""
    head, end, rest = body.partition("</header>")
    for anchor in dict.fromkeys(note.anchor for note in notes if note.view is view):
        here = "".join(_here([note for note in notes if note.anchor == anchor]))
        found = re.search(rf'<(?:section|li)\b[^>]*\bid="{re.escape(anchor)}"[^>]*>', rest)
        rest = f"{rest[: found.end()]}{here}{rest[found.end() :]}" if found else rest
    return f"{head}{end}{_rendered('problems', path=path, notes=notes)}{rest}"


def _here(notes: Sequence[Noted]) -> Iterator[str]:
    return (_rendered("here", note=note) for note in notes)


def page(path: Path, title: str, make: str, notes: Sequence[Noted]) -> str:
    """The body of a page of a record from which nothing can be derived."""
    return _rendered("page", path=path, title=title, make=make, views=VIEWS, notes=notes)


def _rendered(macro: str, **values: object) -> str:
    template = pages.environment().get_template("unfinished.html.j2")
    return str(Markup(getattr(template.module, macro)(**values)))  # noqa: S704 - a template of ours, which escapes what it is given
