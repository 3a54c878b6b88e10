"""The content security policy of every page: it loads its own files, and runs no script in place but the theme's, known by digest."""

import base64
import hashlib
import re
from collections.abc import Iterator

_SCRIPT = re.compile(r"<script(?P<attributes>[^>]*)>(?P<text>.*?)</script>", re.DOTALL | re.IGNORECASE)
_STYLE = re.compile(r"<style(?P<attributes>[^>]*)>(?P<text>.*?)</style>", re.DOTALL | re.IGNORECASE)
_ELSEWHERE = re.compile(r"\bsrc\s*=|\btype\s*=\s*(?![\"']?(?:text/javascript|module)\b)", re.IGNORECASE)
_CHARSET = re.compile(r"<meta charset=[^>]*>", re.IGNORECASE)

OWN = "'self' file:"
"""Files of the site. `file:` is for a site on a disk, where browsers differ on what 'self' is; a page from a server may load no such file."""


def guarded(page: str, content: str = "") -> str:
    """The page with its policy, ahead of all that it loads.

    `content` is what did not come from the theme: scripts and styles in it get no leave, however they came to be there.
    """
    frame = page.replace(content, "") if content else page
    meta = f'<meta http-equiv="Content-Security-Policy" content="{policy(frame)}">'
    charset = _CHARSET.search(page)
    assert charset, "a page of the theme begins with its charset"
    return page[: charset.end()] + meta + page[charset.end() :]


def policy(frame: str) -> str:
    """The directives for a page whose theme's part is `frame`."""
    return "; ".join([
        "default-src 'none'",
        f"script-src {' '.join([OWN, *_digests(_SCRIPT, frame)])}",
        f"style-src {' '.join([OWN, *_digests(_STYLE, frame)])}",
        f"img-src {OWN} data:",  # the theme's signs are pictures in its style sheet
        f"font-src {OWN}",
        f"connect-src {OWN}",
        f"manifest-src {OWN}",
        "form-action 'none'",
        "base-uri 'none'",
    ])  # fmt: skip


def _digests(kind: re.Pattern[str], frame: str) -> Iterator[str]:
    """The digest of each that stands in the page itself, as the policy names it; data in a script element is not run and needs none."""
    found = (one["text"] for one in kind.finditer(frame) if not _ELSEWHERE.search(one["attributes"]))
    yield from dict.fromkeys(f"'{digest(text)}'" for text in found)


def digest(text: str) -> str:
    """The digest of a script or style as a policy names it (W3C Content Security Policy level 3, hash-source)."""
    return f"sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}"


def allowing(page: bytes, script: str) -> bytes:
    """The page with leave for one more script; the preview adds one that asks for news."""
    return page.replace(b"script-src ", f"script-src '{digest(script)}' ".encode(), 1)
