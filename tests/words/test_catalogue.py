"""Messages become sentences by one catalogue, and translators' tools can read it."""

import ast
import json
from collections.abc import Iterator
from pathlib import Path
from string import Formatter

import extracting
import pytest
from babel.messages.pofile import read_po, write_po

import undertrim
from undertrim.resources import table, top
from undertrim.words import Language, Message, all_of, catalogue, message, one_of, sentence, some_of, way_out, word
from undertrim.words.catalogue import context, english
from undertrim.words.catalogue import texts as texts_of
from undertrim.words.language import Text, UnknownLanguage, language, read

ROOT = Path(__file__).parent.parent.parent
PACKAGE = Path(undertrim.__file__).parent
ENGLISH = PACKAGE / "words" / "english"
ROOMS = sorted(path.relative_to(ENGLISH).with_suffix("").as_posix() for path in ENGLISH.rglob("*.toml"))


def texts() -> Iterator[tuple[str, str, Text]]:
    """Every text of the catalogue: its code, its part, and its English."""
    for room in ROOMS:
        for name, entry in english(room).items():
            yield from ((f"{room}/{name}", part, text) for part, text in texts_of(entry).items())


@pytest.fixture(scope="module")
def marked(tmp_path_factory: pytest.TempPathFactory) -> Language:
    """A language in which every text is marked, made by the tools that translators use."""
    folder = tmp_path_factory.mktemp("words")
    template = folder / "undertrim.pot"
    extracting.extract(template, "generator")
    with template.open("rb") as file:
        found = read_po(file)
    for entry in found:
        if entry.id:
            entry.string = f"[{entry.id}]" if isinstance(entry.id, str) else tuple(f"[{form}]" for form in entry.id)
    with (folder / "undertrim.po").open("wb") as out:
        write_po(out, found)
    return read("xx", folder / "undertrim.po")


def test_a_message_is_a_sentence_with_its_values() -> None:
    said = message(
        "replay/fewer-put-in", step="Trim", count=3, of=4, kind=word("fasteners", "clip", "label"), what="push"
    )
    assert sentence(said) == "'Trim' puts in 3 of 4 clip 'push'"
    assert way_out(said) == ""


def test_a_message_stands_in_a_message() -> None:
    doing = message("acts/park", tether="Lamp plug")
    said = message("replay/ends-restraint", step="Trim", doing=doing)
    assert sentence(said) == "'Trim' leaves 'Lamp plug' off, which is restraint wiring"
    assert way_out(said) == "write 'then: leave', or 'then: rejoin'"


def test_a_name_of_a_record_is_never_taken_for_a_place_to_fill() -> None:
    assert "'{count}'" in sentence(message("replay/twice", step="{count}"))


def test_what_the_catalogue_does_not_know_is_our_fault() -> None:
    for wrong in (message("replay/no-such-code"), message("replay/twice")):
        with pytest.raises(KeyError):
            sentence(wrong)
    with pytest.raises(UnknownLanguage):
        language("xx")


def test_every_text_reaches_the_translators(marked: Language) -> None:
    assert {(context(code, part), text) for code, part, text in texts()} <= set(marked.texts)


def test_a_marked_language_leaves_no_word_unmarked(marked: Language) -> None:
    doing = message("acts/park", tether="Lamp plug")
    said = message("replay/ends-restraint", step="Trim", doing=doing)
    assert sentence(said, marked) == "['Trim' [leaves 'Lamp plug' off], which is restraint wiring]"
    lid = message("replay/locked-in", step="Battery off", name="boot", lid=word("states", "state", "boot", "label"))
    assert "the [boot] shut" in sentence(lid, marked)
    assert way_out(lid, marked) == "[add 'needs: {boot: open}' to this preparation]"


def test_a_translation_of_another_sentence_is_not_shown(marked: Language) -> None:
    old = Language("xx", {("replay/twice", "'{step}' is off"): "old"})
    assert sentence(message("replay/twice", step="Trim"), old) == "'Trim' is off already"


def test_a_text_is_a_sentence_without_its_full_stop() -> None:
    for code, part, text in texts():
        for form in (text,) if isinstance(text, str) else text:
            assert form.rstrip() == form != "", code  # what follows on a sentence begins with its space
            assert not (code.startswith(("rules/", "replay/")) and form.endswith(".")), code
        assert part in ("says", "way_out"), code


MADE = {"clips": {"one": "{count} clip of {name}", "says": "{count} clips of {name}", "way_out": "buy {count}"}}


