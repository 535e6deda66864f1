"""Desktop: the window. QtWidgets lives here alone; every read and write goes through the workbench.

The libraries come first: PySide6 slows every import after it, and most of all that of the database library.
"""

import kitlog.workbench.libraries  # noqa: F401  # before PySide6, see above
