"""Cable runs as data: the way, its grommets, and the cable that an amplifier would want along it."""

from collections.abc import Iterator
from typing import Any

from undertrim.derive.electrical.cable import Choice, Wishes, choose
from undertrim.derive.electrical.drop import Path
from undertrim.publish.facts import words
from undertrim.record.model import Run, VehicleRecord
from undertrim.record.units import Quantity
from undertrim.resources import table

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
    "unknown": "whether it passes the engine space is unknown: reckoned as if it does",
}


def runs(record: VehicleRecord) -> list[Data]:
    """Every run of a record."""
    return [run(record, item) for item in record.runs.values()]


def run(record: VehicleRecord, item: Run) -> Data:
    """One run."""
    return {
        "id": item.id,
        "name": item.name,
        "from": item.from_,
        "to": item.to,
        "length": words.quantity(item.length),
        "engine": _ENGINE[item.engine],
        "passes": [f"{one.where}: {_THROUGH[one.through]}" for one in item.passes],
        "note": item.note,
        "cables": list(_cables(item)),
        "when": words.when(record, item.when),
        "clauses": words.clauses(item.when),
        "source": list(item.source),
    }


def _cables(item: Run) -> Iterator[Data]:
    """For usual currents of amplifiers: the cable out and back of the same length, and the fuse; nothing where the length is not known."""
    if not isinstance(item.length, Quantity):
        return
    usual = table("runs")["amplifier"]
    hot = item.engine != "no"
    for current in usual["currents"]:
        path = Path(current=float(current), out=item.length.value / 1000)
        made = {
            scheme: choose(
                path,
                Wishes(
                    scheme=scheme,
                    place="engine" if hot else "cabin",
                    insulation=usual["insulation_engine"] if hot else None,
                ),
            )
            for scheme in ("awg", "metric")
        }
        yield {
            "current": f"{current} A",
            "awg": _size(made["awg"]),
            "metric": _size(made["metric"]),
            "fuse": f"{made['awg'].fuse:g} A" if made["awg"].fuse else "none of the usual sizes",
            "why": " and ".join(_WHY[name] for name in made["awg"].binding),
        }


_WHY = {"drop": "the voltage lost", "ampacity": "what the cable carries", "fuse": "its fuse"}


def _size(choice: Choice) -> str:
    """The size with its unit, as the headline of the choice has it."""
    return choice.headline.split(",")[0] if choice.size else "none listed will do"
