"""Puts the photographs of answers beside the record, and names them where the answer stands."""

from collections import Counter
from dataclasses import dataclass
from pathlib import Path

from undertrim.check import runner
from undertrim.derive.claims import Refused, sources
from undertrim.derive.claims.addresses import place_of
from undertrim.derive.claims.taking import at_car
from undertrim.derive.evidence.facts import schema_at
from undertrim.record import layout, photo_files, plain_files
from undertrim.record.changing import CannotPut, Change, put
from undertrim.record.changing.edits import at
from undertrim.record.claims import Answer
from undertrim.record.layout import CannotLay, modeline
from undertrim.record.model import VehicleRecord
from undertrim.record.pictures import Broken
from undertrim.record.problem import Problem
from undertrim.record.source import Data, Pointer, Source, read_text
from undertrim.record.store import Entry, Workspace
from undertrim.words import Message, message

_LARGEST = 200_000_000
"""Bytes of a picture that a camera writes at most."""


@dataclass(frozen=True, slots=True)
class Pictured:
    """An answer with a photograph, and the folder of its claims file."""

    answer: Answer
    folder: Path


def take(place: Workspace, path: Path, one: Pictured) -> tuple[Message, bool]:
    """Save it and name it in the record: what was done, or why it was not, and whether it is there now."""
    if not place.is_own(path):
        return message("layers/no-photograph"), False
    try:
        return _take(place, place.load(path), one), True
    except (Refused, CannotPut, CannotLay) as error:
        return error.said, False


def _take(place: Workspace, entry: Entry, one: Pictured) -> Message:
    """Raises Refused with the reason, CannotPut and CannotLay."""
    photo = one.answer.photo
    assert photo
    block = _block(entry, one.answer)
    content, ending = _content(one.folder, photo.file)
    folder = photo_files.folder(entry.path)
    name = _name(folder, Path(photo.file).stem, ending, content)
    known = at(entry.source.data, (*block, "photos")) or []
    if any(item["file"] == name for item in known):
        return message("claims/photo-already", file=name)
    text = _text(place, entry, one.answer, block, name)
    fresh = not (folder / name).exists()
    if fresh:
        folder.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(content)
    if problem := _spoilt(entry, place.entry(entry.path, read_text(text, entry.source.path))):
        if fresh:
            (folder / name).unlink()
        raise Refused(message("claims/spoils", problem=problem.said, rule=problem.rule, hint=""))
    place.write(entry.path, text)
    return message("claims/photo", file=str(place.shown(folder / name)))


def _block(entry: Entry, answer: Answer) -> Pointer:
    """The nearest thing around the fact that may have photographs. Raises Refused."""
    if not isinstance(entry.record, VehicleRecord):
        raise Refused(message("claims/no-photo-there", about=answer.about))
    place = place_of(entry.source, answer.keys, at_car(entry.record, entry.source, answer))
    around = (place[:depth] for depth in range(len(place), 1, -1))
    found = next((block for block in around if "photos" in schema_at(block).get("properties", {})), None)
    if found is None:
        raise Refused(message("claims/no-photo-there", about=answer.about))
    return found


def _content(folder: Path, name: str) -> tuple[bytes, str]:
    """The picture as a record may hold it, with its ending. Raises Refused."""
    from undertrim.record import photo_saving  # its library takes longer than most commands

    file = folder / name
    try:
        if file.resolve().parent != folder.resolve():
            raise Refused(message("files/does-not-exist", name=name))
        return photo_saving.saved(plain_files.read(file, _LARGEST))
    except (OSError, plain_files.NotPlain) as error:
        raise Refused(message("files/does-not-exist", name=name)) from error
    except Broken as error:
        raise Refused(message("claims/photo-broken", file=name)) from error


def _name(folder: Path, stem: str, ending: str, content: bytes) -> str:
    """The name that it has or gets there: that of the file, numbered where another picture has it."""
    number = 1
    while True:
        name = f"{stem}{'' if number == 1 else f'-{number}'}{ending}"
        if not (folder / name).exists() or (folder / name).read_bytes() == content:
            return name
        number += 1


def _text(place: Workspace, entry: Entry, answer: Answer, block: Pointer, name: str) -> str:
    def read(text: str) -> Source:
        return place.whole(entry.path, read_text(text, entry.source.path))

    assert answer.photo
    evidence, new = sources.evidence_of(entry.source, answer)
    source = put(entry.source, new, read) if new else entry.source
    entries: list[Data] = list(at(source.data, (*block, "photos")) or [])
    entries.append({"file": name, "shows": answer.photo.shows, "source": evidence})
    others = tuple((*other, "photos") for other in sources.siblings(source, block))
    source = put(source, Change((*block, "photos"), entries, may_follow=others), read)
    return layout.laid_out(source, "vehicle", modeline.wanted(entry.path, "vehicle", place.root))


def _spoilt(before: Entry, after: Entry) -> Problem | None:
    """The first problem that the record did not have."""
    known = Counter(problem.message for problem in runner.check_entry(before))
    for problem in runner.check_entry(after):
        known[problem.message] -= 1
        if known[problem.message] < 0:
            return problem
    return None
