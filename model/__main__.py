"""``python -m model``."""

import sys

from model.cli import main

sys.exit(main())
