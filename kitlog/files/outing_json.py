"""An outing as a JSON file."""

from typing import Any

from pydantic import ValidationError

from kitlog.fault import InputFault
from kitlog.outing.outing import Outing
from kitlog.units.refused import refused
from kitlog.units.strict_json import decoded, strict_object

MAX_BYTES = 5_000_000


def read_outing(data: bytes, file: str) -> Outing:
    """The outing of a JSON file; items are still named as in the file.

    Raises:
        InputFault: ``file.too_large``, a code of `kitlog.units.strict_json` or `kitlog.units.refused`, with ``file``
            and ``field``.
    """
    if len(data) > MAX_BYTES:
        raise InputFault("file.too_large", file=file, most=MAX_BYTES)
    try:
        return Outing.model_validate(strict_object(decoded(data)))
    except ValidationError as error:
        raise refused(error, file=file) from None
    except InputFault as fault:
        raise InputFault(fault.code, **{"file": file, **fault.facts}) from None


def outing_schema() -> dict[str, Any]:
    """The JSON Schema of an outing file."""
    return Outing.model_json_schema()
