"""Words that change before what follows them: in Spanish "y" and "o" (Diccionario panhispánico de dudas, under "y" and "o")."""

import pytest

from in_node import Run
from undertrim.publish import template_words
from undertrim.publish.web import pages
from undertrim.words import Items, Language, message, say, speaking
from undertrim.words.language import _before

SPANISH = Language(
    "es",
    {("lists/and", "{first} and {last}"): "{first} y {last}", ("lists/or", "{first} or {last}"): "{first} o {last}"},
    decimal_mark=",",
    before=_before("es"),
)
LISTED = [
    ("and", ["altavoz", "izquierdo"], "altavoz e izquierdo"),
    ("and", ["padre", "Hijo"], "padre e Hijo"),
    ("and", ["agua", "hielo"], "agua y hielo"),
    ("and", ["clip", "tornillo"], "clip y tornillo"),
    ("and", ["a", "b", "'ir'"], "a, b e 'ir'"),
    ("and", ["uno", "i"], "uno e i"),
    ("or", ["uno", "otro"], "uno u otro"),
    ("or", ["minutos", "horas"], "minutos u horas"),
    ("or", ["7", "8"], "7 u 8"),
    ("or", ["10", "11"], "10 u 11"),
    ("or", ["10", "110"], "10 o 110"),
    ("or", ["uno", "dos"], "uno o dos"),
]


@pytest.mark.parametrize(("joined", "items", "said"), LISTED)
def test_a_list(joined: str, items: list[str], said: str) -> None:
    assert say(Items(tuple(items), joined), SPANISH) == said


def test_a_script_says_the_same(run: Run) -> None:
    before = [{"word": one.word, "instead": one.instead, "beginning": one.beginning} for one in SPANISH.before]
    texts = {f"lists/{name}": f"{{first}} {word} {{last}}" for name, word in (("and", "y"), ("or", "o"))}
    learnt = {
        "tag": "es",
        "decimal": ",",
        "forms": "",
        "before": before,
        "texts": {**texts, "lists/comma": "{first}, {last}"},
    }
    program = "(given) => { words.learn(given.learnt); return given.lists.map(([joined, items]) => words.list(items, joined)); }"
    asked = {"learnt": learnt, "lists": [[joined, items] for joined, items, _ in LISTED]}
    assert run(program, asked, "words") == [said for _, _, said in LISTED]


def test_a_sentence_of_a_page_does_so_too() -> None:
    with speaking(
        Language(
            "es", {("vehicle-page/with-gear", "{openings}, with {gear}"): "{openings} y {gear}"}, before=SPANISH.before
        )
    ):
        said = pages.environment().from_string('{{ say("vehicle-page/with-gear", openings=a, gear=b) }}')
        assert said.render(a="radio", b="Inglenook") == "radio e Inglenook"
        assert template_words.say("vehicle-page/with-gear", openings="radio", gear="Otter") == "radio y Otter"


def test_english_changes_nothing() -> None:
    assert say(message("lists/and", first="one", last="Irish")) == "one and Irish"
