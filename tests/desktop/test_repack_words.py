"""Where a repack stands, from assessment and ticks alone."""

from datetime import datetime

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from kitlog.desktop.repack_page.footer import foot_words
from kitlog.desktop.repack_page.progress import Progress
from kitlog.desktop.repack_page.rows import Offers, RowKind
from kitlog.desktop.repack_page.step_rows import rows_of
from kitlog.desktop.repack_page.step_words import first_open, step_words
from kitlog.desktop.repack_page.swaps import candidates
from kitlog.desktop.repack_page.zone_words import zone_picture
from kitlog.kit.kinds import SET_KINDS, Zone
from kitlog.outing.ticks import Step, Tick, TickMark
from kitlog.packing.assessment import Assessment
from kitlog.packing.stowing import stowed
from kitlog.paint.mark import Mark
from kitlog.workbench.workbench import Workbench

UNTOUCHED = settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=25, deadline=None)


@pytest.fixture
def assessment(demo_bench: Workbench) -> Assessment:
    outing = demo_bench.current_outing()
    assert outing is not None
    return demo_bench.assess(outing)


def ticks(bench: Workbench, marks: dict[tuple[Step, str], TickMark]) -> list[Tick]:
    now: datetime = bench.now()
    return [Tick(outing_id="o", step=step, line=line, mark=mark, at=now) for (step, line), mark in marks.items()]


@UNTOUCHED
@given(data=st.data())
def test_rows_counts_and_drawing_agree_whatever_is_ticked(
    demo_bench: Workbench, assessment: Assessment, data: st.DataObject
) -> None:
    ids = [line.item.id for line in assessment.lines]
    done = data.draw(st.sets(st.sampled_from(ids)))
    gone = data.draw(st.sets(st.sampled_from(ids), max_size=4))
    marks = dict.fromkeys(((Step.STOW, item) for item in done), TickMark.DONE)
    marks |= dict.fromkeys(((Step.LAY_OUT, item) for item in gone), TickMark.MISSING)
    progress = Progress(assessment, demo_bench.library, ticks(demo_bench, marks))
    rows = rows_of(Step.STOW, progress, {}, Offers({}))
    keys = [row.key for row in rows if row.key]
    assert sorted(keys) == sorted(progress.lines)
    in_bag = done - gone
    assert progress.count(Step.STOW).done == len(in_bag)
    foot = foot_words(progress)
    assert foot.left == f"{len(ids) - len(in_bag)} of {len(ids)}"
    picture = zone_picture(progress)
    for group in stowed(assessment):
        fill = picture.fill(group.zone.value)
        if fill is not None:
            inside = sum(line.mass_g or 0 for line in group.lines if line.item.id in in_bag)
            assert (fill.mass_g, fill.stowed_g) == (group.mass_g, inside)
    top = [row.key for row in rows if row.kind is RowKind.EXCEPTION and row.missing]
    assert sorted(top) == sorted(gone)


def test_the_drawing_counts_nothing_that_stays_in_the_car(demo_bench: Workbench, assessment: Assessment) -> None:
    picture = zone_picture(Progress(assessment, demo_bench.library, []))
    assert picture.fill(Zone.LEFT_IN_CAR.value) is None
    car = next(line for line in picture.lines if line.title == "Left in the car")
    assert "not counted" in car.text


def test_the_first_open_step_follows_the_ticks(demo_bench: Workbench, assessment: Assessment) -> None:
    blank = Progress(assessment, demo_bench.library, [])
    assert first_open(blank) is Step.EMPTY
    marks = {(Step.EMPTY, line): TickMark.DONE for line in blank.wanted(Step.EMPTY)}
    assert first_open(Progress(assessment, demo_bench.library, ticks(demo_bench, marks))) is Step.LAY_OUT
    for step in Step:
        marks |= {(step, line): TickMark.DONE for line in blank.wanted(step)}
    every = Progress(assessment, demo_bench.library, ticks(demo_bench, marks))
    assert first_open(every) is Step.CLOSE
    assert all(one.ring.done == 1.0 for one in step_words(every, Step.CLOSE))
    assert every.closed is not None


def test_a_missing_essential_line_marks_the_step_of_laying_out(demo_bench: Workbench, assessment: Assessment) -> None:
    lamp = next(line.item.id for line in assessment.lines if line.item.name == "Headlamp")
    marks = {(Step.LAY_OUT, lamp): TickMark.MISSING}
    progress = Progress(assessment, demo_bench.library, ticks(demo_bench, marks))
    layout = next(one for one in step_words(progress, Step.STOW) if one.step is Step.LAY_OUT)
    assert (layout.mark, layout.count) == (Mark.STOP, f"0 of {len(progress.lines)}, 1 missing")
    assert [stop.key for stop in progress.open_stops()] == [f"repack.missing:{lamp}"]


def test_nothing_of_the_set_is_a_candidate_for_its_mass(demo_bench: Workbench, assessment: Assessment) -> None:
    for line in assessment.lines:
        found = candidates(line, assessment, demo_bench)
        assert all(item.kind not in SET_KINDS for item in found)
        assert not {item.id for item in found} & {one.item.id for one in assessment.lines}


def test_a_swollen_battery_is_no_candidate(demo_bench: Workbench, assessment: Assessment) -> None:
    spare = demo_bench.duplicate_item(next(line.item.id for line in assessment.lines if line.item.name == "Phone"))
    line = next(line for line in assessment.lines if line.item.name == "Phone")
    assert spare in {item.id for item in candidates(line, assessment, demo_bench)}
    demo_bench.note_swollen(spare)
    assert spare not in {item.id for item in candidates(line, assessment, demo_bench)}
