"""Put what somebody found out about cars and gear into records: claims files from a phone page, a spreadsheet, a terminal or by hand.

Each answer fills in what was unknown, is named as one more who saw it, makes a conflict of what differs, or is there already; an answer
with which the check would find something new is refused, and the others are taken. Nothing is lost: no comment, no order, no claim.
Taking the same file again changes nothing. A file that describes a car without a record begins one. A record that was verified loses its stamp when a fact in it changes.
Exit 1 if an answer was refused.
"""

import argparse
import sys
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from difflib import unified_diff
from pathlib import Path

from undertrim.check import layering, taking
from undertrim.check.taking import Taken
from undertrim.commands import brought, left_claims, new_taken, photos_taken
from undertrim.commands.brought import Brought
from undertrim.commands.common import add_workspace, existing, progress, workspace
from undertrim.commands.new_taken import Begun
from undertrim.commands.photos_taken import Pictured
from undertrim.commands.usage import Usage
from undertrim.derive.claims import Deed, Outcome
from undertrim.publish.encoding import indented
from undertrim.record import claims
from undertrim.record.claims import Answer, ClaimsFile
from undertrim.record.lookup import NotFound, file_of
from undertrim.record.problem import Position, Problem, printable
from undertrim.record.store import Workspace
from undertrim.words import Items, Message, WayOut, message, say


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument(
        "paths", nargs="+", type=Path, metavar="FILE", help="a claims file, or a folder that 'undertrim give' wrote"
    )
    parser.add_argument("--dry-run", action="store_true", help="show what would change, and write nothing")
    parser.add_argument(
        "--left", type=Path, metavar="FILE", help="put the answers that were refused into a new claims file"
    )
    parser.add_argument("--format", choices=["json", "text"], default="text", help="how to print (default: text)")
    add_workspace(parser)


@dataclass(frozen=True, slots=True)
class _Asked:
    """One answer with the file that it stands in."""

    file: ClaimsFile
    answer: Answer


@dataclass(frozen=True, slots=True)
class _Line:
    """What came of one answer, as it is printed; `number` is that of the answer in its file."""

    file: ClaimsFile
    number: int
    record: str
    about: str
    deed: Deed
    said: Message

    @property
    def position(self) -> Position:
        """Where the answer stands."""
        return self.file.source.position(("answers", self.number))


def run(options: argparse.Namespace) -> int:
    """Take them; exit 1 if one was refused."""
    if options.left and options.left.exists():
        raise Usage(message("copy/there", path=printable(str(options.left))))
    paths = list(existing(options))
    options.paths = []  # claims files stand anywhere: they say nothing of where the records are
    place = workspace(options)
    files = [claims.read(path, place.shown(path)) for path in brought.files(paths)]
    whole = brought.take(place, paths, dry=options.dry_run)
    begun = new_taken.begin(place, files, dry=options.dry_run)
    lines = [line for file in files for line in _bad(file)]
    taken: list[Taken] = []
    for asked in _by_record(files):
        found = _take(place, asked)
        taken += [found] if isinstance(found, Taken) else []
        lines += _lines(asked, found)
    unread = [problem for file in files for problem in file.problems]
    if not options.dry_run:
        for one in taken:
            if one.changed:
                layering.write(place, one)
        lines += _photographs(place, files, lines)
    _print(place, options, [*whole, *begun], taken, lines, unread)
    refused = [line for line in lines if line.deed is Deed.REFUSED]
    if options.left:
        left_claims.leave(options.left, [(line.file, line.number) for line in refused], begun)
    return 1 if refused or unread or Deed.REFUSED in [one.deed for one in begun] + [one.deed for one in whole] else 0


def _by_record(files: Sequence[ClaimsFile]) -> Collection[list[_Asked]]:
    found: dict[tuple[str, str], list[_Asked]] = {}
    for file in files:
        for answer in file.answers:
            found.setdefault((answer.vehicle, answer.gear), []).append(_Asked(file, answer))
    return found.values()


def _take(place: Workspace, asked: Sequence[_Asked]) -> Taken | Message:
    """What becomes of a record, or why there is none."""
    first = asked[0].answer
    try:
        path = file_of(place, first.vehicle, first.gear)
    except NotFound as error:
        return error.said
    shown = progress(message("claims/taking", vehicle=first.record))
    return taking.take(place, path, [one.answer for one in asked], shown)


