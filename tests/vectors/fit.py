"""Questions of fit with the answers of Python: worked examples here, random ones in fit_random.py. The script of the pages must give the same."""

from dataclasses import dataclass, field
from typing import Any

from undertrim.derive.fit.clearances import Clearances, clearances
from undertrim.derive.fit.kinds import room
from undertrim.derive.fit.stock import Gear, Stocked
from undertrim.derive.fit.verdict import Fit
from undertrim.publish import encoding
from undertrim.publish.facts.fit_page import opening_data
from undertrim.publish.facts.shelf import gear_data, usual_data
from undertrim.record.model import Blank, Bolts, Depth, Face, Hole, Opening
from undertrim.record.model.kinds.receiver import ReceiverGear, ReceiverOpening
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear, SpeakerOpening
from undertrim.record.units import Quantity, parse

USUAL = clearances()


@dataclass(frozen=True)
class Case:
    """A piece of gear before an opening, with what is in stock to go between and what usual room to keep.

    `kind` and `margins` (mm, by the names of checks, to a hundredth) are what a worked example comes to.
    """

    gear: Gear
    opening: Opening
    between: tuple[Gear, ...] = ()
    name: str = ""
    kind: str = ""
    margins: dict[str, float] = field(default_factory=dict)
    usual: Clearances = USUAL

    def answer(self) -> Fit:
        """What Python says."""
        return room(self.opening).by_size(self.gear, self.between, self.usual)

    def asked(self) -> dict[str, Any]:
        """The same question for the browser."""
        found: dict[str, Any] = encoding.said(
            {
                "kind": self.opening.kind,
                "gear": gear_data(self.gear.facts),
                "opening": opening_data(self.opening),
                "between": [{"name": item.name, "gear": gear_data(item.facts)} for item in self.between],
                "usual": usual_data(self.usual),
            }
        )
        return found


def said(fit: Fit) -> dict[str, Any]:
    """An answer as the browser gives it."""
    # Long because it is one table: what an answer says, a line each.
    found: dict[str, Any] = encoding.said(
        {
            "kind": fit.kind,
            "headline": fit.headline,
            "reason": fit.reason,
            "parts": list(fit.parts),
            "to_get": list(fit.to_get),
            "notes": list(fit.notes),
            "plate": fit.way.plate,
            "checks": [
                {
                    "name": check.name,
                    "title": check.title,
                    "verdict": check.verdict,
                    "words": check.words,
                    "need": check.need,
                    "have": check.have,
                    "margin": check.margin,
                    "uncertainty": check.uncertainty,
                    "missing": list(check.missing),
                    "mend": check.mend,
                    "unit": check.unit,
                    "numbers": [
                        {
                            "label": number.label,
                            "value": number.value,
                            "step": number.step,
                            "text": number.text,
                            "default": number.default,
                            "less": number.less,
                            "more": number.more,
                            "lacking": number.lacking,
                        }
                        for number in check.numbers
                    ],
                }
                for check in fit.checks
            ],
        }
    )
    return found


def mm(text: str) -> Quantity:
    """A length typed with its unit, or in mm."""
    return parse(text if text[-1] in 'mn"' else f"{text} mm", "length")


def _round(across: str) -> Hole:
    return Hole("round", diameter=mm(across))


def _circle(across: str = "156", angle: str = "") -> Bolts:
    return Bolts("circle", 4, diameter=mm(across), angle=parse(f"{angle} deg", "angle") if angle else None)


def _speaker(depth: str, protrusion: str = "10", **other: Any) -> Gear:
    usual = {"basket": _round("127"), "flange": _round("165"), "bolts": _circle()}
    facts = {**usual, "depth": mm(depth), "protrusion": mm(protrusion), "gasket": Blank.NONE, **other}
    return Stocked("shoal", SpeakerGear("Skerrowe", "Shoal", **facts))


def _door(clear: str, grille: str = "20", **other: Any) -> Opening:
    depth = Depth(mm(clear), "skin", "no-glass", leans=Blank.NONE)
    usual = {"hole": _round("130"), "bolts": _circle(), "depth": depth, "factory_spacer": Blank.NONE}
    facts: dict[str, Any] = {**usual, "room_to_grille": mm(grille), "panel": Face(mm("300"), mm("300")), **other}
    return SpeakerOpening("side", "Side", (), **{"area": "boot", "crash_sensor": "no", **facts})


def _ring(thickness: str) -> Gear:
    shape = {"hole": _round("128"), "flange": _round("176"), "bolts": _circle(), "thickness": mm(thickness)}
    facts: dict[str, Any] = shape
    return Stocked(f"ring-{thickness}", SpacerGear("Pellworth", f"Ring {thickness}", **facts))


