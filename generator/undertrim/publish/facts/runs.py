"""Cable runs as data: the way, its grommets, and the cable that an amplifier would want along it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.areas import restraints_along
from undertrim.derive.electrical.bounds import Refused, usual
from undertrim.derive.electrical.cable import choose
from undertrim.derive.electrical.conductors import size
from undertrim.derive.electrical.drop import Path
from undertrim.derive.electrical.numbers import Amount
from undertrim.derive.run_cables import wishes
from undertrim.publish.facts import doubts, words
from undertrim.record.model import Run, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Items, Message, Value, all_of, message

_THROUGH = {"grommet": "runs/grommet", "edge": "runs/edge", "channel": "runs/channel", "unknown": "runs/unknown"}
_ENGINE = {
    "yes": message("runs/engine-yes"),
    "no": message("runs/engine-no"),
    "unknown": message("runs/engine-unknown"),
}


@dataclass(frozen=True, slots=True)
class RunCable:
    """The cable that a current wants along a run, in words."""

    current: Value
    awg: Value
    metric: Value
    fuse: Value
    why: Value


@dataclass(frozen=True, slots=True)
class ShownRun:
    """One run. Its `cables` are empty where the length is not known or cannot be, and `assumed` says what they are reckoned with. `jobs` are those for which it is laid."""

    id: str
    name: str
    from_: str
    to: str
    length: Value
    side: Value
    engine: Message
    passes: Sequence[Message]
    carries: Sequence[Message]
    trims: Sequence[str]
    ground: Value
    near: Value
    note: str
    cables: Sequence[RunCable]
    assumed: Value
    jobs: Sequence[str]
    when: Value
    clauses: words.Clauses
    conflicts: Sequence[Value]
    source: Sequence[str]


def runs(record: VehicleRecord) -> list[ShownRun]:
    """Every run of a record."""
    return [run(record, item) for item in record.runs.values()]


def run(record: VehicleRecord, item: Run) -> ShownRun:
    """One run."""
    cables, assumed = _reckoned(item)
    return ShownRun(
        id=item.id,
        name=item.name,
        from_=item.from_,
        to=item.to,
        length=words.quantity(item.length),
        side=message(f"sides/{item.side}") if item.side else "",
        engine=_ENGINE[item.engine],
        passes=[message(_THROUGH[one.through], where=one.where) for one in item.passes],
        carries=[_CARRIES[name] for name in item.carries],
        trims=[record.parts[name].name for name in item.trims if name in record.parts],
        ground=_ground(record, item),
        near=_near(record, item),
        note=item.note,
        cables=cables,
        assumed=assumed,
        jobs=list(_jobs(record, item)),
        when=words.when(record, item.when),
        clauses=words.clauses(item.when),
        conflicts=doubts.marks(record, ("runs", item.id)),
        source=item.source,
    )


def _jobs(record: VehicleRecord, item: Run) -> Iterator[str]:
    """The jobs for which cable is laid there: what is fed along it, and itself where it is reached for; none where that is not known."""
    yield from (opening.id for opening in record.openings.values() if opening.along == item.id)
    yield from [item.id] if item.reached_for else ()


_CARRIES = {"plus": message("runs/plus"), "ground": message("runs/ground"), "signal": message("runs/signal")}


def _ground(record: VehicleRecord, item: Run) -> Value:
    """Where the ground of what is laid there may not be joined; empty where nothing is known of a sensor."""
    battery = record.preps.get(item.battery)
    sensor = battery.sensor if battery else None
    if sensor == "yes":
        return message("runs/sensor")
    if sensor == "unknown":
        return message("runs/sensor-unknown")
    return ""


def _near(record: VehicleRecord, item: Run) -> Value:
    """What airbags and belt parts are along the way; empty where the record names none."""
    named = restraints_along(record, item)
    return message("runs/near", named=Items(named, "semicolon")) if named else ""


def _reckoned(item: Run) -> tuple[list[RunCable], Value]:
    """The cables with what is assumed; none, with the reason, where there is no length to reckon with."""
    if not isinstance(item.length, Quantity):
        return [], message("runs/length-unknown")
    try:
        return list(_cables(item, item.length.value / 1000)), _assumed(item)
    except Refused as refused:
        return [], message("runs/length-refused", why=refused.said)


def _cables(item: Run, metres: float) -> Iterator[RunCable]:
    """For usual currents of amplifiers: the cable out and back of the same length, and the fuse. Raises Refused."""
    for current in table("runs")["amplifier"]["currents"]:
        path = Path(current=float(current), out=metres)
        awg, metric = (choose(path, wishes(item, scheme)) for scheme in ("awg", "metric"))
        fuse = awg.fuse or metric.fuse
        yield RunCable(
            current=message("joint/amperes", value=current),
            awg=_size("awg", awg.size),
            metric=_size("metric", metric.size),
            fuse=Amount(fuse, "A") if fuse else message("runs/no-fuse"),
            why=all_of(*(_WHY[name] for name in awg.binding)) if awg.binding else message("runs/thinnest"),
        )


def _assumed(item: Run) -> Message:
    bears = wishes(item, "awg").insulation or usual("insulation")
    within = float(table("electrical-fuses")["place"]["within"])
    return message(
        "runs/assumed",
        bears=Amount(bears, "degC"),
        share=Amount(usual("limit"), "share"),
        volts=Amount(usual("voltage"), "V"),
        within=Amount(within, "m"),
    )


_WHY = {"drop": message("runs/drop"), "ampacity": message("electrical/decider-ampacity"), "fuse": message("runs/fuse")}


def _size(scheme: str, name: str | None) -> Value:
    """The size with its unit."""
    return size(scheme, name).label if name else message("runs/no-size")
