"""What is said of a file that cannot be read as a table: what happened or why, and what to do."""

from kitlog.wording.translate import N_

_SAVE_AS = N_("Open it in the program that made it and save the table as .xlsx, .ods or CSV.")

GRID = {
    "table.too_large": (N_("it has {bytes} bytes, more than {limit}"), N_("Check whether it is the right file.")),
    "table.empty": (N_("there is nothing in it"), N_("Check whether it is the right file.")),
    "table.too_many_rows": (
        N_("it has more than {limit} rows"),
        N_("Check whether it is the right file, or split it."),
    ),
    "table.too_many_columns": (
        N_("it has more than {limit} columns"),
        N_("Check whether it is the right file, or take out what is no list of kit."),
    ),
    "table.unpacked_too_large": (
        N_("it unpacks to more than {limit} bytes, or far more than a table does"),
        N_("Check whether it is the right file; copy the table alone into a new one."),
    ),
    "table.too_many_parts": (
        N_("it is packed from more than {limit} parts"),
        N_("Check whether it is the right file; copy the table alone into a new one."),
    ),
    "table.is_pdf": (N_("it is a PDF, no table"), _SAVE_AS),
    "table.is_picture": (
        N_("it is a picture, no table"),
        N_("Give kitlog the table itself: .xlsx, .ods, CSV, or pasted."),
    ),
    "table.is_database": (N_("it is a database, no table"), N_("Choose the table itself: .xlsx, .ods or CSV.")),
    "table.is_packed": (N_("it is a packed file, no table"), N_("Unpack it and choose the table in it.")),
    "table.is_document": (N_("it is a text document, no spreadsheet"), _SAVE_AS),
    "table.is_slides": (N_("it is a presentation or a drawing, no spreadsheet"), _SAVE_AS),
    "table.is_old_workbook": (N_("it is a workbook in the old .xls form"), _SAVE_AS),
    "table.is_binary_workbook": (N_("it is a workbook in the binary .xlsb form"), _SAVE_AS),
    "table.is_numbers": (N_("it is a .numbers spreadsheet"), N_("Export it as .xlsx or CSV.")),
    "table.is_locked": (
        N_("it is locked with a password"),
        N_("Save it without a password, or save the sheet as CSV."),
    ),
    "table.is_web_page": (N_("it is a web page, whatever its name says"), _SAVE_AS),
    "table.is_markup": (N_("it is XML of another kind"), _SAVE_AS),
    "table.is_json": (N_("it is JSON, no table"), N_("Choose the table itself: .xlsx, .ods or CSV.")),
    "table.not_text": (N_("it is neither text nor a workbook"), N_("Check whether it is the right file.")),
    "table.zero_bytes": (
        N_("it holds zero bytes, which no text does"),
        N_("Check whether it is the right file, or save it as CSV UTF-8."),
    ),
    "table.broken_utf8": (
        N_("its text is UTF-8 with broken letters in it"),
        N_("Mend the letters there, and save it as CSV UTF-8."),
    ),
    "table.broken_utf16": (N_("its text is UTF-16 and breaks off or is damaged"), N_("Save it as CSV UTF-8.")),
    "table.other_encoding": (
        N_("its letters are neither UTF-8 nor Windows-1252"),
        N_("Save it as CSV UTF-8; otherwise letters such as ä and é would come out wrong."),
    ),
    "table.line_too_long": (
        N_("a line is longer than {limit} characters"),
        N_("Check whether it is the right file."),
    ),
    "table.cell_too_long": (
        N_("a cell is longer than {limit} characters; a quotation mark may not be closed"),
        N_("Close the quotation mark, or shorten the cell."),
    ),
    "table.quote_not_closed": (
        N_("a cell begins with a quotation mark that is never closed, or text follows the closing one"),
        N_("Close it, or take it out; marks inside such a cell are doubled."),
    ),
    "table.malformed": (N_("the row cannot be parted into cells: {reason}"), N_("Save the table as CSV again.")),
    "table.no_such_sheet": (N_("it has no sheet “{value}”"), N_("There are: {known}.")),
    "table.empty_sheet": (N_("there is nothing in its sheet “{value}”"), N_("Name another sheet.")),
    "table.no_sheets": (
        N_("it is no workbook, so that it has no sheet “{value}”"),
        N_("Leave --sheet out, or choose the .xlsx or .ods file."),
    ),
    "table.broken_archive": (
        N_("the workbook is damaged and cannot be unpacked"),
        N_("Fetch or save it again."),
    ),
    "table.broken_workbook": (
        N_("the workbook is damaged or is not written as such files are ({reason})"),
        N_("Open it in a spreadsheet program and save it again, or save the sheet as CSV."),
    ),
}
