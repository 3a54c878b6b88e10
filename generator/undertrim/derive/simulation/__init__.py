"""Replays a procedure step by step over the state of the car and finds the first wrong instant.

It shares with the planner what things are (the shape of a step, ids of nodes, the table of states, what becomes of a tether), and
never how an order is found: what a step may do is read from the facts of the record again, so a procedure that was planned
wrongly, or written by hand, does not pass.
"""

from undertrim.derive.simulation.fault import Fault
from undertrim.derive.simulation.replay import replay
from undertrim.derive.simulation.replays import Replays

__all__ = ["Fault", "Replays", "replay"]
