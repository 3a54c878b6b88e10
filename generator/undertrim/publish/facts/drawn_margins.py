"""The margins of a fit as the drawings show them, and what they leave out."""

from collections.abc import Iterator

from undertrim.derive.fit.margins import Check, both
from undertrim.derive.fit.verdict import Fit, listed
from undertrim.publish.drawings.axis import Margin, Verdict

VERDICTS: dict[str, Verdict] = {"fits": "fits", "marginal": "close", "fails": "strikes", "unknown": "unknown"}


def margin(fit: Fit | None, name: str) -> Margin | None:
    """The margin of one check; None where it was not reckoned so."""
    found = check(fit, name)
    if found is None:
        return None
    # What only lacks the usual clearance touches nothing.
    close = found.verdict == "fails" and found.gap is not None and found.gap >= 0
    return Margin(_spare(found), "too close" if close else VERDICTS[found.verdict])


def check(fit: Fit | None, name: str) -> Check | None:
    """The check of a name; None where it was not made."""
    return next((one for one in fit.checks if one.name == name), None) if fit else None


def amount(margin: float | None) -> str:
    """A margin in mm in words."""
    if margin is None:
        return "cannot be told"
    return f"{both(abs(margin))} {'to spare' if margin >= 0 else 'short'}"


def _spare(check: Check) -> str:
    """The margin, and the gap as it is drawn: before any usual clearance is taken off."""
    said, gap = amount(check.margin), check.gap
    if gap is None or gap == check.margin:
        return said
    return f"{both(abs(gap))} {'free' if gap >= 0 else 'too much'}, {said}"


def to_get(fit: Fit | None) -> Iterator[str]:
    """What it takes and is not in stock, and so in no picture."""
    if fit and fit.to_get:
        yield f"Drawn without what would have to be got: {listed(fit.to_get)}."
