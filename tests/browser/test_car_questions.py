"""What a car still wants to know, by touch on a phone from a folder on disk: every answer becomes a claim, the claims a record, and nothing is asked twice."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from asked_by_touch import (
    BRAMBLE,
    DABCHICK,
    DROVER,
    FINCH,
    HEAD,
    NEXT,
    PNG,
    WRONG,
    answered,
    introduced,
    kept,
    on,
    opened,
    record,
    saved,
)
from browsing import ROOT
from playwright.sync_api import Page, expect
from test_for_everyone import LEAST, SIDEWAYS, SMALL

from disputing import disputing
from publishing import of
from undertrim import cli
from undertrim.derive.evidence.facts import fact_at
from undertrim.derive.questions import questions
from undertrim.publish.web import pages
from undertrim.record import claims


@pytest.mark.parametrize(("vehicle", "pictured"), [(FINCH, "Amplifier place"), (BRAMBLE, "Main radio plug")])
def test_every_question_of_a_car_by_touch_and_into_its_record(
    phone: Page,
    site: Path,
    vehicle: str,
    pictured: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    # Long because it is one way, from the first screen to the record and back.
    opened(phone, site, vehicle)
    introduced(phone, **{"Does the car have a camera?": "Yes"})
    asked = [one for one in questions(*record(ROOT, vehicle)) if one.fields]
    told = []
    while phone.locator(".ut-asking[open]").count():
        told.append(phone.locator(HEAD).text_content() or "")
        answered(phone)
        if pictured in told[-1]:
            phone.locator(".ut-asked-more > summary").tap()
            phone.locator(".ut-asking input[type=file]").set_input_files(PNG)
            expect(phone.locator("canvas.ut-asked-photo")).to_be_visible()
            phone.get_by_label("What is to be seen in it").fill("The page of the maker's handbook.")
        on(phone)
    assert len(told) == len(asked) > 5
    expect(phone.get_by_text("All questions for this car are answered.")).to_be_visible()
    file = saved(phone, tmp_path, 2)
    shutil.copytree(ROOT / "records", tmp_path / "records")
    monkeypatch.chdir(tmp_path)
    assert cli.main(["take", str(file)]) == 0, capsys.readouterr().err
    assert cli.main(["check"]) == 0, capsys.readouterr().out
    after, source = record(tmp_path, vehicle)
    assert [one.about for one in questions(after, source) if one.fields] == []
    for answer in claims.read(file).answers:
        fact = fact_at(after, answer.about)
        assert fact, answer.about
        assert fact.text == answer.says, answer.about
    assert cli.main(["take", str(file)]) == 0
    assert f"{len(kept(phone))} already so" in capsys.readouterr().out, "what the form says is what the record says"
    name = Path(vehicle).name
    (photo,) = (tmp_path / f"records/{vehicle}").parent.glob(f"photos/{name}/*-1.jpg")
    assert photo.read_bytes()[:3] == b"\xff\xd8\xff"


def test_answers_last_are_changed_and_taken_back(phone: Page, site: Path) -> None:
    # Long because it is one answer, from when it is given to when it is taken back.
    opened(phone, site)
    introduced(phone)
    phone.get_by_label("Wait: value").fill("4")
    phone.get_by_role("radiogroup", name="Unit").get_by_text("min").tap()
    on(phone)
    assert phone.locator(WRONG).text_content() == "Say how you know it: people can be hurt if it is wrong."
    phone.locator("input[value=maker]").check()
    on(phone)
    phone.get_by_role("button", name="List").tap()
    phone.reload()
    expect(phone.get_by_text("Answered: 4 min")).to_be_visible()
    expect(phone.get_by_role("button", name="Go on: 10 questions left")).to_be_visible()
    (claim,) = kept(phone)
    assert (claim["says"], claim["how"], claim["by"], claim["was"]) == ("4 min", "maker", "rk", "unknown")
    assert "with" not in claim, "nothing was measured"
    phone.get_by_text("Answered: 4 min").tap()
    assert phone.get_by_label("Wait: value").input_value() == "4"
    assert phone.get_by_role("radio", name="min").is_checked()
    phone.get_by_text("None there: I looked").tap()
    assert phone.get_by_label("Wait: value").input_value() == "", "of a value and none, one counts"
    on(phone)
    assert [(one.get("says"), one.get("found")) for one in kept(phone)] == [(None, "none")]
    phone.locator(".ut-asking .ut-back").tap()
    phone.get_by_role("button", name="Take the answer back").tap()
    assert phone.locator(NEXT).text_content() == "Later"
    on(phone)
    assert kept(phone) == []


def test_a_measure_in_either_system(phone: Page, site: Path) -> None:
    # Long because it is one field, typed in all the ways that there are.
    opened(phone, site, DROVER)
    introduced(phone, year="2017")
    while "clear depth" not in (phone.locator(HEAD).text_content() or ""):
        on(phone)
    expect(phone.locator(".ut-asking .ut-sketch svg")).to_be_visible()
    value = phone.get_by_label("Clear depth: value")
    for typed, wrong in [("6,2,1", "Type a number"), ("900", "20 to 500 mm is what such things measure")]:
        value.fill(typed)
        on(phone)
        expect(phone.locator(WRONG)).to_contain_text(wrong)
    phone.get_by_role("radiogroup", name="Unit").get_by_text("in", exact=True).tap()
    value.fill("2,4")
    phone.get_by_label("And a fraction").select_option("7/16")
    on(phone)
    expect(phone.locator(WRONG)).to_have_text("Take a fraction or decimals, not both.")
    value.fill("2")
    on(phone)
    (claim,) = kept(phone)
    assert (claim["says"], claim["was"], claim["how"], claim["with"]) == (
        "2 7/16 in",
        "62 mm",
        "measured",
        "Calliper 0.05 mm",
    )
    phone.locator(".ut-asking .ut-back").tap()
    assert (value.input_value(), phone.get_by_label("And a fraction").input_value()) == ("2", "7/16")
    phone.get_by_label("And a fraction").select_option("")
    value.fill("2,44")
    on(phone)
    assert [one["says"] for one in kept(phone)] == ["2.44 in"]


def test_only_what_the_car_can_answer_is_asked(phone: Page, site: Path) -> None:
    """The bass speaker and the amplifier are there in one sort of car only; answers of one car are not those of the next."""
    opened(phone, site, DROVER)
    introduced(phone, **{"Is there a factory amplifier?": "No amplifier"})
    phone.get_by_role("button", name="List").tap()
    without = phone.locator("#ut-asked-list > li").count()
    expect(phone.get_by_text(re.compile("questions are about other cars than yours"))).to_be_visible()
    phone.get_by_text("Look up whether the maker forbids").tap()
    answered(phone)
    on(phone)
    phone.get_by_role("button", name="List").tap()
    phone.get_by_role("button", name="I stand at another car now").tap()
    expect(phone.locator(".ut-asked-done")).to_have_count(0)
    phone.get_by_role("button", name=re.compile("^Answer 11")).tap()
    introduced(phone, **{"Is there a factory amplifier?": "Amplifier behind the seat"})
    answered(phone)
    phone.get_by_role("button", name="List").tap()
    assert phone.locator("#ut-asked-list > li").count() > without
    assert [one["car"]["is"]["sound"] for one in kept(phone)] == ["plain", "amplified"]


@pytest.fixture
def touched(site: Path) -> Iterator[Path]:
    """The page of a record that disputes a contact and a colour, in the place of one of the site's."""
    entry = disputing(
        ROOT / "records/vehicles/kelbrook/finch-2014-2018.yaml",
        ["ladders/wheel/pin", "connectors/radio-main/pins/7/colour", "connectors/radio-main/pins/5/function"],
    )
    whole = (site / "vehicles/kelbrook/finch-2014-2018.questions.html").read_text(encoding="utf-8")
    body = pages.vehicle(of(entry))["questions"]
    made = site / "vehicles/kelbrook/finch-2014-2018.disputed.html"
    made.write_text(
        re.sub(r"(?s)<article class=\"ut ut-vehicle.*?</article>", lambda _: body, whole, count=1), encoding="utf-8"
    )
    yield made
    made.unlink()  # other tests look at all pages of the site


