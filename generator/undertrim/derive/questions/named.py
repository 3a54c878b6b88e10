"""What a place of a thing is called in a question: by the titles of its fields."""

from undertrim.record.changing.edits import at
from undertrim.record.field_titles import FieldTitles, field_titles
from undertrim.record.source import Data, Pointer

_OF_THE_THING = 2
"""So many keys lead to a thing, which is named beside."""


def field_words(data: Data, place: Pointer) -> FieldTitles:
    """The fields below a thing. An entry of a list goes by its number from 1, and without where it is the only one."""
    titles = field_titles(place).titles
    if len(place) <= _OF_THE_THING:
        return FieldTitles(titles)
    named = [
        str(key + 1) if isinstance(key, int) else title
        for number, (key, title) in enumerate(zip(place, titles, strict=True))
        if number >= _OF_THE_THING and not (isinstance(key, int) and len(at(data, place[:number])) == 1)
    ]
    return FieldTitles(tuple(named))
