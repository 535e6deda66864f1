"""Connectors and cables: what a text names, and who gets a cable. Nothing that is not named is guessed."""

import pytest

from kitlog.packing.cables import Connector, Fit, Wanted, connectors, ends, fits

C, A, MICRO, MINI, BARREL = (
    Connector.USB_C,
    Connector.USB_A,
    Connector.MICRO_USB,
    Connector.MINI_USB,
    Connector.BARREL,
)


class TestText:
    @pytest.mark.parametrize(
        ("text", "found"),
        [
            ("USB-C", (C,)),
            ("usb c", (C,)),
            ("USB type-C", (C,)),
            ("Type C", (C,)),
            ("2 x USB-A, 1 x USB-C", (A, C)),
            ("Micro-USB", (MICRO,)),
            ("micro USB", (MICRO,)),
            ("mini-USB", (MINI,)),
            ("barrel 5.5 mm", (BARREL,)),
            ("USB", ()),
            ("USB cable", ()),
            ("USB-Car charger", ()),
            ("magnetic", ()),
            ("", ()),
        ],
    )
    def test_connectors(self, text, found):
        assert connectors(text) == found

    @pytest.mark.parametrize(
        ("text", "found"),
        [
            ("USB-C to micro-USB", (C, MICRO)),
            ("Cable USB-A to USB-C, 30 cm", (A, C)),
            ("USB-C - USB-C", (C, C)),
            ("usb-a → barrel", (A, BARREL)),
            ("USB-C cable", None),
            ("USB-C and USB-A", None),
            ("USB-A/USB-C", None),
            ("USB-C to USB-C and micro-USB", None),
            ("Cables", None),
        ],
    )
    def test_both_ends_or_none(self, text, found):
        assert ends(text) == found


def wanted(device, ports, sockets, bank="bank"):
    return Wanted(device, bank, frozenset(ports), frozenset(sockets))


PHONE, RADIO, OLD = wanted("phone", [A, C], [C]), wanted("radio", [A, C], [C]), wanted("old", [A, C], [MICRO])


class TestFits:
    @pytest.mark.parametrize(
        ("cables", "fit"),
        [
            ([(C, C)], Fit.FITS),
            ([(A, C)], Fit.FITS),
            ([(C, A)], Fit.FITS),
            ([(A, MICRO)], Fit.MISSING),
            ([], Fit.MISSING),
            ([None], Fit.NOT_KNOWN),
            ([(A, MICRO), None], Fit.NOT_KNOWN),
            ([None, (A, C)], Fit.FITS),
        ],
    )
    def test_one_phone(self, cables, fit):
        assert fits([PHONE], cables) == {"phone": fit}

    @pytest.mark.parametrize("plug", [wanted("thing", [], [C]), wanted("thing", [C], []), wanted("thing", [], [])])
    def test_an_unknown_connector_is_never_fine(self, plug):
        assert fits([plug], [(C, C)]) == {"thing": Fit.NOT_KNOWN}
        assert fits([plug], [None]) == {"thing": Fit.NOT_KNOWN}
        assert fits([plug], []) == {"thing": Fit.MISSING}

    def test_one_cable_serves_one_at_a_time(self):
        found = fits([PHONE, RADIO], [(A, C)])
        assert sorted(found.values()) == [Fit.FITS, Fit.TAKEN]

    def test_cables_are_dealt_so_that_most_get_one(self):
        """The phone takes either; the port of the second bank is USB-A only, so the phone leaves it that cable."""
        other = wanted("radio", [A], [C], bank="second")
        assert set(fits([PHONE, other], [(A, C), (C, C)]).values()) == {Fit.FITS}
        assert set(fits([other, PHONE], [(C, C), (A, C)]).values()) == {Fit.FITS}

    def test_each_by_its_own_socket(self):
        assert fits([PHONE, OLD], [(A, C)]) == {"phone": Fit.FITS, "old": Fit.MISSING}
