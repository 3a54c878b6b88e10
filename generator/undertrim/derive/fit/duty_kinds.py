"""What a factory unit may do besides playing, and how much hangs on it (data/duties.toml)."""

from dataclasses import dataclass
from functools import cache

from undertrim import words
from undertrim.record.model import Duty
from undertrim.resources import table
from undertrim.words import Value, Word, word


@dataclass(frozen=True, slots=True)
class DutyKind:
    """One kind: `weight` is safety, law, comfort or unknown; `lead` is the function that a receiver must have a lead for; empty: none.

    `grave` where a unit that no longer does it is no plain replacement, whatever the owner says.
    """

    id: str
    weight: str
    words: Word
    grave: bool
    lead: str = ""
    source: str = ""


def kind_of(duty: Duty) -> DutyKind:
    """The kind that a duty names by `what`, else by its own key; one of unknown weight where it names none."""
    return kinds().get(duty.what or duty.id) or _kind(duty.id, "unknown")


def named(duty: str) -> Value:
    """A duty in words by its key in a record; a key that we do not know is the record's own word."""
    return words.named("duty-names", duty)


@cache
def kinds() -> dict[str, DutyKind]:
    """Every kind by its name and by what else it is called."""
    found: dict[str, DutyKind] = {}
    for name, row in table("duties")["duty"].items():
        made = _kind(name, row["weight"], row.get("lead", ""), row["source"])
        found |= dict.fromkeys((name, *row["also"]), made)
    return found


def _kind(name: str, weight: str, lead: str = "", source: str = "") -> DutyKind:
    row = table("duties")["weight"][weight]
    return DutyKind(name, weight, word("duties", "weight", weight, "words"), row["grave"], lead, source)
