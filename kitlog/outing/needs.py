"""Flight types and needs: what a day asks of the kit, how many, how strongly, why."""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, field_validator, model_validator
from pydantic_core import PydanticCustomError

from kitlog.kit.kinds import Kind, Layer
from kitlog.outing.conditions import Condition
from kitlog.outing.outing import Role
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
    one of the named things; a person of one of `roles`; the check `check` answered; water.

    Attributes:
        id: the same id in several flight types is the same need; the strongest wins, the larger amount wins.
        label: what it is called, a noun.
        amount, most: pieces needed, and the most that are taken of a counted set.
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
    layer: Layer | None = None
    part: Line = ""
    amount: Annotated[int, Field(ge=1, le=100)] = 1
    most: Annotated[int, Field(ge=1, le=100)] | None = None
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
        if not (self.kinds or self.serves or self.roles or self.check or self.limit or self.water_ml is not None):
            raise PydanticCustomError("need.cannot_be_met", "{id}", {"id": self.id})
        return self

    @property
    def wants_item(self) -> bool:
        """Whether an item can meet it."""
        return bool(self.kinds or self.serves)


class FlightType(Frozen):
    """A named set of needs beyond those of every flight.

    Attributes:
        budgets: which budgets the type asks for (``power``, ``weight``, ``water`` ...).
        passenger, event, over_water: conditions that the type itself makes true.
    """

    name: Name
    label: Name
    needs: tuple[Need, ...] = ()
    makes_true: tuple[Condition, ...] = ()
    budgets: tuple[Name, ...] = ()
