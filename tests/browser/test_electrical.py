"""The forms of the calculators in a browser; that the script reckons as the program does is tested in Node."""

from pathlib import Path

import pytest
from playwright.sync_api import Page

from undertrim.publish.web import calculators, scripts
from undertrim.resources import top
from vectors.electrical import answered


@pytest.fixture
def calculator(phone: Page, tmp_path: Path) -> Page:
    """The page by itself, opened from disk as a site would hold it."""
    assets = top("site_overrides").as_uri()
    styles = ["assets/undertrim/frame.css", "assets/undertrim/undertrim.css", *calculators.STYLES]
    head = "".join(f'<link rel="stylesheet" href="{assets}/{name}">' for name in styles)
    (tmp_path / "calculators.js").write_text(scripts.bundle("calculators"), encoding="utf-8")
    tail = '<script src="calculators.js"></script>'
    shell = f'<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Calculators</title>{head}'
    made = tmp_path / "calculators.html"
    made.write_text(f'{shell}<body class="md-typeset">{calculators.page()}{tail}</body></html>', encoding="utf-8")
    phone.goto(made.as_uri())
    return phone


def test_cable_for_an_amplifier(calculator: Page) -> None:
    calculator.get_by_label("or output power of the amplifier").fill("1000")
    form = calculator.locator("form[data-calculator=cable]")
    assert form.get_by_text("Still needed: length of the cable out").is_visible()
    calculator.get_by_label("Efficiency of the amplifier").fill("80")
    calculator.get_by_label("Length of the cable out", exact=True).fill("16")
    calculator.get_by_label("Unit of length of the cable out").select_option("ft")
    calculator.get_by_label("Insulation bears").select_option("105")
    calculator.get_by_label("Way back").select_option("body")
    asked = {"current": 1000 / (0.8 * 13.8), "out": 16 * 0.3048, "back": "body"}
    expected = answered(("cable", {"path": asked, "wishes": {"insulation": 105}}))
    headlines = form.locator(".ut-headline").all_inner_texts()
    assert headlines == ["1000 W takes 90.58 A at 80 % efficiency and 13.8 V", expected["headline"]]
    assert form.get_by_text("carry 90.58 A: 6 AWG or thicker").is_visible() is (
        expected["conditions"][1]["size"] == "6"
    )
    calculator.get_by_label("Way back").select_option("wire")
    assert form.get_by_text("Still needed: length of the wire back").is_visible()


def test_every_field_of_the_cable_form_reaches_the_answer(calculator: Page) -> None:
    form = calculator.locator("form[data-calculator=cable]")
    form.locator("summary").first.click()
    chosen = {"way": "body", "scheme": "sae", "insulation": "105", "place": "engine", "metal": "copper-clad"}
    for name, value in {**chosen, "conductor-unit": "°F"}.items():
        form.locator(f"[name={name}]").select_option(value)
    typed = {"current": "24", "out": "2", "body": "0.5", "limit": "4", "voltage": "14.4", "conductor": "140"}
    for name, value in {**typed, "fuse": "40", "share": "75"}.items():
        form.locator(f"[name={name}]").fill(value)
    path = {"current": 24, "out": 2, "back": "body", "body": 0.0005, "metal": "copper-clad", "voltage": 14.4}
    wishes = {"scheme": "sae", "insulation": 105, "place": "engine", "limit": 0.04, "fuse": 40, "share": 0.75}
    expected = answered(("cable", {"path": {**path, "conductor": 60}, "wishes": wishes}))
    form.get_by_text("Every number used").click()
    assert form.locator(".ut-headline").inner_text() == expected["headline"]
    assert form.locator("dd").all_inner_texts() == [one["text"] for one in expected["numbers"]]


