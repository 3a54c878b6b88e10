"""The pages that the benchmark gives to MkDocs hold the words of ours."""

import math

from herd import Herd
from markdown_site import MOST, by_mkdocs, markdown

from bench import table
from undertrim.record.store import Workspace


def test_words_lists_and_tables_come_over_and_pictures_do_not() -> None:
    html = "<h2>Plugs</h2><svg><title>Face</title></svg><p>One <b>bold</b> word.</p><ul><li>a</li><li>b</li></ul><table><tr><td>1</td><td>red</td></tr></table>"
    assert markdown(html) == "## Plugs\n\nOne bold word.\n\n- a\n\n- b\n\n| 1 | red\n"


def test_a_herd_too_large_for_it_has_no_figure_and_no_growth() -> None:
    some = Herd(Workspace.__new__(Workspace), (None,) * (MOST + 1))  # type: ignore[arg-type]
    assert all(map(math.isnan, by_mkdocs(some).values()))
    assert table({2: {"a": 1.0}, 4: {"a": math.nan}}).splitlines()[1].split() == ["a", "1", "-"]


def test_what_is_wanted_stands_beside_what_was_measured() -> None:
    name = "all its files, bytes"
    assert table({2: {name: 1000.0}, 4: {name: 2000.0}}).splitlines()[1].endswith("2.00   600,000")
