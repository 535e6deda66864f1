import sys
from pathlib import Path

from hypothesis import settings

sys.path.insert(0, str(Path(__file__).parent))  # for scenario and strategies: importmode=importlib finds no neighbours

settings.register_profile(
    "house", deadline=None
)  # how long one example takes says more of the machine than of the code
settings.load_profile("house")
