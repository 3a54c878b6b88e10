"""What there is to say about the fields of a block: unknown, misspelt, missing, or of another kind of block."""

from undertrim import words
from undertrim.record import schema
from undertrim.record.complaint import Complaint, Complaints, has_key, place_name
from undertrim.record.examples import example, respelt
from undertrim.record.nearness import near, suggestion
from undertrim.record.numerals import quoted
from undertrim.record.refusals import Refusal
from undertrim.record.schema import Schema
from undertrim.words import Items, Message, all_of, message


def unknown(refusal: Refusal) -> Complaints:
    """Each field that the block does not have."""
    known = list(refusal.field["properties"])
    for key in refusal.value:
        if key not in known:
            instead = refusal.field.get("misnamed", {}).get(key, "")
            hint = (
                message("schema/write", written=instead)
                if instead
                else _belongs(refusal, key) or suggestion(key, known, _FIELDS)
            )
            said = message("schema/no-field", key=quoted(key), name=refusal.name, hint=hint)
            yield Complaint((*refusal.pointer, key), said, key=True, meant=instead or near(key, known))


def _belongs(refusal: Refusal, key: str) -> Message | None:
    """Where a block that is no field stands right behind one that is blank, it was to stand in that."""
    names = list(refusal.value)
    before = names[names.index(key) - 1] if key in names[1:] else ""
    blank = before in refusal.field["properties"] and refusal.value[before] is None
    return message("schema/below", field=before) if blank and isinstance(refusal.value[key], dict) else None


_FIELDS, _ALLOWED = message("nearness/fields"), message("nearness/allowed")


def missing(refusal: Refusal) -> Complaints:
    """Each field that the block must have and has not."""
    pointer, fields = refusal.pointer, refusal.block["properties"]
    for name in refusal.limit:
        if name not in refusal.value:
            said = message("schema/missing", field=name, place=place_name(pointer), hint=_add(name, fields[name]))
            yield Complaint(pointer, said, key=has_key(pointer), lacks=(name,))


def _add(name: str, field: Schema) -> Message:
    known = {**(schema.resolve(field["$ref"]) if "$ref" in field else {}), **field}
    return message("schema/add", field=name, what=known["description"].first, example=example(known))


def refused(refusal: Refusal) -> Complaints:
    """A key that may not stand in its mapping."""
    name, place = str(refusal.value), (*refusal.pointer, str(refusal.value))
    key = quoted(name)
    if refusal.keyword != "enum":
        yield Complaint(
            place, message("schema/not-valid", value=key, title=refusal.title, hint=respelt(refusal)), key=True
        )
    elif refusal.condition is None:
        known = list(refusal.limit)
        said = message("schema/not-here", key=key, hint=suggestion(name, known, _ALLOWED))
        yield Complaint(place, said, key=True, meant=near(name, known))
    elif name in refusal.block["properties"]:
        yield Complaint(place, _of_another_kind(refusal, name, *refusal.condition), key=True)


def _of_another_kind(refusal: Refusal, name: str, field: str, value: str) -> Message:
    """A field of another kind of the same block: its kind is said, if there is only one that has it."""
    kinds = [
        kind
        for rule in refusal.block["allOf"]
        for kind in schema.asked_by(rule["if"])[1]
        if name in rule["then"]["propertyNames"]["enum"]
    ]
    if len(kinds) == 1:
        return message("schema/of-that-kind", key=quoted(name), field=field, kind=value, other=kinds[0])
    return message("schema/of-another-kind", key=quoted(name), field=field, kind=value)


def one_of(refusal: Refusal) -> Complaints:
    """A block that must have exactly one of some fields, and has none or several."""
    if not isinstance(refusal.value, dict):
        return  # said already, as the wrong type
    names = [branch["required"][0] for branch in refusal.limit]
    present = [name for name in names if name in refusal.value]
    if present:
        both = all_of(*map(words.quoted, present))
        yield Complaint(refusal.pointer, message("schema/several", title=refusal.title, fields=both))
        return
    said = message("schema/none", title=refusal.title, fields=Items(tuple(names), "comma"))
    yield Complaint(refusal.pointer, said, lacks=tuple(names))
