"""What the sides of a dispute about a wire say, in words."""

from undertrim.derive.evidence.conflicts import Dispute
from undertrim.derive.wiring.functions import functions

METER = "conflict: meter it"


def claims(dispute: Dispute) -> str:
    """What each side says, with its evidence: `illumination (e2) or antenna feed (e3)`."""
    return " or ".join(f"{_value(dispute, claim.says)} ({', '.join(claim.source)})" for claim in dispute.claims)


def claimed(dispute: Dispute) -> tuple[str, ...]:
    """The functions that the claims give a wire; none where another field of it is disputed."""
    if field(dispute) != "function":
        return ()
    return tuple(claim.says for claim in dispute.claims if claim.says in functions().functions)


def field(dispute: Dispute) -> str:
    """The field that is disputed."""
    return dispute.keys[-1]


def _value(dispute: Dispute, says: str) -> str:
    return functions().functions[says].words if says in claimed(dispute) else says
