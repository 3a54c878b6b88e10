"""The steps of one visit before and now, by their ids: a step that only got another number is no change."""

from bisect import bisect_left
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import TypeVar

from undertrim.derive import fastener_words
from undertrim.derive.procedure import states, tally
from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.steps import FastenerLine, Step
from undertrim.derive.review.change import Detail, Sort, StepChange, Weight
from undertrim.derive.review.weighing import SIGNALS
from undertrim.record.model import Blank
from undertrim.record.units import Quantity
from undertrim.words import ENGLISH, Items, Value, message, say, word

_One = TypeVar("_One")
GRAVE = SIGNALS[:2]
_STATES = ("battery", "ignition", "glass", "engine")
"""States of the car that are asked for first when a change is read: what has power, and what may break."""


def differing(
    before: Sequence[Step], after: Sequence[Step], names: Mapping[str, str], named: Collection[str] = ()
) -> tuple[StepChange, ...]:
    """What changed, in the order in which it is now done; what is gone stands where it was.

    `names` are the ids of before that are others now, `named` the things that are called otherwise: a title that differs for no other
    reason is no change of the step.
    """
    before = [
        replace(step, title=_title(step, after, names)) if _part(step, names) in named else step for step in before
    ]
    was = {_now(step.id, names): step for step in before}
    is_ = {step.id: step for step in after}
    moved = _moved([name for name in was if name in is_], list(is_))
    found = [
        _change(name, was.get(name), step, follows)
        for name, step, follows in zip(is_, is_.values(), (None, *is_.values()), strict=False)
        if name not in was or name in moved or _details(was[name], step)
    ]
    gone = [_change(name, step, None, None) for name, step in was.items() if name not in is_]
    return tuple(sorted([*found, *gone], key=_places(list(was), list(is_))))


def _part(step: Step, names: Mapping[str, str]) -> str:
    return names.get(step.part, step.part)


def _title(step: Step, after: Sequence[Step], names: Mapping[str, str]) -> Value:
    """What a step is titled now; its own title where it is gone."""
    return next((one.title for one in after if one.id == _now(step.id, names)), step.title)


def _places(was: Sequence[str], is_: Sequence[str]) -> Callable[[StepChange], tuple[float, int]]:
    """Where a change is told: by the step's place now, or that of the last one before it that is still there."""
    now = {name: place for place, name in enumerate(is_)}
    place: dict[str, tuple[float, int]] = {}
    last = -1
    for number, name in enumerate(was):
        last = now.get(name, last)
        place[name] = (last + 0.5, number)
    return lambda change: (float(now[change.id]), 0) if change.id in now else place[change.id]


def _now(name: str, names: Mapping[str, str]) -> str:
    """The id that a step of before has now, if what it is about is only called otherwise."""
    return ":".join(_renamed(piece, names) for piece in name.split(":")) if names else name


def _renamed(piece: str, names: Mapping[str, str]) -> str:
    thing, sign, side = piece.partition("@")
    return f"{names.get(thing, thing)}{sign}{side}"


def _moved(kept: Sequence[str], order: Sequence[str]) -> frozenset[str]:
    """The fewest steps that would have to be put elsewhere to make the old order the new one: all beside the longest rising row of places."""
    place = {name: number for number, name in enumerate(order)}
    ends: list[int] = []
    last: list[int] = []
    before: list[int | None] = []
    for number, name in enumerate(kept):
        at = bisect_left(ends, place[name])
        before.append(last[at - 1] if at else None)
        if at == len(ends):
            ends.append(place[name])
            last.append(number)
        else:
            ends[at], last[at] = place[name], number
    staying: set[str] = set()
    step: int | None = last[-1] if last else None
    while step is not None:
        staying.add(kept[step])
        step = before[step]
    return frozenset(kept) - staying


def _change(name: str, was: Step | None, now: Step | None, follows: Step | None) -> StepChange:
    if was is None or now is None:
        sort = Sort.ADDED if now else Sort.GONE
        return StepChange(name, sort, was, now, weight=_by_kind(was, now), follows=follows)
    found = _details(was, now)
    if not found:
        return StepChange(name, Sort.MOVED, was, now, follows=follows)
    return StepChange(name, Sort.CHANGED, was, now, found, _heaviest(found), follows)


def _by_kind(was: Step | None, now: Step | None) -> Weight:
    """The weight of a step that is new or gone: a wait that is gone is graver, and so are steps that turn power on or off."""
    step = now or was
    if step and step.kind == "wait" and not now:
        return Weight.WEAKER
    if step and not now and step.section == "after" and step.kind == "todo":
        return Weight.WEAKER
    thing = step.node.thing if step and step.node else None
    sets = getattr(thing, "sets", {}) if step and step.kind in ("prepare", "restore") else {}
    return Weight.CARE if any(name in sets for name in _STATES) else Weight.PLAIN


def _heaviest(found: Sequence[Detail]) -> Weight:
    weights = {one.weight for one in found}
    return next(weight for weight in Weight if weight in weights)


