"""A site in two languages: whole in each, with the same facts, and what says nothing in either once."""

import json
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path, PurePosixPath
from urllib.parse import unquote, urldefrag

import pytest
from small_site import held, quick, silent, tell_of_few_rules, workspace

from here import Here
from spoken_too import cyrillic_spanish
from undertrim.publish.build.building import build
from undertrim.publish.web.editions import Edition, editions, own_name
from undertrim.words import say

CYRILLIC = re.compile("[а-я]{3}")


@pytest.fixture(scope="module")
def root() -> Iterator[Path]:
    """The folder of a small workspace whose site is in English and Spanish."""
    with pytest.MonkeyPatch.context() as patch, quick() as folder, cyrillic_spanish(folder / "words"):
        tell_of_few_rules(patch)
        place = workspace(folder / "both")
        (folder / "both/undertrim.toml").write_text('language = ["en", "es"]\n', encoding="utf-8")
        made = build(
            place, folder / "both/site", sheets=True, progress=silent, crew=Here()
        )  # a printer that was used here hangs in forked workers
        assert ([say(one.said) for one in made.failed], made.report.problems) == ([], ())
        yield folder


@pytest.fixture(scope="module")
def site(root: Path) -> dict[str, bytes]:
    return held(root / "both/site")


def pages(site: dict[str, bytes]) -> dict[str, str]:
    return {name: content.decode() for name, content in site.items() if name.endswith(".html")}


