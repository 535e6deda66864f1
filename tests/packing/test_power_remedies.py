"""A change that was run, as a remedy and as a sentence."""

import pytest

from kitlog.budget.power.changes.given import ToHand
from kitlog.budget.power.changes.weigh import plan, remedies
from kitlog.budget.power.day import Day
from kitlog.packing.power_remedies import power_remedy
from kitlog.wording.remedies import remedy_text

NAMES = {"phone": "Phone", "radio": "Radio", "bank": "Bank", "spare": "Large bank"}


def device(name, wh, watts=1.0, **more):
    draw = {"flight": watts}
    return {"id": name, "cell_Wh": wh, "draw_W": draw, "charge_max_W": 5, "charge_eff": 1, "knee": 1, **more}


def said(devices, banks=(), plugs=(), high_h=None, **hand):
    fields = {"devices": devices, "banks": banks, "plugs": plugs}
    days = [
        Day.model_validate({**fields, "phases": [{"id": "flight", "hours": hours, "ambient_C": 25}]})
        for hours in (6, high_h)
        if hours is not None
    ]
    found = remedies(plan(*days), ToHand.model_validate(hand))
    return [remedy_text(power_remedy(one), NAMES).replace("\xa0", " ") for one in found]


SPARE = {"id": "spare", "cell_Wh": 20, "eff": 1}
USE = {"device": "phone", "name": "screen off", "draw_W": {"flight": 0.5}}


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        (
            {"spare_banks": [{"bank": SPARE, "mass_g": 300}], "cable_g": {"phone": 20}, "high_h": 7},
            "Take Large bank along for Phone (flight): all lasts; +320 g",
        ),
        (
            {"spare_banks": [{"bank": {**SPARE, "cell_Wh": 1}}]},
            "Take Large bank along for Phone (flight): 60 min less short; mass not known",
        ),
        ({"other_uses": [USE], "high_h": 9}, "Use Phone less: screen off: all lasts on the likely day"),
        ({"may_be_off": ["phone"]}, "Leave Phone off: all the rest lasts on the likely day"),
    ],
)
def test_sentences(fields, sentence):
    assert said([device("phone", 4)], **fields) == [sentence]


def test_harm_is_named():
    """The radio lives 6 h off the bank of 12 Wh. With the phone it is empty after 4 h, and the radio's 1 Wh last .5 h:
    the phone is 2 h less short, the radio 1.5 h short."""
    radio = device("radio", 1, 2.0, charge_max_W=0)
    bank = {"id": "bank", "cell_Wh": 12, "eff": 1, "ports": 2}
    plugs = [{"phase": "flight", "device": "radio", "bank": "bank"}]
    found = said([radio, device("phone", 4)], [bank], plugs, cable_g={"phone": 20})
    assert found == [
        "Plug Phone into Bank too (flight): 30 min less short; +20 g; but then worse for Radio; it runs Bank empty"
    ]


def test_what_is_only_emptied_is_no_one_s_loss():
    bank = {"id": "bank", "cell_Wh": 3, "eff": 1}
    (found,) = said([device("phone", 4)], [bank], cable_g={"phone": 0})
    assert found == "Plug Phone into Bank too (flight): all lasts on the likely day; it runs Bank empty"


def test_warmer_says_where():
    fields = {"devices": [device("phone", 7)], "phases": [{"id": "flight", "hours": 6, "ambient_C": 0}]}
    place = {"id": "phone", "place": "under the shell", "temp_offset_C": 12}
    (one,) = remedies(plan(Day.model_validate(fields)), ToHand.model_validate({"warmer_places": [place]}))
    said_of_it = remedy_text(power_remedy(one), NAMES)
    assert said_of_it == "Carry Phone warmer (under the shell): all lasts on the likely day"
