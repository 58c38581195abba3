"""``python -m model``."""

import sys

from model.out.cli import main

sys.exit(main())
