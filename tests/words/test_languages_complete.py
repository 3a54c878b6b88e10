"""Every language that the program speaks says all that its readers meet, with the same values in each sentence, and nothing of yesterday."""

import re
from functools import cache
from pathlib import Path
from string import Formatter
from typing import TypeAlias

import extracting
import pytest
from babel.messages.pofile import read_po, write_po

from undertrim.words.language import Text, _files, _text, tags

Key: TypeAlias = tuple[str, Text]

LEFT_OUT = {
    r"check/rules/\w+#page": "the pages of the rules are the handbook's, which is in English so far; a page says so",
}
"""Contexts of texts that need no translation in this version, each with the reason."""

OTHERS = [tag for tag in tags() if tag != "en"]


@cache
def template(folder: Path) -> dict[Key, bool]:
    """What translators get, and whether each is a template of ours with values in braces."""
    file = folder / "undertrim.pot"
    extracting.extract(file, "generator", "schema", "site_overrides")
    with file.open("rb") as opened:
        found = read_po(opened)
    return {(str(one.context), _text(one.id)): not _stands(one.context, one.auto_comments) for one in found if one.id}


def _stands(context: str | None, remarks: list[str]) -> bool:
    """Whether a text is no template: a docstring, a word of a schema, or one that argparse formats."""
    return any(one.startswith("Not a template") for one in remarks) or str(context).startswith("argparse/")


@pytest.fixture(scope="module")
def wanted(tmp_path_factory: pytest.TempPathFactory) -> dict[Key, bool]:
    return template(tmp_path_factory.getbasetemp())


def translated(tag: str) -> dict[Key, Text]:
    """What the gettext files of a language say."""
    found: dict[Key, Text] = {}
    for path in _files(tag):
        with path.open("rb") as opened:
            entries = [one for one in read_po(opened) if one.id]
        strangers = [one.context for one in entries if room(str(one.context)) != path.stem]
        assert strangers == [], f"{path.name} is the file of another room"
        fuzzy = [one.context for one in entries if one.fuzzy]
        assert fuzzy == [], f"{path.name}: look at these once more, then take the mark off"
        said = {
            (str(one.context), _text(one.id)): _text(one.string) for one in entries if one.string and all(one.string)
        }
        assert not found.keys() & said.keys()
        found |= said
    return found


def room(context: str) -> str:
    """The file that a text belongs in: the first piece of its context."""
    return re.split("[/#]", context)[0]


@pytest.mark.parametrize("tag", OTHERS)
def test_every_text_is_there(tag: str, wanted: dict[Key, bool]) -> None:
    needed = {key for key in wanted if not any(re.fullmatch(place, key[0]) for place in LEFT_OUT)}
    assert sorted(needed - translated(tag).keys(), key=str) == []


@pytest.mark.parametrize("tag", OTHERS)
def test_no_translation_is_of_a_text_that_has_changed_since(tag: str, wanted: dict[Key, bool]) -> None:
    assert sorted(translated(tag).keys() - wanted.keys(), key=str) == []


@pytest.mark.parametrize("tag", OTHERS)
def test_a_sentence_has_the_values_of_the_english_one(tag: str, wanted: dict[Key, bool]) -> None:
    said = {key: text for key, text in translated(tag).items() if wanted.get(key)}
    assert {key: text for key, text in said.items() if not same_values(key[1], text)} == {}
    braces = re.compile(r"%\(\w+\)[a-z]|%[srd%]")
    formatted = {key: text for key, text in translated(tag).items() if key[0].startswith("argparse/")}
    assert {
        key: text
        for key, text in formatted.items()
        if any(sorted(braces.findall(form)) != sorted(braces.findall(forms(key[1])[-1])) for form in forms(text))
    } == {}


def same_values(english: Text, text: Text) -> bool:
    """Whether a text has the values of the English one; in a form for one thing `count` may be said by a word."""
    whole = set(values(forms(english)[-1]))
    first, *more = (set(values(form)) for form in forms(text))
    last = all(one == whole for one in (more or [first]))
    return last and (not more or first | {"count"} >= whole >= first)


def forms(text: Text) -> tuple[str, ...]:
    """A text by its forms of number."""
    return (text,) if isinstance(text, str) else tuple(text)


def values(text: str) -> list[str]:
    """The names of the values in a text."""
    return [name for _, name, _, _ in Formatter().parse(text) if name is not None]


@pytest.mark.parametrize(
    ("english", "text", "same"),
    [
        ("{a} of {b}", "{b}: {a}", True),
        ("{a:inside} of {b}", "{b}: {a}", True),
        ("{a} of {b}", "{b}", False),
        ("{a}", "{a} {b}", False),
        (("{count} clip", "{count} clips"), ("un clip", "{count} clips"), True),
        (("{count} clip", "{count} clips"), ("{count} clip", "clips"), False),
        (("{name} clip", "{name}, {count} clips"), ("{name}", "{name}, {count}"), True),
        (("{name} clip", "{name}, {count} clips"), ("{other}", "{name}, {count}"), False),
    ],
)
def test_a_wrong_value_is_seen(english: Text, text: Text, same: bool) -> None:
    assert same_values(english, text) is same


def test_what_is_left_out_is_there(wanted: dict[Key, bool]) -> None:
    assert [place for place in LEFT_OUT if not any(re.fullmatch(place, context) for context, _ in wanted)] == []


def test_a_mark_of_doubt_and_a_wrong_room_are_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from babel.messages.catalog import Catalog

    made = Catalog(locale="es", fuzzy=False)
    made.add("Back", "Atrás", context="bay/back", flags=["fuzzy"])
    file = tmp_path / "bay.po"
    with file.open("wb") as out:
        write_po(out, made)
    monkeypatch.setitem(translated.__globals__, "_files", lambda _tag: [file])
    with pytest.raises(AssertionError, match="look at these once more"):
        translated("es")
    monkeypatch.setitem(translated.__globals__, "_files", lambda _tag: [file.rename(tmp_path / "joint.po")])
    with pytest.raises(AssertionError, match="another room"):
        translated("es")
