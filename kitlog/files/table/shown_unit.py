"""The unit in what a cell shows beside its number."""

_BLANKS = " \t\u00a0\u2009\u202f()[]{}:;,-–_"
_CURRENCIES = frozenset({
    "€", "$", "£", "¥", "eur", "euro", "euros", "usd", "gbp", "chf", "sfr", "fr", "fr.", "sek", "nok", "dkk", "pln",
    "czk", "kč", "kr", "kr.", "zł", "us$", "aud", "cad",
})  # fmt: skip
_SIGNS = frozenset("°″′µμ")


def unit_in(text: str) -> str:
    """The letters of a text that can be a unit; empty for mere signs, and for currencies, which are none here."""
    plain = text.strip(_BLANKS)
    if not any(char.isalpha() or char in _SIGNS for char in plain) or plain.casefold() in _CURRENCIES:
        return ""
    return plain
