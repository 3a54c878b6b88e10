"""What a template says: markup stays markup in a sentence, everything else is text, and lists are the language's own."""

from markupsafe import Markup, escape

from undertrim.publish import template_words
from undertrim.publish.printed import pdf
from undertrim.publish.web import pages
from undertrim.words import Language, speaking

BOLD = Markup("<b>Lid</b>")


def test_a_sentence_of_texts_is_text() -> None:
    said = template_words.say("vehicle-page/under", part="<i>")
    assert said == "under: <i>"
    assert not isinstance(said, Markup)


def test_markup_among_the_values_stays_and_all_the_rest_is_escaped() -> None:
    said = template_words.say("vehicle-page/not-said-whether-in", name=BOLD, cars="<i> & more")
    assert isinstance(said, Markup)
    assert said == "Nobody has recorded whether <b>Lid</b> is in: &lt;i&gt; &amp; more."
    assert escape(said) == said


def test_markup_stands_where_the_language_puts_it() -> None:
    english = "Cautious value: {value}; {reason}."
    turned = Language("xx", {("vehicle-page/cautious", english): "{reason} < {value}"})
    with speaking(turned):
        assert template_words.say("vehicle-page/cautious", value=BOLD, reason="a") == "a &lt; <b>Lid</b>"


def test_a_list_may_hold_markup() -> None:
    assert template_words.listed(["a", "b", "c"], "and") == "a, b and c"
    assert template_words.listed([BOLD, "<"], "or") == "<b>Lid</b> or &lt;"
    assert template_words.listed([]) == ""


def test_evidence_is_a_list_of_ways_to_it() -> None:
    assert template_words.evidence_links(["e1", "e2"]) == '<a href="#evidence-e1">e1</a>, <a href="#evidence-e2">e2</a>'


def test_bodies_and_sides_are_said_and_never_shown_as_codes() -> None:
    with speaking(Language("xx", {("sides/left", "left"): "L", ("body/pick-up", "Pick-up"): "P"})):
        assert template_words.sides(["left"]) == "L"
        assert template_words.bodies(["pick-up"]) == "p"
    assert template_words.sides(["left", "right"], "or") == "left or right"
    assert template_words.bodies(["hatchback", "pick-up"]) == "hatchback, pick-up"


def test_what_the_fonts_cannot_show_of_a_language_is_named_on_a_sheet() -> None:
    with speaking(Language("xx", {("sheet/time", "Time: {time}."): "\u6642{time}" + "n" * 30})):
        assert '"[U+6642]{time}' + "n" * 30 + '"' in pdf.template_words()


def test_a_template_is_compiled_for_each_language() -> None:
    other = Language("qq", {("finder/title", "Find a vehicle"): "<b>"})
    assert "<h1>Find a vehicle</h1>" in pages.home([], demo=False)
    with speaking(other):
        assert "<h1>&lt;b&gt;</h1>" in pages.home([], demo=False)
    assert "<h1>Find a vehicle</h1>" in pages.home([], demo=False)
