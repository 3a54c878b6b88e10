"""The sentences about the fields of a block: unknown, misspelt, missing, or of another kind of block."""

from typing import Any

from undertrim.record import schema
from undertrim.record.complaint import Complaint, Complaints, has_key, place_name
from undertrim.record.examples import example, respelt
from undertrim.record.nearness import near, nearest
from undertrim.record.numerals import quoted
from undertrim.record.refusals import Refusal


def unknown(refusal: Refusal) -> Complaints:
    """Each field that the block does not have."""
    known = list(refusal.field["properties"])
    for key in refusal.value:
        if key not in known:
            instead = refusal.field.get("misnamed", {}).get(key, "")
            hint = f"write '{instead}'" if instead else nearest(key, known, "fields")
            message = f"{quoted(key)} is not a field of {refusal.name}"
            yield Complaint((*refusal.pointer, key), message, hint, key=True, meant=instead or near(key, known))


def missing(refusal: Refusal) -> Complaints:
    """Each field that the block must have and has not."""
    pointer, fields = refusal.pointer, refusal.block["properties"]
    for name in refusal.limit:
        if name not in refusal.value:
            message, hint = (
                f"'{name}' is missing from {place_name(pointer)}",
                f"add '{name}': {_describe(fields[name])}",
            )
            yield Complaint(pointer, message, hint, key=has_key(pointer), lacks=(name,))


def _describe(field: dict[str, Any]) -> str:
    known = {**(schema.resolve(field["$ref"]) if "$ref" in field else {}), **field}
    text = str(known.get("description", "")).split(". ")[0].rstrip(".")
    return f"{text[:1].lower()}{text[1:]}, {example(known)}"


def refused(refusal: Refusal) -> Complaints:
    """A key that may not stand in its mapping."""
    key, place = str(refusal.value), (*refusal.pointer, str(refusal.value))
    if refusal.keyword != "enum":
        yield Complaint(place, f"{quoted(key)} is not a valid {refusal.title}", respelt(refusal), key=True)
    elif refusal.condition is None:
        known = list(refusal.limit)
        hint = nearest(key, known, "allowed here")
        yield Complaint(place, f"{quoted(key)} does not belong here", hint, key=True, meant=near(key, known))
    elif key in refusal.block["properties"]:
        field, value = refusal.condition
        hint = _other_kinds(refusal.block, field, key)
        yield Complaint(place, f"{quoted(key)} does not belong to '{field}: {value}'", hint, key=True)


def _other_kinds(block: dict[str, Any], field: str, key: str) -> str:
    """The hint for a field of another kind of the same block: the kind it belongs to, if there is only one."""
    kinds = [
        value
        for rule in block["allOf"]
        for value in schema.asked_by(rule["if"])[1]
        if key in rule["then"]["propertyNames"]["enum"]
    ]
    return f"remove it, or write '{field}: {kinds[0]}'" if len(kinds) == 1 else "remove it"


def one_of(refusal: Refusal) -> Complaints:
    """A block that must have exactly one of some fields, and has none or several."""
    if not isinstance(refusal.value, dict):
        return  # said already, as the wrong type
    names = [branch["required"][0] for branch in refusal.limit]
    present = [name for name in names if name in refusal.value]
    if present:
        several = " and ".join(f"'{name}'" for name in present)
        yield Complaint(refusal.pointer, f"one {refusal.title} has {several}", "make one entry of each")
        return
    message, hint = (
        f"a {refusal.title} names none of {', '.join(names)}",
        "say what it is, for example 'screw: T20'",
    )
    yield Complaint(refusal.pointer, message, hint, lacks=tuple(names))
