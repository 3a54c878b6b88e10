"""What a collection chooses for itself, and what is said where it cannot be."""

import sys
from pathlib import Path

import pytest

from undertrim.cli import main
from undertrim.publish.build import beside
from undertrim.publish.printed import paper
from undertrim.record import collection
from undertrim.record.collection import BadSettings, NoSuchLanguage, Settings
from undertrim.words import Language, language, of_environment, tags


def put(folder: Path, text: str) -> Path:
    (folder / "records").mkdir(exist_ok=True)
    (folder / "undertrim.toml").write_text(text, encoding="utf-8")
    return folder


def test_without_settings_the_usual_ones_hold(tmp_path: Path) -> None:
    assert collection.settings(tmp_path) == Settings(language=("en",), paper=("a4",))


@pytest.mark.parametrize(
    ("text", "papers"),
    [
        ('"letter"', ("letter",)),
        ('["letter"]', ("letter",)),
        ('["letter", "a4"]', ("letter", "a4")),
        ('["a4", "a4"]', ("a4",)),
    ],
)
def test_a_collection_says_its_paper(tmp_path: Path, text: str, papers: tuple[str, ...]) -> None:
    assert collection.settings(put(tmp_path, f"paper = {text}\n")) == Settings(paper=papers)


def test_every_paper_of_a_collection_can_be_printed_on() -> None:
    assert set(collection.PAPERS) == set(paper.PAPERS) == set(beside.PAPERS)


@pytest.mark.parametrize(
    ("text", "tags"), [('"qq"', ("qq",)), ('["en", "qq"]', ("en", "qq")), ('["qq", "en", "qq"]', ("qq", "en"))]
)
def test_a_collection_says_its_languages(tmp_path: Path, text: str, tags: tuple[str, ...]) -> None:
    assert collection.settings(put(tmp_path, f"language = {text}\n")) == Settings(language=tags)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('langauge = "en"\n', "no setting is called 'langauge'; did you mean 'language'?"),
        ("language = 1\n", '\'language\' must be text in quotes, or a list of such: language = ["en", "es"]'),
        ("language = []\n", "'language' must be text in quotes, or a list of such"),
        ('paper = "a5"\n', "'paper' must be 'a4' or 'letter', or a list of both: paper = [\"a4\", \"letter\"]"),
        ("paper = 4\n", "'paper' must be 'a4' or 'letter', or a list of both"),
        ("paper = []\n", "'paper' must be 'a4' or 'letter', or a list of both"),
        ('paper = ["a4", ["letter"]]\n', "'paper' must be 'a4' or 'letter', or a list of both"),
        ('papper = "a4"\n', "no setting is called 'papper'; did you mean 'paper'?"),
        ("language\n", "this is no TOML: Expected '=' after a key in a key/value pair (at line 1, column 9)."),
    ],
)
def test_what_cannot_be_used_is_said_with_its_file(tmp_path: Path, text: str, said: str) -> None:
    with pytest.raises(BadSettings) as refused:
        collection.settings(put(tmp_path, text))
    assert str(refused.value).startswith(f"{tmp_path / 'undertrim.toml'}: {said}")


def test_a_language_that_nobody_wrote_is_refused_with_those_there_are() -> None:
    with pytest.raises(NoSuchLanguage, match="there are no words in the language 'zz': ask for 'en'"):
        collection.spoken_in("zz")


@pytest.mark.parametrize("tag", ["", ".", "..", "../../etc", "en/../en", "EN"])
def test_a_tag_leads_to_no_other_folder(tag: str) -> None:
    with pytest.raises(NoSuchLanguage):
        collection.spoken_in(tag)


def test_a_language_is_a_folder_with_its_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys.modules["undertrim.words.language"], "_locale", lambda: tmp_path)
    (tmp_path / "pt-BR" / "LC_MESSAGES").mkdir(parents=True)
    assert tags() == ["en"]
    head = 'msgid ""\nmsgstr ""\n"Plural-Forms: nplurals=2; plural=(n > 1);\\n"\n\n'
    text = 'msgctxt "lists/quoted"\nmsgid "\'{value}\'"\nmsgstr "«{value}»"\n'
    (tmp_path / "pt-BR" / "LC_MESSAGES" / "undertrim.po").write_text(head + text, encoding="utf-8")
    assert tags() == ["en", "pt-BR"]
    found: Language = language.__wrapped__("pt-BR")
    assert (found.tag, found.decimal_mark, found.form(0), found.form(2)) == ("pt-BR", ",", 0, 1)
    assert found.texts == {("lists/quoted", "'{value}'"): "«{value}»"}


def test_a_command_speaks_what_is_asked_for_else_what_its_collection_says(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    refused = (2, "undertrim: there are no words in the language 'zz': ask for 'en' or 'es'\n")
    assert (main(["check", "--language", "zz"]), capsys.readouterr().err) == refused
    put(tmp_path, 'language = "zz"\n')
    assert (main(["check", "--in", str(tmp_path)]), capsys.readouterr().err) == refused
    main(["check", "--in", str(tmp_path), "--language", "en"])
    assert capsys.readouterr().err.startswith("undertrim: no records found")


@pytest.mark.parametrize(
    ("environment", "tag"),
    [
        ({}, ""),
        ({"LANG": "es_MX.UTF-8"}, "es"),
        ({"LANG": "de_DE.UTF-8"}, ""),
        ({"LANG": "C.UTF-8"}, ""),
        ({"LANG": "es_ES.UTF-8", "LC_MESSAGES": "en_GB.UTF-8"}, "en"),
        ({"LANG": "es_ES.UTF-8", "LC_ALL": "C"}, ""),
        ({"LANG": "de_DE.UTF-8", "LANGUAGE": "de:es:en"}, "es"),
        ({"LC_ALL": "C", "LANGUAGE": "es"}, ""),
        ({"LANG": "es_ES@euro"}, "es"),
    ],
)
def test_the_environment_says_which_language_its_user_reads(environment: dict[str, str], tag: str) -> None:
    """GNU gettext manual, 2.3.2 "Locale Environment Variables" and 2.3.3 "Specifying a Priority List of Languages"."""
    assert of_environment(environment) == tag


def test_a_command_speaks_the_language_of_its_environment(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    put(tmp_path, 'language = "en"\n')
    english = (main(["check", "--in", str(tmp_path)]), capsys.readouterr().err)
    monkeypatch.setenv("LANG", "es_US.UTF-8")
    spanish = (main(["check", "--in", str(tmp_path)]), capsys.readouterr().err)
    assert (english[0], english[1] == spanish[1]) == (spanish[0], False)
    assert (main(["check", "--in", str(tmp_path), "--language", "en"]), capsys.readouterr().err) == english
