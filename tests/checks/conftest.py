"""Documents and reports for the rules' tests: read and worked from text, and the codes that the rules find."""

import pytest

from loopwright.checks import check
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


def _found(text, terms=None):
    document = read(Source.of(text), terms)
    return check(document, work(document))


@pytest.fixture
def found():
    """All findings of the rules over a text."""
    return _found


@pytest.fixture
def codes():
    """The codes that the rules find in a text, each once, sorted."""
    return lambda text, terms=None: sorted({f.code for f in _found(text, terms)})
