"""kitlog: the bench on which a cross-country paraglider pilot packs the evening before, and the memory between."""

__version__ = "0.1.0"
