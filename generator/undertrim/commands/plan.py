"""Print the procedure for a job at one vehicle.
"""

import argparse


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""


def run(options: argparse.Namespace) -> int:
    """Plan and print."""
    return 0
