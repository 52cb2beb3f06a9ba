"""Sets publications as PDF: the one place where the typesetter is called."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from importlib.resources import files
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Any, Self

from loopwright.publishing.document import Publication
from loopwright.publishing.errors import PageError
from loopwright.publishing.pages.data import Laying
from loopwright.publishing.pages.faces import Faces
from loopwright.publishing.pages.ink import accent
from loopwright.publishing.pages.rasters import Rasters
from loopwright.publishing.pages.row_heads import with_row_heads
from loopwright.publishing.pages.signs import lacking, require_signs

if TYPE_CHECKING:
    from typst import TypstError

STANDARDS = ["ua-1", "a-2a"]
SEEN_DPI = 80.0  # pages to be looked at on a screen: A4 is 661 pixels wide
THREADS = 2
_TEMPLATES = ("main.typ", "look.typ", "blocks.typ", "tables.typ", "figures.typ", "columns.typ", "ledger.typ", "far.typ")
_LACKING = re.compile(r'text `"(?P<sign>[^"`]+)"` could not be displayed')
_NO_DATE = 946684800  # 2000-01-01: where a publication has no date, so that its bytes are the same whenever they are made


class Pages:
    """Fonts and templates, read once, for as many publications as are wanted. May be used from several threads at once."""

    def __init__(self, typefaces: Sequence[bytes | Path] = ()) -> None:
        """`typefaces`: font files of the designer's own. Raises PageError for one that cannot be used."""
        self._faces = Faces(typefaces)
        self._rasters = Rasters()
        package = files("loopwright.publishing.pages")
        self._templates = {name: (package / "templates" / name).read_bytes() for name in _TEMPLATES}

    def pdf(self, publication: Publication) -> bytes:
        """A publication as PDF: PDF/A-2a and PDF/UA-1, the same bytes for the same publication.

        Raises PageError for a typeface that was not given, an accent that is no colour, a character that no font holds, a picture that
        cannot be read.
        """
        made = self._set(publication, format="pdf", pdf_standards=STANDARDS, timestamp=_NO_DATE)
        if not isinstance(made, bytes):
            raise PageError("the typesetter gave no pages")
        return with_row_heads(made)

    def pictures(self, publication: Publication, dots_per_inch: float = SEEN_DPI) -> list[bytes]:
        """Every page of a publication as a PNG picture, to be looked at before it is written. Raises PageError as `pdf` does."""
        made = self._set(publication, format="png", ppi=dots_per_inch)
        return [made] if isinstance(made, bytes) else list(made)

    def _set(self, publication: Publication, **options: Any) -> Any:
        import typst  # noqa: PLC0415 - only where pages are made

        require_signs(publication, self._faces.held(publication.edition.typeface))
        laying = Laying(publication, self._faces, self._rasters)
        data = json.dumps(laying.data(), ensure_ascii=False).encode()
        try:
            return _compiled(
                {**self._templates, "data.json": data, **laying.files}, root=self._rasters.root,
                font_paths=self._faces.fonts, ignore_system_fonts=True, **options,
            )
        except typst.TypstError as error:
            raise _page_error(error, laying) from error

    def pdfs(self, publications: Sequence[Publication]) -> list[bytes]:
        """Several publications, set side by side in threads; in the order given. Raises PageError as `pdf` does."""
        with ThreadPoolExecutor(max_workers=THREADS) as pool:
            return list(pool.map(self.pdf, publications))

    def close(self) -> None:
        """Takes away what was laid out for the typesetter."""
        self._faces.close()
        self._rasters.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self.close()


def pdf(publication: Publication, typefaces: Sequence[bytes | Path] = ()) -> bytes:
    """One publication as PDF; `Pages` is quicker for several. Raises PageError as `Pages.pdf` does."""
    with Pages(typefaces) as pages:
        return pages.pdf(publication)


def reported(publication: Publication) -> tuple[str, ...]:
    """What was changed to make pages legible, for the one who publishes. Raises PageError for an accent that is no colour."""
    said = accent(publication.edition.accent)[1] if publication.edition.accent else ""
    return (said,) if said else ()


def _compiled(sources: Mapping[str, bytes], **options: Any) -> Any:
    """Compiles files that are in memory, by name: more than the typesetter's own types tell of."""
    import typst  # noqa: PLC0415 - only where pages are made

    compiled: Callable[..., Any] = typst.compile
    return compiled(dict(sources), **options)


def _page_error(error: TypstError, laying: Laying) -> PageError:
    """The typesetter's own words, told as what is wrong with the document; a sign in a drawing, where it is."""
    m = _LACKING.search(error.message)
    if m is not None:
        for file, data in laying.files.items():
            word = re.search(rf"[^\s<>]*{re.escape(m['sign'])}[^\s<>]*", data.decode("utf-8", "replace"))
            if word is not None:
                return lacking(f"picture {laying.drawings[file]}", m["sign"][0], word[0])
    return PageError(f"pages cannot be set: {error.message}" + (f" ({'; '.join(error.hints)})" if error.hints else ""))
