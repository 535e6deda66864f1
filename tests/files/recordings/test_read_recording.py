"""Reading recordings: the specification's example, aerofiles as the other reader, and files that are broken."""

import io
import random
from dataclasses import replace
from datetime import UTC, date, datetime

import pytest
from aerofiles.igc import Reader
from hypothesis import given, settings
from hypothesis import strategies as st
from recordings import Day, degrees, flight, height_text, utc

from kitlog.fault import InputFault
from kitlog.files.recordings import read_recording as module
from kitlog.files.recordings.read_recording import read_recording
from kitlog.kit.recordings.judge import judge
from kitlog.wording.faults import fault_text

DAY = flight(Day(utc("2026-04-05T09:00")).stand(200), 12).stand(200)

EXAMPLE = """\
HFFXA035
HFDTE160701
HFDTM100GPSDATUM: WGS-1984
I033638FXA3940SIU4143ENL
F160240040609123624221821
B1602405407121N00249342WA002800042120509950
D20331
E160245PEV
B1602455107126N00149300WA002880042919509020
B1602505107134N00149283WA002900043221009015
K16024800090
B2202485107220N00149150WA004940043619008018
B2202525107330N00149127WA004960043919508015
B2202525107330N00149127WA004960043919508015
"""
"""Records of the sample file in the FAI's technical specification, appendix A (as aerofiles keeps it in its tests)."""


def refused(data: bytes, **more: date) -> str:
    with pytest.raises(InputFault) as fault:
        read_recording(data, "x.igc", **more)
    told = fault_text(fault.value)
    assert told.where == "x.igc"
    assert told.what != fault.value.code
    return fault.value.code


def is_said(fault: InputFault) -> None:
    assert fault_text(fault).what != fault.code


class TestExample:
    def test_the_first_fix(self) -> None:
        fix = read_recording(EXAMPLE.encode(), "x.igc").fixes[0]
        assert datetime.fromtimestamp(fix.at_s, UTC) == utc("2001-07-16T16:02:40")
        assert (round(fix.lat_deg, 6), round(fix.lon_deg, 6)) == (54.118683, -2.822367)
        assert (fix.pressure_m, fix.gnss_m, fix.valid) == (280, 421, True)

    def test_nothing_of_it_is_lost(self) -> None:
        recording = read_recording(EXAMPLE.encode(), "x.igc")
        assert (len(recording.fixes), recording.broken, recording.out_of_order) == (6, 0, 0)
        judge(recording.fixes)


def by_aerofiles(data: bytes) -> list[tuple[object, ...]]:
    read = Reader().read(io.StringIO(data.decode("ascii")))
    return [
        (round(f["datetime"].timestamp()), f["lat"], f["lon"], f["gps_alt"], f["pressure_alt"], f["validity"] == "A")
        for f in read["fix_records"][1]
    ]


class TestAgainstAerofiles:
    @pytest.mark.parametrize(
        "day",
        [
            DAY,
            flight(Day(utc("2026-01-10T23:50"), lat=-36.7, lon=147.0).stand(60), 30).stand(60),
            flight(Day(utc("2026-04-05T09:00"), height=-100.0).stand(60), 12),
            DAY.changed(lambda s: replace(s, valid=s.at_s % 7 > 2)),
        ],
        ids=["plain", "midnight", "negative", "V"],
    )
    def test_fixes(self, day: Day) -> None:
        assert [tuple(fix) for fix in read_recording(day.igc(), "x").fixes] == by_aerofiles(day.igc())

    @pytest.mark.parametrize("form", ["HFDTE050426", "HFDTEDATE:050426,01", "HFDTEDATE: 050426", "HFDTEDATE:050426"])
    def test_dates(self, form: str) -> None:
        data = DAY.igc(date_line=form)
        assert Reader().read(io.StringIO(data.decode()))["header"][1]["utc_date"] == date(2026, 4, 5)
        assert read_recording(data, "x").utc_day == date(2026, 4, 5)

    @given(
        st.floats(-89.99, 89.99),
        st.floats(-179.99, 179.99),
        st.integers(-999, 20_000),
        st.integers(1, 9_999),
        st.integers(0, 86_399),
    )
    def test_round_trip(self, lat: float, lon: float, gnss: int, pressure: int, clock: int) -> None:
        at = datetime.fromtimestamp(clock, UTC)
        line = f"B{at:%H%M%S}{degrees(lat, 2, 'NS')}{degrees(lon, 3, 'EW')}A{height_text(pressure)}{height_text(gnss)}"
        (fix,) = read_recording(f"HFDTE010126\n{line}".encode(), "x").fixes
        assert (fix.at_s % 86_400, fix.gnss_m or 0, fix.pressure_m, fix.valid) == (clock, gnss, pressure, True)
        assert (abs(fix.lat_deg - lat) < 1e-5, abs(fix.lon_deg - lon) < 1e-5) == (True, True)


