"""Photographs that a record names, with the spots to look at in them."""

from dataclasses import dataclass

from undertrim.record.model.basics import Sources


@dataclass(frozen=True, slots=True)
class Mark:
    """One spot in a photograph: `at` are the parts (0 to 1) of its width from the left and of its height from the top."""

    at: tuple[float, float]
    label: str


@dataclass(frozen=True, slots=True)
class Photo:
    """One photograph: the name of its file, and what is to be seen. Without a `source` it rests on that of what it is a picture of."""

    file: str
    shows: str
    marks: tuple[Mark, ...] = ()
    source: Sources = ()
