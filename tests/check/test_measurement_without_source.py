"""Which values need a source, and where it may stand."""

import pytest
from rule_pages import Example, compose, say

from undertrim.check.rules import measurement_without_source

DOOR = "openings:\n  door:\n    name: Door\n    kind: speaker\n    behind: [radio]\n"
SIZES = "    hole: {shape: round, diameter: 146 mm}\n    depth: {clear: 64 mm, datum: skin}\n"


def said(piece: str) -> list[str]:
    example = Example({"brindleway/otter-2014-2018.yaml": compose(piece)}, ())
    return [
        text.removeprefix("warning: ").partition(" rest")[0] for _, _, text in say(example, measurement_without_source)
    ]


@pytest.mark.parametrize(
    ("piece", "names"),
    [
        (DOOR + SIZES, ["'hole' and 'depth' in 'door'"]),
        (DOOR + SIZES + "    source: e1\n", []),
        (DOOR + SIZES.replace("skin}", "skin, source: e1}"), ["'hole' in 'door'"]),
        (DOOR + SIZES + "    crash_sensor: unknown\n", ["'hole' and 'depth' in 'door'"]),
        (DOOR + SIZES + "    crash_sensor: yes\n", ["'hole', 'depth' and 'crash_sensor' in 'door'"]),
        (DOOR + SIZES.replace("64 mm", "unknown"), ["'hole' in 'door'"]),
        (DOOR + SIZES + "    nominal: 6.5 in\n    install_how: Leave 20 mm.\n", ["'hole' and 'depth' in 'door'"]),
        (DOOR + SIZES + "    bolts: {pattern: circle, count: 4, diameter: 160 mm}\n    impedance: 4 ohm\n",
         ["'hole', 'depth', 'bolts' and 'impedance' in 'door'"]),
        ("restraint: {wait: 2 min, memory_keeper: allowed}\n", ["'wait' in 'restraint'"]),
        ("restraint: {wait: 2 min, source: e1}\n", []),
        ("restraint: {wait: unknown}\n", []),
        ("restraint: {fitted: no, wait: none}\n", ["'wait' in 'restraint'"]),
    ],
)  # fmt: skip
def test_openings_and_restraint(piece: str, names: list[str]) -> None:
    assert said(piece) == names


PREP = "preps:\n  battery:\n    name: Battery off\n    sets: {battery: off}\n    how: Do it.\n"


@pytest.mark.parametrize(
    ("rest", "names"),
    [
        ("    wait: {time: 2 min, why: Unit}\n", ["'time' in 'battery'"]),
        ("    wait: {time: 2 min, why: Unit}\n    source: e1\n", []),
        ("    wait: {time: unknown, why: Unit}\n", []),
        ("    takes: 3 min\n", []),
        ("    held_by: [{nut: hex 10 mm, count: 1, torque: 6 N.m}]\n", ["'torque' in 'battery'"]),
        ("    held_by: [{nut: hex 10 mm, count: 1, torque: 6 N.m, source: e1}]\n", []),
        ("    held_by: [{nut: hex 10 mm, count: 1, torque: unknown, length: 8 mm}]\n", []),
        ("    held_by: [{nut: hex 10 mm, count: 1, torque: 6 N.m}]\n    source: [e1]\n", []),
    ],
)
def test_preparations(rest: str, names: list[str]) -> None:
    assert said(PREP + rest) == names


def test_each_fastener_is_a_block_of_its_own() -> None:
    held = "[{nut: hex 10 mm, count: 1, torque: 6 N.m, source: e1}, {bolt: T50, count: 1, torque: 6 N.m}]"
    assert said(f"{PREP}    held_by: {held}\n") == ["'torque' in 'battery'"]
