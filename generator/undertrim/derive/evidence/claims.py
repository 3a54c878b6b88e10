"""What the sides of a dispute about a wire say, in words."""

from undertrim.derive.evidence.conflicts import Dispute

METER = "conflict: meter it"


def claims(dispute: Dispute) -> str:
    """What each side says, with its evidence: `illumination (e2) or antenna feed (e3)`."""
    return " or ".join(f"{_value(dispute, claim.says)} ({', '.join(claim.source)})" for claim in dispute.claims)


def field(dispute: Dispute) -> str:
    """The field that is disputed."""
    return dispute.keys[-1]


def _value(dispute: Dispute, says: str) -> str:
    return says.replace("-", " ") if field(dispute) == "function" else says
