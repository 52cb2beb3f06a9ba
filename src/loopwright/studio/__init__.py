"""The studio: the workroom in the browser. It shows what the other packages know, and computes nothing of its own."""
