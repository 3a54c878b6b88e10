"""A record in another language than its reader's says which; names of languages are those of the Unicode CLDR, through Babel."""

import copy
import pickle
from pathlib import Path

import pytest

from undertrim.derive.fit import stock
from undertrim.derive.fit.stock import Stocked
from undertrim.publish.facts.gear_card import card
from undertrim.record.model.kinds.speaker import SpeakerGear
from undertrim.record.own_language import OwnLanguage
from undertrim.record.own_text import OwnText
from undertrim.record.store import Workspace
from undertrim.words import ENGLISH, Language, message, say, speaking


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


def test_gear_says_it_beside_its_fit() -> None:
    lens = SpeakerGear("Sandmartin", "Skim", note="Lleva un anillo.")
    told = [card(Stocked("skim", lens, lang=tag)) for tag in ("es", "en", "")]
    assert [say(one) for one in told if one] == [
        "Sandmartin Skim: Lleva un anillo. Its names and texts are in Spanish.",
        *["Sandmartin Skim: Lleva un anillo."] * 2,
    ]


def test_the_shelf_knows_the_language_of_a_record(tmp_path: Path) -> None:
    folder = tmp_path / "records/gear/speakers"
    folder.mkdir(parents=True)
    text = (Path(__file__).parents[2] / "records/gear/speakers/sandmartin-skim-65.yaml").read_text(encoding="utf-8")
    (folder / "sandmartin-skim-65.yaml").write_text(text.replace("lang: en\n", "lang: es\n"), encoding="utf-8")
    [item] = stock.read(Workspace(tmp_path), lambda entry: True).items
    assert (item.lang, getattr(item.facts.model, "lang", "")) == ("es", "es")


def test_a_text_keeps_its_language_in_copies_and_pickles_and_in_a_sentence_of_ours_becomes_ours() -> None:
    text = OwnText("Marco.", "es")
    for same in (copy.deepcopy(text), pickle.loads(pickle.dumps(text)), text.rstrip("x")):  # noqa: S301 - our own
        assert (same, same.lang) == ("Marco.", "es")
    assert type(say(message("gear-card/terminals", terminals=text))) is str
