"""What gear and vehicles say when they meet is remembered for as long as neither says anything else of it, and is never another word than a fresh one."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import partial

import pytest
from test_beside import CHANGES, KIT, OTTER, RECEIVER, SHELF, WREN, change, place

from here import Here
from undertrim.check import runner
from undertrim.check.cache import Cache
from undertrim.check.findings import Card, Finding, Meeting, MeetingRule
from undertrim.check.register import COLLECTION_RULES
from undertrim.record.store import Workspace

__all__ = ["place"]

HARNESS = "gear/harnesses/skerrowe-h-o14.yaml"
HARNESS_TEXT = """format: 1
demo: yes
gear:
  kind: harness
  maker: Skerrowe
  model: H-O14
  suits: [{vehicle: brindleway/otter-2014-2018, opening: dash}]
  plugs: {radio-main: {1: {function: battery-feed, colour: yellow}}}
"""
PLUG = "connectors:\n  radio-main:\n    name: Radio plug\n    view: wires\n    rows: 2\n    columns: 4\n    pins:\n      1: {function: %s}\n"


@pytest.fixture
def shop(place: Workspace) -> Workspace:
    (place.records / HARNESS).parent.mkdir(parents=True)
    (place.records / HARNESS).write_text(HARNESS_TEXT, encoding="utf-8")
    path = place.records / OTTER
    path.write_text(path.read_text(encoding="utf-8") + PLUG % "battery-feed", encoding="utf-8")
    return place


def run(place: Workspace) -> runner.Report:
    """A check that remembers."""
    cache = Cache(place)
    report = runner.check(place, (), None, cache, Here())
    cache.save()
    return report


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Whose meetings are asked: the address of each card."""
    seen: list[str] = []

    def find(meeting: Meeting) -> Iterable[Finding]:
        seen.append(meeting.card.address)
        return meeting.find()

    def noted(rule: MeetingRule) -> None:
        plain = rule.meetings

        def meetings(cards: Sequence[Card]) -> Iterator[Meeting]:
            return (replace(meeting, find=partial(find, meeting)) for meeting in plain(cards))

        monkeypatch.setattr(rule, "meetings", meetings)

    for rule in COLLECTION_RULES.values():
        if isinstance(rule, MeetingRule):
            noted(rule)
    return seen


def test_nobody_is_asked_twice(shop: Workspace, asked: list[str]) -> None:
    run(shop)
    assert set(asked) >= {"harnesses/skerrowe-h-o14", "kits/sandmartin-dk-o14", "brindleway/wren-2014-2018"}
    asked.clear()
    run(shop)
    assert asked == []


@pytest.mark.parametrize(
    ("name", "old", "new"),
    [
        (WREN, "3 min", "4 min"),
        (OTTER, "clear: 170 mm", "clear: 171 mm"),
        (OTTER, "format: 1", "# A comment.\nformat: 1"),
    ],
)
def test_what_gear_does_not_meet_asks_nobody(shop: Workspace, asked: list[str], name: str, old: str, new: str) -> None:
    run(shop)
    asked.clear()
    change(shop, name, old, new)
    run(shop)
    assert asked == []


def test_a_vehicle_that_says_something_else_is_asked_with_all_that_meets_it(shop: Workspace, asked: list[str]) -> None:
    run(shop)
    asked.clear()
    change(shop, OTTER, "1: {function: battery-feed}", "1: {function: ground}")
    found = [problem.rule for problem in run(shop).problems]
    assert found == ["harness-mismatch"]
    assert set(asked) == {"brindleway/otter-2014-2018", "harnesses/skerrowe-h-o14", "kits/sandmartin-dk-o14"}


def test_gear_that_says_something_else_is_asked_with_its_own_vehicles(shop: Workspace, asked: list[str]) -> None:
    run(shop)
    asked.clear()
    change(shop, KIT, "part: radio", "part: frame")
    assert [problem.rule for problem in run(shop).problems] == ["gear-names-absent"]
    assert set(asked) == {"kits/sandmartin-dk-o14"}


def test_what_was_found_is_told_where_it_stands_now(shop: Workspace) -> None:
    change(shop, OTTER, "1: {function: battery-feed}", "1: {function: ground}")
    (before,) = run(shop).problems
    change(shop, HARNESS, "format: 1", "# A line more.\nformat: 1")
    (now,) = run(shop).problems
    assert now.position.line == before.position.line + 1
    assert (now.message, now.hint) == (before.message, before.hint)


@pytest.mark.parametrize("what", CHANGES)
def test_a_change_is_told_as_if_nothing_were_remembered(shop: Workspace, what: str) -> None:
    name, old, new, _ = CHANGES[what]
    run(shop)
    change(shop, name, old, new)
    assert run(shop) == runner.check(shop, crew=Here())
    change(shop, name, new, old)
    assert run(shop) == runner.check(shop, crew=Here())


@pytest.mark.parametrize("gone", SHELF)
def test_a_record_that_goes_is_told_as_if_nothing_were_remembered(shop: Workspace, gone: str) -> None:
    run(shop)
    (shop.records / gone).unlink()
    assert run(shop) == runner.check(shop, crew=Here())


def test_details_that_are_damaged_are_read_from_the_record(shop: Workspace) -> None:
    run(shop)
    for kept in Cache(shop).folder.glob("*"):
        kept.write_text("x")
    change(shop, RECEIVER, "needs: [ground]", "needs: [ground, reverse]")
    change(shop, HARNESS, "function: battery-feed", "function: ground")
    assert run(shop) == runner.check(shop, crew=Here())