@pytest.mark.parametrize(
    ("form", "fields", "said"),
    [
        ("load", {"text": "4+4 | 4+4"}, "4 speakers, 4+4 | 4+4: 4 ohm"),
        ("load", {"text": "4+"}, "Not so: a speaker is missing at the end"),
        ("filter", {"value": "100", "load": "4"}, "100 Hz at 4 ohm: 397.9 µF in series"),
        (
            "crossover",
            {"corner": "3", "load": "4"},
            "3000 Hz at 4 ohm, second order, Butterworth: 9.378 µF and 0.3001 mH",
        ),
        ("pad", {"decibels": "3", "load": "4", "power": "50"}, "3 dB off 4 ohm: 1.168 ohm in series"),
        ("gain", {"power": "100", "load": "4"}, "100 W into 4 ohm: 20 V RMS"),
        ("level", {"decibels": "-5"}, "-5 dB: voltage 0.5623 times, power 0.3162 times"),
        ("level", {"voltage": "2", "against": "1"}, "6.021 dB: voltage 2 times, power 4 times"),
        ("delay", {"distances": "2 1"}, "delays: 0 ms, 2.914 ms"),
        ("delay", {"distances": "2 1,5"}, "Not so: '1,5' in 'Distances from each speaker to the head' is not a number"),
        ("rest", {"capacity": "60", "current": "50"}, "25 days until 50 % of 60 Ah is gone at 50 mA"),
        ("rest", {"capacity": "60", "current": "-5"}, "Not so: the current at rest '-5 mA' cannot be right"),
        ("cable", {"current": "5", "power": "5"}, "Not so: both a current and a power are given"),
    ],
)
def test_forms(calculator: Page, form: str, fields: dict[str, str], said: str) -> None:
    place = calculator.locator(f"form[data-calculator={form}]")
    assert place.locator("output").is_hidden()
    for name, value in fields.items():
        place.locator(f"[name={name}]").fill(value)
    assert place.locator("output").inner_text().startswith(said)
    for name in fields:
        place.locator(f"[name={name}]").fill("")
    assert place.locator("output").is_hidden()


def test_units_and_kinds_are_chosen_beside_the_number(calculator: Page) -> None:
    place = calculator.locator("form[data-calculator=filter]")
    place.locator("[name=value]").fill("10")
    place.locator("[name=load]").fill("8")
    place.locator("[name=value-unit]").select_option("µF")
    assert place.locator("output").inner_text().startswith("10 µF in series with 8 ohm: a high-pass at 1989 Hz")
    place = calculator.locator("form[data-calculator=delay]")
    place.locator("[name=distances]").fill("78.74 39.37")
    place.locator("[name=distances-unit]").select_option("in")
    place.locator("[name=air]").fill("68")
    place.locator("[name=air-unit]").select_option("°F")
    assert place.locator("output").inner_text().startswith("delays: 0 ms, 2.914 ms")


def test_a_colour_is_looked_up_in_every_family(calculator: Page) -> None:
    place = calculator.locator("form[data-calculator=colour]")
    place.locator("select").select_option("red")
    assert place.locator("output").inner_text().startswith("red: medium blade 10 A; miniature blade 10 A; high-current")


def test_fits_a_narrow_phone_and_a_glove(calculator: Page) -> None:
    calculator.set_viewport_size({"width": 360, "height": 740})
    calculator.locator("[name=text]").fill("4+4 | 4+4")
    calculator.locator("details").evaluate_all("all => all.forEach(one => { one.open = true; })")
    assert calculator.evaluate("document.documentElement.scrollWidth") <= 360
    sizes = calculator.evaluate(
        "[...document.querySelectorAll('.ut-calculators :is(input, select, summary)')].filter(e => e.offsetParent).map(e => e.offsetHeight)"
    )
    assert len(sizes) > 30
    assert min(sizes) >= 48


def test_asks_nothing_of_any_host(calculator: Page) -> None:
    asked: list[str] = []
    calculator.on("request", lambda request: asked.append(request.url))
    calculator.reload()
    calculator.locator("[name=text]").fill("4|4")
    assert asked
    assert [url for url in asked if not url.startswith("file:")] == []
