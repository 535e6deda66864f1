"""Writes the workbooks of the corpus: ``python tests/corpus/make_workbooks.py``.

The .xlsx files are made with openpyxl, to which the results of formulas are added as a spreadsheet stores them; the
.ods files are written out as a spreadsheet writes them (OASIS OpenDocument 1.3, parts 2 and 3), without any library,
so that no reader is tested with its own writer. What the sheets mean stands in the truth.json beside each.
"""

import io
import re
import zipfile
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path
from xml.sax.saxutils import escape

HERE = Path(__file__).parent
_STAMP = (2025, 3, 14, 9, 30, 0)
_ANY_TIME = re.compile(rb">[0-9-]+T[0-9:]+Z<")


@dataclass(frozen=True)
class Shown:
    """A number, day or formula with its number format; `shown` is what an .ods file says beside the value."""

    value: float | date
    format: str = "General"
    formula: str = ""
    shown: str = ""


@dataclass(frozen=True)
class Sheet:
    """One sheet: rows of cells (None = empty), merged ranges, letters of hidden columns, widths by letter."""

    name: str
    rows: list[list[object]]
    merged: tuple[str, ...] = ()
    hidden: tuple[str, ...] = ()
    widths: tuple[tuple[str, int], ...] = ()
    bold: tuple[int, ...] = ()


def write_xlsx(path: Path, sheets: list[Sheet], active: int = 0) -> None:
    """A workbook with the results of its formulas."""
    from openpyxl import Workbook

    book = Workbook()
    book.remove(book.active)
    for sheet in sheets:
        _fill(book.create_sheet(sheet.name), sheet)
    book.active = active
    raw = io.BytesIO()
    book.save(raw)
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(_with_results(raw, sheets))


def _fill(page: object, sheet: Sheet) -> None:
    from openpyxl.styles import Font

    for at, row in enumerate(sheet.rows, 1):
        for column, content in enumerate(row, 1):
            cell = page.cell(at, column)
            if isinstance(content, Shown):
                cell.value = f"={content.formula}" if content.formula else content.value
                cell.number_format = content.format
            else:
                cell.value = content
            if at in sheet.bold:
                cell.font = Font(bold=True)
    for merged in sheet.merged:
        page.merge_cells(merged)
    for letter in sheet.hidden:
        page.column_dimensions[letter].hidden = True
    for letter, width in sheet.widths:
        page.column_dimensions[letter].width = width


