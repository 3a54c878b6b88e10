"""Modules become classic scripts: every page's script is all it needs, in order, and what is not understood is refused with its line."""

import re
from pathlib import Path

import pytest

from undertrim.derive.fit.stock import NOTHING
from undertrim.publish.build import gathered
from undertrim.publish.web import gear_pages, scripts
from undertrim.publish.web.scripts import NotBundled
from undertrim.publish.web.views import VIEWS, View
from undertrim.resources import top


def put(folder: Path, **modules: str) -> Path:
    for name, text in modules.items():
        (folder / f"{name}.js").write_text(text, encoding="utf-8")
    return folder


def test_what_a_module_imports_stands_before_it_once(tmp_path: Path) -> None:
    place = put(
        tmp_path,
        page='import "./side.js";\nimport * as sums from "./sums.js";\nimport { one, two as pair } from "./numbers.js";\nsums.add(one, pair);\n',
        side='import { one } from "./numbers.js";\nconsole.log(one);\n',
        sums="export function add(a, b) { return a + b; }\nexport class Sum {}\n",
        numbers="export const one = 1;\nexport const two = 2;\n",
    )
    assert scripts.bundle("page", place) == (
        '(() => {\n"use strict";\n'
        "const $numbers = (() => {\nconst one = 1;\nconst two = 2;\nreturn { one, two };\n})();\n"
        "const $side = (() => {\nconst { one } = $numbers;\nconsole.log(one);\nreturn {  };\n})();\n"
        "const $sums = (() => {\nfunction add(a, b) { return a + b; }\nclass Sum {}\nreturn { add, Sum };\n})();\n"
        "const $page = (() => {\nconst sums = $sums;\nconst { one, two: pair } = $numbers;\nsums.add(one, pair);\nreturn {  };\n})();\n"
        "})();\n"
    )


@pytest.mark.parametrize(
    "line",
    [
        'import one from "./one.js";',
        'import { one } from "one";',
        'import { one } from "../one.js";',
        "import { one } from './one.js';",
        "import {",
        "export default 1;",
        "export { one };",
        "export let one = 1;",
        'const one = await import("./one.js");',
        "const one = import.meta.url;",
    ],
)
def test_another_way_to_import_or_export_is_refused_with_its_line(tmp_path: Path, line: str) -> None:
    place = put(tmp_path, page=f"/* Page. */\n\n{line}\n", one="export const one = 1;\n")
    with pytest.raises(NotBundled) as refused:
        scripts.bundle("page", place)
    assert str(refused.value) == f"{place}/page.js:3: this way to import or export is not known: '{line}'"


def test_words_that_only_begin_so_are_text(tmp_path: Path) -> None:
    place = put(tmp_path, page="imports = 1;\n/* To import or\n   export it. */\nexported = 2;\n")
    assert "imports = 1;" in scripts.bundle("page", place)


def test_modules_that_import_each_other_are_refused(tmp_path: Path) -> None:
    place = put(tmp_path, page='import "./one.js";\n', one='import "./two.js";\n', two='import "./one.js";\n')
    with pytest.raises(NotBundled, match="modules import each other: one -> two -> one"):
        scripts.bundle("page", place)


def test_a_module_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(NotBundled, match=r"no module '.*/one\.js'"):
        scripts.bundle("page", put(tmp_path, page='import "./one.js";\n'))


def test_every_module_is_part_of_a_page_and_every_page_loads_its_script() -> None:
    used = {found for entry in scripts.ENTRIES for found in re.findall(r"^const \$(\w+) =", scripts.bundle(entry), re.MULTILINE)}  # fmt: skip
    assert used == {name.replace("-", "_") for name in scripts.modules()}
    frames = "".join(path.read_text(encoding="utf-8") for path in top("site_overrides").rglob("*.html"))
    bodies = gathered.content([], NOTHING).bodies.values()
    asked = [script for one in bodies for script in one.scripts] + [script for view in VIEWS for script in view.scripts]
    asked += re.findall(r'load\("(assets/undertrim/[\w-]+\.js)"\)', scripts.bundle("page-visit"))  # when gear is chosen
    asked += re.findall(r'"(assets/undertrim/finder\.js)"', scripts.bundle("page"))  # when somebody comes to the box
    asked += gear_pages.SCRIPTS
    loaded = set(re.findall(r"assets/undertrim/([\w-]+)\.js", " ".join([frames, *asked])))
    assert loaded | {"keeper", "stick"} == {
        *scripts.ENTRIES,
        "meter-table",
    }  # the last of these stands in the file for a stick
    assert 'register(TOP + "keeper.js")' in scripts.bundle("page")  # it stands at the top of the site


def test_a_page_loads_what_its_view_needs_and_no_more() -> None:
    """No form where nothing is tried, no meter where no plug is, no sum of a fit and no stock before somebody chooses gear."""
    held = {view.name: set(re.findall(r"^const \$(\w+) =", "".join(map(scripts.bundle, _own(view))), re.MULTILINE)) for view in VIEWS}  # fmt: skip
    assert {name for name, modules in held.items() if "fit_form" in modules} == {"openings"}
    assert {name for name, modules in held.items() if "meter_guide" in modules} == {"wiring"}
    assert {name for name, modules in held.items() if "visit_steps" in modules} == {"visit"}
    assert {name for name, modules in held.items() if "fit_place" in modules} == {"openings"}
    assert not any("shelf/" in script for view in VIEWS for script in view.scripts)
    assert [view.name for view in VIEWS if any("meter-table" in script for script in view.scripts)] == ["wiring"]


def _own(view: View) -> list[str]:
    names = [Path(script).stem for script in view.scripts]
    return [name for name in names if name in scripts.ENTRIES]


def test_comments_stay_behind_and_nothing_else(tmp_path: Path) -> None:
    text = """/* Begin. */

/**
 * Two.
 */
export async function one() { // kept
  /* gone */
  /** @type {any} */ (window).kept = 1;
  const text = "/* kept */";
  return text;
}
"""
    made = scripts.bundle("page", put(tmp_path, page=text))
    for kept in ("async function one()", "// kept", "(window).kept = 1;", '"/* kept */"', "return { one };"):
        assert kept in made
    for gone in ("Begin", "Two", "gone"):
        assert gone not in made
