"""What the first import of a session needs is loaded away from the window: modules and words take a quarter second."""

from kitlog.desktop.apart import apart


def make_ready() -> None:
    """Come back once everything is loaded."""
    apart(_load)


def _load() -> None:
    import kitlog.desktop.import_page.dialog
    import kitlog.files.table.open_grid  # noqa: F401  # loaded, not used here
    from kitlog.files.resources import resources_folder
    from kitlog.files.table.vocabulary import load_vocabulary

    load_vocabulary(resources_folder())
