"""The register of kinds: one line each for its opening and for its gear. Each kind is a room below.

A choice between kinds names these classes and ends in `assert_never`, so that the type checker says what a new kind lacks.
"""

from typing import Any, get_args

from undertrim.record.model.kinds import amplifier, receiver, speaker, tweeter

Opening = amplifier.Opening | receiver.Opening | speaker.Opening | tweeter.Opening
"""A place where new gear goes."""

GearFacts = amplifier.Gear | receiver.Gear | speaker.Gear | tweeter.Gear
"""What a piece of gear is and how big it is."""


def _by_kind(union: Any) -> dict[str, Any]:
    return {one.kind: one for one in get_args(union)}


OPENINGS: dict[str, type[Opening]] = _by_kind(Opening)
"""The class of each kind of opening by its name."""

GEAR: dict[str, type[GearFacts]] = _by_kind(GearFacts)
"""The class of each kind of gear by its name."""
