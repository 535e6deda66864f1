"""The sheet of an outing as a PDF file: A4 or US letter, vectors and letters, no picture of them."""

from contextlib import suppress
from datetime import datetime

from kitlog.budget.power.forecast import Forecast
from kitlog.desktop.outing_page.chance_words import drawing_text
from kitlog.desktop.outing_page.power_said import power_sentences
from kitlog.desktop.outing_page.power_words import power_picture
from kitlog.desktop.outing_page.weight_words import weight_picture
from kitlog.desktop.pdf_writing import Paper, written
from kitlog.fault import InputFault
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_chance import chance_findings
from kitlog.packing.power_question import day_forecasts
from kitlog.paint.sheet_paint import Sheet, paint_sheet
from kitlog.paint.sheet_pictures import SheetPictures
from kitlog.wording.findings import Names
from kitlog.wording.sheet_content import sheet_content, told


def sheet_pdf(
    assessment: Assessment,
    names: Names,
    library: Library,
    made_at: datetime,
    *,
    paper: Paper = Paper.A4,
    forecast: Forecast | None = None,
) -> bytes:
    """The sheet of one outing; no window is needed, and no screen.

    Args:
        assessment: of the outing.
        names: names of all items of the kit by id.
        library: for check lists and flight types.
        made_at: when it is made, aware.
        paper: what it is for.
        forecast: the days drawn for this assessment, if there are any: they are shown as the fan.

    Raises:
        SystemFault: ``sheet.no_font``.
    """
    sheet = Sheet(sheet_content(assessment, names, library, made_at), sheet_pictures(assessment, names, forecast))
    title = f"{sheet.content.title} \u00b7 {sheet.content.name}"
    return written(title, paper, lambda writer, font: paint_sheet(writer, sheet, font))


def drawn_days(assessment: Assessment, library: Library) -> Forecast | None:
    """The days drawn for an assessment, all of them: a second or less; None where none can be drawn."""
    forecast = None
    with suppress(InputFault):
        for forecast in day_forecasts(assessment, library) or ():  # noqa: B007  # the last one is the final one
            pass
    return forecast


def sheet_pictures(assessment: Assessment, names: Names, forecast: Forecast | None) -> SheetPictures:
    """The pictures of the window, and what they say."""
    chance = () if forecast is None else chance_findings(assessment, forecast)
    return SheetPictures(
        chance=tuple(told(finding, names) for finding in chance),
        drawn="" if forecast is None else drawing_text(forecast),
        power=power_picture(assessment, names, forecast),
        power_said=power_sentences(assessment, names, forecast),
        weight=weight_picture(assessment, names),
    )
