"""What the sides of a dispute about a wire say."""

from undertrim.derive.evidence.conflicts import Dispute
from undertrim.record import colours
from undertrim.resources import table
from undertrim.words import Items, Value, message, word

METER = message("joint-states/conflict")


def claims(dispute: Dispute) -> Value:
    """What each side says, with its evidence: `illumination (e2) or antenna feed (e3)`."""
    said = (
        message("conflicts/claim", says=_value(dispute, claim.says), source=Items(tuple(claim.source), "comma"))
        for claim in dispute.claims
    )
    return Items(tuple(said), "either")


def field(dispute: Dispute) -> str:
    """The field that is disputed."""
    return dispute.keys[-1]


def _value(dispute: Dispute, says: str) -> Value:
    if field(dispute) == "function":
        return word("functions", "function", says, "words") if says in table("functions")["function"] else says
    return colours.as_typed(says) if field(dispute) == "colour" else says
