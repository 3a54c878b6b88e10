"""What fits, as data and as text for a terminal: every number in both systems of units."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.margins import Check, Number, Verdict
from undertrim.derive.fit.verdict import Fit
from undertrim.derive.procedure.closed import why_closed
from undertrim.publish.encoding import Published, Spread, said
from undertrim.publish.facts import doubts, duties, gear_card, names
from undertrim.publish.facts import fit as facts
from undertrim.publish.facts.blockers import Blocker
from undertrim.publish.facts.wiring import function_name
from undertrim.publish.terminal import blockers as blocker_lines
from undertrim.publish.terminal.lines import closing, wrapped
from undertrim.words import Items, Message, Value, message, say


@dataclass(frozen=True, slots=True)
class OpeningAnswer:
    """What fits into one opening, in one group of cars."""

    opening: str
    name: str
    kind: str
    taken: Sequence[Value]
    answer: Spread[facts.ShownAnswer]


@dataclass(frozen=True, slots=True)
class Answers:
    """What fits into some openings of a vehicle; `left_out` are the addresses of gear with problems, `blockers` what is in the way of working there."""

    vehicle: str
    demo: bool
    left_out: Sequence[str]
    blockers: Sequence[Blocker]
    openings: Sequence[OpeningAnswer]


def fit_data(vehicle: Vehicle, answers: Sequence[Answer], blockers: Sequence[Blocker] = ()) -> Published:
    """The answers as data; the numbers of a check are in its unit, mm or ohm."""
    made = Answers(
        vehicle=vehicle.address,
        demo=vehicle.record.demo == "yes",
        left_out=vehicle.stock.left_out,
        blockers=blockers,
        openings=[
            OpeningAnswer(
                opening=answer.opening.id,
                name=answer.opening.name,
                kind=answer.opening.kind,
                taken=doubts.unseen(vehicle.record, ("openings", answer.opening.id)),
                answer=facts.of_answer(vehicle, answer),
            )
            for answer in answers
        ],
    )
    found: Published = said(made)
    return found


def fit_text(vehicle: Vehicle, answers: Sequence[Answer], blockers: Sequence[Blocker] = (), *, full: bool) -> str:
    """The answers as text, ending in a newline; in `full` with every number behind every check."""
    lines = [line for answer in answers for line in _answer(vehicle, answer, full)]
    more = () if full else (say(message("fit-shown/more")),)
    return "\n".join([*_head(vehicle), *_above(blockers), *lines, "", *more, closing(), ""])


def _head(vehicle: Vehicle) -> Iterator[str]:
    facts = vehicle.record.vehicle
    yield say(message("fit-shown/what-fits", vehicle=f"{facts.make} {facts.model}", address=vehicle.address))
    if vehicle.record.demo == "yes":
        yield say(message("vehicle-page/demo"))
    for address in vehicle.stock.left_out:
        yield say(message("fit-shown/left-out", address=address))


def _above(blockers: Sequence[Blocker]) -> Iterator[str]:
    if blockers:
        yield ""
        yield say(message("plan/before"))
        yield from blocker_lines.lines(said(blockers))


def _answer(vehicle: Vehicle, answer: Answer, full: bool) -> Iterator[str]:
    kinds = names.kinds_of_car(vehicle.record, answer.cars)
    yield ""
    title = message("fit-shown/opening", name=answer.opening.name, id=answer.opening.id)
    yield from wrapped(message("fit-shown/for", title=title, cars=kinds) if kinds else title, "", "  ")
    if not answer.there:
        yield f"  {say(message('sheet/not-in-these-cars'))}"
        return
    if answer.closed:
        why = why_closed(answer.opening, answer.closed)
        yield from wrapped(message("fit-shown/inside", why=why), "  ", "    ")
        return
    for line in doubts.unseen(vehicle.record, ("openings", answer.opening.id)):
        yield from wrapped(line, "  ", "    ")
    if answer.takes:
        yield from wrapped(message("fit-shown/takes", limits=Items(answer.takes, "semicolon")), "  ", "    ")
    if not answer.fits:
        yield f"  {say(message('fit-shown/none', kind=message(f'gear-kinds/{answer.opening.takes.kind}')))}"
    common = () if full else facts.shared(answer.fits)
    for note in (*common, *_duties(vehicle, answer)):
        yield from wrapped(message("fit-shown/note", note=note), "  ", "        ")
    for fit in answer.fits:
        yield from _of(vehicle, fit, full, common)


def _duties(vehicle: Vehicle, answer: Answer) -> Iterator[str]:
    """What becomes of the duties of the factory unit."""
    for item in duties.of_answer(vehicle, answer):
        yield from (duties.line(item.name, item.kept_words, item.when), *map(say, item.conflicts))


def _of(vehicle: Vehicle, fit: Fit, full: bool, common: Sequence[Value]) -> Iterator[str]:
    """In short: what fails or is close, what is not simply on a wire. In full: everything."""
    yield ""
    yield from wrapped(message("fit-shown/gear", name=fit.name, headline=fit.headline, id=fit.gear), "  ", "      ")
    for one in fit.seen:
        yield from wrapped(one.shown(fit.kind), "    ", "          ")
    for check in fit.checks if full else _telling(fit.checks):
        yield from _check(check, full)
    for need in fit.needs:
        if full or need.by != "wire":
            where = message("fit-shown/function", name=function_name(need.function), where=need.words)
            yield from wrapped(where, "    - ", "      ")
    for note in fit.notes:
        if note not in common:
            yield from wrapped(message("fit-shown/note", note=note), "    ", "          ")
    for about in gear_card.of_fit(fit, vehicle.stock) if full else ():
        yield from wrapped(message("fit-shown/about", gear=about), "    ", "           ")
    if fit.nearest:
        yield f"    {say(message('fit-shown/nearest', name=fit.nearest_name))}"


def _check(check: Check, full: bool) -> Iterator[str]:
    """A check with its mark; in full also its numbers."""
    yield from wrapped(f"{say(_MARK[check.verdict]):8} {say(check.words)}", "    ", " " * 13)
    if full:
        numbers = tuple(_number(number) for number in check.numbers if number.value != 0 or number.step)
        yield from wrapped(Items(numbers, "semicolon"), " " * 13, " " * 13)


def _telling(checks: Sequence[Check]) -> Iterator[Check]:
    """The checks that do not hold, and the tightest that does."""
    yield from (check for check in checks if check.verdict != "fits")
    holding = [check for check in checks if check.verdict == "fits" and check.margin is not None and check.unit == "mm"]
    yield from holding[:1]


_MARK: dict[Verdict, Message] = {
    "fits": message("fit-shown/ok"),
    "marginal": message("fit-shown/close"),
    "fails": message("fit-shown/no"),
    "unknown": message("fit-shown/unknown"),
}


def _number(number: Number) -> Message:
    text = number.text
    if number.step:
        text = message("fit-shown/give-or-take", number=text, step=both(number.step))
    if number.default:
        text = message("fit-shown/usual", number=text)
    return message("fit-shown/number", label=number.label, number=text)
