"""What the site holds besides the handbook: pages whose bodies are ready, Markdown, and files."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property


@dataclass(frozen=True)
class Body:
    """A page whose body is ready: its title as plain text, how to get the HTML, and its own scripts by their place in the site.

    Two bodies with the same title and `key` are the same.
    """

    title: str
    html: Callable[[], str]
    key: str
    in_nav: bool = False
    scripts: tuple[str, ...] = ()


@dataclass(frozen=True)
class Copy:
    """A file that is ready: how to get it. Two with the same `key` are the same. Devices are told it, so it follows from the content alone, and not from who made it."""

    key: str
    content: Callable[[], bytes]


@dataclass(frozen=True)
class Content:
    """All that the site holds besides the handbook, by path in the site without its ending or, for files, with it."""

    bodies: Mapping[str, Body] = field(default_factory=dict)
    markdown: Mapping[str, str] = field(default_factory=dict)
    files: Mapping[str, str] = field(default_factory=dict)
    copies: Mapping[str, Copy] = field(default_factory=dict)

    @cached_property
    def framed(self) -> Mapping[str, Body]:
        """The bodies that go through the site engine one by one."""
        return {path: body for path, body in self.bodies.items() if body.in_nav}

    @cached_property
    def shelled(self) -> Mapping[str, Body]:
        """The bodies that share a shell with others."""
        return {path: body for path, body in self.bodies.items() if not body.in_nav}
