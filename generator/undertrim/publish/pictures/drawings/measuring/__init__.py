"""How dimensions are measured: drawings of a hand with a tool, each by its name. They are sketches; none is to scale."""

from collections.abc import Callable, Mapping

from undertrim.publish.pictures.drawings.measuring import doors, fronts, gear, places
from undertrim.publish.pictures.drawings.measuring.scenes import Scene, drawn
from undertrim.words import Value, message

SCENES: Mapping[str, Callable[[], Scene]] = {
    "depth": doors.depth,
    "travel": doors.travel,
    "grille": doors.grille,
    "hole": fronts.hole,
    "bolts": fronts.bolts,
    "radio-opening": fronts.radio_opening,
    "radio-depth": doors.radio_depth,
    "tweeter-cup": places.tweeter_cup,
    "amplifier-place": places.amplifier_place,
    "plug-faces": places.plug_faces,
    "speaker-gear": gear.speaker,
    "receiver-gear": gear.receiver,
}
"""The drawings in the order in which a page shows them."""


def title(name: str) -> Value:
    """What a drawing shows, as its caption. Raises KeyError for a name that no drawing has."""
    return message(f"sketches/{SCENES[name]().name}")


def drawing(name: str, width: int = 280, size: str = "20em") -> str:
    """A drawing as SVG, `width` units wide (lettering is 12 high). Raises KeyError for a name that none has, ValueError below 240 units."""
    return drawn(SCENES[name](), width, size)
