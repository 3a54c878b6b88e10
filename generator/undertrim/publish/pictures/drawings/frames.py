"""What a drawing of the dash is made from, and where its rectangles stand, in mm."""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.publish.pictures.drawings.dimensions import UNKNOWN, Measure
from undertrim.publish.pictures.drawings.lettering import Box
from undertrim.publish.pictures.drawings.pens import Pen
from undertrim.words import Message, Value, message

_BEHIND = message("drawings/first-behind")


@dataclass(frozen=True, slots=True)
class Frame:
    """An upright rectangle by width and height."""

    width: Measure = UNKNOWN
    height: Measure = UNKNOWN

    @property
    def size(self) -> tuple[float, float] | None:
        """Width and height in mm; None where one is not known."""
        if self.width.mm is None or self.height.mm is None:
            return None
        return self.width.mm, self.height.mm

    @property
    def words(self) -> Message:
        """What it measures."""
        return message("drawings/by", width=self.width.text, height=self.height.text)


@dataclass(frozen=True, slots=True)
class Dash:
    """The opening, the kit in it and the receiver in that; the receiver is centred across and stands at the bottom.

    `clear` is the depth behind the front of the dash to `behind`; `margin` says in words what is left of it, `strikes` whether that is too little.
    `more` are sentences to stand below.
    """

    title: Value
    face: Frame
    kit: str = ""
    kit_opening: Frame | None = None
    clear_front: Frame | None = None
    gear: str = ""
    body: Frame | None = None
    trim: Frame | None = None
    clear: Measure = UNKNOWN
    behind: Value = _BEHIND
    chassis: Measure = UNKNOWN
    plug_room: Measure = UNKNOWN
    margin: Value = ""
    strikes: bool = False
    more: tuple[Value, ...] = ()

    @property
    def holder(self) -> Frame:
        """What the receiver goes into."""
        return self.kit_opening or self.face


@dataclass(frozen=True, slots=True)
class Placed:
    """A rectangle with its pen, its part and what it stands for; `box` is in mm about the middle of the opening."""

    part: str
    pen: Pen
    words: Message
    box: Box


def placed(dash: Dash) -> list[Placed]:
    """All rectangles whose sizes are known. The body stands on the lower edge of what holds it, the trim is centred on the body."""
    return [Placed(part, pen, words, _box(dash, frame, part)) for frame, pen, part, words in _named(dash)]


def _named(dash: Dash) -> Iterator[tuple[Frame, Pen, str, Message]]:
    named: list[tuple[Frame | None, Pen, str, Message]] = [
        (dash.clear_front, "adjacent", "clear-front", message("drawings/clear-front")),
        (dash.face, "bold", "face", message("drawings/dash-opening")),
        (dash.kit_opening, "thin", "kit", message("fit-receiver/opening-of", kit=dash.kit)),
        (dash.trim, "front", "trim", message("drawings/trim-before", gear=dash.gear)),
        (dash.body, "outline", "body", message("drawings/body-of", gear=dash.gear)),
    ]
    for frame, pen, part, words in named:
        if frame and frame.size:
            yield frame, pen, part, message("drawings/is", what=words, how=frame.words)


def _box(dash: Dash, frame: Frame, part: str) -> Box:
    width, height = frame.size or (0.0, 0.0)
    drop, holder = 0.0, dash.holder.size
    if part in ("body", "trim") and holder and dash.body and dash.body.size:
        drop = (holder[1] - dash.body.size[1]) / 2
    return Box(-width / 2, drop - height / 2, width / 2, drop + height / 2)


def left_over(dash: Dash) -> Box | None:
    """The part of the opening above the body; None where nothing is left or one of the two is not known."""
    boxes = {one.part: one.box for one in placed(dash)}
    holder, body = boxes.get("kit" if dash.kit_opening else "face"), boxes.get("body")
    if holder is None or body is None or body.top - holder.top < 0.005 or body.left < holder.left:
        return None
    return Box(holder.left, holder.top, holder.right, body.top)
