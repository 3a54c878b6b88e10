"""Inputs for computations that exist twice, so that both can be run on the same ones."""
