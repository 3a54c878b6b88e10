"""The settings of a collection: `undertrim.toml` beside its `records/`, which may be left out.

language = "en"    # of pages, sheets and commands, for whoever asks for no other
"""

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from undertrim.record.nearness import suggestion
from undertrim.words import Language, Message, UnknownLanguage, language, message, one_of, quoted, tags
from undertrim.work.refused import Refused

NAME = "undertrim.toml"
_KEYS = ("language",)


class BadSettings(Refused):
    """The settings of the collection cannot be used; the text says where, and the way out."""

    def __init__(self, path: Path, said: Message) -> None:
        super().__init__(message("collection/fault", path=str(path), fault=said))


@dataclass(frozen=True, slots=True)
class Settings:
    """What a collection has chosen."""

    language: str = "en"


def settings(root: Path) -> Settings:
    """The settings of the collection at `root`; the usual ones where it has none. Raises BadSettings."""
    path = root / NAME
    if not path.is_file():
        return Settings()
    given = _read(path)
    for key, value in given.items():
        if key not in _KEYS:
            raise BadSettings(
                path, message("collection/unknown", key=key, way=suggestion(key, _KEYS, message("nearness/settings")))
            )
        if not isinstance(value, str):
            raise BadSettings(path, message("collection/no-text", key=key))
    return Settings(**given)


def _read(path: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise BadSettings(path, message("collection/broken", why=str(error))) from error


class NoSuchLanguage(Refused):
    """Nobody has written the words of this language."""

    def __init__(self, tag: str) -> None:
        super().__init__(message("collection/no-language", tag=tag, known=one_of(*map(quoted, tags()))))


def spoken_in(tag: str) -> Language:
    """A language by its tag. Raises NoSuchLanguage."""
    try:
        return language(tag)
    except UnknownLanguage:
        raise NoSuchLanguage(tag) from None
