"""Where a code of the catalogue is made from a record's own word, every word that a record may say has its entry."""

import json
from typing import Any

import pytest

from undertrim.derive.procedure.steps import SECTIONS
from undertrim.derive.procedure.tally import FATES
from undertrim.record.gear import GEAR
from undertrim.record.model import OPENINGS
from undertrim.resources import table, top
from undertrim.words.catalogue import english

VEHICLE: dict[str, Any] = json.loads((top("schema") / "vehicle.schema.json").read_text("utf-8"))["$defs"]
COMMON: dict[str, Any] = json.loads((top("schema") / "common.schema.json").read_text("utf-8"))["$defs"]


def enum(*path: str, of: dict[str, Any] = VEHICLE) -> list[str]:
    found: Any = of
    for step in path:
        found = found[step]
    return list(found["enum"])


PART, FASTENER = ("part", "properties"), ("fastener", "properties")
DEPTH = ("opening", "properties", "depth", "properties")
BODIES = enum("vehicle", "properties", "bodies", "items")
GEARBOXES = enum("vehicle", "properties", "gearboxes", "items")
SIDES = enum("side", of=COMMON)
LATCHES = [latch for latch in enum("closure", "properties", "latch") if latch != "mechanical"]
KNOWN = enum("known", of=COMMON)
KINDS = list(table("fasteners"))
SORTED = [kind for kind, row in table("fasteners").items() if not row.get("turned")]

CODES: dict[str, list[str]] = {
    "gear-kinds": [f"{form}{kind}" for form in ("", "a-", "many-") for kind in GEAR],
    "areas": enum("area"),
    "body": ["ask", *BODIES, *(f"tell-{body}" for body in BODIES)],
    "gearbox": ["ask", *GEARBOXES, *(f"tell-{one}" for one in GEARBOXES)],
    "drive-side": ["ask", *SIDES, *(f"tell-{side}" for side in SIDES)],
    "sorts": [sort for kind in SORTED for sort in enum(*FASTENER, kind)],
    "motions": [*enum(*PART, "release"), *(f"way-{way}" for way in enum(*PART, "direction"))],
    "spots": enum("fastener", "properties", "where"),
    "edges": list(VEHICLE["fastener"]["properties"]["at"]["properties"]),
    "fasteners": [
        *(f"{form}-{kind}" for form in ("many", "counted") for kind in KINDS),
        *(f"holds-{role}" for role in enum(*FASTENER, "role") if role != "ordinary"),
        *(*FATES, "leave"),
        *(f"later-{end}" for end in ("bagged", "moved", "binned")),
    ],
    "dimensions": [
        *(f"from-{datum}" for datum in enum(*DEPTH, "datum")),
        *(f"ends-{what}" for what in enum(*DEPTH, "obstruction")),
        *enum(*DEPTH, "over"),
    ],
    "shapes": enum("hole", "properties", "shape", of=COMMON),
    "altering": enum("opening", "properties", "alters", "items"),
    "openings": [
        *(f"sensor-{known}" for known in KNOWN),
        *(f"kit-{known}" for known in ("needed", "not-needed", "unknown")),
    ],
    "blockers": [
        *(f"{lid}-{latch}" for lid in ("boot", "bonnet") for latch in LATCHES),
        *(f"key-{known}" for known in KNOWN),
        *(f"weight-{weight}" for weight in ("stop", "lost", "unknown", "need")),
        *("sensor-yes", "sensor-unknown", "duty-stop-lost", "duty-stop-unknown", "duty-lost-lost"),
        "duty-unknown-unknown",
    ],
    "evidence": [
        *(f"side-{side}" for side in enum("carSeen", "properties", "side")),
        *(f"how-{how}" for how in enum("evidence", "properties", "how")),
    ],
    "duty-names": [
        *table("duties")["duty"],
        *(name for row in table("duties")["duty"].values() for name in row["also"]),
    ],
    "drives": [f"tool-{key}" for key, row in table("drives")["families"].items() if not row.get("by_hand")],
    "behaviours-short": list(english("behaviours")),
    "plugs": [f"sends-{output}" for output in enum("soundSystem", "properties", "output")],
    "tethers": [name for name in enum("tether", "properties", "circuit") if name != "ordinary"],
    "signals": [signal.lower() for signal in ("DANGER", "WARNING", "CAUTION", "NOTICE")],
    "sections": list(SECTIONS),
    "facts": ["unknown", "none"],
    "coverage": ["value", "none", "missing"],
    "plan": [f"count-{fate}" for fate in FATES],
}


@pytest.mark.parametrize("room", CODES)
def test_every_word_of_a_record_has_its_entry(room: str) -> None:
    assert set(CODES[room]) <= set(english(room))


def test_every_purpose_tether_and_kind_has_its_words() -> None:
    assert all(table("purposes")["purpose"][name]["label"] for name in enum("tether", "properties", "serves", "items"))
    assert set(table("tethers")["kind"]) == set(enum("tether", "properties", "kind"))
    assert all(table(f"kinds/{kind}")["label"] for kind in OPENINGS)
