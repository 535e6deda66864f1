"""Writing the kit to CSV files."""

from pathlib import Path

from kitlog.files.atomic import written
from kitlog.workbench.workbench import Workbench


def export_kit(bench: Workbench, to: Path) -> None:
    """Write the items, and their service rules beside them as ``NAME-service.csv``.

    Raises:
        SystemFault: a file cannot be written.
    """
    service = service_beside(to)
    for file, export in ((to, bench.export_kit()), (service, bench.export_service())):
        with written(file) as out:
            out.write(export.data)


def service_beside(to: Path) -> Path:
    """Where the service rules go, beside the items."""
    return to.with_name(f"{to.stem}-service{to.suffix or '.csv'}")
