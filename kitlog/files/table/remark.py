"""Something to be said about how a table was read: a code with facts; the sentences are in `wording`."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Remark:
    """One thing to be said: ``table.*`` with its facts (all of them plain values: text, numbers, tuples of these)."""

    code: str
    facts: Mapping[str, object] = field(default_factory=dict)