def _with_results(raw: io.BytesIO, sheets: list[Sheet]) -> bytes:
    """The same archive with the value of each formula beside it, and one time stamp for all parts."""
    done = io.BytesIO()
    with zipfile.ZipFile(raw) as old, zipfile.ZipFile(done, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            data = old.read(name)
            number = re.fullmatch(r"xl/worksheets/sheet(\d+)\.xml", name)
            if number:
                data = _results_in(data.decode(), sheets[int(number[1]) - 1]).encode()
            if name == "docProps/core.xml":
                data = _ANY_TIME.sub(f">{datetime(*_STAMP, tzinfo=UTC):%Y-%m-%dT%H:%M:%SZ}<".encode(), data)
            new.writestr(zipfile.ZipInfo(name, _STAMP), data, zipfile.ZIP_DEFLATED)
    return done.getvalue()


def _results_in(xml: str, sheet: Sheet) -> str:
    def result(match: re.Match[str]) -> str:
        column, row = ord(match[2]) - ord("A"), int(match[3]) - 1
        return f"{match[1]}<v>{sheet.rows[row][column].value}</v>"

    return re.sub(r'(<c r="([A-Z])(\d+)"[^>]*><f>[^<]*</f>)<v\s*(?:/>|></v>)', result, xml)


_OFFICE = "urn:oasis:names:tc:opendocument:xmlns:"
_SPACES = " ".join(
    f'xmlns:{short}="{_OFFICE}{long}:1.0"'
    for short, long in [
        ("office", "office"), ("table", "table"), ("text", "text"), ("style", "style"), ("number", "datastyle"),
        ("fo", "xsl-fo-compatible"), ("manifest", "manifest"),
    ]
)  # fmt: skip
_STYLES = {
    '0" g"': '<number:number-style style:name="N{n}"><number:number number:decimal-places="0" number:min-integer-digits="1"/><number:text> g</number:text></number:number-style>',
    '0.00" kg"': '<number:number-style style:name="N{n}"><number:number number:decimal-places="2" number:min-integer-digits="1"/><number:text> kg</number:text></number:number-style>',
    "0.00": '<number:number-style style:name="N{n}"><number:number number:decimal-places="2" number:min-integer-digits="1"/></number:number-style>',
    "0%": '<number:percentage-style style:name="N{n}"><number:number number:decimal-places="0" number:min-integer-digits="1"/><number:text>%</number:text></number:percentage-style>',
    "dd/mm/yyyy": '<number:date-style style:name="N{n}"><number:day number:style="long"/><number:text>/</number:text><number:month number:style="long"/><number:text>/</number:text><number:year number:style="long"/></number:date-style>',
    "dd.mm.yyyy": '<number:date-style style:name="N{n}"><number:day number:style="long"/><number:text>.</number:text><number:month number:style="long"/><number:text>.</number:text><number:year number:style="long"/></number:date-style>',
}
_MIMETYPE = "application/vnd.oasis.opendocument.spreadsheet"


def write_ods(path: Path, sheets: list[Sheet]) -> None:
    """A workbook as OpenDocument: values in attributes, what is shown in text, empty cells and rows repeated."""
    names = {form: f"ce{n}" for n, form in enumerate(_STYLES, 1)}
    styles = "".join(
        xml.format(n=100 + n)
        + f'<style:style style:name="{names[form]}" style:family="table-cell" style:data-style-name="N{100 + n}"/>'
        for n, (form, xml) in enumerate(_STYLES.items(), 1)
    )
    body = "".join(_table(sheet, names) for sheet in sheets)
    content = (
        f'<?xml version="1.0" encoding="UTF-8"?><office:document-content {_SPACES} office:version="1.3">'
        f"<office:automatic-styles>{styles}</office:automatic-styles><office:body><office:spreadsheet>{body}"
        "</office:spreadsheet></office:body></office:document-content>"
    )
    manifest = (
        f'<?xml version="1.0" encoding="UTF-8"?><manifest:manifest {_SPACES} manifest:version="1.3">'
        f'<manifest:file-entry manifest:full-path="/" manifest:version="1.3" manifest:media-type="{_MIMETYPE}"/>'
        '<manifest:file-entry manifest:full-path="content.xml" manifest:media-type="text/xml"/></manifest:manifest>'
    )
    path.parent.mkdir(exist_ok=True)
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr(zipfile.ZipInfo("mimetype", _STAMP), _MIMETYPE)
        for name, text in (("content.xml", content), ("META-INF/manifest.xml", manifest)):
            archive.writestr(zipfile.ZipInfo(name, _STAMP), text, zipfile.ZIP_DEFLATED)


def _table(sheet: Sheet, names: dict[str, str]) -> str:
    width = max(map(len, sheet.rows))
    hidden = ' table:visibility="collapse"'
    columns = "".join(f"<table:table-column{hidden * (chr(65 + at) in sheet.hidden)}/>" for at in range(width))
    spans = {merged.split(":")[0]: merged.split(":")[1] for merged in sheet.merged}
    rows = "".join(_row(at, row, width, spans, names) for at, row in enumerate(sheet.rows, 1))
    return (
        f'<table:table table:name="{escape(sheet.name)}">{columns}'
        f'<table:table-column table:number-columns-repeated="{16384 - width}"/>{rows}'
        f'<table:table-row table:number-rows-repeated="{1048576 - len(sheet.rows)}">'
        '<table:table-cell table:number-columns-repeated="16384"/></table:table-row></table:table>'
    )


def _row(at: int, row: list[object], width: int, spans: dict[str, str], names: dict[str, str]) -> str:
    cells, covered = "", 0
    for column in range(width):
        place = f"{chr(65 + column)}{at}"
        content = row[column] if column < len(row) else None
        if covered:
            cells, covered = cells + "<table:covered-table-cell/>", covered - 1
            continue
        span = ""
        if place in spans:
            covered = ord(spans[place][0]) - 65 - column
            span = f' table:number-columns-spanned="{covered + 1}" table:number-rows-spanned="1"'
        cells += _cell(content, span, names)
    return (
        f'<table:table-row>{cells}<table:table-cell table:number-columns-repeated="{16384 - width}"/></table:table-row>'
    )


def _cell(content: object, span: str, names: dict[str, str]) -> str:
    if content is None:
        return "<table:table-cell/>"
    if not isinstance(content, Shown):
        if isinstance(content, int | float):
            content = Shown(content, shown=str(content).replace(".", ","))
        else:
            lines = "".join(f"<text:p>{escape(line)}</text:p>" for line in str(content).split("\n"))
            return f'<table:table-cell office:value-type="string"{span}>{lines}</table:table-cell>'
    style = f' table:style-name="{names[content.format]}"' if content.format in names else ""
    formula = f' table:formula="of:={escape(content.formula)}"' if content.formula else ""
    return f"<table:table-cell{style}{formula} {_value(content)}{span}><text:p>{escape(content.shown)}</text:p></table:table-cell>"


def _value(content: Shown) -> str:
    if isinstance(content.value, date):
        return f'office:value-type="date" office:date-value="{content.value.isoformat()}"'
    kind = "percentage" if content.format == "0%" else "float"
    return f'office:value-type="{kind}" office:value="{content.value}"'


def dale_pounds() -> None:
    """Dale, United States: lb and oz together in the cells, days as day cells, dollars as a number format."""

    def day(year: int, month: int, of_month: int) -> Shown:
        return Shown(date(year, month, of_month), "m/d/yyyy")

    def paid(dollars: float) -> Shown:
        return Shown(dollars, '"$"#,##0.00')

    rows: list[list[object]] = [
        ["Gear", "Type", "Count", "Weight", "Rides in", "Serial #", "In use since", "Paid"],
        ["Hollin Merlar 3", "Paraglider", 1, "11 lb 9 oz", None, "HM3-00733", day(2021, 4, 3), paid(4150)],
        ["Quern Longreach", "Harness", 1, "12 lb 6.2 oz", None, "QL-5560", day(2021, 4, 3), paid(1620.5)],
        ["Sedge Quad 95", "Reserve parachute", 1, "3.7 lb", "under seat", "SQ-200", day(2019, 11, 9), paid(745)],
        ["Full face lid", "Helmet", 1, "1 lb 6.5 oz", "worn", None, day(2023, 5, 12), paid(210)],
        ["Aluminum carabiners", "Carabiner", 2, "2.2 oz", "harness", None, day(2024, 6, 5), paid(29.95)],
        ["Two-way radio", "Radio", 1, "7.5 oz", "cockpit", "C5-0909", day(2022, 2, 8), paid(89)],
        ["Cell phone", "Cell phone", 1, "7.3 oz", "worn", None, None, None],
        ["Battery pack", "Power bank", 1, "8 oz", "cockpit", None, day(2023, 8, 30), paid(45)],
        ["Puffy jacket", "Clothing", 1, "12.1 oz", "back pocket", None, None, paid(180)],
        ["Hiking boots", "Boots", 1, "2 lb 9.6 oz", "worn", None, day(2024, 4, 12), paid(235)],
        ["Heated gloves", "Gloves", 1, "1.03 lb", "worn", None, day(2023, 12, 17), paid(260)],
        ["Water bladder", "Hydration bladder", 1, "4.9 oz", "back pocket", None, None, paid(38)],
        ["Sunglasses", "Sunglasses", 1, "1 oz", "worn", None, None, None],
        ["Duffel", "Bag", 1, "2 lb 1 oz", "left in the car", None, None, paid(75)],
        ["Lawn chair", "Furniture", 1, "1 lb 15 oz", "left in the car", None, None, paid(30)],
    ]
    write_xlsx(HERE / "dale_pounds" / "gear.xlsx", [Sheet("Gear", rows, bold=(1,), widths=(("A", 24),))])


def etienne_inventory() -> None:
    """Étienne, Québec: a merged title, sections, subtotals and a grand total as formulas, line totals beside masses."""
    head = ["Article", "Catégorie", "Qté", "Masse (g)", "Masse totale (g)", "Date d'achat", "Valeur ($)", "Prio"]
    parts: list[tuple[str, list[tuple[object, ...]]]] = [
        ("VOL", [
            ("Hollin Merlar 3", "Voile", 1, 5240, "2021-05-03", 5200, "A"),
            ("Quern Longreach", "Sellette", 1, 5620, "2021-05-03", 2100.5, "A"),
            ("Sedge Quad 95", "Parachute de secours", 1, 1680, "2019-11-21", 980, "A"),
            ("Casque intégral", "Casque", 1, 640, "2023-05-01", 240, "A"),
            ("Mousquetons acier", "Mousquetons", 2, 118, "2021-09-01", 22.95, "A"),
            ("Barre d'accélérateur", "Accélérateur", 1, 140, None, None, "A"),
        ]),
        ("ÉLECTRONIQUE", [
            ("Cellulaire", "Cellulaire", 1, 206, date(2023, 11, 24), 899, "A"),
            ("Radio portative", "Radio", 1, 212, date(2022, 2, 8), 110, "B"),
            ("Batterie portative", "Batterie externe", 1, 228, date(2023, 8, 30), 60, "B"),
            ("Balise satellite", "Messager satellite", 1, 104, date(2024, 6, 15), 400, "A"),
            ("Frontale", "Lampe frontale", 1, 54, None, 45, "B"),
            ("Fils de recharge", "Câble", 2, 19, None, 12.5, "C"),
        ]),
        ("VÊTEMENTS", [
            ("Manteau de duvet", "Vêtement", 1, 342, date(2020, 10, 30), 280, "A"),
            ("Pantalon de vent", "Vêtement", 1, 420, None, 130, "A"),
            ("Bas de laine", "Vêtement", 3, 72, None, 25, "B"),
            ("Mitaines", "Mitaines", 1, 145, None, 90, "A"),
            ("Bottes", "Chaussures", 1, 1180, date(2024, 4, 12), 310, "A"),
            ("Lunettes", "Lunettes de soleil", 1, 29, None, 75, "B"),
        ]),
        ("DIVERS", [
            ("Gourde souple", "Gourde", 2, 34, None, 22, "B"),
            ("Trousse", "Trousse de premiers soins", 1, 318, date(2025, 5, 8), 65, "A"),
            ("Couteau à suspentes", "Couteau", 1, 38, None, 30, "A"),
            ("Sifflet", "Sifflet", 1, 8, None, 5, "A"),
            ("Ruban à mesurer", "Bricolage", 1, 95, None, 12, "C"),
        ]),
    ]  # fmt: skip
    rows: list[list[object]] = [["Inventaire de vol libre, saison 2025"], [], list(head)]
    merged, bold, totals = ["A1:H1"], [1, 3], []
    for title, lines in parts:
        rows.append([title])
        merged.append(f"A{len(rows)}:H{len(rows)}")
        bold.append(len(rows))
        first = len(rows) + 1
        for name, kind, count, grams, bought, value, prio in lines:
            at = len(rows) + 1
            whole = Shown(count * grams, "# ##0", f"C{at}*D{at}")
            day = Shown(bought, "yyyy-mm-dd") if isinstance(bought, date) else bought
            money = None if value is None else Shown(value, '# ##0.00" $"')
            rows.append([name, kind, count, grams, whole, day, money, prio])
        total = sum(row[2] * row[3] for row in lines)
        rows.append(["Sous-total", None, None, None, Shown(total, "# ##0", f"SUM(E{first}:E{len(rows)})")])
        totals.append((len(rows), total))
        rows.append([])
    formula = "+".join(f"E{at}" for at, _ in totals)
    rows.append(["Total général", None, None, None, Shown(sum(grams for _, grams in totals), "# ##0", formula)])
    sheet = Sheet("Inventaire", rows, merged=tuple(merged), bold=tuple(bold), widths=(("A", 26), ("B", 24)))
    write_xlsx(HERE / "etienne_inventory" / "inventaire.xlsx", [sheet])


def priya_workbook() -> None:
    """Priya, London: units in the number formats, percent, day and month cells, a hidden column, sheets around it."""

    def g(grams: float) -> Shown:
        return Shown(grams, '0" g"')

    def kg(kilograms: float) -> Shown:
        return Shown(kilograms, '0.00" kg"')

    def wh(energy: float) -> Shown:
        return Shown(energy, '0.0" Wh"')

    def day(*of: int) -> Shown:
        return Shown(date(*of), "dd/mm/yyyy")

    def month(year: int, of_year: int) -> Shown:
        return Shown(date(year, of_year, 1), "mmm yyyy")

    def share(part: float) -> Shown:
        return Shown(part, "0%")

    head = [
        "Name",
        "Kind",
        "Qty",
        "Mass",
        "Mass from",
        "Battery",
        "Battery health",
        "Date bought",
        "Made",
        "Ref",
        "Colour",
        "Notes",
    ]
    rows: list[list[object]] = [
        list(head),
        ["Hollin Tarn S", "Wing", 1, kg(3.08), "maker's figure", None, None, day(2022, 3, 14), month(2022, 1), "R-01", "red", None],
        ["Quern Satchel M", "Harness", 1, kg(2.14), "luggage scale", None, None, day(2022, 3, 14), month(2021, 11), "R-02", "grey", "airbag zip stiff"],
        ["Sedge Feather 90", "Reserve", 1, kg(1.09), "maker's figure", None, None, day(2022, 4, 2), month(2022, 3), "R-03", None, None],
        ["Open face", "Helmet", 1, g(380), "kitchen scale", None, None, day(2025, 3, 15), None, "R-04", "white", None],
        ["Phone", "Phone", 1, g(206), "kitchen scale", wh(17.3), share(0.9), day(2023, 11, 24), None, "R-05", None, None],
        ["Radio", "Radio", 1, g(212), "kitchen scale", wh(11.1), share(0.85), day(2022, 2, 8), month(2021, 12), "R-06", None, "channel 4 = club"],
        ["Messenger", "Satellite messenger", 1, g(104), "kitchen scale", wh(4.6), share(1), day(2024, 6, 15), None, "R-07", "orange", None],
        ["Bank", "Power bank", 1, g(228), "kitchen scale", wh(38.5), share(0.95), day(2023, 8, 30), None, "R-08", None, None],
        ["Action camera", "Camera", 1, g(126), "kitchen scale", wh(6.6), None, None, None, "R-09", None, None],
        ["Spare cells for camera", "Camera", 2, g(26), "kitchen scale", wh(6.6), None, None, None, "R-10", None, None],
        ["Down jacket", "Clothing", 1, g(342), "estimate", None, None, day(2020, 10, 30), None, "R-11", "blue", None],
        ["Trail shoes", "Footwear", 1, g(640), "kitchen scale", None, None, day(2025, 2, 28), None, "R-12", None, None],
        ["Cereal bar", "Food", 6, g(42), "maker's figure", None, None, None, None, "R-13", None, None],
        ["First aid pouch", "First aid", 1, g(318), "kitchen scale", None, None, day(2025, 5, 8), None, "R-14", "red", None],
        ["Bivvy bag", "Bivvy bag", 1, g(290), "kitchen scale", None, None, None, None, "R-15", "orange", None],
        ["Painted pebble", "Keepsake", 1, g(61), "kitchen scale", None, None, None, None, "R-16", None, "from the top of Hallow Edge"],
    ]  # fmt: skip
    rows += [[], ["Total", None, Shown(22, "0", "SUM(C2:C17)"), Shown(3066.31, '0" g"', "SUM(D2:D17)")]]
    readme = Sheet(
        "Read me", [["My flying kit"], ["Updated whenever something is weighed again."], ["Priya, spring 2025"]]
    )
    budget = Sheet("Budget", [["Year", "Spent"], [2022, 4120], [2023, 760], [2024, 310]])
    kit = Sheet("Kit", rows, hidden=("J",), bold=(1,), widths=(("A", 24), ("D", 12)))
    write_xlsx(HERE / "priya_workbook" / "kit.xlsx", [readme, kit, budget], active=1)


def maelle_weighed() -> None:
    """Maëlle, Savoie: kilograms typed as text (1,250 beside 0,42) and as numbers, a title, days as cells and as text."""

    def kg(value: float) -> Shown:
        return Shown(value, "0.00", shown=f"{value:.2f}".replace(".", ","))

    def day(*of: int) -> Shown:
        return Shown(date(*of), "dd/mm/yyyy", shown=date(*of).strftime("%d/%m/%Y"))

    rows: list[list[object]] = [
        ["Pesées du 14 mars 2025"],
        [],
        ["Objet", "Catégorie", "Nb", "Poids (kg)", "Rangement", "Acheté le", "N° de série", "Remarques"],
        ["Hollin Merlar 3", "Voile", 1, kg(5.24), None, day(2021, 5, 3), "HM3-00412", None],
        ["Quern Longreach", "Sellette", 1, kg(5.62), None, day(2021, 5, 3), "QL-5512", "mousse à surveiller"],
        ["Sedge Quad 95", "Parachute de secours", 1, "1,680", "Sous l'assise", day(2019, 11, 21), "SQ-118", None],
        ["Casque intégral", "Casque", 1, kg(0.64), "Porté", day(2023, 5, 1), None, None],
        ["Mousquetons acier", "Mousquetons", 2, "0,118", "Sellette", "01/09/2021", None, None],
        ["Téléphone", "Téléphone", 1, "0,206", "Porté", "24/11/2023", None, None],
        ["Radio", "Radio", 1, "0,212", "Cockpit", "08/02/2022", "C5-334", "fréquence du club"],
        ["Doudoune", "Vêtements", 1, "0,342", "Poche dorsale", "30/10/2020", None, None],
        ["Pantalon", "Vêtements", 1, "0,42", "Porté", None, None, None],
        ["Chaussures montantes", "Chaussures", 1, "1,250", "Porté", "12/04/2024", None, None],
        ["Gants fins", "Gants", 1, "0,058", "Poche latérale", None, None, None],
        ["Gourde souple", "Gourde", 2, "0,034", "Poche latérale", None, None, None],
        ["Trousse rouge", "Premiers secours", 1, "0,318", "Poche dorsale", "08/05/2025", None, "revue en mai"],
        ["Sifflet", "Sifflet", 1, "0,008", "Porté", None, None, None],
        ["Frontale", "Lampe frontale", 1, "0,054", "Poche dorsale", None, None, None],
        ["Bâtons", "Bâtons", 1, "0,48", "Sac à dos", None, None, None],
        ["Anémomètre", "Anémomètre", 1, "0,052", "Cockpit", None, None, None],
        ["Licence et carte", "Papiers", 1, "0,064", "Porté", None, None, None],
        ["Harmonica", "Musique", 1, "0,12", "Sac à dos", None, None, None],
        ["Sac 80 l", "Sac", 1, "0,94", "Voiture", None, None, None],
        [],
        ["Total", None, None, Shown(18.008, "0.00", "SUMPRODUCT([.C4:.C23];[.D4:.D23])", "18,01")],
    ]
    write_ods(HERE / "maelle_weighed" / "pesees.ods", [Sheet("Feuille1", rows, merged=("A1:H1",))])


def reto_bivouac() -> None:
    """Reto, Graubünden: grams as a number format, a merged title, line totals, a total, a second sheet."""

    def g(grams: int, formula: str = "") -> Shown:
        return Shown(grams, '0" g"', formula, f"{grams} g")

    def day(*of: int) -> Shown:
        return Shown(date(*of), "dd.mm.yyyy", shown=date(*of).strftime("%d.%m.%Y"))

    def health(part: float) -> Shown:
        return Shown(part, "0%", shown=f"{part:.0%}")

    lines: list[tuple[object, ...]] = [
        ("Hollin Tarn", "Gleitschirm", 1, g(3080), 3080, 12, day(2022, 3, 1), None),
        ("Quern Satchel", "Gurtzeug", 1, g(2140), 2140, None, day(2022, 3, 1), None),
        ("Sedge Feather", "Retter", 1, g(1090), 1090, 3.4, day(2022, 4, 2), None),
        ("Halbschalenhelm", "Helm", 1, g(380), 380, None, day(2025, 3, 15), None),
        ("Biwaksack", "Biwak", 1, g(290), 290, 1.5, None, None),
        ("Schlafsack", "Schlafsack", 1, g(720), 720, 6, day(2023, 9, 8), None),
        ("Matte", "Isomatte", 1, g(410), 410, 2.5, day(2023, 9, 8), None),
        ("Faltflasche", "Trinkflasche", 2, g(38), 76, None, None, None),
        ("Nussmischung", "Essen", 3, g(150), 450, None, None, None),
        ("Natel", "Natel", 1, g(206), 206, None, day(2023, 11, 24), health(0.88)),
        ("Powerbank", "Powerbank", 1, g(228), 228, None, day(2023, 8, 30), health(0.95)),
        ("Stirnlampe", "Stirnlampe", 1, g(54), 54, None, None, None),
        ("Windjacke", "Kleider", 1, g(185), 185, 0.8, None, None),
        ("Handschuhe", "Handschuhe", 1, g(58), 58, None, None, None),
        ("Stöcke", "Stöcke", 1, g(480), 480, None, None, None),
        ("Gaskocher", "Küche", 1, g(275), 275, 0.9, None, None),
    ]
    rows: list[list[object]] = [["Biwakmaterial Sommer"], []]
    rows.append(
        ["Gegenstand", "Kategorie", "Anz.", "Gewicht", "Gesamtgewicht", "Packvolumen (l)", "Gekauft", "Akku Zustand"]
    )
    for name, kind, count, mass, whole, litres, bought, state in lines:
        at = len(rows) + 1
        rows.append([name, kind, count, mass, g(whole, f"[.C{at}]*[.D{at}]"), litres, bought, state])
    total = sum(int(line[4]) for line in lines)
    rows += [[], ["Summe", None, None, None, g(total, f"SUM([.E4:.E{len(rows)}])")]]
    weather = Sheet("Wetter", [["Ort", "Wind"], ["Skarnock", "Nordwest"], ["Hallow Edge", "Süd"]])
    write_ods(HERE / "reto_bivouac" / "biwak.ods", [Sheet("Material", rows, merged=("A1:H1",)), weather])


if __name__ == "__main__":
    for make in (dale_pounds, etienne_inventory, priya_workbook, maelle_weighed, reto_bivouac):
        make()
