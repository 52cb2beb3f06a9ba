"""A typeface of the designer's own: what its family is called."""

from __future__ import annotations

from pathlib import Path

from loopwright.publishing.errors import PageError


def family_of(path: Path) -> str:
    """The family's name of a TrueType or OpenType font. Raises PageError for a file that is none."""
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - only where a typeface is given

    try:
        with TTFont(path, fontNumber=0, lazy=True) as font:
            return str(font["name"].getBestFamilyName())
    except OSError as e:
        raise PageError(f"typeface {path}: {e.strerror or 'it cannot be read'}") from e
    except Exception as e:
        raise PageError(f"typeface {path}: it is no TrueType or OpenType font, or it is damaged") from e
