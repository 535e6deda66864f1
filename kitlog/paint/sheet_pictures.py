"""The pictures of a printed sheet: the charge over the day, and the weight ruler, as vectors like all else."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from kitlog.paint import power_lanes, weight_ruler
from kitlog.paint.mark import Mark
from kitlog.paint.power_picture import PowerPicture
from kitlog.paint.sheet_block import Block, Frame, Group
from kitlog.paint.sheet_lines import QUIET, STRONG, all_of, kept, lines, picture, space
from kitlog.paint.sheet_parts import findings
from kitlog.paint.sheet_setting import Setting
from kitlog.paint.weight_picture import WeightPicture
from kitlog.wording.sheet_content import ToldFinding


@dataclass(frozen=True, slots=True)
class SheetPictures:
    """What a sheet shows besides its words.

    Attributes:
        power: charge over the day; None or without lanes: nothing was simulated.
        chance: the chance that matters, and those beside it; may be empty.
        power_said: the picture as text; drawn: how the days were drawn that it shows, empty if none were.
        weight: the weight ruler.
    """

    power: PowerPicture | None = None
    chance: tuple[ToldFinding, ...] = ()
    power_said: str = ""
    drawn: str = ""
    weight: WeightPicture | None = None


def power(setting: Setting, shown: SheetPictures, frame: Frame) -> tuple[Group, ...]:
    """Chance, picture and text; a picture higher than a page is cut between lanes."""
    said = _chance(setting, shown.chance, frame.width)
    pieces = () if shown.power is None else _pieces(setting, shown.power, frame)
    painted = [_power_block(setting, piece, frame.width) for piece in pieces]
    text = [block for words in (shown.power_said, shown.drawn) for block in lines(setting, words, QUIET, frame.width)]
    first, *rest = (*painted, Block(0.0, all_of(())))
    groups = (Group(kept([*said, first])), *(Group((block,)) for block in rest), Group(tuple(text), gap=setting.px(4)))
    return tuple(group for group in groups if group.height)


def _chance(setting: Setting, told: tuple[ToldFinding, ...], width: float) -> list[Block]:
    """The chances as findings; a state that is fine is not named on paper, as among the findings."""
    blocks: list[Block] = []
    for one in told:
        if one.state == Mark.FINE:
            blocks += lines(setting, f"{one.title}: {one.figure}", STRONG, width)
            blocks += [*lines(setting, one.sentence, QUIET, width), space(setting.px(6))]
        else:
            blocks += [block for group in findings(setting, (one,), width) for block in group.blocks]
    return blocks


def _power_block(setting: Setting, shown: PowerPicture, width: float) -> Block:
    high = power_lanes.measure(shown, width, setting.base, setting.device)
    return picture(high, setting, width, lambda painter, rect: power_lanes.paint(painter, rect, shown, setting.tokens))


def _pieces(setting: Setting, shown: PowerPicture, frame: Frame) -> Iterator[PowerPicture]:
    """The picture, or several with so many lanes each as a page has room for."""
    if not shown.lanes:
        return
    most = len(shown.lanes)
    room = frame.fresh - setting.px(80)  # heading and chance stand above it
    while most > 1 and _height(setting, replace(shown, lanes=shown.lanes[:most]), frame.width) > room:
        most -= 1
    for start in range(0, len(shown.lanes), most):
        yield replace(shown, lanes=shown.lanes[start : start + most])


def _height(setting: Setting, shown: PowerPicture, width: float) -> float:
    return power_lanes.measure(shown, width, setting.base, setting.device)


def weight(setting: Setting, shown: WeightPicture, width: float) -> Block:
    """The ruler under a heading of the sheet, so without its own title; the zones are summed in the list."""
    bare = replace(shown, title="", zones=None)
    high = weight_ruler.measure(bare, width, setting.base, setting.device)
    return picture(high, setting, width, lambda painter, rect: weight_ruler.paint(painter, rect, bare, setting.tokens))
