"""The rules, one file each. A rule yields findings and nothing else; rules do not import rules."""
