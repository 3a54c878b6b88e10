"""A record read for the other drive side, as text for a terminal."""

from collections.abc import Iterator, Sequence

from undertrim.publish.facts.mirror import AskedThere, KnownThere, Mirrored
from undertrim.publish.facts.words import listed
from undertrim.publish.terminal.lines import wrapped
from undertrim.words import Value, message, say


def mirror_text(facts: Mirrored) -> str:
    """What is known, what to find out at a car, and what the record is silent about; ends in a newline."""
    here, there = (message(f"evidence/side-{side}") for side in (facts.drive_side, facts.recorded_on))
    head = say(message("mirror/head", vehicle=facts.vehicle, here=here, recorded=there))
    return "\n".join([head, *_known(facts.known), *_questions(facts.questions), *_rest(facts), ""])


def _known(known: Sequence[KnownThere]) -> Iterator[str]:
    yield from ("", say(message("mirror/known"))) if known else ()
    for fact in known:
        thing = listed(fact.about.name, fact.about.fact_words)
        yield from wrapped(_was(message("mirror/value", thing=thing, value=fact.words), fact.was), "  ", "      ")


def _questions(questions: Sequence[AskedThere]) -> Iterator[str]:
    yield from ("", say(message("mirror/questions"))) if questions else ()
    for fact in questions:
        yield from wrapped(_was(fact.ask, fact.was), "  ", "      ")


def _was(text: Value, recorded: Value) -> Value:
    """A text with what is recorded, where that is something else."""
    return message("mirror/was", text=text, recorded=recorded) if recorded else text


def _rest(facts: Mirrored) -> Iterator[str]:
    for title, things in (
        (message("mirror/not-there"), facts.not_there_names),
        (message("mirror/unsaid"), facts.unsaid_names),
    ):
        if things:
            yield ""
            yield say(title)
            yield from wrapped(listed(*things, joined="semicolon"), "  ", "      ")
