"""A tweeter against its place: each mount in the box, each way to keep the low tones away."""

from collections.abc import Sequence
from dataclasses import replace

from undertrim.derive.fit.clearances import Clearances
from undertrim.derive.fit.kinds.tweeter import feed, mounted
from undertrim.derive.fit.kinds.tweeter.feed import Fed
from undertrim.derive.fit.margins import Check
from undertrim.derive.fit.stock import Stocked
from undertrim.derive.fit.verdict import Fit, Way, best, decide
from undertrim.record.model.kinds.tweeter import CrossoverGear, TweeterGear, TweeterOpening


def fit(
    tweeter: Stocked[TweeterGear],
    opening: TweeterOpening,
    crossovers: Sequence[Stocked[CrossoverGear]],
    usual: Clearances,
) -> Fit:
    """The best answer over all mounts and feeds."""
    fed = feed.ways(tweeter.facts, opening, crossovers)
    held = mounted.ways(tweeter.facts, opening, usual)
    return best([_decided(tweeter, checks, way) for checks in held for way in fed])


def _decided(tweeter: Stocked[TweeterGear], checks: Sequence[Check], fed: Fed) -> Fit:
    parts, wanted = ((fed.part.piece,) if fed.part else ()), ((fed.to_get,) if fed.to_get else ())
    found = decide(tweeter.id, tweeter.name, (*checks, *fed.checks), parts, wanted, fed.notes)
    return replace(found, way=Way(fed.part.id if fed.part else ""))
