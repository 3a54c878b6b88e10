"""How hard the random tests try: UNDERTRIM_TESTS=thorough gives those without a number of their own ten times the examples."""

import os

from hypothesis import settings

settings.register_profile("usual", deadline=None, max_examples=100)
settings.register_profile("thorough", deadline=None, max_examples=1000)
settings.load_profile(os.environ.get("UNDERTRIM_TESTS", "usual"))

pytest_plugins = ["browsing", "in_node"]  # the site and the browser, and what runs modules of the pages in Node
