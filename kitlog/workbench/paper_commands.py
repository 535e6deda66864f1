"""Papers and photos: attached, opened, saved elsewhere.

What reads and writes the files is imported when it is used: a window opens without it.
"""

from collections.abc import Iterable
from pathlib import Path

from kitlog.fault import InputFault, SystemFault
from kitlog.kit.paper import Paper
from kitlog.workbench.reads import Reads


class PaperCommands(Reads):
    """Reads and writes of papers; the row that names a paper is written with what it belongs to."""

    def attach(self, path: Path) -> Paper:
        """Keep the bytes of a file beside the data file, and say how a record or an item names it.

        What nothing names a day later is swept by ``kitlog verify``.

        Raises:
            InputFault: ``file.cannot_read``, ``paper.not_a_paper``, ``paper.too_large``, ``paper.empty``; with
                ``file``.
            SystemFault: ``file.*``.
        """
        from kitlog.files import papers

        content = papers.take(path)
        try:
            return papers.keep(self.path, content, path.name)
        except InputFault as fault:
            raise InputFault(fault.code, **{**fault.facts, "file": str(path)}) from None

    def paper_bytes(self, paper: Paper) -> bytes:
        """What a paper holds.

        Raises:
            SystemFault: ``paper.folder_missing``, ``paper.missing``, ``paper.damaged``; with ``name``.
        """
        from kitlog.files import papers

        return papers.read(self.path, paper)

    def save_paper(self, paper: Paper, to: Path) -> Path:
        """Save a paper as a file of its own; into a folder under its own name, never over another file there.

        Raises:
            SystemFault: as `paper_bytes`; ``file.*``.
        """
        from kitlog.files import atomic, papers

        target = _free(to / papers.file_name(paper)) if to.is_dir() else to
        atomic.write(target, self.paper_bytes(paper))
        return target

    def paper_file_name(self, paper: Paper) -> str:
        """A name for a copy of a paper on any system, with the end that belongs to what is inside."""
        from kitlog.files import papers

        return papers.file_name(paper)

    def papers_of(self, item_id: str) -> tuple[Paper, ...]:
        """The papers of an item and of its records that are not struck, each content once."""
        item = self.item(item_id)
        if item is None:
            raise InputFault("item.unknown", name=item_id)
        of_records = (p for r in self.records() if r.item_id == item_id and r.struck_at is None for p in r.papers)
        return tuple({paper.sha256: paper for paper in (*item.papers, *of_records)}.values())

    def papers_absent(self, papers: Iterable[Paper]) -> frozenset[str]:
        """The hashes of those papers that are not where they were kept; quick, since their bytes are not read."""
        from kitlog.files.papers import absent

        return absent(self.path, papers)

    def papers_lost(self) -> SystemFault | None:
        """``paper.folder_missing`` where papers are on record and their folder is not there: the file moved alone."""
        from kitlog.files.papers import folder_of

        if folder_of(self.path).is_dir() or not (named := self._papers_named()):
            return None
        return SystemFault(
            "paper.folder_missing", path=str(self.path), folder=str(folder_of(self.path)), count=len(named)
        )

    def papers_lacking(self) -> tuple[SystemFault, ...]:
        """One fault for each paper that is missing or damaged; a single one where the whole folder is missing."""
        from kitlog.files import papers

        return papers.look(self.path, self._papers_named()).faults

    def _papers_named(self) -> tuple[Paper, ...]:
        of_items = (paper for item in self.items() for paper in item.papers)
        of_records = (paper for record in self.records() for paper in record.papers)
        return tuple({paper.sha256: paper for paper in (*of_items, *of_records)}.values())


def _free(target: Path) -> Path:
    """The name, with a number where something has it already."""
    number, free = 1, target
    while free.exists():
        number += 1
        free = target.with_name(f"{target.stem} {number}{target.suffix}")
    return free
