"""The settings of a collection: `undertrim.toml` beside its `records/`, which may be left out.

name = "Bay Four"  # what its site is called
address = "https://fitting.example/"            # where its site is; sheets print it. Without one they print none
repository = "https://code.example/shop/cars"   # where its records are kept; pages lead there
language = "en"    # of pages, sheets and commands; several for a site in each: ["en", "es"]. The first speaks to whoever asks for no other
paper = "a4"       # that sheets and templates are printed on, or "letter", or both: ["a4", "letter"]
collections = ["../shared"]  # what it lies on, lower ones first: folders beside this file, or "package:NAME" (layers.py)
"""

import json
import re
import tomllib
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

from undertrim.record.nearness import suggestion
from undertrim.words import Language, Message, UnknownLanguage, language, message, one_of, quoted, tags
from undertrim.work.refused import Refused

NAME = "undertrim.toml"
PAPERS = ("a4", "letter")
"""ISO 216, and ANSI/ASME Y14.1 size A."""
_ADDRESS = re.compile(r"https?://[^\s/?#\"'<>\\]+(/[^\s?#\"'<>\\]*)?")


class BadSettings(Refused):
    """The settings of the collection cannot be used; the text says where, and the way out."""

    def __init__(self, path: Path, said: Message) -> None:
        super().__init__(message("collection/fault", path=str(path), fault=said))


@dataclass(frozen=True, slots=True)
class Settings:
    """What a collection has chosen; empty where it has not."""

    name: str = ""
    address: str = ""
    repository: str = ""
    language: tuple[str, ...] = ("en",)
    paper: tuple[str, ...] = PAPERS[:1]
    collections: tuple[str, ...] = ()


def settings(root: Path) -> Settings:
    """The settings of the collection at `root`; the usual ones where it has none. Raises BadSettings."""
    path = root / NAME
    if not path.is_file():
        return Settings()
    return Settings(**{key: _value(path, key, value) for key, value in _read(path).items()})


def proved(key: str, value: object) -> None:
    """Nothing where a setting may have this value. Raises BadSettings."""
    _value(Path(NAME), key, value)


def quoted_text(text: str) -> str:
    """A text as TOML writes it: what JSON writes is read alike there."""
    return json.dumps(text, ensure_ascii=False)


def _value(path: Path, key: str, value: object) -> Any:
    match key:
        case "name":
            return _line(path, key, value)
        case "address" | "repository":
            return _web_address(path, key, value)
        case "language":
            return _languages(path, value)
        case "paper":
            return _papers(path, value)
        case "collections":
            return _collections(path, value)
        case _:
            known = [field.name for field in fields(Settings)]
            way = suggestion(key, known, message("nearness/settings"))
            raise BadSettings(path, message("collection/unknown", key=key, way=way))


def _line(path: Path, key: str, value: object) -> str:
    if not isinstance(value, str) or not value.isprintable() or not value.strip():
        raise BadSettings(path, message("collection/no-line", key=key))
    return value.strip()


def _web_address(path: Path, key: str, value: object) -> str:
    """An address of the web, as pages lead to it; nothing that a browser would run."""
    if not isinstance(value, str) or not _ADDRESS.fullmatch(value):
        raise BadSettings(path, message("collection/no-address", key=key))
    return value


def _languages(path: Path, value: object) -> tuple[str, ...]:
    """One language or several, each once, in the order they are written. Whether somebody wrote their words is asked where they are spoken."""
    named = value if isinstance(value, list) else [value]
    if not named or any(not isinstance(tag, str) for tag in named):
        raise BadSettings(path, message("collection/no-text"))
    return tuple(dict.fromkeys(named))


def _papers(path: Path, value: object) -> tuple[str, ...]:
    """One paper or several, each once, in the order they are written."""
    named = value if isinstance(value, list) else [value]
    if not named or any(not isinstance(name, str) or name not in PAPERS for name in named):
        raise BadSettings(path, message("collection/no-paper", known=one_of(*map(quoted, PAPERS))))
    return tuple(dict.fromkeys(named))


def _collections(path: Path, value: object) -> tuple[str, ...]:
    """One collection or several, each once; whether it is there is asked where it is read."""
    named = value if isinstance(value, list) else [value]
    if any(not isinstance(name, str) or not name.strip() or not name.isprintable() for name in named):
        raise BadSettings(path, message("collection/no-collections"))
    return tuple(dict.fromkeys(named))


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
