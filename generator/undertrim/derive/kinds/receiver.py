"""Which facts an opening in the dash wants."""

from collections.abc import Iterator

from undertrim.derive.opening_fact import Fact, known
from undertrim.record.model.kinds.receiver import ReceiverOpening


def required(opening: ReceiverOpening) -> Iterator[Fact]:
    """The opening, the depth behind and the room before it, and whether it takes a kit."""
    name, face = f"'{opening.name}'", opening.face
    yield Fact("face/width", known(face and face.width), f"measure the width of {name} from the front")
    yield Fact("face/height", known(face and face.height), f"measure the height of {name} from the front")
    depth = f"measure the depth of {name} from the front of the dash to the first thing in the way"
    from_face = f"find out from which face the depth of {name} was measured"
    clear = known(opening.depth and opening.depth.clear)
    told = clear and bool(opening.depth and opening.depth.datum)
    yield Fact("depth", told, from_face if clear else depth)
    room = f"measure the clear room before the dash around {name}, up to vents, levers and switches"
    front = opening.clear_front
    yield Fact("clear_front", bool(front) and known(front and front.width) and known(front and front.height), room)
    yield Fact("kit", known(opening.kit), f"find out whether {name} needs a dash kit")
