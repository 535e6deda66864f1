"""OpenDocument spreadsheets: written by odfdo, and hand-made XML after ODF 1.3 part 3 (sections 6.1.2, 9.1, 19.385)."""

import io
from datetime import date, timedelta
from decimal import Decimal

import pytest
from odfdo import Cell, Document, Row, Table
from workbooks import day_cell, number_cell, ods, ods_parts, ods_table, text_cell, zipped

from kitlog.fault import InputFault
from kitlog.files.csv_dialect import MAX_ROWS
from kitlog.files.table.cells import CalendarDay, Figure, Shows
from kitlog.files.table.open_grid import read_grid

NOTHING = "<table:table-cell/>"
WIDE = '<table:table-cell table:number-columns-repeated="16384"/>'
END = f'<table:table-row table:number-rows-repeated="1048570">{WIDE}</table:table-row>'


def read(data):
    return read_grid(data, "kit.ods")


def cells(grid):
    return [list(row.cells) for row in grid.rows]


def said(grid):
    return {remark.code: dict(remark.facts) for remark in grid.remarks}


def one(cell):
    """What a single cell is read as."""
    return read(ods(ods_table([text_cell("x"), cell]))).rows[0].cells[1:]


def test_what_a_library_writes():
    document = Document("spreadsheet")
    document.body.clear()
    table = Table("Kit")
    for values in [["name", "mass", "bought", "used"], ["Wing", Decimal("4.5"), date(2018, 6, 1), True]]:
        row = Row()
        for value in values:
            row.append_cell(Cell(value))
        table.append_row(row)
    document.body.append(table)
    target = io.BytesIO()
    document.save(target)
    grid = read(target.getvalue())
    assert cells(grid)[0] == ["name", "mass", "bought", "used"]
    name, mass, bought, used = grid.rows[1].cells
    assert (name, mass.value, bought.day, used) == ("Wing", Decimal("4.5"), date(2018, 6, 1), "TRUE")
    assert timedelta(0) == bought.day - date(2018, 6, 1)


class TestCells:
    @pytest.mark.parametrize(
        ("value", "shown", "number", "unit"),
        [
            ("420", "420", "420", ""), ("420", "420 g", "420", "g"), ("4.5", "4,50 kg", "4.5", "kg"),
            ("4500", "4,5 kg", "4.5", "kg"), ("1450", "1.450 g", "1450", "g"), ("1450", "1 450 g", "1450", "g"),
            ("1450", "1’450", "1450", ""), ("4500", "4,5", "4.5", ""), ("0.30000000000000004", "0,3", "0.3", ""),
            ("-5", "−5 °C", "-5", "°C"), ("123456", "1,23E+05", "123456", ""), ("0.5", "1/2", "0.5", ""),
            ("12.5", "12,50 €", "12.5", ""), ("3", "3 Stk.", "3", "Stk."), ("1.04", "1,0", "1.04", ""),
        ],
    )  # fmt: skip
    def test_numbers(self, value, shown, number, unit):
        (cell,) = one(number_cell(value, shown))
        assert (cell.value, cell.unit, cell.text) == (Decimal(number), unit, shown)

    def test_percent_and_money(self):
        assert one(number_cell("0.95", "95 %", "percentage")) == [Figure(Decimal("0.95"), "95 %", percent=True)]
        assert one(number_cell("12.5", "12,50 €", "currency")) == [Figure(Decimal("12.5"), "12,50 €")]

    @pytest.mark.parametrize(
        ("shown", "shows"),
        [
            ("01.06.18", Shows.DAY), ("2018-06-01", Shows.DAY), ("1. Juni 2018", Shows.DAY), ("Juni 2018", Shows.MONTH),
            ("06.2018", Shows.MONTH), ("06/18", Shows.MONTH), ("Jun 18", Shows.MONTH), ("2018", Shows.YEAR),
            ("1. Jun", Shows.DAY), ("01.06.", Shows.DAY), ("Fr, 1. Juni 2018", Shows.DAY), ("01.06.18 12:00", Shows.DAY),
        ],
    )  # fmt: skip
    def test_days(self, shown, shows):
        (cell,) = one(day_cell("2018-06-01T12:00:00", shown))
        assert isinstance(cell, CalendarDay)
        assert (cell.day, cell.shows) == (date(2018, 6, 1), shows)

    @pytest.mark.parametrize(
        ("stored", "hours"), [("PT01H30M00S", "1.5"), ("PT36H00M00S", "36"), ("PT0H5M0.0S", "0.083333")]
    )
    def test_durations(self, stored, hours):
        (cell,) = one(
            f'<table:table-cell office:value-type="time" office:time-value="{stored}"><text:p>s</text:p></table:table-cell>'
        )
        assert (cell.value, cell.unit, cell.text) == (Decimal(hours), "h", "s")

    def test_yes_and_no(self):
        yes = '<table:table-cell office:value-type="boolean" office:boolean-value="true"><text:p>WAHR</text:p></table:table-cell>'
        assert one(yes) == ["TRUE"]

    def test_blanks_breaks_and_paragraphs(self):
        inside = 'a<text:s text:c="3"/>b<text:tab/>c<text:line-break/>d <text:span>e<text:a>f</text:a></text:span>  g'
        cell = f'<table:table-cell office:value-type="string"><text:p>{inside}</text:p><text:p>h</text:p></table:table-cell>'
        assert one(cell) == ["a   b\tc\nd ef g\nh"]

    def test_comments_are_left_out(self):
        comment = "<office:annotation><text:p>secret</text:p></office:annotation>"
        cell = f'<table:table-cell office:value-type="string">{comment}<text:p>a{comment}b</text:p></table:table-cell>'
        assert one(cell) == ["ab"]
        assert one(f"<table:table-cell>{comment}</table:table-cell>") == []

    def test_a_string_without_paragraphs(self):
        assert one('<table:table-cell office:value-type="string" office:string-value="a"/>') == ["a"]

    def test_formulas_without_result_and_errors(self):
        row = [
            text_cell("x"),
            '<table:table-cell table:formula="of:=1"/>',
            text_cell("#REF!", 'table:formula="of:=1"'),
            text_cell("Err:502", 'table:formula="of:=1"'),
            '<table:table-cell table:formula="of:=1" office:value-type="string" office:string-value=""/>',
        ]
        grid = read(ods(ods_table(row)))
        assert cells(grid) == [["x", "", "#REF!", "Err:502"]]
        assert said(grid) == {
            "table.no_value": {"cells": ("B1",), "count": 1},
            "table.error_cells": {"cells": ("C1", "D1"), "count": 2},
        }


