"""Synthetic recordings whose truth is known: what happens second by second, written as an IGC file.

A `Day` is made of acts (stand, walk, glide, circle, soar, drive, ride a cable, handle the wing); each act says whether it
is in the air. What comes out are the fixes and, from the acts alone, the true take-offs, landings and airtime.
"""

import random
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from math import cos, hypot, pi, radians, sin
from typing import Self

M_PER_DEG = 111_195.0
PRESSURE_BELOW_M = 40


@dataclass(frozen=True)
class Sample:
    at_s: int
    x: float
    y: float
    h: float
    valid: bool = True
    gnss: bool = True
    pressure: bool = True


@dataclass
class Day:
    """What happens from `begins` on, near a place."""

    begins: datetime
    lat: float = 47.0
    lon: float = 12.0
    height: float = 1_650.0
    samples: list[Sample] = field(default_factory=list)
    flown: list[tuple[int, int]] = field(default_factory=list)
    x: float = 0.0
    y: float = 0.0
    course: float = 0.0

    @property
    def now_s(self) -> int:
        return self.samples[-1].at_s if self.samples else int(self.begins.timestamp())

    def _act(self, seconds: int, step: Callable[[int], tuple[float, float, float]], *, air: bool) -> Self:
        """`step` gives metres east, north and up of each second."""
        begin = self.now_s
        if not self.samples:
            self.samples.append(Sample(begin, self.x, self.y, self.height))
        for n in range(1, seconds + 1):
            dx, dy, dh = step(n)
            self.x, self.y, self.height = self.x + dx, self.y + dy, self.height + dh
            self.samples.append(Sample(begin + n, self.x, self.y, self.height))
        if air:
            if self.flown and self.flown[-1][1] == begin:
                self.flown[-1] = (self.flown[-1][0], begin + seconds)
            else:
                self.flown.append((begin, begin + seconds))
        return self

    def _ahead(self, speed: float, climb: float) -> tuple[float, float, float]:
        return speed * sin(self.course), speed * cos(self.course), climb

    def stand(self, seconds: int) -> Self:
        return self._act(seconds, lambda _: (0.0, 0.0, 0.0), air=False)

    def walk(self, seconds: int, speed: float = 1.2, climb: float = 0.0) -> Self:
        return self._act(seconds, lambda _: self._ahead(speed, climb), air=False)

    def glide(self, seconds: int, speed: float = 10.0, climb: float = -1.2) -> Self:
        return self._act(seconds, lambda _: self._ahead(speed, climb), air=True)

    def circle(
        self, seconds: int, speed: float = 9.5, climb: float = 1.5, radius: float = 28.0, drift: float = 2.0
    ) -> Self:
        """A thermal, drifting east."""

        def step(_: int) -> tuple[float, float, float]:
            self.course += speed / radius
            dx, dy, dh = self._ahead(speed, climb)
            return dx + drift, dy, dh

        return self._act(seconds, step, air=True)

    def soar(self, seconds: int, speed: float = 9.0, beat: int = 90) -> Self:
        """To and fro along a ridge, up and down a little."""

        def step(n: int) -> tuple[float, float, float]:
            if n % beat == 0:
                self.course += pi
            dx, dy, _ = self._ahead(speed, 0.0)
            return dx, dy, 0.6 * sin(n / 23)

        return self._act(seconds, step, air=True)

    def drive(
        self, seconds: int, speed: float = 18.0, climb: float = 0.0, stop_every: int = 0, bend: float = 0.01
    ) -> Self:
        """A road with bends, and traffic lights if `stop_every` is given."""

        def step(n: int) -> tuple[float, float, float]:
            self.course += bend * sin(n / 40)
            if stop_every and n % stop_every < 25:
                return 0.0, 0.0, 0.0
            return self._ahead(speed * (0.8 + 0.2 * sin(n / 15)), climb)

        return self._act(seconds, step, air=False)

    def cable(self, seconds: int, speed: float = 6.0, climb: float = 2.0) -> Self:
        return self._act(seconds, lambda _: self._ahead(speed, climb), air=False)

    def sail(self, seconds: int, speed: float = 5.5) -> Self:
        """A boat on small waves."""
        return self._act(seconds, lambda n: self._ahead(speed, 0.3 * cos(n / 2)), air=False)

    def cycle(self, seconds: int, speed: float = 6.0, grade: float = 0.05) -> Self:
        """A rolling road: slow uphill, quick downhill."""

        def step(n: int) -> tuple[float, float, float]:
            self.course += 0.004 * sin(n / 60)
            slope = grade * sin(n / 40)
            pace = speed - 50 * slope
            return self._ahead(max(pace, 2.5), slope * max(pace, 2.5))

        return self._act(seconds, step, air=False)

    def handle(self, seconds: int, seed: int = 1) -> Self:
        """Ground handling: short runs to and fro on a meadow, with stops."""
        chance = random.Random(seed)
        home = (self.x, self.y)
        pace = [0.0]

        def step(n: int) -> tuple[float, float, float]:
            if n % 12 == 0:
                pace[0] = chance.choice([0.0, 0.5, 1.5, 3.5])
                away = hypot(self.x - home[0], self.y - home[1]) > 40
                self.course = chance.uniform(0, 2 * pi) if not away else pi + self._from(home)
            return self._ahead(pace[0], chance.uniform(-0.2, 0.2))

        return self._act(seconds, step, air=False)

    def _from(self, home: tuple[float, float]) -> float:
        from math import atan2

        return atan2(self.x - home[0], self.y - home[1])

    @property
    def airtime_min(self) -> float:
        return sum(end - start for start, end in self.flown) / 60

    @property
    def takeoff(self) -> datetime:
        return datetime.fromtimestamp(self.flown[0][0], UTC)

    @property
    def landing(self) -> datetime:
        return datetime.fromtimestamp(self.flown[-1][1], UTC)

    @property
    def top(self) -> int:
        spans = self.flown
        return round(max(s.h for s in self.samples if any(a <= s.at_s <= b for a, b in spans)))

    def at(self, sample: Sample) -> tuple[float, float]:
        lon = self.lon + sample.x / M_PER_DEG / cos(radians(self.lat))
        return self.lat + sample.y / M_PER_DEG, (lon + 180) % 360 - 180

    def igc(self, *, date_line: str | None = None, every: int = 1, lines: Sequence[str] = ()) -> bytes:
        first = datetime.fromtimestamp(self.samples[0].at_s, UTC)
        date = f"HFDTE{first:%d%m%y}" if date_line is None else date_line
        head = ["AXKL001", *([date] if date else []), "HFPLTPILOTINCHARGE: A Pilot", "HFGTYGLIDERTYPE: Wing A", *lines]
        body = [self.record(sample) for sample in self.samples[::every]]
        return "\r\n".join([*head, *body, "GAB12", ""]).encode("ascii")

    def record(self, sample: Sample) -> str:
        lat, lon = self.at(sample)
        gnss = height_text(sample.h if sample.gnss else 0)
        pressure = height_text(sample.h - PRESSURE_BELOW_M if sample.pressure else 0)
        at = datetime.fromtimestamp(sample.at_s, UTC)
        validity = "A" if sample.valid else "V"
        return f"B{at:%H%M%S}{degrees(lat, 2, 'NS')}{degrees(lon, 3, 'EW')}{validity}{pressure}{gnss}"

    def changed(self, change: Callable[[Sample], Sample | None]) -> "Day":
        """The same day, recorded otherwise; None leaves a fix out."""
        samples = [new for sample in self.samples if (new := change(sample)) is not None]
        return replace(self, samples=samples, flown=list(self.flown))

    def noisy(self, sigma_m: float, seed: int = 7) -> "Day":
        chance = random.Random(seed)

        def shake(s: Sample) -> Sample:
            return replace(
                s,
                x=s.x + chance.gauss(0, sigma_m),
                y=s.y + chance.gauss(0, sigma_m),
                h=s.h + chance.gauss(0, sigma_m / 3),
            )

        return self.changed(shake)

    def without(self, start_s: int, seconds: int) -> "Day":
        """A gap, from seconds after the beginning on."""
        begin = self.samples[0].at_s + start_s
        return self.changed(lambda s: None if begin <= s.at_s < begin + seconds else s)


def height_text(metres: float) -> str:
    whole = round(metres)
    return f"{whole:05d}" if whole >= 0 else f"-{-whole:04d}"


def degrees(value: float, width: int, letters: str) -> str:
    whole = round(abs(value) * 60_000)
    return f"{whole // 60_000:0{width}d}{whole % 60_000:05d}{letters[value < 0]}"


def utc(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def flight(day: Day, minutes: int) -> Day:
    """A launch from the slope, thermals, glides and a landing in the valley, `minutes` in all."""
    left = minutes * 60 - 60 - 90
    day.glide(60, 9.0, -1.0)
    acts = _acts()
    while left > 0:
        seconds, act = next(acts)
        act(day, min(seconds, left))
        left -= seconds
    return day.glide(90, 8.0, -1.5)


def _acts() -> Iterator[tuple[int, Callable[[Day, int], object]]]:
    while True:
        yield 240, lambda day, s: day.circle(s)
        yield 180, lambda day, s: day.glide(s, 12.0, -1.4)
        yield 200, lambda day, s: day.soar(s)
