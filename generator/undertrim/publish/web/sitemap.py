"""The site map lists pages that the site engine has not seen, in place of the specimen it has."""

import html
import re
from collections.abc import Iterable
from urllib.parse import quote


def expanded(sitemap: str, specimen: str, paths: Iterable[str]) -> str:
    """The site map with the entry of `specimen` repeated for each of the paths (without their ending)."""
    entry = re.compile(rf"\s*<url>(?:(?!</url>).)*?{re.escape(specimen)}(?:(?!</url>).)*</url>", re.DOTALL)
    found = entry.search(sitemap)
    if not found:
        return sitemap
    pages = "".join(found[0].replace(specimen, html.escape(quote(path))) for path in paths)
    return sitemap[: found.start()] + pages + sitemap[found.end() :]
