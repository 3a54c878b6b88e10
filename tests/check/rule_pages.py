"""Reads the good and bad examples out of a rule's docstring and runs them.

An example is a piece of a record: its top-level sections take the place of those in `base.yaml`. A line
that ends in `# here` is guilty. For a rule that looks at the whole collection, `# file: <make>/<id>.yaml`
begins each record. A piece with a `gear:` section is a gear record and stands by itself, in
`# file: <kind>s/<maker>-<model>.yaml`. Below a bad example stand the messages as `level: message (hint)`,
one line each, in the order of the lines. A line of prose ends an example. `# photo: <file>, <what it is>` lays a photograph beside
the record (`photographs.py`).
"""

import re
import tempfile
import textwrap
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from photographs import lay
from undertrim.check.across import findings
from undertrim.check.findings import (
    Card,
    CollectionRule,
    Finding,
    GearRule,
    GearSubject,
    MeetingRule,
    RecordRule,
    Subject,
)
from undertrim.check.one_file import card as card_of
from undertrim.record import photo_files
from undertrim.record.gear import AnyRecord, GearRecord
from undertrim.record.model import VehicleRecord
from undertrim.record.source import read_text
from undertrim.record.store import Entry, entry

GEAR_BASE = "format: 1\ndemo: yes\n"
BASE = (Path(__file__).parent / "base.yaml").read_text(encoding="utf-8")


@dataclass(frozen=True)
class Example:
    """One example: the pieces by file, and what must be said."""

    files: dict[str, str]
    messages: tuple[str, ...]

    @property
    def guilty(self) -> list[tuple[str, int]]:
        """(file, line) of every line marked `# here`."""
        return [
            (name, number)
            for name, text in self.files.items()
            for number, line in enumerate(text.splitlines(), 1)
            if line.rstrip().endswith("# here")
        ]


def sections(doc: str) -> dict[str, str]:
    """The text under each `## ` heading."""
    parts = re.split(r"^## +(.+)$", textwrap.dedent("    " + doc), flags=re.MULTILINE)
    return dict(zip(parts[1::2], parts[2::2], strict=True))


def examples(doc: str, heading: str) -> list[Example]:
    """The examples under `## Bad` or `## Good`, several possible."""
    found: list[Example] = []
    block: list[str] = []
    messages: list[str] = []

    def close() -> None:
        if block:
            found.append(_example(block, messages))
        block.clear()
        messages.clear()

    for line in sections(doc)[heading].splitlines():
        if line.startswith("    ") or (not line.strip() and block and not messages):
            if messages:
                close()
            block.append(line[4:])
        elif re.match(r"(error|warning): ", line):
            messages.append(line)
        elif line.strip():
            close()
    close()
    return found


def _example(block: list[str], messages: list[str]) -> Example:
    text = "\n".join(block)
    pieces = re.split(r"^# file: (\S+)\s*$", text, flags=re.MULTILINE)
    named = dict(zip(pieces[1::2], pieces[2::2], strict=True)) or {"brindleway/otter-2014-2018.yaml": text}
    return Example({name: compose(piece) + _photos(piece) for name, piece in named.items()}, tuple(messages))


def _photos(piece: str) -> str:
    """The lines that lay photographs; they belong to no section."""
    return "".join(line.strip() + "\n" for line in piece.splitlines() if line.strip().startswith("# photo: "))


WHOLE = ("format", "demo", "vehicle", "after_battery")


def compose(piece: str) -> str:
    """`base.yaml` with the entries of `piece` in place of its own; the sections in WHOLE are replaced as one."""
    ours = dict(_blocks(piece.strip("\n") + "\n", ""))
    base = dict(_blocks(GEAR_BASE if "gear" in ours else BASE, ""))
    merged = [_merge(name, base.get(name, ""), ours.get(name, "")) for name in {**base, **ours}]
    return "".join(merged)


