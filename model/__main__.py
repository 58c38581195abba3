"""``python -m model``."""

import sys

from model.describe.tables import TableError

try:
    from model.out.cli import main

    sys.exit(main())
except TableError as wrong:
    sys.exit(str(wrong))
