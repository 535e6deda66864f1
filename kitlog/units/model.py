"""The base of everything that is stored or comes from outside: frozen, strict about unknown keys, finite."""

from pydantic import BaseModel, ConfigDict


class Frozen(BaseModel):
    """A frozen model; unknown keys are refused, NaN and infinities too."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, validate_default=True)
