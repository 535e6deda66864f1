from pathlib import Path

import pytest
from reads import all_reads
from scenario import DEMO, O1, judged

from kitlog.fault import InputFault
from kitlog.files.csv_problems import TableFault
from kitlog.files.resources import resources_folder
from kitlog.files.table.kit_items import Existing
from kitlog.files.table.targets import Meaning
from kitlog.kit.item import Item
from kitlog.kit.kinds import MassSource
from kitlog.workbench.incident_rows import NEW_PAIRING
from kitlog.workbench.kit_preview import ImportChoices, ServiceFile
from kitlog.workbench.workbench import Workbench

KIT = b"name,kind,mass_g,mass_source,fitted_to\nPod,harness,5000,kitchen scale,\nQuad,reserve,1500,kitchen scale,Pod\n"
SERVICE = b"item,rule,months,last_on,grounds\nQuad,reserve.repack,12,2026-01-10,by law\n"
SERVICE_FILE = ServiceFile(SERVICE, "service.csv")


class TestImport:
    def test_a_preview_writes_nothing(self, empty: Workbench) -> None:
        preview = empty.preview_kit(KIT, "kit.csv", service=SERVICE_FILE)
        assert ([i.name for i in preview.items], len(preview.rules), len(preview.records)) == (["Pod", "Quad"], 1, 1)
        assert preview.rows == {preview.items[0].id: 2, preview.items[1].id: 3}
        assert all_reads(empty)["items"] == ()
        assert empty.undoable is None

    def test_what_was_previewed_is_what_comes_in(self, empty: Workbench) -> None:
        preview = empty.preview_kit(KIT, "kit.csv", service=SERVICE_FILE)
        empty.import_kit(preview)
        assert (empty.items(), empty.rules(), empty.records()) == (preview.items, preview.rules, preview.records)

    def test_is_one_step_with_a_copy_taken_before(self, empty: Workbench) -> None:
        before = all_reads(empty)
        empty.import_kit(empty.preview_kit(KIT, "kit.csv", service=SERVICE_FILE))
        after = all_reads(empty)
        step = empty.undo()
        assert step is not None
        assert (step.code, step.facts["count"]) == ("kit.import", 2)
        struck = all_reads(empty)
        assert struck["items"] == before["items"] == ()
        empty.redo()
        assert all_reads(empty) == after
        assert list((empty.path.parent / "backups").iterdir())

    def test_a_pair_may_stand_in_any_order(self, empty: Workbench) -> None:
        head, pod, quad = KIT.splitlines()
        empty.import_kit(empty.preview_kit(b"\n".join((head, quad, pod)), "kit.csv"))
        first, second = empty.items()
        assert (first.name, second.name) == ("Quad", "Pod")
        assert first.fitted_to == second.id

    def test_may_be_fitted_to_what_is_there_already(self, bench: Workbench) -> None:
        strap = b"name,kind,mass_g,fitted_to\nStrap,other,20,Harness A\n"
        bench.import_kit(bench.preview_kit(strap, "kit.csv"))
        harness = next(item for item in bench.items() if item.name == "Harness A")
        assert bench.items()[-1].fitted_to == harness.id

    def test_an_implausible_mass_is_asked_about_and_not_refused(self, empty: Workbench) -> None:
        preview = empty.preview_kit(b"name,kind,mass_g\nWing,wing,5.2\n".replace(b"5.2", b"52"), "kit.csv")
        ((item, (least, most)),) = preview.implausible
        assert (item.name, least, most) == ("Wing", 900, 10_500)
        empty.import_kit(preview)
        assert empty.items()[0].mass_g == 52

    def test_a_bad_file_is_refused_whole(self, bench: Workbench) -> None:
        before = all_reads(bench)
        preview = bench.preview_kit(b"name,kind,mass_g\nWing,kite,1\nBag,bag,x\n", "kit.csv")
        with pytest.raises(TableFault) as refused:
            bench.import_kit(preview)
        assert [(one.row, one.column, one.code) for one in refused.value.problems] == [(3, "mass_g", "table.unread")]
        assert all_reads(bench) == before

    def test_a_row_about_an_item_of_the_kit_is_asked_about(self, bench: Workbench) -> None:
        before = all_reads(bench)
        preview = bench.preview_kit(b"name,mass_g\nphone,300\nTripod,900\n", "more.csv")
        assert preview.undecided
        with pytest.raises(TableFault) as refused:
            bench.import_kit(preview)
        assert [(one.row, one.code) for one in refused.value.problems] == [(2, "table.meets_existing")]
        assert all_reads(bench) == before

    @pytest.mark.parametrize(("existing", "masses"), [("skip", [206]), ("update", [300]), ("add", [206, 300])])
    def test_what_becomes_of_it_is_the_pilots_choice(self, bench: Workbench, existing: str, masses: list[int]) -> None:
        choices = ImportChoices(existing=Existing(existing))
        bench.import_kit(bench.preview_kit(b"name,mass_g\nPhone,300\n", "more.csv", choices))
        assert [item.mass_g for item in bench.items() if item.name == "Phone"] == masses

    def test_an_update_leaves_what_the_row_does_not_say(self, bench: Workbench) -> None:
        choices = ImportChoices(existing=Existing.UPDATE)
        phone = next(item for item in bench.items() if item.name == "Phone")
        bench.import_kit(bench.preview_kit(b"name,mass_g\nPhone,300\n", "more.csv", choices))
        after = next(item for item in bench.items() if item.name == "Phone")
        changed = {name for name in Item.model_fields if getattr(after, name) != getattr(phone, name)}
        assert changed == {"mass_g", "mass_source"}
        assert after.mass_source is MassSource.GUESS  # the old weighing was not of this figure

    def test_a_reserve_moved_to_another_harness_is_an_event(self, bench: Workbench) -> None:
        choices = ImportChoices(existing=Existing.UPDATE)
        before = len(bench.events())
        bench.import_kit(bench.preview_kit(b"name,fitted_to\nReserve A,Harness B\n", "more.csv", choices))
        assert [event.kind for event in bench.events()[before:]] == [NEW_PAIRING]

    def test_the_own_export_changes_nothing(self, bench: Workbench) -> None:
        choices = ImportChoices(existing=Existing.UPDATE)
        preview = bench.preview_kit(bench.export_kit().data, "kit.csv", choices)
        assert (preview.new, preview.changed, preview.unchanged) == ((), (), len(bench.items()))

    def test_what_columns_were_chosen_to_mean_is_remembered(self, bench: Workbench) -> None:
        choices = ImportChoices(by_heading={"wieviel wiegts": Meaning("mass_g", "kg")})
        table = b"Was,Wieviel wiegts\nStativ,0.9\n"
        bench.import_kit(bench.preview_kit(table, "a.csv", choices))
        again = bench.preview_kit(b"was,wieviel WIEGTS\nLot,0.2\n", "b.csv")
        assert [item.mass_g for item in again.new] == [200]
        assert again.columns[1].how == "remembered"

    def test_the_same_preview_twice_changes_nothing_more(self, empty: Workbench) -> None:
        preview = empty.preview_kit(KIT, "kit.csv")
        empty.import_kit(preview)
        after = all_reads(empty)
        empty.import_kit(preview)
        assert all_reads(empty) == after


