"""Versions of a design in files: read and worked, kept, found in a repository, compared."""
