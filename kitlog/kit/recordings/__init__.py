"""Flights found in recordings: the fixes, the take-off rule, what only looks like a flight, recordings that overlap."""
