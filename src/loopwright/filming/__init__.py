"""Filmed: shots, cards, chapters and captions out of the same rows as the written pattern. Takes data; opens no file."""
