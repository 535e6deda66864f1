"""The data file: the only place with SQL. Rows go in and come out as the frozen models of kit and outing."""
