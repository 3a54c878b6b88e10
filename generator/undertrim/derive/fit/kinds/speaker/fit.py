"""A speaker against an opening: as it is, turned, on the factory bracket, on a spacer or plate in stock, on one to be had."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.speaker import bolts, notes
from undertrim.derive.fit.kinds.speaker.names import CAR
from undertrim.derive.fit.kinds.speaker.room import Room, heights, room
from undertrim.derive.fit.kinds.speaker.seating import Hold, Stance, covered, lying, plate, seated, through, turnable
from undertrim.derive.fit.kinds.speaker.seats import Seat, seats
from undertrim.derive.fit.margins import Check, Number, typed
from undertrim.derive.fit.outline import outline
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit, Way, best, decide
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.words import Message, message

_TURNED = message("fit-speaker/turned")


@dataclass(frozen=True)  # without slots: what is the same for every speaker is worked out once
class Mount:
    """An opening with what of it is held against every speaker of the stock, and the pieces of the stock that go between."""

    opening: SpeakerOpening
    usual: Clearances
    _rings: dict[str, "Ring"] = field(default_factory=dict)

    @cached_property
    def hold(self) -> Hold:
        """What the car holds a speaker with."""
        return Hold(CAR, self.opening.hole, self.opening.bolts, self.opening.panel, flat=True)

    @cached_property
    def seats(self) -> Sequence[Seat]:
        """The ways to sit."""
        return seats(self.opening)

    def ring(self, spacer: Stocked[SpacerGear]) -> "Ring":
        """A spacer or plate from stock on this opening."""
        if spacer.id not in self._rings:
            self._rings[spacer.id] = Ring(spacer, self)
        return self._rings[spacer.id]


@dataclass(frozen=True)  # without slots, for the same reason
class Ring:
    """A spacer or plate from stock on an opening, with what of it is held against speaker and car."""

    spacer: Stocked[SpacerGear]
    mount: Mount

    @cached_property
    def thickness(self) -> Number:
        """How much higher a speaker stands on it."""
        return typed(message("fit-speaker/thickness", of=self.spacer.name), self.spacer.facts.thickness)

    @cached_property
    def hold(self) -> Hold:
        """What it holds a speaker with."""
        return Hold(self.spacer.name, self.spacer.facts.hole, self.spacer.facts.bolts)

    @cached_property
    def sits(self) -> list[Check] | None:
        """How it covers the hole of the car, lies on its panel and meets its bolts: also one that is said to suit it; None where it does not."""
        return _sound(self._on_car())

    def _on_car(self) -> Iterator[Check]:
        part, car, usual = self.spacer.facts, self.mount.hold, self.mount.usual
        rim = outline(message("fit-speaker/rim", of=self.spacer.name), part.flange)
        yield from covered(rim, car, usual)
        yield from lying(message("fit-speaker/rim-on-panel", of=self.spacer.name), rim, car)
        towards = part.car_bolts or part.bolts
        yield from bolts.match("spacer-bolts", towards, self.mount.opening.bolts, usual["bolts"], CAR, plate(part))


@dataclass(frozen=True)  # without slots: what is the same whatever goes between is worked out once
class Case:
    """A speaker before an opening, with the room there is; `turned` by 90 degrees or not."""

    speaker: Stocked[SpeakerGear]
    mount: Mount
    room: Room
    turned: bool = False

    @cached_property
    def stance(self) -> Stance:
        """How it stands."""
        return Stance(self.speaker.facts, self.turned)

    @cached_property
    def on_car(self) -> tuple[Check, ...]:
        """How it sits on the car itself: the same at every height."""
        return tuple(self.seated(self.mount.hold))

    @cached_property
    def inside(self) -> tuple[Check, ...]:
        """How its basket goes through the hole of the car: the same at every height."""
        return through(self.stance, self.mount.hold)

    @cached_property
    def plain(self) -> list[tuple[Seat, Fit]]:
        """How it goes straight onto each seat."""
        return [(seat, _plain(self, seat)) for seat in self.mount.seats]

    def seated(self, hold: Hold) -> Iterator[Check]:
        """Basket, flange and bolts on a hold."""
        return seated(self.stance, hold, self.mount.usual)

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
        way = Way(on.id if on else "", seat.on_bracket, self.turned)
        return decide(self.speaker.id, self.speaker.name, checks, parts, wanted, tuple(filter(None, said)), way)


def fit(
    speaker: Stocked[SpeakerGear], opening: SpeakerOpening, spacers: Sequence[Stocked[SpacerGear]], usual: Clearances
) -> Fit:
    """The best answer over all ways to put the speaker in; turned only if that helps."""
    return on_mount(speaker, Mount(opening, usual), spacers)


def on_mount(speaker: Stocked[SpeakerGear], mount: Mount, spacers: Sequence[Stocked[SpacerGear]]) -> Fit:
    """The same at an opening at which others are tried too."""
    opening, rings = mount.opening, list(map(mount.ring, spacers))
    case = Case(speaker, mount, room(speaker.facts, opening, mount.usual))
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
    if ring.sits is None:
        return None
    height = [seat.offset, ring.thickness]
    room = _sound(check(height) for check in (case.room.depth, case.room.grille))
    held = None if room is None else _sound(case.seated(ring.hold))
    if room is None or held is None:
        return None
    return case.decided([*case.inside, *held, *ring.sits, *room], seat, on=ring.spacer)


def _sound(checks: Iterable[Check]) -> list[Check] | None:
    """All of them; None as soon as one fails."""
    found: list[Check] = []
    for check in checks:
        if check.verdict == "fails":
            return None
        found.append(check)
    return found


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
        window = case.room.spacer(case.mount.seats[0])
        if window.verdict == "fails":
            least, most = case.room.window(case.mount.seats[0])
            yield notes.no_spacer(least, most)
