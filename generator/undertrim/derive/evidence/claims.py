"""What the sides of a dispute about a wire say."""

from undertrim.derive.evidence.conflicts import Dispute
from undertrim.words import Items, Value, message

METER = message("conflicts/meter")


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


def _value(dispute: Dispute, says: str) -> str:
    return says.replace("-", " ") if field(dispute) == "function" else says
