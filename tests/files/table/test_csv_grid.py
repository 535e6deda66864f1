"""CSV in any dialect. What spreadsheets do is checked against RFC 4180 where it says so, else common practice, no source."""

import csv
import io
from itertools import product
from unicodedata import normalize

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.fault import InputFault
from kitlog.files.csv_dialect import MAX_ROWS
from kitlog.files.table.open_grid import read_grid, read_pasted

ROWS = [["name", "mass"], ["Wing", "4,5"], ["Café", "a;b"], ["x\ny", 'say "hi"'], ["Größe", "1|2"]]


def read(text, encoding="utf-8"):
    return read_grid(text.encode(encoding), "kit.csv")


def cells(grid):
    return [list(row.cells) for row in grid.rows]


def codes(grid):
    return [remark.code for remark in grid.remarks]


def refused(data):
    with pytest.raises(InputFault) as fault:
        read_grid(data if isinstance(data, bytes) else data.encode(), "kit.csv")
    assert fault.value.facts["file"] == "kit.csv"
    return fault.value


def written(rows, mark, end):
    target = io.StringIO()
    csv.writer(target, delimiter=mark, lineterminator=end).writerows(rows)
    return target.getvalue()


class TestDialects:
    @pytest.mark.parametrize(
        ("mark", "end", "encoding"),
        list(
            product(",;\t|", ["\r\n", "\n", "\r"], ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
        ),
    )
    def test_every_one_is_read_alike(self, mark, end, encoding):
        rows = ROWS if end != "\r" else [row for row in ROWS if "\n" not in row[0]]
        grid = read_grid(written(rows, mark, end).encode(encoding), "kit.csv")
        assert cells(grid) == rows
        assert [dict(said.facts) for said in grid.remarks if said.code == "table.separator"] == (
            [{"separator": mark}] if mark != "," else []
        )

    def test_where_rows_stand(self):
        grid = read('title\r\n\r\nname,note\r\n"two\r\nlines",x\r\n,,\r\nlast,y\r\n')
        assert [(row.spot.row, row.spot.record) for row in grid.rows] == [(1, 1), (3, 3), (4, 4), (7, 6)]

    def test_our_own_form_is_told(self):
        assert read("name,kind\r\nA,wing\r\n").own_form
        assert read("\ufeffname,kind\r\nA,wing\r\n").own_form
        assert not read("name;kind\r\nA;wing\r\n").own_form
        assert not read("größe,kind\r\nA,wing\r\n", "cp1252").own_form
        assert not read_pasted("name,kind\r\nA,wing\r\n").own_form

    def test_a_sep_line_is_obeyed_and_dropped(self):
        grid = read("sep=;\r\nname;mass, g\r\nA, b;3\r\n")
        assert cells(grid) == [["name", "mass, g"], ["A, b", "3"]]
        assert (grid.rows[0].spot.row, grid.rows[0].spot.record) == (2, 1)

    def test_numbers_kept_as_text_by_a_formula(self):
        assert cells(read('name,serial\nA,="0123"\nB,"=""07"""\n')) == [["name", "serial"], ["A", "0123"], ["B", "07"]]

    def test_a_blank_before_a_quotation_mark(self):
        assert cells(read('name, note\nA, "b, c"\n')) == [["name", "note"], ["A", "b, c"]]

    @given(
        st.lists(
            st.lists(st.text(st.characters(codec="utf-8", exclude_characters="\0\r")), min_size=3, max_size=3),
            min_size=2, max_size=8,
        ),
        st.sampled_from(",;\t|"),
    )  # fmt: skip
    def test_what_is_quoted_comes_back(self, rows, mark):
        """Against the csv module of Python's library, every cell quoted; letters are composed (Unicode NFC)."""
        head = [["h1", "h2", "h3"]] * 8
        target = io.StringIO()
        csv.writer(target, delimiter=mark, quoting=csv.QUOTE_ALL).writerows(head + rows)
        text = target.getvalue()
        if '="' in text:
            return
        composed = [[normalize("NFC", cell) for cell in row] for row in rows if "".join(row).strip()]
        assert cells(read(text))[8:] == composed


class TestSeparator:
    @pytest.mark.parametrize(
        ("text", "width"),
        [
            ("Name;kg\nA;1,5\nB;2,5\nC;0,4\n", 2),
            ("Kit, as of 1,2,3\n\nName;kg;n\nA;1,5;1\nB;2;1\nC;0,4;2\n", 3),
            ("Name;L,B,H\nSack;30,20,10\nBox;10,20,30\n", 2),
            ("Name,Note,kg\nA,dry; air,1\nB,dry; cool,2\nC,oil; wipe,3\n", 3),
            ("a;b;c;d\nx;1,5;2,5;3,5\ny;1,2;2,2;3,2\n", 4),
            ("My kit;;\n;;\nName;kg;note\nA;1,5;x, y, z\nB;2,25;\nSum;3,75;\n", 3),
            ("name\tmass\nWing, big; red\t4,5\n", 2),
            ("name,mass_g\nA,420\n", 2),
            ("a,1,2,3,4\nb,5,6,7,8\n", 5),
        ],
    )
    def test_decided_over_all_rows(self, text, width):
        assert len(read(text).rows[-1].cells) == width

    def test_a_list_of_names_is_one_column(self):
        grid = read("Name\nWing, big\nHarness\nReserve\n")
        assert cells(grid) == [["Name"], ["Wing, big"], ["Harness"], ["Reserve"]]
        assert codes(grid) == ["table.one_column"]

    def test_ragged_rows_are_parted(self):
        assert cells(read("Wing, 4.5 kg\nHarness, 3 kg, red\nReserve\nHelmet, 400 g"))[1] == [
            "Harness",
            " 3 kg",
            " red",
        ]


class TestQuotes:
    def test_never_closed(self):
        fault = refused('name,mass\nA,1\nB,"2\nC,3\n')
        assert (fault.code, fault.facts["row"]) == ("table.quote_not_closed", 3)

    def test_a_mark_that_would_swallow_rows(self):
        fault = refused('name,mass\n"A,1\nB,"2"\n')
        assert (fault.code, fault.facts["row"]) == ("table.quote_not_closed", 2)

    def test_text_behind_a_closing_mark(self):
        grid = read('name,mass\n"Hook" knife,5\n')
        assert cells(grid)[1] == ["Hook knife", "5"]
        assert grid.remarks[0].facts == {"rows": (2,), "count": 1}

    def test_marks_inside_and_inches(self):
        assert cells(read('name,note\n12" strap,a "b" c\n'))[1] == ['12" strap', 'a "b" c']


class TestPasted:
    def test_a_block_with_line_breaks_and_marks(self):
        grid = read_pasted('name\tnote\nWing\t"two\nlines ""x"""\n"Hook" knife\t5\n')
        assert cells(grid) == [["name", "note"], ["Wing", 'two\nlines "x"'], ['"Hook" knife', "5"]]

    @pytest.mark.parametrize("mark", ";,")
    def test_other_separators(self, mark):
        assert cells(read_pasted(f"a{mark}b\n1{mark}2")) == [["a", "b"], ["1", "2"]]

    @pytest.mark.parametrize(
        ("text", "code"), [("", "table.empty"), (" \n\t\n", "table.empty"), ("a\0b", "table.zero_bytes")]
    )
    def test_refused(self, text, code):
        with pytest.raises(InputFault) as fault:
            read_pasted(text)
        assert fault.value.code == code


class TestLimits:
    def test_rows(self):
        assert len(read("a,b\n" * MAX_ROWS).rows) == MAX_ROWS
        assert refused("a,b\n" * (MAX_ROWS + 2)).code == "table.too_many_rows"

    def test_empty_rows_do_not_count(self):
        assert len(read("a;b\n1;2\n" + ";;;;\n" * 50_000).rows) == 2

    def test_columns(self):
        assert len(read("," * 499 + "x\n1,2\n").rows[0].cells) == 500
        assert refused("," * 500 + "x\n1,2\n").code == "table.too_many_columns"
        assert len(read("a,b" + "," * 2000 + "\n1,2\n").rows[0].cells) == 2

    @pytest.mark.parametrize(
        ("data", "code"),
        [
            (b"x" * 20_000_001, "table.too_large"),
            (b"a," * 100_000, "table.line_too_long"),
            (b'"' + b"x\n" * 100_000 + b'"', "table.cell_too_long"),
            (b"", "table.empty"),
            (b",,,\r\n ,;\n", "table.empty"),
            (b"\xef\xbb\xbf", "table.empty"),
            (b"a,b\n1,\0\n" + b"x" * 50, "table.zero_bytes"),
            (b"\xff\xfea\0b", "table.broken_utf16"),
        ],
    )
    def test_refused(self, data, code):
        assert refused(data).code == code

    def test_what_tell_raises_ends_the_reading(self):
        class EnoughError(Exception):
            pass

        def tell(share):
            assert 0 <= share <= 1
            raise EnoughError

        with pytest.raises(EnoughError):
            read_grid(b"a,b\n" * 10_000, "kit.csv", tell)
