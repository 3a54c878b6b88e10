"""The Spanish reads like Spanish: what a test can see of the rules in `words/locale/es/TERMS.md`."""

import re
from collections.abc import Iterator
from functools import cache

import pytest
from babel.messages.pofile import read_po

from undertrim.words.language import _files, _text

MOST_WORDS = 20
"""As in the English of steps (test_generated_sentences.py): who reads with a screw in the hand takes in no more."""

STEPS = re.compile(
    r"(steps|steps-amplifier|seen|blockers|closed|cautions)/.*|states/usual/.*/(how|restore)|purposes/.*/try"
    r"|tethers/kind/.*/(undo|rejoin|park|usual_test)|kinds/\w+/(install|test)/.*/text"
)
"""Contexts of what is said in steps and above them."""

ALIKE = re.compile(
    "airbag|awg|beige|butterworth|cable|cfr|conductor|din|error|finch|hatchback|ids|interfaces?|iso|jpeg|kits?|linkwitz|metal|min|mohm|no|ohm"
    "|panel|pin|png|radio|rectangular|riley|sae|tweeters?|usual|webp",
    re.IGNORECASE,
)
"""Words that are the same in both languages."""


@cache
def said() -> tuple[tuple[str, str, str], ...]:
    """The context, the English and the Spanish of every text, by its forms of number."""
    found = []
    for path in _files("es"):
        with path.open("rb") as file:
            for entry in read_po(file):
                if not (entry.id and entry.string and all(entry.string)):
                    continue
                english, spanish = _text(entry.id), _text(entry.string)
                if isinstance(english, str) and isinstance(spanish, str):
                    found.append((str(entry.context), english, spanish))
                else:
                    found += [(str(entry.context), *forms) for forms in zip(english, spanish, strict=True)]
    return tuple(found)


def bare(text: str) -> str:
    """A text with each of its values as one sign, and without what is typed."""
    return re.sub(r"\{[^{}]*\}|%\(\w+\)[a-z]|`[^`]*`|--[\w-]+", "¤", text)


def test_no_text_was_left_in_english() -> None:
    alike = [(context, text) for context, english, text in said() if text == english and _words(text)]
    typed = re.compile(r"commands|plug-marks/.*|drives/families/.*")
    assert [one for one in alike if not typed.fullmatch(one[0])] == []


def _words(text: str) -> list[str]:
    return [word for word in re.findall(r"[^\W\d_²Ω]{3,}", bare(text)) if not ALIKE.fullmatch(word)]


def test_words_run_together_as_they_are_said() -> None:
    wrong = re.compile(r"\b(?:de|a) el\b(?!\w)|  | [,;:]| \.(?![\w.])", re.IGNORECASE)
    found = [
        (context, text)
        for context, english, text in said()
        if wrong.search(bare(text)) and not wrong.search(bare(english))
    ]
    assert found == []


def test_questions_and_exclamations_have_both_signs() -> None:
    ends, begins = re.compile(r"(?<=[\w)}'])[?!](?=$|[\s:;,.)])"), re.compile("[¿¡]")
    assert [text for _, _, text in said() if len(ends.findall(text)) != len(begins.findall(text))] == []


def test_a_text_ends_and_begins_as_the_english_does() -> None:
    ends = [(context, text) for context, english, text in said() if text[-1] in ".:" and english[-1] != text[-1]]
    assert ends == []
    lacking = [(context, text) for context, english, text in said() if english[-1] in ".:" and english[-1] != text[-1]]
    assert lacking == []
    cases = [(context, text) for context, english, text in said() if _small(english) and _large(text)]
    assert cases == []


def _small(text: str) -> bool:
    return text[:1].islower()


def _large(text: str) -> bool:
    return bool(re.match(r"[¿¡]?[A-ZÁÉÍÓÚÑ][a-záéíóúñ]", text)) and not text.startswith("eCall")


def sentences() -> Iterator[str]:
    for context, _, text in said():
        if STEPS.fullmatch(context):
            yield from re.split(r"(?<=[.!?])\s+", bare(text))


def test_a_sentence_of_a_step_is_short() -> None:
    assert [text for text in sentences() if len(text.split()) > MOST_WORDS] == []


@pytest.mark.parametrize(
    ("text", "words"),
    [("{count} × {sort}", []), ("panel de {name}", []), ("the panel", ["the"]), ("--in {path}", [])],
)
def test_words_of_english_are_seen(text: str, words: list[str]) -> None:
    assert _words(text) == words
