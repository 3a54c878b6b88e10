"""How a tweeter is held: its body in cut-out or cup, its foot on the flat face, the depth behind and the room before it."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.margins import Check, Number, capped, compare, found, known, limit, typed, untold
from undertrim.record.model import Blank, Depth
from undertrim.record.model.kinds.tweeter import Mount, TweeterGear, TweeterOpening
from undertrim.words import Message, message

BODY = message("fit-tweeter/body")
_HOLDS = message("fit-tweeter/holds")
_DEEP = message("fit-tweeter/depth-of-body")
_RIM = message("fit-tweeter/rim")
_CUT_OUT = message("opening-facts/cut_out")
_FRONT = message("fit-tweeter/front")


def wanted(opening: TweeterOpening) -> str:
    """The mount that gear must have here; empty where that is not known. Into a cup of the car goes the bare body, as into a cut-out."""
    if opening.mount in ("", "unknown"):
        return ""
    return "flush" if opening.cup and opening.mount == "angled" else opening.mount


def goes_here(facts: TweeterGear, opening: TweeterOpening) -> list[Mount]:
    """Those mounts of a tweeter that the place takes; all of them where it is not known how one is held."""
    mount = wanted(opening)
    return [one for one in facts.mounts if mount in ("", one.mount)]


def ways(facts: TweeterGear, opening: TweeterOpening, usual: Clearances) -> list[tuple[Check, ...]]:
    """The checks of each mount in the box that goes here; one that fails, or cannot be told, where none does. At least one."""
    title, mount = message("fit-tweeter/mount"), wanted(opening)
    if not mount:
        return [(untold("mount", title, [message("fit-tweeter/mount-unknown")]),)]
    suiting = goes_here(facts, opening)
    if not suiting:
        none = message(f"fit-tweeter/no-{mount}")
        return [(Check("mount", title, "fails", found(title, none)),)]
    return [tuple(_checks(one, opening, usual)) for one in suiting]


def _checks(mount: Mount, opening: TweeterOpening, usual: Clearances) -> Iterator[Check]:
    if mount.mount == "flush":
        yield from _sunk(mount, opening, usual)
    else:
        foot, flat = (
            typed(message("fit-tweeter/foot"), mount.diameter),
            typed(message("opening-facts/flat"), opening.flat),
        )
        yield compare("flat", message("fit-tweeter/on-flat"), [flat], [foot])
    if opening.room_in_front is not Blank.NONE:
        over = typed(message("fit-tweeter/over"), mount.over)
        front = typed(message("opening-facts/room_in_front"), opening.room_in_front)
        yield compare("front", _FRONT, [front], [over, usual["tweeter_front"]])


def _sunk(mount: Mount, opening: TweeterOpening, usual: Clearances) -> Iterator[Check]:
    """The body in cut-out or cup, the rim over the cut-out, the depth to what comes first."""
    body, deep = typed(BODY, mount.diameter), typed(_DEEP, mount.depth, none=0)
    if opening.cup:
        across = typed(message("opening-facts/cup"), opening.cup.diameter)
        yield compare("cup", message("fit-tweeter/in-cup"), [across], [body])
        floor = typed(message("fit-tweeter/cup-depth"), opening.cup.depth)
        yield compare("cup-depth", message("fit-tweeter/to-floor"), [floor], [deep])
    if opening.cut_out or not opening.cup:
        hole = typed(_CUT_OUT, opening.cut_out)
        yield compare("hole", _HOLDS, [hole], [body])
        yield from _covered(mount, hole, usual)
    if opening.depth or not opening.cup:
        yield _behind(deep, opening.depth or Depth(Blank.UNKNOWN), usual)


def _covered(mount: Mount, hole: Number, usual: Clearances) -> Iterator[Check]:
    """Whether the rim covers the cut-out; a tweeter without a rim, or of which none is said, is held by its ring alone."""
    if mount.rim is None or mount.rim is Blank.NONE:
        return
    one = usual["tweeter_rim"]
    twice = known(message("fit-tweeter/all-round", what=one.label), 2 * (one.value or 0), default=True)
    yield compare("rim", message("fit-tweeter/covers"), [typed(_RIM, mount.rim)], [hole, twice])


def _behind(deep: Number, depth: Depth, usual: Clearances) -> Check:
    """The depth; one measured with the glass down alone, or from an unsaid face, is marginal at best."""
    clear = typed(message("fit/clear-depth"), depth.clear)
    check = compare("depth", message("fit-tweeter/depth"), [clear], [deep, _kept(depth, usual)])
    reasons = (
        (depth.over == "glass-down", message("fit-speaker/glass-down")),
        (not depth.datum, message("fit-tweeter/no-datum")),
    )
    for holds, reason in reasons:
        check = capped(check, reason if holds else "")
    return check


def _kept(depth: Depth, usual: Clearances) -> Number:
    """More room is kept to glass, and to what nobody recorded."""
    return usual["tweeter_behind"] if depth.to_glass == "no" else usual["rear_glass"]


def limits(opening: TweeterOpening, usual: Clearances) -> Iterator[Message]:
    """What a tweeter must keep to here; what is not recorded is left out."""
    if opening.mount == "surface" or (opening.mount == "angled" and not opening.cup):
        yield from _most("takes-foot", [typed("", opening.flat)])
    else:
        cup = opening.cup
        yield from _most("takes-body", [typed("", opening.cut_out), typed("", cup.diameter if cup else None)])
        depth = opening.depth
        behind = _less(typed("", depth.clear), _kept(depth, usual)) if depth else typed("", None)
        yield from _most("takes-depth", [behind, typed("", cup.depth if cup else None)])
    yield from _most("takes-over", [_less(typed("", opening.room_in_front), usual["tweeter_front"])])


def _less(there: Number, kept: Number) -> Number:
    return there if there.value is None else replace(there, value=max(0.0, there.value - (kept.value or 0)))


def _most(code: str, limits: Sequence[Number]) -> Iterator[Message]:
    """The smallest of the limits that are known."""
    told = [one for one in limits if one.value is not None]
    if told:
        least = min(told, key=lambda one: (one.value or 0, one.more))
        yield message(f"fit-tweeter/{code}", most=limit(least.value or 0, least))
