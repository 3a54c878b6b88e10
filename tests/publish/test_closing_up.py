"""A page is made smaller without changing what is shown of it, and nothing that counts as typed is touched."""

from undertrim.publish.web.closing_up import closed_up

TYPED = (
    "<pre>a\n\n   b</pre>",
    "<script>\n  one();\n\n  two();\n</script>",
    '<textarea rows="2">\n\n x\n</textarea>',
    "<PRE\n id=x>\n  y</PRE>",
)


def test_indents_and_blank_lines_go() -> None:
    assert closed_up("<ul>\n\n    <li>one\n      two</li>\r\n  \n</ul>\n") == "<ul>\n<li>one\ntwo</li>\n</ul>\n"
    assert closed_up("<b>a</b>  <i>b</i>") == "<b>a</b>  <i>b</i>"


def test_what_is_typed_stays() -> None:
    for typed in TYPED:
        assert closed_up(f"<p>\n\n  a</p>{typed}\n\n\n<p>b</p>{typed}") == f"<p>\na</p>{typed}\n<p>b</p>{typed}"