class Read(HTMLParser):
    """The language of a page, what it leads to or loads, and its ways to other languages."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.lang = ""
        self.links: list[str] = []
        self.others: list[dict[str, str]] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        self.lang = given["lang"] if tag == "html" else self.lang
        self.links += [given[name] for name in ("href", "src") if name in given]
        if tag == "a" and "hreflang" in given and "data-top" in given:
            self.others.append(given)


def target(name: str, link: str) -> str:
    """The file that a link of a page leads to."""
    parts: list[str] = []
    for part in (PurePosixPath(name).parent / unquote(urldefrag(link)[0])).parts:
        if part != "..":
            parts.append(part)
        else:
            parts.pop()
    return "/".join(parts)


def test_every_page_is_there_in_both_and_says_its_language(site: dict[str, bytes]) -> None:
    found = {name: Read(page) for name, page in pages(site).items() if name != "404.html"}
    first = {name for name in found if not name.startswith("es/")}
    assert {f"es/{name}" for name in first} == found.keys() - first
    assert {name: read.lang for name, read in found.items()} == {
        name: "en" if name in first else "es" for name in found
    }


def test_every_page_leads_to_itself_in_the_other_language(site: dict[str, bytes]) -> None:
    for name, page in pages(site).items():
        if name == "404.html":
            continue
        (way,) = Read(page).others
        other = name.removeprefix("es/") if name.startswith("es/") else f"es/{name}"
        assert (target(name, way["href"]), way["lang"]) == (other, "en" if name.startswith("es/") else "es")
        assert target(name, way["data-top"] + "index.html") == (
            "index.html" if name.startswith("es/") else "es/index.html"
        )


def test_every_link_leads_to_a_file(site: dict[str, bytes]) -> None:
    own = re.compile(r"(?![a-z]+:|#|$)")
    lost = [
        (name, link)
        for name, page in pages(site).items()
        if name != "404.html"
        for link in Read(page).links
        if own.match(link) and target(name, link) not in site and link not in (".", "..", "../..")
    ]
    assert lost == []


def test_what_says_nothing_stands_once(site: dict[str, bytes]) -> None:
    more = {name for name in site if name.startswith("es/") and not name.endswith(".html")}
    assert {PurePosixPath(name).suffix for name in more} <= {".js", ".json", ".xml"}
    assert not any(re.search(r"\.(?:css|png|pdf|svg)$|es/vehicles/.*\.json$", name) for name in more)
    assert "es/published.schema.json" not in more


def test_words_are_those_of_the_language_and_data_is_not(site: dict[str, bytes]) -> None:
    english, spanish = (
        {name: page for name, page in pages(site).items() if name.startswith(f"{place}vehicles/")}
        for place in ("", "es/")
    )
    assert not any(map(CYRILLIC.search, english.values()))
    assert all(map(CYRILLIC.search, spanish.values()))
    scripts = {name: text.decode() for name, text in site.items() if name.endswith(".js") and "undertrim/" in name}
    assert not any(CYRILLIC.search(text) for name, text in scripts.items() if not name.startswith("es/"))
    assert CYRILLIC.search(scripts["es/assets/undertrim/page-visit.js"])
    assert not any(CYRILLIC.search(text.decode()) for name, text in site.items() if name.endswith(".json"))


DESK = {"rules", "reference", "evidence", "gear", "places", "assets"}


def test_a_device_keeps_one_language_and_what_all_share(site: dict[str, bytes]) -> None:
    lists = {place: json.loads(site[f"{place}keeper/list.json"]) for place in ("", "es/")}
    for place, one in lists.items():
        files = set(one["files"]) | {name for make in one["makes"] for name in _of_make(site, place, make)}
        assert {name.removeprefix(place).split("/")[0] for name in one["desk"]} <= DESK
        assert files.isdisjoint(one["desk"])
        files |= one["desk"].keys()
        assert files <= site.keys()
        mine = {name for name in pages(site) if name.startswith("es/") == (place == "es/")} - {"404.html"}
        assert {name for name in files if name.endswith(".html")} - {"404.html"} == mine | {"index.html"}
        assert {"assets/undertrim/style.css", f"{place}assets/undertrim/page-visit.js"} <= files
        assert not any(name.startswith("es/") for name in files if place == "")
    assert "assets/undertrim/page.js" in lists["es/"]["files"]  # with the first page it leads to the reader's language
    assert "assets/undertrim/page-visit.js" not in lists["es/"]["files"]


def _of_make(site: dict[str, bytes], place: str, make: str) -> dict[str, str]:
    found = json.loads(site[f"{place}keeper/{make}.json"])
    return {**found["pages"], **found["more"]}


def test_a_page_of_the_handbook_says_in_which_language_it_is(site: dict[str, bytes]) -> None:
    assert '<div lang="en">' in site["es/about.html"].decode()
    assert '<div lang="en">' not in site["about.html"].decode()
    assert '<div lang="en">' not in site["es/index.html"].decode()


def test_the_english_site_is_what_it_is_alone(root: Path, site: dict[str, bytes]) -> None:
    """But for the ways to the other language, and the lists of what a device keeps, which know it by its mark."""
    place = workspace(root / "alone")
    build(place, root / "alone/site", sheets=False, progress=silent)
    alone = held(root / "alone/site")
    way = re.compile(r'\s*<nav class="ut-languages".*?</nav>\s*', re.DOTALL)
    both = {name: way.sub("", page) for name, page in pages(site).items() if not name.startswith("es/")}
    assert pages(alone).keys() == both.keys()
    said = {
        name: page for name, page in pages(alone).items() if name != "404.html"
    }  # it speaks all languages of the site
    unlike = [name for name, page in said.items() if re.sub(r"\s+", "", page) != re.sub(r"\s+", "", both[name])]
    assert unlike == [name for name in unlike if re.search(r"\.pdf", both[name])]  # sheets are left out there
    scripts = {name: text for name, text in alone.items() if name.endswith(".js")}
    assert {name: site[name] for name in scripts} == scripts


def test_ways_between_editions() -> None:
    first, spanish, french = editions(("en", "es", "fr"))
    assert first == Edition("en", "", "en", {"es": "es/", "fr": "fr/"})
    assert spanish.others == {"en": "../", "fr": "../fr/"}
    assert [one["href"] for one in french.same_pages("makes/a.html")] == ["../../makes/a.html", "../../es/makes/a.html"]
    assert (first.beside("vehicles/a/"), spanish.beside("vehicles/a/")) == ("", "../../../vehicles/a/")


def test_a_language_is_named_in_its_own_words() -> None:
    assert [own_name(tag) for tag in ("en", "es", "pt-BR", "qaa")] == [
        "English",
        "Español",
        "Português (Brasil)",
        "qaa",
    ]
