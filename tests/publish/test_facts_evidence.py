"""What page, sheet and plan say of a record's standing, its conflicts and its age."""

# Long because all of it is said of the same few records.

import json
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from making import made
from undertrim.derive.evidence.fingerprint import fingerprints
from undertrim.derive.fact_names import block_name, fact_name
from undertrim.publish.encoding import indented, said
from undertrim.publish.facts import blockers, evidence, founded
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.facts.evidence import Seen
from undertrim.record.fields import walk
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry
from undertrim.words import say
from vehicle_pages import all_pages
from wired import PLACE, VEHICLES, stem

DAY = date(2026, 11, 25)
DATA: dict[str, Any] = {
    "evidence": {
        "e1": {"how": "measured", "on": "2026-03-09", "by": "rk"},
        "e2": {"how": "told", "on": "2022-03-09", "by": "<b>tw</b>"},
    },
    "restraint": {"wait": "3 min", "memory_keeper": "forbidden", "read_faults_first": "no"},
    "duties": {"clock": {"kept_by": "stays"}},
    "preps": {"battery": {"sets": {"battery": "off"}, "restore": "Join it."}},
    "parts": {
        "p": {
            "tethers": {"plug": {"name": "Main plug", "kind": "plug"}},
            "held_by": [{"bolt": "T50", "count": "2", "torque": "unknown"}],
        }
    },
    "openings": {
        "front-door": {"name": "Door <speakers>", "behind": ["p"], "crash_sensor": "no", "when": {"body": "van"}}
    },
    "vehicle": {"bodies": ["van", "minibus"]},
}
CLAIMS = [{"says": "62 mm", "source": "e1"}, {"says": "2 1/4 in", "source": ["e2"]}]
DEPTH = {"about": "openings/front-door/depth/clear", "claims": CLAIMS}


def record(**extra: Any) -> tuple[Entry, VehicleRecord]:
    item = made({**DATA, **extra})
    assert isinstance(item.record, VehicleRecord)
    return item, item.record


def stamped() -> dict[str, Any]:
    facts_now = fingerprints(record()[0].source.data)
    return {"on": "2026-04-02", "by": "rk", "car": "2016 <b>", "facts": facts_now}


def standing(**extra: Any) -> dict[str, Any]:
    item, about = record(**extra)
    found: dict[str, Any] = json.loads(indented(evidence.standing(about, item.source.data)))
    return found


def test_a_record_nobody_checked() -> None:
    assert standing() == {
        "word": "unverified",
        "text": "Not verified",
        "on": "",
        "by": "",
        "car": "",
        "obstacles": [],
        "edited": [],
        "parts": [],
    }


def test_a_verified_one() -> None:
    found = standing(verified=stamped())
    assert (found["word"], found["text"]) == ("verified", "Verified 2026-04-02 by rk at: 2016 <b>")
    assert (found["on"], found["by"], found["car"]) == ("2026-04-02", "rk", "2016 <b>")


def test_an_edited_one_names_what_was_edited() -> None:
    duties = {"clock": {"kept_by": "none"}, "hazard-switch": {"kept_by": "stays"}}
    stamp = stamped()
    del stamp["facts"]["restraint"]
    stamp["facts"]["parts/old-trim"] = "00000000"
    found = standing(duties=duties, verified=stamp)
    assert (found["word"], found["text"]) == ("stale", "Verification is stale: 4 facts changed")
    assert found["edited"] == [
        {"block": "duties/clock", "name": "Duties of the factory unit, clock", "how": "changed"},
        {"block": "restraint", "name": "Restraint system", "how": "added"},
        {"block": "duties/hazard-switch", "name": "Duties of the factory unit, hazard switch", "how": "added"},
        {"block": "parts/old-trim", "name": "Parts, old trim", "how": "removed"},
    ]
    one = standing(duties={"clock": {"kept_by": "none"}}, verified=stamped())
    assert one["text"] == "Verification is stale: 1 fact changed"


def test_what_is_in_the_way() -> None:
    found = standing(restraint={**DATA["restraint"], "wait": "unknown"})
    wanted = {"what": "the restraint wait is unknown", "where": "look it up in the maker's information"}
    assert found["obstacles"] == [wanted]


