"""Words of the glossary are explained where they stand: by touch, by keyboard, over a step, once in each section."""

import json
from pathlib import Path

from in_bay import press, start
from playwright.sync_api import Page, expect

from undertrim.publish.web import glossary

BOOK = "how-to-measure.html"
TERM, MEANING = ".ut-term", ".ut-meaning"


def opened(page: Page, site: Path, name: str = BOOK) -> Page:
    page.goto((site / name).as_uri())
    page.locator(TERM).first.wait_for()
    return page


def test_a_touch_tells_what_a_word_means(phone: Page, site: Path) -> None:
    opened(phone, site).locator(TERM, has_text="datum").first.tap()
    expect(phone.locator(MEANING)).to_contain_text("The face a depth is measured from.")
    phone.get_by_role("button", name="Close").tap()
    expect(phone.locator(MEANING)).to_be_hidden()


def test_the_keyboard_does_too_and_goes_back_to_the_word(phone: Page, site: Path) -> None:
    word = opened(phone, site).locator(TERM).first
    word.focus()
    phone.keyboard.press("Enter")
    expect(phone.get_by_role("dialog", name="What a word means")).to_be_visible()
    expect(phone.get_by_role("button", name="Close")).to_be_focused()
    phone.keyboard.press("Escape")
    expect(phone.locator(MEANING)).to_be_hidden()
    expect(word).to_be_focused()


def test_a_word_is_marked_once_below_a_heading(phone: Page, site: Path) -> None:
    opened(phone, site)
    below: list[list[str]] = phone.evaluate("""() => {
      const found = [[]];
      for (const item of document.querySelectorAll(".ut-book > *")) {
        if (item.matches("h2, h3")) found.push([]);
        found.at(-1).push(...Array.from(item.querySelectorAll(".ut-term"), word => word.dataset.term));
      }
      return found;
    }""")
    assert sum(map(len, below)) > 8
    assert [words for words in below if len(words) != len(set(words))] == []


def test_over_a_step_it_can_be_reached(phone: Page, site: Path) -> None:
    start(phone, site)
    word = phone.locator(f".ut-screen {TERM}")
    while not word.count():
        press(phone)
    word.first.tap()
    expect(phone.locator(f".ut-screen {MEANING}")).to_be_visible()
    phone.get_by_role("button", name="Close").tap()
    expect(phone.locator(".ut-screen")).to_be_visible()


def test_the_page_of_the_glossary_explains_nothing_twice(phone: Page, site: Path) -> None:
    phone.goto((site / "glossary.html").as_uri())
    phone.wait_for_load_state("networkidle")
    assert phone.locator(TERM).count() == 0
    assert phone.get_by_role("cell", name="datum", exact=True).is_visible()


def test_what_is_explained_stands_in_bold_in_the_glossary(tmp_path: Path) -> None:
    (tmp_path / "glossary.md").write_text(
        "# Glossary\n\n| word | meaning |\n|---|---|\n| part | comes off |\n| **bezel, surround** | the *frame*; see [Safety](safety.md) |\n",
        encoding="utf-8",
    )
    said = glossary.script(tmp_path).removeprefix("undertrimGlossary(").removesuffix(");\n")
    assert json.loads(said) == [[["bezel", "surround"], "The frame; see Safety."]]
    assert glossary.script(tmp_path / "no-such") == "undertrimGlossary([]);\n"
