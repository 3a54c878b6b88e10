"""A speaker against an opening: as it is, turned, on the factory bracket, on a spacer or plate in stock, on one to be had."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.speaker import bolts, notes
from undertrim.derive.fit.kinds.speaker.names import CAR
from undertrim.derive.fit.kinds.speaker.room import Room, heights, room
from undertrim.derive.fit.kinds.speaker.seating import Hold, covered, lying, plate, seated, through, turnable
from undertrim.derive.fit.kinds.speaker.seats import Seat, seats
from undertrim.derive.fit.margins import Check, typed
from undertrim.derive.fit.outline import outline
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit, Way, best, decide
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.words import Message, message

_TURNED = message("fit-speaker/turned")


@dataclass(frozen=True, slots=True)
class Case:
    """A speaker before an opening, with the room there is and what usual room to keep; `turned` by 90 degrees or not.

    `on_car` is how it sits on the car itself, and `inside` how its basket goes through the hole of the car: the same at every height.
    """

    speaker: Stocked[SpeakerGear]
    opening: SpeakerOpening
    usual: Clearances
    room: Room
    turned: bool = False
    on_car: tuple[Check, ...] = ()
    inside: tuple[Check, ...] = ()

    @property
    def car(self) -> Hold:
        """What the car holds it with."""
        return Hold(CAR, self.opening.hole, self.opening.bolts, self.opening.panel, flat=True)

    def seated(self, hold: Hold) -> tuple[Check, ...]:
        """Basket, flange and bolts on a hold."""
        return seated(self.speaker.facts, hold, self.usual, turned=self.turned)

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
        parts, wanted = ((on.name,) if on else ()), ((to_get,) if to_get else ())
        found = decide(self.speaker.id, self.speaker.name, checks, parts, wanted, tuple(filter(None, said)))
        return replace(found, way=Way(on.id if on else "", seat.on_bracket, self.turned))


def fit(
    speaker: Stocked[SpeakerGear], opening: SpeakerOpening, spacers: Sequence[Stocked[SpacerGear]], usual: Clearances
) -> Fit:
    """The best answer over all ways to put the speaker in; turned only if that helps."""
    case = _posed(Case(speaker, opening, usual, room(speaker.facts, opening, usual)))
    found = best(list(_ways(case, spacers)))
    if turnable(speaker.facts):
        turned = best(list(_ways(_posed(replace(case, turned=True)), spacers)))
        found = turned if turned.rank[:2] < found.rank[:2] else found
    return replace(found, notes=(*found.notes, *_other_ways(case, found), *notes.of(speaker.facts, opening, found)))


def _posed(case: Case) -> Case:
    """The case with how the speaker sits on the car worked out."""
    inside = through(case.speaker.facts, case.car, turned=case.turned)
    return replace(case, on_car=case.seated(case.car), inside=inside)


def _ways(case: Case, spacers: Sequence[Stocked[SpacerGear]]) -> Iterator[Fit]:
    reachable = () if _failing(case.inside) else spacers
    for seat in seats(case.opening):
        yield _plain(case, seat)
        yield from _to_get(case, seat)
        yield from filter(None, (_on(case, seat, spacer) for spacer in reachable))


def _plain(case: Case, seat: Seat) -> Fit:
    """Straight onto the seat."""
    height = [seat.offset]
    return case.decided([*case.on_car, case.room.depth(height), case.room.grille(height)], seat)


def _on(case: Case, seat: Seat, spacer: Stocked[SpacerGear]) -> Fit | None:
    """On a spacer or plate from stock; None as soon as something fails, since the plain seat says better why nothing does."""
    name, part = spacer.name, spacer.facts
    height = [seat.offset, typed(message("fit-speaker/thickness", of=name), part.thickness)]
    room = (case.room.depth(height), case.room.grille(height))
    held = () if _failing(room) else case.seated(Hold(name, part.hole, part.bolts))
    if not held or _failing(held):
        return None
    checks = [*case.inside, *held, *_spacer_held(case, spacer), *room]
    return None if _failing(checks) else case.decided(checks, seat, on=spacer)


def _failing(checks: Sequence[Check]) -> bool:
    return any(check.verdict == "fails" for check in checks)


def _spacer_held(case: Case, spacer: Stocked[SpacerGear]) -> tuple[Check, ...]:
    """Whether the spacer itself covers the hole of the car, lies on its panel and meets its bolts: also one that is said to suit it."""
    part, name = spacer.facts, spacer.name
    rim, towards = outline(message("fit-speaker/rim", of=name), part.flange), part.car_bolts or part.bolts
    return (
        *covered(rim, case.car, case.usual, turned=False),
        *lying(message("fit-speaker/rim-on-panel", of=name), rim, case.car, turned=False),
        *bolts.match("spacer-bolts", towards, case.opening.bolts, case.usual["bolts"], CAR, plate(part)),
    )


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
    tried = [(seat, _plain(case, seat)) for seat in seats(case.opening)]
    others = [(seat, fit) for seat, fit in tried if fit.checks != found.checks]
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
