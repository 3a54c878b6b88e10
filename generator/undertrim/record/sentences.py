"""What a contributor is told where the schema refuses something: what is wrong at one place, and the way out.

The validator's own text is never shown.
"""

from collections.abc import Callable

from undertrim.record import gate, key_sentences, trade_words
from undertrim.record.complaint import Complaint, Complaints, has_key, place_name
from undertrim.record.examples import example, is_id, respelt, way_out
from undertrim.record.nearness import suggestion
from undertrim.record.numerals import quoted
from undertrim.record.refusals import Refusal
from undertrim.record.source import Data
from undertrim.words import Items, Message, Value, WayOut, message, one_of


def write(refusal: Refusal) -> Complaints:
    """What one refusal means, one complaint for each place."""
    if refusal.value is None:
        yield _blank(refusal)
        return
    writer = key_sentences.refused if refusal.of_key else _WRITERS.get(refusal.keyword, _other)
    yield from writer(refusal)


def _blank(refusal: Refusal) -> Complaint:
    pointer = refusal.pointer
    unknown = gate.takes(refusal.field, "unknown") and not any(
        gate.takes(refusal.field, text) for text in ("any-id", "any text at all")
    )
    hint = message("schema/value-or-unknown" if unknown else "schema/value-or-no-line", example=example(refusal.field))
    return Complaint(pointer, message("schema/blank", place=place_name(pointer), hint=hint), key=has_key(pointer))


def _choice(refusal: Refusal) -> Complaints:
    known = [str(value) for value in refusal.limit]
    if not isinstance(refusal.value, str):
        every = message("schema/one-of", names=Items(tuple(known), "comma"))
        found = sort(refusal.value)
        yield Complaint(refusal.pointer, message("schema/no-word", name=refusal.name, found=found, hint=every))
        return
    instead = _YES_NO.get(refusal.value.lower(), "")
    hint = (
        message("schema/write", written=instead)
        if instead in known
        else suggestion(refusal.value, known, message("nearness/one-of"))
    )
    yield Complaint(refusal.pointer, _not_a_choice(refusal, known, hint))


def _not_a_choice(refusal: Refusal, known: list[str], hint: Message) -> Message:
    value = quoted(refusal.value)
    if set(known) <= {"yes", "no", "unknown"}:
        place = place_name(refusal.pointer)
        return message("schema/not-these", place=place, known=one_of(*known), value=value, hint=hint)
    return message("schema/not-known", value=value, name=refusal.name, hint=hint)


_YES_NO = {"true": "yes", "on": "yes", "y": "yes", "false": "no", "off": "no", "n": "no"}


def sort(value: Data) -> Message:
    """What a value is: a mapping, a list or a text."""
    if isinstance(value, dict):
        return message("schema/mapping")
    return message("schema/list") if isinstance(value, list) else message("schema/text")


_WANTED = {
    "object": message("schema/mapping"),
    "array": message("schema/list"),
    "string": message("schema/any-text"),
    "integer": message("schema/whole-number"),
}


def _wrong_type(refusal: Refusal) -> Complaints:
    value = refusal.value
    types = refusal.limit if isinstance(refusal.limit, list) else [refusal.limit]
    wanted = one_of(*(_WANTED[name] for name in types))
    found = quoted(value) if isinstance(value, str) else sort(value)
    in_a_list = types == ["array"] and is_id(value)
    hint = (
        message("schema/write", written=f"[{value}]")
        if in_a_list
        else refusal.field.get("hint") or _meant(refusal) or way_out(refusal)
    )
    said = message("schema/wrong-type", name=refusal.name, wanted=wanted, found=found, hint=hint)
    yield Complaint(refusal.pointer, said)


def _meant(refusal: Refusal) -> Message | None:
    """What was meant with a number in words or with more than the number, and with a field that stands among blocks instead of in one."""
    value = refusal.value
    if isinstance(value, str) and "integer" in refusal.limit:
        number = trade_words.count(value)
        return message("schema/write", written=number) if number else None
    last = refusal.pointer[-1] if refusal.pointer else ""
    if isinstance(last, str) and last in refusal.field.get("properties", ()):
        return message("schema/field-outside", field=last, name=refusal.name)
    return None


def _pattern(refusal: Refusal) -> Complaints:
    value, hint = quoted(refusal.value), respelt(refusal)
    yield Complaint(refusal.pointer, message("schema/not-valid", value=value, title=refusal.title, hint=hint))


def _ours(refusal: Refusal) -> Complaints:
    """A value that a keyword of ours has refused, and said why."""
    assert refusal.said
    hint = refusal.field.get("hint") or WayOut(refusal.said)
    yield Complaint(refusal.pointer, message("schema/fault", said=refusal.said, hint=hint))


def _twice(refusal: Refusal) -> Complaints:
    assert refusal.said
    yield Complaint(refusal.pointer, message("schema/twice", value=refusal.said), stays=True)


def _number(code: str) -> Callable[[Refusal], Complaints]:
    def written(refusal: Refusal) -> Complaints:
        hint = refusal.field.get("hint") or message("schema/mend-number")
        value, limit = quoted(refusal.value), refusal.limit
        yield Complaint(refusal.pointer, message(code, name=refusal.name, value=value, limit=limit, hint=hint))

    return written


def _size(code: str, *, stays: bool = False) -> Callable[[Refusal], Complaints]:
    def written(refusal: Refusal) -> Complaints:
        values: dict[str, Value] = {"size": len(refusal.value), "limit": refusal.limit, "hint": way_out(refusal)}
        yield Complaint(refusal.pointer, message(code, name=refusal.name, **values), stays=stays)

    return written


def _plain(code: str) -> Callable[[Refusal], Complaints]:
    def written(refusal: Refusal) -> Complaints:
        value = quoted(refusal.value) if isinstance(refusal.value, str) else ""
        yield Complaint(refusal.pointer, message(code, name=refusal.name, value=value, hint=way_out(refusal)))

    return written


_other = _plain("schema/not-valid-here")

_WRITERS: dict[str, Callable[[Refusal], Complaints]] = {
    "additionalProperties": key_sentences.unknown,
    "required": key_sentences.missing,
    "oneOf": key_sentences.one_of,
    "enum": _choice,
    "type": _wrong_type,
    "pattern": _pattern,
    "lines": _plain("schema/over-lines"),
    "quantity": _ours,
    "drive": _ours,
    "calendar": _plain("schema/no-day"),
    "minimum": _number("schema/less"),
    "maximum": _number("schema/more"),
    "minLength": _plain("schema/empty"),
    "maxLength": _size("schema/long", stays=True),
    "maxItems": _size("schema/many"),
    "maxProperties": _size("schema/many"),
    "minItems": _plain("schema/empty-list"),
    "minProperties": _size("schema/few"),
    "uniqueItems": _twice,
}
