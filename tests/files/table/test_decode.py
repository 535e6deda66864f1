"""Encodings: the bytes come from Python's own codecs, which follow the tables of the Unicode consortium."""

import pytest

from kitlog.fault import InputFault
from kitlog.files.table.decode import decoded

WESTERN = [
    "Fußsack;2 €\n",
    "Möhre;3\n",
    "Tüte\n",
    "café\n",
    "GRÖSSE;GERÄT\nÜBERHANG;ÄRMEL\n",
    "Gurtzeug für Müller;groß;4,5\nRettungsgerät;mittel;1,9\n",
    "Nom;Modèle\nSellette légère;été\nHarnais à côté;français\nl’aile;œuf;5 €\nNoël;où;reçu\n",
    "Handschuh bis –10 °C;3\n",
    "Sack „groß“;5\n",
    "Sac « léger »;« À sec »\n",
    "Élastique;3 m²;±5\n",
    "20°;½ l\n",
    "it’s mine – really…\n",
    "Señor Müller;größe\n",
    "Arnés pequeño;3\nparacaídas año;2\n",
    "Sele för ån;3\nRäddning på;4\n",
    "Škoda Müller\n",
]


@pytest.mark.parametrize("text", WESTERN)
def test_windows_1252_is_read_right_however_short(text):
    found = decoded(text.encode("cp1252"), "f")
    assert found.text == text
    assert [remark.code for remark in found.remarks] == ["table.windows_1252"]
    assert not found.utf8


@pytest.mark.parametrize("text", WESTERN)
@pytest.mark.parametrize("encoding", ["cp850", "mac_roman"])
def test_other_encodings_are_never_taken_for_it(text, encoding):
    try:
        data = text.encode(encoding)
    except UnicodeEncodeError:
        return
    if data == text.encode("cp1252", "ignore"):
        return
    with pytest.raises(InputFault) as fault:
        decoded(data, "f")
    assert fault.value.code == "table.other_encoding"


def test_examples_are_words_with_letters_beyond_ascii():
    found = decoded("größe;für;für;plain;schön;Öl;weiß;Bär;später\n".encode("cp1252"), "f")
    assert found.remarks[0].facts["examples"] == ("größe", "für", "schön", "Öl", "weiß")


def test_utf8_with_a_broken_letter_is_no_windows_1252():
    data = "name\ngrößer\n".encode() + b"b\xe4r\n"
    with pytest.raises(InputFault) as fault:
        decoded(data, "f")
    assert (fault.value.code, fault.value.facts["row"]) == ("table.broken_utf8", 3)


def test_utf8_cut_in_the_middle_of_a_letter():
    with pytest.raises(InputFault) as fault:
        decoded("größe;für".encode()[:-2] + b"\xc3", "f")
    assert fault.value.code == "table.broken_utf8"


@pytest.mark.parametrize("encoding", ["utf-16-le", "utf-16-be"])
def test_utf16_without_its_mark_is_said(encoding):
    found = decoded("name;größe\nA;2\n".encode(encoding), "f")
    assert found.text == "name;größe\nA;2\n"
    assert [remark.code for remark in found.remarks] == ["table.utf16_unmarked"]


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-32"])
def test_marked_or_well_formed_is_read_without_a_word(encoding):
    found = decoded("name;größe 🪂\n".encode(encoding), "f")
    assert (found.text, found.remarks) == ("name;größe 🪂\n", ())


def test_bytes_that_are_no_text():
    with pytest.raises(InputFault) as fault:
        decoded(bytes(range(1, 256)) * 4, "f")
    assert fault.value.code == "table.not_text"
