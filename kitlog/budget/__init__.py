"""Balances of a chosen kit over the phases of an outing: what is asked of it, what it gives, what is left."""
