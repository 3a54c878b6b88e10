"""Asks about parts at the terminal, in the order in which they came off, and writes each into the record.

A part goes into the record and not into a claims file: a claim is one value at an address, and a part is a thing with an order, whose
fields make sense together alone. What was answered of a part that is not finished is kept beside, and asked no more.
"""

import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from undertrim.check import adding
from undertrim.check.adding import PartSeen
from undertrim.commands import parts_told, prompts
from undertrim.commands.prompts import Stopped
from undertrim.commands.usage import Usage
from undertrim.commands.who import who
from undertrim.derive.evidence import taken
from undertrim.record import identity
from undertrim.record.claims import Answer
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import printable
from undertrim.record.source import Data
from undertrim.record.store import Entry, Workspace
from undertrim.words import Message, WayOut, message, say

_ANOTHER, _STOP = "", "stop here"


@dataclass(slots=True)
class Kept:
    """The answers about a part that is not finished, and who gives them: on the disk after each."""

    path: Path
    vehicle: str
    shared: dict[str, Data] = field(default_factory=dict)
    said: dict[str, str] = field(default_factory=dict)
    done: list[str] = field(default_factory=list)
    """The parts that came off so far, the last one last."""

    @classmethod
    def at(cls, path: Path, vehicle: str) -> "Kept":
        """What was kept there, if something was. Raises Usage for a file about something else."""
        if not path.exists():
            return cls(path, vehicle)
        try:
            data = json.loads(path.read_text(encoding="utf-8"))
            kept = cls(path, vehicle, data["shared"], data["said"], data["done"])
        except (ValueError, KeyError, TypeError) as error:
            raise Usage(message("ask/other-file", file=printable(str(path)), vehicle=vehicle)) from error
        if data.get("vehicle") != vehicle:
            raise Usage(message("ask/other-file", file=printable(str(path)), vehicle=vehicle))
        return kept

    def ask(self, name: str, asked: Callable[[], str]) -> str:
        """An answer, asked for where there is none yet. Raises Stopped."""
        if name not in self.said:
            self.said[name] = asked()
            self.save()
        return self.said[name]

    def save(self) -> None:
        """Write it all down. Raises OSError."""
        data = {"vehicle": self.vehicle, "shared": self.shared, "said": self.said, "done": self.done}
        self.path.write_text(json.dumps(data, ensure_ascii=False, indent=2) + "\n", encoding="utf-8")


def run(place: Workspace, entry: Entry) -> int:
    """Ask about part after part; 0 however far it came."""
    kept = Kept.at(Path(f"{entry.id}-parts.json"), entry.address)
    count = len(kept.done)
    try:
        if not kept.shared:
            assert isinstance(entry.record, VehicleRecord)
            kept.shared = who(entry.record, measures=False)
            kept.save()
        while _one(place, place.load(entry.path), kept):
            pass
        kept.path.unlink(missing_ok=True)
    except Stopped:
        print(say(message("asked-part/stopped", file=printable(str(kept.path)))))
    print(say(message("asked-part/done", count=len(kept.done) - count, path=printable(str(place.shown(entry.path))))))
    return 0


def _one(place: Workspace, entry: Entry, kept: Kept) -> bool:
    """Whether one more part was told of. Raises Stopped."""
    record = entry.record
    assert isinstance(record, VehicleRecord)
    which = kept.ask("which", lambda: prompts.choose(say(message("asked-part/which")), list(_parts(record, kept))))
    if which == _STOP:
        return False
    name = "" if which else kept.ask("name", lambda: prompts.text(say(message("asked-part/name")), _free(record)))
    part = identity.slug(name) or which
    stands = entry.source.data["parts"].get(part, {})
    told = parts_told.Telling(record, kept.ask, stands, kept.done).told(part, name)
    _write(place, entry, told, kept)
    return True


def _parts(record: VehicleRecord, kept: Kept) -> Iterator[tuple[str, str]]:
    """The parts that nobody has seen on this car, and a new one."""
    unseen = [str(name) for section, name in taken.usual(record) if section == "parts"]
    yield from ((name, say(message("asked-part/usual", part=record.parts[name].name))) for name in unseen)
    yield _ANOTHER, say(message("asked-part/another"))
    yield _STOP, say(message("asked-part/no-more"))


def _free(record: VehicleRecord) -> Callable[[str], str]:
    """What is wrong with a name: it is none, or a part has it."""

    def check(said: str) -> str:
        name = identity.slug(said)
        if not name or not name.isascii() or len(name) > 60:
            return say(message("asked-part/no-name"))
        return say(message("asked-part/there", part=name)) if name in record.parts else ""

    return check


def _write(place: Workspace, entry: Entry, part: PartSeen, kept: Kept) -> None:
    """The part into the record; where it is refused its answers are asked for again."""
    shared: Mapping[str, Data] = kept.shared
    car = {name: said if isinstance(said, dict) else str(said) for name, said in shared.get("car", {}).items()}
    seen = Answer((), entry.address, "", shared["by"], shared["on"], "seen", car=car or None)
    added = adding.add(place, entry, part, seen)
    if added.refused:
        _tell("asked-part/refused", added.refused)
    else:
        place.write(entry.path, added.text)
        kept.done.append(part.id)
        print(say(message("asked-part/written", part=part.id)))
        for problem in added.problems:
            _tell("asked-part/but", problem.said)
    kept.said.clear()
    kept.save()


def _tell(code: str, said: Message) -> None:
    print(say(message(code, said=said)))
    if way_out := say(WayOut(said)):
        print(f"    {way_out}")
