"""Photographs on the sheet of a visit: small, with their marks, in the step where hands and eyes are on what they show."""

from collections.abc import Iterator

from undertrim.derive.visit.visit import Visit
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts.photos import Shown
from undertrim.publish.pictures import photos as photo_pictures
from undertrim.publish.printed.sheet.pictures import Pictures
from undertrim.record import photo_saving
from undertrim.record.model import Connector, Opening, Part, Prep
from undertrim.record.photo_files import Album

_EDGE = 440
"""The longer edge in px, of what is printed 24 mm wide: 400 dots to the inch, as much as an office printer shows."""


class Photos:
    """The photographs of one visit as its rows want them: each once, at the first step that shows it."""

    def __init__(self, made: Visit, album: Album | None, pictures: Pictures) -> None:
        self.made, self.pictures, self.album = made, pictures, album
        self._told: set[str] = set()

    def at(self, step: Published) -> list[Published]:
        """Those of a step: of what comes off or is set, of its plugs, and of the opening where fitting begins."""
        if self.album is None:
            return []
        return [entry for thing in self._things(step) for entry in self._of(thing, self.album)]

    def _things(self, step: Published) -> Iterator[Connector | Opening | Part | Prep]:
        record, name = self.made.record, step["part"]
        if step["kind"] == "prepare" and name in record.preps:
            yield record.preps[name]
        elif step["kind"] == "remove" and name in record.parts:
            yield record.parts[name]
            yield from (plug for plug in self.made.plugs if plug.at.partition("/")[0] == name)
        elif step["kind"] == "install" and name in record.openings:
            yield record.openings[name]

    def _of(self, thing: Connector | Opening | Part | Prep, album: Album) -> Iterator[Published]:
        """A photograph is known by its published name, which the printed sheet does not show."""
        for photo, shown in Shown("", self.made.record, album).each(thing):
            if shown.file in self._told:
                continue
            self._told.add(shown.file)
            entry = said(shown)
            small = photo_saving.grey(album.content(photo.file), _EDGE)
            picture = self.pictures.keep(photo_pictures.whole(entry, small))
            marks = [f"{mark['number']} {mark['label']}" for mark in entry["marks"]]
            yield {"picture": picture, "title": entry["shows"], "marks": marks}
