"""What is said above a job of what the factory unit also does: how grave an outcome is, and what of it to tell the owner."""

from undertrim.derive.fit.duties import UNLESS_GEAR, Fate
from undertrim.derive.fit.duty_groups import Becomes
from undertrim.words import Items, Message, Value, message

LAW = message("duties/law")
_OWNER = message("duties/owner")
_NOBODY = message("duties/nobody")
_WORDS = {Fate.LOST: "LOST", Fate.UNKNOWN: "UNKNOWN", Fate.KEPT: "NEEDED"}


def word(item: Becomes) -> str:
    """STOP, LOST, UNKNOWN or NEEDED; empty for what stays or moves over."""
    return "STOP" if item.outcome.stops else _WORDS.get(item.outcome.fate, "")


def kept_words(item: Becomes) -> Message:
    """What becomes of a duty, and that the job is no plain replacement where it is none."""
    become = item.outcome.said
    return message("duties/not-plain", becomes=become) if word(item) == "STOP" else become


def text(item: Becomes) -> Value:
    """What a blocker says of a duty that is lost or may be."""
    kept_by, stops = item.duty.kept_by, word(item) == "STOP"
    usual = {"none": _OWNER, "unknown": _NOBODY}.get(kept_by, "")
    told = kept_by not in ("none", "unknown") or item.outcome.why == UNLESS_GEAR
    become = _sentence(item.outcome.said) if told else ""
    said = (_own(item.duty.note) or ("" if stops and kept_by == "none" else usual), become, _weight(item))
    return Items(tuple(part for part in said if part), "spaced")


def _weight(item: Becomes) -> Value:
    """Who decides on a loss, where it is not the owner alone."""
    if word(item) == "STOP":
        return LAW
    kind = item.outcome.kind
    return message("duties/weight-unknown", weight=kind.words) if kind.weight == "unknown" else ""


def _sentence(becomes: Message) -> Message:
    """What becomes of a duty, as a sentence."""
    return message(f"{becomes.code}-sentence", **becomes.values)


def _own(note: str) -> str:
    """A record's own text, as a sentence."""
    return note and f"{note[0].upper()}{note[1:]}{'' if note.endswith(('.', '!', '?')) else '.'}"
