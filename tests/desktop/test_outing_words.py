"""What the page of the outing says, held against the models it comes from."""

from dataclasses import replace
from datetime import date, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.budget.result import Finding, Remedy, State, Topic
from kitlog.desktop.outing_page.hour_fields import hours_of, time_of
from kitlog.desktop.outing_page.new_draft import new_draft
from kitlog.desktop.outing_page.plan_words import hm_text, home_texts
from kitlog.desktop.outing_page.power_words import power_picture
from kitlog.desktop.outing_page.tile import Board
from kitlog.desktop.outing_page.tile_words import TileWords, tile_words
from kitlog.desktop.outing_page.topics import ORDER, topics_of, worst_topic
from kitlog.desktop.outing_page.weight_words import weight_picture
from kitlog.kit.kinds import PhaseWay
from kitlog.outing.outing import Outing, Phase
from kitlog.packing.assessment import Assessment
from kitlog.paint.mark import Mark
from kitlog.workbench.workbench import Workbench


@pytest.fixture
def assessment(demo_bench: Workbench) -> Assessment:
    outing = demo_bench.current_outing()
    assert outing is not None
    return demo_bench.assess(outing)


@pytest.fixture
def names(demo_bench: Workbench) -> dict[str, str]:
    return {item.id: item.name for item in demo_bench.items()}


@given(st.integers(0, 240 * 60))
def test_durations_are_read_as_they_are_written(minutes: int) -> None:
    assert hours_of(hm_text(minutes / 60)) == pytest.approx(minutes / 60)


@pytest.mark.parametrize(
    ("typed", "hours"),
    [("1:30", 1.5), (" 1.5 ", 1.5), ("1,5 h", 1.5), ("90 min", 1.5), ("2", 2.0), ("0:00", 0.0)],
)
def test_durations_as_pilots_type_them(typed: str, hours: float) -> None:
    assert hours_of(typed) == hours


@pytest.mark.parametrize("typed", ["", "soon", "1:75", "-1", "1:30:00", "1e3", "nan", "one"])
def test_what_is_no_duration_is_not_guessed(typed: str) -> None:
    assert hours_of(typed) is None


@given(st.times())
def test_times_are_read_as_they_are_written(at: time) -> None:
    assert time_of(f"{at:%H:%M}") == at.replace(second=0, microsecond=0)


@pytest.mark.parametrize("typed", ["", "24:00", "9", "9:7", "noon", "12:60"])
def test_what_is_no_time_is_not_guessed(typed: str) -> None:
    assert time_of(typed) is None


def plan(likely_h: float, high_h: float, start: time | None) -> Outing:
    day = date(2026, 5, 9)
    phase = Phase(name="flight", way=PhaseWay.FLIGHT, low_h=likely_h, likely_h=likely_h, high_h=high_h)
    return Outing(name="a", flight_types=("ridge",), first_day=day, last_day=day, starts_at=start, phases=(phase,))


def test_home_at_says_on_which_later_day() -> None:
    assert home_texts(plan(3, 15, time(11))) == ("14:00", "14:00", "02:00\u207a\u00b9")
    assert home_texts(plan(3, 39, time(11)))[2] == "02:00\u207a\u00b2"
    assert home_texts(plan(3, 15, None)) == ("3:00", "3:00", "15:00")


def test_a_new_draft_takes_site_and_people_but_nobody_is_told(demo_bench: Workbench) -> None:
    last = demo_bench.outings()[-1]
    told = last.people[0].model_copy(update={"told_at": demo_bench.now()})
    last = last.model_copy(update={"people": (told,)})
    today = demo_bench.now().date()
    draft = new_draft("new", today, demo_bench.library, last)
    assert draft.first_day == draft.last_day == today + timedelta(days=1)
    assert draft.name == f"Outing of {draft.first_day.day} {draft.first_day:%b} {draft.first_day.year}"  # to be typed
    assert draft.site == last.site
    assert [person.told_at for person in draft.people] == [None]
    assert draft.answers == ()
    assert draft.overrides == ()


