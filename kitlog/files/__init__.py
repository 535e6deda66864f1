"""Files in and out: everything that is read from or written to disk, but for the data file itself."""
