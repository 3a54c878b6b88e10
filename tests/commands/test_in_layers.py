"""A shop's own collection on a shared one: what it adds, whose a thing is, what it gives back; and that nothing is ever written below."""

# Long because the layers of one fixture serve all of it.

import hashlib
import json
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from claiming import ADDRESS, FILE, RECORD, SHARED, claims, lay, says
from undertrim import cli
from undertrim.check import layering
from undertrim.publish.build import beside
from undertrim.publish.facts import finding, vehicle
from undertrim.publish.web import pages
from undertrim.record.digests import Digests
from undertrim.record.layers import NotOwn
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import Level, Position, Problem
from undertrim.record.store import Workspace
from undertrim.words import language, message, speaking

THEIRS = Path("..") / "shared"
ADDITION = Path("records/additions") / f"{ADDRESS}.json"
NOTE = Path("records/notes") / f"{ADDRESS}.txt"
OWN = Path("records/vehicles/brindleway/heron-2014-2018.yaml")
GEAR = Path("records/gear/speakers/pebblerun-tern-60.yaml")
EXAMPLES = Path(cli.__file__).parent / "commands/collection/all"
HERON = RECORD.replace("model: Otter", "model: Heron").replace("by: rk", "by: lm").replace("by: tw", "by: lm")
DEPTH, HOLE = "openings/front-door/depth/clear", "openings/front-door/hole/diameter"


def bytes_of(folder: Path) -> str:
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return hashlib.sha256(b"".join(str(path).encode() + path.read_bytes() for path in files)).hexdigest()


@pytest.fixture(autouse=True)
def theirs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """The shared collection; whatever a test did in the shop, not a byte of it is another."""
    folder = tmp_path / "shared"
    lay(folder)
    shop = tmp_path / "shop"
    (shop / "records").mkdir(parents=True)
    (shop / "undertrim.toml").write_text('collections = ["../shared"]\n', encoding="utf-8")
    monkeypatch.chdir(shop)
    before = bytes_of(folder)
    yield folder
    assert bytes_of(folder) == before


def here() -> Workspace:
    return Workspace.holding(Path.cwd(), layering.layered)


def said(capsys: pytest.CaptureFixture[str], *words: object, code: int = 0) -> str:
    found = cli.main(list(map(str, words)))
    printed = capsys.readouterr()
    assert found == code, printed.out + printed.err
    return printed.out + printed.err


