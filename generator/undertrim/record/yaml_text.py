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
