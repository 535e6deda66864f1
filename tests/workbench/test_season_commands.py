from datetime import date

import pytest
from scenario import EVENING

from kitlog.fault import InputFault
from kitlog.kit.due import DueState
from kitlog.workbench.workbench import Workbench

TODAY = EVENING.date()


def id_of(bench: Workbench, name: str) -> str:
    return next(item.id for item in bench.items() if item.name == name)


def rule_id(bench: Workbench, item: str, rule: str) -> str:
    return next(r.id for r in bench.rules() if (r.item_id, r.rule) == (id_of(bench, item), rule))


def asked(bench: Workbench, since: date | None = None) -> set[str]:
    return {line.item.name for line in bench.season_start(since).lines}


def test_the_demo_s_longest_pause_is_the_one_after_the_flight_far_away(bench: Workbench) -> None:
    assert bench.season_start().since == date(2026, 1, 11)


def test_the_day_can_be_another(bench: Workbench) -> None:
    assert "Wing A" not in asked(bench)  # trim checked on 27 April
    assert "Wing A" in asked(bench, date(2026, 5, 1))


def test_a_look_takes_a_thing_out_of_the_run_and_moves_no_date(bench: Workbench) -> None:
    assert "Harness B" in asked(bench)
    before = [line.due.due_on for line in bench.due(TODAY) if line.item.name == "Carabiners B"]
    bench.looked_at(id_of(bench, "Carabiners B"), note="gates close by themselves")
    assert "Carabiners B" not in asked(bench)
    assert [line.due.due_on for line in bench.due(TODAY) if line.item.name == "Carabiners B"] == before
    record = bench.records()[-1]
    pilot = bench.pilot()
    assert pilot is not None
    assert (record.rules, record.done_on, record.who, record.remarks) == (
        (),
        TODAY,
        pilot.name,
        "gates close by themselves",
    )


def test_a_look_that_does_a_rule_is_its_record(bench: Workbench) -> None:
    bench.looked_at(id_of(bench, "Harness B"), [rule_id(bench, "Harness B", "harness.visual")])
    (line,) = [x for x in bench.due(TODAY) if (x.item.name, x.rule.rule) == ("Harness B", "harness.visual")]
    assert line.due.state is DueState.IN_DATE
    assert line.due.last is not None


def test_a_look_is_one_step_to_undo_and_stays_as_struck(bench: Workbench) -> None:
    bench.looked_at(id_of(bench, "Carabiners B"))
    bench.undo()
    assert "Carabiners B" in asked(bench)
    assert bench.records()[-1].struck_at is not None
    bench.redo()
    assert "Carabiners B" not in asked(bench)


def test_a_rule_of_another_thing_is_refused(bench: Workbench) -> None:
    with pytest.raises(InputFault, match=r"rule\.unknown"):
        bench.looked_at(id_of(bench, "Helmet B"), [rule_id(bench, "Harness B", "harness.visual")])
    with pytest.raises(InputFault, match=r"item\.unknown"):
        bench.looked_at("nothing")


def test_what_stops_is_asked_of_the_file(bench: Workbench) -> None:
    found = {(line.item.name, line.due.rule): line.state.value for line in bench.what_stops(TODAY) if line.due}
    assert found["Helmet A", "helmet.event"] == "stop"
    assert found["Harness B", "harness.visual"] == "not known"


def test_an_empty_file_asks_nothing(empty: Workbench) -> None:
    assert empty.season_start().lines == ()
    assert empty.what_stops(TODAY) == ()


def test_what_is_on_record_counts_the_opening_balance_and_ground_handling(bench: Workbench) -> None:
    """Worked example of the trade notes: 16.417 h and half an hour on the ground in 2026, 96 launches in all."""
    record = bench.on_record(id_of(bench, "Wing A"))
    assert record is not None
    (full,) = [due for due in record.dues if due.rule == "wing.full"]
    assert (full.state, full.due_on) == (DueState.DUE_SOON, date(2026, 5, 20))
    assert full.hours_left == pytest.approx(22.083, abs=0.001)
    assert record.ground_h == pytest.approx(9.5, abs=0.01)


def test_on_an_outing_the_rules_are_judged_on_its_last_day_as_its_assessment_does(bench: Workbench) -> None:
    for outing in bench.outings():
        assessment = bench.assess(outing)
        said = {f.subject: f.facts["due"] for f in assessment.findings if "due" in f.facts}
        assert said
        for due in said.values():
            record = bench.on_record(due.item_id, outing)
            assert record is not None
            assert due in record.dues


def test_the_next_outing_judges_a_rule(bench: Workbench, empty: Workbench) -> None:
    wing = id_of(bench, "Wing A")
    due = bench.on_next_outing(wing, rule_id(bench, "Wing A", "wing.full"))
    assert due is not None
    assert (due.on, due.state) == (date(2026, 5, 9), DueState.DUE_SOON)
    assert empty.on_next_outing("nothing", "nothing") is None
    assert empty.on_record("nothing") is None
