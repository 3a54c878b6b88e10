"""The look is ours and hangs under a class of our own, so that the frame around the pages can be changed."""

import re

from undertrim.publish.web.styles import joined
from undertrim.resources import top

FOLDER = top("site_overrides") / "assets" / "undertrim"
_THEME = re.compile(r"[.-]md-|\bmd-[\w-]+")


def test_only_one_style_sheet_knows_the_names_of_the_theme() -> None:
    knowing = {path.name for path in FOLDER.glob("*.css") if _THEME.search(path.read_text(encoding="utf-8"))}
    assert knowing == {"frame.css"}


def test_all_style_sheets_are_one() -> None:
    first, second = (
        "/* why */\n.a { color: red; }\n",
        "@charset 'utf-8';\n/* two\nlines */ .b { --c: 1; }\n/*# sourceMappingURL=x.map */",
    )
    assert joined([first, second]) == ".a { color: red; }\n@charset 'utf-8';\n.b { --c: 1; }\n"


def test_no_style_sheet_leads_to_a_file() -> None:
    """What they lead to would be looked for beside the one that they become."""
    sheets = [path.read_text(encoding="utf-8") for path in FOLDER.glob("*.css")]
    assert all(re.match(r"['\"]?data:", found) for sheet in sheets for found in re.findall(r"url\((.{8})", sheet))


def test_every_style_sheet_is_loaded() -> None:
    settings = top("mkdocs.yml").read_text(encoding="utf-8")
    assert set(re.findall(r"assets/undertrim/([\w-]+\.css)", settings)) == {path.name for path in FOLDER.glob("*.css")}
