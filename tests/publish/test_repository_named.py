"""A collection that names its repository: pages know it, and the theme's part of them asks its host nothing."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from small_site import ROOT, quick, silent, tell_of_few_rules, tiny

from undertrim.publish.build.building import build

NAMED = '<meta name="undertrim-repository" content="https://code.example/shop/records">'


@pytest.fixture
def folder() -> Iterator[Path]:
    with quick() as found:
        yield found


@pytest.mark.parametrize("named", [True, False])
def test_the_repository_of_the_records(folder: Path, monkeypatch: pytest.MonkeyPatch, named: bool) -> None:
    tell_of_few_rules(monkeypatch)
    workspace = tiny(folder)
    shutil.copy(ROOT / "mkdocs.yml", folder)
    shutil.copytree(ROOT / "site_overrides", folder / "site_overrides")
    (folder / "records/handbook").mkdir()
    (folder / "records/handbook/about.md").write_text("# About\n", encoding="utf-8")
    if named:
        with (folder / "mkdocs.yml").open("a", encoding="utf-8") as settings:
            settings.write("\nrepo_url: https://code.example/shop/records\n")
    build(workspace, folder / "site", sheets=False, progress=silent)
    pages = [path.read_text(encoding="utf-8") for path in (folder / "site").rglob("*.html")]
    assert len(pages) > 8
    assert {page.count(NAMED) for page in pages} == {int(named)}
    assert {page.count("code.example") for page in pages} == {int(named)}
