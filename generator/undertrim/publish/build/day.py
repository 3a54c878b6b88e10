"""The day that it is, of a build and for whoever is asked: the one place that looks at the clock for it (`DTZ` of ruff holds the others to it)."""

import os
from datetime import UTC, date, datetime, time

from undertrim.words import message
from undertrim.work.refused import Refused


class BadDay(Refused):
    """SOURCE_DATE_EPOCH names no day."""


EPOCH = "SOURCE_DATE_EPOCH"


def epoch() -> str:
    """The day of the build as SOURCE_DATE_EPOCH, for workers whose clock or place may differ. Raises BadDay."""
    return str(int(datetime.combine(today(), time(12), UTC).timestamp()))


def today() -> date:
    """The day of the build; SOURCE_DATE_EPOCH overrides it for reproducible builds. Raises BadDay."""
    typed = os.environ.get(EPOCH)
    if not typed:
        return date.today()  # noqa: DTZ011 - the day where somebody sits is meant
    try:
        return datetime.fromtimestamp(int(typed), UTC).date()
    except (ValueError, OverflowError, OSError) as error:
        raise BadDay(message("building/no-day", typed=repr(typed[:40]))) from error
