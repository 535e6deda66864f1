"""Wording: findings, units, dates and faults as sentences, for window, command line and sheets."""
