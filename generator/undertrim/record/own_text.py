"""The texts of a record that says in which language it is: each carries that language as far as it goes by itself.

Put into a sentence it becomes words of that sentence.
"""

from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar

R = TypeVar("R")


class OwnText(str):
    """A text of a record with the tag of its language."""

    lang: str

    def __new__(cls, text: str, lang: str) -> "OwnText":
        """The text as it is."""
        made = super().__new__(cls, text)
        made.lang = lang
        return made

    def rstrip(self, chars: str | None = None, /) -> "OwnText":
        """As for any text: a note may go on in a sentence of ours, without its full stop."""
        return OwnText(super().rstrip(chars), self.lang)

    def __getnewargs__(self) -> tuple[str, str]:  # type: ignore[override] # what copies and pickles are made with
        """Both again."""
        return str(self), self.lang


def in_language(record: R, lang: str) -> R:
    """A record, or a part of one, whose texts all carry its language; as it is where it does not say."""
    return _carrying(record, lang) if lang else record


def _carrying(value: Any, lang: str) -> Any:
    if type(value) is str:  # not the words of an enumeration
        return OwnText(value, lang)
    if isinstance(value, tuple):
        return tuple(_carrying(one, lang) for one in value)
    if isinstance(value, dict):
        return {key: _carrying(one, lang) for key, one in value.items()}
    if is_dataclass(value) and not isinstance(value, type) and not hasattr(value, "say"):  # quantities say themselves
        return replace(value, **{f.name: _carrying(getattr(value, f.name), lang) for f in fields(value) if f.init})
    return value
