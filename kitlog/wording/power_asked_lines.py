"""The answers about the power of a plan as lines of a terminal."""

from collections.abc import Callable, Iterable, Iterator, Mapping

from kitlog.budget.power.changes.outcome import Outcome
from kitlog.budget.power.forecast import Forecast
from kitlog.budget.result import SEVERITY, State, Topic
from kitlog.packing.power_answers import PowerAnswers
from kitlog.packing.power_chance import chance_findings
from kitlog.packing.power_limits import BothCases
from kitlog.wording.chance_text import error_text, odds_text
from kitlog.wording.columns import WIDTH, paragraph, table
from kitlog.wording.figures import MINUS, hours_text, number_text, percent_text
from kitlog.wording.findings import say
from kitlog.wording.power_asked_text import (
    BANK_CAPTION,
    START_CAPTION,
    LimitWords,
    bank_words,
    grid_text,
    retrieve_words,
    start_words,
)
from kitlog.wording.power_lasting_text import charge_text
from kitlog.wording.power_lightest_text import lightest_text, trial_texts
from kitlog.wording.power_mending_text import (
    mend_words,
    not_simulated_text,
    planned_texts,
    unknown_text,
    vain_text,
    verdict_text,
)
from kitlog.wording.power_start_text import all_begin_full_text
from kitlog.wording.translate import _
from kitlog.wording.words import STANCE, first_upper

Names = Mapping[str, str]


def power_lines(found: PowerAnswers, names: Names) -> Iterator[str]:
    """Chances first, then what would help, then how far it goes."""
    yield from paragraph(_("Power of {outing}").format(outing=found.assessment.outing.name))
    if found.forecast is None:
        yield from paragraph(not_simulated_text(found.assessment.power))
    else:
        yield from _chances(found, found.forecast, names)
    if unknown := unknown_text(found.assessment.power, names):
        yield from paragraph(unknown)
    yield from _mending(found, names)
    yield from _limits(found, names)
    yield ""
    yield from paragraph(_(STANCE))


def _head(title: str) -> Iterator[str]:
    yield ""
    yield title
    yield "-" * WIDTH


def _chances(found: PowerAnswers, forecast: Forecast, names: Names) -> Iterator[str]:
    yield from _head(_("Will it last"))
    chances = chance_findings(found.assessment, forecast)
    states = {finding.state for finding in (*found.assessment.of(Topic.POWER), *chances)}
    worst = next((state for state in SEVERITY if state in states), State.FINE)
    yield from paragraph(_("Power, all findings together: {state}.").format(state=_(worst.value)))
    for finding in chances:
        said = say(finding, names)
        yield from paragraph(f"{said.title}: {_(finding.state.value)}. {first_upper(said.sentence)}.")
    yield from paragraph(_("All devices last: {odds}").format(odds=_odds(forecast)))
    yield ""
    heads = (_("device"), _("likely day"), _("high day"), _("lasts"), _("on at the end"))
    yield from table([heads, *_fares(found, forecast, names)], (False,) * 5)
    if assumed := all_begin_full_text(found.assessment, names):
        yield from paragraph(assumed)
    yield from _off(forecast, names)
    text = _("{days} days drawn with seed {seed}. ± is the standard error of drawing no more days than that.")
    yield from paragraph(text.format(days=number_text(found.days), seed=found.seed))


def _odds(forecast: Forecast) -> str:
    return f"{odds_text(forecast.all_last)} {error_text(forecast.all_last)}".strip()


def _fares(found: PowerAnswers, forecast: Forecast, names: Names) -> Iterator[tuple[str, ...]]:
    planned = found.mending.planned
    if planned is None or planned.high is None:
        return
    for name, device in forecast.devices.items():
        chances = (f"{odds_text(odds)} {error_text(odds)}".strip() for odds in (device.lasts, device.alive_at_end))
        yield (names.get(name, name), _fare(planned.likely, name), _fare(planned.high, name), *chances)


def _fare(outcome: Outcome, name: str) -> str:
    """Whether a device lasts, and by how much."""
    fare, more_h = outcome.fares[name], outcome.spare_h(name)
    if fare.first_off_h is not None:
        return _("off after {at}, {minus}{short}").format(
            at=hours_text(fare.first_off_h), minus=MINUS, short=hours_text(fare.short_h)
        )
    charge = "" if fare.soc_end is None else f", {percent_text(100 * fare.soc_end)}"
    keep = "" if fare.lasts else _(", under the {charge} to keep").format(charge=charge_text(fare.least_soc))
    more = "" if more_h is None else f", +{hours_text(more_h)}"
    return _("lasts") + charge + keep + more


def _off(forecast: Forecast, names: Names) -> Iterator[str]:
    hours = {
        name: (one.off.by_5_pct_h, one.off.by_50_pct_h, one.off.by_95_pct_h) for name, one in forecast.devices.items()
    }
    rows = [(names.get(name, name), *map(_by, three)) for name, three in hours.items() if three[0] is not None]
    if rows:
        yield ""
        yield from table([(_("off, of the days, by"), "5 %", "50 %", "95 %"), *rows], (False, True, True, True))


def _by(at_h: float | None) -> str:
    return _("still on") if at_h is None else hours_text(at_h)


def _mending(found: PowerAnswers, names: Names) -> Iterator[str]:
    mending = found.mending
    yield from _head(_("What would help"))
    for text in (*planned_texts(mending, names), verdict_text(mending)):
        if text:
            yield from paragraph(text)
    for one in mending.mends:
        if one.gains:
            said = mend_words(one, mending, names)
            yield from paragraph(f"> {said.what}")
            yield from (f"    {line.strip()}" for line in paragraph(said.said, 4))
    if vain := vain_text(mending, names):
        yield from paragraph(vain)


def _limits(found: PowerAnswers, names: Names) -> Iterator[str]:
    yield from _head(_("How far it goes"))
    keep = percent_text(found.keep_pct, 0 if found.keep_pct == round(found.keep_pct) else 1)
    text = _("Longest way home with the phone on and at {keep} or more")
    yield from _table(text.format(keep=keep), [retrieve_words(found.retrieve, found.assessment.outing.starts_at)])
    yield from _table(_(START_CAPTION), _each(found.limits.starts, start_words, names))
    yield from _table(_(BANK_CAPTION), _each(found.limits.banks, bank_words, names))
    if found.limits.starts or found.limits.banks:
        yield from paragraph(grid_text())
    yield ""
    yield from paragraph(_("Lightest of your banks that does"))
    simulated = found.assessment.power.planned is not None
    yield from paragraph(lightest_text(found.limits, names, simulated=simulated), 2)
    if found.limits.lightest is not None:
        yield from table([*trial_texts(found.limits.lightest, names)], (False, True, False), 2)


def _each(
    found: Iterable[BothCases], words: Callable[[BothCases, Names], LimitWords], names: Names
) -> list[LimitWords]:
    return [words(one, names) for one in found]


def _table(title: str, answers: list[LimitWords]) -> Iterator[str]:
    """Nothing where there is nothing to ask of."""
    if not answers:
        return
    yield ""
    yield from paragraph(title)
    rows = [(one.subject, one.likely, one.high, one.sure) for one in answers if not one.why_not]
    if rows:
        yield from table([("", _("likely day"), _("high day"), _("sure")), *rows], (False,) * 4, 2)
    for one in answers:
        if said := one.spoken if one.why_not else one.note:
            yield from paragraph(said, 2)
