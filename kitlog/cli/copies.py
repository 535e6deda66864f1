"""kitlog backup, restore, verify: copies of the data file and the papers beside it."""

import tempfile
from collections.abc import Iterable
from pathlib import Path

from kitlog.cli import arguments, documents
from kitlog.cli.call import AT_FAULT, DONE, Call
from kitlog.cli.parser import Verbs
from kitlog.cli.streams import complain, say
from kitlog.fault import InputFault, SystemFault
from kitlog.wording.translate import _, ngettext


def add(verbs: Verbs) -> None:
    """Add the three verbs."""
    backing = verbs.add("backup", _("write everything into one file with its checksum"), _backup)
    backing.add_argument("file", metavar=_("FILE"), type=arguments.target(_("FILE")), help=_("a new file"))
    text = _("put a backup in the place of the data file; what lay there is kept as a dated copy")
    restoring = verbs.add("restore", text, _restore)
    restoring.add_argument("file", metavar=_("FILE"), help=_("a backup, or a copy out of the folder backups"))
    verbs.add("verify", _("check data file and papers: 0 sound, 3 damaged or missing"), _verify)


def _backup(call: Call) -> int:
    target = Path(call.options.file)
    if target.exists():
        raise InputFault("file.exists", file=call.options.file)
    with call.reading() as bench:
        lacking = bench.backup(target)
    say([_("backup written: {file}").format(file=target)])
    return _told(lacking)


def _told(lacking: Iterable[SystemFault]) -> int:
    """Say which papers are missing or damaged; 3 if any is."""
    code = DONE
    for fault in lacking:
        complain(fault)
        code = AT_FAULT
    return code


def _restore(call: Call) -> int:
    from kitlog.files.backup import put_papers_back, unpack
    from kitlog.store.creation import have_folder, resolved
    from kitlog.store.restore import restore
    from kitlog.workbench.paper_check import lacking_papers

    documents.read_head(call.options.file)
    archive, now = Path(call.options.file), call.doors.clock()
    with tempfile.TemporaryDirectory(prefix="kitlog-") as folder:
        copy, put_back = archive, 0
        if not documents.is_database(call.options.file):
            copy = Path(folder) / "restored.db"
            unpack(archive, copy)
            place = resolved(call.data_file)
            have_folder(place)
            put_back = put_papers_back(archive, place)
        kept = restore(copy, call.data_file, now)
    say([_("restored: {file}").format(file=call.data_file)])
    if kept is not None:
        say([_("what lay there is kept: {file}").format(file=kept)])
    if put_back:
        said = ngettext("{n} paper is back beside it", "{n} papers are back beside it", put_back)
        say([said.format(n=put_back)])
    return _told(lacking_papers(call.data_file))


def _verify(call: Call) -> int:
    from kitlog.store.verify import verify

    problems = verify(call.data_file)
    for problem in problems:
        complain(SystemFault(problem.code, **problem.facts))
    if problems:
        return AT_FAULT
    return _verify_papers(call)


def _verify_papers(call: Call) -> int:
    """Read every paper through, and clear away what nothing names any more."""
    from kitlog.workbench.paper_check import lacking_papers, sweep_papers

    code = _told(lacking_papers(call.data_file))
    if code == DONE:
        say([_("sound: {file}").format(file=call.data_file)])
    swept = sweep_papers(call.data_file, call.doors.clock())
    if swept:
        said = ngettext(
            "{n} file was cleared from the folder of papers: nothing has named it for a day",
            "{n} files were cleared from the folder of papers: nothing has named them for a day",
            swept,
        )
        say([said.format(n=swept)])
    return code
