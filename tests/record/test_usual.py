"""What is usual for a kind of opening, as each room of a kind has it in its `usual.toml`."""

from copy import deepcopy
from typing import Any

import pytest

from undertrim.derive.fit import clearances
from undertrim.record.model import OPENINGS
from undertrim.record.model.kinds import usual
from undertrim.record.model.kinds.usual import Usual, UsualStep, usual_for
from undertrim.record.schema import load
from undertrim.record.units import parse
from undertrim.resources import table

STEP = {"name": "Try it", "text": "Try it."}
LEAST = {"label": "Thing", "needs": {}, "install": {"do": STEP}, "test": {"see": STEP}}


@pytest.mark.parametrize("kind", OPENINGS)
def test_what_is_usual_names_tools_states_and_purposes_that_there_are(kind: str) -> None:
    """By the kind, so that the name of what fails is the room to look into."""
    found = usual_for(kind)
    assert set(found.tools) <= set(table("tools"))
    states = load("vehicle")["$defs"]["states"]["properties"]
    for needs in (found.needs, *(step.states for step in found.test.values())):
        assert all(value in states[name]["enum"] for name, value in needs.items())
    assert {name for step in found.test.values() for name in step.uses} <= set(table("purposes")["purpose"])


@pytest.mark.parametrize("kind", OPENINGS)
def test_a_usual_clearance_is_a_length_within_what_is_usual(kind: str) -> None:
    for entry in usual_for(kind).clearances.values():
        low, size, high = (parse(text, "length").value for text in _around(entry))
        assert low <= size <= high


def _around(entry: usual.Clearance) -> tuple[str, str, str]:
    low, high = entry.spreads or (entry.size, entry.size)
    return low, entry.size, high


def test_a_test_may_use_nothing_of_the_car() -> None:
    assert usual.read("thing", LEAST).test["see"] == UsualStep("Try it", "Try it.")


@pytest.mark.parametrize(
    ("place", "said"),
    [
        (("test", "see", "use"), "extra fields found (use) @ it.test['see']"),
        (("clearances", "rear"), "required field missing @ it.clearances['rear'].size"),
    ],
)
def test_what_is_misspelt_names_the_file_and_the_place(place: tuple[str, ...], said: str) -> None:
    data: dict[str, Any] = deepcopy(LEAST)
    inner = data
    for name in place[:-1]:
        inner = inner.setdefault(name, {})
    inner[place[-1]] = {"label": "room"}
    with pytest.raises(ValueError, match=r"record/model/kinds/thing/usual\.toml: ") as raised:
        usual.read("thing", data)
    assert said in str(raised.value)


def test_no_two_kinds_have_one_name_for_a_clearance(monkeypatch: pytest.MonkeyPatch) -> None:
    """The forms of a page ask for a clearance by its name alone."""
    rooms = dict.fromkeys(OPENINGS, Usual("Thing", {}, {}, {}, clearances={"rear": usual.Clearance("room", "1 mm")}))
    monkeypatch.setattr(clearances, "usual_for", rooms.__getitem__)
    clearances._named.cache_clear()
    first, second, *_ = OPENINGS
    with pytest.raises(ValueError, match=f"clearance 'rear' stands both at '{first}' and at '{second}'"):
        clearances.clearances()
    clearances._named.cache_clear()


def test_a_clearance_that_no_kind_has_cannot_be_chosen() -> None:
    with pytest.raises(ValueError, match="no clearance is called 'reer'"):
        clearances.clearances(reer="2 mm")
