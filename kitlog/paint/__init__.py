"""Pictures and drawings on any painter: small frozen inputs, ready-made words, no widgets."""
