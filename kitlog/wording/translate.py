"""gettext: every sentence passes here. English is the source; other languages lie in resources/translations."""

import gettext
from pathlib import Path

_catalogue: gettext.NullTranslations = gettext.NullTranslations()


def speak(folder: Path, languages: tuple[str, ...]) -> None:
    """Choose the language from the catalogues in `folder`; a language that is not there leaves English."""
    global _catalogue  # noqa: PLW0603  # the one language of the process, set once by the composition root
    _catalogue = gettext.translation("kitlog", folder, languages=list(languages), fallback=True)


def _(text: str) -> str:
    """The text in the language of the process."""
    return _catalogue.gettext(text) if text else ""


def ngettext(one: str, many: str, n: int) -> str:
    """The text for `n` things."""
    return _catalogue.ngettext(one, many, n)


def N_(text: str) -> str:  # noqa: N802  # gettext's own name for "mark, translate later"
    """Mark a text for translation where it is defined; it is translated where it is shown."""
    return text
