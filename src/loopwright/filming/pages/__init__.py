"""Pages of a plan: one to print, one to stand beside the camera. Each is one file."""
