"""Changes of single facts in the text of a record, each with the proof that nothing else changed.

A record says each thing once, in short forms, shared by groups and told apart by cars; so where a fact is to be typed has several
answers. They are tried in turn, the shortest first, and the first after which the whole says just what was wanted, and every comment
still speaks of what it spoke of, is taken.
"""

from undertrim.record.changing.putting import CannotPut, Change, put

__all__ = ["CannotPut", "Change", "put"]
