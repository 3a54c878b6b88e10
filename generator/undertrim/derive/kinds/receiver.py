"""Which facts an opening in the dash wants."""

from collections.abc import Iterator

from undertrim.derive.opening_fact import Fact, known
from undertrim.record.model.kinds.receiver import ReceiverOpening
from undertrim.words import message


def required(opening: ReceiverOpening) -> Iterator[Fact]:
    """The opening, the depth behind and the room before it, and whether it takes a kit."""
    name, face = opening.name, opening.face
    yield Fact("face/width", known(face and face.width), message("wanted-receiver/width", opening=name))
    yield Fact("face/height", known(face and face.height), message("wanted-receiver/height", opening=name))
    depth = message("wanted-receiver/depth", opening=name)
    from_face = message("wanted-speaker/from-face", opening=name)
    clear = known(opening.depth and opening.depth.clear)
    told = clear and bool(opening.depth and opening.depth.datum)
    yield Fact("depth", told, from_face if clear else depth)
    room = message("wanted-receiver/clear-front", opening=name)
    front = opening.clear_front
    yield Fact("clear_front", bool(front) and known(front and front.width) and known(front and front.height), room)
    yield Fact("kit", known(opening.kit), message("wanted-receiver/kit", opening=name))
