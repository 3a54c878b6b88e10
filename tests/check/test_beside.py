"""Checking some files is never greener than checking all: what a change in one of them breaks elsewhere is told."""

from pathlib import Path

import pytest
from rule_pages import BASE

from here import Here
from undertrim.check import runner
from undertrim.check.cache import Cache
from undertrim.check.register import COLLECTION_RULES
from undertrim.record.source import read
from undertrim.record.store import Workspace

ROOT = Path(__file__).parents[2]
OTTER = "vehicles/brindleway/otter-2014-2018.yaml"
LATE = "vehicles/brindleway/otter-2018-2020.yaml"
WREN = "vehicles/brindleway/wren-2014-2018.yaml"
KIT = "gear/kits/sandmartin-dk-o14.yaml"
LEADS = "gear/leads/skerrowe-ls.yaml"
RECEIVER = "gear/receivers/skerrowe-cairn-1.yaml"

SPAN = "{from: 2014-01, to: 2018-01}"
KIT_TEXT = """format: 1
demo: yes
gear:
  kind: kit
  maker: Sandmartin
  model: DK-O14
  opening: {width: 182 mm, height: 104 mm}
  suits: [{vehicle: brindleway/otter-2014-2018, opening: dash}]
  assembly: [{do: Slide the radio in., part: radio}]
"""
RECEIVER_TEXT = """format: 1
demo: yes
gear:
  kind: receiver
  maker: Skerrowe
  model: Cairn 1
  body: {width: 180 mm, height: 50 mm}
  chassis_depth: 100 mm
  outputs: [speaker]
  needs: [ground]
  lead_set: skerrowe-ls
"""
LEADS_TEXT = """format: 1
demo: yes
gear:
  kind: leads
  maker: Skerrowe
  model: LS
  leads: {earth: {function: ground, colour: black}}
"""


def car(model: str, span: str, year: str, more: str = "") -> str:
    text = BASE.replace("Otter", model).replace(SPAN, f"{span}{more}").replace('car: "2016"', f'car: "{year}"')
    return text.replace("by: rk", f"by: {model.lower()[:2]}")


LATER = car("Otter", "{from: 2018-01, to: 2020-01}", "2019", "\n  follows: otter-2014-2018").replace("3 min", "4 min")
SHELF = {
    OTTER: BASE,
    LATE: LATER,
    WREN: car("Wren", SPAN, "2015"),
    KIT: KIT_TEXT,
    LEADS: LEADS_TEXT,
    RECEIVER: RECEIVER_TEXT,
}


@pytest.fixture
def place(tmp_path: Path) -> Workspace:
    for name, text in SHELF.items():
        (tmp_path / "records" / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "records" / name).write_text(text, encoding="utf-8")
    return Workspace(tmp_path)


def say(place: Workspace, *names: str) -> list[tuple[str, str]]:
    """What a check of some files says (of all, without names): the file and the message."""
    report = runner.check(place, [place.records / name for name in names], None, Cache(place), Here())
    return [(problem.file.stem, problem.message) for problem in report.problems]


def change(place: Workspace, name: str, old: str, new: str) -> None:
    path = place.records / name
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def test_the_shelf_is_good(place: Workspace) -> None:
    assert say(place) == []
    assert all(say(place, name) == [] for name in SHELF)


COPIED = 'e1: {how: measured, on: 2026-03-02, by: wr, car: "2015", with: Calliper 0.05 mm}'
OWN = 'e1: {how: measured, on: 2026-03-02, by: rk, car: "2016", with: Calliper 0.05 mm}'

CHANGES = {
    "a part that a kit names is renamed": (OTTER, "radio", "head-unit", {"sandmartin-dk-o14"}),
    "an opening that a kit suits is renamed": (OTTER, "  dash:", "  main-dash:", {"sandmartin-dk-o14"}),
    "a lead set becomes something else": (LEADS, "kind: leads", "kind: lead", {"skerrowe-ls"}),
    "the record that another follows ends earlier": (OTTER, "to: 2018-01", "to: 2017-06", {"otter-2018-2020"}),
    "a record runs into the next": (OTTER, "to: 2018-01", "to: 2018-06", {"otter-2014-2018", "otter-2018-2020"}),
    "a boundary is declared in a record": (
        OTTER,
        "  high_voltage",
        "  boundaries: [2019-01]\n  high_voltage",
        {"otter-2018-2020"},
    ),
    "a look is copied from another record": (WREN, COPIED, OWN, {"otter-2014-2018", "wren-2014-2018"}),
}


@pytest.mark.parametrize("what", CHANGES)
def test_what_a_change_breaks_elsewhere_is_told(place: Workspace, what: str) -> None:
    name, old, new, files = CHANGES[what]
    change(place, name, old, new)
    found = say(place, name)
    assert {stem for stem, _ in found} >= files
    assert found == say(place)


@pytest.mark.parametrize("gone", [OTTER, LEADS])
def test_what_a_missing_file_breaks_is_told_whatever_is_checked(place: Workspace, gone: str) -> None:
    """The commit that takes a file away may change another one that has nothing to do with it."""
    (place.records / gone).unlink()
    found = say(place)
    assert found
    assert say(place, WREN) == found


@pytest.mark.parametrize(("name", "new"), [(OTTER, "otter-2014-2019"), (LEADS, "skerrowe-lt")])
def test_what_a_new_name_breaks_is_told(place: Workspace, name: str, new: str) -> None:
    path = place.records / name
    path.rename(path.with_stem(new))
    found = say(place)
    assert len({stem for stem, _ in found}) > 1
    assert say(place, str(Path(name).with_stem(new))) == found


def test_what_rests_on_two_other_records_is_not_told(place: Workspace) -> None:
    change(place, OTTER, "to: 2018-01", "to: 2018-06")
    assert say(place, WREN) == []
    assert say(place, LATE) == say(place)


def test_what_an_allow_elsewhere_hides_stays_hidden(place: Workspace) -> None:
    change(place, LATE, "  built:", "  # allow overlapping-records: two plants\n  built:")
    change(place, LATE, "  follows: otter-2014-2018\n", "")
    change(place, OTTER, "to: 2018-01", "to: 2018-06")
    assert {stem for stem, _ in say(place, OTTER)} == {"otter-2014-2018"}
    change(place, OTTER, "to: 2018-06", "to: 2018-01")
    assert say(place, OTTER) == [("otter-2018-2020", "this allow of 'overlapping-records' hides nothing")]


def test_what_is_wrong_in_another_file_by_itself_is_not_told(place: Workspace) -> None:
    change(place, WREN, "held_by: [{screw: T20, count: 4}]", "held_by: [{screw: T20}]  # allow overlapping-records")
    assert len(say(place, WREN)) == 2
    assert say(place, OTTER) == []


def test_a_rule_that_fails_is_told_whatever_is_checked(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(COLLECTION_RULES["gear-twice"], "check_all", lambda _: 1 / 0)
    assert len(say(place)) == 1
    assert say(place, WREN) == say(place)


def test_the_hook_looks_at_everything_also_where_files_only_go() -> None:
    hooks = read(ROOT / ".pre-commit-config.yaml").data["repos"][0]["hooks"]
    [ours] = [hook for hook in hooks if hook["id"] == "undertrim-check"]
    assert (ours["always_run"], ours["pass_filenames"]) == ("true", "false")
