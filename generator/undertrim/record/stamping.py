"""Puts the `verified` block at the end of a record's text and leaves every other character as it is.

A YAML emitter would lay the rest out anew; so the block alone is written, and what comes of it is read back and compared.
"""

import json
import re
from collections.abc import Iterator, Mapping
from typing import Any

from undertrim.record.source import Source, read_text
from undertrim.record.yaml_text import looks_other
from undertrim.words import SaidError, message

KEY, PARTS = "verified", "verified_parts"
Typed = Mapping[str, Any]
_LINE = re.compile(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+\Z")
_PLAIN = re.compile(r"[A-Za-z0-9](?:[\w ,./+-]*[\w.])?", re.ASCII)
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


class CannotStamp(SaidError, ValueError):  # noqa: N818 - it names what happened
    """The text is laid out in a way that takes no block at its end."""


def stamped(source: Source, on: str, by: str, car: str, facts: Mapping[str, str], taken: str = "") -> str:
    """The text of `source` with a `verified` block at its end, in place of the one it has. Raises CannotStamp.

    `facts` are the fingerprints by block, written in their order. `taken` is `seen` where all that other records say was seen here.
    The text is that of the record as typed.
    """
    source = source.as_typed
    assert isinstance(source.data, dict)
    stamp: dict[str, str | dict[str, str]] = {"on": on, "by": by, "car": car}
    stamp |= {"taken": taken} if taken else {}
    stamp["facts"] = dict(facts)
    return _written(source, KEY, stamp)


def with_parts(source: Source, parts: Typed) -> str:
    """The text of `source` with these stamps of parts, by their ids as they are typed, in place of those that it has. Raises CannotStamp."""
    typed = source.as_typed
    return _written(typed, PARTS, parts) if parts else "".join(_without(_LINE.findall(typed.text), typed, PARTS))


def _written(source: Source, key: str, stamp: Typed) -> str:
    assert isinstance(source.data, dict)
    text = _joined(source, key, list(block({key: stamp})))
    wanted = {**{name: value for name, value in source.data.items() if name != key}, key: stamp}
    again = read_text(text, source.path)
    if again.problems or again.data != wanted:
        raise CannotStamp(message("files/cannot-stamp"))
    return text


def unstamped(source: Source) -> str:
    """The text without its stamp; comments behind it stay."""
    typed = source.as_typed
    return "".join(_without(_LINE.findall(typed.text), typed, KEY))


def _joined(source: Source, key: str, block: list[str]) -> str:
    lines = _LINE.findall(source.text)
    kept = _without(lines, source, key)
    end = "\r\n" if lines and lines[0].endswith("\r\n") else "\n"
    text = "".join(kept)
    if not text.endswith(("\n", "\r")):
        text += end
    gap = end if kept and kept[-1].strip() else ""
    margin = " " * (min(place.column for pointer, place in source.keys.items() if len(pointer) == 1) - 1)
    return text + gap + "".join(f"{margin}{line}{end}" for line in block)


def _without(lines: list[str], source: Source, key: str) -> list[str]:
    """The lines without those of the block; comments behind it stay."""
    if (key,) not in source.keys:
        return lines
    start = source.keys[key,].line - 1
    later = [place.line - 1 for pointer, place in source.keys.items() if len(pointer) == 1 and place.line - 1 > start]
    end = min(later, default=len(lines))
    while end > start + 1 and _is_quiet(lines[end - 1]):
        end -= 1
    return lines[:start] + lines[end:]


def _is_quiet(line: str) -> bool:
    """Whether a line says nothing to a machine."""
    return not line.strip() or line.lstrip().startswith("#")


def block(stamp: Typed, indent: str = "") -> Iterator[str]:
    """The lines of what is typed, which `undertrim format` lays out the same; fingerprints are in quotes, since some read as numbers."""
    for key, value in stamp.items():
        if isinstance(value, Mapping):
            yield f"{indent}{key}:"
            lines = block(value, f"{indent}  ") if key != "facts" else _facts(value, f"{indent}  ")
            yield from lines
        else:
            inner = f"[{', '.join(map(_scalar, value))}]" if isinstance(value, list) else _scalar(value)
            yield f"{indent}{key}: {inner}"


def _facts(facts: Mapping[str, str], indent: str) -> Iterator[str]:
    return (f"{indent}{_scalar(name)}: {_quoted(mark)}" for name, mark in facts.items())


def _scalar(text: str) -> str:
    """The text as YAML reads it back: plain where no reader takes anything in it for something else, else in double quotes."""
    plain = _PLAIN.fullmatch(text) and (_DAY.fullmatch(text) or not looks_other(text))
    return text if plain else _quoted(text)


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)
