"""Whether gear goes into an opening, by how much, and what could be put between."""
