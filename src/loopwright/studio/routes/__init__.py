"""What the studio answers, one file to a topic."""
