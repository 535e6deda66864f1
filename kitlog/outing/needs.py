"""Flight types and needs: what a day asks of the kit, how many, how strongly, why."""

from collections.abc import Collection
from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, field_validator, model_validator
from pydantic_core import PydanticCustomError

from kitlog.kit.facets import Garment
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, Layer
from kitlog.outing.conditions import Condition
from kitlog.outing.outing import Role
from kitlog.outing.words import plain
from kitlog.units.model import Frozen
from kitlog.units.text import Line, Name

WHY_WORDS = 12


class Strength(StrEnum):
    """How strongly something is needed: missing it is a stop, a look, or no finding."""

    ESSENTIAL = "essential"
    ADVISED = "advised"
    COMFORT = "comfort"

    @property
    def rank(self) -> int:
        """0 for the strongest."""
        return tuple(Strength).index(self)


class Raise(Frozen):
    """A condition that raises a need's strength, any of `when` being enough."""

    to: Strength
    when: Annotated[tuple[Condition, ...], Field(min_length=1)]


class Need(Frozen):
    """One thing a flight type or a condition asks for.

    What meets it, at least one of: an item of one of `kinds` (with `layer` or `part` for garments) or that `serves`
    one of the named things (see `takes`); a person of one of `roles`; the check `check` answered; water.

    Attributes:
        id: the same id in several flight types is the same need; the strongest wins, the larger amount wins.
        label: what it is called, a noun.
        both: True = an item must be of one of `kinds` and serve (an instrument that shows a map).
        layer, not_layers: the layer a garment must belong to, or the layers that do not meet it.
        part: the part of the body a garment must cover: top, legs, feet, hands, head, neck.
        amount, most: pieces needed, and the most that are taken of a counted set. All pieces on the list count that
            are of the right sort, those that meet another need too: a second source is an amount of 2.
        every: True = every usable item that meets it goes along, not only `amount` (papers).
        water_ml: least water in ml at launch; the need is then met by vessels that hold it.
        charge_pct: least charge in per cent at the likely landing that a device meeting it must show.
        either: True = an item or the answered check meets it (medicine); unanswered it is not known, never missing.
        only_when: the need exists only if one of these conditions is yes.
        raised: what makes it stronger.
        limit: name of a limit that a budget judges (``pack_share``, ``mid_range``); no item meets it.
        why: at most 12 words.
    """

    id: Name
    label: Name
    kinds: tuple[Kind, ...] = ()
    serves: tuple[Name, ...] = ()
    both: bool = False
    layer: Layer | None = None
    not_layers: tuple[Layer, ...] = ()
    part: Line = ""
    amount: Annotated[int, Field(ge=1, le=100)] = 1
    most: Annotated[int, Field(ge=1, le=100)] | None = None
    every: bool = False
    water_ml: Annotated[int, Field(ge=0, le=20_000)] | None = None
    charge_pct: Annotated[float, Field(ge=0, le=100)] | None = None
    roles: tuple[Role, ...] = ()
    check: Line = ""
    either: bool = False
    limit: Line = ""
    limit_low: float | None = None
    limit_high: float | None = None
    only_when: tuple[Condition, ...] = ()
    strength: Strength
    raised: tuple[Raise, ...] = ()
    why: Line

    @field_validator("why")
    @classmethod
    def _short(cls, why: str) -> str:
        if len(why.split()) > WHY_WORDS:
            raise PydanticCustomError("need.why_too_long", "{why}", {"why": why})
        return why

    @model_validator(mode="after")
    def _can_be_met(self) -> Self:
        if not (self.wants_item or self.roles or self.check or self.limit or self.water_ml is not None):
            raise PydanticCustomError("need.cannot_be_met", "{id}", {"id": self.id})
        return self

    @property
    def wants_item(self) -> bool:
        """Whether an item can meet it."""
        return bool(self.kinds or self.serves)

    def takes(self, item: Item, serves: Collection[str]) -> bool:
        """Whether an item that `serves` those things is of the right sort, whatever its amount and state.

        Of one of the kinds (and of the layer and part asked for) or serving, with `both` the two at once.
        """
        of_kind = item.kind in self.kinds and self._fits(item.garment)
        does = any(name in serves for name in self.serves)
        return (of_kind and does) if self.both else (of_kind or does)

    def _fits(self, garment: Garment | None) -> bool:
        if not (self.layer or self.not_layers or self.part):
            return True
        if garment is None or garment.layer in self.not_layers:
            return False
        return self.layer in {None, garment.layer} and self._covers(garment)

    def _covers(self, garment: Garment) -> bool:
        """A garment that says no part passes where the need asks for a layer: the layer says enough."""
        parts = plain(garment.part).split()
        return not self.part or self.part in parts or (not parts and self.layer is not None)


class FlightType(Frozen):
    """A named set of needs beyond those of every flight.

    Attributes:
        makes_true: conditions that the type itself brings (passenger, water, event).
        budgets: which budgets the type asks for: ``power``, ``weight``, ``water``, ``warmth``, ``daylight``, ``air``.
    """

    name: Name
    label: Name
    needs: tuple[Need, ...] = ()
    makes_true: tuple[Condition, ...] = ()
    budgets: tuple[Name, ...] = ()
