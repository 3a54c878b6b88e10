"""How one text of a record is laid out: plain where it can be, in quotes where YAML or a reader of it needs them, else as a block."""

import re

from undertrim.record import unseen_signs
from undertrim.record.migrations.marked import ScalarNode, Text
from undertrim.record.yaml_text import looks_other, may_be_plain

_BLOCK = ("|", ">")


def on_a_line(marked: Text, node: ScalarNode, *, in_brackets: bool) -> str | None:
    """A text or key on one line; None where it takes several, or is nothing and stands in brackets."""
    value = str(node.value)
    if node.style in _BLOCK and value.strip("\n ") and on_lines(marked, node) is not None:
        return None
    if node.style not in ("'", '"') and value == "" and node.style not in _BLOCK:
        return None if in_brackets else ""
    if "\n" in value and as_block(node) is not None:
        return None
    typed_plain = node.style not in ("'", '"', *_BLOCK)
    plain = may_be_plain(value, in_brackets=in_brackets) and (typed_plain or not looks_other(value))
    return value if plain or (typed_plain and not in_brackets) else quoted(value)


def quoted(value: str) -> str:
    """In double quotes; in single ones where that leaves more of it as it is."""
    odd = any(unseen_signs.refused(char) or not char.isprintable() for char in value)
    if not odd and ('"' in value or "\\" in value) and "'" not in value:
        return f"'{value}'"
    return '"' + "".join(map(_escaped, value)) + '"'


def _escaped(char: str) -> str:
    if char in '"\\':
        return f"\\{char}"
    if char == "\n":
        return "\\n"
    if unseen_signs.refused(char) or not (char.isprintable() or char == " "):
        return f"\\x{ord(char):02x}" if ord(char) < 0x100 else f"\\U{ord(char):08x}"
    return char


def on_lines(marked: Text, node: ScalarNode) -> tuple[str, list[str]] | None:
    """A text as a block: its sign, and the lines without their margin; None where no block can hold it."""
    return (folded(marked, node) if node.style == ">" else None) or as_block(node)


def as_block(node: ScalarNode) -> tuple[str, list[str]] | None:
    """A text of several lines: its sign, and the lines without their margin; None where no block can hold it.

    None too for one that ends in blank lines: in a block those could not be told from the blank lines of the layout.
    """
    value = str(node.value)
    lines = value.rstrip("\n").split("\n")
    if any(unseen_signs.refused(char) or char == "\t" for char in value if char != "\n"):
        return None
    if not lines[0] or lines[0].startswith(" ") or any(line and not line.strip() for line in lines):
        return None
    ends = len(value) - len(value.rstrip("\n"))
    return ("|" if ends else "|-", lines) if ends < 2 else None


def folded(marked: Text, node: ScalarNode) -> tuple[str, list[str]] | None:
    """A text that was typed as a block, its lines as they were typed but for their margin; None for one that needs its margin said."""
    typed = marked.text[node.start_mark.index : node.end_mark.index]
    head, _, body = typed.partition("\n")
    sign = re.match(r">[-+]?(?![0-9])", head)
    lines = body.rstrip("\n ").split("\n")
    margin = min((len(line) - len(line.lstrip(" ")) for line in lines[:1]), default=0)
    if not sign or not lines[0].strip() or "\t" in body or str(node.value).endswith("\n\n"):
        return None
    return sign[0].replace("+", ""), [line[margin:] for line in lines]
