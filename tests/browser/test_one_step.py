"""In the bay: one step at a time over the whole screen, the tray, and what broke."""

from collections.abc import Callable
from pathlib import Path

import pytest
from axe_faults import OF_COLOURS
from axe_playwright_python.sync_playwright import Axe
from in_bay import BACK, DONE, FINCH, TRAY, WHERE, at, kept, press, start
from playwright.sync_api import BrowserContext, Page, expect


def test_every_step_from_the_first_to_the_last(phone: Page, site: Path) -> None:
    start(phone, site, FINCH)
    many = int(phone.locator(WHERE).inner_text().split()[-1])
    for step in range(1, many + 1):
        assert phone.locator(WHERE).inner_text() == f"{step} of {many}"
        press(phone)
    assert phone.get_by_text("Every step is done.").is_visible()
    assert "Nothing should lie there now." in phone.locator(".ut-look").inner_text()
    assert phone.locator("[data-tick]:not(:checked)").count() == 0
    phone.locator(DONE).click()
    expect(phone.locator("dialog.ut-screen")).not_to_be_visible()


def test_a_step_is_seen_whole_and_its_buttons_are_for_a_glove(phone: Page, site: Path) -> None:
    start(phone, site)
    for _ in range(7):
        press(phone)
    assert phone.locator("dialog h2").inner_text() == "Take off Lower centre trim"
    assert phone.locator(".ut-screen-state").inner_text() == "battery off, ignition off"
    assert phone.locator(".ut-screen-area").get_by_text("4 × push clips").is_visible()
    assert phone.locator(TRAY).inner_text() == "In the tray: 1 × hex 10 mm nut, 6 × push clip."
    for button in phone.locator(".ut-screen-foot button").all():
        box = button.bounding_box()
        assert box
        assert box["height"] >= 56
        assert box["y"] > 844 / 2
        assert box["y"] + box["height"] <= 844
    assert phone.evaluate("document.activeElement.tagName") == "H2"


@pytest.mark.parametrize("height", [844, 568, 400])
def test_a_caution_is_read_before_the_step_is_done(
    context: Callable[..., BrowserContext], site: Path, height: int
) -> None:
    page = context(viewport={"width": 320, "height": height}, has_touch=True).new_page()
    start(page, site)
    for _ in range(6):
        press(page)
    assert page.locator(".ut-screen-area .ut-caution").count() == 2
    seen = 0
    while page.locator(DONE).inner_text() == "Read on first":
        page.locator(DONE).click()
        seen += 1
        assert page.locator(WHERE).inner_text().startswith("7 of")
        assert page.locator("[data-tick='remove:vent-trim']").is_checked() is False
    assert seen > 0
    last = page.locator(".ut-screen-area .ut-caution").last.evaluate(
        "box => box.getBoundingClientRect().bottom <= box.closest('.ut-screen-area').getBoundingClientRect().bottom + 4"
    )
    assert last
    page.locator(DONE).click()
    assert page.locator(WHERE).inner_text().startswith("8 of")


def test_swipes_and_arrows_look_and_do_nothing(phone: Page, site: Path) -> None:
    start(phone, site)
    phone.keyboard.press("ArrowRight")
    phone.keyboard.press("ArrowRight")
    assert phone.locator(WHERE).inner_text().startswith("3 of")
    phone.keyboard.press("ArrowLeft")
    assert phone.locator(WHERE).inner_text().startswith("2 of")
    swipe = """([from, to]) => ["touchstart", "touchend"].forEach((name, index) => {
      const area = document.querySelector(".ut-screen-area"), touch = new Touch({ identifier: 1, target: area, clientX: index ? to : from, clientY: 300 });
      area.dispatchEvent(new TouchEvent(name, { bubbles: true, changedTouches: [touch] }));
    })"""
    phone.evaluate(swipe, [300, 60])
    assert phone.locator(WHERE).inner_text().startswith("3 of")
    phone.evaluate(swipe, [60, 300])
    assert phone.locator(WHERE).inner_text().startswith("2 of")
    phone.evaluate(swipe, [300, 270])  # no more than a shaking hand
    assert phone.locator(WHERE).inner_text().startswith("2 of")
    assert phone.locator("[data-tick]:checked").count() == 0


def test_list_and_screen_are_one_visit(phone: Page, site: Path) -> None:
    start(phone, site)
    press(phone)
    phone.get_by_role("button", name="List", exact=True).click()
    assert phone.locator("[data-tick]:checked").count() == 1
    phone.locator("[data-tick='prepare:lever-back']").check()
    assert phone.locator("#ut-start").inner_text() == "Go on: step 2 of 76"
    phone.locator("[data-tick='prepare:usual:parking-brake-on']").check()
    phone.locator("#ut-start").click()
    assert phone.locator(WHERE).inner_text() == "4 of 76"
    phone.locator(BACK).click()
    assert phone.locator(DONE).inner_text() == "Next"
    phone.get_by_role("button", name="Not done").click()
    assert phone.locator("[data-tick='prepare:lever-back']").is_checked() is False


