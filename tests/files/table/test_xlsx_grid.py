"""Workbooks that openpyxl writes, and hand-made XML after ECMA-376 part 1 for what it does not write."""

from datetime import date, datetime, time, timedelta
from decimal import Decimal

import pytest
from openpyxl import Workbook
from openpyxl.comments import Comment
from openpyxl.formatting.rule import CellIsRule
from openpyxl.styles import Font
from openpyxl.utils.datetime import CALENDAR_MAC_1904
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.table import Table
from workbooks import RELATED, raw_xlsx, saved, sheet_data, xlsx, xlsx_parts, zipped

from kitlog.fault import InputFault
from kitlog.files.csv_dialect import MAX_ROWS
from kitlog.files.table.cells import CalendarDay, Figure, Shows
from kitlog.files.table.open_grid import read_grid


def read(data):
    return read_grid(data, "kit.xlsx")


def cells(grid):
    return [list(row.cells) for row in grid.rows]


def said(grid):
    return {remark.code: dict(remark.facts) for remark in grid.remarks}


def number(value, unit=""):
    return Figure(Decimal(value), f"{value} {unit}".strip(), unit)


class TestCells:
    def test_values_and_what_they_show(self):
        moment = datetime(2018, 6, 1, 12, 30)  # noqa: DTZ001  # a sheet's days have no zone
        rows = [["name", "mass", "bought", "used"], ["Wing", 4.5, date(2018, 6, 1), True], ["=1", 420, moment, "0123"]]
        grid = read(
            xlsx(*rows, formats={"B2": '0.0" kg"', "C2": "mmm yyyy", "B3": "General", "C3": "dd.mm.yyyy hh:mm"})
        )
        assert cells(grid)[:2] == [
            ["name", "mass", "bought", "used"],
            ["Wing", number("4.5", "kg"), CalendarDay(date(2018, 6, 1), "2018-06", Shows.MONTH), "TRUE"],
        ]
        assert cells(grid)[2] == ["", number("420"), CalendarDay(date(2018, 6, 1), "2018-06-01"), "0123"]
        assert said(grid) == {"table.no_value": {"cells": ("A3",), "count": 1}}

    def test_durations(self):
        grid = read(xlsx(["h"], [timedelta(hours=36)], [time(1, 30)]))
        assert [row.cells[0].value for row in grid.rows[1:]] == [Decimal(36), Decimal("1.5")]

    def test_days_since_1904(self):
        book = Workbook()
        book.epoch = CALENDAR_MAC_1904
        book.active.append(["day", date(2022, 6, 2)])
        assert read(saved(book)).rows[0].cells[1].day == date(2022, 6, 2)

    def test_errors_are_text_and_said(self):
        row = '<row r="1"><c r="A1" t="str"><v>x</v></c><c r="B1" t="e"><f>1/0</f><v>#DIV/0!</v></c></row>'
        grid = read(raw_xlsx(sheet_data(row)))
        assert cells(grid) == [["x", "#DIV/0!"]]
        assert said(grid) == {"table.error_cells": {"cells": ("B1",), "count": 1}}

    def test_formulas_with_and_without_a_result(self):
        row = (
            '<row r="2"><c r="A2"><f>1+1</f><v>2</v></c><c r="B2"><f>1+1</f></c><c r="C2"><f>1+1</f><v></v></c>'
            '<c r="D2" t="str"><f>""</f><v></v></c><c r="E2" t="str"><f>"a"</f><v>a</v></c></row>'
        )
        grid = read(raw_xlsx(sheet_data(row)))
        assert cells(grid) == [[number("2"), "", "", "", "a"]]
        assert said(grid) == {"table.no_value": {"cells": ("B2", "C2"), "count": 2}}

    def test_inline_and_rich_text(self):
        row = (
            '<row><c t="inlineStr"><is><r><t>two</t></r><r><t xml:space="preserve"> runs</t></r></is></c>'
            '<c t="inlineStr"><is><t>a_x000D_\nb</t></is></c><c t="d"><v>2018-06-01</v></c></row>'
        )
        assert cells(read(raw_xlsx(sheet_data(row)))) == [
            ["two runs", "a\nb", CalendarDay(date(2018, 6, 1), "2018-06-01")]
        ]

    def test_numbers_longer_than_a_spreadsheet_keeps(self):
        grid = read(xlsx(["serial"], [12345678901234567], [123456789012345]))
        assert said(grid) == {"table.digits_lost": {"cells": ("A2",), "count": 1}}


