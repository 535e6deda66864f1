"""Words of service rules: limits, what an open one means."""

from kitlog.wording.rule_limits import WHILE_OPEN, limits_of

__all__ = ["WHILE_OPEN", "limits_of"]
