"""How long the new gear takes to fit, in words."""

from undertrim.derive.fit.fitting import Fitting
from undertrim.publish.facts import words
from undertrim.words import Value, message


def said(found: Fitting) -> Value:
    """The time that the gear gives, and what gives none; empty where nothing is fitted."""
    silent = words.listed(*(piece.name for piece in found.unsaid))
    if not found.minutes:
        return message("times/fitting-unsaid", gear=silent) if found.unsaid else ""
    time = words.minutes(found.minutes)
    if found.unsaid:
        return message("times/fitting-some", time=time, gear=silent)
    return message("times/fitting", time=time)