def test_what_was_passed_over_and_what_is_left_over_is_said_before_the_battery_is_joined(
    phone: Page, site: Path
) -> None:
    start(phone, site)
    while phone.locator("dialog h2").inner_text() != "Take off Brace across the map radio":
        press(phone)
    phone.keyboard.press("ArrowRight")
    while phone.locator(".ut-look").count() == 0:
        press(phone)
    look = phone.locator(".ut-look")
    assert "Step 9" in look.inner_text()
    assert "missing" not in look.inner_text()  # what a step not ticked explains is not looked for
    rows = {row.locator("span").first.inner_text(): row for row in look.locator(".ut-look-rows li").all()}
    clips = rows["push clip"]
    assert clips.locator("output").inner_text() == "32"
    clips.get_by_role("button", name="Fewer").click()
    assert clips.inner_text().endswith(
        "1 × push clip is missing. They came out in step 7, 8, 13, 17, 19, 23: look there, and below it."
    )
    clips.get_by_role("button", name="More").click()
    assert "missing" not in clips.inner_text()
    clips.get_by_role("button", name="More").click()
    assert "1 × push clip is left over. They go back in step" in clips.inner_text()
    look.get_by_role("button", name="Step 9").click()
    assert phone.locator("dialog h2").inner_text() == "Take off Brace across the map radio"


def test_what_broke_is_kept_and_in_the_report(phone: Page, site: Path) -> None:
    start(phone, site)
    while phone.locator("dialog h2").inner_text() != "Take off Upper vent trim":
        press(phone)
    phone.get_by_text("Something broke or is lost").click()
    more = phone.get_by_role("button", name="More: push clip")
    more.click()
    more.click()
    phone.get_by_role("button", name="Fewer: push clip").click()
    assert kept(phone)["spoilt"] == {"remove:vent-trim": {"0.0": 1}}
    press(phone)
    phone.get_by_role("button", name="List", exact=True).click()
    broken = "1 × push clip, for one that broke or was lost: Take off Upper vent trim"
    expect(phone.locator("#ut-buy")).to_contain_text(broken)
    phone.reload()
    expect(phone.locator("#ut-buy")).to_contain_text(broken)
    phone.locator("#ut-desk > summary").click()
    phone.get_by_role("button", name="Job report").click()
    assert (
        "1 × push clip, for one that broke or was lost: Take off Upper vent trim"
        in phone.locator(".ut-report-page").inner_text()
    )


def test_what_broke_can_be_taken_back(phone: Page, site: Path) -> None:
    start(phone, site)
    while phone.locator("dialog h2").inner_text() != "Take off Upper vent trim":
        press(phone)
    phone.get_by_text("Something broke or is lost").click()
    phone.get_by_role("button", name="More: push clip").click()
    press(phone)
    phone.locator(BACK).click()
    phone.get_by_role("button", name="Fewer: push clip").click()
    assert kept(phone)["spoilt"] == {}


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("what", ["caution", "look", "end", "report", "desk", "kept"])
def test_axe_finds_nothing(context: Callable[..., BrowserContext], site: Path, scheme: str, what: str) -> None:
    page = context(viewport={"width": 390, "height": 844}, color_scheme=scheme, reduced_motion="reduce").new_page()
    page.goto(at(site, FINCH))
    page.locator("[data-tick='prepare:battery']").check()
    if what in ("desk", "report"):
        page.locator("#ut-desk > summary").click()
        page.get_by_role("button", name="Hand it over").click()
        if what == "report":
            page.get_by_role("button", name="Job report").click()
    elif what == "kept":
        page.goto((site / "index.html").as_uri())
    else:
        page.locator("#ut-start").click()
        shown = page.locator({"caution": ".ut-caution.ut-warning", "look": ".ut-look", "end": ".ut-undone"}[what])
        while not shown.count():
            page.keyboard.press("ArrowRight")
    inside = {"desk": "#ut-desk", "kept": "#ut-visits"}.get(what, "dialog[open]")
    asked = {"runOnly": {"type": "rule", "values": OF_COLOURS}} if scheme == "dark" else {}
    found = Axe().run(page, context=inside, options={"resultTypes": ["violations"], **asked}).response["violations"]
    assert [(one["id"], [node["target"] for node in one["nodes"]]) for one in found] == []


@pytest.mark.parametrize(("width", "height"), [(320, 568), (844, 390), (1920, 1080), (3840, 2160)])
def test_nothing_goes_sideways(context: Callable[..., BrowserContext], site: Path, width: int, height: int) -> None:
    page = context(viewport={"width": width, "height": height}).new_page()
    start(page, site)
    for step in range(76):
        assert page.evaluate(
            "(() => { const area = document.querySelector('.ut-screen-area'); return area.scrollWidth <= area.clientWidth && document.querySelector('dialog').scrollWidth <= innerWidth; })()"
        ), step
        page.keyboard.press("ArrowRight")