def _lines(asked: Sequence[_Asked], found: Taken | Message) -> Iterator[_Line]:
    if isinstance(found, Taken):
        outcomes = found.outcomes
    else:
        outcomes = (Outcome(Deed.REFUSED, message("claims/no-record", said=found)),) * len(asked)
    for one, outcome in zip(asked, outcomes, strict=True):
        answer = one.answer
        yield _Line(one.file, int(answer.pointer[1]), answer.record, answer.about, outcome.deed, outcome.said)


def _bad(file: ClaimsFile) -> Iterator[_Line]:
    for bad in file.bad:
        answer = file.source.data["answers"][bad.number]
        about = str(answer.get("about", "")) if isinstance(answer, dict) else ""
        for problem in bad.problems:
            yield _Line(file, bad.number, "", about, Deed.REFUSED, problem.said)


def _photographs(place: Workspace, files: Sequence[ClaimsFile], lines: Sequence[_Line]) -> Iterator[_Line]:
    """The pictures of the answers that were taken; they go in once all records are written."""
    known = {(id(line.file), line.number): line for line in lines}
    for file in files:
        for answer in file.answers:
            line = known[id(file), int(answer.pointer[1])]
            if answer.photo and line.deed is not Deed.REFUSED:
                one = Pictured(answer, file.path.parent)
                said, there = photos_taken.take(place, file_of(place, answer.vehicle, answer.gear), one)
                why = said if there else message("claims/photo-not", said=said)
                yield replace(line, said=why, deed=line.deed if there else Deed.REFUSED)


# What is said


def _print(
    place: Workspace,
    options: argparse.Namespace,
    begun: Sequence[Begun | Brought],
    taken: Sequence[Taken],
    lines: list[_Line],
    unread: list[Problem],
) -> None:
    for problem in unread:
        where = f"{printable(str(problem.file))}:{problem.position.line}:{problem.position.column}"
        print(f"{where}: {problem.message}\n    {problem.hint}", file=sys.stderr)
    if options.format == "json":
        begins = {"begun": [one.data(place) for one in begun]}
        sys.stdout.write(indented(begins | _data(place, taken, lines)) + "\n")
        return
    for one in begun:
        one.tell()
    for line in lines:
        _say(line)
    for record in taken:
        _say_record(place, record, dry=options.dry_run)
    if lines:
        counted = tuple(message(f"claims/count-{deed}", count=count) for deed in Deed if (count := _count(lines, deed)))
        every = len({(id(line.file), line.number) for line in lines})
        print(say(message("claims/counted", count=every, what=Items(counted, "comma"))))


def _say_record(place: Workspace, one: Taken, *, dry: bool) -> None:
    if dry and one.changed:
        sys.stdout.writelines(_changes(place, one))
    path = printable(str(place.shown(layering.target(place, one.path))))
    done = "claims/would-change" if dry else "claims/changed"
    for code, wanted in (("claims/stamp-gone", one.stamp_gone), ("claims/unlaid", one.unlaid), (done, one.changed)):
        if wanted:
            print(say(message(code, path=path)))


def _count(lines: Sequence[_Line], deed: Deed) -> int:
    return len({(id(line.file), line.number) for line in lines if line.deed is deed})


def _say(line: _Line) -> None:
    at = line.position
    where = f"{printable(str(line.file.source.path))}:{at.line}:{at.column}"
    about = "/".join(filter(None, (line.record, line.about)))
    stream = sys.stderr if line.deed is Deed.REFUSED else sys.stdout
    words = say(message("claims/refused", said=line.said)) if line.deed is Deed.REFUSED else say(line.said)
    print(printable(f"{where}: {about}: {words}"), file=stream)
    if hint := say(WayOut(line.said)):
        print(f"    {printable(hint)}", file=stream)


def _changes(place: Workspace, one: Taken) -> Iterator[str]:
    path = printable(str(place.shown(one.path)))
    for line in unified_diff(one.before.splitlines(), one.text.splitlines(), path, path, lineterm="", n=1):
        yield printable(line) + "\n"


def _data(place: Workspace, taken: Sequence[Taken], lines: Sequence[_Line]) -> dict[str, object]:
    return {
        "answers": [
            {
                "file": str(line.file.source.path),
                "number": line.number,
                "record": line.record,
                "about": line.about,
                "deed": str(line.deed),
                "said": line.said,
                "way_out": WayOut(line.said),
            }
            for line in lines
        ],
        "records": [
            {
                "path": str(place.shown(layering.target(place, one.path))),
                "changed": one.changed,
                "stamp_gone": one.stamp_gone,
            }
            for one in taken
        ],
    }
