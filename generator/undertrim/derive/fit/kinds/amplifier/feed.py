"""What feeds an amplifier: the current, main cable and main fuse for all on one run, a fuse for each branch, and the ground."""

from collections.abc import Iterator, Sequence

from undertrim.derive.electrical import fuses
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.cable import Choice, Wishes, choose
from undertrim.derive.electrical.conductors import size
from undertrim.derive.electrical.drop import Path
from undertrim.derive.electrical.numbers import Amount
from undertrim.derive.electrical.supply import supply
from undertrim.derive.fit.kinds.amplifier.part_of import PartOf
from undertrim.derive.fit.margins import NOT_RECORDED, untold
from undertrim.derive.fit.place import Place
from undertrim.derive.fit.stock import Stocked, only
from undertrim.derive.run_cables import wishes
from undertrim.record.model import Run
from undertrim.record.model.kinds.amplifier import AmplifierGear, AmplifierOpening
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Message, Value, message

Amplifier = Stocked[AmplifierGear]

_PER_CENT = 100  # a share is read in per cent and reckoned as a part of one
_FEED = message("fit-amplifier/feed")


def current(facts: AmplifierGear) -> float | None:
    """The current at full power in A: as its maker says, else from power and efficiency (`electrical/supply`); None without a power. Raises Refused."""
    rated = facts.rated
    if rated is None or not isinstance(rated.power, Quantity):
        return None
    if isinstance(rated.current, Quantity):
        return rated.current.value
    share = rated.efficiency.value / _PER_CENT if isinstance(rated.efficiency, Quantity) else None
    return supply(rated.power.value, share).current


def beside(place: Place, opening: AmplifierOpening, *, on_run: bool) -> list[Amplifier]:
    """The other amplifiers of the visit in this car; `on_run` those alone that are fed along the same run."""
    others = [
        one
        for one in place.vehicle.record.openings_of(AmplifierOpening)
        if one.id != opening.id and one.when.holds(place.car)
    ]
    wanted = [one for one in others if one.run == opening.run or not on_run]
    return [only(place.vehicle.visit[one.id], AmplifierGear) for one in wanted if one.id in place.vehicle.visit]


def feed(place: Place, opening: AmplifierOpening, gear: Amplifier) -> PartOf:
    """The feed of one amplifier, with what shares its run. It cannot be told without a current, a run or its length."""
    try:
        return _feed(place, opening, sorted([gear, *beside(place, opening, on_run=True)], key=_by_id))
    except Refused as refused:
        return PartOf((untold("feed", _FEED, [refused.said]),))


def _by_id(gear: Amplifier) -> str:
    return gear.id


def _feed(place: Place, opening: AmplifierOpening, every: Sequence[Amplifier]) -> PartOf:
    amps = [current(one.facts) for one in every]
    if any(one is None for one in amps):
        return PartOf((untold("feed", _FEED, [message("fit-amplifier/lacks-current")]),))
    total = sum(one or 0 for one in amps)
    run = place.vehicle.record.runs.get(opening.run)
    if run is None or not isinstance(run.length, Quantity):
        lacking = message("fit/missing", what=message("fit-amplifier/run-length"), how=NOT_RECORDED)
        return PartOf((untold("feed", _FEED, [lacking]),))
    return _along(run, run.length.value / 1000, opening, every, total)


def in_all(place: Place, opening: AmplifierOpening, gear: Amplifier) -> float | None:
    """The current at full power of every amplifier of the visit, whatever run it hangs on, in A; None where one cannot be told."""
    try:
        amps = [current(one.facts) for one in (gear, *beside(place, opening, on_run=False))]
    except Refused:
        return None
    return None if None in amps else sum(one or 0 for one in amps)


def _along(run: Run, metres: float, opening: AmplifierOpening, every: Sequence[Amplifier], total: float) -> PartOf:
    main = choose(Path(current=total, out=metres, back="body"), wishes(run))
    taken = message("fit-amplifier/takes-current", current=Amount(total, "A"), run=run.name, length=Amount(metres, "m"))
    notes: list[Value] = [message("fit-amplifier/main", taken=taken, cable=main.headline)]
    bring: list[Value] = list(_main(run, metres, main))
    if len(every) > 1:
        for one in every:
            branch = _branch(run, one)
            notes.append(
                message(
                    "fit-amplifier/branch",
                    gear=one.name,
                    current=Amount(current(one.facts) or 0, "A"),
                    cable=branch.headline,
                )
            )
            bring.extend(_branch_bring(one, branch))
    return PartOf(notes=(*notes, *_ground(opening, main), *_fuse_place(opening)), bring=tuple(bring))


def _branch(run: Run, gear: Amplifier) -> Choice:
    """The cable from the distribution block to one amplifier, with a fuse of its own."""
    amps = current(gear.facts) or 0
    return choose(Path(current=amps, out=float(table("amplifiers")["usual"]["branch"]), back="body"), Wishes())


def _main(run: Run, metres: float, main: Choice) -> Iterator[Message]:
    if main.size and main.fuse:
        yield message(
            "fit-amplifier/bring-cable", length=Amount(metres, "m"), size=size("awg", main.size).label, run=run.name
        )
        yield message("fit-amplifier/bring-fuse", fuse=Amount(main.fuse, "A"), run=run.name)


def _branch_bring(gear: Amplifier, branch: Choice) -> Iterator[Message]:
    fuse = branch_fuse(gear.facts)
    if branch.size and fuse:
        yield message(
            "fit-amplifier/bring-branch", size=size("awg", branch.size).label, fuse=Amount(fuse, "A"), gear=gear.name
        )


def branch_fuse(facts: AmplifierGear) -> float | None:
    """The fuse of a branch in A: the next rating for its current at the usual share; None above all ratings."""
    return fuses.least(current(facts) or 0, fuses.load_share().value)


def _ground(opening: AmplifierOpening, main: Choice) -> Iterator[Message]:
    """The ground as thick as the feed, at the place that the record names."""
    if main.size is None:
        return
    thick, point = size("awg", main.size).label, opening.ground_point
    if point is None:
        yield message("fit-amplifier/ground-nowhere", size=thick)
    else:
        yield message(f"fit-amplifier/ground-paint-{point.paint or 'unknown'}", size=thick, at=point.at)


def _fuse_place(opening: AmplifierOpening) -> Iterator[Message]:
    """That the main fuse would stand farther from the battery than is common practice, or that nobody measured it."""
    place, within = opening.fuse_place, float(table("electrical-fuses")["place"]["within"])
    if place is None or not isinstance(place.from_battery, Quantity):
        yield message("fit-amplifier/fuse-unmeasured", within=Amount(within, "m"))
    elif place.from_battery.value / 1000 > within:
        far = Amount(place.from_battery.value / 1000, "m")
        yield message("fit-amplifier/fuse-far", at=place.at, far=far, within=Amount(within, "m"))
