"""Words of the import: what a column can stand for, how that was found, what is asked, and what can be answered."""

from collections.abc import Mapping

from kitlog.wording.translate import N_, _, ngettext

FIELD_GROUPS: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = (
    (
        N_("The thing itself"),
        (
            ("name", N_("name")),
            ("kind", N_("kind")),
            ("quantity", N_("pieces")),
            ("maker", N_("maker")),
            ("model", N_("model")),
            ("serial", N_("serial number")),
            ("colour", N_("colour")),
            ("value", N_("value, price")),
            ("state", N_("state: in service, lent, lost")),
            ("belongs_to", N_("whose it is, if borrowed")),
            ("lent_to", N_("who has it, if lent")),
            ("back_by", N_("day it goes or comes back")),
            ("serves", N_("what it serves for")),
            ("fitted_to", N_("fitted to")),
            ("notes", N_("notes")),
        ),
    ),
    (
        N_("Mass"),
        (
            ("mass_g", N_("mass of one piece")),
            ("mass_all", N_("mass of all pieces together")),
            ("mass_more", N_("another figure of the mass")),
            ("mass_unit", N_("unit of the masses")),
            ("mass_source", N_("how the mass was taken")),
        ),
    ),
    (N_("Where it rides"), (("zone", N_("zone in the air")), ("zone_on_foot", N_("zone on foot")))),
    (
        N_("Days and use"),
        (
            ("made_on", N_("day it was made")),
            ("bought_on", N_("day it was bought")),
            ("first_used_on", N_("day of first use")),
            ("opening_h", N_("hours flown before the log")),
            ("opening_launches", N_("launches before the log")),
            ("opening_ground_h", N_("hours of ground handling before the log")),
        ),
    ),
    (
        N_("Wing"),
        (
            ("wing_range", N_("wing: certified range, both limits")),
            ("wing_min_kg", N_("wing: least take-off mass")),
            ("wing_max_kg", N_("wing: greatest take-off mass")),
            ("wing_flat_m2", N_("wing: flat area")),
            ("wing_projected_m2", N_("wing: projected area")),
            ("wing_trim_kmh", N_("wing: trim speed")),
            ("wing_sink_ms", N_("wing: least sink")),
            ("wing_figures_kg", N_("wing: mass that speed and sink hold for")),
        ),
    ),
    (
        N_("Harness and reserve"),
        (
            ("harness_max_kg", N_("harness: greatest load")),
            ("harness_volume_l", N_("harness: volume")),
            ("reserve_range", N_("reserve: load range, both limits")),
            ("reserve_min_kg", N_("reserve: least load")),
            ("reserve_max_kg", N_("reserve: greatest load")),
            ("reserve_sink_ms", N_("reserve: sink")),
            ("reserve_sink_at_kg", N_("reserve: load that the sink holds for")),
        ),
    ),
    (
        N_("Power"),
        (
            ("battery", N_("battery, as printed on it")),
            ("battery_wh", N_("battery: energy")),
            ("battery_mah", N_("battery: capacity")),
            ("battery_v", N_("battery: voltage")),
            ("battery_health_pct", N_("battery: health")),
            ("battery_cutoff_pct", N_("battery: charge at which the device stops")),
            ("draw_w", N_("draw while it is on")),
            ("charge_max_w", N_("greatest charging power")),
            ("connector", N_("connector")),
            ("battery_on_hand_pct", N_("battery: charge on hand")),
            ("battery_on_hand_at", N_("battery: when that charge was seen")),
            ("battery_swollen_on", N_("battery: day it was seen swollen")),
            ("bank_rated_mah", N_("power bank: capacity at its 5 V port")),
            ("bank_efficiency_pct", N_("power bank: efficiency")),
            ("bank_ports", N_("power bank: ports")),
            ("bank_port_w", N_("power bank: power of one port")),
            ("bank_total_w", N_("power bank: power of all ports")),
            ("bank_min_w", N_("power bank: least draw that keeps it on")),
            ("bank_off_s", N_("power bank: seconds until it switches off")),
            ("charger_total_w", N_("charger: power of all ports")),
        ),
    ),
    (
        N_("Clothes and water"),
        (
            ("clo", N_("garment: insulation")),
            ("garment_layer", N_("garment: layer")),
            ("garment_part", N_("garment: part of the body")),
            ("vessel_ml", N_("vessel: what it holds")),
            ("volume_ml", N_("room it takes in the bag")),
        ),
    ),
)
"""Everything that a column can stand for, in groups: name of the target and the words of a pilot."""

