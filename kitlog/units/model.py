"""The base of everything that is stored or comes from outside: frozen, strict about unknown keys, finite."""

from pydantic import BaseModel, ConfigDict


class Frozen(BaseModel):
    """A frozen model; unknown keys are refused, NaN and infinities too.

    Defaults are not looked at for each instance: a test does so once for each model.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False)
