"""A record in another language than its reader's says which; names of languages are those of the Unicode CLDR, through Babel."""

import pytest

from undertrim.publish.facts.own_language import OwnLanguage
from undertrim.words import ENGLISH, Language, say, speaking


@pytest.mark.parametrize(("own", "reader"), [("", "en"), ("en", "en"), ("en-GB", "en"), ("pt-BR", "pt")])
def test_nothing_is_said_to_a_reader_of_the_same_language(own: str, reader: str) -> None:
    assert OwnLanguage(own).say(Language(reader)) == ""


def test_another_language_is_named() -> None:
    assert OwnLanguage("es").say(ENGLISH) == "The names and texts of this record are in Spanish."
    assert OwnLanguage("pt-BR").say(ENGLISH) == "The names and texts of this record are in Portuguese (Brazil)."


def test_it_is_named_in_the_readers_words() -> None:
    with speaking(Language("de")):
        assert "Spanisch" in say(OwnLanguage("es"))


def test_a_tag_that_nobody_knows_stands_for_itself() -> None:
    assert OwnLanguage("qaa").say(ENGLISH) == "The names and texts of this record are in qaa."
