import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))  # for scenario and strategies: importmode=importlib finds no neighbours
