"""What is timed and worn out: figures with their targets (`make bench`), and lines without end (`make fuzz`)."""
