"""Words for people: what was found is a code with typed values until the moment somebody reads it.

Everything above the words yields a `Message`; `sentence` and `way_out` make text of it, from one catalogue, in one language.
No code reads the text back: what decides is the code or a field beside it.
"""

from undertrim.words.catalogue import named, pieces, say, sentence, way_out
from undertrim.words.error import SaidError
from undertrim.words.language import (
    ENGLISH,
    Language,
    UnknownLanguage,
    language,
    of_environment,
    once_per_language,
    speaking,
    spoken,
    tags,
)
from undertrim.words.message import Items, Message, Value, WayOut, Word, all_of, message, one_of, quoted, some_of, word

__all__ = [
    "ENGLISH",
    "Items",
    "Language",
    "Message",
    "SaidError",
    "UnknownLanguage",
    "Value",
    "WayOut",
    "Word",
    "all_of",
    "language",
    "message",
    "named",
    "of_environment",
    "once_per_language",
    "one_of",
    "pieces",
    "quoted",
    "say",
    "sentence",
    "some_of",
    "speaking",
    "spoken",
    "tags",
    "way_out",
    "word",
]
