"""What is known of batteries, banks, cables and chargers as rows: label, figure, and where it comes from."""

from collections.abc import Iterator

from kitlog.fault import Fault
from kitlog.kit.facets import Battery, ChargerPort, WayOfUse
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.capacity import energy_wh, port_efficiency, refuse_more_out_than_in
from kitlog.packing.draws import known_draw
from kitlog.wording.capacity_text import cell_from, port_from
from kitlog.wording.draw_text import given_text, range_text, short_text, sure_text, watts_text
from kitlog.wording.faults import fault_text
from kitlog.wording.figures import day_text, moment_text, percent_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import word

Row = tuple[str, str, str]

MOST_ROWS = 4
"""So many ways of use or ports are shown; the rest is counted."""


def battery_rows(item: Item) -> Iterator[Row]:
    """Energy, health, charge on hand, connector, ways of use."""
    battery = item.battery
    if battery is None:
        return
    if item.kind is not Kind.CABLE:
        yield _energy(item, battery)
    if battery.swollen_on is not None:
        yield _("Swollen"), day_text(battery.swollen_on), _("neither charge it nor take it")
    if battery.on_hand_pct is not None:
        yield _("On hand"), percent_text(battery.on_hand_pct), _seen(battery)
    if battery.connector:
        yield _("Connector"), battery.connector, ""
    yield from _ways(item, battery.ways)


def bank_rows(item: Item) -> Iterator[Row]:
    """Energy at the ports, ports, what it falls asleep under."""
    bank = item.bank
    if bank is None:
        return
    yield _at_port(item)
    parts = [
        ngettext("{n} port", "{n} ports", bank.ports).format(n=bank.ports) if bank.ports is not None else "",
        _("{most} each").format(most=short_text(bank.port_w, "W")) if bank.port_w else "",
        _("{most} together").format(most=short_text(bank.total_w, "W")) if bank.total_w else "",
    ]
    told = [part for part in parts if part]
    if told:
        yield _("Ports"), told[0], ", ".join(told[1:])
    if bank.min_w:
        after = _("after {span}").format(span=short_text(bank.off_s, "s")) if bank.off_s is not None else ""
        yield _("Asleep under"), short_text(bank.min_w, "W"), after


def charger_rows(item: Item) -> Iterator[Row]:
    """Its ports, and what all of them give together."""
    charger = item.charger
    if charger is None:
        return
    for number, port in enumerate(charger.ports[:MOST_ROWS], 1):
        yield _port(number, port)
    yield from _more(len(charger.ports))
    if charger.total_w is not None:
        yield _("Together"), short_text(charger.total_w, "W"), _("at most")


def _energy(item: Item, battery: Battery) -> Row:
    health = _("health {pct}").format(pct=percent_text(battery.health_pct)) if battery.health_pct is not None else ""
    energy, source = energy_wh(item), cell_from(item)
    figure = word("not known") if energy is None else short_text(energy, "Wh")
    return _("Battery"), figure, ", ".join(part for part in (source, health) if part)


def _at_port(item: Item) -> Row:
    try:
        refuse_more_out_than_in(item)
        energy = energy_wh(item)
        if energy is not None:
            new_wh = energy * port_efficiency(item)
            return _("At the port"), short_text(new_wh * _health(item), "Wh"), _port_note(item, new_wh)
    except Fault as fault:
        return _("At the port"), word("not known"), fault_text(fault).what
    return _("At the port"), word("not known"), ""


def _health(item: Item) -> float:
    """The share of the label energy that is left; not known counts as all, as in a simulated day."""
    pct = item.battery.health_pct if item.battery else None
    return 1.0 if pct is None else pct / 100


def _port_note(item: Item, new_wh: float) -> str:
    """Where the figure comes from; what age has taken, and what a day takes besides."""
    if _health(item) == 1.0:
        return port_from(item)
    text = _("{share}, health {pct}; {wh} when new; a day takes what it draws itself and what cold locks off that")
    return text.format(share=port_from(item), pct=percent_text(100 * _health(item)), wh=short_text(new_wh, "Wh"))


def _seen(battery: Battery) -> str:
    at = battery.on_hand_at
    return (
        ""
        if at is None
        else _("seen {day}, {clock}").format(day=day_text(at.astimezone().date()), clock=moment_text(at))
    )


def _ways(item: Item, ways: tuple[WayOfUse, ...]) -> Iterator[Row]:
    for way in ways[:MOST_ROWS]:
        draw = known_draw(way, item)
        figure = word("not known") if draw is None else watts_text(draw.likely_w)
        told = (way.name, sure_text(way.basis), "" if draw is None else range_text(draw), given_text(way), way.source)
        yield _("Draws"), figure, ", ".join(part for part in told if part)
    yield from _more(len(ways))


def _port(number: int, port: ChargerPort) -> Row:
    power = word("not known") if port.power_w is None else short_text(port.power_w, "W")
    cable = _("with a fixed cable") if port.fixed_cable else ""
    told = ", ".join(part for part in (port.connector, cable) if part)
    return _("Port {n}").format(n=number), power, told


def _more(count: int) -> Iterator[Row]:
    rest = count - MOST_ROWS
    if rest > 0:
        yield "", ngettext("and {n} more", "and {n} more", rest).format(n=rest), ""
