"""What the rules find in what a record takes from another one: told there where it is wrong there too, and here with the way out."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from undertrim.check.findings import Finding, Subject
from undertrim.check.register import RECORD_RULES
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry
from undertrim.words import Message, WayOut, message

IN_TAKEN = "sharing/in-taken"
"""What is said of a thing that is taken: `place` is its section and id."""


def told(entry: Entry, rule_id: str, findings: Sequence[Finding]) -> Iterator[Finding]:
    """The findings of one rule that are this record's to mend."""
    origin = entry.source.origin
    theirs: set[Message] | None = None
    for finding in findings:
        if not origin or not origin.is_taken(finding.pointer):
            yield finding
            continue
        theirs = _of_sisters(entry, rule_id) if theirs is None else theirs
        if finding.said not in theirs:
            place = "/".join(map(str, finding.pointer[:2]))
            yield replace(finding, said=message(IN_TAKEN, place=place, what=finding.said, where=WayOut(finding.said)))


def _of_sisters(entry: Entry, rule_id: str) -> set[Message]:
    """What the same rule says of the records that were taken from."""
    found: set[Message] = set()
    for sister in entry.sisters:
        if isinstance(sister.record, VehicleRecord):
            found.update(finding.said for finding in RECORD_RULES[rule_id].check(Subject(sister, sister.record)))
    return found
