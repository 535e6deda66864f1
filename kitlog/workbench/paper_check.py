"""The papers beside a data file: are they there, what goes into a backup, what can go."""

from datetime import datetime
from pathlib import Path

from kitlog.fault import SystemFault
from kitlog.store.creation import resolved
from kitlog.store.paper_rows import hashes_in_copies, papers_named


def lacking_papers(data_file: Path) -> tuple[SystemFault, ...]:
    """One fault for each paper that is missing or damaged; a single one where the whole folder is missing.

    Raises:
        SystemFault: ``data_file.*``: the data file cannot be read.
    """
    from kitlog.files import papers

    place = resolved(data_file)
    return papers.look(place, papers_named(place)).faults


def sweep_papers(data_file: Path, now: datetime) -> int:
    """Remove what neither the data file nor any of its dated copies names, and what is older than a day; how many.

    Where one of the copies cannot be read nothing is removed: nobody knows what it names.

    Raises:
        SystemFault: ``data_file.*``, ``file.*``.
    """
    from kitlog.files import papers

    place = resolved(data_file)
    in_copies = hashes_in_copies(place)
    if in_copies is None:
        return 0
    return papers.sweep(place, in_copies | {paper.sha256 for paper in papers_named(place)}, now)
