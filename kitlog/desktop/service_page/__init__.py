"""The page Service: the months ahead as a band, the list under it, rules, records, events."""
