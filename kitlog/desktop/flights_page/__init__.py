"""The page Flights: the log, flights entered by hand, hours by item."""