class TestLayout:
    def test_repeated_cells_and_rows(self):
        twice = text_cell("a", 'table:number-columns-repeated="2"')
        gap = '<table:table-cell table:number-columns-repeated="2"/>'
        body = f'<table:table table:name="Kit"><table:table-row>{gap}{twice}{WIDE}</table:table-row>'
        body += f'<table:table-row table:number-rows-repeated="3">{NOTHING}</table:table-row>'
        body += f'<table:table-row table:number-rows-repeated="2">{text_cell("b")}</table:table-row>{END}</table:table>'
        grid = read(ods(body))
        assert [(row.spot.row, list(row.cells)) for row in grid.rows] == [
            (1, ["", "", "a", "a"]),
            (5, ["b"]),
            (6, ["b"]),
        ]

    def test_rows_in_groups(self):
        def row(text):
            return f"<table:table-row>{text_cell(text)}</table:table-row>"

        body = f"<table:table-header-rows>{row('a')}</table:table-header-rows><table:table-row-group>{row('b')}"
        body += f"<table:table-rows>{row('c')}</table:table-rows></table:table-row-group>{row('d')}"
        grid = read(ods(f'<table:table table:name="Kit">{body}</table:table>'))
        assert [(row.spot.row, row.cells[0]) for row in grid.rows] == [(1, "a"), (2, "b"), (3, "c"), (4, "d")]

    def test_merged_cells(self):
        row = [
            text_cell("a", 'table:number-columns-spanned="2" table:number-rows-spanned="2"'),
            "<table:covered-table-cell><text:p>under</text:p></table:covered-table-cell>",
            text_cell("b"),
        ]
        grid = read(ods(ods_table(row)))
        assert cells(grid) == [["a", "", "b"]]
        assert said(grid) == {"table.merged": {"cells": ("A1:B2",), "count": 1}}

    def test_hidden_rows_and_columns(self):
        columns = (
            '<table:table-column/><table:table-column table:visibility="collapse" table:number-columns-repeated="2"/>'
        )
        rows = f"<table:table-row>{text_cell('a')}{text_cell('b')}</table:table-row>"
        rows += f'<table:table-row table:visibility="filter">{text_cell("c")}</table:table-row>'
        grid = read(ods(f'<table:table table:name="Kit">{columns}{rows}</table:table>'))
        assert said(grid) == {
            "table.hidden_rows": {"rows": (2,), "count": 1},
            "table.hidden_columns": {"columns": ("B",), "count": 1},
        }

    def test_the_whole_extent_reads_fast(self):
        body = f'<table:table table:name="Kit"><table:table-row>{text_cell("a")}{WIDE}</table:table-row>'
        grid = read(ods(f"{body}{END}<table:table-row>{text_cell('b')}</table:table-row></table:table>"))
        assert [row.spot.row for row in grid.rows] == [1, 1_048_572]