_FIELDS = {name: words for _group, fields in FIELD_GROUPS for name, words in fields}

_HOW = {
    "ours": N_("our own heading"),
    "word": N_("a word kitlog knows"),
    "part": N_("a word in the heading"),
    "cells": N_("what its cells hold"),
    "double": N_("another column fits better"),
    "remembered": N_("as you chose before"),
    "chosen": N_("chosen by you"),
    "": N_("not understood"),
}

_ASKED = {
    "dates": N_("Which stands first in these dates?"),
    "decimal": N_("What does the mark in these figures mean?"),
    "mass_unit": N_("What is the unit of these masses?"),
    "mah_at": N_("5 V stands beside mAh. What are the mAh of?"),
    "energy": N_("Wh and mAh × V disagree. Which holds?"),
    "two_masses": N_("Two columns of masses disagree. Which holds?"),
    "months": N_("Which day does a month stand for?"),
    "day_numbers": N_("Where does the spreadsheet’s count of days begin?"),
    "unread": N_("These cells say nothing that fits here."),
}

_ANSWERS = {
    ("dates", "dmy"): N_("the day"),
    ("dates", "mdy"): N_("the month"),
    ("dates", "ymd"): N_("the year"),
    ("decimal", "comma"): N_("a decimal comma"),
    ("decimal", "point"): N_("a decimal point"),
    ("mass_unit", "g"): N_("grams"),
    ("mass_unit", "kg"): N_("kilograms"),
    ("mass_unit", "oz"): N_("ounces"),
    ("mass_unit", "lb"): N_("pounds"),
    ("mah_at", "cell"): N_("of the cell inside"),
    ("mah_at", "5v"): N_("at the 5 V of the socket"),
    ("energy", "wh"): N_("the Wh"),
    ("energy", "mah"): N_("mAh × V"),
    ("two_masses", "first"): N_("the first column"),
    ("two_masses", "second"): N_("the second column"),
    ("months", "first"): N_("its first day"),
    ("months", "last"): N_("its last day"),
    ("day_numbers", "1900"): N_("in 1900, as most do"),
    ("day_numbers", "1904"): N_("in 1904"),
}


def field_word(target: str) -> str:
    """What a column can stand for, as a pilot says it; empty: it is left out."""
    return _(_FIELDS[target]) if target else _("left out")


def how_text(how: str) -> str:
    """How the meaning of a column was found."""
    return _(_HOW[how])


def asked_text(question: str) -> str:
    """A question about the cells of a column."""
    return _(_ASKED[question])


def answer_text(question: str, answer: str) -> str:
    """An answer to it; ``empty`` leaves the cells not known."""
    return _("leave them not known") if answer == "empty" else _(_ANSWERS[question, answer])


def cells_text(n: int, rows: str) -> str:
    """How many cells a question is about, and the rows they stand in, already said."""
    return ngettext("{n} cell, {rows}", "{n} cells, {rows}", n).format(n=n, rows=rows)


def mend_text() -> str:
    """What else can be done about cells that cannot be taken."""
    return _("Or mend them in the table, and read it again.")


def open_text(n: int) -> str:
    """How many questions are open."""
    return ngettext("{n} open", "{n} open", n).format(n=n) if n else _("all answered")


def count_words() -> Mapping[str, str]:
    """Words under the figures of a preview."""
    return {
        "new": _("new"),
        "changed": _("changed"),
        "met": _("in your kit already"),
        "unchanged": _("as they were"),
        "skipped": _("skipped"),
        "doubtful": _("doubtful cells"),
        "empty": _("left not known"),
        "rules": _("service rules"),
        "records": _("service records"),
        "written": _("to be written"),
    }


FIELDS = frozenset(_FIELDS)
"""Every target that has words."""
