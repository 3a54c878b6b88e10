"""Texts of a record in another language than the reader's, for scripts to mark as such (WCAG 2.2, 3.1.2)."""

from typing import Any

from undertrim.record.own_language import OwnLanguage
from undertrim.record.own_text import OwnText
from undertrim.words import spoken

TOLD = frozenset({"title", "text", "note", "becomes", "when", "cars_words"})
"""The keys of what stands by itself; elsewhere a text of a record has become words of a sentence, or is an id."""


def with_language(data: Any) -> Any:
    """Plain data in which each such text is `{lang, text}`."""
    if isinstance(data, dict):
        return {key: _own(value) if key in TOLD else with_language(value) for key, value in data.items()}
    return [with_language(value) for value in data] if isinstance(data, list) else data


def _own(value: Any) -> Any:
    if isinstance(value, OwnText) and OwnLanguage(value.lang).differs(spoken()):
        return {"lang": value.lang, "text": str(value)}
    return value
