"""A link to a heading of the handbook holds in the editions of all languages."""

import re

from markdown import Markdown

from undertrim.publish.web.anchors import Anchors

ENGLISH = "# How to measure\n\n## The hole\n\n```sh\n# no heading\n```\n\n## The hole ##\n\n### How sure\n"
SPANISH = "# Cómo medir\n\n## El agujero\n\n```sh\n# ninguno\n```\n\n## Otra vez\n\n### Cuánto es seguro\n\n## Más\n"


def names(text: str, original: str = "") -> list[str]:
    anchors = Anchors()
    anchors.begin(original)
    made = Markdown(extensions=["toc", "fenced_code"], extension_configs={"toc": {"slugify": anchors.slug}}).convert(
        text
    )
    return re.findall(r'<h\d id="([^"]*)"', made)


def test_headings_of_a_translation_have_the_names_of_the_page_whose_place_it_takes() -> None:
    assert names(SPANISH, ENGLISH) == [*names(ENGLISH), "mas"]
    assert names(ENGLISH) == ["how-to-measure", "the-hole", "the-hole_1", "how-sure"]


def test_headings_of_another_page_have_names_of_their_own() -> None:
    assert names("## Otra vez") == ["otra-vez"]
