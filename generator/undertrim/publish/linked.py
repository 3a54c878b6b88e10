"""Sentences of a page with a link, or other markup, in the middle."""

from markupsafe import Markup, escape

from undertrim.words import message, say

_MARKS = 0xE000
"""Signs of nobody's language stand for the values until the sentence is escaped."""


def linked(code: str, /, **values: str) -> Markup:
    """A sentence with its values; what is markup among them stays so, all else is escaped."""
    marks = {name: chr(_MARKS + number) for number, name in enumerate(values)}
    said = escape(say(message(code, **marks)))
    for name, value in values.items():
        said = said.replace(escape(marks[name]), escape(value))
    return said


def link(to: str, text: str) -> Markup:
    """A link."""
    return Markup('<a href="{}">{}</a>').format(to, text)
