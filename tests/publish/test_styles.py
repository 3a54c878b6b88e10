"""The look is ours and hangs under a class of our own, so that the frame around the pages can be changed."""

import re

from undertrim.resources import top

FOLDER = top("site_overrides") / "assets" / "undertrim"
_THEME = re.compile(r"[.-]md-|\bmd-[\w-]+")


def test_only_one_style_sheet_knows_the_names_of_the_theme() -> None:
    knowing = {path.name for path in FOLDER.glob("*.css") if _THEME.search(path.read_text(encoding="utf-8"))}
    assert knowing == {"frame.css"}


def test_every_style_sheet_is_loaded() -> None:
    settings = top("mkdocs.yml").read_text(encoding="utf-8")
    assert set(re.findall(r"assets/undertrim/([\w-]+\.css)", settings)) == {path.name for path in FOLDER.glob("*.css")}
