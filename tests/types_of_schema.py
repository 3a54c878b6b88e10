"""Writes `schema/published.d.ts`, the types by which the scripts of the pages are checked, from `schema/published.schema.json` with what each kind adds.

`.venv/bin/python tests/types_of_schema.py` writes it; with `--check` it only says whether it is as it should be.
"""

import json
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from undertrim.publish import described

SCHEMA = Path(__file__).parents[1] / "schema" / "published.schema.json"
TYPES = SCHEMA.with_name("published.d.ts")
COMMAND = ".venv/bin/python tests/types_of_schema.py"
_PLAIN = {"string": "string", "number": "number", "integer": "number", "boolean": "boolean", "null": "null"}

Schema = dict[str, Any]


def types(schema: Schema) -> str:
    """One type for each definition, with its description."""
    return "\n".join([f"// Made from {SCHEMA.name} by `{COMMAND}`.", *_all(schema["$defs"]), ""])


def _all(defined: dict[str, Schema]) -> Iterator[str]:
    for name, block in defined.items():
        yield f"\n/** {block['title']}: {block['description']} */"
        if "properties" in block:
            yield f"export interface {_named(name)} {{"
            yield from (f"  {line}" for line in _fields(block))
            yield "}"
        else:
            yield f"export type {_named(name)} = {_type(block)};"


def _fields(block: Schema) -> Iterator[str]:
    for key, inner in block["properties"].items():
        if "description" in inner:
            yield f"/** {inner['description']} */"
        yield f"{key}{'' if key in block.get('required', ()) else '?'}: {_type(inner)};"


def _type(block: Schema) -> str:
    """A schema as a type."""
    if "$ref" in block:
        return _named(block["$ref"].rpartition("/")[2])
    if "anyOf" in block:
        return " | ".join(map(_type, block["anyOf"]))
    if "const" in block or "enum" in block:
        return " | ".join(json.dumps(word, ensure_ascii=False) for word in block.get("enum", [block.get("const")]))
    if "prefixItems" in block:
        return f"[{', '.join(map(_type, block['prefixItems']))}]"
    if block["type"] == "array":
        return f"Array<{_type(block['items'])}>"
    if block["type"] == "object":
        return f"Record<string, {_type(block['additionalProperties'])}>"
    kinds = block["type"] if isinstance(block["type"], list) else [block["type"]]
    return " | ".join(_PLAIN[kind] for kind in kinds)


def _named(name: str) -> str:
    return "".join(part.capitalize() for part in name.split("-"))


def made() -> str:
    """What the file should hold."""
    return types(described.schema())


def main(arguments: list[str]) -> int:
    """Write the types, or with `--check` compare them; 1 where they differ."""
    if arguments != ["--check"]:
        TYPES.write_text(made(), encoding="utf-8")
        return 0
    if TYPES.read_text(encoding="utf-8") == made():
        return 0
    sys.stdout.write(f"{TYPES.name} is not what {SCHEMA.name} says: run {COMMAND}\n")
    return 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