@pytest.fixture
def made_room(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(catalogue, "english", lambda room: MADE if room == "made" else english(room))


@pytest.mark.usefixtures("made_room")
def test_a_number_chooses_the_form_by_the_rule_of_the_language() -> None:
    said = [sentence(message("made/clips", count=number, name="Trim")) for number in (0, 1, 2)]
    assert said == ["0 clips of Trim", "1 clip of Trim", "2 clips of Trim"]
    forms = ("{count} A", "{count} B", "{count} C")
    text = ("{count} clip of {name}", "{count} clips of {name}")
    other = Language("xx", {("made/clips", text): forms}, form=lambda number: min(number, 2))
    assert [sentence(message("made/clips", count=n, name="Trim"), other) for n in (0, 1, 5)] == ["0 A", "1 B", "5 C"]


@pytest.mark.usefixtures("made_room")
def test_a_decimal_mark_is_the_languages() -> None:
    said = message("made/clips", count=2, name=1.5)
    assert sentence(said) == "2 clips of 1.5"
    assert sentence(said, Language("xx", decimal_mark=",")) == "2 clips of 1,5"


@pytest.mark.usefixtures("made_room")
def test_a_list_is_joined_in_the_way_of_the_language() -> None:
    def said(*names: str, speech: Language | None = None) -> str:
        return sentence(message("made/clips", count=2, name=all_of(*names)), speech)

    assert [said(*"abc"[:count])[11:] for count in (1, 2, 3)] == ["a", "a and b", "a, b and c"]
    assert sentence(message("made/clips", count=2, name=one_of("a", "b"))) == "2 clips of a or b"
    other = Language("xx", {("lists/and", "{first} and {last}"): "{first} e {last}"})
    assert said(*"abc", speech=other) == "2 clips of a, b e c"


class Length:
    def say(self, speech: Language) -> str:
        return f"{speech.number(16.5)} mm"


@pytest.mark.usefixtures("made_room")
def test_a_value_may_know_its_own_words() -> None:
    assert sentence(message("made/clips", count=2, name=Length())) == "2 clips of 16.5 mm"


def test_every_code_in_the_source_is_in_the_catalogue_with_its_values() -> None:
    known = {code for code, _, _ in texts()}
    written = {code for path in PACKAGE.rglob("*.py") for code in _codes(path)}
    assert written - known == set()
    assert len(written) > 40  # else they are not found


def _codes(path: Path) -> Iterator[str]:
    """Codes that stand in full in `message(...)` and `fault(...)`."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.args:
            places = {"message": (node.args[0], ""), "fault": (node.args[1] if len(node.args) > 1 else None, "replay/")}
            argument, room = places.get(node.func.id, (None, ""))
            if isinstance(argument, ast.Constant) and isinstance(argument.value, str):
                yield room + argument.value


def test_a_message_has_every_value_that_its_texts_ask_for() -> None:
    given = {(code, names) for path in PACKAGE.rglob("*.py") for code, names in _given(path)}
    asked = {code: set[str]() for code, _, _ in texts()}
    for code, _, text in texts():
        forms = (text,) if isinstance(text, str) else text
        asked[code] |= {name for form in forms for _, name, _, _ in Formatter().parse(form) if name}
    assert [code for code, names in given if asked[code] - names] == []
    assert len(given) > 100  # else they are not found


def _given(path: Path) -> Iterator[tuple[str, frozenset[str]]]:
    """Codes with the names of their values, where both stand in full in `message(...)`.

    A message of a table, outside of every function, gets its values where it is used.
    """
    functions = (node for node in ast.walk(ast.parse(path.read_text("utf-8"))) if isinstance(node, ast.FunctionDef))
    for node in (node for function in functions for node in ast.walk(function)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "message" and node.args:
            code, names = node.args[0], [keyword.arg for keyword in node.keywords]
            if isinstance(code, ast.Constant) and None not in names:
                yield str(code.value), frozenset(filter(None, names))


def test_a_rule_has_no_sentence_that_it_does_not_use() -> None:
    written = {code for path in PACKAGE.rglob("*.py") for code in _codes(path)}
    assert {code for code, _, _ in texts() if code.startswith("rules/")} <= written


def test_a_rule_says_only_sentences_of_its_own() -> None:
    for path in (PACKAGE / "check" / "rules").glob("*.py"):
        rule = path.stem.replace("_", "-")
        assert {code.rpartition("/")[0] for code in _codes(path) if code.startswith("rules/")} <= {f"rules/{rule}"}


def test_every_state_has_words_for_each_value_it_can_have() -> None:
    values = {(state, entry["initial"]) for state, entry in table("states")["state"].items()}
    values |= {pair for entry in table("states")["usual"].values() for pair in entry["sets"].items()}
    assert {f"{state}-{value}" for state, value in values} | {"battery-partly-off"} <= set(english("states"))


def test_what_a_record_may_say_has_words_wherever_a_message_says_it() -> None:
    """Codes that are made from a record's own words."""
    definitions = json.loads((top("schema") / "vehicle.schema.json").read_text("utf-8"))["$defs"]
    roles = set(definitions["fastener"]["properties"]["role"]["enum"]) - {"ordinary"}
    circuits = set(definitions["tether"]["properties"]["circuit"]["enum"]) - {"ordinary"}
    assert set(english("roles")) == roles
    assert set(english("circuits")) == circuits == set(table("words")["circuit"]) - {"beside"}
    assert all("way_out" in entry for entry in english("circuits").values())
    common = json.loads((top("schema") / "common.schema.json").read_text("utf-8"))["$defs"]
    assert set(english("sides")) == set(common["side"]["enum"])


@pytest.mark.usefixtures("made_room")
def test_of_many_names_the_rest_is_counted() -> None:
    def said(most: int) -> str:
        return sentence(message("made/clips", count=2, name=some_of("abc", most)))[11:]

    assert [said(most) for most in (3, 2, 1)] == ["'a', 'b', 'c'", "'a', 'b' and 1 more", "'a' and 2 more"]


def test_messages_are_values() -> None:
    assert message("replay/twice", step="A") == Message("replay/twice", {"step": "A"})
    assert len({message("replay/twice", step="A"), message("replay/twice", step="A")}) == 1
