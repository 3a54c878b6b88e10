"""Which jobs are replayed, and what is left to other rules."""

import pytest
from fragments import findings, messages, subject

from undertrim.check.rules import unsafe_procedure
from undertrim.derive.simulation import replay_in

BATTERY = "preps:\n  battery: {{name: Battery off, sets: {{battery: off}}{}, how: Do., restore: Undo.}}\n"
BOOT = "closures:\n  boot: {latch: electric, key: no}\n"
SPEAKER = "  {}: {{name: Door, kind: speaker, behind: [{}], hole: {{shape: round, diameter: 146 mm}}, depth: {{clear: 62 mm, datum: skin}}}}\n"


def test_a_good_record_passes() -> None:
    assert findings(unsafe_procedure, "demo: yes\n") == []


def test_a_fault_of_all_jobs_is_told_once() -> None:
    piece = (
        BOOT + BATTERY.format(", area: boot, needs: {ignition: off}") + "openings:\n" + SPEAKER.format("door", "radio")
    )
    [finding] = findings(unsafe_procedure, piece)
    assert finding.pointer == ("preps", "battery")
    assert finding.message.endswith(", for dash")


def test_a_fault_that_only_two_jobs_together_have_is_found() -> None:
    parts = "parts:\n  trim: {name: Trim, release: pull, needs: {ignition: on}}\n  radio: {name: R, release: slide, replaced: yes}\n"
    piece = BATTERY.format("") + parts + "openings:\n" + SPEAKER.format("door", "trim")
    [finding] = findings(unsafe_procedure, piece)
    assert finding.message.endswith("for door")


def test_what_is_reached_for_is_replayed_too() -> None:
    trim = "  trim: {name: Trim, release: pull, reached_for: camera cable, needs: {ignition: on}}\n"
    parts = "parts:\n" + trim + "  radio: {name: R, release: slide, replaced: yes}\n"
    alone, together = messages(unsafe_procedure, BATTERY.format("") + parts)
    assert alone.endswith(", for trim")
    assert together.endswith(", for dash + trim")


@pytest.mark.parametrize(
    "piece",
    [
        "parts:\n  radio: {name: R, release: slide, after: [radio], replaced: yes}\n",  # order-cycle
        "parts:\n  radio: {name: R, release: slide, needs: {parking-brake: off}, replaced: yes}\n",  # state-collision
        "parts:\n  radio: {name: R, release: slide, after: [liner], replaced: yes}\n  liner: {name: L, release: peel}\n",  # peel-without-seal
        "restraint: {fitted: no, wait: none}\nparts:\n  radio: {name: R, release: slide, replaced: yes, tethers:"
        " {bag: {name: Bag plug, kind: plug, circuit: restraint, then: to-gear}}}\n",  # wait-shorter-than-maker
    ],
)
def test_what_other_rules_say_is_left_to_them(piece: str) -> None:
    assert messages(unsafe_procedure, piece) == []


def test_a_fault_of_some_cars_names_them() -> None:
    variants = "variants:\n  radio: {ask: Which, choices: {plain: {label: P, tell: A}, map: {label: M, tell: B}}}\n"
    parts = "parts:\n  trim: {name: T, release: pull, needs: {ignition: on}, when: {radio: map}}\n  radio: {name: R, release: slide, after: [trim], replaced: yes}\n"
    [message] = messages(unsafe_procedure, variants + BATTERY.format("") + parts)
    assert message.endswith(", for dash where radio=map")


def test_a_battery_that_is_never_joined_again_is_told_at_its_preparation() -> None:
    piece = "preps:\n  battery: {name: Battery off, sets: {battery: off}, needs: {ignition: off}, how: Do.}\n"
    [finding] = findings(unsafe_procedure, piece)
    assert finding.pointer == ("preps", "battery")


def test_each_procedure_is_replayed_once(monkeypatch: pytest.MonkeyPatch) -> None:
    calls: list[int] = []

    def counted(*given: object) -> object:
        calls.append(1)
        return replay_in(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(unsafe_procedure, "replay_in", counted)
    about = subject("demo: yes\n")
    assert list(unsafe_procedure.check(about)) == []
    assert len(about.record.openings) == 1
    assert len(calls) == 1
