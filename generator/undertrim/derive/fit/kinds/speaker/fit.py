"""A speaker against an opening: as it is, turned, on the factory bracket, on a spacer or plate in stock, on one to be had."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.speaker import bolts, notes
from undertrim.derive.fit.kinds.speaker.names import CAR
from undertrim.derive.fit.kinds.speaker.room import Room, heights, room
from undertrim.derive.fit.kinds.speaker.seating import Hold, Stance, covered, lying, plate, seated, through, turnable
from undertrim.derive.fit.kinds.speaker.seats import Seat, seats
from undertrim.derive.fit.margins import Check, Number, typed
from undertrim.derive.fit.outline import Outline, outline
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit, Way, best, decide
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.words import Message, message

_TURNED = message("fit-speaker/turned")


@dataclass(frozen=True)  # without slots: what is the same whatever goes between is worked out once
class Ring:
    """A spacer or plate from stock, with what of it is held against speaker and car."""

    spacer: Stocked[SpacerGear]

    @cached_property
    def thickness(self) -> Number:
        """How much higher a speaker stands on it."""
        return typed(message("fit-speaker/thickness", of=self.spacer.name), self.spacer.facts.thickness)

    @cached_property
    def hold(self) -> Hold:
        """What it holds a speaker with."""
        return Hold(self.spacer.name, self.spacer.facts.hole, self.spacer.facts.bolts)

    @property
    def rim(self) -> Outline:
        """Its outline."""
        return outline(message("fit-speaker/rim", of=self.spacer.name), self.spacer.facts.flange)


@dataclass(frozen=True)  # without slots, for the same reason
class Case:
    """A speaker before an opening, with the room there is and what usual room to keep; `turned` by 90 degrees or not."""

    speaker: Stocked[SpeakerGear]
    opening: SpeakerOpening
    usual: Clearances
    room: Room
    turned: bool = False

    @cached_property
    def car(self) -> Hold:
        """What the car holds it with."""
        return Hold(CAR, self.opening.hole, self.opening.bolts, self.opening.panel, flat=True)

    @cached_property
    def stance(self) -> Stance:
        """How it stands."""
        return Stance(self.speaker.facts, self.turned)

    @cached_property
    def on_car(self) -> tuple[Check, ...]:
        """How it sits on the car itself: the same at every height."""
        return tuple(self.seated(self.car))

    @cached_property
    def inside(self) -> tuple[Check, ...]:
        """How its basket goes through the hole of the car: the same at every height."""
        return through(self.stance, self.car)

    @cached_property
    def plain(self) -> list[tuple[Seat, Fit]]:
        """How it goes straight onto each seat."""
        return [(seat, _plain(self, seat)) for seat in seats(self.opening)]

    def seated(self, hold: Hold) -> Iterator[Check]:
        """Basket, flange and bolts on a hold."""
        return seated(self.stance, hold, self.usual)

    def decided(
        self,
        checks: Sequence[Check],
        seat: Seat,
        *,
        on: Stocked[SpacerGear] | None = None,
        to_get: Message | None = None,
    ) -> Fit:
        """The answer for one way to put it in, `on` a piece from stock or not."""
        said = (seat.note, _TURNED if self.turned else None)
        parts, wanted = ((on.piece,) if on else ()), ((to_get,) if to_get else ())
        found = decide(self.speaker.id, self.speaker.name, checks, parts, wanted, tuple(filter(None, said)))
        return replace(found, way=Way(on.id if on else "", seat.on_bracket, self.turned))


def fit(
    speaker: Stocked[SpeakerGear], opening: SpeakerOpening, spacers: Sequence[Stocked[SpacerGear]], usual: Clearances
) -> Fit:
    """The best answer over all ways to put the speaker in; turned only if that helps."""
    case, rings = Case(speaker, opening, usual, room(speaker.facts, opening, usual)), [Ring(item) for item in spacers]
    found = best(list(_ways(case, rings)))
    if turnable(speaker.facts):
        turned = best(list(_ways(replace(case, turned=True), rings)))
        found = turned if turned.rank[:2] < found.rank[:2] else found
    return replace(found, notes=(*found.notes, *_other_ways(case, found), *notes.of(speaker.facts, opening, found)))


def _ways(case: Case, rings: Sequence[Ring]) -> Iterator[Fit]:
    reachable = () if _sound(case.inside) is None else rings
    for seat, plain in case.plain:
        yield plain
        yield from _to_get(case, seat)
        yield from filter(None, (_on(case, seat, ring) for ring in reachable))


def _plain(case: Case, seat: Seat) -> Fit:
    """Straight onto the seat."""
    height = [seat.offset]
    return case.decided([*case.on_car, case.room.depth(height), case.room.grille(height)], seat)


def _on(case: Case, seat: Seat, ring: Ring) -> Fit | None:
    """On a spacer or plate from stock; None as soon as something fails, since the plain seat says better why nothing does."""
    height = [seat.offset, ring.thickness]
    room = _sound(check(height) for check in (case.room.depth, case.room.grille))
    held = None if room is None else _sound(_held(case, ring))
    if room is None or held is None:
        return None
    return case.decided([*case.inside, *held, *room], seat, on=ring.spacer)


def _sound(checks: Iterable[Check]) -> list[Check] | None:
    """All of them; None as soon as one fails."""
    found: list[Check] = []
    for check in checks:
        if check.verdict == "fails":
            return None
        found.append(check)
    return found


def _held(case: Case, ring: Ring) -> Iterator[Check]:
    """Whether the speaker sits on the ring, and the ring itself covers the hole of the car, lies on its panel and meets its bolts: also one that is said to suit it."""
    yield from case.seated(ring.hold)
    part, rim = ring.spacer.facts, ring.rim
    yield from covered(rim, case.car, case.usual)
    yield from lying(message("fit-speaker/rim-on-panel", of=ring.spacer.name), rim, case.car)
    towards = part.car_bolts or part.bolts
    yield from bolts.match("spacer-bolts", towards, case.opening.bolts, case.usual["bolts"], CAR, plate(part))


def _to_get(case: Case, seat: Seat) -> Iterator[Fit]:
    """On a spacer or plate that is not in stock, where one mends all that fails."""
    depth, on_car = case.room.depth([seat.offset]), case.on_car
    failing = [check for check in (*on_car, depth) if check.verdict == "fails"]
    if not failing or not all(check.mend for check in failing):
        return
    plate = any(check.mend == "adapter" for check in failing)
    what = "plate" if plate else "spacer"
    window = case.room.spacer(seat)
    known = depth.margin is not None and window.margin is not None and window.margin >= 0
    name = heights(what, *case.room.window(seat)) if known else message(f"fit-speaker/get-{what}")
    kept = [check for check in (*on_car, depth) if check not in failing]
    found = case.decided([*kept, window], seat, to_get=name)
    yield replace(found, way=replace(found.way, plate=plate))


def _other_ways(case: Case, found: Fit) -> tuple[Message, ...]:
    """How the speaker goes straight onto each seat, where that is not the answer itself."""
    others = [(seat, fit) for seat, fit in case.plain if fit.checks != found.checks]
    return (
        *(message("fit-speaker/other-way", way=seat.name, headline=fit.headline) for seat, fit in others),
        *_no_window(case, found),
    )


def _no_window(case: Case, found: Fit) -> Iterator[Message]:
    """That no height of spacer does, where the depth fails."""
    if found.kind == "does-not-fit" and any(
        check.mend == "spacer" and check.verdict == "fails" for check in found.checks
    ):
        window = case.room.spacer(seats(case.opening)[0])
        if window.verdict == "fails":
            least, most = case.room.window(seats(case.opening)[0])
            yield notes.no_spacer(least, most)
