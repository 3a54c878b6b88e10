"""The written pages agree with the program: commands parse, links lead somewhere, commands are described."""

import argparse
import re
import shlex
from pathlib import Path

import pytest

from pages import HANDBOOK, ROOT, TOP, commands, handbook, in_backticks, links, prose
from undertrim.cli import parser
from undertrim.commands import COMMANDS
from undertrim.publish.web import rule_pages
from undertrim.record import collection, measuring

PAGES = [*TOP, *handbook()]
GENERATED = {f"{name}.md" for name in (*rule_pages.pages(), "calculators")}
HOMES = (".", "generator/undertrim", "records", "schema", "site_overrides", "tests")


def _names(paths: list[Path]) -> list[str]:
    return [path.name for path in paths]


def test_the_handbook_is_whole() -> None:
    assert _names(handbook()) == [
        "answers.md",
        "glossary.md",
        "how-to-measure.md",
        "in-the-bay.md",
        "photographs.md",
        "reviewing.md",
        "safety.md",
        "shared-records.md",
        "will-it-fit.md",
        "wiring.md",
        "writing-a-record.md",
    ]


@pytest.mark.parametrize("page", PAGES, ids=_names(PAGES))
def test_a_page_begins_with_its_title_and_has_no_other(page: Path) -> None:
    headings = re.findall(r"^#+ ", prose(page), flags=re.MULTILINE)
    assert prose(page).startswith("# ")
    assert headings.count("# ") == 1


def test_the_readme_says_what_it_is_for_before_anything_else() -> None:
    _, first, *_ = prose(ROOT / "README.md").split("\n\n")
    assert first[:1].isalpha()
    assert len(first.split()) > 40


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_is_described(name: str) -> None:
    written = {text for page in PAGES for text in [*in_backticks(page), *commands(page)]}
    assert any(re.match(rf"undertrim {name}\b", text) for text in written)


@pytest.mark.parametrize("page", PAGES, ids=_names(PAGES))
def test_commands_in_blocks_parse(page: Path) -> None:
    for line in commands(page):
        words = shlex.split(line)
        if words[0] == "make":
            assert words[1] in _targets(), line
        elif words[0] == "undertrim":
            assert isinstance(parser().parse_args(words[1:]), argparse.Namespace)
        else:
            assert words[0] in {"source", "cp", "diff", "git", "rm"}, line


@pytest.mark.parametrize("page", PAGES, ids=_names(PAGES))
def test_commands_in_the_text_exist(page: Path) -> None:
    for text in in_backticks(page):
        first, *rest = text.split()
        if first == "undertrim" and rest:
            assert rest[0] in COMMANDS, text
        if first == "make" and rest:
            assert rest[0] in _targets(), text


def _targets() -> set[str]:
    return set(re.findall(r"^([a-z]+):", (ROOT / "Makefile").read_text(encoding="utf-8"), flags=re.MULTILINE))


@pytest.mark.parametrize("page", PAGES, ids=_names(PAGES))
def test_links_lead_somewhere(page: Path) -> None:
    for link in links(page):
        target, _, anchor = link.partition("#")
        if page.parent == HANDBOOK and target.removeprefix(measuring.SCHEME) in measuring.names():
            continue
        assert "://" not in target, "the pages stand by themselves"
        found = page.parent / target if target else page
        assert found.exists() or (page.parent == HANDBOOK and target in GENERATED), link
        if anchor:
            assert anchor in _anchors(found), link


def _anchors(page: Path) -> set[str]:
    headings = re.findall(r"^#+ (.+)$", prose(page), flags=re.MULTILINE)
    return {re.sub(r"[\W_]+", "-", heading.lower()).strip("-") for heading in headings}


@pytest.mark.parametrize("page", PAGES, ids=_names(PAGES))
def test_files_that_are_named_exist(page: Path) -> None:
    for text in in_backticks(page):
        if re.fullmatch(
            r"[\w./-]+\.(py|toml|ya?ml|json|j2|typ|js|css)|(generator|schema|site_overrides|tests)/[\w./-]+/", text
        ):
            assert text == collection.NAME or any((ROOT / home / text).exists() for home in HOMES), (
                text
            )  # it may be left out


def test_the_map_of_the_rooms_names_every_package() -> None:
    package = ROOT / "generator" / "undertrim"
    packages = (path.parent.relative_to(package) for path in package.rglob("__init__.py"))
    rooms = {room.as_posix() for room in packages if room.parent.name != "kinds"} - {"."}  # a register names its own
    named = {text.rstrip("/") for text in in_backticks(ROOT / "DEVELOPERS.md")}
    assert rooms - named == set()


def test_no_page_lists_the_vehicles() -> None:
    every = {path.stem for path in (ROOT / "records" / "vehicles").rglob("*.yaml")}
    for page in PAGES:
        text = page.read_text(encoding="utf-8")
        assert sum(stem in text for stem in every) < len(every) / 2, page.name


@pytest.mark.parametrize("page", handbook(), ids=_names(handbook()))
def test_what_can_hurt_defers_to_the_maker(page: Path) -> None:
    if page.name in {"how-to-measure.md", "in-the-bay.md", "safety.md"}:
        said = " ".join(prose(page).split())
        assert re.search(r"maker's information, local codes and licensed practice\W+come first", said)


def test_the_changelog_has_one_section_for_what_is_not_released() -> None:
    text = (ROOT / "CHANGELOG.md").read_text(encoding="utf-8")
    assert re.findall(r"^## (.+)$", text, flags=re.MULTILINE) == ["[Unreleased]"]
    kinds = {"Added", "Changed", "Deprecated", "Removed", "Fixed", "Security"}
    assert set(re.findall(r"^### (.+)$", text, flags=re.MULTILINE)) <= kinds
