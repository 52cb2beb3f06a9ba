"""Pictures and solid shapes of a fabric, drawn from its stitches and measures."""
