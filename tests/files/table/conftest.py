"""What the tests of tables share."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))  # for column_reads: importmode=importlib finds no neighbours
