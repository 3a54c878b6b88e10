"""The sentences a contributor reads where the schema refuses something: what is wrong at one place, and the way out.

The validator's own text is never shown.
"""

from collections.abc import Callable

from undertrim.record import key_sentences
from undertrim.record.complaint import Complaint, Complaints, has_key, place_name
from undertrim.record.examples import either, is_id, respelt, way_out
from undertrim.record.nearness import nearest
from undertrim.record.numerals import quoted
from undertrim.record.refusals import Refusal


def write(refusal: Refusal) -> Complaints:
    """What one refusal means, one sentence for each place."""
    if refusal.value is None:
        yield _blank(refusal)
        return
    writer = key_sentences.refused if refusal.of_key else _WRITERS.get(refusal.keyword, _other)
    yield from writer(refusal)


def _blank(refusal: Refusal) -> Complaint:
    hint = "write the value, or 'unknown' where that is allowed, or remove the line"
    pointer = refusal.pointer
    return Complaint(pointer, f"{place_name(pointer)} is blank", hint, key=has_key(pointer))


def _choice(refusal: Refusal) -> Complaints:
    known = [str(value) for value in refusal.limit]
    if not isinstance(refusal.value, str):
        message = f"{refusal.name} is one word, not a {_sort(refusal.value)}"
        yield Complaint(refusal.pointer, message, f"one of: {', '.join(known)}")
        return
    instead = _YES_NO.get(refusal.value.lower(), "")
    hint = f"write '{instead}'" if instead in known else nearest(refusal.value, known, "one of")
    yield Complaint(refusal.pointer, _not_a_choice(refusal, known), hint)


def _not_a_choice(refusal: Refusal, known: list[str]) -> str:
    if set(known) <= {"yes", "no", "unknown"}:
        return f"{place_name(refusal.pointer)} is {either(known)}, not {quoted(refusal.value)}"
    return f"{quoted(refusal.value)} is not a known {refusal.name}"


_YES_NO = {"true": "yes", "on": "yes", "y": "yes", "false": "no", "off": "no", "n": "no"}


def _sort(value: object) -> str:
    if isinstance(value, dict):
        return "mapping"
    return "list" if isinstance(value, list) else "text"


_WANTED = {"object": "a mapping", "array": "a list", "string": "text", "integer": "a whole number"}


def _wrong_type(refusal: Refusal) -> Complaints:
    value = refusal.value
    types = refusal.limit if isinstance(refusal.limit, list) else [refusal.limit]
    wanted = " or ".join(_WANTED[name] for name in types)
    found = quoted(value) if isinstance(value, str) else f"a {_sort(value)}"
    hint = f"write '[{value}]'" if types == ["array"] and is_id(value) else way_out(refusal)
    yield Complaint(refusal.pointer, f"{refusal.name} must be {wanted}, not {found}", hint)


def _pattern(refusal: Refusal) -> Complaints:
    yield Complaint(refusal.pointer, f"{quoted(refusal.value)} is not a valid {refusal.title}", respelt(refusal))


Writer = Callable[[Refusal], Complaints]


def _plain(message: str, hint: str = "", *, otherwise: str = "", stays: bool = False) -> Writer:
    """Writes one sentence, in which the refusal stands for `{it}`, its quoted value for `{value}`.

    The hint is `hint`, or else that of the schema, or else `otherwise`, or else the example of the schema.
    """

    def written(refusal: Refusal) -> Complaints:
        value = quoted(refusal.value) if isinstance(refusal.value, str) else ""
        said = message.format(it=refusal, value=value, size=len(refusal.value))
        yield Complaint(
            refusal.pointer, said, hint or refusal.field.get("hint") or otherwise or way_out(refusal), stays=stays
        )

    return written


_other = _plain("{it.name} is not valid here")
_ONE_LINE = "write it on one line, without '|' or '>'"

_FEWER = "leave out what does not belong: no car has so many"

_WRITERS: dict[str, Writer] = {
    "additionalProperties": key_sentences.unknown,
    "required": key_sentences.missing,
    "oneOf": key_sentences.one_of,
    "enum": _choice,
    "type": _wrong_type,
    "pattern": _pattern,
    "lines": _plain("{it.name} {value} runs over a line", _ONE_LINE),
    "quantity": _plain("{it.message}"),
    "drive": _plain("{it.message}"),
    "calendar": _plain("{value} is not a day of the calendar", "mend the day"),
    "minimum": _plain("{it.name} {it.message}", otherwise="mend the number"),
    "maximum": _plain("{it.name} {it.message}", otherwise="mend the number"),
    "minLength": _plain("{it.name} is empty"),
    "maxLength": _plain("{it.name} has {size} characters, more than {it.limit}", "shorten it", stays=True),
    "maxItems": _plain("{it.name} has {size} entries, more than {it.limit}", _FEWER),
    "maxProperties": _plain("{it.name} has {size} entries, more than {it.limit}", _FEWER),
    "minItems": _plain("{it.name} is an empty list"),
    "minProperties": _plain("{it.name} has too few entries: {size} of at least {it.limit}"),
    "uniqueItems": _plain("{it.message} stands twice in this list", "remove one", stays=True),
}
