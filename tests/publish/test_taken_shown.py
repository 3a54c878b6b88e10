"""What was taken from another record says so wherever it is shown, until somebody says that it was seen on this car."""

import json
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from pdf_text import texts
from undertrim import cli
from undertrim.check.shelf import stock
from undertrim.derive.evidence import taken
from undertrim.derive.evidence.obstacles import obstacles
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import NOTHING
from undertrim.derive.measuring import next_to_measure
from undertrim.derive.visit import text
from undertrim.derive.visit.understanding import visit
from undertrim.publish.build.keyed import keys
from undertrim.publish.encoding import Published
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.printed import pdf
from undertrim.publish.printed.sheet import visited
from undertrim.record.digests import Digests
from undertrim.record.model import CarSeen, VehicleRecord, Verified
from undertrim.record.store import Entry, Workspace
from undertrim.words import say
from vehicle_pages import all_pages
from wired import DAY, PLACE, URL

DABCHICK = PLACE.records / "vehicles/wexcombe/dabchick-2015-2018.yaml"
WHOLE = "Not seen on this car: taken from the Kelbrook Finch 2014–2018."
PARTLY = "Not seen on this car, but for hole, bolt pattern, depth and crash pressure sensor: taken from the Kelbrook Finch 2014–2018."
SEEN = "Taken from the Kelbrook Finch 2014–2018. Seen on this car when the record was verified (2026-10-01, tw)."


@cache
def entry() -> Entry:
    return PLACE.load(DABCHICK)


def record() -> VehicleRecord:
    found = entry().record
    assert isinstance(found, VehicleRecord)
    return found


@cache
def known() -> Vehicle:
    return Vehicle(record(), entry().address, stock(PLACE), clearances())


@cache
def made() -> Published:
    return facts.vehicle(entry(), DAY)


def test_a_step_says_so_where_its_thing_is_met_first() -> None:
    said = {step["id"]: step["conflicts"] for step in made()["steps"]}
    assert said["remove:front-door-panel@left"] == [WHOLE]
    assert said["prepare:battery"] == [WHOLE]
    assert said["refit:front-door-panel@left"] == []
    assert PARTLY in {line for step in made()["steps"] if step["kind"] == "install" for line in step["conflicts"]}


def test_every_thing_that_is_taken_says_so() -> None:
    rows = {item["id"]: [row["value"] for row in item["rows"]] for item in made()["openings"]}
    assert WHOLE in rows["dash"]
    assert PARTLY in rows["front-door"]
    assert [plug["conflicts"] for plug in made()["connectors"]] == [[WHOLE]]
    met = {step["part"] for step in made()["steps"] if WHOLE in step["conflicts"]}
    own = {place[1] for place in record().taken if len(place) > 2}
    assert {part for part in record().parts if part in {step["part"] for step in made()["steps"]}} <= met | own


def test_what_is_not_taken_says_nothing() -> None:
    finch = facts.vehicle(PLACE.load(PLACE.records / "vehicles/kelbrook/finch-2014-2018.yaml"), DAY)
    assert "Not seen on this car" not in json.dumps(finch, ensure_ascii=False)
    assert taken.unseen(record(), "areas", "dash") is None


def test_page_sheet_and_json_say_it() -> None:
    page = all_pages(made())
    paper = "".join("".join(text.split()) for text in texts(pdf.render(made(), {"fitting": URL}, "a4", DAY)))
    for words in (WHOLE, PARTLY):
        assert words in page
        assert "".join(words.split()) in paper  # a line may end after the dash between two years
        assert words in json.dumps(made(), ensure_ascii=False)


def test_it_stands_in_the_way_of_verifying_until_somebody_says_that_it_was_seen() -> None:
    said = [say(item.said) for item in obstacles(record())]
    count = len({place[:2] for place in record().taken})
    assert f"{count} things are taken from the Kelbrook Finch 2014–2018 and were not seen on this car" in said
    stamped = replace(record(), verified=Verified("2026-10-01", "tw", CarSeen("2016"), {}, "seen"))
    assert [line for line in (say(item.said) for item in obstacles(stamped)) if "taken from" in line] == []
    found = taken.unseen(stamped, "parts", "front-door-panel")
    assert found
    assert say(found) == SEEN
    other = replace(record(), verified=Verified("2026-10-01", "tw", CarSeen("2016"), {}))
    assert say(taken.unseen(other, "parts", "front-door-panel") or "") == WHOLE


def test_the_sensor_is_known_only_where_this_record_states_it() -> None:
    sensors = {item["id"]: item["crash_sensor"] for item in made()["openings"]}
    assert (sensors["front-door"], sensors["rear-door"]) == ("no", "unknown")


@pytest.mark.parametrize("job", ["front-door", "dash"])
def test_the_terminal_says_it(job: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["plan", "dabchick-2015-2018", "--job", job, "--in", str(PLACE.root)]) == 0
    assert WHOLE in " ".join(capsys.readouterr().out.split())


def test_what_is_kept_of_a_vehicle_is_made_anew_when_the_other_record_changes(tmp_path: Path) -> None:
    names = ("wexcombe/dabchick-2015-2018", "kelbrook/finch-2014-2018", "tolverne/gant-1998-2003")
    paths = [tmp_path / f"records/vehicles/{name}.yaml" for name in names]
    for path in paths:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes((PLACE.root / path.relative_to(tmp_path)).read_bytes())

    def kept() -> list[str]:
        return [item.key for item in keys(Workspace(tmp_path), paths, URL, Digests(), NOTHING)]

    before = kept()
    paths[1].write_text(paths[1].read_text("utf-8") + "# mended\n", encoding="utf-8")
    assert [one == other for one, other in zip(before, kept(), strict=True)] == [False, False, True]


