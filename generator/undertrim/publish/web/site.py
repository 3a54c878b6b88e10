"""The one module that knows MkDocs: puts prepared bodies into themed pages and builds the site.

Handbook and rule pages are ordinary Markdown. The home page's source is empty, and the theme template `body.html` shows the
body that `pages` rendered. Of vehicle and make pages MkDocs sees one specimen of each group, which becomes their shell.
"""

# Long because what knows the engine stands nowhere else, so that the engine can be changed.

import json
import logging
import re
import socket
import tempfile
from collections.abc import Callable, Mapping, Sequence
from functools import cached_property
from html import escape
from pathlib import Path, PurePosixPath
from typing import Any

import mkdocs
from jinja2 import Environment, TemplateError
from markupsafe import Markup
from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import MkDocsException
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from undertrim import resources
from undertrim.publish import template_words
from undertrim.publish.web import book, finder, glossary, measuring, pages, policy, scripts, shells, styles
from undertrim.publish.web.anchors import Anchors
from undertrim.publish.web.closing_up import closed_up
from undertrim.publish.web.content import Content
from undertrim.publish.web.editions import FIRST, Edition, with_shared
from undertrim.publish.web.shells import Shell
from undertrim.publish.web.sitemap import expanded
from undertrim.record import collection, handbook
from undertrim.record.digests import Digests, joined
from undertrim.record.own_language import OwnLanguage
from undertrim.record.plain_markdown import PlainMarkdown
from undertrim.words import ENGLISH, language, message, say, spoken
from undertrim.work.refused import Refused

Shells = Mapping[str, Shell]

_SECTIONS = {"Rules": message("reference/rules"), "Reference": message("reference/fields")}
"""Our own folders of pages, by the names that the engine makes of them."""
NEW_FILE = "new_file"
"""The setting under `extra` that says at which address a new file of the repository is begun: `{name}` and `{text}` stand in it."""
_LOG = logging.getLogger(mkdocs.__name__)
"""Where the engine says what it does. A fork that answers for it has another name."""


class Settings(Config):  # type: ignore[no-untyped-call] # the library leaves this untyped
    """The plugin has no settings of its own."""