class TestContent:
    def test_name_headers_line_ends_and_extensions_do_not_matter(self) -> None:
        plain = read_recording(DAY.igc(), "a.igc").content
        other = DAY.igc(date_line="HFDTEDATE:050426,02", lines=["HFSITSITE: hill", "LXXX note"]).replace(b"\r\n", b"\n")
        other = b"\n".join(line + b"012" if line[:1] == b"B" else line for line in other.split(b"\n"))
        assert read_recording(other.replace(b"A Pilot", b"Another"), "b.igc").content == plain

    def test_another_day_or_place_does(self) -> None:
        contents = {
            read_recording(day.igc(), "x").content
            for day in (DAY, replace(DAY, lat=47.1), DAY.changed(lambda s: replace(s, at_s=s.at_s + 86_400)))
        }
        assert len(contents) == 3

    def test_headers_are_text(self) -> None:
        recording = read_recording(DAY.igc(), "x.igc")
        assert (recording.pilot, recording.glider, recording.file) == ("A Pilot", "Wing A", "x.igc")


class TestDate:
    def test_without_one_it_is_refused(self) -> None:
        assert refused(DAY.igc(date_line="")) == "recording.no_date"

    @pytest.mark.parametrize("line", ["HFDTE", "HFDTEDATE:"])
    def test_an_empty_one(self, line: str) -> None:
        assert refused(DAY.igc(date_line=line)) == "recording.no_date"

    @pytest.mark.parametrize("line", ["HFDTE000000", "HFDTE320126", "HFDTE990099", "HFDTE1604261"])
    def test_one_that_is_none_is_named(self, line: str) -> None:
        with pytest.raises(InputFault) as fault:
            read_recording(DAY.igc(date_line=line), "x.igc")
        assert fault_text(fault.value).what == f"the date in its header is none: {line}"
        given = read_recording(DAY.igc(date_line=line), "x.igc", local_day=date(2026, 4, 5))
        assert given.utc_day == date(2026, 4, 5)

    def test_it_is_of_the_fixes_that_go_on_from_each_other(self) -> None:
        ahead = DAY.samples[2].at_s
        wrong = DAY.changed(lambda s: replace(s, at_s=s.at_s + 5 * 3_600) if s.at_s <= ahead else s)
        recording = read_recording(wrong.igc(), "x.igc")
        assert (recording.first_at, recording.out_of_order) == (utc("2026-04-05T09:00:03"), 3)

    def test_the_day_given_is_of_them_too(self) -> None:
        day = flight(Day(utc("2026-04-05T19:00")).stand(60), 20)  # nine in the evening on the clocks of the place
        wrong = day.changed(lambda s: replace(s, at_s=s.at_s + 5 * 3_600) if s.at_s == day.samples[0].at_s else s)
        recording = read_recording(wrong.igc(date_line=""), "x.igc", local_day=date(2026, 4, 5))
        assert recording.first_at == utc("2026-04-05T19:00:01")

    def test_the_day_given_is_that_of_the_place(self) -> None:
        far = flight(Day(utc("2026-01-10T23:30"), lat=-36.7, lon=147.0).stand(60), 60)
        recording = read_recording(far.igc(date_line=""), "x", local_day=date(2026, 1, 11))
        assert recording.first_at == utc("2026-01-10T23:30")
        assert recording.day_given

    def test_v_fixes_before_midnight_and_a_fixes_after(self) -> None:
        day = Day(utc("2026-01-10T23:59:00"), lat=-36.7, lon=147.0).stand(300)
        lost = day.changed(lambda s: replace(s, valid=s.at_s % 86_400 < 80_000))
        assert read_recording(lost.igc(), "x").fixes[-1].at_s == day.samples[-1].at_s


