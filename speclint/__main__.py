"""`python -m speclint`."""

import sys

from speclint.commands.main import main

sys.exit(main())
