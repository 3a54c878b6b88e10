"""What the handbook brings does not reach a page as more than text, even where the check was not asked; and each page has its policy."""

import re
from pathlib import Path

import pytest

from undertrim.publish.web import policy, site
from undertrim.publish.web.content import Content

HOSTILE = '<img src="x.png" onerror="alert(1)">'
PAGES = {
    "heading.md": f"# A {HOSTILE}\n\n## B {HOSTILE}\n",
    "code.md": f"# A `{HOSTILE}`\n\n## B `{HOSTILE}`\n",
    "settings.md": f"---\ntitle: '{HOSTILE}'\ndescription: '{HOSTILE}'\ntemplate: missing.html\n---\n# Settings\n",
    "lines.md": f"title: {HOSTILE}\nauthor: {HOSTILE}\n\n# Lines\n",
    "text.md": f"# Text\n\n{HOSTILE}\n\n<script>alert(1)</script>\n\n[a](javascript:alert(1))\n\n[b][r]\n\n[r]: javascript:alert(1)\n",
    "deep/page.md": "# Deep\n\n[up](../text.md) [out](../../x.md)\n",
    "block.md": "# Block\n\n<div onclick='alert(1)'>\n\nText\n\n</div>\n",
}


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site of hostile pages, rendered without being checked."""
    root = tmp_path_factory.mktemp("hostile")
    book = root / "records/handbook"
    book.mkdir(parents=True)
    for name, text in PAGES.items():
        (book / name).parent.mkdir(exist_ok=True)
        (book / name).write_text(text, encoding="utf-8")
    (root / "secret").mkdir()
    (root / "secret/key.md").write_text("# Key\n", encoding="utf-8")
    (root / "secret/key.png").write_bytes(b"key")
    (book / "folder").symlink_to(root / "secret")
    (book / "key.png").symlink_to(root / "secret/key.png")
    (book / "own.html").write_text("<script>alert(1)</script>", encoding="utf-8")
    site.render(root, Content(), root / "site")
    return root / "site"


@pytest.mark.parametrize("name", PAGES)
def test_nothing_but_text_reaches_a_page(built: Path, name: str) -> None:
    page = (built / name).with_suffix(".html").read_text(encoding="utf-8")
    assert '<img src="x.png"' not in page
    assert not re.search(r"<[a-z]+[^>]* on[a-z]+=", page)
    assert "<script>alert(1)" not in page
    assert 'href="javascript:' not in page.lower()
    assert policy.digest("alert(1)") not in page


def test_a_link_is_judged_from_the_place_of_its_page(built: Path) -> None:
    page = (built / "deep/page.html").read_text(encoding="utf-8")
    assert '<a href="../text.html">up</a>' in page
    assert "<span>out</span>" in page


def test_what_is_elsewhere_or_of_another_kind_is_not_in_the_site(built: Path) -> None:
    names = {path.name for path in built.rglob("*")}
    assert not names & {"key.html", "key.png", "own.html"}
    assert {"heading.html", "404.html"} <= names


def test_every_page_of_the_engine_has_its_policy(built: Path) -> None:
    for path in built.rglob("*.html"):
        assert path.read_text(encoding="utf-8").count("Content-Security-Policy") == 1


def test_settings_are_neither_shown_nor_used(built: Path) -> None:
    assert "<title>Settings - " in (built / "settings.html").read_text(encoding="utf-8")
    assert "<title>Lines - " in (built / "lines.html").read_text(encoding="utf-8")


def test_the_script_of_the_preview_may_run() -> None:
    page = policy.guarded('<head><meta charset="utf-8"></head><body></body>').encode()
    server = site._Preview.__new__(site._Preview)
    made = server._inject_js_into_html(page, 7).decode()
    scripts = re.findall(r"<script>(.*?)</script>", made, re.DOTALL)
    assert len(scripts) == 1
    assert f"script-src '{policy.digest(scripts[0])}'" in made


@pytest.mark.parametrize(("tag", "leave"), [
    ("<script>go()</script>", True), ('<script type="module">go()</script>', True), ('<script type="application/json">go()</script>', False),
    ('<script src="x.js">go()</script>', False), ("<style>go()</style>", True),
])  # fmt: skip
def test_what_of_the_theme_gets_leave(tag: str, leave: bool) -> None:
    assert (policy.digest("go()") in policy.policy(tag)) is leave
