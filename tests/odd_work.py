"""What a single piece of work may do to its worker; a module by itself, so that workers elsewhere can load it."""

import os
import time

from undertrim.publish.build import day

SLOW, WRONG, DEADLY, FULL = 1, 3, 5, 7


def odd(number: int) -> object:
    """Twice the number, or what befalls."""
    if number == SLOW:
        end = time.monotonic() + 60
        while time.monotonic() < end:
            pass
    if number == WRONG:
        raise ValueError(number)
    if number == DEADLY:
        os._exit(0)
    if number == FULL:
        raise OSError(28, "No space left on device")
    return number * 2


def who(_: int) -> tuple[int, str]:
    """The process that does it, and its day of the build."""
    time.sleep(0.05)
    return os.getpid(), str(day.today())
