"""The meter guide on a page, worked with a finger on a phone; that it answers as the program does is tested in Node."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from making import record
from undertrim.publish.encoding import said
from undertrim.publish.facts import meter
from undertrim.publish.web import pages, scripts
from undertrim.record.model import Blank, Ladder, VehicleRecord
from undertrim.record.units import Quantity, parse


def car(at: str = "") -> VehicleRecord:
    # Long because the record of a whole car, with its plug, stands in it.
    made = record(f"""
        parts:
          radio:
            release: pull
            tethers:
              main: {{name: Main, kind: plug}}
              bag: {{name: Bag, kind: plug, circuit: restraint}}
        openings: {{dash: {{behind: [radio]}}}}
        connectors:
          main:
            name: Main <script>alert(1)</script>
            view: wires
            rows: 2
            columns: 8
            {at}
            pins:
              4: {{colour: yellow, function: battery-feed}}
              5: {{colour: pink, function: switched-feed}}
              7: {{colour: blue, function: antenna-feed, supply: 8 V}}
              9: {{colour: white, function: front-left-plus}}
              15: {{colour: light green, function: wheel-buttons}}
        """)
    nominal = {"volume-up": "330 ohm", "volume-down": "680 ohm", "mute": "700 ohm"}
    buttons: dict[str, Quantity | Blank] = {name: parse(text, "resistance") for name, text in nominal.items()}
    wheel = Ladder("wheel", "main/15", parse("5 %", "share"), buttons, idle=Blank.NONE)
    return replace(made, ladders={"wheel": wheel})


def page_of(tmp_path: Path, *, apart: bool = False) -> str:
    """A page with nothing but the guide; `apart` loads the table as a script of its own."""
    macros: Any = pages.environment().get_template("meter.html.j2").module
    about = car()
    plug = said(meter.guide(about, about.connectors["main"]))
    table = "" if apart else macros.table(meter.meter_table())
    texts = {"guide.js": scripts.bundle("meter-guide"), **({"table.js": meter.table_script()} if apart else {})}
    for name, text in texts.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
    loaded = "".join(f'<script src="{name}"></script>' for name in texts)
    guard = "<meta http-equiv='Content-Security-Policy' content=\"script-src file:; object-src 'none'\">"
    file = tmp_path / "meter.html"
    head = f"<meta charset=utf-8>{guard}<meta name=viewport content='width=device-width'>"
    file.write_text(f"<!doctype html>{head}{table}{macros.guide(plug, meter.meter_table())}{loaded}", encoding="utf-8")
    return file.as_uri()


@pytest.fixture
def guide(phone: Page, tmp_path: Path) -> Page:
    """The guide of the plug, open, under a policy that allows no script but files."""
    phone.set_default_timeout(5000)
    phone.goto(page_of(tmp_path))
    phone.locator("summary").click()
    return phone


def add(page: Page, pin: str, state: str, kind: str, value: str) -> None:
    if page.get_by_label("Pin", exact=True).input_value() != pin:
        page.get_by_label("Pin", exact=True).select_option(pin)
    page.get_by_label("State", exact=True).select_option(state)
    page.get_by_label("Reading", exact=True).select_option(kind)
    page.get_by_label("The meter shows").fill(value)
    page.get_by_role("button", name="Add reading").click()


def test_readings_that_agree_with_the_record(guide: Page) -> None:
    add(guide, "4", "key-off", "volts", "12.6")
    add(guide, "4", "key-on", "volts", "12.4")
    out = guide.locator("[data-meter=out]")
    expect(out).to_contain_text("The readings agree with the record: battery feed.")
    expect(out).to_contain_text(
        "Agrees: 12.6 V key off. Expected, volts to ground, key off: battery voltage, 11.4 V to 13.2 V"
    )
    expect(out).to_contain_text("on amperes it is a short to ground")
    before = guide.locator(".ut-meter").inner_text().split("Pin")[0]
    assert "Never put a test lamp or an ohmmeter on restraint wiring" in before
    assert "Ohms only with the power off" in before
    assert "safe" not in guide.locator(".ut-meter").inner_text()


def test_readings_that_disagree_say_what_they_agree_with_and_what_is_next(guide: Page) -> None:
    add(guide, "5", "key-off", "volts", "12.6")
    out = guide.locator("[data-meter=out]")
    expect(out).to_contain_text("The readings disagree with the record: switched feed.")
    expect(out).to_contain_text("battery feed: live at all times")
    guide.get_by_role("button", name="Start again").click()
    add(guide, "5", "key-off", "volts", "0")
    expect(out).to_contain_text("Measure next: volts to ground, key on, engine off.")
    expect(out).to_contain_text("any speaker wire")


def test_an_igniter_is_named_first_and_nothing_more_is_asked_for(guide: Page) -> None:
    add(guide, "", "key-off", "pair", "2.1")
    out = guide.locator("[data-meter=out]")
    expect(out.locator("> p").first).to_contain_text(
        "STOP: 2.1 ohm across the pair key off may be an igniter of an airbag"
    )
    expect(out.locator("> p").first).to_contain_text("Do not measure further, do not join.")
    said = out.inner_text()
    assert said.index("igniter") < said.index("any speaker wire") < said.index("a heater")
    assert "Measure nothing more on this wire" in said
    assert "Measure next" not in said
    add(guide, "9", "key-off", "pair", "2.1")
    expect(out).to_contain_text("The readings agree with the record: front left +.")
    assert "STOP" not in out.inner_text()


def test_a_feed_that_is_dead_may_have_its_fuse_out_and_one_that_is_live_may_go_off_late(guide: Page) -> None:
    add(guide, "4", "key-off", "volts", "0")
    out = guide.locator("[data-meter=out]")
    expect(out).to_contain_text("or its fuse is out (0 V key off)")
    add(guide, "5", "key-off", "volts", "12.6")
    expect(out).to_contain_text("a feed that goes off late")
    add(guide, "5", "asleep", "volts", "0")
    add(guide, "5", "key-on", "volts", "12.4")
    expect(out).to_contain_text("The readings agree with the record: switched feed.")


def test_a_supply_of_its_own_and_an_unknown_wire(guide: Page) -> None:
    add(guide, "7", "radio-on", "volts", "7.9")
    expect(guide.locator("[data-meter=out]")).to_contain_text("its supply of 8 V, 6.8 V to 8.8 V")
    add(guide, "", "key-off", "volts", "0")
    expect(guide.locator("[data-meter=taken]")).to_have_text("0 V key off")
    expect(guide.locator("[data-meter=out]")).to_contain_text("The readings agree with:")


def test_a_button(guide: Page) -> None:
    add(guide, "15", "key-off", "ohms", "330")
    add(guide, "15", "key-off", "ohms", "500")
    add(guide, "15", "key-off", "ohms", "690")
    add(guide, "15", "key-off", "ohms", "open")
    out = guide.locator("[data-meter=out]")
    expect(out).to_contain_text("330 ohm key off: agrees with volume-up.")
    expect(out).to_contain_text("none of them: above volume-up (to 346.5 ohm) and below volume-down (from 646 ohm)")
    expect(out).to_contain_text("ambiguous: volume-down or mute")
    expect(out).to_contain_text("open key off: agrees with idle.")


def test_what_cannot_be_read_is_said_and_not_taken(guide: Page) -> None:
    add(guide, "4", "key-off", "volts", "12,6")
    expect(guide.get_by_role("alert")).to_contain_text("write a decimal point")
    expect(guide.locator("[data-meter=taken]")).to_be_empty()


def test_the_table_may_be_a_script_of_its_own(phone: Page, tmp_path: Path) -> None:
    phone.goto(page_of(tmp_path, apart=True))
    phone.locator("summary").click()
    add(phone, "9", "key-off", "pair", "3.6")
    expect(phone.locator("[data-meter=out]")).to_contain_text("The readings agree with the record: front left +.")


def test_nothing_but_files_is_asked_for_and_names_are_text(phone: Page, tmp_path: Path) -> None:
    asked: list[str] = []
    phone.on("request", lambda request: asked.append(request.url))
    phone.goto(page_of(tmp_path))
    assert all(url.startswith("file:") for url in asked)
    assert phone.evaluate("document.querySelectorAll('script:not([src]):not([type])').length") == 0


def test_nobody_is_led_to_a_restraint_plug() -> None:
    about = car("at: radio/bag")
    assert meter.guide(about, about.connectors["main"]) is None
    ordinary = car("at: radio/main")
    assert meter.guide(ordinary, ordinary.connectors["main"]) is not None


def test_a_button_read_with_the_power_on_is_no_button(guide: Page) -> None:
    add(guide, "15", "key-on", "ohms", "330")
    out = guide.locator("[data-meter=out]")
    expect(out).to_contain_text("says nothing: ohms count with the power off alone")
    assert "Ladder" not in out.inner_text()
