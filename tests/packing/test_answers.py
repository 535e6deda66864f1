from datetime import datetime, timedelta, timezone

import pytest
from scenario import EVENING, LIBRARY, O1, O3, answers, changed, hours_before, judged, missing, of_code
from small_kit import NEW, outing, plus

from kitlog.budget.result import State
from kitlog.outing.needs import Strength
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Question

DAY_QUESTIONS = {check.id for check in LIBRARY.checks if check.question}


def question(outing: Outing, check: str, now: datetime = EVENING) -> Question:
    (found,) = [q for q in judged(outing, now=now).questions if q.id == check]
    return found


def answered(check: str, value: str, at: datetime, *, outing: Outing = O1) -> Outing:
    return answers(outing, [(check, value)], at)


class TestQuestionsOfTheDay:
    def test_weather_pilot_and_notices_are_asked(self) -> None:
        assert {"am.weather", "am.pilot", "am.airspace"} == DAY_QUESTIONS
        asked = [q for q in judged(O1).questions if q.kind == "day"]
        assert {q.id for q in asked} == DAY_QUESTIONS
        assert not any(q.answered for q in asked)

    def test_unanswered_they_are_counted_apart_from_findings(self) -> None:
        before, after = judged(O1), judged(answered("am.weather", "quiet", EVENING))
        assert (before.counts.open_questions, after.counts.open_questions) == (3, 2)
        assert before.counts.not_known == after.counts.not_known

    @pytest.mark.parametrize(("hours", "stands"), [(0, True), (5.99, True), (6, True), (6.01, False), (20, False)])
    def test_answers_expire_after_six_hours(self, hours: float, stands: bool) -> None:
        said = question(answered("am.weather", "quiet", hours_before(hours)), "am.weather")
        assert said.answered is stands
        assert said.expired is not stands
        assert (said.value, said.at) == ("quiet", hours_before(hours))

    def test_hours_are_hours_across_time_zones(self) -> None:
        at = hours_before(5.5).astimezone(timezone(timedelta(hours=-9)))
        assert question(answered("am.weather", "quiet", at), "am.weather").answered

    def test_the_newest_answer_counts(self) -> None:
        at = [{"check": "am.pilot", "value": value, "at": hours_before(h)} for value, h in (("tired", 1), ("well", 3))]
        assert question(changed(O1, answers=at), "am.pilot").value == "tired"

    def test_an_answer_from_later_is_not_known_yet(self) -> None:
        assert not question(answered("am.pilot", "well", hours_before(-1)), "am.pilot").answered

    @pytest.mark.parametrize("blank", ["", "  "])
    def test_a_blank_answer_is_none(self, blank: str) -> None:
        at = [{"check": "am.pilot", "value": v, "at": hours_before(h)} for v, h in (("well", 2), (blank, 1))]
        assert not question(changed(O1, answers=at), "am.pilot").answered


class TestOpenQuestions:
    def test_an_open_condition_is_a_question(self) -> None:
        left_open = judged(changed(O1, conditions={}))
        asked = {q.id for q in left_open.questions if q.kind == "condition"}
        assert asked == {f"condition.{name}" for name in ("water", "no signal", "forest", "airspace")}
        assert left_open.counts.open_questions == 3 + 4

    def test_an_open_choice_of_the_set_is_a_question(self) -> None:
        unchosen = changed(O1, set={}, pinned=[], left_out=[])
        asked = [q.id for q in judged(unchosen).questions if q.kind == "set"]
        assert asked == ["set.wing", "set.harness", "set.reserve"]


class TestChecksOfNeeds:
    def test_unanswered_is_not_known(self) -> None:
        (finding,) = of_code(judged(O1), "check.not_answered", "medicine")
        assert finding.state is State.NOT_KNOWN

    def test_unanswered_comfort_is_no_finding(self) -> None:
        assessment = judged(outing(flight_types=["coast"]), plus(), NEW)
        rinse = next(one for one in assessment.asked if one.need.id == "rinse")
        assert (rinse.strength, rinse.need.check) == (Strength.COMFORT, "plan.rinse")
        assert not of_code(assessment, "check.not_answered", "rinse")
        assert of_code(assessment, "check.not_answered", "tide")

    @pytest.mark.parametrize("value", ["yes", "does not apply", "bus at 18:40"])
    def test_answered_is_met(self, value: str) -> None:
        assessment = judged(answered("medicine", value, EVENING))
        assert not of_code(assessment, "check.not_answered", "medicine")
        assert missing(assessment, "medicine") is None

    @pytest.mark.parametrize("value", ["no", " No ", "not done"])
    def test_answered_with_no_is_missing(self, value: str) -> None:
        found = missing(judged(answered("am.retrieve", value, EVENING)), "retrieve plan")
        assert found is not None
        assert (found.state, found.reason) == (State.LOOK, "answered no")
        essential = missing(judged(answered("plan.radio_water", value, EVENING, outing=O3)), "waterproof radio")
        assert essential is not None
        assert essential.state is State.STOP

    @pytest.mark.parametrize("blank", ["", " "])
    def test_a_blank_answer_leaves_it_not_known(self, blank: str) -> None:
        assert of_code(judged(answered("medicine", blank, EVENING)), "check.not_answered", "medicine")

    def test_what_is_planned_or_packed_stays_answered(self) -> None:
        week_ago = hours_before(24 * 7)
        assert not of_code(judged(answered("medicine", "packed", week_ago)), "check.not_answered", "medicine")

    def test_an_answer_about_the_morning_expires(self) -> None:
        for hours, expected in ((5, 0), (7, 1)):
            assessment = judged(answered("am.retrieve", "bus at 18:40", hours_before(hours)))
            assert len(of_code(assessment, "check.not_answered", "retrieve plan")) == expected

    def test_an_answer_about_the_launch_is_void_after_midnight(self) -> None:
        """Midnight at the site: 22:00 UTC in summer in Italy."""
        evening, night = datetime(2026, 9, 4, 21, 0, tzinfo=EVENING.tzinfo), timedelta(hours=2)
        course = answered("launch.loose", "nothing loose", evening, outing=O3)
        for now, expected in ((evening + night / 4, 0), (evening + night, 1)):
            assert len(of_code(judged(course, now=now), "check.not_answered", "nothing loose")) == expected