def test_a_conflict_with_all_its_claims() -> None:
    [found] = evidence.conflicts(record(conflicts={"c": DEPTH})[1])
    assert said(found) == {
        "id": "c",
        "state": "conflict",
        "word": "CONFLICT",
        "about": "openings/front-door/depth/clear",
        "fact": "Door <speakers>: clear depth",
        "stands": "62 mm (2.44 in)",
        "claims": [{"says": "62 mm (2.44 in)", "source": ["e1"]}, {"says": "2 1/4 in (57.2 mm)", "source": ["e2"]}],
        "cautious": "2 1/4 in (57.2 mm)",
        "reason": "gear for the lesser depth fits in the greater one, the other way round it meets the glass",
        "safety": False,
        "settled": False,
        "settled_by": "",
        "text": "62 mm (2.44 in) (e1) or 2 1/4 in (57.2 mm) (e2). Until it is settled: 2 1/4 in (57.2 mm).",
    }


def test_an_open_conflict_blocks_the_jobs_it_is_about() -> None:
    conflicts = {"c": DEPTH, "d": {**DEPTH, "settled_by": "e1"}, "e": {**DEPTH, "about": "restraint/wait"}}
    found = [item for item in said(blockers.blockers(record(conflicts=conflicts)[1])) if "CONFLICT" in item["title"]]
    assert [(item["weight"], item["title"], item["openings"], item["clauses"]) for item in found] == [
        ("unknown", "CONFLICT: Door <speakers>: clear depth", ["front-door"], {"body": ["van"]}),
        ("unknown", "CONFLICT: Restraint system: wait", [], {}),
    ]


@pytest.mark.parametrize(
    ("about", "name"),
    [
        ("parts/p/held_by/0/torque", "P, T50 bolt: torque"),
        ("parts/p/tethers/plug/circuit", "P, Main plug: circuit"),
        ("openings/front-door/hole/diameter", "Door <speakers>: hole, diameter"),
        ("vehicle/high_voltage", "Vehicle: high voltage"),
        ("duties/clock/kept_by", "Duties of the factory unit, clock: kept by"),
        ("restraint/wait", "Restraint system: wait"),
    ],
)
def test_a_fact_in_words(about: str, name: str) -> None:
    [found] = evidence.conflicts(record(conflicts={"c": {**DEPTH, "about": about}})[1])
    assert say(found.fact) == name


def test_a_conflict_that_leads_nowhere_is_named_by_its_keys() -> None:
    [found] = evidence.conflicts(record(conflicts={"c": {**DEPTH, "about": "parts/p/area"}})[1])
    assert (found.fact, found.stands) == ("parts/p/area", "")


def test_blocks_in_words() -> None:
    data = {"parts": {"p": {"name": "Trim"}}}
    assert [say(block_name(data, block)) for block in ("parts/p", "areas/front-door", "vehicle")] == [
        "Trim",
        "Areas, front door",
        "Vehicle",
    ]
    assert say(fact_name({}, ("nowhere", "x"))) == "Nowhere, x"


def test_ages_stand_beside_the_dates() -> None:
    item, _ = record()
    made_ = facts.vehicle(item, DAY)
    assert (made_["data_date"], made_["age"]) == ("2026-03-09", {"words": "8 months old", "on": "2026-11-25"})
    assert [entry["age"] for entry in made_["evidence"]] == ["8 months old", "4 years old, check before relying on it"]
    assert facts.vehicle(item)["age"] == {"words": "", "on": ""}


def page(**extra: Any) -> str:
    item, _ = record(**extra)
    return " ".join(all_pages(facts.vehicle(item, DAY)).split())


def test_the_page_shows_it() -> None:
    text = page(conflicts={"c": DEPTH}, verified=stamped())
    assert '<b>Not verified</b> <a href="#standing">1 thing in the way</a>' in text
    assert "2026-03-09 <small>(on 2026-11-25: 8 months old)</small>" in text
    assert "CONFLICT: Door &lt;speakers&gt;: clear depth</b>" in text
    assert "Cautious value: <b>2 1/4 in (57.2 mm)</b>" in text
    assert "The conflict &#39;c&#39; about" in text
    assert "&lt;b&gt;tw&lt;/b&gt;" in text
    assert "<b>tw</b>" not in text


