"""What a row is called and of which kind it is, where the table has no column for it."""

from collections.abc import Sequence

from kitlog.files.table.kind_words import kind_guessed
from kitlog.files.table.read_columns import Sheet, spots_of
from kitlog.files.table.remark import Remark
from kitlog.files.table.vocabulary import Vocabulary
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
    for at, kind in enumerate(kinds):
        name = sheet.values["name"][at]
        if kind is None and name is not None and not sheet.own:
            kinds[at] = kind_guessed(str(name), words)
            (other if kinds[at] is None else guessed).append(at)
    sheet.guesses["kind"] = sheet.guesses.get("kind", frozenset()) | frozenset(guessed) | frozenset(other)
    _tell(sheet, "table.kind_guessed", guessed)
    _tell(sheet, "table.kind_none", other)


def _tell(sheet: Sheet, code: str, positions: Sequence[int]) -> None:
    if positions:
        names = tuple(str(sheet.values["name"][at]) for at in positions)
        kinds = tuple(str(sheet.values["kind"][at] or Kind.OTHER) for at in positions)
        sheet.remarks.append(Remark(code, {"rows": spots_of(sheet, positions), "names": names, "kinds": kinds}))
