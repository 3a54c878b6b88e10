"""How a site comes about: what is prepared for each vehicle, kept, and put in its place."""
