"""What the changes of a record do for whoever works on the car. A change is told by its effect, the riskiest first; no text is compared, but by ids."""
