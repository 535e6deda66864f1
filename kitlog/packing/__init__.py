"""Packing: conditions, needs x kit -> the list, the choice, the checks, the assessment."""