def _details(was: Step, now: Step) -> tuple[Detail, ...]:
    """What is another one about a step that is done before and now."""
    return tuple(_each(was, now)) if was != now else ()


def _each(was: Step, now: Step) -> Iterator[Detail]:
    if was.title != now.title:
        yield Detail("title", was.title, now.title)
    if was.text != now.text:
        yield from _told("text", was.text, now.text, lambda text: text)
    yield from _wait(was, now)
    yield from _cautions(was, now)
    yield from _states(was, now)
    yield from _told("fasteners", was.fasteners, now.fasteners, _fasteners)
    yield from _told("tethers", was.tethers, now.tethers, _tether)
    if was.minutes != now.minutes:
        yield Detail("minutes", _minutes(was), _minutes(now))
    yield from _told("tools", was.tools, now.tools, lambda tool: tool)
    yield from _told("materials", tally.materials(was), tally.materials(now), lambda bought: bought.what)


def _minutes(step: Step) -> Value:
    return message("facts/not-recorded") if step.minutes is None else minutes(step.minutes)


def minutes(value: float) -> Value:
    """A time in minutes."""
    return message("review/minutes", minutes=round(value, 2))


def _wait(was: Step, now: Step) -> Iterator[Detail]:
    if was.wait and now.wait and was.wait.time != now.wait.time:
        cut = isinstance(was.wait.time, Blank) or (
            isinstance(now.wait.time, Quantity) and now.wait.time.value < was.wait.time.value
        )
        yield Detail("wait", _time(was.wait.time), _time(now.wait.time), Weight.WEAKER if cut else Weight.CARE)


def _time(time: Quantity | Blank) -> Value:
    return time if isinstance(time, Quantity) else message(f"facts/{time}")


def _cautions(was: Step, now: Step) -> Iterator[Detail]:
    """Cautions that are no longer given here, and new ones; by what they say, not by what they are called."""
    before, after = (dict.fromkeys((one.signal, one.hazard, one.avoid) for one in step.cautions) for step in (was, now))
    for signal, hazard, _ in (one for one in before if one not in after):
        instead = any(_grave(other) <= _grave(signal) for other, *_ in (one for one in after if one not in before))
        weight = Weight.WEAKER if signal in GRAVE and not instead else Weight.CARE
        yield Detail("caution", warned(signal, hazard), "", weight)
    for signal, hazard, _ in (one for one in after if one not in before):
        yield Detail("caution", "", warned(signal, hazard))


def warned(signal: str, hazard: Value) -> Value:
    """A caution in short."""
    return message("review/caution", signal=message(f"signals/{signal.lower()}"), hazard=hazard)


def _grave(signal: str) -> int:
    """How grave a signal word is, the gravest 0."""
    return SIGNALS.index(signal)


def _states(was: Step, now: Step) -> Iterator[Detail]:
    names = [name for name in dict.fromkeys((*was.state, *now.state)) if was.state.get(name) != now.state.get(name)]
    if names:
        weight = Weight.CARE if any(name in _STATES for name in names) else Weight.PLAIN
        yield Detail("state", _state(was.state, names), _state(now.state, names), weight)


def _state(state: Mapping[str, str], names: Sequence[str]) -> Value:
    said = (message(f"states/{name}-{state[name]}".replace(" ", "-")) for name in names if name in state)
    return Items(tuple(said), "comma")


def _fasteners(line: FastenerLine) -> Value:
    fastener, fate = line.fastener, message(f"fasteners/{line.fate}")
    known = isinstance(fastener.count, int)
    what = fastener_words.counted(fastener, int(fastener.count or 0)) if known else fastener_words.many(fastener)
    if at := fastener_words.places(fastener.at):
        return message("review/fasteners-at", what=what, at=at, fate=fate)
    return message("review/fasteners", what=what, fate=fate)


def _tether(line: TetherLine) -> Value:
    usual = states.tether_kind(line.tether.kind)
    by_kind = {"undo": usual.undo, "rejoin": usual.rejoin, "park": usual.park}
    act = by_kind.get(line.act) or word("tethers", "act", line.act, "label")
    return message("review/tether", name=line.tether.name, act=act)


def _told(what: str, was: Sequence[_One], now: Sequence[_One], said: Callable[[_One], Value]) -> Iterator[Detail]:
    """What of a list is no longer said, and what is; nothing where only its order is another one, or who says so."""
    before, after = ({say(said(one), ENGLISH): said(one) for one in some} for some in (was, now))
    gone = tuple(value for key, value in before.items() if key not in after)
    new = tuple(value for key, value in after.items() if key not in before)
    joined = "spaced" if what == "text" else "semicolon"
    if gone or new:
        yield Detail(what, Items(gone, joined) if gone else "", Items(new, joined) if new else "")


def settled(change: StepChange) -> StepChange:
    """A change of a step that a changed fact tells already, with who says so: it is no graver than any other."""
    if change.weight is not Weight.WEAKER:
        return change
    details = tuple(replace(one, weight=Weight.PLAIN) if one.weight is Weight.WEAKER else one for one in change.details)
    return replace(change, details=details, weight=_heaviest(details) if details else Weight.PLAIN)
