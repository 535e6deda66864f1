"""JSON in, JSON out: what `kitlog budget weight FILE` prints."""

from typing import Annotated, Any, Self

from pydantic import Field, ValidationError, model_validator
from pydantic_core import PydanticCustomError

from kitlog.budget.weight import PILOT, Load, MassBalance, fit, harness_fit, position_pct, reserve_fit, weigh
from kitlog.kit.facets import Harness, Reserve, Wing
from kitlog.kit.kinds import Kind, MassSource, Zone
from kitlog.kit.mass import BODY_G, WATER_BY_MARK_G, suited_scale, tolerance_g
from kitlog.units.mass import g_from_kg
from kitlog.units.model import Frozen
from kitlog.units.refused import refused
from kitlog.units.strict_json import strict_object
from kitlog.units.text import Name

MassG = Annotated[int, Field(strict=True, ge=0, le=200_000)]
LimitKg = Annotated[float, Field(strict=True, ge=0, le=1_000)]

GONE = frozenset({Kind.FOOD})
"""What is eaten by the landing; water in vessels is gone too."""


class LoadIn(Frozen):
    """One line: `n` pieces of `mass_g` each, weighed together; a mass that is not known makes the sum not known."""

    name: Name
    kind: Kind = Kind.OTHER
    n: Annotated[int, Field(strict=True, ge=1, le=10_000)] = 1
    mass_g: MassG | None = None
    mass_source: MassSource = MassSource.GUESS
    zone: Zone | None = None
    content_ml: Annotated[int, Field(strict=True, ge=0, le=100_000)] = 0


class Limits(Frozen):
    """A least and a greatest load in kg."""

    min_kg: LimitKg | None = None
    max_kg: LimitKg | None = None

    @model_validator(mode="after")
    def _check(self) -> Self:
        low, high = _g(self.min_kg), _g(self.max_kg)
        if low is not None and high is not None and low > high:
            raise PydanticCustomError("facet.limits_reversed", "", {"low": low, "high": high})
        return self


class HarnessLimit(Frozen):
    """A greatest load in kg."""

    max_kg: LimitKg | None = None


class Request(Frozen):
    """What leaves the ground, and what it is held against; the wing and the harness are loads like any other.

    Attributes:
        pilot_g: body mass in g, None = not known; pilot_tolerance_g: how sure it is.
    """

    pilot_g: Annotated[int, Field(strict=True, ge=20_000, le=250_000)] | None = None
    pilot_tolerance_g: Annotated[float, Field(strict=True, ge=0, le=50_000)] = float(BODY_G)
    loads: tuple[LoadIn, ...] = ()
    wing: Limits | None = None
    harness: HarnessLimit | None = None
    reserve: Limits | None = None


def answer(text: str) -> dict[str, Any]:
    """Answer one JSON object.

    Returns:
        `mass` (sums in g, tolerances, by zone), and where limits are given `wing`, `harness` and `reserve`: how the
        mass stands against them, in words of `kitlog.budget.weight.Fit`.

    Raises:
        InputFault: a code of `kitlog.units.strict_json`, `kitlog.units.refused` or ``facet.limits_reversed``.
    """
    try:
        return _answer(Request.model_validate(strict_object(text)))
    except ValidationError as error:
        raise refused(error) from None


def schema() -> dict[str, Any]:
    """JSON Schema of what `answer` reads."""
    return Request.model_json_schema()


def _answer(asked: Request) -> dict[str, Any]:
    mass = weigh([_pilot(asked), *(load for line in asked.loads for load in _loads(line))])
    parts: dict[str, Any] = {"mass": _mass_json(mass)}
    if asked.wing is not None:
        parts["wing"] = _wing_json(Wing(min_g=_g(asked.wing.min_kg), max_g=_g(asked.wing.max_kg)), mass)
    hanging = mass.without(_wing_g(asked))
    if asked.harness is not None:
        stands = harness_fit(hanging, Harness(max_g=_g(asked.harness.max_kg)), mass.tolerance_g)
        parts["harness"] = {"hanging_g": hanging, "fit": stands.value}
    if asked.reserve is not None:
        parts["reserve"] = _reserve_json(asked.reserve, hanging, mass)
    return parts


def _pilot(asked: Request) -> Load:
    if asked.pilot_g is None:
        return Load(PILOT, None)
    return Load(PILOT, asked.pilot_g, asked.pilot_tolerance_g, min(asked.pilot_tolerance_g, BODY_G))


def _loads(line: LoadIn) -> list[Load]:
    if line.zone is Zone.LEFT_IN_CAR:
        return []
    mass = None if line.mass_g is None else line.mass_g * line.n
    solid = Load(
        id=line.name,
        mass_g=mass,
        tolerance_g=0.0 if mass is None else tolerance_g(mass, line.mass_source, line.kind),
        weighed_g=0.0 if mass is None else tolerance_g(mass, suited_scale(mass), line.kind),
        zone=line.zone,
        gone_g=(mass or 0) if line.kind in GONE else 0,
    )
    water = line.content_ml
    if not water:
        return [solid]
    return [solid, Load(f"{line.name}: water", water, WATER_BY_MARK_G, WATER_BY_MARK_G, line.zone, water)]


def _wing_g(asked: Request) -> int | None:
    """Mass of the wing among the loads; None where there is none or it is not known."""
    masses = [line.mass_g for line in asked.loads if line.kind is Kind.WING]
    return masses[0] if len(masses) == 1 else None


def _g(mass_kg: float | None) -> int | None:
    return None if mass_kg is None else g_from_kg(mass_kg)


def _mass_json(mass: MassBalance) -> dict[str, Any]:
    sharpen = mass.sharpen
    return {
        "take_off_g": mass.take_off_g,
        "landing_g": mass.landing_g,
        "known_g": mass.known_g,
        "tolerance_g": mass.tolerance_g,
        "tolerance_sum_g": mass.tolerance_sum_g,
        "pilot_g": mass.pilot_g,
        "by_zone": {zone.value: mass.by_zone[zone] for zone in Zone if zone in mass.by_zone},
        "unknown": list(mass.unknown),
        "sharpen": None if sharpen is None else {"name": sharpen.id, "by_g": sharpen.by_g},
    }


def _wing_json(wing: Wing, mass: MassBalance) -> dict[str, Any]:
    return {
        "fit": fit(mass.take_off_g, wing.min_g, wing.max_g, mass.tolerance_g).value,
        "landing_fit": fit(mass.landing_g, wing.min_g, wing.max_g, mass.tolerance_g).value,
        "position_pct": position_pct(mass.take_off_g, wing),
        "landing_position_pct": position_pct(mass.landing_g, wing),
    }


def _reserve_json(limits: Limits, hanging: int | None, mass: MassBalance) -> dict[str, Any]:
    reserve = Reserve(min_g=_g(limits.min_kg), max_g=_g(limits.max_kg))
    load = reserve_fit(mass.take_off_g, hanging, reserve, mass.tolerance_g)
    return {
        "with_wing_g": load.with_wing_g,
        "without_wing_g": load.without_wing_g,
        "fit_with_wing": load.with_wing.value,
        "fit_without_wing": load.without_wing.value,
        "below_min": load.below_min,
    }
