"""Makes a PDF smaller: its many small objects go into compressed streams, with a compressed table of where each is.

Typst writes the tagged structure of a sheet as thousands of objects, each in plain text. No stream that is drawn is touched.
Source: ISO 32000-1:2008, 7.5.7 (object streams) and 7.5.8 (cross-reference streams).
"""

import io

from pikepdf import ObjectStreamMode, Pdf, StreamDecodeLevel


def packed(pdf: bytes) -> bytes:
    """The same document in fewer bytes, the same for the same input. Raises pikepdf.PdfError for what is no PDF."""
    made = io.BytesIO()
    with Pdf.open(io.BytesIO(pdf)) as document:
        document.save(
            made,
            object_stream_mode=ObjectStreamMode.generate,
            stream_decode_level=StreamDecodeLevel.none,
            fix_metadata_version=False,
            deterministic_id=True,
        )
    return made.getvalue()
