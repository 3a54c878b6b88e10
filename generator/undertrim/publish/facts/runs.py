"""Cable runs as data: the way, its grommets, and the cable that an amplifier would want along it."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from undertrim.derive.electrical.bounds import usual
from undertrim.derive.electrical.cable import Wishes, choose
from undertrim.derive.electrical.conductors import size
from undertrim.derive.electrical.drop import Path
from undertrim.derive.electrical.numbers import said
from undertrim.publish.facts import doubts, words
from undertrim.record.model import Run, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.resources import table
from undertrim.words import Value

Data = dict[str, Any]

_THROUGH = {
    "grommet": "through the grommet that is there",
    "edge": "over a bare edge: fit a grommet",
    "channel": "in the channel of the trim",
    "unknown": "what protects the cable there is unknown: look first",
}
_ENGINE = {
    "yes": "passes the engine space",
    "no": "stays in the cabin",
    "unknown": "whether it passes the engine space is unknown: taken as if it does",
}


@dataclass(frozen=True, slots=True)
class RunCable:
    """The cable that a current wants along a run, in words."""

    current: str
    awg: Value
    metric: Value
    fuse: str
    why: str


def runs(record: VehicleRecord) -> list[Data]:
    """Every run of a record."""
    return [run(record, item) for item in record.runs.values()]


def run(record: VehicleRecord, item: Run) -> Data:
    """One run. Its `cables` are empty where the length is not known, and `assumed` says what they are reckoned with."""
    made = list(_cables(item))
    return {
        "id": item.id,
        "name": item.name,
        "from": item.from_,
        "to": item.to,
        "length": words.quantity(item.length),
        "engine": _ENGINE[item.engine],
        "passes": [f"{one.where}: {_THROUGH[one.through]}" for one in item.passes],
        "carries": [_CARRIES[name] for name in item.carries],
        "ground": _ground(record, item),
        "note": item.note,
        "cables": made,
        "assumed": _assumed(item) if made else "The cable for an amplifier cannot be told without the length.",
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
        "conflicts": doubts.marks(record, ("runs", item.id)),
        "source": list(item.source),
    }


_CARRIES = {"plus": "plus", "ground": "ground", "signal": "signal leads"}


def _ground(record: VehicleRecord, item: Run) -> str:
    """Where the ground of what is laid there may not be joined; empty where nothing is known of a sensor."""
    battery = record.preps.get(item.battery)
    sensor = battery.sensor if battery else None
    if sensor == "yes":
        return "A current sensor sits at this battery post: join the ground of new gear to the body, never to the post."
    if sensor == "unknown":
        return "Whether a current sensor sits at this battery post is not recorded: look, and until then join no ground of new gear to the post."
    return ""


def _cables(item: Run) -> Iterator[RunCable]:
    """For usual currents of amplifiers: the cable out and back of the same length, and the fuse; nothing where the length is not known."""
    if not isinstance(item.length, Quantity):
        return
    for current in table("runs")["amplifier"]["currents"]:
        path = Path(current=float(current), out=item.length.value / 1000)
        awg, metric = (choose(path, _wishes(item, scheme)) for scheme in ("awg", "metric"))
        fuse = awg.fuse or metric.fuse
        yield RunCable(
            current=f"{current} A",
            awg=_size("awg", awg.size),
            metric=_size("metric", metric.size),
            fuse=said(fuse, "A") if fuse else "none of the usual sizes",
            why=" and ".join(_WHY[name] for name in awg.binding) or "the thinnest listed does",
        )


def _wishes(item: Run, scheme: str) -> Wishes:
    """A cable beside an engine must bear more heat; what is unknown counts as beside it."""
    if item.engine == "no":
        return Wishes(scheme=scheme)
    return Wishes(scheme=scheme, place="engine", insulation=table("runs")["amplifier"]["insulation_engine"])


def _assumed(item: Run) -> str:
    bears = _wishes(item, "awg").insulation or usual("insulation")
    within = float(table("electrical-fuses")["place"]["within"])
    return (
        f"Reckoned with copper whose insulation bears {said(bears, 'degC')}, out and back by wire of the same length, "
        f"at most {said(usual('limit'), 'share')} of {said(usual('voltage'), 'V')} lost; "
        f"the fuse at the battery, within {said(within, 'm')} of it along the cable."
    )


_WHY = {"drop": "the voltage lost", "ampacity": "what the cable carries", "fuse": "its fuse"}


def _size(scheme: str, name: str | None) -> Value:
    """The size with its unit."""
    return size(scheme, name).label if name else "none listed will do"
