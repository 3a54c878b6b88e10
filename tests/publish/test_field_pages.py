"""The reference of fields shows what the schema says, placeholders and examples as a person would type them."""

from undertrim.publish.web.field_pages import field_page


def test_a_placeholder_in_angle_brackets_is_text_and_no_tag() -> None:
    page = field_page()
    assert "records/vehicles/&lt;make&gt;/&lt;model&gt;" in page
    assert "<make>" not in page


def test_an_example_is_shown_as_it_would_be_typed() -> None:
    assert "`[{screw: T20, count: 4}]`" in field_page()
    assert '{"' not in field_page()
