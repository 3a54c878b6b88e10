"""A script says what the program says: numbers, plurals and lists of the language included."""

from typing import Any

import pytest

from in_node import Run
from undertrim.publish import script_words
from undertrim.publish.script_words import NoSuchSentence
from undertrim.publish.web import scripts
from undertrim.words import Items, Language, message, say, speaking

THREE = Language("xx", {}, lambda n: 0 if n == 1 else 1 if n % 100 in (2, 3) else 2, ",")  # forms for one, few and many
SAID = "(given) => given.map(([code, values]) => words.say(code, values))"


def test_the_same_sentence_from_the_same_code(run: Run) -> None:
    asked: list[tuple[str, dict[str, Any]]] = [
        ("replay/needs-state", {"step": "Trim", "wanted": "battery on", "now": "off"})
    ]
    asked += [("lists/and-more", {"names": "a", "count": 1}), ("lists/and-more", {"names": "a", "count": 3})]
    assert run(SAID, asked, "words") == [say(message(code, **values)) for code, values in asked]


@pytest.mark.parametrize("joined", ["and", "or", "comma", "semicolon", "plus", "arrow"])
def test_the_same_list(run: Run, joined: str) -> None:
    for size in range(4):
        items = [f"n{number}" for number in range(size)]
        assert run("(given) => words.list(given[0], given[1])", [items, joined], "words") == say(
            Items(tuple(items), joined)
        )


def test_numbers_and_plurals_are_those_of_the_language(run: Run) -> None:
    program = """(given) => {
      words.learn({ tag: "xx", decimal: ",", forms: given.forms, before: [], texts: { "a/b": ["{count} one", "{count} few", "{count} many"] } });
      return given.counts.map((count) => words.say("a/b", { count }));
    }"""
    counts = [1, 2, 5, 11, 102, 202, 1.5]
    found = run(program, {"forms": THREE.forms, "counts": counts}, "words")
    assert found[:6] == [f"{n} {('one', 'few', 'many')[THREE.form(n)]}" for n in (1, 2, 5, 11, 102, 202)]
    assert found[6].startswith("1,5 ")


def test_what_is_not_known_fails_and_is_not_said_wrong(run: Run) -> None:
    tried = "(given) => { try { return words.say(given[0], given[1]); } catch (error) { return error.message; } }"
    assert run(tried, ["no/such", {}], "words") == "no such sentence: no/such"
    assert run(tried, ["lists/and-more", {"count": 2}], "words") == "lists/and-more lacks names"


def test_a_bundle_brings_what_its_modules_name_in_the_language_of_the_reader() -> None:
    marked = Language("xx", {("lists/quoted", "'{value}'"): "<{value}>"})
    with speaking(marked):
        found = script_words.words([("page", 'say("lists/quoted", { value })')])
    assert '"lists/quoted":"<{value}>"' in found
    assert '"tag":"xx"' in found
    assert "replay/" not in found


def test_a_code_that_begins_in_a_template_brings_all_that_begin_so() -> None:
    found = script_words.words([("page", "say(`replay/needs-${what}`)")])
    assert '"replay/needs-state"' in found
    assert '"replay/needs-state-since"' in found
    assert "replay/twice" not in found


def test_a_sentence_that_is_not_in_the_catalogue_is_refused_by_name() -> None:
    with pytest.raises(NoSuchSentence, match=r"page says 'replay/nothing', and the catalogue has no such entry"):
        script_words.words([("page", 'say("replay/nothing")')])


def test_the_words_of_all_bundles_are_there() -> None:
    for entry in scripts.ENTRIES:
        scripts.bundle(entry)
