"""What the preview shows of records with problems: their pages with what is wrong, and a page in place of what cannot be derived yet.

A site that is published never comes here: it is built of records without errors alone.
"""

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from undertrim.derive.evidence.account import Account, Shares
from undertrim.derive.finding.rows import Row
from undertrim.publish.build import prepared
from undertrim.publish.build.failures import Failure
from undertrim.publish.build.prepared import Prepared
from undertrim.publish.build.stored import Stored
from undertrim.publish.encoding import said
from undertrim.publish.facts import whose
from undertrim.publish.web import unfinished
from undertrim.publish.web.unfinished import Noted
from undertrim.publish.web.views import NAMED
from undertrim.record.digests import joined
from undertrim.record.identity import slug
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.source import Source, read
from undertrim.record.store import Workspace, address
from undertrim.record.whose import NOBODYS
from undertrim.words import message, spoken

_YEARS = re.compile(r"(?:-[0-9]{4}){1,2}.*")
_BUILT = re.compile(r"(?:19|20)[0-9]{2}")


@dataclass(frozen=True, slots=True)
class Annotated(Prepared):
    """A vehicle's files, with the problems of its record on the pages."""

    source: Source = field(default_factory=lambda: Source.empty(Path()))
    problems: tuple[Problem, ...] = ()

    def body(self, view: str) -> str:
        """The body of a page with the problems."""
        bodies = {name: Prepared.body(self, name) for name in NAMED}
        notes = unfinished.noted(self.source, self.problems, bodies)
        return unfinished.with_notes(self.source.path, NAMED[view], bodies[view], notes)

    def digest(self, view: str) -> str:
        """The digest of the same."""
        return joined(Prepared.digest(self, view), _digest(self.source, self.problems))


@dataclass(frozen=True, slots=True)
class Underived(Prepared):
    """A record from which nothing can be derived: each of its pages tells why."""

    source: Source = field(default_factory=lambda: Source.empty(Path()))
    problems: tuple[Problem, ...] = ()

    def body(self, view: str) -> str:
        """The same for every view."""
        notes: Sequence[Noted] = unfinished.noted(self.source, self.problems, {})
        make, title = self.address.split("/")[0], f"{self.summary['title']} {self.summary['years']}".strip()
        return unfinished.page(self.source.path, title, make, notes)

    def digest(self, view: str) -> str:
        """The digest of the same."""
        return _digest(self.source, self.problems)


def _digest(source: Source, problems: Sequence[Problem]) -> str:
    return joined(
        spoken().tag, source.text, *(f"{one.position} {one.level} {one.message} {one.hint}" for one in problems)
    )


def annotated(
    workspace: Workspace, made: Sequence[Prepared | Failure], problems: Sequence[Problem], tags: Sequence[str]
) -> list[Prepared]:
    """All vehicles as the preview shows them, in the order in which they were prepared."""
    by_file: dict[Path, list[Problem]] = defaultdict(list)
    for problem in problems:
        by_file[problem.file].append(problem)
    paths = {address(path): path for path in workspace.every("vehicles")}
    return [_annotated(workspace, paths[item.address], item, by_file, tags) for item in made]


def _annotated(
    workspace: Workspace,
    path: Path,
    item: Prepared | Failure,
    by_file: Mapping[Path, list[Problem]],
    tags: Sequence[str],
) -> Prepared:
    told = tuple(by_file.get(workspace.shown(path), ()))
    if isinstance(item, Prepared):
        source = read(path, workspace.shown(path)) if told else None
        return Annotated(item.files, item.shelf, item.beside, source, told) if source else item
    source = workspace.load(path).source.as_typed  # a file that must not be read is not
    if not any(one.level is Level.ERROR for one in told):
        said = message("unfinished/stopped", fault=item.said)
        told = (*told, Problem(source.path, Position(1, 1), Level.ERROR, "preview", said))
    summary = _summary(item.address, source.data)
    nothing = Stored(Path(joined(item.address, source.text)), dict.fromkeys(tags, summary), {})
    return Underived(nothing, nothing, (), source, told)


def _summary(name: str, data: Any) -> Mapping[str, Any]:
    """What other pages say of the vehicle: its make, model and months as far as the record has them, the rest by its file."""
    # Long because it names each field of two forms.
    facts = dict(_texts(data, "vehicle"))
    make, stem = name.split("/")
    built = dict(_texts(data, "vehicle", "built"))
    months = [built.get(one, "") for one in ("from", "to")]
    years = [int(one) for one in _BUILT.findall(" ".join(months)) or _BUILT.findall(stem)]
    row = Row(
        address=name,
        make=facts["make"] if slug(facts.get("make", "")) == make else make.capitalize(),
        model=facts.get("model") or _YEARS.sub("", stem).replace("-", " ").capitalize() or stem,
        first_year=min(years, default=0),
        last_year=max(years, default=0),
        phase=facts.get("phase", ""),
        others=[],
        built_from=months[0],
        built_to=months[1],
        bodies=[],
        sides=[],
        tell="",
        jobs=[],
        vin=[],
    )
    first, last = row.first_year, row.last_year
    shown = {
        "address": name,
        "id": stem,
        "make": row.make,
        "model": row.model,
        "years": f"{first}–{last}" if first != last else f"{first or ''}",
        "first_year": first,
        "last_year": last,
        "phase": row.phase,
        "built": "",
        "built_from": row.built_from,
        "built_to": row.built_to,
        "bodies": [],
        "also_called": [],
        "demo": False,
        "whose": said(whose.shown(NOBODYS)),
        "title": f"{row.make} {row.model}",
    }
    return prepared.summary(shown, row, Account(name, Shares()))


def _texts(data: Any, *way: str) -> Iterator[tuple[str, str]]:
    """The texts of a mapping in the record, by field; none where there is no such mapping."""
    for step in way:
        data = data.get(step) if isinstance(data, dict) else None
    if isinstance(data, dict):
        yield from ((str(key), value) for key, value in data.items() if isinstance(value, str))
