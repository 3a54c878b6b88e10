"""The theme's switches say what they do in the language of the site."""

from pathlib import Path

from mkdocs.config import load_config

from undertrim.publish.web.site import UndertrimPlugin
from undertrim.words import Language, speaking

SETTINGS = Path(__file__).parents[2] / "mkdocs.yml"
OTHER = Language(
    "xx", {("page/switch-to-dark", "Switch to dark"): "Dunkel", ("page/switch-to-light", "Switch to light"): "Hell"}
)


def test_light_and_dark_are_named_by_the_catalogue(tmp_path: Path) -> None:
    assert "name: Switch" not in SETTINGS.read_text(encoding="utf-8")
    (tmp_path / "docs").mkdir()
    config = load_config(str(SETTINGS), docs_dir=str(tmp_path / "docs"), site_dir=str(tmp_path / "site"))
    with speaking(OTHER):
        UndertrimPlugin().on_config(config)
    assert [scheme["toggle"]["name"] for scheme in config.theme["palette"]] == ["Dunkel", "Hell"]