class TestRefused:
    def test_too_large(self, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(module, "MAX_BYTES", 100)
        assert refused(b"A" * 101) == "recording.too_large"

    @pytest.mark.parametrize(
        "data", [b"", b"\r\n\r\n", b"name;mass\nwing;4000\n", b"AXXX\nHFDTE160701\n", b"\x00" * 99]
    )
    def test_no_recording(self, data: bytes) -> None:
        assert refused(data) == "recording.not_igc"

    @pytest.mark.parametrize(
        "line",
        [
            "B1602405407121N00249342WV0028000421",
            "B1602405467121N00249342WA0028000421",
            "B1602409107121N00249342WA0028000421",
            "B1602405407121N18149342WA0028000421",
            "B2502405407121N00249342WA0028000421",
            "B1602605407121N00249342WA0028000421",
            "B1602405407121X00249342WA0028000421",
            "B1602405407121N00249342WA002800042",
            "B16024054 7121N00249342WA0028000421",
            "B160240٥407121N00249342WA0028000421",
            "B",
        ],
    )
    def test_no_fix_that_can_be_used(self, line: str) -> None:
        assert refused(f"HFDTE160701\n{line}\n".encode()) == "recording.no_fix"

    def test_broken_fixes_are_skipped_and_counted(self) -> None:
        lines = DAY.igc().split(b"\r\n")
        lines[100:103] = [lines[100][:20], b"B\xff\xfe", b"", lines[103]]
        recording = read_recording(b"\r\n".join(lines), "x")
        assert recording.broken == 2
        assert len(recording.fixes) >= len(DAY.samples) - 3


class TestFuzz:
    def ends_well(self, data: bytes) -> None:
        try:
            recording = read_recording(data, "x.igc", local_day=date(2026, 4, 5))
        except InputFault as fault:
            is_said(fault)
            return
        assert [fix.at_s for fix in recording.fixes] == sorted(fix.at_s for fix in recording.fixes)
        judge(recording.fixes)

    @given(st.binary(max_size=400))
    def test_any_bytes(self, data: bytes) -> None:
        self.ends_well(data)

    @pytest.mark.parametrize("seed", range(60))
    def test_damaged(self, seed: int) -> None:
        chance = random.Random(seed)
        data = bytearray(DAY.igc(every=chance.choice([1, 3])))
        for _ in range(chance.choice([1, 20, 200])):
            where = chance.randrange(len(data))
            if chance.random() < 0.5:
                data[where] = chance.choice(b"0123456789ABNSEWV-\r\n\x00\xff")
            else:
                del data[where : where + chance.choice([1, 2, 9, 35])]
        self.ends_well(bytes(data))

    @settings(max_examples=60, deadline=None)
    @given(
        st.lists(
            st.tuples(
                st.integers(0, 86_399),
                st.floats(-90, 90),
                st.floats(-180, 180),
                st.booleans(),
                st.integers(-999, 99_999),
            ),
            min_size=1,
            max_size=40,
        )
    )
    def test_senseless_fixes(self, rows: list[tuple[int, float, float, bool, int]]) -> None:
        lines = ["HFDTE050426"]
        for clock, lat, lon, valid, height in rows:
            at = datetime.fromtimestamp(clock, UTC)
            text = height_text(height)
            lines.append(f"B{at:%H%M%S}{degrees(lat, 2, 'NS')}{degrees(lon, 3, 'EW')}{'VA'[valid]}{text}{text}")
        self.ends_well("\n".join(lines).encode())
