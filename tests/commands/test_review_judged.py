"""A second made-up pull request is judged from the comment alone: what is dropped or denied is on top, what only looks like a change is not there."""

import re
import shutil
from pathlib import Path

import pytest

from undertrim import cli

ROOT = Path(__file__).parent.parent.parent
PLOVER = "vehicles/wexcombe/plover-2017-2022.yaml"
DROVER = "vehicles/ashgrove/drover-2015-2020.yaml"
SEDGE = "vehicles/harrowby/sedge-2016-2021.yaml"
BEFORE = "vehicles/harrowby/sedge-2011-2016.yaml"
EBB = "gear/speakers/tidewrack-ebb-52.yaml"
AMPLIFIED = "      amplified: [Amplifier behind the seat, "

CHANGES: dict[str, list[tuple[str, str]]] = {
    PLOVER: [
        (r"restraint: \{wait: 3 min", "restraint: {wait: 2 min"),  # a wait that is cut
        (r"crash_sensor: yes\n    install_how: Lay", "crash_sensor: no\n    install_how: Lay"),  # a sensor that is denied
        (r"restraints: Crash pressure sensor in each front door", "restraints: none"),
        (r"  hazard-switch: \{kept", "  navigation: {kept_by: none, note: The maps are lost., source: e3}\n  hazard-switch: {kept"),
        (r"\n  rear-door:\n    name: Rear door speakers(.|\n)*?\nconnectors:", "\n\nconnectors:"),  # an opening that is gone
    ],
    DROVER: [
        (r"        cautions:\n          signal: WARNING\n          hazard: The curtain airbag(.|\n)*?(?=      rear-speaker:)", ""),
        (AMPLIFIED.replace("[", r"\["), f"      tray: [Amplifier under the tray, A round badge on the door grilles]\n{AMPLIFIED}"),
        ("clear: 198 mm", "clear: 19.8 cm"),  # the same in another unit
    ],
    SEDGE: [(r"variants:\n  sound:", "variants:\n  # asked first\n  sound:")],  # a comment
    BEFORE: [(r"(  e1: .*\n)(  e2: .*\n)", r"\2\1")],  # another order
}  # fmt: skip

RED = (
    "Ashgrove Drover: Cab corner trim, no. 1: cautions: gone: The curtain airbag runs above the upper edge of this trim (same source, e1",
    "Wexcombe Plover: Front door speakers: crash pressure sensor: yes → no (same source, e2",
    "Wexcombe Plover: Areas, front door: restraints: Crash pressure sensor in each front door → none (same source, e4",
    "Wexcombe Plover: Restraint system: wait: 3 min → 2 min (same source, e4",
)
SAID = (
    "- Rear door speakers: gone (said by e2: ",
    "- Duties of the factory unit, navigation: new (e3: seen 2026-04-20 by nf)",
    "- now in the way: Navigation. The maps are lost.",
    "- Variants, sound, tray: choices: new (same source, e3: ",
    "- 4 steps, the first 'Take off: Cab corner trim, left', the last 'Refit: Cab corner trim, left': caution: gone: WARNING: The curtain airbag",
    "'2 min' stands here while the conflict 'restraint-wait' is open",
)


@pytest.fixture(scope="module")
def sides(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """The collection before and now."""
    was, now = (tmp_path_factory.mktemp("judged") / name for name in ("was", "now"))
    for root in (was, now):
        for name in (*CHANGES, EBB):
            (root / "records" / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(ROOT / "records" / name, root / "records" / name)
        for path in (ROOT / "records/vehicles").glob("*/photos"):
            shutil.copytree(path, root / "records/vehicles" / path.parent.name / "photos", dirs_exist_ok=True)
    for name, changes in CHANGES.items():
        text = (now / "records" / name).read_text(encoding="utf-8")
        for old, new in changes:
            text, count = re.subn(old, new, text)
            assert count == 1, old
        (now / "records" / name).write_text(text, encoding="utf-8")
    return was, now


@pytest.fixture(scope="module")
def comment(sides: tuple[Path, Path]) -> str:
    """The comment, without the backslashes of Markdown."""
    was, now = sides
    out = now / "comment.md"
    assert cli.main(["review", str(was), "--in", str(now), "--format", "markdown", "--out", str(out)]) == 1
    return out.read_text(encoding="utf-8").replace("\\", "")


def test_what_is_dropped_or_denied_is_red_and_on_top(comment: str) -> None:
    assert "4 safety facts are weaker with the same source; 0 other changes want care. Reaches 2 vehicles." in comment
    top = comment.partition("### Look at this first")[2].partition("### ")[0]
    lines = [line.partition("**WEAKER** ")[2] for line in top.strip().splitlines()]
    assert len(lines) == len(RED)
    assert all(line.startswith(red) for line, red in zip(lines, RED, strict=True))


@pytest.mark.parametrize("said", SAID)
def test_each_change_is_there(comment: str, said: str) -> None:
    assert said in comment


def test_what_only_looks_like_a_change_is_not_there(comment: str) -> None:
    assert "Sedge" not in comment
    assert "19.8" not in comment
    assert not re.search(r"step gone|new step|moved:", comment)  # a choice more is compared with the cars most like it


def test_what_is_said_of_many_steps_alike_is_said_once(comment: str) -> None:
    visit = comment.partition("Visit: Front door speakers")[2].partition("#### ")[0]
    assert visit.count("\n- ") == 2
    assert len(comment) < 6_000


def test_a_row_of_the_page_says_whether_a_thing_is_new_or_gone(sides: tuple[Path, Path]) -> None:
    was, now = sides
    out = now / "review.html"
    assert cli.main(["review", str(was), "--in", str(now), "--format", "html", "--out", str(out)]) == 1
    rows = re.findall(
        r'class="what">([^<]*).*?</th><td[^>]*>([^<]*)</td><td[^>]*>([^<]*)', out.read_text(encoding="utf-8")
    )
    assert ("Rear door speakers", "", "gone") in rows
    assert ("Duties of the factory unit, navigation", "", "new") in rows
    assert all(before or after for _, before, after in rows)
