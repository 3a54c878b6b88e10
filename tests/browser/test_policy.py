"""Every kind of page keeps to its policy: nothing it refuses is tried, no script fails, and nothing is asked of another host."""

import http
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page
from serving import ASK, Shop, serving

from undertrim.publish.web import policy

PAGES = {
    "home": "index.html",
    "visit": "vehicles/wexcombe/plover-2017-2022.html",
    "openings": "vehicles/wexcombe/plover-2017-2022.openings.html",
    "wiring": "vehicles/wexcombe/plover-2017-2022.wiring.html",
    "record": "vehicles/wexcombe/plover-2017-2022.record.html",
    "questions": "vehicles/ashgrove/drover-2015-2020.questions.html",
    "make": "makes/kelbrook.html",
    "handbook": "safety.html",
    "rules": "rules/index.html",
    "a-rule": "rules/depth-without-datum.html",
    "fields": "reference/index.html",
    "calculators": "calculators.html",
    "new-car": "new-car.html",
    "measuring": "measuring.html",
    "glossary": "glossary.html",
    "gear": "gear/skerrowe-broadside.html",
    "home-in-spanish": "es/index.html",
    "visit-in-spanish": "es/vehicles/wexcombe/plover-2017-2022.html",
    "openings-in-spanish": "es/vehicles/wexcombe/plover-2017-2022.openings.html",
    "wiring-in-spanish": "es/vehicles/wexcombe/plover-2017-2022.wiring.html",
    "record-in-spanish": "es/vehicles/wexcombe/plover-2017-2022.record.html",
    "make-in-spanish": "es/makes/kelbrook.html",
    "handbook-in-spanish": "es/how-to-measure.html",
    "glossary-in-spanish": "es/glossary.html",
    "measuring-in-spanish": "es/measuring.html",
    "gear-in-spanish": "es/gear/skerrowe-broadside.html",
    "calculators-in-spanish": "es/calculators.html",
    "a-rule-in-spanish": "es/rules/depth-without-datum.html",
}
WATCH = """
window.refused = [];
document.addEventListener("securitypolicyviolation", (event) => window.refused.push(
  [event.violatedDirective, event.blockedURI, event.sourceFile, event.lineNumber, event.sample].join(" ")));
"""


@pytest.fixture(scope="module")
def shop(site: Path) -> Iterator[Shop]:
    with serving(site, little=True) as made:
        yield made


@pytest.fixture(scope="module")
def whole(site: Path) -> Iterator[Shop]:
    """Where a device keeps all of the site."""
    with serving(site) as made:
        yield made


class Watched:
    """A page, and whatever goes wrong on it."""

    def __init__(self, page: Page, home: str) -> None:
        self.page, self.home = page, home
        self.wrong: list[str] = []
        page.add_init_script(WATCH)
        page.on("pageerror", lambda error: self.wrong.append(f"failed: {error}"))
        page.on(
            "console",
            lambda said: self.wrong.append(f"said: {said.text}") if said.type in ("error", "warning") else None,
        )
        page.on("request", lambda asked: self.wrong.append(f"asked: {asked.url}") if not self.own(asked.url) else None)

    def own(self, address: str) -> bool:
        return address.startswith((self.home, "data:", "blob:"))

    def everything(self) -> list[str]:
        """What went wrong until now."""
        return self.wrong + [f"refused: {one}" for one in self.page.evaluate("window.refused")]


@pytest.fixture
def watched(context: Callable[..., BrowserContext], request: pytest.FixtureRequest) -> Callable[[str], Watched]:
    """A page of a browser in the language of what it opens, which so is led nowhere else."""
    language = "es-ES" if "in-spanish" in request.node.name else "en-US"
    return lambda home: Watched(context(viewport={"width": 1200, "height": 800}, locale=language).new_page(), home)


def used(page: Page) -> None:
    """Open, press and toggle what a page has, so that its scripts do their work."""
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
    for selector in (
        "label[title='Switch to dark']",
        ".ut-choose input",
        ".md-clipboard",
        "#ut-start",
        "dialog[open] .ut-screen-top button",
        "#ut-everything",
        "#ut-reset",
    ):
        if page.locator(selector).count() and page.locator(selector).first.is_visible():
            page.locator(selector).first.click()
    for field in page.locator("input[type=search], input[type=text]").all()[:3]:
        if field.is_visible():
            field.fill("58 mm")
    if page.locator(".ut-not-so button").count():
        page.locator(".ut-not-so button").last.click()
        for name in ("says", "with", "by"):
            page.locator(f".ut-claim [name={name}]").fill("58 mm")
        page.locator(".ut-claim [type=submit]").click()
        page.locator(".ut-claim .ut-kept").wait_for()
    page.wait_for_load_state("networkidle")