class TestSheets:
    BODY = ods_table([text_cell("a")], name="First") + ods_table([text_cell("b")], name="Kit")
    LONG = ods_table([text_cell("a")], name="First") + ods_table([text_cell("b")], [text_cell("c")], name="Kit")
    LONG += ods_table([text_cell("x")], [text_cell("y")], [text_cell("z")], name="Last")

    def test_the_active_one_is_taken(self):
        grid = read(ods(self.BODY, active="Kit"))
        assert cells(grid) == [["b"]]
        assert said(grid) == {"table.sheet_taken": {"sheet": "Kit", "others": ("First",), "hidden": ()}}

    def test_one_may_be_asked_for_by_its_name(self):
        grid = read_grid(ods(self.LONG, active="Kit"), "kit.ods", sheet="last")
        assert cells(grid) == [["x"], ["y"], ["z"]]
        assert said(grid) == {"table.sheet_taken": {"sheet": "Last", "others": ("First", "Kit"), "hidden": ()}}
        assert cells(read_grid(ods(self.LONG), "kit.ods", sheet="Kit")) == [["b"], ["c"]]

    def test_a_hidden_one_may_be_asked_for(self):
        styles = '<style:style style:name="t1"><style:table-properties table:display="false"/></style:style>'
        hidden = ods_table([text_cell("a")], [text_cell("b")], name="Old", more='table:style-name="t1"')
        data = ods(ods_table([text_cell("c")]) + hidden, styles=styles)
        assert cells(read_grid(data, "kit.ods", sheet="Old")) == [["a"], ["b"]]

    def test_one_that_is_not_there_or_empty_is_refused_with_the_names(self):
        data = ods(self.BODY + '<table:table table:name="Empty"/>')
        with pytest.raises(InputFault) as fault:
            read_grid(data, "kit.ods", sheet="Gear")
        assert (fault.value.code, fault.value.facts["known"]) == ("table.no_such_sheet", ("First", "Kit", "Empty"))
        with pytest.raises(InputFault) as fault:
            read_grid(data, "kit.ods", sheet="Empty")
        assert (fault.value.code, fault.value.facts["value"]) == ("table.empty_sheet", "Empty")

    def test_without_settings_the_first(self):
        assert cells(read(ods(self.BODY))) == [["a"]]

    def test_hidden_sheets_come_last(self):
        styles = '<style:style style:name="t1"><style:table-properties table:display="false"/></style:style>'
        hidden = ods_table([text_cell("a")], name="Old", more='table:style-name="t1"')
        grid = read(ods(hidden + ods_table([text_cell("b")], name="Kit"), styles=styles))
        assert cells(grid) == [["b"]]
        assert said(grid)["table.sheet_taken"] == {"sheet": "Kit", "others": (), "hidden": ("Old",)}
        assert said(read(ods(hidden, styles=styles))) == {"table.sheet_hidden": {"sheet": "Old"}}

    def test_tables_of_other_files_and_in_drawings_are_no_sheets(self):
        kept = ods_table([text_cell("far")], name="&apos;file:///tmp/x.ods&apos;#$Kit")
        inner = ods_table([text_cell("inner")], name="local-table")
        outer = f'<table:table table:name="Kit"><table:shapes>{inner}</table:shapes>'
        outer += f"<table:table-row>{text_cell('b')}</table:table-row></table:table>"
        grid = read(ods(kept + outer))
        assert (cells(grid), said(grid)) == ([["b"]], {})


class TestRefused:
    @pytest.mark.parametrize(
        ("body", "code"),
        [
            ("", "table.empty"),
            (ods_table([NOTHING, text_cell(" ")]), "table.empty"),
            (ods_table([text_cell("a", 'table:number-columns-repeated="501"')]), "table.too_many_columns"),
            (ods_table(*([text_cell("a")] for _ in range(MAX_ROWS + 2))), "table.too_many_rows"),
            (f'<table:table><table:table-row table:number-rows-repeated="1048576">{text_cell("a")}</table:table-row></table:table>',
             "table.too_many_rows"),
            ("<table:table>", "table.broken_workbook"),
            ("&unknown;", "table.broken_workbook"),
        ],
    )  # fmt: skip
    def test_bodies(self, body, code):
        with pytest.raises(InputFault) as fault:
            read(ods(body))
        assert fault.value.code == code

    @pytest.mark.parametrize(("kind", "code"), [("text", "table.is_document"), ("presentation", "table.is_slides")])
    def test_other_documents(self, kind, code):
        parts = ods_parts("")
        parts["mimetype"] = f"application/vnd.oasis.opendocument.{kind}"
        with pytest.raises(InputFault) as fault:
            read(zipped(parts))
        assert fault.value.code == code

    def test_a_password(self):
        parts = ods_parts("")
        parts["META-INF/manifest.xml"] = "<manifest:encryption-data/>"
        with pytest.raises(InputFault) as fault:
            read(zipped(parts))
        assert fault.value.code == "table.is_locked"

    def test_entities_are_not_opened(self):
        parts = ods_parts(ods_table([text_cell("&a;")]))
        bomb = '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">]>'
        parts["content.xml"] = parts["content.xml"].replace("?>", "?>" + bomb, 1)
        with pytest.raises(InputFault) as fault:
            read(zipped(parts))
        assert fault.value.code == "table.broken_workbook"
