"""Flight recordings in the open format of the FAI (IGC): one file read into fixes."""