def test_the_power_picture_shows_the_simulated_day(assessment: Assessment, names: dict[str, str]) -> None:
    picture = power_picture(assessment, names)
    likely, high = assessment.power.likely, assessment.power.high
    assert likely is not None
    assert high is not None
    assert [band.label for band in picture.phases] == [phase.name for phase in assessment.outing.phases]
    by_name = {lane.label: lane for lane in picture.lanes}
    for item, result in likely.devices.items():
        lane = by_name[names[item]]
        assert lane.likely[-1][1] == pytest.approx(result.soc_end, abs=1e-3)
        went_off = result.first_off_h is not None
        assert bool(lane.off) == (went_off or high.devices[item].first_off_h is not None)
    assert picture.clocks_likely[0] == picture.clocks_high[0] == "11:00"
    assert picture.clocks_likely[-1] == "20:00"


def test_a_switch_off_of_the_high_day_says_so_and_on_which_later_day(
    demo_bench: Workbench, names: dict[str, str]
) -> None:
    """The axis under it ends at the likely day's end, before a clock time of the high one."""
    outing = demo_bench.current_outing()
    assert outing is not None
    late = demo_bench.assess(outing.model_copy(update={"starts_at": time(16)}))
    lanes = power_picture(late, names).lanes
    texts = {off.in_high: off.text for lane in lanes for off in lane.off}
    assert texts[False].startswith("off 2")
    assert texts[True].startswith("high day: off 02:52⁺¹, ")
    assert power_picture(late, names).clocks_high[-1] == "06:30⁺¹"


def test_a_bank_is_never_shown_as_fine_by_itself(assessment: Assessment, names: dict[str, str]) -> None:
    lanes = {lane.label: lane for lane in power_picture(assessment, names).lanes}
    assert lanes["Power bank"].mark is Mark.NONE


def test_the_zones_of_the_weight_picture_add_up_to_take_off(assessment: Assessment, names: dict[str, str]) -> None:
    picture = weight_picture(assessment, names)
    assert picture.zones is not None
    assert sum(float(figure) for _zone, figure in picture.zones.cells) == pytest.approx(
        float(picture.zones.total[1]), abs=0.01 * len(picture.zones.cells)
    )
    assert picture.take_off is not None
    assert picture.take_off.kg * 1000 == assessment.mass.take_off_g


def test_ballast_is_drawn_only_where_a_remedy_offers_it(assessment: Assessment, names: dict[str, str]) -> None:
    assert weight_picture(assessment, names).ballast is None
    finding = next(f for f in assessment.findings if f.code == "weight.takeoff_range")
    offered = replace(finding, remedies=(Remedy("ballast", (), {"mass_g": 2500}),))
    others = tuple(f for f in assessment.findings if f is not finding)
    ballast = weight_picture(replace(assessment, findings=(offered, *others)), names).ballast
    assert ballast is not None
    assert ballast.kg * 1000 == pytest.approx((assessment.mass.take_off_g or 0) + 2500)


def test_what_is_not_weighed_is_said_and_not_summed(demo_bench: Workbench) -> None:
    phone = next(item for item in demo_bench.items() if item.name == "Phone")
    demo_bench.edit_items([phone.model_copy(update={"mass_g": None})])
    outing = demo_bench.current_outing()
    assert outing is not None
    found = demo_bench.assess(outing)
    names = {item.id: item.name for item in demo_bench.items()}
    assert weight_picture(found, names).take_off is None
    words = tile_words(Topic.WEIGHT, found, names)
    assert words.figure == "not known"
    assert words.state != "fine"


def test_the_worst_topic_is_that_of_the_worst_finding(assessment: Assessment) -> None:
    stop = Finding("people.nobody_told", Topic.PEOPLE, State.STOP, facts={"names": (), "alone": True})
    assert worst_topic(replace(assessment, findings=(stop, *assessment.findings))) is Topic.PEOPLE
    assert set(topics_of(assessment)) >= {Topic.KIT, Topic.POWER, Topic.WEIGHT, Topic.PEOPLE}


