"""The reference of fields shows what the schema says, placeholders and examples as a person would type them."""

from undertrim.publish.web.field_pages import field_page
from undertrim.record import schema


def test_a_placeholder_in_angle_brackets_is_text_and_no_tag() -> None:
    page = field_page()
    assert "records/vehicles/&lt;make&gt;/&lt;model&gt;" in page
    assert "<make>" not in page


def test_an_example_is_shown_as_it_would_be_typed() -> None:
    assert "`[{screw: T20, count: 4}]`" in field_page()
    assert '{"' not in field_page()


def test_each_kind_names_the_fields_it_must_have() -> None:
    """What the schema asks of a kind, and in the same words as a record that lacks it is told."""
    page = field_page()
    for name, block in (("vehicle", "opening"), ("gear", "gear")):
        for rule in schema.load(name)["$defs"][block]["allOf"] if block in schema.load(name).get("$defs", {}) else ():
            kind = rule["if"]["properties"]["kind"]["const"]
            assert f"With `kind: {kind}` there must also be: {', '.join(rule['then']['required'])}." in page
    assert page.count("there must also be") >= 8
