"""A link stands in the middle of a sentence of the catalogue, and all else is escaped."""

from undertrim.publish.template_words import link, say
from undertrim.words import Language, speaking

ENGLISH = "Ohms on {pin} against {against}, with the plug off and no power; within {tolerance}."


def test_a_link_stays_and_the_rest_is_escaped() -> None:
    said = say("ladders/how", pin=link("#pin-a-1", "a/1"), against="<b>", tolerance="5 %")
    assert said == ('Ohms on <a href="#pin-a-1">a/1</a> against &lt;b&gt;, with the plug off and no power; within 5 %.')


def test_the_link_stands_where_the_language_wants_it() -> None:
    other = Language("qq", {("ladders/how", ENGLISH): "{against} & {pin}"})
    with speaking(other):
        assert say("ladders/how", pin=link("#p", "'p'"), against="q", tolerance="") == (
            'q &amp; <a href="#p">&#39;p&#39;</a>'
        )
