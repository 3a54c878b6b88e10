"""Draws the pictures of the demo records: invented cars have none to photograph. Run it after a change; a test holds the files to it.

Every picture is drawn three times as large and made small, so that slanted lines are smooth, with few colours, so that it stays small.
"""

import math
from collections.abc import Callable
from pathlib import Path

from PIL import Image, ImageChops, ImageDraw, ImageFilter

VEHICLES = Path(__file__).parents[1] / "records/vehicles"
FINCH = VEHICLES / "kelbrook/photos/finch-2014-2018"
PLOVER = VEHICLES / "wexcombe/photos/plover-2017-2022"
BRAMBLE = VEHICLES / "orlock/photos/bramble-2019-2023"
SELDOM = Path(__file__).parent / "publish/photos/seldom"
WIDTH, HEIGHT, FINER, COLOURS = 960, 640, 3, 24
TRIM, METAL, DARK, LINE, GLASS, LIGHT = "#3b3f44", "#9aa1a8", "#1d2023", "#0d0f10", "#22303a", "#d7dbdf"

Box = tuple[float, float, float, float]


class Sheet:
    """A picture under way, in px of the finished one."""

    def __init__(self, ground: str) -> None:
        self.image = Image.new("RGB", (WIDTH * FINER, HEIGHT * FINER), ground)
        self._draw = ImageDraw.Draw(self.image)

    def box(self, at: Box, fill: str, round_by: float = 0) -> None:
        """A rectangle, its corners rounded by a radius."""
        where = [value * FINER for value in at]
        self._draw.rounded_rectangle(where, round_by * FINER, fill, LINE, 2 * FINER)

    def disc(self, x: float, y: float, radius: float, fill: str) -> None:
        """A filled circle."""
        where = [(value + way * radius) * FINER for way in (-1, 1) for value in (x, y)]
        self._draw.ellipse(where, fill, LINE, 2 * FINER)

    def hexagon(self, x: float, y: float, across: float, fill: str) -> None:
        """A hexagon standing on a side, by its size over corners."""
        corners = [(x + across / 2 * math.cos(turn), y + across / 2 * math.sin(turn)) for turn in _sixths()]
        self._draw.polygon([(a * FINER, b * FINER) for a, b in corners], fill, LINE, 2 * FINER)

    def shadow(self, at: Box, round_by: float = 0, soft: float = 14, down: float = 10) -> None:
        """What a lamp from above left throws below a rectangle that stands out."""
        left, top, right, bottom = (value * FINER for value in at)
        by = down * FINER
        dark = Image.new("L", self.image.size, 255)
        where = (left + by, top + by, right + by, bottom + by)
        ImageDraw.Draw(dark).rounded_rectangle(where, round_by * FINER, 110)
        self._shade(dark.resize((WIDTH, HEIGHT)).filter(ImageFilter.GaussianBlur(soft)))

    def light(self, dark: int = 120) -> None:
        """A lamp above on the left: darker towards the other corner, down to so many parts of 255."""
        across, down = (Image.linear_gradient("L").rotate(turn).resize((WIDTH, HEIGHT)) for turn in (90, 0))
        far = Image.blend(across, down, 0.5)
        self._shade(far.point(lambda value: 255 - (255 - dark) * value // 255))

    def _shade(self, much: Image.Image) -> None:
        whole = much.resize(self.image.size)
        self.image = ImageChops.multiply(self.image, Image.merge("RGB", (whole, whole, whole)))
        self._draw = ImageDraw.Draw(self.image)

    def done(self, colours: int = COLOURS) -> Image.Image:
        """The finished picture."""
        small = self.image.resize((WIDTH, HEIGHT), Image.Resampling.LANCZOS)
        return small.quantize(colours, dither=Image.Dither.NONE)


def _sixths() -> list[float]:
    return [math.pi / 3 * number for number in range(6)]


def radio_screws() -> Image.Image:
    """The dash with its surround off: the radio in its bay, a hexagon screw at each corner."""
    sheet = Sheet(TRIM)
    sheet.box((70, 60, 890, 580), DARK, 24)
    sheet.box((150, 110, 810, 530), METAL, 6)
    sheet.box((230, 160, 730, 480), DARK, 10)
    sheet.box((320, 190, 640, 370), GLASS, 6)
    for number in range(6):
        sheet.box((325 + 53 * number, 400, 370 + 53 * number, 445), TRIM, 5)
    for x in (275, 685):
        sheet.disc(x, 420, 26, METAL)
    for x, y in ((190, 150), (770, 150), (190, 490), (770, 490)):
        sheet.disc(x, y, 27, LIGHT)
        sheet.hexagon(x, y, 34, METAL)
    return sheet.done()


def map_key() -> Image.Image:
    """The map radio in the dash: a key by itself on the left of the screen."""
    sheet = Sheet(TRIM)
    sheet.box((60, 90, 900, 550), DARK, 28)
    sheet.box((220, 130, 860, 420), GLASS, 8)
    sheet.box((95, 150, 195, 220), LIGHT, 8)
    for number in range(3):
        sheet.box((95, 240 + 62 * number, 195, 290 + 62 * number), TRIM, 8)
    for x in (260, 820):
        sheet.disc(x, 485, 34, METAL)
    for number in range(5):
        sheet.box((345 + 82 * number, 460, 412 + 82 * number, 510), TRIM, 6)
    return sheet.done()


def dash_bay() -> Image.Image:
    """The bay with the radio out: the cross-beam at its back, the main plug and the antenna in front of it."""
    sheet = Sheet(TRIM)
    sheet.box((70, 60, 890, 580), METAL, 24)
    sheet.box((150, 110, 810, 530), LINE, 6)
    sheet.box((151, 250, 809, 330), METAL)
    for x in range(210, 800, 90):
        sheet.disc(x, 290, 16, DARK)
    sheet.box((240, 370, 430, 470), LIGHT, 8)
    sheet.box((310, 470, 360, 529), TRIM)
    sheet.disc(620, 420, 30, LIGHT)
    sheet.disc(620, 420, 10, DARK)
    sheet.box((608, 450, 632, 529), TRIM)
    return sheet.done()


def main_plug() -> Image.Image:
    """The main plug from its wires: two rows of eight, the latch at the top, two places without a wire."""
    sheet = Sheet(TRIM)
    sheet.box((100, 190, 860, 480), LIGHT, 14)
    sheet.box((380, 130, 580, 190), METAL, 10)
    for row in range(2):
        for column in range(8):
            x, y = 172 + 88 * column, 275 + 125 * row
            sheet.box((x - 34, y - 48, x + 34, y + 48), DARK, 4)
            if (row, column) not in ((1, 5), (1, 7)):
                sheet.disc(x, y, 22, METAL)
    return sheet.done()


LIT = 64
"""How many colours a picture with light and shade has."""
CARPET, WHITE = "#5a5f63", "#f2f4f5"


def battery_corner() -> Image.Image:
    """The right rear corner of a boot with its cover off: the battery, and on its negative post the clamp with the sensor plug."""
    sheet = Sheet(CARPET)
    sheet.shadow((250, 150, 850, 560), 20, 26, 22)
    sheet.box((250, 150, 850, 560), DARK, 20)
    sheet.box((275, 175, 825, 300), TRIM, 10)
    for number in range(6):
        sheet.disc(330 + 88 * number, 262, 20, DARK)
    for x in (345, 735):
        sheet.shadow((x - 34, 196, x + 34, 236), 20, 6, 6)
        sheet.disc(x, 215, 32, METAL)
        sheet.disc(x, 215, 17, LIGHT)
    sheet.shadow((640, 180, 800, 255), 10, 8, 8)
    sheet.box((655, 186, 800, 250), METAL, 10)
    sheet.disc(735, 217, 26, LIGHT)
    sheet.hexagon(684, 217, 40, WHITE)
    sheet.box((770, 250, 830, 330), LINE, 8)
    sheet.box((785, 330, 815, 640), LINE)
    sheet.box((782, 262, 818, 290), LIGHT, 4)
    sheet.box((60, 380, 215, 600), TRIM, 22)
    sheet.box((80, 400, 195, 430), DARK, 8)
    sheet.light(135)
    return sheet.done(LIT)


def vent_pair() -> Image.Image:
    """Two vents side by side in the middle of a dash."""
    sheet = Sheet(TRIM)
    sheet.box((0, 0, 960, 120), DARK)
    sheet.shadow((110, 170, 850, 500), 36, 22, 14)
    sheet.box((110, 170, 850, 500), METAL, 36)
    for left in (140, 495):
        sheet.box((left, 200, left + 325, 470), LINE, 22)
        for number in range(4):
            top = 220 + 60 * number
            sheet.shadow((left + 20, top, left + 305, top + 22), 8, 5, 8)
            sheet.box((left + 20, top, left + 305, top + 22), TRIM, 8)
        sheet.box((left + 146, 300, left + 178, 390), LIGHT, 8)
    sheet.box((200, 560, 760, 640), GLASS, 10)
    sheet.light(150)
    return sheet.done(LIT)


def front_grip() -> Image.Image:
    """The grip of a front door with its cover off: a hexalobular screw at each end."""
    sheet = Sheet(CARPET)
    sheet.box((0, 470, 960, 640), TRIM)
    sheet.shadow((380, 60, 580, 590), 90, 26, 24)
    sheet.box((380, 60, 580, 590), DARK, 90)
    sheet.box((430, 110, 530, 540), LINE, 46)
    sheet.box((442, 210, 518, 440), TRIM, 16)
    for y in (165, 487):
        sheet.shadow((448, y - 32, 512, y + 32), 32, 6, 6)
        sheet.disc(480, y, 34, METAL)
        for turn in _sixths():
            sheet.disc(480 + 11 * math.sin(turn), y - 11 * math.cos(turn), 6, LINE)
        sheet.disc(480, y, 10, LINE)
    sheet.shadow((690, 130, 780, 560), 42, 12, 10)
    sheet.box((690, 130, 780, 560), DARK, 42)
    for y in (190, 345, 500):
        sheet.box((716, y - 14, 754, y + 14), WHITE, 6)
    sheet.light(140)
    return sheet.done(LIT)


PICTURES: dict[Path, Callable[[], Image.Image]] = {
    FINCH / "radio-4-screws.png": radio_screws,
    FINCH / "map-key.png": map_key,
    FINCH / "dash-bay.png": dash_bay,
    FINCH / "main-plug.png": main_plug,
    PLOVER / "battery-corner.png": battery_corner,
    PLOVER / "vent-pair.png": vent_pair,
    BRAMBLE / "front-grip.png": front_grip,
    SELDOM / "radio-screws.png": radio_screws,
}


def main() -> None:
    """Write every picture in its place."""
    for path, draw in PICTURES.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        draw().save(path, optimize=True)


if __name__ == "__main__":
    main()
