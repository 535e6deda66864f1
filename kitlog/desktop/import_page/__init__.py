"""The import: what a table of anybody's would bring, asked about, looked at, and only then written."""
