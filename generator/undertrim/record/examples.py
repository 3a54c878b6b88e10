"""The way out that the schema itself offers: its hint, or its example as it would be typed."""

from undertrim.record import dates, identity
from undertrim.record.numerals import quoted
from undertrim.record.refusals import Refusal
from undertrim.record.schema import Schema, resolve
from undertrim.record.yaml_text import as_typed
from undertrim.words import Value, message, one_of


def way_out(refusal: Refusal) -> Value:
    """What the schema says of the right value; empty if nothing."""
    return refusal.field.get("hint") or example(refusal.field)


def respelt(refusal: Refusal) -> Value:
    """The hint for a word of the wrong form; for an id, the same words as an id, for a day or month the same in its order."""
    meant = next((reads(str(refusal.value)) for kind, reads in _DATES.items() if _is(refusal.kind, kind)), [])
    if meant:
        return message("nearness/write", names=one_of(*map(quoted, meant)))
    name = identity.slug(str(refusal.value)) if _is(refusal.kind, "id") else ""
    return message("schema/write", written=name) if is_id(name) else way_out(refusal)


_DATES = {"day": dates.days, "month": dates.months}


def _is(kind: Schema, name: str) -> bool:
    """Whether a schema asks for what is called so in the schema of all."""
    return bool(kind.get("pattern") == resolve(f"urn:undertrim:common#/$defs/{name}")["pattern"])


def is_id(value: object) -> bool:
    """Whether a value could be an id: small letters, digits and hyphens."""
    return isinstance(value, str) and 0 < len(value) <= 60 and value.isascii() and identity.slug(value) == value


def example(field: Schema) -> Value:
    """An example of a field's value; empty if the schema has none."""
    found = field.get("examples")
    if not found:
        return ""
    code = "schema/example-or-unknown" if field.get("mayBeUnknown") else "schema/example"
    return message(code, example=typed(found[0]))


def typed(value: object, *, in_brackets: bool = False) -> str:
    """A value as it would be typed on one line."""
    if isinstance(value, dict):
        entries = (f"{typed(key, in_brackets=True)}: {typed(inner, in_brackets=True)}" for key, inner in value.items())
        return "{" + ", ".join(entries) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(typed(inner, in_brackets=True) for inner in value) + "]"
    return as_typed(str(value), in_brackets=in_brackets)
