"""A pull request is judged by the comment alone: what it says of five kinds of change, in a repository of its own, and what it does to nobody."""

import json
import re
import shutil
import subprocess
from collections.abc import Iterator
from html import unescape
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from undertrim import cli
from undertrim.check import reaching
from undertrim.publish.terminal.review import review_markdown
from undertrim.publish.web.policy import digest

# Long because one repository is made for all of it: to make it takes longer than most of these tests.
ROOT = Path(__file__).parent.parent.parent
FINCH = "vehicles/kelbrook/finch-2014-2018.yaml"
SEDGE = "vehicles/harrowby/sedge-2016-2021.yaml"
PIER = "gear/speakers/skerrowe-pier-65.yaml"
SCHEMA = Draft202012Validator(json.loads((ROOT / "schema" / "review.schema.json").read_text(encoding="utf-8")))
IN_GIT = ("-c", "user.name=rk", "-c", "user.email=rk@localhost", "-c", "commit.gpgsign=false")


def git(root: Path, *words: str) -> str:
    return subprocess.run(["git", *IN_GIT, "-C", str(root), *words], check=True, capture_output=True, text=True).stdout


def edit(root: Path, name: str, *changes: tuple[str, str]) -> None:
    path = root / "records" / name
    text = path.read_text(encoding="utf-8")
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    path.write_text(text, encoding="utf-8")


