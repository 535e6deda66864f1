"""What the first import of a session needs is loaded away from the window: modules and words take a quarter second."""

from PySide6.QtCore import QEventLoop

from kitlog.desktop.background import Background, Tell


def make_ready() -> None:
    """Come back once everything is loaded; the window stays alive, and what is typed meanwhile waits."""
    loop, background = QEventLoop(), Background()
    background.done.connect(loop.quit)
    background.broke.connect(loop.quit)
    background.ask(_load)
    loop.exec(QEventLoop.ProcessEventsFlag.ExcludeUserInputEvents)


def _load(_tell: Tell) -> None:
    import kitlog.desktop.import_page.dialog
    import kitlog.files.table.open_grid  # noqa: F401  # loaded, not used here
    from kitlog.files.resources import resources_folder
    from kitlog.files.table.vocabulary import load_vocabulary

    load_vocabulary(resources_folder())
