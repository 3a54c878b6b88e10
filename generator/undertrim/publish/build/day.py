"""The day of a build."""

import os
from datetime import UTC, date, datetime

from undertrim.words import message
from undertrim.work.refused import Refused


class BadDay(Refused):
    """SOURCE_DATE_EPOCH names no day."""


def today() -> date:
    """The day of the build; SOURCE_DATE_EPOCH overrides it for reproducible builds. Raises BadDay."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH")
    if not epoch:
        return date.today()
    try:
        return datetime.fromtimestamp(int(epoch), UTC).date()
    except (ValueError, OverflowError, OSError) as error:
        raise BadDay(message("building/no-day", typed=repr(epoch[:40]))) from error
