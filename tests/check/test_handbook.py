"""The handbook is not an open door: what comes from its folder is text, links and pictures, and the rest is named with its place."""

import os
from collections.abc import Callable
from pathlib import Path, PurePosixPath

import pytest
from markdown import Markdown

from pages import ROOT
from pages import handbook as pages_of_ours
from undertrim.check import handbook, runner
from undertrim.cli import main
from undertrim.publish.web import rule_pages
from undertrim.publish.web.field_pages import field_page
from undertrim.record import handbook as files
from undertrim.record.plain_markdown import PlainMarkdown, met
from undertrim.record.store import Workspace
from undertrim.resources import top

HERE = PurePosixPath("about.md")
Say = Callable[..., list[str]]


@pytest.fixture
def say(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Say:
    """Writes files into a handbook and gives its problems as `file:line:column: message`."""
    monkeypatch.chdir(tmp_path)
    start = tmp_path / "records/handbook"
    start.mkdir(parents=True)

    def check(text: str | None = None, name: str = "about.md") -> list[str]:
        if text is not None:
            (start / name).parent.mkdir(parents=True, exist_ok=True)
            (start / name).write_text(text, encoding="utf-8")
        found = [item for item in runner.check(Workspace(tmp_path)).problems if item.rule == "handbook"]
        assert all(item.level == "error" and item.hint for item in found)
        return [f"{item.file.name}:{item.position.line}:{item.position.column}: {item.message}" for item in found]

    return check


RAW = [
    ("<script>alert(1)</script>", "<script>"),
    ('Text <img src="x" onerror="alert(1)"> more', '<img src="x" onerror="alert(1)">'),
    ("<svg/onload=alert(1)>", "<svg/onload=alert(1)>"),
    ('<div markdown="1">\nText\n</div>', '<div markdown="1">'),
    ("Text <!-- hidden --> more", "<!-- hidden -->"),
    ("| a |\n|---|\n| <b>x</b> |", "<b>"),
    ("- one\n- <i>two</i>", "<i>"),
    ("> <iframe src='https://x.example'></iframe>", "<iframe src='https://x.example'>"),
    ("<javascript:alert(1)>", "<javascript:alert(1)>"),
]


@pytest.mark.parametrize(("text", "raw"), RAW)
def test_raw_html_is_named_with_its_line(say: Say, text: str, raw: str) -> None:
    found = say(f"# About\n\nA line.\n\n{text}\n")
    line, column = _at(f"# About\n\nA line.\n\n{text}\n", raw)
    assert found == [f"about.md:{line}:{column}: raw HTML is not passed on: '{raw}'"]


def _at(text: str, piece: str) -> tuple[int, int]:
    before = text[: text.index(piece)]
    return before.count("\n") + 1, len(before) - before.rfind("\n")


@pytest.mark.parametrize(
    "text",
    [
        "`<script>`",
        "```\n<script>alert(1)</script>\n```",
        "    <b>indented</b>",
        "a < b and c > d",
        "&lt;b&gt;",
        "<https://x.example/>",
        "<me@x.example>",
    ],
)
def test_what_is_text_or_an_address_is_left(say: Say, text: str) -> None:
    assert say(f"# About\n\n{text}\n") == []


LINKS = [
    "javascript:alert(1)", "JavaScript:alert(1)", "java&#115;cript:alert(1)", "&#106;avascript:alert(1)", "javascript&colon;alert(1)",
    "\x01javascript:alert(1)", "vbscript:x", "data:text/html,x", "file:///etc/passwd", "//x.example/", "/etc/passwd", "\\\\x.example\\y",
    "../secret.md", "a/../../secret.md",
]  # fmt: skip


@pytest.mark.parametrize("address", LINKS)
@pytest.mark.parametrize("form", ["[text]({})", "[text][r]\n\n[r]: {}", "*[text]({})*"])
def test_a_link_that_leads_elsewhere_is_refused_and_has_no_address(say: Say, address: str, form: str) -> None:
    text = f"# About\n\n{form.format(address)}\n"
    made = Markdown(extensions=[PlainMarkdown(HERE)]).convert(text)
    assert "href" not in made
    assert len([one for one in say(text) if "is not passed on" in one]) == 1


@pytest.mark.parametrize(
    "address",
    ["safety.md", "safety.md#a", "#a", "https://x.example/", "mailto:a@x.example", "tel:+1", "deep/../safety.md"],
)
def test_a_plain_link_is_left(say: Say, address: str) -> None:
    assert say(f"# About\n\n[text]({address})\n") == []


@pytest.mark.parametrize(
    "address",
    ["https://x.example/a.png", "data:image/png;base64,AA", "a.svg", "../a.png", "/a.png", "//x.example/a.png"],
)
def test_a_picture_is_a_file_of_the_handbook(say: Say, address: str) -> None:
    text = f"# About\n\n![text]({address})\n"
    assert "src" not in Markdown(extensions=[PlainMarkdown(HERE)]).convert(text)
    assert len(say(text)) == 1
    assert say("# About\n\n![text](a.png)\n") == []


def test_a_column_is_aligned_without_a_style_in_place() -> None:
    made = Markdown(extensions=["tables", PlainMarkdown(HERE)]).convert("| a |\n|--:|\n| 1 |")
    assert '<td align="right">1</td>' in made
    assert "style" not in made


def test_a_page_in_a_folder_may_lead_up_to_the_handbook_and_no_further() -> None:
    place = PurePosixPath("deep/page.md")
    assert met("[a](../safety.md)", place) == []
    assert [one.text for one in met("[a](../../safety.md)", place)] == ["../../safety.md"]


def test_two_that_read_the_same_have_their_own_lines(say: Say) -> None:
    assert [one[:12] for one in say("# About\n\n<b>x\n\n<b>y\n")] == ["about.md:3:1", "about.md:5:1"]


@pytest.mark.parametrize("top", ["---\ntitle: <b>x</b>\n---\n# About\n", "title: x\n\n# About\n", "Text\n", ""])
def test_settings_above_the_heading_are_refused(say: Say, top: str) -> None:
    assert "about.md:1:1: a page begins with its heading" in say(top)


@pytest.mark.parametrize(
    "name", ["page.html", "x.js", "x.svg", "x.css", "mkdocs.yml.txt", "<b>.md", "CNAME", "x.md.html"]
)
def test_only_pages_and_pictures_are_published(say: Say, name: str, tmp_path: Path) -> None:
    found = say("# x\n", name)
    assert len(found) == 1
    files.copy(tmp_path / "records/handbook", tmp_path / "copy", "en")
    assert not (tmp_path / "copy" / name).exists()


def test_links_are_not_followed(say: Say, tmp_path: Path) -> None:
    start, secret = tmp_path / "records/handbook", tmp_path / "secret"
    secret.mkdir()
    (secret / "key.md").write_text("# Key\n", encoding="utf-8")
    (start / "file.md").symlink_to(secret / "key.md")
    (start / "folder").symlink_to(secret)
    (start / "round").symlink_to(start)
    (start / "gone.md").symlink_to(secret / "gone.md")
    (start / "inside.md").symlink_to(start / "about.md")
    found = say("# About\n")
    assert sorted(one.split(":")[0] for one in found) == ["file.md", "folder", "gone.md", "inside.md", "round"]
    assert all(one.endswith("a link is not followed") for one in found)
    files.copy(start, tmp_path / "copy", "en")
    assert [path.name for path in (tmp_path / "copy").rglob("*")] == ["about.md"]


def test_a_handbook_that_is_a_link_is_not_entered(tmp_path: Path) -> None:
    (tmp_path / "records").mkdir()
    (tmp_path / "records/handbook").symlink_to(tmp_path)
    assert [item.message for item in handbook.problems(Workspace(tmp_path))] == ["a link is not followed"]
    files.copy(tmp_path / "records/handbook", tmp_path / "copy", "en")
    assert not (tmp_path / "copy").exists()


def test_a_pipe_is_not_opened_and_a_large_page_not_read(say: Say, tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "records/handbook/pipe.md")
    (tmp_path / "records/handbook/large.md").write_bytes(b"# x\n" * 300_000)
    assert [one.split(": ", 1)[1] for one in say()] == ["larger than 1 MB", "only plain files are read"]


def test_a_page_in_another_encoding_is_named(say: Say, tmp_path: Path) -> None:
    (tmp_path / "records/handbook/old.md").write_bytes("# Größe\n".encode("latin-1"))
    assert say() == ["old.md:1:1: not in UTF-8"]


def test_the_handbook_is_looked_at_with_everything_and_by_its_name(
    say: Say, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    say("# About\n\n<b>\n")
    some = Path("records/gear/leads/pellworth-cord-12.yaml")
    some.parent.mkdir(parents=True)
    some.write_bytes((top("records") / some.relative_to("records")).read_bytes())
    for words in ([], ["records"], ["records/handbook"], ["records/handbook/about.md"]):
        assert main(["check", *words]) == 1
        assert (
            "records/handbook/about.md:3:1: error: raw HTML is not passed on: '<b>' (handbook)"
            in capsys.readouterr().out
        )


def test_what_we_write_ourselves_needs_nothing_of_it() -> None:
    for path in pages_of_ours():
        assert met(path.read_text(encoding="utf-8"), PurePosixPath(path.name)) == []
    for name, text in rule_pages.pages().items():
        assert met(text, PurePosixPath(f"{name}.md")) == []
    assert met(field_page(), PurePosixPath("reference/index.md")) == []
    assert handbook.problems(Workspace(ROOT)) == []
