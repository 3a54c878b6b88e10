"""The photographs of a record as data: where each stands beside the page, how large it is, and what is to be seen in it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from undertrim.derive.evidence import seen
from undertrim.record import photo_files
from undertrim.record.model import Choice, Connector, Evidence, Opening, Part, Photo, Prep, Variant, VehicleRecord
from undertrim.record.photo_files import Album
from undertrim.record.pictures import Picture
from undertrim.record.store import Entry
from undertrim.words import Value, message

_DIGITS = 12
"""How much of a file's digest its published name carries: another picture under the same name is another file for every cache."""

_SHOWN_AT = {"remove": "parts", "prepare": "preps"}
"""The kinds of step that show a thing's photographs, with the section of the record it stands in: once, where hands and eyes are on it first."""


@dataclass(frozen=True, slots=True)
class ShownMark:
    """A spot: its number in the picture, and how far it is from the left and from the top in px of the whole picture."""

    number: int
    x: float
    y: float
    label: str


_WIDTHS = (480, 960)
"""How wide in px a photograph is made for screens that show no more: a phone's, one and two px of it to a px of the page."""
_LESS = 0.8
"""What is not narrower than so much of the whole is not worth a file."""


@dataclass(frozen=True, slots=True)
class ShownSmaller:
    """The same photograph, narrower: its file beside the page, and its width in px."""

    file: str
    width: int


@dataclass(frozen=True, slots=True)
class ShownPhoto:
    """A photograph: its file beside the page, width and height in px, narrower ones for small screens, and, of each piece of evidence, who took it when at which car."""

    file: str
    width: int
    height: int
    smaller: tuple[ShownSmaller, ...]
    shows: str
    marks: tuple[ShownMark, ...]
    taken: tuple[Value, ...]
    source: tuple[str, ...]


class Shown:
    """The photographs of one vehicle that can be shown: of the record with this id, read from its album."""

    def __init__(self, name: str, record: VehicleRecord, album: Album) -> None:
        self.id, self.record, self.album = name, record, album

    def of(self, thing: Choice | Connector | Opening | Part | Prep, source: tuple[str, ...] = ()) -> list[ShownPhoto]:
        """Those of one thing; `source` is what they rest on where neither they nor the thing say."""
        return [shown for _, shown in self.each(thing, source)]

    def each(
        self, thing: Choice | Connector | Opening | Part | Prep, source: tuple[str, ...] = ()
    ) -> Iterator[tuple[Photo, ShownPhoto]]:
        """The same, each with what the record says."""
        around = getattr(thing, "source", ()) or source
        for photo in thing.photos:
            if found := self.album.shown(photo.file):
                yield photo, self._photo(photo, found, photo.source or around)

    def of_choices(self, variant: Variant) -> dict[str, list[ShownPhoto]]:
        """Those by which to tell each answer of a variant."""
        return {choice.id: self.of(choice, variant.source) for choice in variant.choices.values()}

    def of_step(self, kind: str, name: str) -> list[ShownPhoto]:
        """Those that a step of a kind shows of the thing it is about."""
        things: Mapping[str, Part | Prep] = getattr(self.record, _SHOWN_AT[kind]) if kind in _SHOWN_AT else {}
        return self.of(things[name]) if name in things else []

    def _photo(self, photo: Photo, found: Picture, source: tuple[str, ...]) -> ShownPhoto:
        marks = tuple(
            ShownMark(number, round(mark.at[0] * found.width, 1), round(mark.at[1] * found.height, 1), mark.label)
            for number, mark in enumerate(photo.marks, 1)
        )
        known = [self.record.evidence[name] for name in source if name in self.record.evidence]
        taken = tuple(_taken(self.record, item) for item in known)
        return ShownPhoto(
            self._name(photo, found),
            found.width,
            found.height,
            tuple(ShownSmaller(self._narrow(photo, found, width), width) for width in _narrower(found)),
            photo.shows,
            marks,
            taken,
            tuple(item.id for item in known),
        )

    def _name(self, photo: Photo, found: Picture) -> str:
        stem, _, ending = photo.file.rpartition(".")
        return f"{self.id}-{stem}-{found.digest[:_DIGITS]}.{ending}"

    def _narrow(self, photo: Photo, found: Picture, width: int) -> str:
        return f"{self._name(photo, found).rpartition('.')[0]}-{width}w.webp"

    def files(self) -> Iterator[tuple[str, bytes]]:
        """The files of every photograph that is shown, by their published names, each once: itself without any notes, and narrower ones."""
        from undertrim.record import photo_saving  # its library takes longer than most commands

        for photo in {photo.file: photo for _, photo in photo_files.named(self.record)}.values():
            if found := self.album.shown(photo.file):
                content = self.album.content(photo.file)
                yield self._name(photo, found), photo_saving.bare(content)
                for width in _narrower(found):
                    yield self._narrow(photo, found, width), photo_saving.narrow(content, width)


def _narrower(found: Picture) -> Iterator[int]:
    return (width for width in _WIDTHS if width <= _LESS * found.width)


def shown(entry: Entry, record: VehicleRecord, album: Album | None = None) -> Shown:
    """The photographs of a record; `album` is where they are read from, its own folder if not said."""
    return Shown(entry.id, record, album or photo_files.album(entry.path))


def _taken(record: VehicleRecord, item: Evidence) -> Value:
    """Who took it when, and at which car."""
    car = seen.shown(record, item.car)
    return message("photos/taken-at" if car else "photos/taken", by=item.by, day=item.on, car=car)
