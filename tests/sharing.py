"""Which tests run in one process: those that share something costly, which each process would make for itself.

The marks of pytest-xdist for this (`xdist_group`) are lost with pytest 9.2, without a word, since they were put into a private name.
"""

import re

TOGETHER = {
    r"browser/.*": "browser",  # the site, and the browser
    r"publish/test_(same_joints|wiring_page|wiring_sheet|duties_shown|same_verdicts|visits_agree)\.py": "vehicles",  # their facts, pages and sheets
    r"publish/test_(building|conflicts_shown|ends_of_tethers|open_door|pdf|plug_facts|published_schema)\.py": "",
    r"derive/(fit/test_fit_vectors|test_replay|wiring/test_differences|wiring/test_join_properties)\.py": "",
    r"test_packaging\.py": "",  # the wheel, and its environment
}
"""Files below `tests` as patterns, with the name of what they share; without one, each file by itself."""


def group(test: str) -> str:
    """The group of a test by its id (`tests/<file>::<name>`): groups are shared out as a whole."""
    file = test.partition("::")[0]
    for pattern, name in TOGETHER.items():
        if re.fullmatch(f"tests/{pattern}", file):
            return name or file
    return test