class TestSheets:
    def book(self, **sheets):
        book = Workbook()
        book.remove(book.active)
        for name, rows in sheets.items():
            sheet = book.create_sheet(name)
            for row in rows:
                sheet.append(row)
        return book

    def test_the_active_one_is_taken_and_the_others_named(self):
        book = self.book(First=[["a"]], Empty=[], Kit=[["name"]], Old=[["b"]])
        book.active = 2
        book["Old"].sheet_state = "hidden"
        grid = read(saved(book))
        assert cells(grid) == [["name"]]
        assert said(grid) == {"table.sheet_taken": {"sheet": "Kit", "others": ("First",), "hidden": ("Old",)}}

    def test_one_may_be_asked_for_by_its_name(self):
        book = self.book(First=[["a"]], Empty=[], Kit=[["name"], ["Vario"]], Old=[["b"], ["c"]])
        book["Old"].sheet_state = "hidden"
        grid = read_grid(saved(book), "kit.xlsx", sheet="Kit")
        assert cells(grid) == [["name"], ["Vario"]]
        assert said(grid) == {"table.sheet_taken": {"sheet": "Kit", "others": ("First",), "hidden": ("Old",)}}
        grid = read_grid(saved(book), "kit.xlsx", sheet=" old ")
        assert cells(grid) == [["b"], ["c"]]
        assert said(grid)["table.sheet_taken"] == {"sheet": "Old", "others": ("First", "Kit"), "hidden": ()}
        assert "table.sheet_hidden" in said(grid)

    def test_of_two_that_differ_in_case_the_one_written_the_same_is_meant(self):
        book = self.book(Kit=[["a"]])
        book.create_sheet("Other").append(["b"])
        book["Other"].title = "kit "
        assert cells(read_grid(saved(book), "kit.xlsx", sheet="kit ")) == [["b"]]

    def test_one_that_is_not_there_or_empty_is_refused_with_the_names(self):
        data = saved(self.book(First=[["a"]], Empty=[]))
        with pytest.raises(InputFault) as fault:
            read_grid(data, "kit.xlsx", sheet="Kit")
        assert (fault.value.code, fault.value.facts["known"]) == ("table.no_such_sheet", ("First", "Empty"))
        with pytest.raises(InputFault) as fault:
            read_grid(data, "kit.xlsx", sheet="Empty")
        assert (fault.value.code, fault.value.facts["value"]) == ("table.empty_sheet", "Empty")

    def test_an_empty_active_one_gives_way(self):
        book = self.book(Empty=[["", " "]], Kit=[["name"]])
        assert cells(read(saved(book))) == [["name"]]
        assert said(read(saved(book))) == {}

    def test_a_hidden_one_is_taken_if_there_is_no_other(self):
        book = self.book(Empty=[], Kit=[["name"]])
        book["Kit"].sheet_state = "veryHidden"
        assert said(read(saved(book))) == {"table.sheet_hidden": {"sheet": "Kit"}}

    def test_a_sheet_of_a_chart_is_none(self):
        book = self.book(First=[["a"]], Kit=[["name"]])
        book.create_chartsheet("Chart", 0)
        book.active = 2
        assert cells(read(saved(book))) == [["name"]]

    def test_nothing_in_it(self):
        with pytest.raises(InputFault) as fault:
            read(saved(Workbook()))
        assert fault.value.code == "table.empty"


