"""The page of gear shows who says so, what is in dispute, and where it was tried."""

import json
from html import unescape
from pathlib import Path

from undertrim.derive.fit.stock import stocked
from undertrim.publish.web.gear_pages import body
from undertrim.record.gear import GearRecord
from undertrim.record.store import Workspace

GEAR = Path("records/gear/speakers/sandmartin-sprit-65.yaml")


def test_its_page_shows_evidence_disputes_and_trials_and_has_its_facts_at_addresses() -> None:
    entry = Workspace(Path.cwd()).load(GEAR.absolute())
    assert isinstance(entry.record, GearRecord)
    item = stocked(entry.id, entry.record)
    page = body(item, {"kelbrook/finch-2014-2018": "Kelbrook Finch"}, {})
    shown = unescape(page)
    assert "<dt>Source</dt><dd>e1</dd>" in shown
    assert "e1: maker, rk, 2026-02-10, Sheet in the box" in shown
    assert "e3: measured, tw, 2026-03-05, Calliper 0.05 mm" in shown
    assert "Mounting depth is in dispute: 47 mm (e1) or 48 mm (e3). Reckoned with 48 mm" in shown
    assert "<dt>Mounting depth</dt><dd>47 mm" in shown
    assert (
        "Kelbrook Finch, front-door</a>: it went in (rk, 2026-03-02, 2016, left-hand drive, On a plate 6 mm high)"
        in shown
    )
    facts = json.loads(page.partition('id="ut-gear-facts">')[2].partition("</script>")[0])
    (thing,) = facts["things"]
    named = {f"{thing['about']}/{keys}": (facts["labels"][label], value) for keys, label, value in thing["facts"]}
    assert facts["gear"] == "sandmartin-sprit-65"
    assert named["gear/depth"] == ("Mounting depth", "47 mm")
    assert named["gear/basket/diameter"] == ("Basket, Diameter", "133 mm")
    assert not [name for name in named if "tried" in name or "source" in name]
    assert item.facts.depth.text == "48 mm"  # type: ignore[union-attr] # the cautious one
