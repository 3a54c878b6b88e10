"""How tests are shared out, and how hard the random ones try.

In a usual run each tries the same examples every time, so that a change is not held up by what it did not touch. UNDERTRIM_TESTS=thorough
draws new ones in each run, and ten times as many where a test does not say how many; so does `make fuzz` for whole records.
"""

import gc
import os
from typing import Any

import pytest
from hypothesis import settings

from sharing import group, rank

settings.register_profile("usual", deadline=None, max_examples=100, derandomize=True)
settings.register_profile("thorough", deadline=None, max_examples=1000)
settings.load_profile(os.environ.get("UNDERTRIM_TESTS", "usual"))

for name in ("LANGUAGE", "LC_ALL", "LC_MESSAGES", "LANG"):  # what is said does not depend on who runs the tests
    os.environ.pop(name, None)

pytest_plugins = [
    "browsing",
    "in_node",
    "read_once",
]  # the site and the browser, what runs modules of the pages in Node, and the shipped records

# The facts that tests share stay to the end: looking through them again and again took a seventh of the time.
gc.set_threshold(200_000, 20, 50)


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """The slow ones first where several processes share them: groups that are equally large keep this order."""
    if hasattr(config, "workerinput"):
        items.sort(key=lambda item: rank(item.nodeid))


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> Any:
    """Groups, the largest of them at the head, and functions by themselves last, so that all processes are at work to the end."""
    from xdist.scheduler import LoadScopeScheduling

    made = LoadScopeScheduling(config, log)
    made._split_scope = group
    return made
