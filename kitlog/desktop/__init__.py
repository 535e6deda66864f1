"""Desktop: the window. QtWidgets lives here alone; every read and write goes through the workbench.

The workbench comes first: PySide6 slows every import after it, and most of all that of the database library.
"""

import kitlog.workbench.workbench  # noqa: F401  # before PySide6, see above
