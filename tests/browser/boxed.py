"""What tests of the finder share: made-up vehicles of its index, its box, and what it offers."""

import re
from typing import Any

from playwright.sync_api import Page, expect

from undertrim.publish.web import finder


def row(address: str, make: str, model: str, first: int, last: int, phase: str = "", others: tuple[str, ...] = (), *built: str) -> finder.Entry:  # fmt: skip
    """A made-up vehicle as the index has it."""
    return [address, make, model, first, last, phase, list(others), *(built or ("", "")), ["van"], ["left"], "", [["dash", "Radio", "receiver"]], []]  # fmt: skip


def box(page: Page) -> Any:
    return page.get_by_role("combobox")


def found(page: Page, query: str) -> list[str]:
    """The vehicles that are offered once the index is there."""
    box(page).fill(query)
    expect(page.locator("#ut-said")).not_to_have_text(re.compile("^(Looking.*)?$"))
    return [name.inner_text() for name in page.locator(".ut-hit-vehicle b").all()]