def test_a_verdict_on_gear_says_whose_dimensions_it_rests_on(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["fit", "dabchick-2015-2018", "--in", str(PLACE.root)]) == 0
    printed = " ".join(capsys.readouterr().out.split())
    assert f"Front door speakers (front-door) {PARTLY} takes:" in printed
    assert f"Radio opening (dash) {WHOLE} takes:" in printed
    cli.main(["fit", "dabchick-2015-2018", "--format", "json", "--in", str(PLACE.root)])
    said = {item["opening"]: item["taken"] for item in json.loads(capsys.readouterr().out)["openings"]}
    assert (said["dash"], said["front-door"]) == ([WHOLE], [PARTLY])


def test_what_is_still_to_be_looked_at_is_in_the_list_of_what_to_find_out() -> None:
    places = [task.place for task in next_to_measure(record())]
    assert {"openings/dash", "openings/front-door", "openings/rear-door", "connectors/radio-main"} <= set(places)
    stamped = replace(record(), verified=Verified("2026-10-01", "tw", CarSeen("2016"), {}, "seen"))
    assert "openings/dash" not in {task.place for task in next_to_measure(stamped)}


def beside(root: Path, *changes: tuple[str, str]) -> list[str]:
    """Both records in a collection of their own, the one that lends with some changes; their ids."""
    for name in ("wexcombe/dabchick-2015-2018", "kelbrook/finch-2014-2018"):
        path = root / f"records/vehicles/{name}.yaml"
        path.parent.mkdir(parents=True)
        path.write_bytes((PLACE.root / path.relative_to(root)).read_bytes())
    path = root / "records/vehicles/kelbrook/finch-2014-2018.yaml"
    for old, new in changes:
        lent = path.read_text("utf-8")
        assert old in lent
        path.write_text(lent.replace(old, new), encoding="utf-8")
    return ["dabchick-2015-2018", "finch-2014-2018"]


def answer(capsys: pytest.CaptureFixture[str], *command: str) -> str:
    """What a command prints, in one line."""
    cli.main([*command, "--in", str(PLACE.root)])
    return " ".join(capsys.readouterr().out.split())


def test_a_shopping_list_says_on_whose_dimensions_and_counts_it_rests(capsys: pytest.CaptureFixture[str]) -> None:
    visit = "dabchick-2015-2018?jobs=front-door&front-door=tidewrack-haven-65"
    printed = answer(capsys, "shop", visit)
    assert PARTLY in printed
    listed = json.loads(answer(capsys, "shop", visit, "--format", "json"))["lists"][0]
    assert listed["verdicts"][0]["taken"] == [PARTLY]
    assert "Not seen" not in answer(capsys, "shop", visit.replace("dabchick-2015-2018", "finch-2014-2018"))


def test_a_shopping_list_says_whose_clips_it_counts(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The part that loses them is another car's; Finch's own list says nothing."""
    names = beside(
        tmp_path,
        (
            "{clip: push, at: {bottom: 3, left: 3, right: 3}}",
            "{clip: push, at: {bottom: 3, left: 3, right: 3}, reuse: no}",
        ),
    )
    listed = {}
    for name in names:
        cli.main(["shop", name, "--job", "front-door", "--in", str(tmp_path)])
        listed[name] = " ".join(capsys.readouterr().out.split())
    right, left = (f"! Front door panel, {side}: {WHOLE}" for side in ("right", "left"))
    assert f"(Front door panel, left) {right} {left} Tools:" in listed["dabchick-2015-2018"]
    assert "(Front door panel, left) Tools:" in listed["finch-2014-2018"]


def test_the_sheet_of_a_visit_says_it_beside_the_verdict() -> None:
    asked = visit(known(), text.parse("dabchick-2015-2018?jobs=front-door&front-door=tidewrack-haven-65"))
    assert PARTLY in say(visited.view(asked, URL, "a4", DAY)["lists"][0]["verdicts"][1])


def test_a_template_says_whose_holes_it_draws(tmp_path: Path) -> None:
    out = tmp_path / "door.pdf"
    assert (
        cli.main(["template", "dabchick-2015-2018", "front-door", "--output", str(out), "--in", str(PLACE.root)]) == 0
    )
    assert PARTLY in " ".join(" ".join(page.split()) for page in texts(out.read_bytes()))


def test_the_meter_guide_says_whose_wires_they_are(capsys: pytest.CaptureFixture[str]) -> None:
    assert f"! {WHOLE}" in answer(capsys, "meter", "dabchick-2015-2018", "radio-main/15")
    assert json.loads(answer(capsys, "meter", "dabchick-2015-2018", "radio-main/15", "--format", "json"))["taken"] == [
        WHOLE
    ]
    assert "Not seen" not in answer(capsys, "meter", "finch-2014-2018", "radio-main/15")
    assert [plug["meter"]["taken"] for plug in made()["connectors"]] == [[WHOLE]]
    guide = all_pages(made()).partition('class="ut-meter"')[2].partition("</details>")[0]
    assert f"<b>{WHOLE}</b>" in guide


def test_a_ladder_on_such_a_plug_says_it(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The ladder is this record's own, the plug is not."""
    beside(tmp_path)
    ladders = (PLACE.records / "vehicles/kelbrook/finch-2014-2018.yaml").read_text("utf-8").partition("\nladders:\n")[2]
    own = "ladders:\n" + ladders.split("\n\n")[0].replace("e7", "d1") + "\n"
    path = tmp_path / "records/vehicles/wexcombe/dabchick-2015-2018.yaml"
    path.write_text(path.read_text("utf-8") + own, "utf-8")
    cli.main(["meter", "dabchick-2015-2018", "--ladder", "wheel", "--in", str(tmp_path)])
    assert f"! {WHOLE}" in " ".join(capsys.readouterr().out.split())
