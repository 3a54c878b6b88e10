"""Texts of a part, preparation or opening that speak of left or right, and so may be wrong once it changes sides."""

import re
from collections.abc import Iterator

from undertrim.record.model import Opening, Part, Prep

_SIDE = re.compile(r"\b(left|right)\b", re.IGNORECASE)


def texts(thing: Part | Prep | Opening) -> Iterator[tuple[str, str]]:
    """(the word, the text) of each that says left or right; 'right' may mean something else, so that they are to be read, not changed."""
    for text in _spoken(thing):
        if found := _SIDE.search(text):
            yield found[0].lower(), text


def _spoken(thing: Part | Prep | Opening) -> Iterator[str]:
    if isinstance(thing, Opening):
        yield from (thing.install_how, thing.test_how)
        return
    yield from (thing.how, thing.refit_how if isinstance(thing, Part) else thing.restore)
    yield from (item.note for item in thing.held_by)
    for tether in thing.tethers.values() if isinstance(thing, Part) else ():
        yield from (tether.how, tether.test)
