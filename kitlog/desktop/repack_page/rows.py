"""A row of the repack as data, and the words that rows share."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

from kitlog.budget.result import Finding
from kitlog.kit.kinds import Zone
from kitlog.outing.needs import Need
from kitlog.packing.assessment import ListLine
from kitlog.paint.mark import Mark
from kitlog.wording.findings import Names
from kitlog.wording.lines import why_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import first_upper, word


class RowKind(Enum):
    """What a row is."""

    HEAD = "head"
    LINE = "line"
    EXCEPTION = "exception"


@dataclass(frozen=True, slots=True)
class Row:
    """One row.

    Attributes:
        key: the line that it ticks, empty for a head and for a need without an item.
        title, more, note: the name, the maker beside it, the second line.
        word: what is wrong, behind the name; mark: with which state.
        right, right_note: at the right end: mass or act, and what stands before or below it.
        ticked, missing: what the box shows; item_id: of the item, empty for checks and own lines.
        faded: the figures at its right end are not known, or no longer so.
        zone: in which it is stowed; finding: what an exception comes from.
    """

    kind: RowKind
    title: str
    key: str = ""
    more: str = ""
    note: str = ""
    word: str = ""
    mark: Mark = Mark.NONE
    right: str = ""
    right_note: str = ""
    ticked: bool = False
    missing: bool = False
    item_id: str = ""
    faded: bool = False
    zone: Zone | None = None
    finding: Finding | None = None

    @property
    def can_stand(self) -> bool:
        """Whether the keys can stand on it."""
        return self.kind is not RowKind.HEAD

    @property
    def spoken(self) -> str:
        """All of it in one line, the state of the box first."""
        box = _("missing") if self.missing else _("ticked") if self.ticked else _("not ticked") if self.key else ""
        parts = (
            box if self.can_stand else "",
            self.title,
            self.more,
            self.word,
            self.note,
            self.right,
            self.right_note,
        )
        return ", ".join(part for part in parts if part)


@dataclass(frozen=True, slots=True)
class Offers:
    """What could go instead, in words, by the id of an item: the name and its mass."""

    by_item: Mapping[str, tuple[str, str]]

    def of(self, item_id: str) -> tuple[str, str]:
        """Act and note of an item's exception row."""
        found = self.by_item.get(item_id)
        return ("", "") if found is None else (_("Swap: {item}").format(item=found[0]), found[1])


def reason_text(line: ListLine, needs: dict[str, Need], names: Names) -> str:
    """Why a line goes: how strongly, then what for."""
    return first_upper(why_text(line, needs, names).replace(", ", ": ", 1))


def grouped(title: str, lines: list[Row], right: str) -> list[Row]:
    """A head and its lines, nothing without lines."""
    if not lines:
        return []
    done = sum(row.ticked for row in lines)
    said = ngettext("{done} of {n} done", "{done} of {n} done", len(lines)).format(done=done, n=len(lines))
    return [Row(RowKind.HEAD, title, note=said, right=right), *lines]


def maker_text(maker: str, model: str) -> str:
    """What stands beside the name of an item."""
    return " ".join(part for part in (maker, model) if part)


def zone_word(zone: Zone) -> str:
    """A zone as a word with a capital."""
    return first_upper(word(zone.value))