def test_the_page_of_a_verified_and_of_a_stale_record() -> None:
    verified = page(verified=stamped())
    assert (
        '<p class="ut-standing ut-standing-verified"><b>Verified 2026-04-02 by rk at: 2016 &lt;b&gt;</b></p>'
        in verified
    )
    stale = page(verified=stamped(), duties={"clock": {"kept_by": "none"}})
    assert '<b>Verification is stale: 1 fact changed</b> <a href="#standing">what changed</a>' in stale
    assert "<li>Duties of the factory unit, clock: changed</li>" in stale
    settled = page(conflicts={"c": {**DEPTH, "settled_by": "e1"}})
    assert "Settled: Door &lt;speakers&gt;: clear depth." in settled
    assert "CONFLICT" not in settled


def test_a_record_without_evidence_has_no_age() -> None:
    item, _ = record(evidence={})
    bare = replace(item, path=Path("records/vehicles/brindleway/otter-2014-2018.yaml"))
    assert facts.vehicle(bare, DAY)["age"] == {"words": "", "on": ""}


SEEN = {
    "vehicle": {"drive_side": ["left", "right"], "bodies": ["van", "minibus"]},
    "variants": {
        "radio": {"ask": "Which?", "choices": {"plain": {"label": "Plain <radio>"}, "map": {"label": "Map radio"}}}
    },
    "evidence": {
        "e1": {"how": "seen", "on": "2026-03-09", "by": "rk", "car": "2016, right-hand drive, map radio"},
        "e2": {"how": "seen", "on": "2026-03-09", "by": "rk", "car": {"year": "2016", "built": "2015-11", "side": "left", "is": {"radio": "plain"}, "note": "Blue"}},
    },
}  # fmt: skip


def test_the_car_of_evidence_is_shown_alike_whichever_way_it_is_written() -> None:
    item, about = record(**SEEN)
    line, fields = (evidence.piece(about, piece, DAY) for piece in about.evidence.values())
    assert say(line.car) == "2016, right-hand drive, map radio"
    assert line.seen == Seen(2016, "", "right", {"drive-side": "right", "radio": "map"})
    assert say(fields.car) == "2016, built 2015-11, left-hand drive, Plain <radio>, Blue"
    assert fields.seen.is_ == {"drive-side": "left", "radio": "plain"}
    body = all_pages(facts.vehicle(item, DAY))
    assert "2016, built 2015-11, left-hand drive, Plain &lt;radio&gt;, Blue" in body


def test_the_car_of_a_stamp_is_shown_in_words() -> None:
    stamp = {**stamped(), "car": {"year": "2016", "side": "left"}}
    assert standing(verified=stamp)["car"] == "2016, left-hand drive"
    assert "2016, left-hand drive" in standing(verified=stamp)["text"]


@pytest.mark.parametrize("path", VEHICLES, ids=stem)
def test_what_names_evidence_is_all_that_the_schema_calls_a_source(path: Path) -> None:
    """Oracle: every field of a record, with what the schema says of it."""
    data = PLACE.load(path).source.data
    fields = [field for field in walk(data, "vehicle") if field.node.home == ("common", ("$defs", "source"))]
    named = {name for field in fields if field.pointer[0] != "conflicts" for name in (field.value if isinstance(field.value, list) else [field.value])}  # fmt: skip
    assert set(founded.named(data)) == named
    assert {field.pointer[-1] for field in fields} <= {"source"}


def test_parts_that_were_verified_are_named_with_their_cars() -> None:
    whole = stamped()
    fresh = {**whole, "of": ["front-door"], "side": "left"}
    stale = {**fresh, "facts": {**whole["facts"], "openings/front-door": "00000000"}}
    found = standing(verified_parts={"a": fresh, "b": stale})
    assert (found["word"], found["text"]) == ("unverified", "Not verified")
    assert [(part["id"], part["word"], part["text"]) for part in found["parts"]] == [
        ("a", "verified", "Door <speakers>, on the left: verified 2026-04-02 by rk at: 2016 <b>"),
        ("b", "stale", "Door <speakers>, on the left: no longer as verified 2026-04-02 by rk at: 2016 <b>"),
    ]
    assert [[edit["block"] for edit in part["edited"]] for part in found["parts"]] == [[], ["openings/front-door"]]
