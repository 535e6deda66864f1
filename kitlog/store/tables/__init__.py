"""The tables of the data file, as the newest schema has them; split by subject."""