class TestLayout:
    def test_hidden_rows_and_columns_and_merged_cells_are_said(self):
        book = Workbook()
        for row in [["title", ""], ["name", "mass", "x"], ["Wing", 4, 1], ["Reserve", 2, 1]]:
            book.active.append(row)
        book.active.row_dimensions[3].hidden = True
        book.active.row_dimensions[9].hidden = True
        book.active.column_dimensions["B"].hidden = True
        book.active.column_dimensions["F"].hidden = True
        book.active.merge_cells("A1:C1")
        grid = read(saved(book))
        assert len(grid.rows) == 4
        assert said(grid) == {
            "table.hidden_rows": {"rows": (3,), "count": 1},
            "table.hidden_columns": {"columns": ("B",), "count": 1},
            "table.merged": {"cells": ("A1:C1",), "count": 1},
        }

    def test_rows_keep_their_numbers(self):
        book = Workbook()
        book.active["B3"], book.active["C7"] = "a", "b"
        grid = read(saved(book))
        assert [(row.spot.row, row.spot.record, list(row.cells)) for row in grid.rows] == [
            (3, 3, ["", "a"]), (7, 7, ["", "", "b"]),
        ]  # fmt: skip

    def test_what_the_library_warns_of_is_read_without_a_word(self):
        book = Workbook()
        sheet = book.active
        for row in [["name", "mass"], ["Wing", 4]]:
            sheet.append(row)
        sheet["A2"].comment = Comment("not for the table", "me")
        sheet["A2"].hyperlink = "about:blank"
        sheet["A2"].font = Font(bold=True)
        sheet.conditional_formatting.add("B2", CellIsRule(operator="greaterThan", formula=["1"]))
        sheet.add_data_validation(DataValidation(type="list", formula1='"a,b"'))
        sheet.add_table(Table(displayName="T", ref="A1:B2"))
        sheet.print_area = "A1:B2"
        assert cells(read(saved(book))) == [["name", "mass"], ["Wing", number("4")]]

    def test_extensions_do_no_harm(self):
        ext = '<extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}"><x/></ext></extLst>'
        row = '<row r="1"><c r="A1" t="str"><v>x</v></c></row>'
        assert cells(read(raw_xlsx(sheet_data(row) + ext))) == [["x"]]

    def test_a_wrong_dimension_is_not_believed(self):
        row = '<row r="2"><c r="C2" t="str"><v>x</v></c></row>'
        assert cells(read(raw_xlsx('<dimension ref="A1"/>' + sheet_data(row)))) == [["", "", "x"]]

    def test_strict_names(self):
        """ECMA-376 part 1, annex A: the namespaces of the strict form."""
        strict = "http://purl.oclc.org/ooxml/"
        row = '<row r="1"><c r="A1" t="str"><v>x</v></c></row>'
        data = raw_xlsx(sheet_data(row), f"{strict}spreadsheetml/main", f"{strict}officeDocument/relationships")
        assert RELATED not in strict
        assert cells(read(data)) == [["x"]]


class TestLimits:
    def test_a_stored_extent_of_the_whole_sheet_reads_fast(self):
        rows = ['<row r="1"><c r="A1" t="str"><v>x</v></c><c r="XFD1" s="0"/></row>']
        rows += [f'<row r="{n}"><c r="XFD{n}" s="0"/></row>' for n in range(2, 20_000)]
        rows += ['<row r="1048576"><c r="B1048576"><v>1</v></c><c r="XFD1048576" s="0"/></row>']
        grid = read(raw_xlsx('<dimension ref="A1:XFD1048576"/>' + sheet_data(*rows)))
        assert [row.spot.row for row in grid.rows] == [1, 1_048_576]

    @pytest.mark.parametrize(
        ("rows", "code"),
        [
            (['<row r="1"><c r="XFD1"><v>1</v></c></row>'], "table.too_many_columns"),
            ([f'<row r="{n}"><c r="A{n}"><v>1</v></c></row>' for n in range(1, MAX_ROWS + 3)], "table.too_many_rows"),
            (['<row r="1"><c r="A1"><v>x</v></c></row>'], "table.broken_workbook"),
            (['<row r="1"><c r="A1" t="s"><v>5</v></c></row>'], "table.broken_workbook"),
            (['<row r="1"><c r="A1"'], "table.broken_workbook"),
            (['<row r="1"><c r="A1" t="d"><v>2018-13-41</v></c></row>'], "table.broken_workbook"),
        ],
    )  # fmt: skip
    def test_refused(self, rows, code):
        with pytest.raises(InputFault) as fault:
            read(raw_xlsx(sheet_data(*rows)))
        assert fault.value.code == code

    def test_entities_are_not_opened(self):
        parts = xlsx_parts(sheet_data('<row r="1"><c r="A1" t="inlineStr"><is><t>&a;</t></is></c></row>'))
        parts["xl/worksheets/sheet1.xml"] = (
            '<!DOCTYPE x [<!ENTITY a "boom"><!ENTITY b "&a;&a;">]>' + parts["xl/worksheets/sheet1.xml"]
        )
        with pytest.raises(InputFault) as fault:
            read(zipped(parts))
        assert fault.value.code == "table.broken_workbook"

    def test_what_tell_raises_ends_the_reading(self):
        class EnoughError(ValueError):
            pass

        def tell(share):
            assert 0 <= share <= 1
            if share > 0.2:
                raise EnoughError

        with pytest.raises(EnoughError):
            read_grid(xlsx(*([n, "x"] for n in range(2000))), "kit.xlsx", tell)