def _dash(height: str, depth: str, kit: str = "not-needed", width: str = "182") -> Opening:
    face = Face(mm(width), mm(height))
    clear = Face(mm("300"), mm("200"))
    return ReceiverOpening("dash", "Dash", (), face=face, clear_front=clear, depth=Depth(mm(depth), "face"), kit=kit)


def _receiver(height: str = "50", depth: str = "160", plugs: str = "30") -> Gear:
    facts: dict[str, Any] = {
        "body": Face(mm("180"), mm(height)),
        "trim": Face(mm("190"), mm("110")),
        "chassis_depth": mm(depth),
    }
    return Stocked("cleft", ReceiverGear("Sandmartin", "Cleft", plug_room=mm(plugs) if plugs else None, **facts))


_OVAL = Hole("oval", width=mm("165"), height=mm("175"))
_LEAN = Depth(mm("62"), "skin", "no-glass", leans=parse("5.00 deg", "angle"))
_GLASS = Depth(mm("47"), "skin", "whole-travel", "Window glass", "glass", Blank.NONE)
_METAL = Depth(mm("62"), "skin", "whole-travel", "Guide of the window glass", "metal", Blank.NONE)
_UNSEEN = Depth(mm("62"), "skin", "whole-travel", "Cross-bar", "unknown", Blank.NONE)
_NARROW = clearances(rear_glass="3 mm", grille="2 mm")
_SMALL: dict[str, Any] = {"flange": _round("70"), "bolts": _circle("62")}

# Depth margin = depth there + spacer - speaker - clearance, grille margin = room - spacer - protrusion - clearance, clearances of 3 mm;
# a spacer from speaker + 3 - depth to room - protrusion - 3. All worked by hand.
_SPEAKERS = (
    Case(_speaker("58"), _door("62"), (), "flush", "fits", {"depth": 1, "grille": 7}),
    Case(_speaker("63"), _door("62"), (), "a spacer of 4 to 7 mm is wanted", "fits-with", {"spacer": 3}),
    Case(_speaker("63"), _door("62"), (_ring("6"),), "on 6 mm", "fits-with", {"depth": 2, "grille": 1}),
    Case(_speaker("63"), _door("62"), (_ring("1/2 in"),), "half an inch strikes the grille", "fits-with", {"spacer": 3}),
    Case(_speaker("63"), _door("55"), (), "no height of spacer does: 11 to 7 mm", "does-not-fit", {"depth": -11, "grille": 7}),
    # 45 tan 5 deg = 3.94
    Case(_speaker("58", magnet=mm("90")), _door("62", depth=_LEAN), (), "the lean takes 3.94 mm", "fits-with", {"spacer": 4.06}),
    # 127 into 130, which with 5 mm at each end is 140 of the 165
    Case(_speaker("58"), _door("62", hole=_round("130")), (), "the flange covers 130", "fits", {"hole": 3, "flange": 25}),
    Case(_speaker("58"), _door("62", hole=_round("158")), (), "the flange does not cover 158", "fits-with", {"hole": 31}),
    # 47 - 55.5625 = -8.56; on the bracket of 19.05 mm 24 - 19.05 - 9 = -4.05 to the grille; the window is 11.5625 to 13 mm
    Case(_speaker("2 3/16 in", "9"), _door("47", "24", depth=_GLASS, factory_spacer=mm("3/4 in")), (_ring("12"),),
         "flush it strikes the glass, on the bracket the grille, on 12 mm neither", "marginal", {"depth": 0.44, "grille": 1}, _NARROW),
    # 3 mm to anything fixed, 5 mm to the glass and to what nobody looked at, whatever the words beside it say: 62 - 58 less 3 or 5
    Case(_speaker("58"), _door("62", depth=_METAL), (), "a fixed thing behind", "fits", {"depth": 1}),
    Case(_speaker("58"), _door("62", depth=_UNSEEN), (), "nobody saw what is behind", "fits-with", {"spacer": 6}),
    # slack 132 - 127 = 5 up; the flange of 165 leaves 198 - 165 = 33 open across
    Case(_speaker("40"), _door("62", hole=Hole("oval", width=mm("198"), height=mm("132"))), (),
         "a round speaker in an oval hole", "fits-with", {"hole-across": 71, "hole-up": 5}),
    # Four lengths to the whole mm: sqrt(4 x 0.5^2) = 1, and a margin of just 1 is none that is smaller
    Case(_speaker("66", "8", gasket=mm("2")), _door("62"), (_ring("6"),), "a margin of just its uncertainty", "fits-with", {"depth": 1, "grille": 1}),
    Case(_speaker("68", "8", gasket=mm("2")), _door("62"), (_ring("6"),), "short by just its uncertainty, and a spacer of just 7 mm", "marginal", {"spacer": 0}),
    # 72.201 : 96.268 is 3 : 4, so that the diagonal is 120.335, half-way between two figures that are shown; the corners lie elsewhere
    Case(_speaker("58", bolts=_circle("120")), _door("62", bolts=Bolts("rectangle", 4, width=mm("72.201"), height=mm("96.268"))), (),
         "a diagonal at the edge of rounding", "fits-with", {"bolts": 1.665}),
    # 2.19 in is 55.63 mm: 62 - 55.63 - 3; 2 in is 50.8 mm round a basket of 50
    Case(_speaker("2.19 in"), _door("62"), (), "inches are no millimetres", "fits", {"depth": 3.37}),
    Case(_speaker("40", basket=_round("50"), **_SMALL), _door("62", hole=_round("2 in"), bolts=_circle("62")), (),
         "50 mm in a hole of 2 in is 0.8 mm loose", "marginal", {"hole": 0.8}),
    # Sizes of nothing are nonsense (a rule warns), and are reckoned all the same: 130 - 0 into the hole
    Case(_speaker("58", basket=Hole("rectangle", width=mm("0"), height=mm("0")), bolts=Bolts("rectangle", 4, width=mm("0"), height=mm("0"))),
         _door("62"), (), "a basket and bolts of nothing", "unknown", {"hole-across": 130, "hole-up": 130}),
    # The magnet of 90 mm at 45 degrees takes 45 mm at most, an unknown gasket 10 mm: what has more room is not safe, and what has less cannot be told
    Case(_speaker("58", magnet=mm("90")), _door("107", depth=Depth(mm("107"), "skin", "no-glass")), (), "a lean nobody saw, with room to spare", "marginal", {"depth": 46}),
    Case(_speaker("58", magnet=mm("90")), _door("100", depth=Depth(mm("100"), "skin", "no-glass")), (), "a lean nobody saw, where it may decide", "unknown", {}),
    Case(_speaker("58", gasket=None), _door("62", "26"), (), "a gasket nobody saw, with room to spare", "marginal", {"grille": 13}),
    Case(_speaker("58", gasket=None), _door("62", "20"), (), "a gasket nobody saw, where it may decide", "unknown", {"depth": 1}),
    # 78 tan 1 deg = 1.36 mm along the circle of 156 mm at 46 against 45 degrees, within the play of 2 mm; at 60 degrees 20.4 mm off
    Case(_speaker("58", flange=_OVAL, bolts=_circle(angle="46.0")), _door("62", bolts=_circle(angle="45.0")), (), "an oval one, a degree off", "fits", {"bolts-angle": 0.64}),
    Case(_speaker("58", flange=_OVAL, bolts=_circle(angle="60")), _door("62", bolts=_circle(angle="45")), (), "an oval one, 15 degrees off", "fits-with", {"depth": 1}),
    Case(_speaker("58", flange=_OVAL), _door("62", bolts=_circle(angle="45")), (), "an oval one whose angle nobody saw", "unknown", {"bolts": 2}),
)  # fmt: skip

