"""Replays a procedure step by step over the state of the car and finds the first wrong instant.

It shares nothing with the planner but the shape of a step: what a step may do is read from the facts of the record again, so a
procedure that was planned wrongly, or written by hand, does not pass.
"""

from undertrim.derive.simulation.fault import Fault
from undertrim.derive.simulation.replay import replay

__all__ = ["Fault", "replay"]
