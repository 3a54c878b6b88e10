"""What a terminal shows: the answers of the commands as text."""
