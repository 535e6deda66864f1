"""What marks a file as ours: two numbers in its header."""

APPLICATION_ID = 0x6B69746C
"""``kitl`` in ASCII: SQLite's application_id of every data file."""

SCHEMA = 3
"""SQLite's user_version of a data file as this program writes it: the number of the newest migration."""
