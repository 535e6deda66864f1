"""Workbench: what a person can do; one door for every read and every write. It says what changed; undo lives here."""
