"""Ask in the terminal what a car's record still wants to know, and keep the answers as a claims file; or write a table or a sheet to fill in.

VEHICLE is a record's id or make/id. Each answer is kept at once: stop whenever you like, and go on with the same command.
'undertrim take' then puts the file into the record. With --part it asks about parts instead: what comes off, after what, what held it and what was behind
it; each part goes straight into the record, and takes the place of what was only usual.
"""

import argparse
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from undertrim.commands import ask_parts, asked_on_paper, prompts
from undertrim.commands.common import add_workspace, workspace
from undertrim.commands.details import see_check
from undertrim.commands.prompts import Stopped
from undertrim.commands.usage import Usage
from undertrim.commands.who import who
from undertrim.derive.questions import Field, Question, Sort
from undertrim.derive.questions.interview import Interview
from undertrim.publish.facts.question_words import form_words
from undertrim.record import claims
from undertrim.record.claims.draft import Draft
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.problem import printable
from undertrim.record.source import Data
from undertrim.record.store import Entry
from undertrim.words import WayOut, message, say

_PDF = ".pdf"
_LATER, _STOP, _CANNOT_TELL, _NONE = "later", "stop", "cannot-tell", "none"
_SIGNS = {"?": _CANNOT_TELL, "unknown": _CANNOT_TELL, "-": _NONE, "none": _NONE, "": _LATER}
"""What may be typed in place of a value."""


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument("vehicle", metavar="VEHICLE", help="record id or make/id")
    parser.add_argument(
        "--out",
        type=Path,
        metavar="FILE",
        help="the claims file (default: ID-answers.json, here); as .csv or .xlsx, a table of all questions to fill in; as .pdf, a measuring sheet to print",
    )
    parser.add_argument(
        "--part",
        action="store_true",
        help="ask about the parts, as they came off in your hands, and write them into the record",
    )
    add_workspace(parser)


def run(options: argparse.Namespace) -> int:
    """Ask; 0 however far it came."""
    entry = _entry(options)
    if options.out and options.out.suffix.lower() in claims.TABLES:
        return asked_on_paper.table(entry, options.out)
    if options.out and options.out.suffix.lower() == _PDF:
        return asked_on_paper.sheet(workspace(options), entry, options.out)
    if not sys.stdin.isatty():
        raise Usage(message("ask/no-terminal"))
    if options.part:
        if options.out:
            raise Usage(message("asked-part/no-out"))
        place = workspace(options)
        place.refuse_shared(entry.path)
        return ask_parts.run(place, entry)
    draft = _draft(options.out or Path(f"{entry.id}-answers.json"), entry)
    assert isinstance(entry.record, VehicleRecord)
    try:
        if not draft.shared:
            draft.shared = who(entry.record)
            draft.save()
        _Asking(Interview.at(entry.record, entry.source, draft.shared.get("car")), draft).all()
    except Stopped:
        pass
    kept = message("ask/kept", count=len(draft.answers), file=printable(str(draft.path)))
    print(f"{say(kept)}\n    {say(WayOut(kept))}" if draft.answers else say(message("ask/nothing")))
    return 0


def _entry(options: argparse.Namespace) -> Entry:
    place = workspace(options)
    try:
        entry = place.load(vehicle_file(place, options.vehicle))
    except NotFound as error:
        raise Usage(error.said) from error
    if not isinstance(entry.record, VehicleRecord):
        unreadable = say(message("plan/unreadable", path=str(entry.source.path)))
        raise Usage(f"{unreadable}: {see_check()}")
    return entry


def _draft(path: Path, entry: Entry) -> Draft:
    """The file with what was answered before, if it is there. Raises Usage for one that is about something else."""
    if not path.exists():
        return Draft(path, entry.address)
    found = claims.read(path)
    data = found.source.data
    if found.problems or found.bad or data.get("vehicle") != entry.address:
        raise Usage(message("ask/other-file", file=printable(str(path)), vehicle=entry.address))
    shared = {name: data[name] for name in claims.SHARED if name in data and name != "vehicle"}
    print(say(message("ask/going-on", file=printable(str(path)), count=len(data["answers"]))))
    return Draft(path, entry.address, shared, list(data["answers"]))


# The questions


@dataclass(slots=True)
class _Asking:
    """One interview, and the file that its answers go into."""

    interview: Interview
    draft: Draft

    def all(self) -> None:
        """Every question that has no answer yet. Raises Stopped."""
        asked = [one for one in self.interview.questions() if any(self._left(one))]
        for number, question in enumerate(asked, 1):
            _introduce(question, number, len(asked))
            for field in self._left(question):
                self._ask(question, field)

    def _left(self, question: Question) -> Iterator[Field]:
        """The fields that are to be asked now: what is answered decides which come after it."""
        for field in question.fields:
            said = {answer["about"]: self.draft.said(answer["about"]) for answer in self.draft.answers}
            if field.about not in self.draft.answered and self.interview.asks(field, said):
                yield field

    def _ask(self, question: Question, field: Field) -> None:
        found = self._choose(field) if field.form.sort in ("choice", "there") else self._type(field)
        if found == _STOP:
            raise Stopped
        if found == _LATER:
            return
        answer: dict[str, Data] = {"about": field.about}
        answer |= {"found": found} if found in (_CANNOT_TELL, _NONE) else {"says": found}
        if field.stands:
            answer["was"] = field.stands
        self.draft.add(answer | self._how(question, field))

    def _how(self, question: Question, field: Field) -> dict[str, Data]:
        """How it was found out: a quantity is measured, where there is something to measure with; what is looked up is not seen."""
        if question.sort is Sort.SAFETY:
            ways = [(how, say(message(f"ask/how-{how}"))) for how in ("maker", "seen", "told")]
            return {"how": prompts.choose(say(message("ask/how")), ways)}
        if field.form.sort == "quantity" and "with" in self.draft.shared:
            return {"how": "measured"}
        return {}

    def _choose(self, field: Field) -> str:
        none = [(_NONE, say(message("ask/none")))] if field.form.none else []
        others = [
            *none,
            (_CANNOT_TELL, say(message("ask/cannot-tell"))),
            (_LATER, say(message("ask/later"))),
            (_STOP, say(message("ask/stop"))),
        ]
        return prompts.choose(say(field.title), [*((word, word) for word in field.form.choices), *others])

    def _type(self, field: Field) -> str:
        said = prompts.text(
            say(field.title), self._checks(field), say(message("ask/typed", form=form_words(field.form)))
        )
        return _SIGNS.get(said.casefold(), said)

    def _checks(self, field: Field) -> Callable[[str], str]:
        def check(said: str) -> str:
            value = said.strip()
            sign = _SIGNS.get(value.casefold())
            if sign is None or (sign == _NONE and not field.form.none):
                wrong = self.interview.wrong(field, value)
                return " ".join(filter(None, (say(wrong), say(WayOut(wrong))))) if wrong else ""
            return ""

        return check


def _introduce(question: Question, number: int, many: int) -> None:
    print(f"\n{say(message('ask/number', number=number, many=many, ask=question.ask))}")
    print(f"  {say(question.why)}")
    if question.how:
        print(f"  {say(message('questions/how', page=question.how))}")
