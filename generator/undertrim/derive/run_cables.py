"""What a cable run asks of a cable that is laid along it."""

from undertrim.derive.electrical.cable import Wishes
from undertrim.record.model import Run
from undertrim.resources import table


def wishes(run: Run, scheme: str = "awg") -> Wishes:
    """A cable beside an engine must bear more heat; what is unknown counts as beside it (data/runs.toml)."""
    if run.engine == "no":
        return Wishes(scheme=scheme)
    return Wishes(scheme=scheme, place="engine", insulation=int(table("runs")["amplifier"]["insulation_engine"]))
