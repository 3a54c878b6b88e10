"""What meter readings say, as text for a terminal. Readings agree or disagree; they never prove."""

import textwrap
from collections.abc import Iterator, Sequence

from undertrim.derive.wiring.functions import functions, names
from undertrim.derive.wiring.meter import Candidate, Finding, weigh
from undertrim.derive.wiring.readings import Reading
from undertrim.publish.facts.expecting import band_words, of_pattern
from undertrim.publish.facts.meter import ranged
from undertrim.publish.meter_answer import Question
from undertrim.words import say

WIDTH = 100
CLOSING = "A reading agrees or disagrees, it proves nothing. The maker's information, local codes and licensed practice come first."
_VERDICT = {"agrees": "agrees", "disagrees": "DISAGREES", "nothing": "-"}
_RECORD = {
    "agrees": "the readings agree with it",
    "open": "the readings say nothing about it",
    "disagrees": "the readings DISAGREE with it",
}
_WHY = {
    "": "says nothing about this function",
    "power": "says nothing: ohms count with the power off alone",
    "live": "says nothing: the wire had voltage with the key off, and ohms count on a dead wire alone",
}
_SHOWN = 4  # groups whose reasons are printed


def meter_text(question: Question) -> str:
    """The answer as text, ending in a newline."""
    named = (_suspects(question), _others(question))
    said = reversed(named) if question.stops else named  # a speaker comes second behind an igniter
    parts = (_stop(question), _head(question), *said, warnings(question.cautions), _asks(question), closing())
    return "\n".join([*(line for part in parts for line in part), ""])


def _stop(question: Question) -> Iterator[str]:
    """What is named before everything else: nothing more is done on such a wire."""
    for one in question.suspicions:
        if one.suspect.stop:
            yield from wrapped(
                f"STOP: {', '.join(one.readings)} may be {one.suspect.words}. {one.suspect.do}", "", "  "
            )
    if question.stops:
        yield ""


def _suspects(question: Question) -> Iterator[str]:
    found = [one for one in question.suspicions if not one.suspect.stop]
    if found:
        yield from ("", "It may also be")
    for one in found:
        yield from wrapped(f"{one.suspect.words} ({', '.join(one.readings)}): {one.suspect.do}", "  ", "      ")


def _head(question: Question) -> Iterator[str]:
    yield from wrapped(f"{question.title}: {question.wire}", "", "  ")
    recorded = question.recorded
    if recorded is None:
        return
    yield ""
    said = f"; {_RECORD[recorded.standing]}" if question.readings else ""
    yield from wrapped(f"By the record: {recorded.function.words}{_how(recorded)}{said}", "", "  ")
    yield from _reasons(recorded, question.readings)
    if not question.readings and recorded.pattern:
        for line in of_pattern(recorded.pattern, question.supply):
            yield from wrapped(say(line), "    ", "      ")


def _how(one: Candidate) -> str:
    return f" ({one.pattern.words})" if one.pattern else " (no reading tells how it behaves)"


def _reasons(one: Candidate, readings: Sequence[Reading]) -> Iterator[str]:
    for reading, finding in zip(readings, one.findings, strict=True):
        yield from wrapped(
            f"{_VERDICT[finding.verdict]:10} {reading.text}: {_reason(reading, finding)}", "    ", " " * 15
        )


def _reason(reading: Reading, finding: Finding) -> str:
    if finding.band is None:
        return _WHY[finding.why]
    kind, state = functions().kinds[reading.kind], functions().states[reading.state]
    return f"{kind.words}, {state.words}: {say(band_words(finding.band, kind.unit))} ({functions().sure[finding.sure]})"


def _others(question: Question) -> Iterator[str]:
    if not question.readings:
        return
    found = weigh(question.readings)
    recorded = question.function
    for standing, title in (
        ("agrees", f"The readings {'also ' if _stands(question) else ''}agree with"),
        ("open", "Not ruled out, no reading tells"),
    ):
        groups = _groups([one for one in found if one.standing == standing and one.function != recorded])
        if groups:
            yield from ("", title)
        for called, one in groups:
            yield from wrapped(f"{called}: {one.pattern.words if one.pattern else ''}", "  ", "      ")
            if standing == "agrees" and len(groups) <= _SHOWN:
                yield from _reasons(one, question.readings)
    if not _stands(question):
        yield from _none_left(found, question.readings)


def _stands(question: Question) -> bool:
    return question.recorded is not None and question.recorded.standing == "agrees"


def _none_left(found: Sequence[Candidate], readings: Sequence[Reading]) -> Iterator[str]:
    """With every function ruled out: the ones that the fewest readings speak against."""
    if found[0].standing != "disagrees":
        return
    nearest = [one for one in found if one.disagreeing == found[0].disagreeing and one.agreeing == found[0].agreeing]
    yield from ("", "No function agrees with every reading: take them again. The nearest")
    for called, one in _groups(nearest)[:_SHOWN]:
        yield from wrapped(f"{called}: {one.pattern.words if one.pattern else ''}", "  ", "      ")
        yield from _reasons(one, readings)


def _groups(found: Sequence[Candidate]) -> list[tuple[str, Candidate]]:
    """Functions that read alike together."""
    alike: dict[str, list[Candidate]] = {}
    for one in found:
        alike.setdefault(one.pattern.id if one.pattern else "", []).append(one)
    return [(names([one.function.id for one in group]), group[0]) for group in alike.values()]


def _asks(question: Question) -> Iterator[str]:
    asked = question.next
    yield ""
    if question.stops:
        yield from wrapped("Measure nothing more on this wire: look it up in the maker's information.", "", "")
        return
    if asked is None:
        yield from wrapped("No further reading in the table tells for certain what remains: trace the wire.", "", "")
        return
    kind, state = functions().kinds[asked.kind], functions().states[asked.state]
    yield f"Measure next: {kind.words}, {state.words}"
    for outcome in asked.outcomes:
        yield from wrapped(
            f"{ranged(outcome.band.low, outcome.band.high, kind.unit)}: {names(outcome.functions)}", "  ", "      "
        )


def warnings(texts: Sequence[str]) -> Iterator[str]:
    """The cautions; they come before what to measure next."""
    yield ""
    for text in texts:
        yield from wrapped(text, "! ", "  ")


def closing() -> Iterator[str]:
    """The end of every answer: what a reading is worth."""
    yield from ("", *wrapped(CLOSING, "", ""))


def wrapped(text: str, first: str, rest: str) -> list[str]:
    """The text in lines of a terminal's width."""
    return textwrap.wrap(text, WIDTH, initial_indent=first, subsequent_indent=rest, break_on_hyphens=False)
