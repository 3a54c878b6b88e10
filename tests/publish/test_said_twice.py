"""What is worked out of a record is worked out once, and said in each language as if it had been worked out in it."""

from datetime import date
from pathlib import Path

import marked
import pytest

from undertrim.publish.facts.vehicle import in_each
from undertrim.words import ENGLISH, speaking

DAY = date(2026, 11, 25)
VEHICLES = sorted(path for path, entry in marked.records().items() if entry.kind == "vehicle")


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_the_facts_of_a_vehicle(path: Path) -> None:
    entry, other = marked.records()[path], marked.language()
    both = in_each(entry, DAY, None, [ENGLISH, other])
    for speech in (ENGLISH, other):
        with speaking(speech):
            assert in_each(entry, DAY, None, [speech]) == {speech.tag: both[speech.tag]}
    assert both["en"] != both["qq"]
