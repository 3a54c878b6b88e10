"""What words of the trade are called in a record, where it has another name for the same thing (data/trade-words.toml)."""

import re
import unicodedata
from collections.abc import Collection
from functools import cache
from typing import Any

from undertrim import resources

_SIGN = re.compile(r"([+])|([-−–])$")


def meant(word: str, known: Collection[str]) -> list[str]:
    """The known words that a word of the trade may stand for; empty where the table has none of them."""
    folded = _folded(word)
    candidates = [*_table()["words"].get(folded, ()), _in_parts(folded)]
    return [name for name in dict.fromkeys(candidates) if name in known]


def count(word: str) -> str:
    """The number that a word or a text with one number in it may mean, such as "seven" or "x4"; empty where it tells none, or several."""
    numbers = re.findall(r"[0-9]+", word) or [_table()["counts"].get(_folded(word), "")]
    return (numbers[0].lstrip("0") or numbers[0][:1]) if len(numbers) == 1 else ""


def _in_parts(folded: str) -> str:
    """The word with each part said as a record says it: "fl-positive" is "front-left-plus"."""
    parts = _table()["parts"]
    return "-".join(parts.get(part, part) for part in folded.split("-"))


def _folded(word: str) -> str:
    """In small letters with hyphens, without accents; a sign at its end is a word of its own."""
    signed = _SIGN.sub(lambda found: "-plus" if found[1] else "-minus", word.strip().casefold())
    plain = "".join(sign for sign in unicodedata.normalize("NFKD", signed) if not unicodedata.combining(sign))
    return re.sub(r"[\s_./-]+", "-", plain).strip("-")


@cache
def _table() -> dict[str, Any]:
    return resources.table("trade-words")
