"""The one module that knows MkDocs: puts prepared bodies into themed pages and builds the site.

Vehicle, make and home pages do not go through Markdown: their page source is empty, and the theme template `body.html` shows
the body that `pages` rendered. Handbook and rule pages are ordinary Markdown.
"""

import html
import json
import logging
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from undertrim import resources


@dataclass(frozen=True)
class Body:
    """A page whose body is ready: its title as plain text, and how to get the HTML."""

    title: str
    html: Callable[[], str]
    in_nav: bool = False


@dataclass(frozen=True)
class Content:
    """All that the site holds besides the handbook, by path in the site without its ending or, for files, with it."""

    bodies: Mapping[str, Body] = field(default_factory=dict)
    markdown: Mapping[str, str] = field(default_factory=dict)
    files: Mapping[str, str] = field(default_factory=dict)
    copies: Mapping[str, Path] = field(default_factory=dict)


class Settings(Config):  # type: ignore[no-untyped-call] # the library leaves this untyped
    """The plugin has no settings of its own."""


class UndertrimPlugin(BasePlugin[Settings]):  # type: ignore[no-untyped-call] # the same
    """Adds the prepared pages and files to a MkDocs build."""

    content = Content()

    def on_files(self, files: Files, /, *, config: MkDocsConfig) -> Files:
        """Add our pages and files."""
        for path, body in self.content.bodies.items():
            level = InclusionLevel.INCLUDED if body.in_nav else InclusionLevel.NOT_IN_NAV
            files.append(File.generated(config, f"{path}.md", content=_front_matter(body), inclusion=level))
        for path, text in self.content.markdown.items():
            level = InclusionLevel.INCLUDED if path.endswith("index") else InclusionLevel.NOT_IN_NAV
            files.append(File.generated(config, f"{path}.md", content=text, inclusion=level))
        for path, text in self.content.files.items():
            files.append(File.generated(config, path, content=text))
        for path, source in self.content.copies.items():
            files.append(File.generated(config, path, abs_src_path=str(source)))
        return files

    def on_page_context(
        self, context: TemplateContext, /, *, page: Page, config: MkDocsConfig, nav: Any
    ) -> TemplateContext:
        """Hand a prepared body to the theme template."""
        body = self.content.bodies.get(page.file.src_uri.removesuffix(".md"))
        if body:
            context["undertrim_body"] = body.html()  # type: ignore[typeddict-unknown-key]
        return context


def _front_matter(body: Body) -> str:
    title = json.dumps(html.escape(body.title))
    return f"---\ntitle: {title}\ntemplate: body.html\nhide: [navigation, toc]\n---\n"


def address(root: Path) -> str:
    """The site's own address, as the configuration has it."""
    return str(_config(root, root / "site").site_url or "")


def render(root: Path, content: Content, out: Path) -> None:
    """Build the site of the workspace at `root` into `out`."""
    config = _config(root, out)
    plugin = config.plugins["undertrim"]
    assert isinstance(plugin, UndertrimPlugin)
    plugin.content = content
    logging.getLogger("mkdocs").setLevel(logging.WARNING)
    mkdocs_build(config)


def _config(root: Path, out: Path) -> MkDocsConfig:
    """The workspace's configuration, or the shipped one where it has none."""
    own = root / "mkdocs.yml"
    chosen = own if own.is_file() else resources.top("mkdocs.yml")
    handbook = root / "records" / "handbook"
    docs = handbook if handbook.is_dir() else resources.inside("publish", "empty_handbook")
    config = load_config(str(chosen), docs_dir=str(docs), site_dir=str(out))
    ours = str(resources.top("site_overrides"))
    if ours not in config.theme.dirs:
        config.theme.dirs.insert(0, ours)
    return config


def serve(root: Path, out: Path, rebuild: Callable[[], None], host: str, port: int) -> None:
    """Show `out` in a browser and rebuild when a file of the workspace changes, until interrupted."""
    server = LiveReloadServer(builder=rebuild, host=host, port=port, root=str(out), mount_path="/")
    server.watch(str(root / "records"))
    try:
        server.serve()  # type: ignore[no-untyped-call] # the same
    finally:
        server.shutdown()
