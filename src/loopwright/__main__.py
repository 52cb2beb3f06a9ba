"""`python -m loopwright` is the `loopwright` command."""

import sys

from loopwright.cli.main import main

sys.exit(main())
