"""Films: the order of the phases, files, and the video tool as a process of its own."""
