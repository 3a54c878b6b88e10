"""The clock of a wait: when it begins, and that it keeps time."""

import re
from pathlib import Path

from in_bay import BACK, WHERE, clear_waits, press, start
from playwright.sync_api import Page


def test_a_wait_keeps_time_while_the_page_is_closed(phone: Page, site: Path) -> None:
    name = "vehicles/harrowby/sedge-2016-2021.html?jobs=dash"
    start(phone, site, name)
    while phone.locator(".ut-clock").count() == 0:
        press(phone)
    assert re.fullmatch(r"\d+:\d\d to wait\.", phone.locator(".ut-clock").inner_text())
    where = phone.locator(WHERE).inner_text()
    press(phone)
    assert phone.locator(WHERE).inner_text() == where
    assert "to wait" in phone.locator(".ut-screen-answer").inner_text()
    clear_waits(phone)
    phone.reload()
    phone.locator("#ut-start").click()
    assert phone.locator(WHERE).inner_text() == where
    assert phone.locator(".ut-clock").inner_text().startswith("The wait is over: 24:0")
    press(phone)
    assert phone.locator(WHERE).inner_text() != where


def test_who_looks_ahead_starts_no_clock(phone: Page, site: Path) -> None:
    start(phone, site, "vehicles/harrowby/sedge-2016-2021.html?jobs=dash")
    clock = phone.locator(".ut-clock")
    while clock.count() == 0:
        phone.keyboard.press("ArrowRight")
    assert clock.inner_text() == "The clock starts when the step before is done."
    where = phone.locator(WHERE).inner_text()
    press(phone)
    assert phone.locator(WHERE).inner_text() == where
    assert phone.locator(".ut-screen-answer").inner_text() == clock.inner_text()
    phone.locator(BACK).click()
    press(phone)
    assert re.fullmatch(r"\d+:\d\d to wait\.", clock.inner_text())
    phone.get_by_role("button", name="Start the clock again").click()
    phone.locator(BACK).click()
    phone.get_by_role("button", name="Not done").click()
    phone.keyboard.press("ArrowRight")
    assert clock.inner_text() == "The clock starts when the step before is done."


def test_a_wait_nobody_has_recorded_is_counted_and_never_over(phone: Page, site: Path) -> None:
    start(phone, site)
    while phone.locator(".ut-clock").count() == 0:
        press(phone)
    assert (
        phone.locator(".ut-clock")
        .inner_text()
        .endswith("How long is not recorded: look it up in the maker's information.")
    )
