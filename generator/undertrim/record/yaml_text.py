"""Writes a text as YAML reads it back."""

import re

LONGEST = 240
_LEADING = "[^-?:,\\[\\]{}#&*!|>'\"%@`\\s]|-(?=\\S)"
_ANYWHERE = re.compile(rf"(?:{_LEADING})(?:[^:#]|:(?=\S)|(?<=\S)#)*(?<!\s)")
_IN_BRACKETS = re.compile(rf"(?:{_LEADING})(?:[^:#,\[\]{{}}?]|(?<=\S)#)*(?<!\s)")
_NOTHING = ("null", "~")


def as_typed(text: str, *, in_brackets: bool) -> str:
    """A text as it would be typed behind a field: plain where it can be, else in quotes."""
    plain = _IN_BRACKETS if in_brackets else _ANYWHERE
    return text if plain.fullmatch(text) and text not in _NOTHING else in_quotes(text)


def in_quotes(text: str) -> str:
    """The text as YAML reads it back from quotes, its middle left out where it is very long."""
    if len(text) > LONGEST:
        text = f"{text[: LONGEST // 2]} … {text[-LONGEST // 4 :]}"
    if "'" in text and "\\" not in text and '"' not in text:
        return f'"{text}"'
    return "'" + text.replace("'", "''") + "'"


_NUMBER = re.compile(r"(?=.*[0-9])[-+.,0-9_:a-fox]+", re.IGNORECASE)
"""What some reader of YAML may take for a number: 1e234567 is infinity to one, 0e490655 is 0, and 010 is 8."""
_DAY = re.compile(r"[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}(?:[Tt ].*)?")
_WORDS = frozenset(
    (
        "null",
        "yes",
        "no",
        "y",
        "n",
        "on",
        "off",
        "true",
        "false",
        "<<",
        "=",
        ".inf",
        "-.inf",
        "+.inf",
        ".nan",
        *_NOTHING,
    )
)
"""What YAML 1.1 takes for no text (types null, bool, float, merge, value)."""


def looks_other(text: str) -> bool:
    """Whether some reader of YAML would take the plain text for a number, a day, a yes or a nothing."""
    return bool(text.casefold() in _WORDS or _NUMBER.fullmatch(text) or _DAY.fullmatch(text))


def may_be_plain(text: str, *, in_brackets: bool) -> bool:
    """Whether every reader of YAML reads the same text without quotes, be it taken for a text or not."""
    plain = _IN_BRACKETS if in_brackets else _ANYWHERE
    return (
        plain.fullmatch(text) is not None
        and text not in _NOTHING
        and "\n" not in text
        and not text.startswith(("---", "..."))
    )
