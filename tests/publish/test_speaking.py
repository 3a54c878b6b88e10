"""A sentence in a template is the sentence of the catalogue, whether it is put together when the template is compiled or called for each value."""

import json
from dataclasses import dataclass, make_dataclass

import pytest
from jinja2 import Environment, UndefinedError
from markupsafe import Markup

from undertrim.publish import template_words
from undertrim.publish.encoding import Spread, compact, indented, said
from undertrim.publish.web import pages
from undertrim.record.own_text import OwnText
from undertrim.words import Language, Value, message, speaking

BOLD = Markup("<b>Lid</b>")
TURNED = Language("xx", {("fit-shown/number", "{label} {number}"): "{number} < {label}"}, decimal_mark=",")
WHOLE, COUNTED, IN_LOWER_CASE = "fit-shown/number", "ages/days", "schema/empty"


def compiled(code: str, **values: Value) -> str:
    """What a template makes of a sentence, before it is escaped."""
    given = ", ".join(f"{name}={name}" for name in values)
    source = f'{{% set made = say("{code}", {given}) %}}'
    return pages.environment().from_string(source).make_module(values).made  # type: ignore[attr-defined,no-any-return]


@pytest.mark.parametrize("number", ["<7>", 7, 2.5, BOLD, message("facts/not-recorded")])
@pytest.mark.parametrize("speech", [Language(), TURNED])
def test_a_sentence_with_values_is_the_same_as_when_it_is_called(speech: Language, number: Value) -> None:
    with speaking(speech):
        called = template_words.say(WHOLE, label="a & b", number=number)
        assert compiled(WHOLE, label="a & b", number=number) == called
        assert isinstance(compiled(WHOLE, label="a & b", number=number), Markup) == isinstance(called, Markup)


@pytest.mark.parametrize("count", [1, 2])
def test_the_number_still_chooses_the_sentence(count: int) -> None:
    assert compiled(COUNTED, count=count) == template_words.say(COUNTED, count=count)


def test_a_value_that_goes_on_in_lower_case_still_does() -> None:
    assert compiled(IN_LOWER_CASE, name="Speaker", hint="") == "speaker is empty"


def test_facts_are_asked_by_key_and_keep_what_dictionaries_can() -> None:
    page = pages.environment().from_string("{{ v.name }} {{ v.items() | list | length }}")
    assert page.render(v={"name": "a", "items": 1}) == "a 2"


class Drawn:
    """Knows its own markup."""

    def __html__(self) -> str:
        return "<svg/>"


def test_what_is_put_out_is_as_the_engine_itself_would_put_it_out() -> None:
    source = "{% for one in v.of.every %}{{ one }} {{ v.of.every[0] ~ one }} {% endfor %}{% set whole %}{{ v.of.tag }}{% endset %}{{ whole }}"
    every = ["<i> & 'a'", BOLD, OwnText("<b>", "de"), "<b>", 7, True, None, 2.5, Drawn(), Markup("<i> & 'a'")]
    facts = {"of": {"every": every, "tag": "<u>"}}
    own = pages.environment().from_string(source).render(v=facts)
    assert own == Environment(autoescape=True).from_string(source).render(v=facts)
    assert "&lt;i&gt; &amp; &#39;a&#39; " in own


def test_a_fact_that_is_not_there_is_an_error() -> None:
    with pytest.raises(UndefinedError):
        pages.environment().from_string("{{ v.nothing }}").render(v={"name": "a"})


def test_a_generator_is_said_while_it_is_made() -> None:
    made = []

    def facts() -> object:
        for name in ("left", "right"):
            made.append(name)
            yield {"side": message(f"sides/{name}")}

    assert said({"sides": facts()}) == {"sides": [{"side": "left"}, {"side": "right"}]}
    assert made == ["left", "right"]


@dataclass(frozen=True, slots=True)
class Inner:
    from_: Value
    kind: str


@dataclass(frozen=True, slots=True)
class Outer:
    name: str
    inner: Spread[Inner]
    last: int


def test_a_fact_is_said_by_its_fields_and_what_is_spread_stands_in_its_place() -> None:
    made = Outer("a", Inner(message("sides/left"), "b"), 1)
    assert list(said(made).items()) == [("name", "a"), ("from", "left"), ("kind", "b"), ("last", 1)]
    assert json.loads(compact(made)) == said(made)


def test_a_fact_of_one_field_is_said() -> None:
    one = make_dataclass("One", ["car"], frozen=True, slots=True)
    assert said(one("a")) == {"car": "a"}
    assert json.loads(indented(one("a"))) == {"car": "a"}