def put(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


def add(*answers: dict[str, Any], **shared: Any) -> None:
    put(ADDITION, json.dumps({**SHARED, **shared, "answers": list(answers)}, indent=1))


def record() -> VehicleRecord:
    found = here().load(THEIRS.resolve() / FILE).record
    assert isinstance(found, VehicleRecord)
    return found


def test_what_is_taken_about_a_shared_vehicle_is_added_to_it(capsys: pytest.CaptureFixture[str]) -> None:
    done = said(capsys, "take", claims(says(DEPTH, "62 mm", side="left"), says(HOLE, "144 mm")))
    assert "written down: 62 mm, which was unknown" in done
    assert "'146 mm' and the answer '144 mm': both stand in a conflict now" in done
    assert f"{ADDITION}: changed" in done
    assert len(json.loads(ADDITION.read_text(encoding="utf-8"))["answers"]) == 2
    found = record()
    assert set(found.conflicts) == {"front-door-hole-diameter"}
    assert found.whose.collection == "shared"
    assert found.whose.evidence == {"e3", "e4"}
    assert said(capsys, "check") == "1 record checked, no problems\n"
    assert "2 already so" in said(capsys, "take", claims(says(DEPTH, "62 mm", side="left"), says(HOLE, "144 mm")))
    assert "1 written down" in said(capsys, "take", claims(says("restraint/wait", "3 min", how="maker")))
    assert len(json.loads(ADDITION.read_text(encoding="utf-8"))["answers"]) == 3


def test_what_is_taken_about_shared_gear_is_added_to_it(theirs: Path, capsys: pytest.CaptureFixture[str]) -> None:
    put(theirs / GEAR, (EXAMPLES / GEAR).read_text(encoding="utf-8"))
    told = {"gear": "pebblerun-tern-60", "by": "zz", "on": "2026-11-20", "how": "measured", "with": "Calliper 0.05 mm"}
    file = Path("found.json")
    file.write_text(json.dumps({"claims": 1, **told, "answers": [says("gear/depth", "71 mm")]}), encoding="utf-8")
    said(capsys, "take", file)
    assert json.loads(Path("records/additions/speakers/pebblerun-tern-60.json").read_text(encoding="utf-8"))["gear"]
    found = here().load(theirs / GEAR).record
    assert found
    assert len(found.whose.evidence) == 1
    assert "speakers/pebblerun-tern-60/gear/depth: " in said(capsys, "give", "--out", "../gift")
    assert json.loads(Path("../gift/claims.json").read_text(encoding="utf-8"))["answers"][0]["gear"] == told["gear"]
    said(capsys, "check")
    (theirs / GEAR).unlink()


def test_what_is_refused_is_not_added(capsys: pytest.CaptureFixture[str]) -> None:
    assert "refused" in said(capsys, "take", claims(says("openings/roof/depth/clear", "62 mm")), code=1)
    assert not ADDITION.exists()


def test_additions_that_cannot_be_read_are_not_written_over(capsys: pytest.CaptureFixture[str]) -> None:
    add({"about": DEPTH})
    before = ADDITION.read_text(encoding="utf-8")
    assert "cannot be added to" in said(capsys, "take", claims(says(DEPTH, "62 mm")), code=2)
    assert ADDITION.read_text(encoding="utf-8") == before


def test_a_problem_points_to_what_somebody_typed() -> None:
    add(says(DEPTH, "62 mm"))
    place, path = here(), THEIRS.resolve() / FILE
    layered = place.layered(path)
    assert layered
    answered = ADDITION.read_text(encoding="utf-8").splitlines().index("  {") + 1
    typed, whole = RECORD.splitlines(), layered.text.splitlines()
    told = [Problem(path, Position(line, 3), Level.ERROR, "x", message("claims/unsaid")) for line in (1, *range(1, len(whole) + 1))]  # fmt: skip
    found = list(layering.at_origin(place, told))[1:]
    for line, problem in zip(whole, found, strict=True):
        if problem.file == path:
            assert typed[problem.position.line - 1] == line
        else:
            assert (problem.file, problem.position) == (ADDITION, Position(answered, 1)), line
    assert {line.strip() for line, one in zip(whole, found, strict=True) if one.file == ADDITION} >= {
        "depth: {clear: 62 mm, datum: skin, over: whole-travel}"
    }


WRITERS = [
    ("verify", "otter-2014-2018", "--by", "zz", "--car", "2016"),
    ("photo", "otter-2014-2018", "x.png"),
    ("format", THEIRS / FILE),
    ("check", "--mend", THEIRS / FILE),
]


@pytest.mark.parametrize("words", WRITERS, ids=lambda words: str(words[0]))
def test_whoever_would_write_below_is_told_where_to(
    words: tuple[object, ...], theirs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    slip = RECORD.replace("slide, 3 min", "slide, 3\u00a0min")
    text = {"format": f"{RECORD}\n\n\n", "check": slip}.get(str(words[0]), RECORD)
    before = (theirs / FILE).read_bytes()
    (theirs / FILE).write_text(text, encoding="utf-8")
    try:
        assert "and nothing is written there: 'undertrim take'" in said(capsys, *words, code=2)
        assert (theirs / FILE).read_text(encoding="utf-8") == text
    finally:
        (theirs / FILE).write_bytes(before)


def test_a_command_for_all_records_writes_those_of_the_shop_alone(
    theirs: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    put(OWN, HERON + "\n\n\n")
    assert f"{OWN}: laid out" in said(capsys, "format")
    with pytest.raises(NotOwn):
        here().write(theirs / FILE, "")


def test_what_the_shop_has_can_be_given_and_is_then_theirs(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    # Long because each step rests on what the one before it left.
    assert said(capsys, "give") == "nothing to give: the shared collections have all of it\n"
    said(capsys, "take", claims(says(DEPTH, "62 mm", side="left"), says(HOLE, "144 mm")))
    put(OWN, HERON)
    put(GEAR, (EXAMPLES / GEAR).read_text(encoding="utf-8"))
    put(NOTE, "Key in drawer 4.")
    listed = said(capsys, "give", "--out", "../gift")
    assert f"{ADDRESS}/{DEPTH}: written down: 62 mm" in listed
    assert "brindleway/heron-2014-2018: a vehicle that the shared collections do not have" in listed
    assert "speakers/pebblerun-tern-60: gear" in listed
    assert "drawer" not in "".join(path.read_text(encoding="utf-8") for path in Path("../gift").rglob("*.*"))
    assert "heron" not in said(capsys, "give", "otter-2014-2018")
    assert json.loads(said(capsys, "give", "--format", "json"))["records"] == [OWN.as_posix(), GEAR.as_posix()]
    assert "did you mean 'heron-2014-2018'" in said(capsys, "give", "herom-2014-2018", code=2)

    kept = tmp_path / "kept"
    shutil.copytree(THEIRS, kept)
    done = said(capsys, "take", "../gift", "--in", kept)
    assert "1 written down, 1 in conflict" in done
    assert (kept / OWN).is_file()
    again = said(capsys, "take", "../gift", "--in", kept)
    assert again.count("is there already") == 2
    assert "2 already so" in again

    Path("undertrim.toml").write_text('collections = ["../kept"]\n', encoding="utf-8")
    assert said(capsys, "give") == "nothing to give: the shared collections have all of it\n"
    idle = said(capsys, "check", code=1)
    assert f"warning: '{DEPTH}' adds nothing any more: already so: 62 mm (layer)" in idle
    assert f"{OWN}:1:1: warning: the shared collection 'kept' has this very record (layer)" in idle
    cleared = said(capsys, "give", "--clear")
    assert f"{ADDITION}: '{HOLE}' removed, they have it" in cleared
    assert not ADDITION.exists()
    assert not OWN.exists()
    assert said(capsys, "check") == "3 records checked, no problems\n"


def test_a_gift_is_checked_and_takes_the_place_of_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    gift = tmp_path / "gift"
    put(gift / FILE, RECORD.replace("high_voltage: no", "high_voltage: yes"))
    put(gift / "records/vehicles/brindleway/heron-2014-2018.yaml", HERON.replace("[182 mm", "[182 furlongs"))
    put(tmp_path / "kept" / FILE, RECORD)
    done = said(capsys, "take", gift, "--in", tmp_path / "kept", code=1)
    assert "is there already, and is not overwritten" in done
    assert "heron" in done
    assert "furlongs" in done
    assert [path.name for path in (tmp_path / "kept").rglob("*.yaml")] == [FILE.name]


def test_a_record_in_two_layers_is_one_too_many(capsys: pytest.CaptureFixture[str]) -> None:
    put(FILE, RECORD.replace("  front-door:\n    kind", "  # nothing more is said\n  front-door:\n    kind"))
    assert "has this very record (layer)" in said(capsys, "check", code=1)
    put(FILE, RECORD.replace("146 mm", "144 mm"))
    found = said(capsys, "check", code=1)
    assert f"{FILE}:1:1: error: the shared collection 'shared' has this vehicle too, and says something else" in found
    assert "1 record checked" in found


LOST = [
    (Path("records/additions/brindleway/oter-2014-2018.json"), "there is no vehicle 'brindleway/oter-2014-2018'"),
    (Path("records/additions/otter-2014-2018.json"), "this is not read as an addition"),
    (ADDITION, "this answer is about 'brindleway/heron-2014-2018'"),
    (Path("records/notes/brindleway/oter-2014-2018.txt"), "there is no vehicle 'brindleway/oter-2014-2018'"),
    (Path("records/notes/brindleway/otter-2014-2018.md"), "this is not read as a note"),
]


@pytest.mark.parametrize(("path", "words"), LOST)
def test_what_leads_nowhere_is_told(path: Path, words: str, capsys: pytest.CaptureFixture[str]) -> None:
    other = {"vehicle": "brindleway/heron-2014-2018"} if path == ADDITION else {}
    put(path, json.dumps({**SHARED, **other, "answers": [says(DEPTH, "62 mm")]}))
    found = said(capsys, "check", code=1)
    assert f"{path}:" in found
    assert f"error: {words}" in found


def test_an_addition_to_an_own_vehicle_belongs_into_it(capsys: pytest.CaptureFixture[str]) -> None:
    put(OWN, HERON)
    put(Path("records/additions/brindleway/heron-2014-2018.json"), json.dumps({**SHARED, "answers": []}))
    assert "error: this adds to a vehicle of your own (layer)" in said(capsys, "check", code=1)


def test_an_addition_that_fits_no_more_is_an_error_at_its_line(capsys: pytest.CaptureFixture[str]) -> None:
    add(says(HOLE, "144 mm"), says("openings/roof/depth/clear", "62 mm"))
    found = said(capsys, "check", code=1)
    assert f"{ADDITION}:19:3: error: 'openings/roof/depth/clear' cannot be added:" in found


SETTINGS = [
    ('name = "x"\ncollections = ["../nowhere"]\n', ":2:16: '../nowhere' leads to no folder"),
    ('collections = ["..", "../shared"]\n', ":1:16: '..' is no collection: there is no 'records' folder"),
    ('collections = ["package:undertrim_nowhere"]\n', ":1:16: 'package:undertrim_nowhere': no package"),
    ('collections = ["package:os.path"]\n', ":1:16: 'package:os.path': no package"),
    ('collections = ["."]\n', ":1:16: '.' leads back to where it began"),
    ("collections = [1]\n", ": 'collections' must be a list of texts"),
]


@pytest.mark.parametrize(("text", "words"), SETTINGS)
def test_a_collection_that_is_not_there_is_refused_with_its_place(
    text: str, words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    put(Path("undertrim.toml"), text)
    assert f"undertrim.toml{words}" in said(capsys, "check", code=2)


def test_layers_lie_on_layers_and_none_on_itself(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    middle = tmp_path / "middle"
    put(middle / "undertrim.toml", 'name = "District"\ncollections = ["../shared"]\n')
    put(middle / ADDITION, json.dumps({**SHARED, "by": "mm", "answers": [says(DEPTH, "62 mm")]}))
    put(Path("undertrim.toml"), 'collections = ["../middle", "../shared"]\n')
    add(says(DEPTH, "58 mm"))
    assert [one.name for one in here().shared] == ["shared", "District"]
    found = record()
    assert [found.evidence[name].by for name in sorted(found.whose.evidence)] == ["zz"]
    assert {one.says for one in found.conflicts["front-door-depth-clear"].claims} == {"62 mm", "58 mm"}
    said(capsys, "check")
    put(middle / "undertrim.toml", 'collections = ["../shop"]\n')
    assert "'../shop' leads back to where it began" in said(capsys, "check", code=2)


def test_pages_say_whose_a_thing_is(theirs: Path) -> None:
    add(says(DEPTH, "62 mm"))
    put(NOTE, "Key in drawer 4.\n\nAsk for <Ana>.\n")
    put(OWN, HERON)
    shared, own = here().load(theirs / FILE), here().load(Path.cwd() / OWN)
    for tag, words, mark in (
        ("en", "Shared: from &#39;shared&#39;, with 1 look of our own", "e3 (ours)"),
        ("es", "Compartido: de &#39;shared&#39;, con 1 fuente nuestra", "e3 (nuestra)"),
    ):
        with speaking(language(tag)):
            made = vehicle.vehicle(shared)
            bodies = pages.vehicle(made)
        assert all(words in body for body in bodies.values())
        assert f'<tr id="evidence-e3"><th scope="row">{mark}</th>' in bodies["record"]
        assert f'#evidence-e3">{mark}</a>' in bodies["openings"]
        assert '#evidence-e1">e1</a>' in bodies["openings"]
        assert "<p>Ask for &lt;Ana&gt;.</p>" in bodies["visit"]
        assert b"drawer" not in beside.data(made)[1]
    assert "Ours: we recorded this ourselves." in pages.vehicle(vehicle.vehicle(own))["visit"]
    marks = [
        finding.row(one.record, one.address).whose for one in (shared, own) if isinstance(one.record, VehicleRecord)
    ]
    assert marks == ["with additions of ours", "ours"]
    assert "ut-whose" not in pages.vehicle(vehicle.vehicle(Workspace(theirs).load(theirs / FILE)))["visit"]


def test_what_is_remembered_changes_with_what_is_added(theirs: Path) -> None:
    place, states = here(), []

    def note_state() -> None:
        states.append(place.state(theirs / FILE, Digests()))

    note_state()
    add(says(DEPTH, "62 mm"))
    note_state()
    add(says(DEPTH, "61 mm"))
    note_state()
    put(NOTE, "x")
    note_state()
    assert len(set(states)) == 4


def test_a_review_says_what_an_addition_does(capsys: pytest.CaptureFixture[str]) -> None:
    def git(*words: str) -> None:
        subprocess.run(
            ["git", "-c", "user.name=x", "-c", "user.email=x@x.invalid", *words], check=True, capture_output=True
        )

    add(says("restraint/wait", "3 min", how="maker"))
    git("init", "--quiet")
    git("add", "--all")
    git("commit", "--quiet", "--message", "Begun")
    assert "62 mm" not in said(capsys, "review", "HEAD")
    add(says("restraint/wait", "3 min", how="maker"), says(DEPTH, "62 mm"))
    put(NOTE, "Key in drawer 4.")
    found = said(capsys, "review", "HEAD")
    assert "Reaches 1 vehicle" in found
    assert "62 mm" in found
    assert "3 min" not in found
    assert "drawer" not in found


def test_only_the_workspace_knows_where_records_stand_and_who_may_write_them() -> None:
    package = Path(cli.__file__).parent
    for path in package.rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        name = path.relative_to(package).as_posix()
        if name != "record/store.py":
            assert 'records / "vehicles"' not in text, name
            assert 'records / "gear"' not in text, name
        if name not in ("record/store.py", "record/writing.py"):
            assert "record.writing import" not in text, name
