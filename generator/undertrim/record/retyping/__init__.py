"""What a text that YAML cannot read was meant to be: each slip with its line as it must be typed, so that reading goes on behind it.

Nothing is guessed at once. The parser says where it stopped; what people mistype there is tried, one change at a time, and the change
with which the parser gets furthest is taken. The file itself stays as it is (`undertrim check --mend` writes what is certain).
"""

from undertrim.record.retyping.commas import rejoin
from undertrim.record.retyping.curly import straight
from undertrim.record.retyping.loose_ends import trimmed
from undertrim.record.retyping.readable import Retyped, readable
from undertrim.record.retyping.typed_lines import Edit, Mend, with_line

__all__ = ["Edit", "Mend", "Retyped", "readable", "rejoin", "straight", "trimmed", "with_line"]
