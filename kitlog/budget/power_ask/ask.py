"""JSON in, JSON out: what `kitlog budget power FILE` prints."""

from functools import singledispatch
from typing import Any

from kitlog.budget.charging.evening import Evening
from kitlog.budget.charging.remedies import remedies as night_remedies
from kitlog.budget.charging.storage import Storing, for_storage
from kitlog.budget.charging.tonight import charge_tonight
from kitlog.budget.power.chance import chance
from kitlog.budget.power.changes.ask import check_changes, weighed_changes
from kitlog.budget.power.changes.odds import odds, planned_odds
from kitlog.budget.power.changes.ranking import rank_by_chance
from kitlog.budget.power.day import Day
from kitlog.budget.power.forecast import forecast
from kitlog.budget.power.forecast_question import ForecastQuery
from kitlog.budget.power.lightest_bank import LightestBank, lightest_bank
from kitlog.budget.power.longest_phase import longest_phase
from kitlog.budget.power.lowest_start import lowest_start
from kitlog.budget.power.question import Chance, LongestPhase, LowestStart, SmallestBank
from kitlog.budget.power.simulate import simulate
from kitlog.budget.power.smallest_bank import smallest_bank
from kitlog.budget.power_ask import answers
from kitlog.budget.power_ask.answer_json import answer_json
from kitlog.budget.power_ask.reading import Times, read_request
from kitlog.budget.power_ask.request import ChangesAsked, Request


def ask(text: str) -> answers.Answer:
    """Answer one JSON object (`request.Request`).

    Raises:
        InputFault: what is wrong with it; codes in `kitlog.budget.power.checks` and `charging.check_evening`.
    """
    request = read_request(text)
    if isinstance(request, Evening):
        planned = charge_tonight(request)
        return answers.EveningFound(planned, night_remedies(request, planned))
    if isinstance(request, Storing):
        return answers.StorageFound(for_storage(request))
    return _answer(request.asked, request.day)


def answer(text: str) -> dict[str, Any]:
    """The answer with the keys of the JSON.

    Raises:
        InputFault: as `ask`.
    """
    return answer_json(ask(text))


def schema() -> dict[str, Any]:
    """JSON Schema of what `ask` reads."""
    return Request.model_json_schema(by_alias=True)


@singledispatch
def _answer(asked: object, _day: Day) -> answers.Answer:
    raise TypeError(asked)


@_answer.register
def _(asked: Times, day: Day) -> answers.Answer:
    return answers.DayCourse(day, asked.sample_h, simulate(day, asked.sample_h))


@_answer.register
def _(query: LongestPhase, day: Day) -> answers.Answer:
    return answers.LongestPhaseFound(query, longest_phase(day, query))


@_answer.register
def _(query: SmallestBank, day: Day) -> answers.Answer:
    energy_wh = smallest_bank(day, query)
    eff = next(bank.eff for bank in day.banks if bank.id == query.bank)
    return answers.SmallestBankFound(query, eff, energy_wh)


@_answer.register
def _(query: LowestStart, day: Day) -> answers.Answer:
    return answers.LowestStartFound(query, lowest_start(day, query))


@_answer.register
def _(query: LightestBank, day: Day) -> answers.Answer:
    return answers.LightestBankFound(query, lightest_bank(day, query))


@_answer.register
def _(query: Chance, day: Day) -> answers.Answer:
    return answers.ChanceFound(query, chance(day, query))


@_answer.register
def _(query: ForecastQuery, day: Day) -> answers.Answer:
    return answers.ForecastFound(query, forecast(day, query))


@_answer.register
def _(query: ChangesAsked, day: Day) -> answers.Answer:
    if query.chance is None:
        return answers.ChangesFound(*weighed_changes(day, query), ())
    check_changes(day, query)
    as_planned = planned_odds(day, query.chance, query.targets, query.chance.n)
    planned, weighed = weighed_changes(day, query, as_planned.seldom)
    gains = odds(day, [one.candidate for one in weighed], query.chance, query.targets, query.chance.n)
    best = sorted(zip(weighed, gains, strict=True), key=lambda pair: rank_by_chance(*pair))
    return answers.ChangesFound(planned, tuple(one for one, _ in best), tuple(gain for _, gain in best), as_planned)
