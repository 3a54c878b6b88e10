"""Templates that are compiled for one language."""

from typing import Any

from jinja2 import Environment, nodes
from jinja2.visitor import NodeTransformer

from undertrim.words import Language, message, say


class Speaking(Environment):
    """Says a sentence without values once, when a template is compiled: a page has thousands, and a call in a template costs more than its text."""

    def __init__(self, speech: Language, **options: Any) -> None:
        self.speech = speech
        super().__init__(**options)

    def _parse(self, source: str, name: str | None, filename: str | None) -> nodes.Template:
        tree: nodes.Template = _Saying(self.speech).visit(super()._parse(source, name, filename))
        return tree


class _Saying(NodeTransformer):
    def __init__(self, speech: Language) -> None:
        self.speech = speech

    def visit_Call(self, node: nodes.Call) -> nodes.Expr:  # noqa: N802 - the visitor's name for it
        self.generic_visit(node)
        code = node.args[0] if len(node.args) == 1 and not (node.kwargs or node.dyn_args or node.dyn_kwargs) else None
        if isinstance(node.node, nodes.Name) and node.node.name == "say" and isinstance(code, nodes.Const):
            return nodes.Const(say(message(code.value), self.speech), lineno=node.lineno)
        return node