def _merge(name: str, base: str, ours: str) -> str:
    if not base or not ours or name in WHOLE:
        return ours or base
    head, _, body = ours.partition("\n")
    mine = dict(_blocks(body, "  "))
    kept = [text for key, text in _blocks(base.partition("\n")[2], "  ") if key not in mine]
    return f"{head}\n{''.join(kept)}{body}"


def _blocks(text: str, indent: str) -> list[tuple[str, str]]:
    """(key, text) of every entry at this indent, comments staying with what follows."""
    starts = [match.start() for match in re.finditer(rf"^{indent}[\w-]+:", text, flags=re.MULTILINE)]
    pieces = [text[a:b] for a, b in zip(starts, [*starts[1:], len(text)], strict=True)]
    return [(piece.strip().split(":")[0], piece) for piece in pieces]


@dataclass(frozen=True)
class Beside:
    """The other records of an example, for those that take from one."""

    files: dict[str, str]

    def find(self, name: str) -> Entry:
        """A record by its id."""
        return next(load(file, text) for file, text in self.files.items() if Path(file).stem == name)


def load(name: str, text: str, beside: Beside | None = None) -> Entry:
    """An entry as the store would make it."""
    kind = "gear" if re.search(r"^gear:", text, flags=re.MULTILINE) else "vehicle"
    path = Path("records", "gear" if kind == "gear" else "vehicles", name)
    made = entry(path, kind, read_text(text, path), beside)
    photos = re.findall(r"^# photo: (\S+), (.+)$", text, flags=re.MULTILINE)
    return _with_photos(made, photos) if photos else made


def _with_photos(made: Entry, photos: list[tuple[str, str]]) -> Entry:
    """The entry in a folder of its own, with photographs beside it."""
    path = Path(tempfile.mkdtemp(), made.path)
    for name, what in photos:
        lay(photo_files.folder(path) / name, what)
    return replace(made, path=path)


def say(example: Example, rule: RecordRule | GearRule | CollectionRule | MeetingRule) -> list[tuple[str, int, str]]:
    """What a rule says of an example: (file, line, `level: message (hint)`), sorted by file and line."""
    entries = {name: load(name, text, Beside(example.files)) for name, text in example.files.items()}
    for item in entries.values():
        assert not item.problems, [(p.position.line, p.message) for p in item.problems]
    if isinstance(rule, CollectionRule | MeetingRule):
        cards = [replace(card, whole=partial(_itself, item)) for item in entries.values() if (card := card_of(item))]
        found = [(_name(card), card.details.places, finding) for card, finding in findings(rule, cards)]
        said = [(name, _line_of(places, finding.pointer), finding) for name, places, finding in found]
    else:
        said = []
        for name, item in entries.items():
            for finding in _findings(item, rule):
                said.append((name, item.source.position(finding.pointer, key=finding.key).line, finding))
    rendered = [(name, line, _render(rule.LEVEL, finding.message, finding.hint)) for name, line, finding in said]
    return sorted(rendered)


def _itself(item: Entry) -> AnyRecord | None:
    return item.record


def _findings(item: Entry, rule: RecordRule | GearRule) -> Iterator[Finding]:
    """What a rule says of one record, by the function it has for that kind."""
    if isinstance(item.record, VehicleRecord):
        yield from getattr(rule, "check")(Subject(item, item.record))  # noqa: B009 - a gear rule may have none
    elif isinstance(item.record, GearRecord):
        yield from getattr(rule, "check_gear")(GearSubject(item, item.record))  # noqa: B009
    else:
        raise AssertionError(item.path)


def _name(card: Card) -> str:
    return "/".join(card.path.parts[-2:])


def _line_of(places: object, pointer: tuple[str | int, ...]) -> int:
    assert isinstance(places, dict)
    while pointer and pointer not in places:
        pointer = pointer[:-1]
    line: int = places[pointer].line
    return line


def _render(level: str, message: str, hint: str) -> str:
    return f"{level}: {message} ({hint})" if hint else f"{level}: {message}"
