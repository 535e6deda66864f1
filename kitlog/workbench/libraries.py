"""The libraries that the floors below rest on, imported ahead of PySide6 and without the floors themselves.

PySide6 looks at every module that is imported after it: the database library then takes longer, and pydantic, which
imports its parts when they are first named, can fail half-way. What is named here has been imported whole by then.
"""

import kitlog.store.connection
import kitlog.units.days
import kitlog.units.model
import kitlog.units.text  # noqa: F401  # the three bring the parts of pydantic that kitlog uses