class TestExport:
    def test_goes_round(self, bench: Workbench, empty: Workbench) -> None:
        kit, service = bench.export_kit(), bench.export_service()
        empty.import_kit(empty.preview_kit(kit.data, "kit.csv", service=ServiceFile(service.data, "service.csv")))
        assert [item.name for item in empty.items()] == [item.name for item in bench.items()]
        assert empty.export_kit().data == kit.data
        assert empty.export_service().data == service.data


class TestDemo:
    def test_is_the_scenario_and_its_first_outing_is_worked_on(self, bench: Workbench) -> None:
        assert len(bench.items()) == len(DEMO.items)
        assert bench.current_outing() == bench.outings()[0]
        assert bench.assess(bench.outings()[0]).counts == judged(O1).counts

    def test_is_one_step(self, empty: Workbench) -> None:
        empty.fill_with_demo(resources_folder() / "demo")
        step = empty.undo()
        assert step is not None
        assert step.code == "demo.fill"
        assert empty.items() == ()


class TestBackup:
    def test_is_one_file_and_leaves_nothing_else(self, bench: Workbench, tmp_path: Path) -> None:
        target = tmp_path / "copies" / "kit.backup"
        target.parent.mkdir()
        bench.backup(target)
        assert target.stat().st_size > 0
        assert [path.name for path in target.parent.iterdir()] == ["kit.backup"]
        beside = bench.path.parent / "backups"
        assert not beside.exists() or not [p for p in beside.iterdir() if "backup" in p.name]


def test_a_name_that_two_items_bear_can_still_be_edited_by_id(bench: Workbench) -> None:
    twin = bench.duplicate_item(bench.items()[0].id)
    with pytest.raises(InputFault) as refused:
        bench.assess(bench.outings()[0].model_copy(update={"left_out": (bench.items()[0].name,)}))
    assert refused.value.code == "outing.ambiguous_item"
    assert bench.item(twin) is not None
