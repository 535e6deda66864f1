"""kitlog backup, restore, verify: copies of the data file."""

import tempfile
from pathlib import Path

from kitlog.cli import documents
from kitlog.cli.call import AT_FAULT, DONE, Call
from kitlog.cli.parser import Verbs
from kitlog.cli.streams import complain, say
from kitlog.fault import InputFault, SystemFault
from kitlog.wording.translate import _


def add(verbs: Verbs) -> None:
    """Add the three verbs."""
    backing = verbs.add("backup", _("write everything into one file with its checksum"), _backup)
    backing.add_argument("file", metavar=_("FILE"), help=_("a new file"))
    text = _("put a backup in the place of the data file; what lay there is kept as a dated copy")
    restoring = verbs.add("restore", text, _restore)
    restoring.add_argument("file", metavar=_("FILE"), help=_("a backup, or a copy out of the folder backups"))
    verbs.add("verify", _("check whether the data file is sound: 0 sound, 3 damaged"), _verify)


def _backup(call: Call) -> int:
    target = Path(call.options.file)
    if target.exists():
        raise InputFault("file.exists", file=call.options.file)
    with call.reading() as bench:
        bench.backup(target)
    say([_("backup written: {file}").format(file=target)])
    return DONE


def _restore(call: Call) -> int:
    from kitlog.files.backup import unpack
    from kitlog.store.restore import restore

    documents.read_head(call.options.file)
    archive, now = Path(call.options.file), call.doors.clock()
    with tempfile.TemporaryDirectory(prefix="kitlog-") as folder:
        copy = archive
        if not documents.is_database(call.options.file):
            copy = Path(folder) / "restored.db"
            unpack(archive, copy)
        kept = restore(copy, call.data_file, now)
    say([_("restored: {file}").format(file=call.data_file)])
    if kept is not None:
        say([_("what lay there is kept: {file}").format(file=kept)])
    return DONE


def _verify(call: Call) -> int:
    from kitlog.store.verify import verify

    problems = verify(call.data_file)
    for problem in problems:
        complain(SystemFault(problem.code, **problem.facts))
    if problems:
        return AT_FAULT
    say([_("sound: {file}").format(file=call.data_file)])
    return DONE
