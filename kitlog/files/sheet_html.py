"""The sheet as one HTML file: for the phone without a network, and for paper. No script, nothing from outside."""

from datetime import datetime

from kitlog.files.sheet_html_marks import name, text
from kitlog.files.sheet_html_parts import Parts
from kitlog.files.sheet_html_style import style
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.wording.figures import clock_text, day_text
from kitlog.wording.findings import Names
from kitlog.wording.sheet_words import counts_line, days_of, what_and_where
from kitlog.wording.translate import _
from kitlog.wording.words import ALARMS_NOBODY, STANCE, first_upper

_NO_NETWORK = "default-src 'none'; style-src 'unsafe-inline'"


def sheet_html(
    assessment: Assessment, names: Names, library: Library, printed_at: datetime, language: str = "en"
) -> str:
    """The sheet of one outing.

    Args:
        assessment: of the outing.
        names: names of all items of the kit by id.
        library: for check lists and flight types.
        printed_at: when it is made, aware.
        language: language of its words, as in the ``lang`` attribute.
    """
    title = _("Sheet for {days}").format(days=days_of(assessment))
    return (
        f'<!DOCTYPE html>\n<html lang="{text(language)}">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{_NO_NETWORK}">\n'
        f"<title>{text(title)}</title>\n<style>{style(_(STANCE))}</style>\n</head>\n<body>\n<main>\n"
        f"{_header(assessment, library, title, printed_at)}\n"
        f"{_body(Parts(assessment, names, library))}\n{_footer()}\n"
        "</main>\n</body>\n</html>\n"
    )


def _header(assessment: Assessment, library: Library, title: str, printed_at: datetime) -> str:
    valid = _("valid for {days}; made {day}, {clock}").format(
        days=days_of(assessment), day=day_text(printed_at.date()), clock=clock_text(printed_at)
    )
    return (
        f"<header><h1>{text(title)}</h1>"
        f'<p class="counts">{text(first_upper(counts_line(assessment.counts)))}</p>'
        f"<p>{name(assessment.outing.name)}: {name(what_and_where(assessment, library))}</p>"
        f'<p class="quiet">{text(first_upper(valid))}</p></header>'
    )


def _body(parts: Parts) -> str:
    before = (parts.findings(), parts.questions(), parts.packing(), parts.charging())
    return "\n".join((*before, parts.launch(), parts.mass(), parts.people()))


def _footer() -> str:
    return f"<footer><p>{text(_(STANCE))}</p><p>{text(_(ALARMS_NOBODY))}</p></footer>"
