"""The reference of record fields, read from the schemas: name, what it means, how it is typed, an example."""

import html
from collections.abc import Iterator
from typing import Any

from undertrim.record import schema
from undertrim.record.examples import typed
from undertrim.words import Items, Value, message, one_of, say, word

Schema = dict[str, Any]


def field_page() -> str:
    """One Markdown page: a table for every kind of block in vehicle and gear records."""
    parts = [f"# {say(message('reference/fields'))}\n\n{say(message('reference/about-fields'))}."]
    for name, title in _PARTS.items():
        parts.append(f"\n## {say(title)}\n")
        parts += [_table(block_title, block) for block_title, block in _blocks(schema.load(name))]
    return "\n".join(parts)


_PARTS = {
    "vehicle": message("reference/vehicle"),
    "gear": message("reference/gear"),
    "common": message("reference/common"),
    "claim": message("reference/claim"),
}


def _blocks(root: Schema) -> Iterator[tuple[Value, Schema]]:
    yield from _objects(root)
    for block in root.get("$defs", {}).values():
        yield from _objects(block)


def _objects(block: Schema) -> Iterator[tuple[Value, Schema]]:
    """A block and the unnamed blocks inside it."""
    if "properties" in block:
        yield block["title"], block
        for field in block["properties"].values():
            yield from _objects(field)
    for key in ("items", "additionalProperties"):
        inner = block.get(key)
        if isinstance(inner, dict) and "$ref" not in inner:
            yield from _objects(inner)


def _table(title: Value, block: Schema) -> str:
    fields = {**block["properties"], **block.get("together", {}), **block.get("aside", {})}
    rows = [_row(name, field, block.get("required", ())) for name, field in fields.items()]
    heads = " | ".join(map(say, _HEADS))
    return "\n".join([f"\n### {say(title)}\n", *_about(block), "", f"| {heads} |", "|---|---|---|---|", *rows])


def _about(block: Schema) -> list[str]:
    """What a block is, and how it may be said in short."""
    forms = [*_short(block.get("short", {})), *_along(block.get("properties", {})), *_together(block), *_by_kind(block)]
    return [_cell(block.get("description", "")), *(f"\n{say(form)}." for form in forms)]


def _short(short: Schema) -> Iterator[Value]:
    lists = Items(tuple(short.get("list", ())), "comma")
    if short.get("text"):
        yield message("reference/short-text", field=short["text"])
    if short.get("key"):
        yield message("reference/short-key", key=short["key"], fields=lists)
    elif lists.values:
        yield message("reference/short-list", fields=lists)


def _along(fields: Schema) -> Iterator[Value]:
    for name, field in fields.items():
        if "also" in field:
            yield message("reference/short-along", name=name, fields=Items((name, *field["also"]), "comma"))
        if "listed" in field:
            words = Items(tuple(f"{word} ({value})" for word, value in field["listed"].items()), "comma")
            yield message("reference/listed", field=name, words=words)


def _together(block: Schema) -> Iterator[Value]:
    for name in block.get("together", ()):
        own = tuple(field for field, said in block["properties"].items() if said.get("among") == name)
        yield message("reference/together", name=name, fields=Items(own, "comma"))


def _by_kind(block: Schema) -> Iterator[Value]:
    """The fields that must be there besides those of every kind."""
    for rule in block.get("allOf", ()):
        names = rule.get("then", {}).get("required", ())
        if names:
            field, kinds = schema.asked_by(rule["if"])
            yield message(
                "reference/required-by-kind", field=field, kinds=one_of(*kinds), names=Items(tuple(names), "comma")
            )


_HEADS = (
    message("reference/field"),
    message("reference/what"),
    message("reference/typed-as"),
    message("reference/example"),
)


def _row(name: str, field: Schema, required: list[str]) -> str:
    known = {**(schema.resolve(field["$ref"]) if "$ref" in field else {}), **field}
    star = " *" if name in required else ""
    example = typed(known.get("examples", [""])[0]).replace("|", "\\|")
    return f"| `{name}`{star} | {_cell(known.get('description', ''))} | {_cell(_typed(known))} | `{example}` |"


def _cell(text: Value) -> str:
    return html.escape(say(text), quote=False).replace("|", "\\|")


def _typed(field: Schema) -> Value:
    if "quantity" in field:
        return _with_unit(field["quantity"])
    if "drive" in field:
        return message("reference/drive")
    if "enum" in field:
        return Items(tuple(str(value) for value in field["enum"]), "comma")
    kinds = field.get("type", "string")
    return one_of(*(_TYPES[name] for name in ([kinds] if isinstance(kinds, str) else kinds)))


def _with_unit(spec: Schema) -> Value:
    kind = word("units", spec["kind"], "label")
    bound = (message("reference/lower-bound"),) if spec.get("bound") else ()
    other: tuple[Value, ...] = (*schema.blanks(spec), *bound)
    if other:
        return message("reference/with-unit-or", kind=kind, words=Items(other, "comma"))
    return message("reference/with-unit", kind=kind)


_TYPES = {
    "string": message("reference/text"),
    "array": message("reference/list"),
    "object": message("reference/block"),
    "integer": message("reference/whole-number"),
}