@pytest.fixture(scope="module")
def before(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A repository with some of the shipped records, all committed."""
    root = tmp_path_factory.mktemp("before") / "shop"
    for folder in ("gear/leads", "gear/spacers", "vehicles/kelbrook", "vehicles/harrowby", "vehicles/tolverne"):
        shutil.copytree(ROOT / "records" / folder, root / "records" / folder)
    for name in (PIER, "gear/speakers/sandmartin-bluff-67.yaml", "gear/harnesses/skerrowe-h-f14.yaml"):
        (root / "records" / name).parent.mkdir(exist_ok=True)
        shutil.copy(ROOT / "records" / name, root / "records" / name)
    (root / "records" / "handbook").mkdir()
    git(root, "init", "--quiet", "--initial-branch=main")
    git(root, "add", "--all")
    git(root, "commit", "--quiet", "--message=base")
    return root


@pytest.fixture
def shop(before: Path, tmp_path: Path) -> Iterator[Path]:
    """A copy of it to change, whose index and working tree stay what they were made."""
    root = tmp_path / "shop"
    shutil.copytree(before, root)
    yield root
    assert git(root, "diff", "--cached", "--name-only") == ""
    assert git(root, "stash", "list") == ""


def review(root: Path, capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str]:
    code = cli.main(["review", *words, "--in", str(root)])
    return code, capsys.readouterr().out


def data(root: Path, capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    """The review as data, by its schema."""
    found: dict[str, Any] = json.loads(review(root, capsys, "main", "--format", "json")[1])
    SCHEMA.validate(found)
    return found


SAID = (
    "- Front door speakers: clear depth: 64 mm → 58 mm (same source, e2: measured 2026-03-09 by tw",
    "- Top vent trim: name: Upper vent trim → Top vent trim (same source, e1: measured 2026-03-02 by rk)",
    "- Main radio plug, 5: pins, colour: blue → violet/red",
    "- new step: Take off: Mirror corner cover, left, after: Take off: Lower centre trim",
    "- 4 steps more, 4 min longer",
    "- antenna feed: radio-main/5 blue with lead antenna through Skerrowe H-F14: joined → radio-main/5 violet/red",
    "- Skerrowe Pier 65 at Front door speakers: fits with parts (",
    "- Skerrowe Pier 65: mounting depth: 62 mm → 47 mm",
)
"""What a comment says of a depth, a part, a pin, a new prerequisite and gear that are others."""


def test_five_kinds_of_change_are_judged_from_the_comment_alone(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(
        shop,
        FINCH,
        ("depth: {clear: 64 mm, datum: skin", "depth: {clear: 58 mm, datum: skin"),  # a depth
        ("radio-surround:\n        after: lower-trim", "radio-surround:\n        after: [lower-trim, mirror-corner]"),
        ("name: Upper vent trim", "name: Top vent trim"),  # a part
        ("5: {colour: blue, function: antenna-feed", "5: {colour: violet/red, function: antenna-feed"),  # a pin
    )
    edit(shop, PIER, ("depth: 62 mm", "depth: 47 mm"))  # gear
    code, comment = review(shop, capsys, "main", "--format", "markdown")
    assert code == 0
    said = comment.replace("\\", "")
    assert "No safety fact is weaker with the same source" in said
    for line in SAID:
        assert line.lower() in said.lower(), line
    turned = re.findall(r"^- (?:.*CARE)?\W*(.*?) at (.*?): ", said.partition("#### What fits")[2], flags=re.MULTILINE)
    front = "Front door speakers"
    assert turned == [("Skerrowe Pier 65", front), ("Sandmartin Bluff 67", front)]  # the others keep their verdicts
    assert "Tolverne" not in said  # its verdicts stay what they were


def test_the_page_has_before_and_now_beside_each_other_with_pictures_and_loads_nothing(
    shop: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    places = "held_by: {clip: push, at: {top: 2, left: 2, right: 2}}"
    edit(
        shop,
        FINCH,
        (places, places.replace("left: 2", "left: 3")),
        ("5: {colour: blue, function: antenna-feed", "5: {colour: violet/red, function: antenna-feed"),
    )
    file = tmp_path / "review.html"
    assert review(shop, capsys, "main", "--format", "html", "--out", str(file)) == (0, "")
    page = file.read_text(encoding="utf-8")
    before, now = re.findall(r'aria-label="(Pin 5:[^"]*)"', page)
    assert ("blue" in before, "violet" in now) == (True, True)
    panels = re.findall(r"<svg[^>]*><title>[^<]*Upper vent trim[^<]*</title>.*?</svg>", page)
    assert len(set(panels)) == 2
    policy = re.search(r'Content-Security-Policy" content="([^"]*)"', page)
    style = re.search(r"<style>(.*?)</style>", page, re.DOTALL)
    assert policy
    assert style
    assert unescape(policy[1]).startswith(f"default-src 'none'; style-src '{digest(style[1])}'")
    assert not re.search(r"<script|<link|<img|\bsrc=|\bstyle=|href=", page)


def test_a_wait_that_is_cut_is_red_and_first_and_the_exit_code_says_so(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    edit(shop, SEDGE, ("restraint: {wait: 3 min", "restraint: {wait: 1 min"))
    edit(shop, FINCH, ("name: Upper vent trim", "name: Top vent trim"))
    code, comment = review(shop, capsys, "main", "--format", "markdown")
    assert (code, data(shop, capsys)["weaker"]) == (1, 1)
    first = next(line for line in comment.splitlines() if line.startswith("- "))
    assert first.startswith("- 🔴 **WEAKER** Harrowby Sedge: Restraint system: wait: 3 min → 1 min")
    assert comment.index("### Harrowby Sedge") < comment.index("### Kelbrook Finch")


def test_what_strangers_wrote_is_text_in_the_comment(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    name = "Trim <img src=x> @rk #12 [a](http://b.c) **d** `e` www.f.g & GH-3 org/repo#4"
    edit(shop, FINCH, ("name: Upper vent trim", f'name: "{name}"'))
    _, comment = review(shop, capsys, "main", "--format", "markdown")
    (line,) = [line for line in comment.splitlines() if "name: Upper" in line]
    for risky in ("<img", "@rk", "#12", "[a](", "http://", "**d**", "`e`", "www.f", " & ", "GH-3", "repo#4"):
        assert risky not in line
    assert "&lt;img src=x&gt; @\N{ZERO WIDTH SPACE}rk" in line
    _, page = review(shop, capsys, "main", "--format", "html")
    assert "<img" not in page
    assert "Trim &lt;img src=x&gt; @rk" in page


def test_a_long_comment_is_cut_at_the_end_of_a_line_and_says_what_is_left_out(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    edit(
        shop, FINCH, ("clear: 64 mm, datum: skin", "clear: 58 mm, datum: skin"), ("name: Main radio plug", "name: Plug")
    )
    found = data(shop, capsys)
    whole = review_markdown(found)
    cut = review_markdown(found, most=1_000)
    assert all(len(review_markdown(found, most)) <= most for most in range(600, len(whole), 10))
    kept = cut.splitlines()
    assert kept[:-2] == whole.splitlines()[: len(kept) - 2]
    left = whole.count("\n- ") - cut.count("\n- ")
    assert left > 1
    assert kept[-1].startswith(f"**{left} more lines are left out")


def test_a_record_under_another_name_is_the_same_record(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = shop / "records" / FINCH
    path.rename(path.with_name("finch-2014-2019.yaml"))
    edit(shop, FINCH.replace("2018.yaml", "2019.yaml"), ("to: 2018-09", "to: 2019-09"))
    _, text = review(shop, capsys, "HEAD")
    assert "Kelbrook Finch (kelbrook/finch-2014-2019)" in text
    assert "was kelbrook/finch-2014-2018" in text
    assert "is new" not in text


def test_a_photograph_that_is_another_is_named(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = shop / "records/vehicles/kelbrook/photos/finch-2014-2018"
    shutil.copy(folder / "main-plug.png", folder / "map-key.png")
    assert [one["photos"] for one in data(shop, capsys)["vehicles"]] == [["map-key.png"]]


def test_a_vehicle_that_is_new_or_gone_or_broken_is_said_in_short_and_the_rest_goes_on(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (shop / "records" / "vehicles/harrowby/sedge-2011-2016.yaml").unlink()
    (shop / "records" / SEDGE).write_text("parts: [", encoding="utf-8")
    shutil.copytree(ROOT / "records/vehicles/ashgrove", shop / "records/vehicles/ashgrove")
    edit(shop, FINCH, ("name: Upper vent trim", "name: Top vent trim"))
    assert [one["sort"] for one in data(shop, capsys)["shorts"]] == ["added", "gone", "changed"]
    _, text = review(shop, capsys, "main")
    assert "Harrowby Sedge (harrowby/sedge-2011-2016) is gone" in text
    assert "harrowby/sedge-2016-2021: the record cannot be read as it is now" in text
    assert "Ashgrove Drover (ashgrove/drover-2015-2020) is new: " in text
    assert "Top vent trim: name: Upper vent trim → Top vent trim" in text


def test_a_folder_stands_for_how_it_was_too(before: Path, shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(shop, FINCH, ("name: Upper vent trim", "name: Top vent trim"))
    ours, theirs = (review(shop, capsys, base)[1].partition("\n\n")[2] for base in ("main", str(before)))
    assert ours == theirs != ""


def test_a_record_that_takes_from_a_changed_one_changes_too(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    taker = "vehicles/wexcombe/dabchick-2015-2018.yaml"
    (shop / "records" / taker).parent.mkdir()
    shutil.copy(ROOT / "records" / taker, shop / "records" / taker)
    git(shop, "add", "--all")
    git(shop, "commit", "--quiet", "--message=taker")
    edit(shop, FINCH, ("circuit: restraint, then: leave", "circuit: ordinary, then: leave"))
    found = {one["vehicle"]: one for one in data(shop, capsys)["vehicles"]}
    (line,) = [one for one in found["wexcombe/dabchick-2015-2018"]["look"] if one["weight"] == "weaker"]
    assert line["about"] == "parts/vent-trim/tethers/passenger-lamp/circuit"
    assert line["source"] == "taken from kelbrook/finch-2014-2018"


def test_three_dots_are_where_the_branch_left(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    git(shop, "checkout", "--quiet", "-b", "mine")
    edit(shop, FINCH, ("name: Upper vent trim", "name: Top vent trim"))
    git(shop, "commit", "--quiet", "--all", "--message=mine")
    git(shop, "checkout", "--quiet", "main")
    edit(shop, SEDGE, ("restraint: {wait: 3 min", "restraint: {wait: 5 min"))
    git(shop, "commit", "--quiet", "--all", "--message=theirs")
    git(shop, "checkout", "--quiet", "mine")
    assert "Sedge" not in review(shop, capsys, "main...")[1]
    assert "5 min → 3 min" in review(shop, capsys, "main")[1]


def test_nothing_is_said_where_nothing_changed(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(shop, FINCH, ("radio-surround:\n", "radio-surround: # the frame\n"))
    assert review(shop, capsys, "main") == (
        0,
        "What changes for the tech since main\n  Nothing changes for the tech.\n",
    )


@pytest.mark.parametrize("base", ["nowhere", "--output=x", "HEAD:records", ""])
def test_what_is_no_base_is_told(shop: Path, capsys: pytest.CaptureFixture[str], base: str) -> None:
    assert cli.main(["review", "--in", str(shop), "--", base]) == 2
    assert "is neither a revision" in capsys.readouterr().err


def test_what_gear_turns_is_the_same_whoever_looks(
    shop: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    edit(shop, PIER, ("depth: 62 mm", "depth: 47 mm"))
    ours = review(shop, capsys, "main")
    monkeypatch.setattr(reaching, "TOGETHER", 2)  # so few are a whole round for workers
    assert review(shop, capsys, "main") == ours
    assert "Kelbrook Finch (kelbrook/finch-2014-2018)\n  What fits\n    Skerrowe Pier 65 at Front door" in ours[1]
    assert "Harrowby" not in ours[1]
