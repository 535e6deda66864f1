"""The outing page: plan, open questions, tiles, pictures (in work)."""
