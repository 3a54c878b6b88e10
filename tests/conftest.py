"""How hard the random tests try: UNDERTRIM_TESTS=thorough gives those without a number of their own ten times the examples."""

import gc
import os

from hypothesis import settings

settings.register_profile("usual", deadline=None, max_examples=100)
settings.register_profile("thorough", deadline=None, max_examples=1000)
settings.load_profile(os.environ.get("UNDERTRIM_TESTS", "usual"))

pytest_plugins = ["browsing"]  # the site and the browser, for tests/browser

gc.set_threshold(
    50_000, 20, 20
)  # the facts that tests share stay to the end: looking through them again and again took a seventh of the time
