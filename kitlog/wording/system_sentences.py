"""Sentences for the faults of files and machine: what happened, why, what to do."""

from kitlog.wording.translate import N_

SYSTEM = {
    "file.missing_folder": (N_("its folder does not exist"), N_("Make the folder, or choose another file.")),
    "file.read_only": (
        N_("it may not be written or read"),
        N_("Change its rights or its folder's, or choose another file."),
    ),
    "file.folder": (N_("it is a folder"), N_("Name a file inside it.")),
    "file.full": (N_("the disk is full"), N_("Make room and try again; what lay there is as it was.")),
    "file.io": (N_("the system reports an error: {reason}"), N_("Check the disk, or choose another file.")),
    "output.failed": (
        N_("the output cannot be written: {reason}"),
        N_("Check where it goes; what was stored stays stored."),
    ),
    "data_file.missing": (N_("there is no such file"), N_("Import a kit to make it, or see: kitlog demo.")),
    "data_file.missing_folder": (N_("its folder does not exist"), N_("Make the folder, or choose another file.")),
    "data_file.folder": (N_("it is a folder"), N_("Name a file inside it.")),
    "data_file.not_a_file": (N_("it is no ordinary file"), N_("Choose another file.")),
    "data_file.empty": (
        N_("the file is empty and was not made by kitlog"),
        N_("Choose another file; it was left as it is."),
    ),
    "data_file.exists": (N_("there is a file already"), N_("Choose another name; it was left as it is.")),
    "data_file.foreign": (N_("it is not a data file of kitlog"), N_("Choose another file; it was left as it is.")),
    "data_file.newer": (
        N_("it was written by a newer kitlog"),
        N_("Use the newer program; the file was left as it is."),
    ),
    "data_file.damaged": (
        N_("the file is damaged{because}"),
        N_("Restore a backup: kitlog restore FILE. The damaged file is kept."),
    ),
    "data_file.read_only": (
        N_("it may not be written"),
        N_("Change its rights or its folder's, or copy it elsewhere."),
    ),
    "data_file.locked": (N_("another program holds it"), N_("Close the other program, or try again in a moment.")),
    "data_file.full": (N_("the disk is full"), N_("Make room and try again; nothing was half written.")),
    "data_file.io": (N_("the disk reports an error: {reason}"), N_("Check the disk; take a backup elsewhere.")),
    "data_file.cannot_open": (N_("it cannot be opened: {reason}"), N_("Check the folder and its rights.")),
    "data_file.setting_refused": (
        N_("SQLite refuses a setting that protects the file"),
        N_("Choose a local disk for the file."),
    ),
    "data_file.replaced": (N_("the file was replaced while it was open"), N_("Close kitlog and open it again.")),
    "data_file.migration_failed": (
        N_("it could not be brought up to date: {reason}"),
        N_("The file is as it was; a copy lies in the backups folder beside it."),
    ),
    "data_file.refused_row": (N_("the file refuses a row: {reason}"), N_("Nothing was written; please report it.")),
    "data_file.dangling": (N_("something names what is not there"), N_("Nothing was written; check the names.")),
    "backup.damaged": (N_("the backup is damaged"), N_("Take another backup; nothing was changed.")),
    "backup.foreign": (N_("it is not a backup of kitlog"), N_("Choose another file; nothing was changed.")),
    "backup.newer": (N_("the backup was made by a newer kitlog"), N_("Use the newer program; nothing was changed.")),
    "backup.too_large": (N_("it unpacks to more than it may"), N_("Choose another file; nothing was changed.")),
    "backup.too_many_papers": (
        N_("its papers are more than a backup holds ({limit} GB, or 10,000 papers)"),
        N_("Copy the data file and the folder of its papers yourself, together."),
    ),
    "paper.folder_missing": (
        N_("the folder of its papers is not there: {folder}"),
        N_("Put it back beside the data file: the two move together; or restore a backup."),
    ),
    "paper.missing": (
        N_("the paper “{name}” is not where it was kept"),
        N_("Attach the same file again, or restore a backup."),
    ),
    "paper.damaged": (
        N_("the paper “{name}” is damaged: its bytes are others than those that were attached"),
        N_("Attach the same file again, or restore a backup."),
    ),
    "backup.not_a_database": (N_("what should be packed is no data file"), N_("Check the data file: kitlog verify.")),
    "demo.damaged": (N_("a file of the demo is damaged: {reason}"), N_("Install kitlog again.")),
    "resources.broken": (N_("a file that came with kitlog is damaged: {problem}"), N_("Install kitlog again.")),
    "icon.broken": (N_("an icon is damaged"), N_("Install kitlog again.")),
    "icon.missing": (N_("an icon is missing"), N_("Install kitlog again.")),
    "undo.moved_on": (N_("somebody else has changed it since"), N_("Nothing was undone; look at it as it is now.")),
    "window.no_library": (
        N_("the window library cannot be loaded: {reason}"),
        N_("Install what it names, or use the command line: kitlog --help."),
    ),
    "sheet.no_library": (
        N_("the library that paints pages cannot be loaded: {reason}"),
        N_("Install what it names, or take the sheet as a web page."),
    ),
    "sheet.no_font": (
        N_("no font is installed to write a page with"),
        N_("Install one, or take the sheet as a web page."),
    ),
    "window.no_screen": (N_("there is no screen to open a window on"), N_("Use the command line: kitlog --help.")),
}
