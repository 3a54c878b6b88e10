"""What people type where they have nothing to say, such as `n/a` or `?`."""

import re

_SIGNS = r"n/?a|n\.a\.?|[?]+|-{1,3}|–|—|\.{2,}|…|tb[cd]|todo"
_WORDS = r"x{2,5}|tba|unclear|not known|dunno|none yet|no idea|not applicable"
_SIGN = re.compile(_SIGNS, re.IGNORECASE)
_ANY = re.compile(f"{_SIGNS}|{_WORDS}", re.IGNORECASE)
_SOMEWHERE = re.compile(
    rf"[:,\[{{-]\s*[\"']?(?:{_SIGNS}|{_WORDS})[\"']?\s*(?:[,}}\]#]|$)", re.IGNORECASE | re.MULTILINE
)


def is_one(text: str, *, in_words: bool = False) -> bool:
    """Whether a text only holds a place; `in_words` where it may stand for any text, so that XX may be a name."""
    return bool((_SIGN if in_words else _ANY).fullmatch(text.strip()))


def may_hold(text: str) -> bool:
    """Whether there may be one among the values of a record; quick, and never wrong where it says no."""
    return _SOMEWHERE.search(text) is not None
