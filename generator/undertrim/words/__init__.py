"""Words for people: what was found is a code with typed values until the moment somebody reads it.

Everything below the words yields a `Message`; `sentence` and `way_out` make text of it, from one catalogue, in one language.
No code reads the text back: what decides is the code or a field beside it.
"""

from undertrim.words.catalogue import Language, language, sentence, way_out
from undertrim.words.message import Message, Word, message

__all__ = ["Language", "Message", "Word", "language", "message", "sentence", "way_out"]
