"""The order of the phases, files in and out."""
