"""The verbs of the command line, one file each; every `run` returns an exit code."""
