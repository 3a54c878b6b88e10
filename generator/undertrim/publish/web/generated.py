"""How templates become Python: as Jinja does it, with what a page asks most often written out where it is asked.

A vehicle's pages look up seven thousand fields of facts and put out five thousand values, nearly all of them dictionaries and plain texts that other steps have too.
"""

from functools import lru_cache
from typing import Any

from jinja2 import nodes
from jinja2.compiler import CodeGenerator, Frame, optimizeconst
from markupsafe import Markup, escape

_OWN = frozenset(dir(dict))


def escaped(value: object) -> str:
    """A value as it is put out: escaped, but for markup. Not marked as such, for nothing looks at it again."""
    kind = type(value)
    if kind is str:
        return _escaped(value)
    if kind is Markup:
        return value  # type: ignore[return-value] # it is Markup
    return str(value) if kind is int else escape(value)


@lru_cache(maxsize=16384)  # titles, ids and cautions stand on a page again and again
def _escaped(text: str) -> str:
    return str(escape(text))


class Generator(CodeGenerator):
    """Looks a field up by its key first, without a call, and puts values out by `escaped`; the environment has that under its name."""

    @optimizeconst
    def visit_Getattr(self, node: nodes.Getattr, frame: Frame) -> None:  # noqa: N802 - the visitor's name for it
        """Write `facts.key`."""
        if node.attr in _OWN:
            super().visit_Getattr(node, frame)
            return
        key = repr(node.attr)
        self.write("(held[" + key + "] if type(held := ")
        self.visit(node.node, frame)
        self.write(f") is dict and {key} in held else environment.getattr(held, {key}))")

    def _output_child_pre(self, node: nodes.Expr, frame: Frame, finalize: Any) -> None:
        self.write("environment.escaped(")
