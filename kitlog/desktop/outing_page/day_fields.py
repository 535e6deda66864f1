"""Name, flight types, days, start, site: the first part of the plan's form."""

from typing import Any

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtWidgets import QCompleter, QGridLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.hour_fields import MarkedField, TimeField
from kitlog.desktop.parts.fields import DateField, LineField, NumberField, TickField
from kitlog.desktop.parts.form import Form
from kitlog.desktop.parts.text import Text
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

ACROSS, LARGE = 3, 1.4
"""So many flight types stand beside each other; one less from letters as large as this, as `look.scale` has it."""

HIGHEST_M, LOWEST_M = 9_000, -500


class TypeTicks(QWidget):
    """Flight types, several at once.

    Attributes:
        ticks: by the type's name.
    """

    def __init__(self, library: Library, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(look.px(16))
        grid.setVerticalSpacing(look.px(4))
        self.ticks: dict[str, TickField] = {}
        across = ACROSS if look.scale() < LARGE else ACROSS - 1
        for number, kind in enumerate(library.flight_types):
            self.ticks[kind.name] = TickField(first_upper(_(kind.label)))
            grid.addWidget(self.ticks[kind.name], number // across, number % across)
        grid.setColumnStretch(across, 1)

    def chosen(self, before: tuple[str, ...]) -> tuple[str, ...]:
        """Names of the ticked types, in the order they were in, new ones after."""
        ticked = [name for name, tick in self.ticks.items() if tick.isChecked()]
        unknown = [name for name in before if name not in self.ticks]
        kept = [name for name in before if name in ticked or name in unknown]
        return (*kept, *(name for name in ticked if name not in kept))


class ZoneField(MarkedField):
    """A time zone by its name; names are offered while one types, and read when the field is first entered."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, hint="Europe/Vienna", parent=parent)
        self.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Offer the names of the zones from the first visit on."""
        if event.type() == QEvent.Type.FocusIn and self.completer() is None:
            from zoneinfo import available_timezones

            from PySide6.QtCore import Qt

            offered = QCompleter(sorted(available_timezones()), self)
            offered.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
            offered.setFilterMode(Qt.MatchFlag.MatchContains)
            self.setCompleter(offered)
        return super().eventFilter(watched, event)


class DayFields(QWidget):
    """What, when and where.

    Attributes:
        changed: something was changed.
        notes: the line under a field, by the field's name in the model.
    """

    changed = Signal()

    def __init__(self, outing: Outing, library: Library, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        site = outing.site
        self._before = outing.flight_types
        self.name = MarkedField(outing.name)
        self.types = TypeTicks(library)
        for name, tick in self.types.ticks.items():
            tick.setChecked(name in outing.flight_types)
        self.first, self.last = DateField(), DateField()
        self.first.put(outing.first_day)
        self.last.put(outing.last_day)
        self.start, self.zone = TimeField(outing.starts_at), ZoneField(outing.time_zone or "")
        self.site = LineField(site.name)
        self.lat = NumberField("°", decimals=5, least=-90, most=90)
        self.lon = NumberField("°", decimals=5, least=-180, most=180)
        self.launch, self.landing, self.top = (NumberField("m", least=LOWEST_M, most=HIGHEST_M) for _number in range(3))
        pairs = (
            (self.lat, site.lat_deg),
            (self.lon, site.lon_deg),
            (self.launch, site.launch_m),
            (self.landing, site.landing_m),
            (self.top, outing.top_m),
        )
        for field, value in pairs:
            field.put(value)
        self.way_home = LineField(outing.way_home, hint=_("train, last one at …; who fetches"))
        self.notes = self._assemble()
        self._listen()

    def values(self) -> dict[str, Any]:
        """What was entered, by the names of the model."""
        first = self.first.day()
        return {
            "name": self.name.text().strip(),
            "flight_types": self.types.chosen(self._before),
            "first_day": first,
            "last_day": self.last.day() or first,
            "starts_at": self.start.time(),
            "time_zone": self.zone.text().strip() or None,
            "top_m": self.top.number(),
            "way_home": self.way_home.text().strip(),
            "site": {
                "name": self.site.text().strip(),
                "lat_deg": self.lat.number(),
                "lon_deg": self.lon.number(),
                "launch_m": self.launch.number(),
                "landing_m": self.landing.number(),
            },
        }

    def faults(self) -> dict[str, str]:
        """What cannot be so before the model is asked, by the field."""
        found = {}
        if not self.name.text().strip():
            found["name"] = _("It needs a name.")
        if not self.types.chosen(self._before):
            found["flight_types"] = _("Choose at least one.")
        if self.first.day() is None:
            found["first_day"] = _("It needs a day.")
        if self.start.is_wrong():
            found["starts_at"] = _("Write the time as 10:00.")
        return found

    def _assemble(self) -> dict[str, Text]:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        form, notes = Form(112), dict[str, Text]()
        self.last.setAccessibleName(_("Last day"))
        self.lon.setAccessibleName(_("Longitude"))
        self.landing.setAccessibleName(_("Height of the landing"))
        self.zone.setAccessibleName(_("Time zone"))
        for day in (self.first, self.last):
            day.setMinimumWidth(look.px(152))
        for field in (self.lat, self.lon, self.launch, self.landing, self.top):
            field.setMinimumWidth(look.px(132))
        self.zone.setMinimumWidth(look.px(200))
        form.add(_("Name"), self.name)
        notes["name"] = form.add_note(tone="stop")
        form.add(_("Flight types"), self.types)
        notes["flight_types"] = form.add_note(tone="stop")
        form.add(_("First day"), self.first, Text(_("to"), Role.SECOND, "muted"), self.last)
        notes["first_day"] = form.add_note(tone="stop")
        form.add(_("Start, time zone"), self.start, self.zone)
        notes["starts_at"] = form.add_note(tone="stop")
        form.add(_("Launch site"), self.site)
        form.add(_("Latitude"), self.lat, Text(_("longitude"), Role.SECOND, "muted"), self.lon)
        form.add(_("Launch height"), self.launch, Text(_("landing"), Role.SECOND, "muted"), self.landing)
        form.add(_("Planned top"), self.top, Text(_("above the sea"), Role.SECOND, "muted"))
        notes["site"] = form.add_note(tone="stop")
        form.add(_("Way home"), self.way_home)
        rows.addWidget(form)
        return notes

    def _listen(self) -> None:
        for line in (self.name, self.start, self.zone, self.site, self.way_home):
            line.textChanged.connect(lambda _text: self.changed.emit())
        for tick in self.types.ticks.values():
            tick.toggled.connect(lambda _on: self.changed.emit())
        for day in (self.first, self.last):
            day.dateChanged.connect(lambda _day: self.changed.emit())
        for number in (self.lat, self.lon, self.launch, self.landing, self.top):
            number.valueChanged.connect(lambda _value: self.changed.emit())
