"""How what is typed is held against a name: folded, in several forms, and with one slip of the finger."""

import re
import unicodedata

WHOLE, BEGINS, INSIDE, SLIP = 3.0, 2.0, 1.0, 0.5
"""How well it fits: a whole word, its beginning, inside it, and with one slip."""

_LEAST_INSIDE, _LEAST_SLIP = 3, 4
"""So many letters must be typed before it is looked for inside a word, and before a slip is forgiven. Defaults of ours."""


def folded(text: str) -> str:
    """Small letters without accents."""
    return re.sub("[\u0300-\u036f]", "", unicodedata.normalize("NFKD", text)).lower()


def forms(name: str) -> list[str]:
    """A name three ways: its words, its pieces between letters and digits, and all joined: "C-8" is c-8, c, 8 and c8."""
    text = folded(name)
    parts = re.findall(r"[a-z]+|[0-9]+|[^\sa-z0-9-]+", text)
    return [*re.split(r"\s+", text), *parts, re.sub(r"[^a-z0-9]+", "", text), text]


def fits(token: str, form: str) -> float:
    """How well a word that was typed fits a form of a name; 0 where it does not."""
    if form == token:
        return WHOLE
    if form.startswith(token):
        return BEGINS
    if len(token) >= _LEAST_INSIDE and token in form:
        return INSIDE
    return SLIP if len(token) >= _LEAST_SLIP and one_slip(token, form) else 0


def one_slip(token: str, form: str) -> bool:
    """Whether one letter is another, too many, missing, or exchanged with its neighbour."""
    if abs(len(token) - len(form)) > 1:
        return False
    at = 0
    while at < len(token) and token[at] == form[at : at + 1]:
        at += 1
    one, other = token[at:], form[at:]
    exchanged = one[:1] == other[1:2] and one[1:2] == other[:1] and one[2:] == other[2:]
    return one[1:] == other[1:] or one[1:] == other or one == other[1:] or exchanged
