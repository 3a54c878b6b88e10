"""Templates that are compiled for one language."""

from typing import Any

from jinja2 import Environment, nodes
from jinja2.visitor import NodeTransformer

from undertrim.publish.web.generated import Generator, escaped
from undertrim.words import Language, message, pieces, say

OF_SOMETHING: dict[str, str] = {
    **dict.fromkeys(("chip", "photos", "sources"), ""),
    **dict.fromkeys(("clauses", "conflicts"), "itself"),
}
"""Macros that say nothing of nothing: of what they are given, or `itself`, of the field of it that has their name. Most of what a page asks them is that, and a call of a macro costs more than looking."""


class Speaking(Environment):
    """Says a sentence without values once, when a template is compiled: a page has thousands, and a call in a template costs more than its text.

    One with values becomes its pieces with the values between them.
    """

    code_generator_class = Generator
    escaped = staticmethod(escaped)

    def __init__(self, speech: Language, **options: Any) -> None:
        self.speech = speech
        super().__init__(**options)
        self.filters["worded"] = lambda value: value if isinstance(value, str) else say(value, speech)

    def _parse(self, source: str, name: str | None, filename: str | None) -> nodes.Template:
        tree: nodes.Template = _Saying(self.speech).visit(super()._parse(source, name, filename))
        return tree


class _Saying(NodeTransformer):
    def __init__(self, speech: Language) -> None:
        self.speech = speech

    def visit_Call(self, node: nodes.Call) -> nodes.Expr:  # noqa: N802 - the visitor's name for it
        self.generic_visit(node)
        if (name := _called(node)) in OF_SOMETHING and len(node.args) == 1:
            asked = nodes.Getattr(node.args[0], name, "load") if OF_SOMETHING[name] else node.args[0]
            return nodes.CondExpr(asked, node, nodes.Const(""), lineno=node.lineno)
        code = node.args[0] if len(node.args) == 1 and not (node.dyn_args or node.dyn_kwargs) else None
        if not (isinstance(node.node, nodes.Name) and node.node.name == "say" and isinstance(code, nodes.Const)):
            return node
        if not node.kwargs:
            return nodes.Const(say(message(code.value), self.speech), lineno=node.lineno)
        return self._with_values(node, code.value)

    def _with_values(self, node: nodes.Call, code: str) -> nodes.Expr:
        """Its pieces and values one behind the other, which are markup where a value is; still a call where that is not all there is to it."""
        found = pieces(code, self.speech)
        if found is None:
            return node
        values = {pair.key: nodes.Filter(pair.value, "worded", [], [], None, None) for pair in node.kwargs}
        both = ((nodes.Const(text) if text else None, values[name] if name else None) for text, name, _ in found)
        return nodes.Concat([one for pair in both for one in pair if one], lineno=node.lineno)


def _called(node: nodes.Call) -> str:
    """The name that is called, its own or in another template."""
    if isinstance(node.node, nodes.Name):
        return str(node.node.name)
    return str(node.node.attr) if isinstance(node.node, nodes.Getattr) else ""
