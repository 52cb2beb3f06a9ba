"""One file per verb."""
