"""The whole site as one file for a stick: an HTML page in which all others are packed, and which shows them (`assets/undertrim/stick.js`).

Each file is deflated by itself (RFC 1951) in base64, so that opening a page unpacks what it shows and no more. The policy of the file gives leave to the
scripts of the site by their digests, and to nothing from anywhere else: `'self'` would be every file beside it on the stick.
"""

import base64
import html
import re
import zlib
from collections.abc import Iterator
from pathlib import Path

from undertrim.publish.web import scripts
from undertrim.publish.web.policy import digest
from undertrim.words import message, say

PACKED = frozenset({".html", ".js", ".css", ".svg", ".png", ".jpg", ".jpeg", ".webp", ".pdf", ".json"})
"""Endings of what is packed; maps of scripts, the site map and fonts that nothing asks for are not."""
_LEFT_OUT = (
    "keeper/",
    "keeper.js",
    "assets/javascripts/lunr/",
    "assets/javascripts/workers/",
    "404.html",
    "published.schema.json",
)
_DIGEST = re.compile(r"'(sha256-[A-Za-z0-9+/=]+)'")
_POLICY = re.compile(r'http-equiv="Content-Security-Policy" content="([^"]*)"')


def whole(site: Path, name: str) -> str:
    """The site in a folder as one page, called `name`. Raises OSError."""
    files = {path.relative_to(site).as_posix(): path for path in sorted(site.rglob("*")) if path.suffix in PACKED}
    wanted = {place: path for place, path in files.items() if not place.startswith(_LEFT_OUT)}
    loader = scripts.bundle("stick")
    assert "</script" not in loader
    packed = "\n".join(_packed(place, path.read_bytes()) for place, path in wanted.items())
    return _PAGE.format(
        policy=html.escape(_policy(loader, wanted), quote=True).replace("&#x27;", "'"),
        name=html.escape(name),
        needs=html.escape(say(message("page/needs-scripts"))),
        packed=packed,
        loader=loader,
    )


def _packed(place: str, content: bytes) -> str:
    made = zlib.compressobj(9, zlib.DEFLATED, -15)
    text = base64.b64encode(made.compress(content) + made.flush()).decode()
    return f'<script type="application/octet-stream" data-file="{html.escape(place)}">{text}</script>'


def _policy(loader: str, files: dict[str, Path]) -> str:
    known = dict.fromkeys([digest(loader), *_digests(files)])
    return "; ".join([
        "default-src 'none'",
        "script-src " + " ".join(f"'{one}'" for one in known),
        "img-src data: blob:",
        "form-action 'none'",
        "base-uri 'none'",
    ])  # fmt: skip


def _digests(files: dict[str, Path]) -> Iterator[str]:
    """Of the scripts that pages load, and of those in place that the policies of the pages name."""
    for place, path in files.items():
        if "assets/" in place and path.suffix == ".js":
            yield digest(path.read_text(encoding="utf-8"))
        if path.suffix == ".html" and (found := _POLICY.search(path.read_text(encoding="utf-8"))):
            yield from _DIGEST.findall(found[1])


_PAGE = """<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="{policy}">
<meta name="viewport" content="width=device-width,initial-scale=1">
<title>{name}</title>
</head>
<body>
<p>{needs}</p>
{packed}
<script>{loader}</script>
</body>
</html>
"""