# Opening - body on each axis, clear depth - chassis - 30 for the plugs; bodies of ISO 7736, as secondary texts give them
_RECEIVERS = (
    Case(_receiver(), _dash("53", "200"), (), "single height", "fits", {"body-across": 2, "body-up": 3, "depth": 10}),
    # the usual 30 mm for plugs, of which 25 to 50 are usual: 10 mm to spare are 10 too few at worst, 3 short may be 2 to spare, 6 short are not
    Case(_receiver(plugs=""), _dash("53", "200"), (), "a margin within the usual room for plugs", "marginal", {"depth": 10}),
    Case(_receiver(plugs=""), _dash("53", "187"), (), "short within the usual room for plugs", "marginal", {"depth": -3}),
    Case(_receiver(plugs=""), _dash("53", "211"), (), "more than the usual room for plugs", "fits", {"depth": 21}),
    Case(_receiver(plugs=""), _dash("53", "184"), (), "less than the usual room for plugs", "does-not-fit", {"depth": -6}),
    Case(_receiver(), _dash("53", "175"), (), "15 mm too deep", "does-not-fit", {"depth": -15}),
    Case(_receiver(depth="100"), _dash("53", "175"), (), "a short chassis", "fits", {"depth": 45}),
    Case(_receiver("100"), _dash("53", "200"), (), "double into single", "does-not-fit", {"body-up": -47, "body-across": 2}),
    Case(_receiver(), _dash("103", "200"), (), "single into double", "fits", {"body-across": 2, "body-up": 53}),
    Case(_receiver(), _dash("53", "200", width="7 in"), (), "7 in are 177.8 mm", "does-not-fit", {"body-across": -2.2}),
)  # fmt: skip
FIXED = (*_SPEAKERS, *_RECEIVERS)
