"""What is kept of texts between calls, and what is not."""

import pytest

from loopwright.kept import LONGEST, of_short


@pytest.mark.parametrize(("given", "runs"), [("a" * LONGEST, 1), ("a" * (LONGEST + 1), 2), (("a", "b"), 1), (("a" * LONGEST, "b"), 2)])
def test_long_texts_are_not_kept(given: str | tuple[str, ...], runs: int) -> None:
    seen: list[int] = []

    @of_short(4)
    def length(text: str | tuple[str, ...]) -> int:
        seen.append(len(text))
        return len(text)

    assert length(given) == length(given) == len(given)
    assert len(seen) == runs
