"""From a design to everything that is handed on: gathered, drawn, laid out in editions and formats, written into a folder."""
