"""The parts of the HTML sheet, in the order in which they stand on it."""

from kitlog.files.sheet_html_marks import COLUMNS, Ids, heading, listed, name, quiet, section, state, text
from kitlog.wording.sheet_content import (
    AskedQuestion,
    Known,
    LaunchLine,
    PackedLine,
    PackedZone,
    SheetContent,
    ToldFinding,
)
from kitlog.wording.sheet_words import head
from kitlog.wording.translate import _


class Parts:
    """Writes the parts of one sheet.

    Args:
        content: its words.
    """

    def __init__(self, content: SheetContent) -> None:
        self._content = content
        self._ids = Ids()

    def findings(self) -> str:
        """Findings worst first; what is fine is not listed."""
        told = listed(map(_finding, self._content.findings), COLUMNS)
        return section([_head("findings"), told]) if told else ""

    def questions(self) -> str:
        """Questions to the pilot, each with a line to write on until it is answered."""
        asked = listed(map(self._question, self._content.questions), COLUMNS)
        return section([_head("questions"), asked]) if asked else ""

    def _question(self, question: AskedQuestion) -> str:
        words = text(question.words)
        if question.answer:
            return f"<li>{words}{quiet(question.answer)}</li>"
        if not question.timed:
            return f'<li class="ask">{self._ids.field(words)}</li>'
        return f'<li class="ask timed">{self._ids.field(words)}{self._ids.field(text(_("at what time")))}</li>'

    def packing(self) -> str:
        """The list by the zone in which it is stowed."""
        zones = "".join(map(self._zone, self._content.zones))
        return section([_head("list"), f'<div class="columns">{zones}</div>']) if zones else ""

    def _zone(self, zone: PackedZone) -> str:
        return section([heading(3, zone.title, zone.remark), listed(map(self._line, zone.lines))])

    def _line(self, line: PackedLine) -> str:
        mark = f"{state('stop')}{quiet(line.stop)}" if line.stop else quiet(line.why)
        return self._ids.tick(f'<span class="name">{name(line.name)}</span>{mark}', line.mass)

    def charging(self) -> str:
        """What has to be full before leaving."""
        boxes = listed((self._charge(*charge) for charge in self._content.charging), COLUMNS)
        return section([_head("charging"), boxes], "whole") if boxes else ""

    def _charge(self, what: str, lasts: str) -> str:
        return self._ids.tick(f'<span class="name">{name(what)}</span>{quiet(lasts)}')

    def launch(self) -> str:
        """The checks at launch, in order and never ticked beforehand."""
        boxes = listed(map(self._check, self._content.launch), "<ol>")
        return section([_head("launch"), boxes], "whole") if boxes else ""

    def _check(self, launch: LaunchLine) -> str:
        words = text(launch.words)
        return self._ids.tick(f'<span class="name">{words}</span>' if launch.critical else words)

    def mass(self) -> str:
        """Take-off mass and what narrows it."""
        rows = "".join(
            f'<tr><th scope="row">{text(what)}</th><td class="mass">{text(figure)}</td>'
            f'<td dir="auto">{text(remark)}</td></tr>'
            for what, figure, remark in self._content.masses
        )
        return section([_head("mass"), f"<table>{rows}</table>", quiet(self._content.sharpen)], "whole")

    def people(self) -> str:
        """Who knows, who flies along, who fetches."""
        rows = "".join(map(_person, self._content.people))
        nobody = f"<p>{text(_('Nobody is named.'))}</p>"
        return section([_head("people"), f"<table>{rows}</table>" if rows else nobody], "whole")


def _head(part: str) -> str:
    return heading(2, *head(part))


def _finding(finding: ToldFinding) -> str:
    figure = f": {text(finding.figure)}" if finding.figure else ""
    remedies = "".join(f'<span class="why remedy" dir="auto">{text(remedy)}</span>' for remedy in finding.remedies)
    return (
        f'<li class="finding">{state(finding.state)}<div><span class="name">{name(finding.title)}{figure}</span>'
        f"{quiet(finding.sentence)}{quiet(finding.closed)}{remedies}</div></li>"
    )


def _person(person: Known) -> str:
    phone = f" {text(person.phone)}" if person.phone else ""
    return (
        f'<tr><th scope="row">{name(person.name)}{phone}</th><td>{text(person.role)}</td>'
        f"<td>{text(person.told)}</td></tr>"
    )
