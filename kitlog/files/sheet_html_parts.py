"""The parts of the HTML sheet, in the order in which they stand on it."""

from kitlog.budget.result import Finding
from kitlog.files.sheet_html_marks import COLUMNS, Ids, heading, listed, name, quiet, section, state, text
from kitlog.kit.kinds import Zone
from kitlog.outing.library import Library
from kitlog.outing.outing import OwnLine, Person
from kitlog.packing.assessment import Assessment, ListLine, Question
from kitlog.packing.charging import Charge, charges
from kitlog.packing.launch_list import LaunchCheck, launch_list
from kitlog.packing.stowing import Stowed, stowed
from kitlog.wording.figures import day_text, mass_text, moment_text
from kitlog.wording.findings import Names, say
from kitlog.wording.lines import needs_by_id, why_text
from kitlog.wording.remedies import remedy_text
from kitlog.wording.sheet_words import (
    charge_text,
    closed_text,
    group_sum,
    line_name,
    mass_rows,
    own_why,
    question_line,
    sharpen_text,
    stop_of,
    told_findings,
    zone_title,
)
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word


class Parts:
    """Writes the parts of one sheet.

    Args:
        assessment: of one outing.
        names: names of all items of the kit by id.
        library: for check lists.
    """

    def __init__(self, assessment: Assessment, names: Names, library: Library) -> None:
        self._assessment = assessment
        self._names = names
        self._library = library
        self._ids = Ids()

    def findings(self) -> str:
        """Findings worst first; what is fine is not listed."""
        told = listed(map(self._finding, told_findings(self._assessment)), COLUMNS)
        return section([heading(2, _("Findings, worst first")), told]) if told else ""

    def _finding(self, finding: Finding) -> str:
        said = say(finding, self._names)
        figure = f": {text(said.figure)}" if said.figure else ""
        remedies = "".join(
            f'<span class="why remedy" dir="auto">{text(remedy_text(remedy, self._names))}</span>'
            for remedy in finding.remedies
        )
        return (
            f'<li class="finding">{state(finding.state.value)}<div><span class="name">{name(first_upper(said.title))}'
            f"{figure}</span>{quiet(said.sentence)}{quiet(closed_text(finding))}{remedies}</div></li>"
        )

    def questions(self) -> str:
        """Questions to the pilot, each with a line to write on until it is answered."""
        asked = listed(map(self._question, self._assessment.questions), COLUMNS)
        return section([heading(2, _("Open questions"), _("answers hold for 6 hours")), asked]) if asked else ""

    def _question(self, question: Question) -> str:
        words = text(question_line(question, self._library))
        if question.answered and question.at is not None:
            answer = _("{value}, at {clock}").format(value=question.value, clock=moment_text(question.at))
            return f"<li>{words}{quiet(answer)}</li>"
        if question.kind != "day":
            return f'<li class="ask">{self._ids.field(words)}</li>'
        return f'<li class="ask timed">{self._ids.field(words)}{self._ids.field(text(_("at what time")))}</li>'

    def packing(self) -> str:
        """The list by the zone in which it is stowed."""
        groups = stowed(self._assessment)
        zones = "".join(self._zone(group) for group in groups)
        title = heading(2, _("Packing list"), _("by the zone in which it is stowed"))
        return section([title, f'<div class="columns">{zones}</div>']) if zones else ""

    def _zone(self, group: Stowed) -> str:
        remark = group_sum(group)
        if group.zone is Zone.LEFT_IN_CAR:
            remark = _("{sum}; counted nowhere").format(sum=remark)
        lines = [*map(self._line, group.lines), *map(self._own, group.own)]
        return section([heading(3, zone_title(group), remark), listed(lines)])

    def _line(self, line: ListLine) -> str:
        stop = stop_of(line, self._assessment, self._names)
        mark = (
            f"{state('stop')}{quiet(stop)}"
            if stop
            else quiet(why_text(line, needs_by_id(self._assessment), self._names))
        )
        return self._ids.tick(f'<span class="name">{name(line_name(line))}</span>{mark}', mass_text(line.mass_g))

    def _own(self, own: OwnLine) -> str:
        return self._ids.tick(f'<span class="name">{name(own.text)}</span>{quiet(own_why(own))}', mass_text(own.mass_g))

    def charging(self) -> str:
        """What has to be full before leaving."""
        boxes = listed(map(self._charge, charges(self._assessment)), COLUMNS)
        title = heading(2, _("Full before leaving"), _("at the end of the day: likely / high"))
        return section([title, boxes], "whole") if boxes else ""

    def _charge(self, charge: Charge) -> str:
        words = charge.item.name if charge.n == 1 else f"{charge.item.name}, {charge.n}"
        return self._ids.tick(f'<span class="name">{name(words)}</span>{quiet(charge_text(charge))}')

    def launch(self) -> str:
        """The checks at launch, in order and never ticked beforehand."""
        boxes = listed(map(self._check, launch_list(self._assessment, self._library)), "<ol>")
        title = heading(2, _("At launch"), _("read before, in this order; any delay: again"))
        return section([title, boxes], "whole") if boxes else ""

    def _check(self, launch: LaunchCheck) -> str:
        words = text(_(launch.check.text))
        return self._ids.tick(f'<span class="name">{words}</span>' if launch.critical else words)

    def mass(self) -> str:
        """Take-off mass and what narrows it."""
        rows = "".join(
            f'<tr><th scope="row">{text(what)}</th><td class="mass">{text(figure)}</td>'
            f'<td dir="auto">{text(remark)}</td></tr>'
            for what, figure, remark in mass_rows(self._assessment, self._names)
        )
        title = heading(2, _("Take-off mass"), _("everything that leaves the ground"))
        return section([title, f"<table>{rows}</table>", quiet(sharpen_text(self._assessment, self._names))], "whole")

    def people(self) -> str:
        """Who knows, who flies along, who fetches."""
        rows = "".join(map(_person, self._assessment.outing.people))
        title = heading(2, _("People"))
        nobody = f"<p>{text(_('Nobody is named.'))}</p>"
        return section([title, f"<table>{rows}</table>" if rows else nobody], "whole")


def _person(person: Person) -> str:
    told = _("not told yet")
    if person.told_at is not None:
        told = _("told {day}, {clock}").format(
            day=day_text(person.told_at.astimezone().date()), clock=moment_text(person.told_at)
        )
    phone = f" {text(person.phone)}" if person.phone else ""
    return (
        f'<tr><th scope="row">{name(person.name)}{phone}</th><td>{text(word(person.role.value))}</td>'
        f"<td>{text(told)}</td></tr>"
    )
