"""`loopwright publish`: pages, web page, book and text of a design, in every edition, into a folder."""

from __future__ import annotations

from argparse import Namespace

from loopwright.workshop.publish.beside import Beside


def run(args: Namespace) -> int:
    """Publishes a design; 1 when it has errors (nothing is written unless --draft), 2 when it cannot be done at all."""
    with Beside(own_process=not args.words_only) as beside:
        from loopwright.cli.publishing import published  # the process beside this one loads its part meanwhile

        return published(args, beside)
