"""What a row is called and of which kind it is, where the table has no column for it."""

from collections.abc import Sequence

from kitlog.files.csv_problems import shown
from kitlog.files.table.kind_words import kind_guessed
from kitlog.files.table.read_columns import Sheet, spots_of
from kitlog.files.table.remark import Remark
from kitlog.files.table.vocabulary import Vocabulary
from kitlog.files.table.word_column import NOTHING_SAID
from kitlog.files.table.word_forms import form
from kitlog.kit.kinds import Kind

_NAMING = ("name", "maker", "model", "kind")


def settle_names(sheet: Sheet) -> None:
    """Leave a name in the sheet for each row that says anything to make one of; maker and model stand in, then kind."""
    n = len(sheet.rows)
    names = sheet.values.setdefault("name", [None] * n)
    made = []
    for at in range(n):
        if names[at] is None:
            names[at] = _made_of(sheet, at)
            if names[at] is not None:
                made.append(at)
    if made:
        sheet.remarks.append(Remark("table.name_made", {"rows": spots_of(sheet, made), "name": str(names[made[0]])}))


def _made_of(sheet: Sheet, at: int) -> str | None:
    parts = [sheet.cell(at, target).strip() for target in ("maker", "model") if sheet.values.get(target, {})]
    made = " ".join(part for part in parts if part)
    return made or sheet.cell(at, "kind").strip() or None


def settle_kinds(sheet: Sheet, words: Vocabulary) -> None:
    """Leave a kind in the sheet for each row; where no cell says it, the name may, and that is told as a guess."""
    kinds = sheet.values.setdefault("kind", [None] * len(sheet.rows))
    guessed: list[int] = []
    other: list[int] = []
    _name_first(sheet, kinds, guessed, words)
    for at in (at for at, kind in enumerate(kinds) if kind is None):
        name = sheet.values["name"][at]
        if name is not None and (_category(sheet, at) or not sheet.own):
            kinds[at] = None if sheet.own else kind_guessed(str(name), words)
            (other if kinds[at] is None else guessed).append(at)
    sheet.guesses["kind"] = sheet.guesses.get("kind", frozenset()) | frozenset(guessed) | frozenset(other)
    _tell(sheet, "table.kind_guessed", guessed)
    _tell(sheet, "table.kind_none", [at for at in other if not _category(sheet, at)])
    _tell_categories(sheet, other)


def _name_first(sheet: Sheet, kinds: list[object], guessed: list[int], words: Vocabulary) -> None:
    """Rows whose word for the kind may be of rescue in general ("Secours"), and whose name tells another kind."""
    if sheet.own or Kind.RESERVE not in kinds:
        return
    for at, kind in enumerate(kinds):
        name = sheet.values["name"][at]
        if kind is Kind.RESERVE and name is not None and form(sheet.cell(at, "kind")) in words.kinds.either:
            told = kind_guessed(str(name), words)
            if told not in (None, kind):
                kinds[at] = told
                guessed.append(at)


def _category(sheet: Sheet, at: int) -> str:
    """The broad category in the column of kinds, of a row whose kind is still open."""
    text = sheet.cell(at, "kind").strip()
    return "" if text in NOTHING_SAID else shown(text)


def _tell_categories(sheet: Sheet, positions: Sequence[int]) -> None:
    by_word: dict[str, list[int]] = {}
    for at in positions:
        by_word.setdefault(_category(sheet, at), []).append(at)
    for word, places in by_word.items():
        if word:
            sheet.remarks.append(Remark("table.kind_other", {"word": word, "at": tuple(places)}))


def _tell(sheet: Sheet, code: str, positions: Sequence[int]) -> None:
    if positions:
        names = tuple(str(sheet.values["name"][at]) for at in positions)
        kinds = tuple(str(sheet.values["kind"][at] or Kind.OTHER) for at in positions)
        sheet.remarks.append(Remark(code, {"rows": spots_of(sheet, positions), "names": names, "kinds": kinds}))
