"""What of the stock fits into an opening, as the commands answer it: one entry for each group of cars in which the answer is the same."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.derive.fit.margins import Check, Number
from undertrim.derive.fit.need import Need
from undertrim.derive.fit.stock import Stock
from undertrim.derive.fit.verdict import STOP, Fit, Kind
from undertrim.publish.encoding import Spread
from undertrim.publish.facts import duties, gear_card, limits
from undertrim.publish.facts.wiring import function_name
from undertrim.record.model.gear import AnyGear
from undertrim.words import Items, Message, Value, Word, message

VERDICTS: dict[Kind, Message] = {
    "fits": message("verdicts/fits"),
    "fits-with": message("verdicts/fits-with"),
    "marginal": message("verdicts/marginal"),
    "unknown": message("verdicts/unknown"),
    "stop": STOP,
    "does-not-fit": message("verdicts/does-not-fit"),
}
TO_GET = message("verdicts/to-get")


@dataclass(frozen=True, slots=True)
class ShownNumber:
    """A number behind a check: its value in the unit of the check, what it is uncertain by, how it is typed, and whether it is only usual."""

    label: Value
    value: float | None
    uncertainty: float
    text: Value
    default: bool


@dataclass(frozen=True, slots=True)
class ShownCheck:
    """One check of a fit; numbers are in `unit`, mm or ohm, None where they are not known."""

    name: str
    verdict: str
    words: Value
    unit: str
    need: float | None
    have: float | None
    margin: float | None
    uncertainty: float | None
    missing: Sequence[Value]
    mend: Value
    numbers: Sequence[ShownNumber]


@dataclass(frozen=True, slots=True)
class ShownNeed:
    """A function that gear needs, and where it comes from."""

    function: str
    name: Word
    words: Value
    by: str
    providers: Sequence[Value]


@dataclass(frozen=True, slots=True)
class ShownFit:
    """One verdict, with the cards of its gear (`about`) and what people saw who tried it (`seen`); `nearest` is gear that would do instead."""

    gear: str
    name: str
    verdict: str
    verdict_words: Message
    headline: Value
    reason: Value
    parts: Sequence[Value]
    to_get: Sequence[Value]
    checks: Sequence[ShownCheck]
    notes: Sequence[Value]
    about: Sequence[Message]
    functions: Sequence[ShownNeed]
    seen: Sequence[Message]
    nearest: str
    nearest_name: str


@dataclass(frozen=True, slots=True)
class ShownAnswer:
    """What fits in one group of cars, and what goes with the factory unit there; `fits` is had once, in its order."""

    limits: Spread[limits.ShownLimits]
    duties: Sequence[duties.ShownDuty]
    counts_words: Items
    notes: Sequence[Value]
    fits: Iterable[ShownFit]


def verdict_words(fit: Fit) -> Message:
    """The verdict as a page, a sheet and a terminal show it."""
    verdict = _verdict(fit)
    return TO_GET if verdict == "to-get" else VERDICTS[verdict]


def _verdict(fit: Fit) -> Kind | Literal["to-get"]:
    """The kind of verdict, with what must be got apart from what is there."""
    return "to-get" if fit.kind == "fits-with" and fit.to_get else fit.kind


def of_answer(vehicle: Vehicle, item: Answer) -> ShownAnswer:
    """One answer."""
    counted = Counter(map(_verdict, item.fits))
    counts = tuple(message(f"verdicts/number-{verdict}", count=number) for verdict, number in counted.items())
    common = shared(item.fits)
    return ShownAnswer(
        limits=limits.of_answer(vehicle, item),
        duties=duties.of_answer(vehicle, item),
        counts_words=Items(counts, "semicolon"),
        notes=[*common, *left_out(vehicle, item.opening.takes)],
        fits=(of_fit(fit, vehicle.stock, common) for fit in item.fits),
    )


def left_out(vehicle: Vehicle, kind: type[AnyGear]) -> list[Message]:
    """The gear of a kind that is not offered since its record has problems, each in words; records stand in folders by kind."""
    names = (address.partition("/")[2] for address in vehicle.stock.left_out if address.startswith(f"{kind.folder()}/"))
    return [message("fit-shown/not-offered", name=name) for name in names]


def shared(found: Sequence[Fit]) -> tuple[Value, ...]:
    """The notes that all of several fits have, so that they can be said once."""
    return tuple(note for note in found[0].notes if all(note in fit.notes for fit in found)) if len(found) > 1 else ()


def of_fit(fit: Fit, stock: Stock, common: Sequence[Value] = ()) -> ShownFit:
    """One verdict, with the cards of its gear (`about`); `common` notes are left out, since they are said elsewhere."""
    return ShownFit(
        gear=fit.gear,
        name=fit.name,
        verdict=fit.kind,
        verdict_words=verdict_words(fit),
        headline=fit.headline,
        reason=fit.reason,
        parts=fit.parts,
        to_get=fit.to_get,
        checks=[_check(check) for check in fit.checks],
        notes=[note for note in fit.notes if note not in common],
        about=gear_card.of_fit(fit, stock),
        functions=[_need(need) for need in fit.needs],
        seen=[one.shown(fit.kind) for one in fit.seen],
        nearest=fit.nearest,
        nearest_name=fit.nearest_name,
    )


def _check(check: Check) -> ShownCheck:
    return ShownCheck(
        name=check.name,
        verdict=check.verdict,
        words=check.words,
        unit=check.unit,
        need=check.need,
        have=check.have,
        margin=check.margin,
        uncertainty=check.uncertainty,
        missing=check.missing,
        mend=check.mend,
        numbers=[_number(number) for number in check.numbers],
    )


def _number(number: Number) -> ShownNumber:
    return ShownNumber(number.label, number.value, number.step, number.text, number.default)


def _need(need: Need) -> ShownNeed:
    return ShownNeed(
        function=need.function,
        name=function_name(need.function),
        words=need.words,
        by=need.by,
        providers=need.providers,
    )
