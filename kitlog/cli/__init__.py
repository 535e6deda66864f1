"""The command line: the same power as the window, for scripts and for a machine without a screen."""
