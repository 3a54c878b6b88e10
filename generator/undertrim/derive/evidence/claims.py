"""What the sides of a dispute about a wire say."""

from collections.abc import Sequence

from undertrim.derive.evidence.conflicts import Dispute
from undertrim.record import colours
from undertrim.resources import table
from undertrim.words import Items, Message, Value, message, word

METER = message("joint-states/conflict")


def claims(dispute: Dispute) -> Value:
    """What each side says, with its evidence: `illumination (e2) or antenna feed (e3)`."""
    said = (claimed(_value(dispute, claim.says), claim.source) for claim in dispute.claims)
    return Items(tuple(said), "either")


def claimed(says: Value, source: Sequence[str]) -> Message:
    """One of them: the value with its evidence, or that nothing says where it is from."""
    if not source:
        return message("conflicts/claim-unsaid", says=says)
    return message("conflicts/claim", says=says, source=Items(tuple(source), "comma"))


def field(dispute: Dispute) -> str:
    """The field that is disputed."""
    return dispute.keys[-1]


def _value(dispute: Dispute, says: str) -> Value:
    if field(dispute) == "function":
        return word("functions", "function", says, "words") if says in table("functions")["function"] else says
    return colours.as_typed(says) if field(dispute) == "colour" else says
