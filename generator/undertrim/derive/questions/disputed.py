"""What is in dispute: a measurement settles it."""

from collections.abc import Iterator

from undertrim.derive.evidence.claims import claims
from undertrim.derive.evidence.conflicts import disputes
from undertrim.derive.questions.asked import Asked
from undertrim.derive.questions.question import Sort
from undertrim.record.field_titles import FieldTitles, field_titles
from undertrim.record.model import VehicleRecord
from undertrim.words import message


def asked(record: VehicleRecord) -> Iterator[Asked]:
    """Every open dispute about a single value."""
    for item in disputes(record):
        if item.open and item.fact:
            ask = message(
                "questions/settle",
                thing=_thing(record, item.keys),
                field=FieldTitles(field_titles(item.keys).titles[2:]),
            )
            why = message("questions/why-conflict", claims=claims(item))
            yield Asked(Sort.CONFLICT, item.fact.pointer, ask, why)


def _thing(record: VehicleRecord, keys: tuple[str, ...]) -> str:
    things = getattr(record, keys[0], {})
    known = things.get(keys[1]) if isinstance(things, dict) and len(keys) > 1 else None
    return str(getattr(known, "name", "") or " ".join(keys[:2]))
