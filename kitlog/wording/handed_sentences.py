"""What is said of something dropped on the window or pasted that is no table to be read: what it is, and what to do."""

from kitlog.wording.translate import N_

HANDED = {
    "drop.several": (N_("{count} files were dropped at once"), N_("Drop one table at a time.")),
    "drop.elsewhere": (
        N_("“{value}” does not lie on this machine"),
        N_("Save the table on this machine and drop it from there."),
    ),
    "drop.folder": (N_("“{value}” is a folder"), N_("Open it and drop the table that lies in it.")),
    "paste.nothing": (
        N_("there is no text to paste"),
        N_("Select the cells of the table, headings included, copy them, and paste again."),
    ),
}
"""By code of the fault."""
