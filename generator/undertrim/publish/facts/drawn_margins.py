"""The margins of a fit as the drawings show them, and what they leave out."""

from collections.abc import Iterator

from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.margins import Check, Number
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.pictures.drawings.axis import Margin, Verdict
from undertrim.words import Message, Value, all_of, message

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


def amount(margin: float | None) -> Message:
    """A margin in mm in words."""
    if margin is None:
        return message("drawn-fit/untold")
    return message("fit/to-spare" if margin >= 0 else "fit/short", length=both(abs(margin)))


def _spare(check: Check) -> Message:
    """The margin, and the gap as it is drawn: before any usual clearance is taken off."""
    said, gap = amount(check.margin), check.gap
    if gap is None or gap == check.margin:
        return said
    return message("drawn-fit/free" if gap >= 0 else "drawn-fit/too-much", gap=both(abs(gap)), margin=said)


def plain_or_usual(number: Number) -> Value:
    """A number as it stands there, and that it is only usual where nobody measured it."""
    return message("fit-shown/usual", number=number.text) if number.default else number.text


def to_get(fit: Fit | None) -> Iterator[Value]:
    """What it takes and is not in stock, and so in no picture."""
    if fit and fit.to_get:
        yield message("drawn-fit/to-get", what=all_of(*fit.to_get))