@pytest.mark.parametrize("kind", PAGES)
def test_each_kind_of_page_from_disk(watched: Callable[[str], Watched], site: Path, kind: str) -> None:
    one = watched(site.as_uri())
    one.page.goto((site / PAGES[kind]).as_uri())
    used(one.page)
    assert one.everything() == []


@pytest.mark.parametrize("kind", [*PAGES, "no-such-page"])
def test_each_kind_of_page_from_a_server(watched: Callable[[str], Watched], shop: Shop, kind: str) -> None:
    one = watched(shop.at(""))
    one.page.goto(shop.at(PAGES.get(kind, "no-such-page.html")))
    used(one.page)
    expected = {
        f"said: Failed to load resource: the server responded with a status of 404 ({http.HTTPStatus(404).phrase})"
    }
    assert set(one.everything()) - (expected if kind == "no-such-page" else set()) == set()


@pytest.mark.parametrize("kind", ["home", "home-in-spanish"])
def test_all_is_kept_under_the_policy(watched: Callable[[str], Watched], whole: Shop, kind: str) -> None:
    one = watched(whole.at(""))
    one.page.goto(whole.at(PAGES[kind]))
    standing = one.page.evaluate(ASK, {"ask": "fill", "place": PAGES[kind].removesuffix("index.html")})
    assert standing["kept"] == standing["of"] > 80
    used(one.page)
    assert one.everything() == []


def test_the_theme_works_under_its_policy(watched: Callable[[str], Watched], site: Path) -> None:
    """No script stands in place: the one that sets the chosen colours is a file, and nothing is known by digest."""
    one = watched(site.as_uri())
    one.page.goto((site / "safety.html").as_uri())
    policy = one.page.locator("meta[http-equiv]").get_attribute("content") or ""
    assert "script-src 'self' file:; " in policy
    assert one.page.locator("body").get_attribute("data-md-color-scheme") == "default"
    one.page.locator("label[title='Switch to dark']").first.click()
    one.page.reload()
    assert one.page.locator("body").get_attribute("data-md-color-scheme") == "slate"


INTRUDERS = {
    "script": "<script>window.intruded = 1</script>",
    "handler": '<img src="x.png" onerror="window.intruded = 1">',
    "foreign script": '<script src="https://intruder.example/x.js"></script>',
    "foreign picture": '<img src="https://intruder.example/x.png">',
    "frame": '<iframe src="https://intruder.example/"></iframe>',
    "style": "<style>body { display: none }</style>",
    "base": '<base href="https://intruder.example/">',
}


@pytest.mark.parametrize("what", INTRUDERS)
def test_what_gets_into_a_page_is_refused(
    watched: Callable[[str], Watched], site: Path, tmp_path: Path, what: str
) -> None:
    text = (site / "safety.html").read_text(encoding="utf-8")
    page = tmp_path / "safety.html"
    page.write_text(text.replace("</body>", INTRUDERS[what] + "</body>"), encoding="utf-8")
    one = watched(tmp_path.as_uri())
    one.page.goto(page.as_uri())
    assert [found for found in one.everything() if found.startswith("refused:")], "the policy said nothing"
    assert one.page.evaluate("window.intruded") is None


def test_a_script_in_the_content_gets_no_leave() -> None:
    """However it came there, it is not among the scripts of the theme."""
    content = "<p>Text</p><script>alert(1)</script>"
    page = f'<head><meta charset="utf-8"><script>theme()</script></head><body>{content}</body>'
    made = policy.guarded(page, content)
    assert policy.digest("theme()") in made
    assert policy.digest("alert(1)") not in made


def test_every_page_has_its_policy_before_anything_it_loads(site: Path) -> None:
    pages = sorted(site.rglob("*.html"))
    assert len(pages) > 20
    for path in pages:
        text = path.read_text(encoding="utf-8")
        assert text.count("Content-Security-Policy") == 1, path
        at = text.index("Content-Security-Policy")
        assert all(at < text.index(tag) for tag in ("<script", "<link", "<style") if tag in text), path
        assert " style=" not in text, path
