"""The parts of a printed sheet: findings, lists and questions as groups of blocks."""

from itertools import zip_longest

from kitlog.paint.mark import Mark
from kitlog.paint.sheet_block import Block, Frame, Group
from kitlog.paint.sheet_lines import (
    BODY,
    NAME,
    QUIET,
    SAID,
    SMALL,
    STRONG,
    WRITING,
    all_of,
    beside,
    heading,
    kept,
    lines,
    lower,
    over,
    shape,
    space,
    stack,
    write,
    writing,
)
from kitlog.paint.sheet_row import BETWEEN, BLANK, PLAIN, Look, closed, named, row
from kitlog.paint.sheet_setting import Setting
from kitlog.wording.sheet_content import AskedQuestion, Known, LaunchLine, PackedLine, PackedZone, ToldFinding
from kitlog.wording.sheet_words import head
from kitlog.wording.translate import _
from kitlog.wording.words import word

SHAPE = 17.0
"""Room of the shape of a state."""

ANSWER_SHARE = 0.56
"""Of the line to write on, how much the answer has; the hour has the rest."""


def findings(setting: Setting, told: tuple[ToldFinding, ...], width: float) -> tuple[Group, ...]:
    """Each finding with state, title, sentence, the reason that closes it, and remedies."""
    words = max((setting.text.width(word(one.state), SAID.role) for one in told), default=0.0)
    left = setting.px(SHAPE) + words + setting.px(BETWEEN)
    return tuple(_finding(setting, one, left, width) for one in told)


def _finding(setting: Setting, told: ToldFinding, left: float, width: float) -> Group:
    title = f"{told.title}: {told.figure}" if told.figure else told.title
    first, *others = lines(setting, title or BLANK, STRONG, width, left)
    first = over(first, shape(setting, told.state, 0.0, first.height))
    first = over(first, write(setting, word(told.state), SAID, setting.px(SHAPE), first.height))
    blocks = [first, *others, *lines(setting, told.sentence, QUIET, width, left)]
    blocks += lines(setting, told.closed, SAID, width, left)
    for remedy in told.remedies:
        blocks += _remedy(setting, remedy, left, width)
    return Group(kept([*blocks, space(setting.px(6))]))


def _remedy(setting: Setting, words: str, left: float, width: float) -> list[Block]:
    inside = left + setting.px(12)
    first, *others = lines(setting, words or BLANK, SMALL, width, inside)
    return [over(first, write(setting, "\u2013", SMALL, left, first.height)), *others]


def zone(setting: Setting, packed: PackedZone, width: float) -> Group:
    """A zone with its lines, each with a box to tick and its mass."""
    rows = (row for line in packed.lines for row in packed_line(setting, line, width))
    again = _("{zone}, continued").format(zone=packed.title)
    return Group(
        (*heading(setting, (packed.title, packed.remark), width, small=True), *rows),
        gap=setting.px(14),
        again=stack(heading(setting, (again, ""), width, small=True)),
    )


def packed_line(setting: Setting, line: PackedLine, width: float) -> tuple[Block, ...]:
    """A line of the list; what stops it stands there instead of the reason."""
    if not line.stop:
        return row(setting, (line.name, line.why, line.mass), width)
    left = setting.box + setting.px(BETWEEN)
    inside = left + setting.px(SHAPE)
    first, *others = lines(setting, f"{word(Mark.STOP)}: {line.stop}", SAID, width, inside)
    marked = over(first, shape(setting, Mark.STOP, left, first.height))
    return closed(setting, [*named(setting, (line.name, "", line.mass), Look(), width), marked, *others], Look(), width)


def questions(setting: Setting, asked: tuple[AskedQuestion, ...], width: float) -> Group:
    """Questions, each with a line to write on, or its answer."""
    return listed(setting, "questions", [_question(setting, one, width) for one in asked], width)


def _question(setting: Setting, asked: AskedQuestion, width: float) -> tuple[Block, ...]:
    short, colon, more = asked.words.partition(": ")
    taken = setting.text.width(asked.words, NAME.role) + setting.px(BETWEEN)
    if not asked.answer and not asked.timed and taken <= width * (1 - ANSWER_SHARE / 2):
        words, high = lines(setting, asked.words, NAME, width)[0], setting.px(WRITING)
        lowered = lower(words.paint, high - words.height)
        return (Block(high, all_of((lowered, writing(setting, taken, width, high)))),)
    blocks = [space(setting.px(4)), *lines(setting, f"{short}{colon}".strip(), NAME, width)]
    blocks += lines(setting, more, SMALL, width)
    return kept([*blocks, *(lines(setting, asked.answer, STRONG, width) or [_answer(setting, width, asked)])])


def _answer(setting: Setting, width: float, asked: AskedQuestion) -> Block:
    high = setting.px(WRITING)
    if not asked.timed:
        return Block(high, writing(setting, 0.0, width, high))
    label, end = _("at what time"), width * ANSWER_SHARE
    start = end + setting.px(8)
    words = lower(write(setting, label, QUIET, start, setting.text.line(QUIET.role)), high - setting.px(17))
    after = start + setting.text.width(label, QUIET.role) + setting.px(8)
    return Block(high, all_of((writing(setting, 0.0, end, high), words, writing(setting, after, width, high))))


def listed(setting: Setting, part: str, rows: list[tuple[Block, ...]], width: float, *, whole: bool = False) -> Group:
    """Lines under the heading of a part."""
    title, remark = head(part)
    again = heading(setting, (_("{zone}, continued").format(zone=title), ""), width, small=True)
    blocks = (block for one in rows for block in one)
    top = heading(setting, (title, remark), width, small=True)
    return Group((*top, *blocks), gap=setting.px(14), again=stack(again), whole=whole)


def charging(setting: Setting, charges: tuple[tuple[str, str], ...], width: float) -> Group:
    """What has to be full, each with a box to tick."""
    rows = [row(setting, (name, lasts, ""), width) for name, lasts in charges]
    return listed(setting, "charging", rows, width, whole=True)


def launch(setting: Setting, checks: tuple[LaunchLine, ...], width: float) -> Group:
    """The checks at launch, each with a box to tick; those that need an answer of their own stand out.

    They are read in one go, so they are not parted.
    """
    rows = [_check(setting, check, width) for check in checks]
    return listed(setting, "launch", rows, width, whole=True)


def _check(setting: Setting, check: LaunchLine, width: float) -> tuple[Block, ...]:
    short, colon, more = check.words.partition(": ")
    look = Look(STRONG if check.critical else BODY, SMALL)
    return row(setting, (f"{short}{colon}".strip(), more, ""), width, look)


def people(setting: Setting, known: tuple[Known, ...], width: float) -> Group:
    """Who knows, who flies along, who fetches."""
    rows = [
        row(setting, (f"{one.name} {one.phone}".strip(), f"{one.role}, {one.told}", ""), width, PLAIN) for one in known
    ]
    nobody = [kept(lines(setting, _("Nobody is named."), BODY, width))]
    return listed(setting, "people", rows or nobody, width)


def masses(setting: Setting, figures: tuple[tuple[str, str, str], ...], frame: Frame) -> list[Block]:
    """What leaves the ground, in two columns: name, remark, figure."""
    width = frame.column_width(2)
    rows = [row(setting, (what, remark, figure), width, PLAIN) for what, figure, remark in figures]
    pairs = zip_longest(rows[::2], rows[1::2], fillvalue=())
    return [beside(left, right, width + frame.gutter) for left, right in pairs]
