"""Desktop: the window. QtWidgets lives here alone; every read and write goes through the workbench."""
