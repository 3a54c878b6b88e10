"""Every combination of a part's fate, a tether's circuit and its `then`."""

from itertools import product

import pytest
from fragments import findings

from undertrim.check.rules import restraint_undecided, tether_left_open

FATES = {"kept": "", "replaced": ", replaced: yes", "moved": ", goes_to: dash"}
CIRCUITS = ("ordinary", "restraint", "high-voltage")
THENS = ("", "leave", "rejoin", "to-gear", "park")

SOUND = {
    ("kept", "ordinary"): {"", "leave", "rejoin", "park"},
    ("replaced", "ordinary"): {"", "to-gear", "park"},
    ("moved", "ordinary"): {"", "rejoin", "park"},
    ("kept", "restraint"): {"", "leave", "rejoin"},
    ("replaced", "restraint"): {"", "to-gear"},
    ("moved", "restraint"): {"", "rejoin"},
    ("kept", "high-voltage"): {"leave"},
    ("replaced", "high-voltage"): set(),
    ("moved", "high-voltage"): set(),
}


@pytest.mark.parametrize(("fate", "circuit", "then"), list(product(FATES, CIRCUITS, THENS)))
def test_what_may_become_of_a_tether(fate: str, circuit: str, then: str) -> None:
    said = f", then: {then}" if then else ""
    piece = (
        f"parts:\n  bezel:\n    name: Bezel\n    release: pull\n    tethers:\n"
        f"      lead: {{name: Lead, kind: plug, circuit: {circuit}{said}}}\n"
        + "".join(f"    {field}\n" for field in FATES[fate].split(", ") if field)
    )
    found = findings(tether_left_open, piece)
    assert found == [] if then in SOUND[fate, circuit] else len(found) == 1
    undecided = findings(restraint_undecided, piece)
    assert bool(undecided) == (circuit == "restraint" and not then)
    if circuit == "high-voltage" and found:
        assert "work for trained persons" in found[0].message + found[0].hint
