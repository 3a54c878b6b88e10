"""The reference of record fields, read from the schemas: name, what it means, how it is typed, an example."""

import html
from collections.abc import Iterator
from functools import cache
from typing import Any

from undertrim.record import schema
from undertrim.record.examples import typed

Schema = dict[str, Any]


@cache
def field_page() -> str:
    """One Markdown page: a table for every kind of block in vehicle and gear records."""
    parts = [_INTRODUCTION]
    for name, title in (("vehicle", "Vehicle records"), ("gear", "Gear records"), ("common", "Shared blocks")):
        parts.append(f"\n## {title}\n")
        parts += [_table(block_title, block) for block_title, block in _blocks(schema.load(name))]
    return "\n".join(parts)


_INTRODUCTION = """# Fields

Every field a record can have. `*` marks fields that must be there. Quantities are typed with their unit; where *unknown* is
listed, it is an answer of its own."""


def _blocks(root: Schema) -> Iterator[tuple[str, Schema]]:
    yield from _objects(root)
    for block in root.get("$defs", {}).values():
        yield from _objects(block)


def _objects(block: Schema) -> Iterator[tuple[str, Schema]]:
    """A block and the unnamed blocks inside it."""
    if "properties" in block:
        yield block["title"], block
        for field in block["properties"].values():
            yield from _objects(field)
    for key in ("items", "additionalProperties"):
        inner = block.get(key)
        if isinstance(inner, dict) and "$ref" not in inner:
            yield from _objects(inner)


def _table(title: str, block: Schema) -> str:
    rows = [_row(name, field, block.get("required", ())) for name, field in block["properties"].items()]
    return "\n".join(
        [
            f"\n### {title}\n",
            _cell(block.get("description", "")),
            "",
            "| field | what | typed as | example |",
            "|---|---|---|---|",
            *rows,
        ]
    )


def _row(name: str, field: Schema, required: list[str]) -> str:
    known = {**(schema.resolve(field["$ref"]) if "$ref" in field else {}), **field}
    star = " *" if name in required else ""
    example = typed(known.get("examples", [""])[0]).replace("|", "\\|")
    return f"| `{name}`{star} | {_cell(known.get('description', ''))} | {_cell(_typed(known))} | `{example}` |"


def _cell(text: str) -> str:
    return html.escape(text, quote=False).replace("|", "\\|")


def _typed(field: Schema) -> str:
    if "quantity" in field:
        words = ", ".join(schema.blanks(field["quantity"]))
        return f"{field['quantity']['kind']} with unit" + (f", or {words}" if words else "")
    if "drive" in field:
        return "what turns it"
    if "enum" in field:
        return ", ".join(str(value) for value in field["enum"])
    kind = field.get("type", "text")
    names = {"string": "text", "array": "list", "object": "block", "integer": "whole number"}
    return " or ".join(names.get(name, name) for name in ([kind] if isinstance(kind, str) else kind))
