"""Workbooks for the tests: written by libraries, and by hand for what no library writes."""

import io
import zipfile

from openpyxl import Workbook

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
RELATED = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_TYPES = (
    '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
    '<Default Extension="xml" ContentType="application/xml"/>'
    '<Override PartName="/xl/workbook.xml"'
    ' ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>'
)
_SPACES = " ".join(
    f'xmlns:{short}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"'
    for short, name in {
        "office": "office", "table": "table", "text": "text", "style": "style", "config": "config",
    }.items()
)  # fmt: skip


def zipped(parts, compression=zipfile.ZIP_DEFLATED):
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", compression) as packed:
        for name, text in parts.items():
            packed.writestr(name, text)
    return target.getvalue()


def saved(book):
    target = io.BytesIO()
    book.save(target)
    return target.getvalue()


def xlsx(*rows, formats=None):
    """A workbook of one sheet; `formats` gives number formats by the name of the cell."""
    book = Workbook()
    for row in rows:
        book.active.append(row)
    for name, code in (formats or {}).items():
        book.active[name].number_format = code
    return saved(book)


def raw_xlsx(sheet, main=MAIN, related=RELATED):
    """A workbook whose one sheet holds this XML."""
    return zipped(xlsx_parts(sheet, main, related))


def xlsx_parts(sheet, main=MAIN, related=RELATED):
    links = "http://schemas.openxmlformats.org/package/2006/relationships"
    return {
        "[Content_Types].xml": _TYPES,
        "xl/workbook.xml": (
            f'<workbook xmlns="{main}" xmlns:r="{related}"><sheets><sheet name="Kit" sheetId="1" r:id="rId1"/></sheets></workbook>'
        ),
        "xl/_rels/workbook.xml.rels": (
            f'<Relationships xmlns="{links}"><Relationship Id="rId1" Type="{related}/worksheet"'
            ' Target="worksheets/sheet1.xml"/></Relationships>'
        ),
        "xl/worksheets/sheet1.xml": f'<worksheet xmlns="{main}">{sheet}</worksheet>',
    }


def sheet_data(*rows):
    """Rows of XML as the data of a sheet."""
    return "<sheetData>" + "".join(rows) + "</sheetData>"


def ods_parts(body, styles="", active=None):
    kind = "application/vnd.oasis.opendocument.spreadsheet"
    parts = {
        "mimetype": kind,
        "content.xml": (
            f'<?xml version="1.0" encoding="UTF-8"?><office:document-content {_SPACES}>'
            f"<office:automatic-styles>{styles}</office:automatic-styles>"
            f"<office:body><office:spreadsheet>{body}</office:spreadsheet></office:body></office:document-content>"
        ),
    }
    if active:
        parts["settings.xml"] = (
            f"<office:document-settings {_SPACES}><office:settings><config:config-item"
            f' config:name="ActiveTable">{active}</config:config-item></office:settings></office:document-settings>'
        )
    return parts


def ods(body, **options):
    """A document whose spreadsheet holds this XML."""
    return zipped(ods_parts(body, **options))


def ods_table(*rows, name="Kit", more=""):
    """Rows of XML as a table; each row is a sequence of cells in XML."""
    inside = "".join(f"<table:table-row>{''.join(row)}</table:table-row>" for row in rows)
    return f'<table:table table:name="{name}" {more}>{inside}</table:table>'


def text_cell(text, more=""):
    return f'<table:table-cell office:value-type="string" {more}><text:p>{text}</text:p></table:table-cell>'


def number_cell(value, shown, kind="float", more=""):
    given = f'office:value-type="{kind}" office:value="{value}" {more}'
    return f"<table:table-cell {given}><text:p>{shown}</text:p></table:table-cell>"


def day_cell(day, shown):
    given = f'office:value-type="date" office:date-value="{day}"'
    return f"<table:table-cell {given}><text:p>{shown}</text:p></table:table-cell>"
