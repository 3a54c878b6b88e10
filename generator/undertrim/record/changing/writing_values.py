"""Values as they are typed in a record: plain where they can be, in brackets where they are several."""

import re

from undertrim.record.fields import Node
from undertrim.record.layout.texts import quoted
from undertrim.record.source import Data
from undertrim.record.yaml_text import looks_other, may_be_plain

_NUMBERED = re.compile(r"[a-z]+[0-9]+")
"""An id such as `e11`: no reader takes it for a number, whatever its signs are."""


def typed(value: Data, node: Node | None, *, in_brackets: bool) -> str:
    """A text, list or mapping on one line; `node` is what the schema says of it."""
    if isinstance(value, dict):
        inner = (f"{name}: {typed(said, _below(node, name), in_brackets=True)}" for name, said in value.items())
        return f"{{{', '.join(inner)}}}"
    if isinstance(value, list):
        return f"[{', '.join(typed(said, _below(node, 0), in_brackets=True) for said in value)}]"
    text = str(value)
    sure = _is_word(node) or _NUMBERED.fullmatch(text) or not looks_other(text)
    plain = may_be_plain(text, in_brackets=in_brackets) and sure
    return text if plain else quoted(text)


def _below(node: Node | None, step: str | int) -> Node | None:
    """What the schema says below; of a value for some cars what it says of the field."""
    return node and (node.child(step) or (node if step in (0, "is") else None))


def _is_word(node: Node | None) -> bool:
    """Whether people type it without quotes, whatever some reader takes it for: a word of a list, a number, a day, a quantity."""
    says = node.schema if node else {}
    return any(word in says for word in ("enum", "quantity", "pattern", "drive")) or says.get("type") == "integer"
