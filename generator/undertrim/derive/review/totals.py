"""What a visit comes to before and now: tools, what is to buy, minutes, waits, cautions."""

from collections.abc import Iterator, Sequence

from undertrim.derive.procedure import tally
from undertrim.derive.procedure.steps import Step
from undertrim.derive.review.change import Detail
from undertrim.derive.review.steps import minutes, warned
from undertrim.derive.visit import totals
from undertrim.words import ENGLISH, Items, Value, message, say


def differing(before: Sequence[Step], after: Sequence[Step]) -> tuple[tuple[Detail, ...], float]:
    """What the whole comes to that is another sum, and how many more minutes it takes."""
    was, now = totals.of(tuple(before)), totals.of(tuple(after))
    found = tuple(_each(was, now, _cautions(before), _cautions(after)))
    return found, round(now.time.minutes - was.time.minutes, 2)


def _each(
    was: totals.Totals, now: totals.Totals, cautions_before: Sequence[Value], cautions_after: Sequence[Value]
) -> Iterator[Detail]:
    yield from _listed("tools", [one.name for one in was.tools], [one.name for one in now.tools])
    yield from _listed("buy", [_bought(one) for one in was.buy], [_bought(one) for one in now.buy])
    if was.time.untimed != now.time.untimed:
        yield Detail("untimed", str(was.time.untimed), str(now.time.untimed))
    if was.time.waits != now.time.waits:
        yield Detail("waits", _waits(was.time), _waits(now.time))
    yield from _listed("cautions", cautions_before, cautions_after)


def _bought(one: tally.Purchase) -> Value:
    """`3 × push clip, for Door panel`."""
    if one.count is None:
        return message("review/buy-some", what=one.what, part=one.part)
    return message("review/buy", number=one.count, what=one.what, part=one.part)


def _waits(time: tally.Time) -> Value:
    """The waits one after another; `none` where there is none."""
    said = [message("review/wait-unknown") if one is None else minutes(one / 60) for one in time.waits]
    return Items(tuple(said), "plus") if said else message("review/no-wait")


def _cautions(steps: Sequence[Step]) -> list[Value]:
    found = ((one.signal, one.hazard) for step in steps for one in step.cautions)
    return [warned(signal, hazard) for signal, hazard in found]


def _listed(what: str, before: Sequence[Value], after: Sequence[Value]) -> Iterator[Detail]:
    was, now = ({say(one, ENGLISH): one for one in some} for some in (before, after))
    gone = tuple(one for key, one in was.items() if key not in now)
    new = tuple(one for key, one in now.items() if key not in was)
    if gone or new:
        yield Detail(what, Items(gone, "semicolon") if gone else "", Items(new, "semicolon") if new else "")
