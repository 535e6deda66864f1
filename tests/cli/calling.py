"""What tests of the command line share."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta, timezone
from typing import Any

NOW = datetime(2026, 5, 8, 20, 0, tzinfo=timezone(timedelta(hours=2)))
"""The evening before the cross-country day of the demo."""


@dataclass(frozen=True)
class Said:
    """What a call answered."""

    code: int
    out: str
    err: str

    @property
    def json(self) -> Any:
        return json.loads(self.out)


Kitlog = Callable[..., Said]


def one_line(said: Said, code: int = 2) -> str:
    """The one line of a refusal, without a word on stdout."""
    assert (said.code, said.out) == (code, ""), said
    assert said.err.count("\n") == 1
    assert said.err.startswith("kitlog: ")
    return said.err
