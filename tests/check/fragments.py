"""Runs one rule on a piece of a record laid over `base.yaml`."""

from rule_pages import compose, load

from undertrim.check.findings import Finding, RecordRule, Subject
from undertrim.record.model import VehicleRecord


def subject(piece: str) -> Subject:
    """The record that `piece` makes of the base record."""
    item = load("brindleway/otter-2014-2018.yaml", compose(piece))
    assert isinstance(item.record, VehicleRecord)
    return Subject(item, item.record)


def findings(rule: RecordRule, piece: str) -> list[Finding]:
    """What a rule says of it; the piece must be a valid record."""
    about = subject(piece)
    assert not about.entry.problems
    return list(rule.check(about))


def messages(rule: RecordRule, piece: str) -> list[str]:
    """The messages alone."""
    return [finding.message for finding in findings(rule, piece)]