def test_a_contact_is_touched_and_a_colour_chosen(phone: Page, touched: Path) -> None:
    # Long because it is one walk over three sorts of screens.
    phone.goto(touched.as_uri())
    phone.get_by_role("button", name=re.compile("^Answer ")).tap()
    introduced(phone)
    done = 0
    while phone.locator(".ut-asking[open]").count():
        if phone.locator(".ut-asked-pin").count():
            assert phone.evaluate(SMALL, LEAST) == []
            phone.locator(".ut-asked-pin a[href='#pin-radio-main-12']").first.tap()
            expect(phone.locator(".ut-asked-pin a[aria-current]").first).to_be_visible()
            done += 1
        elif phone.locator(".ut-asked-swatches").count():
            base, tracer = phone.locator(".ut-asked-swatches").all()
            tracer.get_by_text("BK", exact=True).tap()
            on(phone)
            assert phone.locator(WRONG).text_content() == "Choose the colour of the wire first."
            base.get_by_text("LBU", exact=True).or_(base.get_by_text("WH", exact=True)).first.tap()
            done += 1
        elif phone.locator(".ut-pick").filter(has_text="speed").count():
            phone.locator(".ut-pick").filter(has_text="speed").first.tap()
            done += 1
        on(phone)
    assert done == 3
    said = {one["about"]: one["says"] for one in kept(phone)}
    assert said["ladders/wheel/pin"] == "radio-main/12"
    assert said["connectors/radio-main/pins/7/colour"] == "white/black"
    assert said["connectors/radio-main/pins/5/function"] == "speed"


def test_its_screens_are_for_every_hand(phone: Page, site: Path) -> None:
    opened(phone, site, DROVER)
    for width in (390, 320):
        phone.set_viewport_size({"width": width, "height": 844})
        assert phone.evaluate(SMALL, LEAST) == []
        assert phone.evaluate(SIDEWAYS) == [False]
    introduced(phone, tool="")
    while phone.locator(".ut-asking[open]").count():
        phone.locator(".ut-asked-more > summary").tap()
        assert phone.evaluate(SMALL, LEAST) == []
        assert phone.evaluate(SIDEWAYS) == [False]
        on(phone)


def test_the_record_leads_to_them(phone: Page, site: Path) -> None:
    phone.goto((site / f"{DABCHICK}.record.html").as_uri())
    phone.get_by_role("link", name="Answer what it still wants to know: 11 questions").tap()
    expect(phone.get_by_role("button", name="Answer 11 questions")).to_be_visible()
