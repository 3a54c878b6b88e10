"""A phone whose processor is slower than this machine's, while somebody uses it."""

from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Page

SLOWER = 4
"""How many times slower than this machine the phone is."""


class Phone:
    """A page, and how slow its processor is."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self._processor = page.context.new_cdp_session(page)

    @contextmanager
    def used(self) -> Iterator[None]:
        """Slow while it is in somebody's hand: the browser slows a processor by keeping it busy, also where it has nothing to do."""
        self._slow(SLOWER)
        yield
        self._slow(1)

    @contextmanager
    def aside(self) -> Iterator[None]:
        """Within `used`: while nobody looks at it."""
        self._slow(1)
        yield
        self._slow(SLOWER)

    def _slow(self, rate: int) -> None:
        self._processor.send("Emulation.setCPUThrottlingRate", {"rate": rate})
