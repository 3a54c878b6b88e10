"""What meter readings say, as text for a terminal. Readings agree or disagree; they never prove."""

from collections.abc import Iterator, Sequence

from undertrim.derive.wiring.functions import functions, names
from undertrim.derive.wiring.meter import Candidate, Finding, weigh
from undertrim.derive.wiring.readings import Reading
from undertrim.publish.facts.expecting import band_words, of_pattern
from undertrim.publish.facts.meter import ranged
from undertrim.publish.terminal.lines import closing, wrapped
from undertrim.publish.terminal.meter_answer import Question
from undertrim.words import Items, Message, Value, message, say

_VERDICT = {
    "agrees": message("meter/agrees"),
    "disagrees": message("meter/disagrees"),
    "nothing": message("meter/nothing"),
}
_RECORD = {"agrees": "meter/agrees-record", "open": "meter/open-record", "disagrees": "meter/disagrees-record"}
_WHY = {"": message("meter/why"), "power": message("meter/why-power"), "live": message("meter/why-live")}
_SHOWN = 4  # groups whose reasons are printed


def meter_text(question: Question) -> str:
    """The answer as text, ending in a newline."""
    named = (_suspects(question), _others(question))
    said = reversed(named) if question.stops else named  # a speaker comes second behind an igniter
    parts = (_stop(question), _head(question), *said, warnings(question.cautions), _asks(question), worth())
    return "\n".join([*(line for part in parts for line in part), ""])


def _stop(question: Question) -> Iterator[str]:
    """What is named before everything else: nothing more is done on such a wire."""
    for one in question.suspicions:
        if one.suspect.stop:
            readings = Items(one.readings, "comma")
            said = message("meter/stop", readings=readings, what=one.suspect.words, do=one.suspect.do)
            yield from wrapped(said, "", "  ")
    if question.stops:
        yield ""


def _suspects(question: Question) -> Iterator[str]:
    found = [one for one in question.suspicions if not one.suspect.stop]
    if found:
        yield from ("", say(message("meter/may-also-be")))
    for one in found:
        readings = Items(one.readings, "comma")
        said = message("meter/suspect", what=one.suspect.words, readings=readings, do=one.suspect.do)
        yield from wrapped(said, "  ", "      ")


def _head(question: Question) -> Iterator[str]:
    yield from wrapped(message("meter/title", car=question.title, wire=question.wire), "", "  ")
    for said in question.taken:
        yield from wrapped(said, "! ", "  ")
    recorded = question.recorded
    if recorded is None:
        return
    yield ""
    code = _RECORD[recorded.standing] if question.readings else "meter/by-record"
    yield from wrapped(message(code, function=_how(recorded)), "", "  ")
    yield from _reasons(recorded, question.readings)
    if not question.readings and recorded.pattern:
        for line in of_pattern(recorded.pattern, question.supply):
            yield from wrapped(line, "    ", "      ")


def _how(one: Candidate) -> Message:
    if one.pattern:
        return message("meter/how", function=one.function.words, pattern=one.pattern.words)
    return message("meter/how-unknown", function=one.function.words)


def _reasons(one: Candidate, readings: Sequence[Reading]) -> Iterator[str]:
    for reading, finding in zip(readings, one.findings, strict=True):
        said = message("meter/reason", reading=reading.text, why=_reason(reading, finding))
        yield from wrapped(f"{say(_VERDICT[finding.verdict]):10} {say(said)}", "    ", " " * 15)


def _reason(reading: Reading, finding: Finding) -> Message:
    if finding.band is None:
        return _WHY[finding.why]
    kind, state = functions().kinds[reading.kind], functions().states[reading.state]
    band, sure = band_words(finding.band, kind.unit), functions().sure[finding.sure]
    return message("meter/expected", kind=kind.words, state=state.words, band=band, sure=sure)


def _others(question: Question) -> Iterator[str]:
    if not question.readings:
        return
    found = weigh(question.readings)
    recorded = question.function
    agree = message("meter/also-agree-with") if _stands(question) else message("meter/agree-with")
    for standing, title in (("agrees", agree), ("open", message("meter/not-ruled-out"))):
        groups = _groups([one for one in found if one.standing == standing and one.function != recorded])
        if groups:
            yield from ("", say(title))
        for called, one in groups:
            yield from _candidate(called, one)
            if standing == "agrees" and len(groups) <= _SHOWN:
                yield from _reasons(one, question.readings)
    if not _stands(question):
        yield from _none_left(found, question.readings)


def _candidate(called: Items, one: Candidate) -> list[str]:
    pattern = one.pattern.words if one.pattern else ""
    return wrapped(message("meter/candidate", functions=called, pattern=pattern), "  ", "      ")


def _stands(question: Question) -> bool:
    return question.recorded is not None and question.recorded.standing == "agrees"


def _none_left(found: Sequence[Candidate], readings: Sequence[Reading]) -> Iterator[str]:
    """With every function ruled out: the ones that the fewest readings speak against."""
    if found[0].standing != "disagrees":
        return
    nearest = [one for one in found if one.disagreeing == found[0].disagreeing and one.agreeing == found[0].agreeing]
    yield from ("", say(message("meter/none-agrees")))
    for called, one in _groups(nearest)[:_SHOWN]:
        yield from _candidate(called, one)
        yield from _reasons(one, readings)


def _groups(found: Sequence[Candidate]) -> list[tuple[Items, Candidate]]:
    """Functions that read alike together."""
    alike: dict[str, list[Candidate]] = {}
    for one in found:
        alike.setdefault(one.pattern.id if one.pattern else "", []).append(one)
    return [(names([one.function.id for one in group]), group[0]) for group in alike.values()]


def _asks(question: Question) -> Iterator[str]:
    asked = question.next
    yield ""
    if question.stops:
        yield from wrapped(message("meter/measure-no-more"), "", "")
        return
    if asked is None:
        yield from wrapped(message("meter/trace"), "", "")
        return
    kind, state = functions().kinds[asked.kind], functions().states[asked.state]
    yield say(message("meter/next", kind=kind.words, state=state.words))
    for outcome in asked.outcomes:
        found = ranged(outcome.band.low, outcome.band.high, kind.unit)
        yield from wrapped(message("meter/outcome", range=found, functions=names(outcome.functions)), "  ", "      ")


def warnings(texts: Sequence[Value]) -> Iterator[str]:
    """The cautions; they come before what to measure next."""
    yield ""
    for text in texts:
        yield from wrapped(text, "! ", "  ")


def worth() -> Iterator[str]:
    """The end of every answer: what a reading is worth."""
    yield from ("", *wrapped(f"{say(message('meter/proves-nothing'))} {closing()}"))
