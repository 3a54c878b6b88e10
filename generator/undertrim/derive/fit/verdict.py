"""What all checks of one piece of gear in one opening come to."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from undertrim.derive.fit.margins import Check
from undertrim.derive.fit.need import Need
from undertrim.derive.fit.piece import Piece
from undertrim.derive.fit.tried import SeenFit
from undertrim.words import Items, Message, Value, all_of, message

Kind = Literal["fits", "fits-with", "marginal", "unknown", "stop", "does-not-fit"]
KINDS: tuple[Kind, ...] = ("fits", "fits-with", "marginal", "unknown", "does-not-fit")
"""What size and joint come to; `stop` is none of them: the gear may go in, and must not take the factory unit's place."""
RANKED: tuple[Kind, ...] = (*KINDS[:-1], "stop", KINDS[-1])
"""All of them, the best first."""


@dataclass(frozen=True, slots=True)
class Way:
    """How gear is put in: on or in which piece of stock (`between`, an id), on the factory bracket or not, turned by 90 degrees or not.

    `plate` tells that it wants an adapter plate that is not in stock; `pose` which of its six positions a box lies in, as its kind counts them.
    """

    between: str = ""
    on_bracket: bool = False
    turned: bool = False
    plate: bool = False
    pose: int = 0


@dataclass(frozen=True, slots=True)
class Fit:
    """The answer: its kind, the checks behind it with the binding one first, and what goes between.

    `parts` are parts in stock, `to_get` what would do and is not in stock, `notes` what to know, `needs` the functions
    that the gear wants from the car. `nearest` is the id of the gear in stock that fits and is least unlike one that does not, with its name.
    `seen` is what people saw who tried it there: it stands beside the verdict, and changes none.
    `bring` is what the job takes besides the gear, to be bought or brought: its cable and fuses.
    `stops` is why gear of the kind `stop` must not take the factory unit's place, `bare` its headline by size and joint
    alone.
    """

    gear: str
    name: str
    kind: Kind
    checks: tuple[Check, ...]
    parts: tuple[Piece, ...] = ()
    to_get: tuple[Value, ...] = ()
    notes: tuple[Value, ...] = field(default=(), hash=False)
    needs: tuple[Need, ...] = ()
    nearest: str = ""
    nearest_name: str = ""
    way: Way = Way()
    stops: tuple[Message, ...] = ()
    bare: Message | None = field(default=None, hash=False)
    bring: tuple[Value, ...] = field(default=(), hash=False)
    seen: tuple[SeenFit, ...] = field(default=(), hash=False)

    @property
    def margin(self) -> float:
        """The smallest margin in mm; minus infinity where none is known."""
        return smallest(self.checks)

    @property
    def headline(self) -> Message:
        """The verdict with its reason. It is made when somebody wants it: most answers are only compared."""
        return message("fit/check", title=STOP, found=self.reason) if self.bare else _headline(self)

    @property
    def reason(self) -> Value:
        """What the headline says beyond the verdict: what goes between, and what decides; empty for nothing."""
        if self.bare:
            return message("fit/stops", stops=Items(self.stops, "semicolon"), bare=self.bare)
        between = _between(self)
        if self.kind in ("fits", "fits-with"):
            return between
        return message("fit/with", between=between, why=_reasons(self)) if between else _reasons(self)

    @property
    def bridged(self) -> float:
        """What a plate that is to be got would have to close between basket and hole of the car, in mm; 0 without one."""
        gaps = (check.margin for check in self.checks if check.margin is not None and check.name.startswith("hole"))
        return max(gaps, default=0.0) if self.to_get else 0.0

    @property
    def rank(self) -> tuple[int, bool, float, float, str]:
        """Where it stands among others: by kind, from stock before to buy, by how little a plate must bridge, by the smallest margin, by name."""
        return (RANKED.index(self.kind), bool(self.to_get), self.bridged, -self.margin, self.name)


def smallest(checks: Iterable[Check]) -> float:
    """The smallest margin in mm of those that have one; minus infinity where none has. The play of bolt holes is no room."""
    room = (
        check.margin
        for check in checks
        if check.margin is not None and check.unit == "mm" and "bolts" not in check.name
    )
    return min(room, default=-math.inf)


def decide(
    gear: str,
    name: str,
    checks: Sequence[Check],
    parts: tuple[Piece, ...] = (),
    to_get: tuple[Value, ...] = (),
    notes: tuple[Value, ...] = (),
    way: Way = Way(),
) -> Fit:
    """The answer from all checks: a failure outweighs what is unknown, and that what is marginal."""
    kind = _kind(checks, bool(parts or to_get))
    ordered = tuple(sorted(checks, key=_order))
    return Fit(gear, name, kind, ordered, parts, to_get, notes, way=way)


STOP = message("verdicts/stop")


def stopped(fit: Fit, reasons: Sequence[Message]) -> Fit:
    """The answer for gear that goes in while something is lost with the factory unit that is not the owner's to give up."""
    if not reasons or fit.kind == "does-not-fit":
        return fit
    return replace(fit, kind="stop", stops=tuple(reasons), bare=fit.headline)


def _kind(checks: Sequence[Check], between: bool) -> Kind:
    verdicts = {check.verdict for check in checks}
    if "fails" in verdicts:
        return "does-not-fit"
    if "unknown" in verdicts:
        return "unknown"
    if "marginal" in verdicts:
        return "marginal"
    return "fits-with" if between else "fits"


_WORST = ("fails", "unknown", "marginal", "fits")


def _order(check: Check) -> tuple[int, bool, float]:
    """What fails first, of that what nothing can mend, and of that the smallest margin."""
    return _WORST.index(check.verdict), bool(check.mend), math.inf if check.margin is None else check.margin


def _headline(fit: Fit) -> Message:
    between = _between(fit)
    values: dict[str, Value] = {"between": between} if between else {}
    if fit.kind not in ("fits", "fits-with"):
        values["why"] = _reasons(fit)
    return message(f"fit/{_HEADLINES[fit.kind]}{'-with' if between else ''}", **values)


_HEADLINES: dict[Kind, str] = {
    "fits": "fits",
    "fits-with": "fits",
    "marginal": "marginal",
    "unknown": "unknown",
    "does-not-fit": "does-not-fit",
}


def _between(fit: Fit) -> Value:
    """What goes between; empty where nothing does."""
    if not fit.to_get:
        return all_of(*fit.parts) if fit.parts else ""
    if not fit.parts:
        return message("fit/to-get", what=all_of(*fit.to_get))
    return message("fit/parts-and-to-get", parts=all_of(*fit.parts), what=all_of(*fit.to_get))


def _reasons(fit: Fit) -> Items:
    """What decides: the binding failure alone, else all that is missing or too close to tell."""
    said = [check for check in fit.checks if check.verdict == fit.checks[0].verdict]
    return Items(tuple(check.words for check in (said[:1] if fit.kind == "does-not-fit" else said)), "semicolon")


def best(fits: Sequence[Fit]) -> Fit:
    """The answer of the best kind; among equals fewer parts, then the larger smallest margin. Of misfits the first.

    What is at hand and merely close comes before what would have to be got.
    """

    def order(fit: Fit) -> tuple[int, bool, int, float]:
        if fit.kind == "does-not-fit":
            return (KINDS.index(fit.kind), False, 0, 0.0)
        kind = max(KINDS.index(fit.kind), KINDS.index("marginal") if fit.to_get else 0)
        return (kind, bool(fit.to_get), len(fit.parts), -fit.margin)

    return min(fits, key=order)
