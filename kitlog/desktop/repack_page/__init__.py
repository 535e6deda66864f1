"""The repack page: the five steps of the evening (in work)."""
