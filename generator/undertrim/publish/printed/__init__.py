"""What is printed: the sheets of a vehicle, and openings in true scale."""
