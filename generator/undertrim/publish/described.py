"""What the site publishes as data, described: `published.schema.json` with what each kind adds to it (`schema/kinds/`)."""

import json
from collections.abc import Iterator
from functools import cache
from typing import Any

from undertrim import resources
from undertrim.publish import sparse
from undertrim.record.model import OPENINGS
from undertrim.record.model.kinds.usual import usual_for
from undertrim.record.schema import parts

Schema = dict[str, Any]


def schema() -> Schema:
    """The whole description.

    Of a part `published` says: `$defs` its own descriptions, and by the names of those `drawn` what its drawings are made of, `place` its
    openings and `sizes` its gear as the form has them. A kind without a drawing or a form leaves that out.
    """
    whole: Schema = json.loads((resources.top("schema") / "published.schema.json").read_text(encoding="utf-8"))
    defined, added = whole["$defs"], [part["published"] for part in parts() if "published" in part]
    for part in added:
        defined |= part["$defs"]
    defined["drawn"]["properties"] = {name: _ref(to) for part in added for name, to in part.get("drawn", {}).items()}
    sizes = {kind: _ref(to) for part in added for kind, to in part.get("sizes", {}).items()}
    _choose(defined["shelf-gear"]["properties"], "gear", list(sizes.values()), list(sizes))
    _choose(
        defined["form"]["properties"],
        "opening",
        [_ref(part["place"]) for part in added if "place" in part],
        list(OPENINGS),
    )
    _choose(defined["opening"]["properties"], "", [], list(OPENINGS))
    _need(defined["usual"], list(_clearances()))
    return whole


@cache
def text() -> str:
    """The same of what stands in the site, where what is empty is left out. It comes with the program, so it is the same as long as that runs."""
    return json.dumps(sparse.description(schema()), indent=2, ensure_ascii=False) + "\n"


def _ref(name: str) -> Schema:
    return {"$ref": f"#/$defs/{name}"}


def _choose(fields: Schema, name: str, forms: list[Schema], kinds: list[str]) -> None:
    """Name the kinds there are in `kind`, and the forms of what depends on it."""
    fields["kind"] = {**{key: said for key, said in fields["kind"].items() if key != "type"}, "enum": kinds}
    if name:
        fields[name]["anyOf"] = forms


def _need(usual: Schema, names: list[str]) -> None:
    usual["required"] = [*names, *usual["required"]]
    usual["properties"] = {**{name: _ref("fit-number") for name in names}, **usual["properties"]}


def _clearances() -> Iterator[str]:
    return (name for kind in OPENINGS for name in usual_for(kind).clearances)
