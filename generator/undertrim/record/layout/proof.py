"""Proves that a text laid out anew says what it said: every value, each order that means something, and each comment at its place."""

from collections import Counter
from collections.abc import Iterator

from undertrim.record import shapes
from undertrim.record.layout.notes import notes
from undertrim.record.layout.ordering import AS_TYPED
from undertrim.record.migrations.marked import Text
from undertrim.record.shapes import Shape
from undertrim.record.source import Data, Pointer, Source
from undertrim.record.spreading import spread
from undertrim.words import SaidError, message


class CannotLay(SaidError, ValueError):  # noqa: N818 - it names what happened
    """The text cannot be laid out so that it says the same."""


def proved(before: Source, after: Source, kind: str) -> None:
    """Raises CannotLay where anything but the layout differs."""
    if after.problems:
        raise CannotLay(message("format/changed", place=_shown(())))
    old, new = (spread(one).data if kind == "vehicle" else one.data for one in (before, after))
    for place in _differences(old, new, shapes.whole(kind), ()):
        raise CannotLay(message("format/changed", place=_shown(place)))
    if spoken_of(before) != spoken_of(after):
        raise CannotLay(message("format/comment"))


def _shown(place: Pointer) -> str:
    return "/".join(map(str, place)) or "/"


def _differences(old: Data, new: Data, shape: Shape | None, place: Pointer) -> Iterator[Pointer]:
    """The places that differ; the order of keys counts where the schema does not name them, and where it is kept as typed."""
    if isinstance(old, dict) and isinstance(new, dict):
        free = (
            shape is not None
            and old.keys() <= {*shape.fields, *shape.aside}
            and place[-1:] not in [(one,) for one in AS_TYPED]
        )
        if old.keys() != new.keys() or not (free or list(old) == list(new)):
            yield place
            return
        for key, value in old.items():
            yield from _differences(
                value, new[key], shape and (shape.aside.get(key) or shape.below(key)), (*place, key)
            )
    elif isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
        for number, (one, other) in enumerate(zip(old, new, strict=True)):
            yield from _differences(one, other, shape and shape.items, (*place, number))
    elif old != new:
        yield place


def spoken_of(source: Source) -> Counter[tuple[Pointer, bool, str]]:
    """Every comment with the place that it speaks of, and whether it stands behind it; the only item of a list counts as the list.

    The line for editors is left out: it may be put first.
    """
    found = notes(Text.of(source.text))
    spoken: Counter[tuple[Pointer, bool, str]] = Counter((((), False, comment)) for comment in found.head)
    spoken.update(((), True, comment) for comment in found.foot)
    for place, thing in found.things.items():
        plain = tuple(step for step in place if step != 0)
        spoken.update((plain, False, comment) for comment in (*thing.before, *thing.beside))
        spoken.update((plain, True, comment) for comment in thing.after)
    return spoken
