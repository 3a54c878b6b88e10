"""From parts and what holds them to an ordered list of steps."""