class UndertrimPlugin(BasePlugin[Settings]):  # type: ignore[no-untyped-call] # the same
    """Adds the prepared pages and files to a MkDocs build."""

    content = Content()
    edition = FIRST
    translated: Mapping[str, str] = {}
    """The pages of the handbook that stand there in the language of the edition, each with the Markdown of the one whose place it takes."""

    def __init__(self) -> None:
        self.shells: dict[str, Shell] = {}
        self.book: list[finder.Entry] = []
        self.plain = PlainMarkdown(PurePosixPath())
        self.shared: set[str] = set()
        self.anchors = Anchors()
        self.repository = ""
        self.styles: list[str] = []

    def on_config(self, config: MkDocsConfig, /) -> MkDocsConfig:
        """Take raw HTML out of Markdown; after all other extensions, whatever the settings name. Say what the theme's switches do."""
        config.markdown_extensions.append(self.plain)
        config.mdx_configs.setdefault("toc", {})["slugify"] = self.anchors.slug
        # Pages name the repository to who wants to write there; the theme would ask its host how many people like it.
        self.repository, config.repo_url = config.repo_url or "", None
        _name_switches(config)
        return config

    def on_env(self, env: Environment, /, *, config: MkDocsConfig, files: Files) -> Environment:
        """The frame takes its words from the catalogue too, and its bar has the box that finds. It names the repository. What all languages share stands once, at the top of the site."""
        new_file = config.extra.get(NEW_FILE, "")
        env.globals.update(say=template_words.say, undertrim_repository=self.repository, undertrim_new_file=new_file)
        env.globals["undertrim_styles"] = self.styles
        env.globals["undertrim_box"] = Markup(pages.box())  # noqa: S704 - rendered by us
        env.filters["url"] = with_shared(env.filters["url"], self.edition, self.shared)
        return env

    def on_nav(self, nav: Navigation, /, *, config: MkDocsConfig, files: Files) -> Navigation:
        """The engine calls a section by its folder, in English."""
        for item in nav.items:
            if self.edition.place and item.is_section and item.title in _SECTIONS:
                item.title = say(_SECTIONS[item.title])
        return nav

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """What the finder knows of the pages of text stands beside what it knows of vehicles."""
        for name, text in {
            **finder.more("book", book.named(self.book)),
            **finder.more("text", book.told(self.book)),
        }.items():
            place = Path(config.site_dir) / name
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_text(text, encoding="utf-8")

    def on_page_markdown(self, markdown: str, /, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        """A page of the handbook has no settings: they would reach the theme as they are. Its links are judged from its place."""
        self.plain.page = PurePosixPath(page.file.src_uri)
        self.anchors.begin(self.translated.get(page.file.src_uri, ""))
        if page.file.generated_by is None:
            page.meta.clear()
        return markdown

    def on_page_content(self, html: str, /, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        """Put our drawings where the handbook names them. A page that is in another language than its edition says so. Words of the glossary can be led to; what a page says is remembered for the finder."""
        path = page.file.src_uri
        html = book.anchored(path.removesuffix(".md"), html)
        self.book += book.entries(path.removesuffix(".md"), html)
        own = page.file.generated_by is None and path not in self.translated
        other = own or (path.startswith("rules/") and path != "rules/index.md")
        shown = measuring.with_drawings(html)
        return self._in_one_language(shown) if self.edition.place and other else shown

    def on_files(self, files: Files, /, *, config: MkDocsConfig) -> Files:
        """Add our pages and files, and the specimens. A further language leaves the theme's files where the first has them."""
        if self.edition.place:
            theirs = _of_the_theme(config, files)
            self.shared = {file.dest_uri for file in theirs} - set(map(_script, scripts.modules()))
            for file in theirs:
                files.remove(file)
            self.shared.add(styles.SHEET)
        for path, body in self.content.framed.items():
            files.append(_generated(config, path, _front_matter(body.title), in_nav=body.in_nav))
        for group in self._groups():
            files.append(_generated(config, shells.specimen(group), _front_matter(shells.TITLE), in_nav=False))
        for path, text in self.content.markdown.items():
            files.append(_generated(config, path, text, in_nav=path.endswith("index")))
        _bundled(config, files)
        self.styles = _styled(config, files, anew=not self.edition.place)
        return files

    def on_page_context(
        self, context: TemplateContext, /, *, page: Page, config: MkDocsConfig, nav: Any
    ) -> TemplateContext:
        """Hand a prepared body to the theme template."""
        path = page.file.src_uri.removesuffix(".md")
        body = self.content.framed.get(path)
        context["undertrim_languages"] = self.edition.same_pages(page.file.dest_uri)  # type: ignore[typeddict-unknown-key]
        if body:
            context["undertrim_body"], context["undertrim_scripts"] = body.html(), body.scripts  # type: ignore[typeddict-unknown-key]
        for group, specimen in self._groups().items():
            if path == specimen:
                context["undertrim_body"], context["undertrim_scripts"] = shells.BODY, self._scripts(group)  # type: ignore[typeddict-unknown-key]
        return context

    def on_template_context(
        self, context: TemplateContext, /, *, template_name: str, config: MkDocsConfig
    ) -> TemplateContext:
        """The page for what is not there stands once, at the top: it speaks each language of the site."""
        others = [(tag, f"{way}index.html", language(tag)) for tag, way in self.edition.others.items()]
        context["undertrim_no_page"] = [  # type: ignore[typeddict-unknown-key]
            {"tag": tag, "home": home, **{key: say(message(code), speech) for key, code in _NO_PAGE.items()}}
            for tag, home, speech in others
        ]
        return context

    def on_post_page(self, output: str, /, *, page: Page, config: MkDocsConfig) -> str:
        """Give each page its policy, and keep a specimen as a shell and out of the site."""
        body = self.content.framed.get(page.file.src_uri.removesuffix(".md"))
        output = closed_up(policy.guarded(output, body.html() if body else page.content or ""))
        for group, path in self._groups().items():
            if page.file.src_uri == f"{path}.md":
                self.shells[group] = Shell(group, output)
                return ""
        return output

    def on_post_template(self, output_content: str, /, *, template_name: str, config: MkDocsConfig) -> str:
        """List the shelled pages in the site map; a template that is a page has a policy too."""
        if template_name.endswith(".html"):
            return "" if self.edition.place else closed_up(policy.guarded(output_content))
        if template_name == "sitemap.xml":
            for group, path in self._groups().items():
                output_content = expanded(output_content, path, self._members[group])
        return output_content

    def _scripts(self, group: str) -> tuple[str, ...]:
        """The scripts that all pages of a group load."""
        (scripts,) = {self.content.shelled[path].scripts for path in self._members[group]}
        return scripts

    def _in_one_language(self, html: str) -> str:
        """A page in the language of the first edition, on a page of another."""
        said = OwnLanguage(self.edition.first).told("page/written-in", self.edition.speech)
        note = f'<p class="ut-kind">{escape(say(said))}</p>'
        return f'{note}<div lang="{self.edition.first}">{html}</div>'

    def _groups(self) -> dict[str, str]:
        """The specimen of each group of shelled pages."""
        return {group: shells.specimen(group) for group in sorted(self._members)}

    @cached_property
    def _members(self) -> dict[str, list[str]]:
        """The shelled pages by group; asked for every page that the engine makes."""
        found: dict[str, list[str]] = {}
        for path in self.content.shelled:
            found.setdefault(shells.group(path), []).append(path)
        return found


_NO_PAGE = {"title": "page/no-such-page", "how": "page/no-such-page-how", "find": "finder/title"}
"""What the page for what is not there says."""


def _name_switches(config: MkDocsConfig) -> None:
    """What switches between light and dark is named in the reader's language, where the settings give it no name of their own."""
    schemes = config.theme.get("palette", [])
    for scheme in schemes if isinstance(schemes, list) else ():
        if "toggle" in scheme:
            other = "light" if scheme.get("scheme") == "slate" else "dark"
            scheme["toggle"].setdefault("name", say(message(f"page/switch-to-{other}")))


def _generated(config: MkDocsConfig, path: str, text: str, *, in_nav: bool) -> File:
    level = InclusionLevel.INCLUDED if in_nav else InclusionLevel.NOT_IN_NAV
    return File.generated(config, f"{path}.md", content=text, inclusion=level)


def _bundled(config: MkDocsConfig, files: Files) -> None:
    """Put the scripts that pages load in the place of the modules that they are made of."""
    for name in scripts.modules():
        source = files.get_file_from_path(_script(name))
        if source:
            files.remove(source)
    files.append(File.generated(config, glossary.SCRIPT, content=glossary.script(Path(config.docs_dir))))
    for name in scripts.ENTRIES:
        files.append(File.generated(config, _script(name), content=scripts.bundle(name)))


def _styled(config: MkDocsConfig, files: Files, *, anew: bool) -> list[str]:
    """The style sheets that a page asks for: one of the theme's and ours, in its place in the site, and what else the settings name."""
    ours = [name for name in config.extra_css if name.startswith("assets/undertrim/")]
    if anew:
        theirs = sorted(
            file.src_uri for file in files if re.fullmatch(styles.OF_THE_THEME + r"[^/]*\.css", file.src_uri)
        )
        found = [file for name in (*theirs, *ours) if (file := files.get_file_from_path(name))]
        files.append(File.generated(config, styles.SHEET, content=styles.joined(file.content_string for file in found)))
        for file in found:
            files.remove(file)
    return [styles.SHEET, *(name for name in config.extra_css if name not in ours)]


def _of_the_theme(config: MkDocsConfig, files: Files) -> list[File]:
    """The files that the theme and its overrides bring."""
    return [file for file in files if not file.is_documentation_page() and file.src_dir in config.theme.dirs]


def _script(name: str) -> str:
    return f"assets/undertrim/{name}.js"


def _front_matter(title: str) -> str:
    return f"---\ntitle: {json.dumps(escape(title))}\ntemplate: body.html\nhide: [navigation, toc]\n---\n"


def own(root: Path) -> tuple[str, str]:
    """The site's own address, and what it is called, as the configuration has them."""
    config = _config(root, root / "site")
    return str(config.site_url or ""), str(config.site_name)


def written_address(root: Path) -> str:
    """The same by the text of the settings alone, for who only wants a link: whatever else the site lacks does not matter. Raises BadSettings."""
    if said := collection.settings(root).address:
        return said
    chosen = _settings(root)
    try:
        unchecked = MkDocsConfig(config_file_path=str(chosen))
        with chosen.open("rb") as file:
            unchecked.load_file(file)
        return str(unchecked.get("site_url") or "")
    except (MkDocsException, UnicodeDecodeError) as error:
        raise BadSettings(
            message("building/bad-settings", settings=str(chosen), why=" ".join(str(error).split())[:400])
        ) from error


def render(root: Path, content: Content, out: Path, edition: Edition = FIRST) -> Shells:
    """Build the site of the workspace at `root` into its place below `out`, and give the shells of its pages by group. Raises BadSettings."""
    with tempfile.TemporaryDirectory(prefix="undertrim-handbook-") as docs:
        book = Path(_config(root, out).docs_dir)
        handbook.copy(book, Path(docs), spoken().tag)
        config = _config(root, out / edition.place)
        config.docs_dir = docs
        config.site_url = config.site_url and f"{config.site_url.rstrip('/')}/{edition.place}"
        config.extra["alternate"] = bool(edition.others)  # the theme's sign that there is something to choose
        plugin = config.plugins["undertrim"]
        assert isinstance(plugin, UndertrimPlugin)
        plugin.content, plugin.edition = content, edition
        plugin.translated = handbook.translated(book, spoken().tag)
        _LOG.setLevel(logging.WARNING)
        try:
            mkdocs_build(config)
        except (MkDocsException, TemplateError, UnicodeDecodeError) as error:
            why = f"{type(error).__name__}: {error}" if str(error) else message("building/lines-above")
            raise BadSettings(message("building/not-put-together", settings=str(_settings(root)), why=why)) from error
        return plugin.shells


def frame(root: Path, digests: Digests) -> str:
    """Changes with whatever stands in the pages' frame: the handbook, the configuration, the theme's overrides."""
    config = _config(root, root / "site")
    files = sorted(path for folder in map(Path, config.theme.dirs[:-2]) for path in folder.rglob("*") if path.is_file())
    files += [item.path for item in handbook.found(Path(config.docs_dir)) if not item.refused]
    chosen = Path(str(config.config_file_path))
    named = f"{config.site_name}\n{config.site_url}\n{config.repo_url}"
    return joined(spoken().tag, named, *(f"{path} {digests.of(path)}" for path in (chosen, *files)))


def frame_is_ours(root: Path) -> bool:
    """Whether the frame rests on nothing else, so that what was made of it by another run is still what would be made: not on other plugins, scripts that hook in, the environment, or other settings."""
    config = _config(root, root / "site")
    chosen = Path(str(config.config_file_path)).read_text(encoding="utf-8")
    return not (config.plugins.keys() - {"undertrim"} or config.hooks or "!ENV" in chosen or "INHERIT" in chosen)


class BadSettings(Refused):
    """The settings of the site, its theme or its handbook cannot be used; the text says which file, and the way out."""


def _settings(root: Path) -> Path:
    """The workspace's settings, or the shipped ones where it has none."""
    own = root / "mkdocs.yml"
    return own if own.is_file() else resources.top("mkdocs.yml")


def _config(root: Path, out: Path) -> MkDocsConfig:
    """The configuration of the site. Raises BadSettings."""
    chosen = _settings(root)
    book = handbook.folder(root / "records")
    docs = book if book.is_dir() else resources.top("records/handbook")
    config = _loaded(chosen, docs, out)
    _name_collection(config, collection.settings(root))
    if "undertrim" not in config.plugins:
        raise BadSettings(message("building/no-plugin", settings=str(chosen)))
    ours = str(resources.top("site_overrides"))
    if ours not in config.theme.dirs:
        config.theme.dirs.insert(0, ours)
    if spoken() != ENGLISH:  # else the settings decide
        config.theme["language"] = spoken().tag
    return config


def _name_collection(config: MkDocsConfig, chosen: collection.Settings) -> None:
    """What the collection says of itself goes before what the settings of the site engine say."""
    config.site_name = chosen.name or config.site_name
    config.site_url = chosen.address or config.site_url
    config.repo_url = chosen.repository or config.repo_url


def _loaded(chosen: Path, docs: Path, out: Path) -> MkDocsConfig:
    """The settings as the site engine reads them; what it would print of what is wrong becomes our sentence."""
    said: list[str] = []
    catching = logging.Handler()
    catching.emit = lambda record: said.append(record.getMessage())  # type: ignore[method-assign]
    before, _LOG.propagate = _LOG.propagate, False
    _LOG.addHandler(catching)
    try:
        return load_config(str(chosen), docs_dir=str(docs), site_dir=str(out))
    except (MkDocsException, UnicodeDecodeError) as error:
        why = "; ".join(said) or " ".join(str(error).split())
        raise BadSettings(message("building/bad-settings", settings=str(chosen), why=why[:400])) from error
    finally:
        _LOG.removeHandler(catching)
        _LOG.propagate = before


def port_is_free(host: str, port: int) -> bool:
    """Whether we could serve there."""
    with socket.socket() as trial:
        trial.setsockopt(
            socket.SOL_SOCKET, socket.SO_REUSEADDR, 1
        )  # as the server does, so that a port just left is free
        try:
            trial.bind((host, port))
        except OSError:
            return False
    return True


class _Preview(LiveReloadServer):
    """The engine's server, whose script in each page is given leave to run."""

    def _inject_js_into_html(self, content: bytes, epoch: int) -> bytes:
        made: bytes = super()._inject_js_into_html(content, epoch)  # type: ignore[no-untyped-call] # the same
        start = made.rindex(b"<script>") + len(b"<script>")
        return policy.allowing(made, made[start : made.index(b"</script>", start)].decode())


def serve(root: Path, below: Sequence[Path], out: Path, rebuild: Callable[[], None], host: str, port: int) -> None:
    """Show `out` in a browser and rebuild when a file of the workspace, or of the records `below` it, changes, until interrupted."""
    server = _Preview(builder=rebuild, host=host, port=port, root=str(out), mount_path="/")
    for name in ("records", "mkdocs.yml", collection.NAME, "site_overrides"):
        if (root / name).exists():
            server.watch(str(root / name))
    for records in below:
        server.watch(str(records))
    try:
        server.serve()  # type: ignore[no-untyped-call] # the same
    finally:
        server.shutdown()
