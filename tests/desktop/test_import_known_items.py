"""Rows of a table about items that the kit has already: asked about, undecided until answered, then done so."""

from pathlib import Path

import pytest
from desk_steps import Use, item_named
from import_steps import kit, seen, using, written

from kitlog.desktop.import_page.dialog import ImportDialog
from kitlog.desktop.import_page.items_model import BECOMES, NAME
from kitlog.desktop.window import Window
from kitlog.files.table.kit_items import Existing
from kitlog.workbench.workbench import Workbench


@pytest.mark.parametrize(
    ("existing", "masses"), [(Existing.SKIP, [5_240]), (Existing.UPDATE, [5_300]), (Existing.ADD, [5_240, 5_300])]
)
def test_a_row_about_an_item_of_the_kit_is_asked_about(
    existing: Existing,
    masses: list[int],
    window: Window,
    demo_bench: Workbench,
    tmp_path: Path,
    in_dialog: Use,
    qtbot,
) -> None:
    wing = item_named(demo_bench, "Wing A")
    text = (
        "name,kind,maker,model,serial,mass_g,mass_source\n"
        f"Wing A,wing,{wing.maker},{wing.model},{wing.serial},5300,luggage scale\nWhistle X,signal,,,,14,guess\n"
    )

    def use(dialog: ImportDialog) -> None:
        assert dialog.leaves.asked.meeting is not None
        assert dialog.counts.said() == "1 new, 1 in your kit already, 1 to be written"
        assert not dialog.main.isEnabled()
        dialog.leaves.asked.meeting.radios[existing].click()
        seen(dialog, qtbot)
        assert not dialog.leaves.asked.meeting.is_open
        dialog.main.click()

    in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, text)), using(qtbot, use))
    assert sorted(item.mass_g or 0 for item in demo_bench.items() if item.name == "Wing A") == masses


def test_what_becomes_of_it_is_undecided_until_it_is_answered(
    window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    wing = item_named(demo_bench, "Wing A")
    same = next(item for item in demo_bench.items() if item.name != wing.name)
    text = (
        "name,maker,model,serial,colour\n"
        f"Wing A,{wing.maker},{wing.model},{wing.serial},plum\n"
        f'{same.name},{same.maker or ""},{same.model or ""},{same.serial or ""},"{same.colour or ""}"\n'
        "Whistle X,,,,red\n"
    )

    def becomes(dialog: ImportDialog) -> list[tuple[str, str]]:
        model = dialog.leaves.items.model
        return [
            (str(model.index(row, NAME).data()), str(model.index(row, BECOMES).data()))
            for row in range(model.rowCount())
        ]

    def use(dialog: ImportDialog) -> None:
        assert dialog.leaves.asked.meeting is not None
        assert becomes(dialog) == [("Wing A", "undecided"), (same.name, "undecided"), ("Whistle X", "new")]
        assert "Colour" in dialog.leaves.items.model.said(0)
        chips = dialog.leaves.items.chips
        assert chips["changed"].isHidden()
        chips["undecided"].click()
        assert [name for name, _word in becomes(dialog)] == ["Wing A", same.name]
        chips["undecided"].click()
        radios = dialog.leaves.asked.meeting.radios
        for existing, expected in (
            (Existing.SKIP, [("Whistle X", "new")]),
            (Existing.UPDATE, [("Wing A", "changed"), ("Whistle X", "new")]),
            (Existing.ADD, [("Wing A", "new"), (same.name, "new"), ("Whistle X", "new")]),
        ):
            radios[existing].click()
            seen(dialog, qtbot)
            assert becomes(dialog) == expected

    in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, text)), using(qtbot, use))


def test_what_would_change_is_said(
    window: Window, demo_bench: Workbench, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    wing = item_named(demo_bench, "Wing A")
    text = f"name,maker,model,serial,colour\nWing A,{wing.maker},{wing.model},{wing.serial},plum\n"

    def use(dialog: ImportDialog) -> None:
        assert dialog.leaves.asked.meeting is not None
        dialog.leaves.asked.meeting.radios[Existing.UPDATE].click()
        seen(dialog, qtbot)
        assert dialog.counts.said() == "0 new, 1 changed, 1 to be written"
        assert dialog.leaves.items.model.said(0) == f"Colour {wing.colour or 'not known'} → plum"

    in_dialog(lambda: kit(window).acts.look_at(written(tmp_path, text)), using(qtbot, use))
