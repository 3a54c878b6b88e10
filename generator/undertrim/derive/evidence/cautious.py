"""Which of several claims is the cautious one (data/cautious.toml)."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from undertrim.derive.evidence.readings import Reading, same, text
from undertrim.record.model import Blank
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Value, message, word

UNKNOWN = str(Blank.UNKNOWN)
_NO_SAFE_SIDE = message("conflicts/no-order")


@dataclass(frozen=True, slots=True)
class Order:
    """What is known of one fact: the words from the most cautious on, or `smallest`, `largest`; neither where there is no safe side."""

    about: str = ""
    words: tuple[str, ...] = ()
    extreme: str = ""
    safety: bool = False
    reason: Value = _NO_SAFE_SIDE
    absent: str = UNKNOWN
    """What a record means that says nothing of it."""


NO_ORDER = Order()


def order(about: str) -> Order:
    """The order of the fact that keys joined with `/` lead to."""
    steps = about.split("/")
    return next((found for found in orders() if _fits(found.about.split("/"), steps)), NO_ORDER)


def choose(known: Order, claims: Sequence[Reading]) -> str:
    """The most cautious of the claims as typed; `unknown` where the order does not reach all of them."""
    if known.extreme:
        return _extreme(known.extreme, claims)
    ranked = [word for word in known.words if word in claims]
    return ranked[0] if ranked and all(claim in known.words for claim in claims) else UNKNOWN


@cache
def orders() -> tuple[Order, ...]:
    """All orders of the table."""
    return tuple(_order(about, **entry) for about, entry in table("cautious")["fact"].items())


def _order(
    about: str, order: str | list[str] = "", *, safety: bool = False, reason: str, absent: str = UNKNOWN
) -> Order:
    why = word("cautious", "fact", about, "reason") if reason else ""
    if isinstance(order, str):
        return Order(about, (), order, safety, why, absent)
    return Order(about, tuple(order), "", safety, why, absent)


def lighter(known: Order, before: Reading, after: Reading) -> bool:
    """Whether one value of a fact is less cautious than another; never where there is no safe side, or where they are one value.

    Of quantities a `largest` that is unknown is more cautious than any of them.
    """
    if same(before, after):
        return False
    if known.extreme:
        return choose(known, [before, after]) == text(before)
    if before not in known.words or after not in known.words:
        return False
    return known.words.index(str(before)) < known.words.index(str(after))


def _fits(pattern: Sequence[str], steps: Sequence[str]) -> bool:
    return len(pattern) == len(steps) and all(
        wanted in ("*", step) for wanted, step in zip(pattern, steps, strict=True)
    )


def _extreme(which: str, claims: Sequence[Reading]) -> str:
    """The smallest or largest; `none` is nothing at all. A claim that cannot be read leaves it unknown, and a lower bound what is largest."""
    if which == "largest" and any(isinstance(claim, Quantity) and claim.least for claim in claims):
        return UNKNOWN
    values = {text(claim): _value(claim) for claim in claims}
    known = {said: value for said, value in values.items() if value is not None}
    if not known or len(known) < len(values):
        return UNKNOWN
    return (min if which == "smallest" else max)(known, key=known.__getitem__)


def _value(claim: Reading) -> float | None:
    if isinstance(claim, Quantity):
        return claim.value
    return 0.0 if claim == Blank.NONE else None
