"""A QR code in the terminal, for a phone that is held to it (ISO/IEC 18004)."""

from io import StringIO

import segno


def code(address: str) -> str:
    """The code of an address in lines of half blocks, with the quiet zone that the standard asks for."""
    out = StringIO()
    segno.make(address, micro=False, error="m").terminal(out=out, border=4, compact=True)
    return out.getvalue()
