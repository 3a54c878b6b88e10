"""Finding a vehicle by whatever somebody types: names, times, body, steering side, what to do, or a VIN.

The scripts of the pages do the same (`assets/undertrim/finder-*.js`); `tests/node/test_finder_script.py` holds both to each other.
"""
