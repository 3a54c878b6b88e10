"""Signs that nobody sees on the page and that change what is read: they are named, not guessed at.

YAML 1.2 (5.1) shuts out control characters. Beside them we refuse what YAML 1.1 takes for a line break (NEL, LS, PS), what Unicode
lists as Default_Ignorable_Code_Point (DerivedCoreProperties.txt of Unicode 15: zero width, direction marks, tags, soft hyphen,
variation selectors, fillers), every space but the ordinary one (category Zs), the braille blank, and letters of private use, which
read differently on every machine.
"""

import re
import unicodedata
from collections.abc import Iterator

from undertrim.words import Message, message

_RANGES = (
    "\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f"  # control characters but tab and line ends
    "\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000"  # spaces
    "\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180f\u200b-\u200f\u202a-\u202e\u2060-\u206f\u3164"
    "\ufe00-\ufe0f\ufeff\uffa0\ufff0-\ufff8\U0001bca0-\U0001bca3\U0001d173-\U0001d17a\U000e0000-\U000e0fff"
    "\u2028\u2029\u2800\ufff9-\ufffb\ufffe\uffff\ud800-\udfff\ue000-\uf8ff\U000f0000-\U0010ffff"
)
_UNSEEN = re.compile(f"[{_RANGES}]")
_KINDS = {
    "Cc": message("yaml/control-character"),
    "Cs": message("yaml/half-character"),
    "Co": message("yaml/private-letter"),
}


def places(text: str) -> Iterator[int]:
    """Where in a text such signs stand."""
    return (
        (found.start() for found in _UNSEEN.finditer(text))
        if not text.isascii() or not text.isprintable()
        else iter(())
    )


def refused(char: str) -> bool:
    """Whether a character may not stand in a record."""
    return bool(_UNSEEN.match(char))


def without(text: str) -> str:
    """A text with an ordinary space for each odd one, and without all other such signs."""
    return _UNSEEN.sub(lambda found: " " if unicodedata.category(found[0]) == "Zs" else "", text)


def named(char: str) -> Message:
    """A sign as a message names it: its number, and the name that Unicode gives it."""
    name = unicodedata.name(char, "").lower()
    other = _KINDS.get(unicodedata.category(char), message("yaml/empty-sign"))
    return message("yaml/sign", number=f"{ord(char):04X}", name=name or other)


def complaint(char: str) -> Message:
    """What to say of one that stands in a record."""
    if unicodedata.category(char) == "Zs":
        return message("yaml/odd-space", sign=named(char))
    return message("yaml/hidden-sign", sign=named(char))
