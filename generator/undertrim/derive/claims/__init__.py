"""What an answer about a car comes to in its record: filled in, seen once more, a conflict, already so, or refused with the reason."""

from undertrim.derive.claims.outcome import Deed, Outcome, Refused
from undertrim.derive.claims.taking import Taking

__all__ = ["Deed", "Outcome", "Refused", "Taking"]
