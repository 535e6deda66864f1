"""Outing: pilot, outing, phases, people, flight types and needs as models; ticks, answers and overrides."""