@pytest.mark.parametrize("columns", [4, 2])
def test_the_board_takes_eight_tiles(styled, qtbot, columns: int) -> None:
    board = Board()
    qtbot.addWidget(board)
    board.columns(columns)
    board.show_tiles([TileWords(topic, topic.value, Mark.FINE, "fine", "1", ("", "")) for topic in ORDER])
    board.resize(800, 600)
    with qtbot.waitExposed(board):
        board.show()
    places = [tile.geometry() for tile in board.tiles.values()]
    assert len({place.left() for place in places}) == columns
    assert len({place.top() for place in places}) == 8 // columns
    assert not any(a.intersects(b) for a in places for b in places if a is not b)


def with_short(assessment: Assessment, *findings: Finding) -> Assessment:
    """The assessment with these findings about power alone."""
    return replace(assessment, findings=(*findings, *(f for f in assessment.findings if f.topic is not Topic.POWER)))


def short(assessment: Assessment, item: str, margin_h: float, *remedies: Remedy, state: State = State.LOOK) -> Finding:
    """What is said of a device, as if it went off too early in the likely case."""
    said = next(f for f in assessment.findings if f.code == "power.device" and item in f.items)
    facts = {**said.facts, "off_h_likely": 3.0, "short_h_likely": -margin_h}
    return replace(said, state=state, margin=margin_h, facts=facts, remedies=remedies)


def test_figure_and_act_of_the_power_tile_are_of_the_same_device(assessment: Assessment, names: dict[str, str]) -> None:
    phone, radio = (next(id_ for id_, name in names.items() if name == n) for n in ("Phone", "Handheld radio"))
    slight = short(assessment, phone, -0.2, Remedy("carry_warmer", (phone,)))
    worst = short(assessment, radio, -3.6, Remedy("draw_less", (radio,)), Remedy("start_full", (radio,)))
    words = tile_words(Topic.POWER, with_short(assessment, slight, worst), names)
    assert words.lines[0] == "Handheld radio, likely day"
    assert (words.act, words.remedy) == ("Charge full: Handheld radio", worst.remedies[1])


def test_a_power_tile_whose_device_has_no_act_opens_its_lanes(assessment: Assessment, names: dict[str, str]) -> None:
    phone, radio = (next(id_ for id_, name in names.items() if name == n) for n in ("Phone", "Handheld radio"))
    slight = short(assessment, phone, -0.2, Remedy("carry_warmer", (phone,)))
    worst = short(assessment, radio, -3.6, Remedy("draw_less", (radio,)))
    words = tile_words(Topic.POWER, with_short(assessment, slight, worst), names)
    assert (words.act, words.remedy) == ("Show the lanes", None)


def test_the_power_tile_shows_the_worst_of_its_own_state(assessment: Assessment, names: dict[str, str]) -> None:
    phone, radio = (next(id_ for id_, name in names.items() if name == n) for n in ("Phone", "Handheld radio"))
    stop = short(assessment, phone, -0.2, Remedy("start_full", (phone,)), state=State.STOP)
    words = tile_words(Topic.POWER, with_short(assessment, stop, short(assessment, radio, -3.6)), names)
    assert (words.state, words.lines[0], words.act) == ("stop", "Phone, likely day", "Charge full: Phone")


def test_a_swollen_bank_is_named_beside_what_it_would_have_fed(assessment: Assessment, names: dict[str, str]) -> None:
    radio, bank = (next(id_ for id_, name in names.items() if name == n) for n in ("Handheld radio", "Power bank"))
    found = with_short(assessment, short(assessment, radio, -3.6, state=State.STOP))
    found = replace(found, power=replace(found.power, swollen=(bank,)))
    assert tile_words(Topic.POWER, found, names).lines == (
        "Handheld radio, likely day",
        "Power bank swollen, not counted",
    )
