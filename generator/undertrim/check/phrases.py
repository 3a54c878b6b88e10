"""Finds phrases given as lists of words in a data table: `{group}` stands for any word of a group, `..` for a few words between."""

import re
from collections.abc import Iterable, Mapping, Sequence

Groups = Mapping[str, Sequence[str]]

_BETWEEN = 8
"""How many words `..` may stand for."""


def compiled(phrases: Iterable[str], groups: Groups) -> re.Pattern[str]:
    """One pattern for all phrases. `word*` is any word that begins so, `!group` refuses a group among the words of a `..`."""
    return re.compile("|".join(f"(?:{_phrase(phrase, groups)})" for phrase in phrases), re.IGNORECASE)


def _phrase(phrase: str, groups: Groups) -> str:
    tokens = phrase.split()
    found = r"(?<![\w-])"
    for place, token in enumerate(tokens):
        if token.startswith(".."):
            found += _gap(token, groups)
        else:
            found += _token(token, groups) + (r"[\s,\"'-]+" if place + 1 < len(tokens) else "")
    return found + r"(?![\w])"


def _gap(token: str, groups: Groups) -> str:
    """Up to eight words; `..!group` takes none of that group."""
    group = token.partition("!")[2]
    refused = rf"(?!{_group(group, groups)}\b)" if group else ""
    return rf"(?:{refused}[^\s.;:]+[\s-]+){{0,{_BETWEEN}}}?"


def _token(token: str, groups: Groups) -> str:
    return _group(token[1:-1], groups) if token.startswith("{") else _word(token)


def _group(name: str, groups: Groups) -> str:
    return f"(?:{'|'.join(sorted(map(_word, groups[name]), key=len, reverse=True))})"


def _word(word: str) -> str:
    """A word or several; a blank in it may be typed as a hyphen or left out."""
    return re.escape(word).replace(r"\ ", r"[\s-]*").replace(r"\*", r"\w*")
