"""What a new service record begins with: who did it the last time, in which currency, and what was measured."""

from collections.abc import Iterable
from dataclasses import dataclass

from kitlog.kit.measurement import Measurement
from kitlog.kit.service import ServiceRecord


@dataclass(frozen=True, slots=True)
class RecordProposal:
    """Proposals for a new record; the pilot sees them before anything is written.

    Attributes:
        who: of the last record of the rule, else of the last one of all; currency: that of the last cost.
        measured: what was measured the last time, the values of which are never proposed.
    """

    who: str = ""
    currency: str = ""
    measured: tuple[Measurement, ...] = ()


def record_proposal(records: Iterable[ServiceRecord], item_id: str, rules: Iterable[str]) -> RecordProposal:
    """What a new record of an item begins with; struck records propose nothing.

    Args:
        records: all records.
        item_id: whose record.
        rules: ids of the rules it will satisfy.
    """
    known = sorted((r for r in records if r.struck_at is None), key=lambda r: r.done_on, reverse=True)
    wanted = set(rules)
    of_rule = [record for record in known if wanted & set(record.rules)]
    of_item = [record for record in known if record.item_id == item_id]
    who = next((record.who for record in (*of_rule, *of_item, *known) if record.who), "")
    currency = next((record.currency for record in (*of_item, *known) if record.currency), "")
    measured = next((record.measurements for record in (*of_rule, *of_item) if record.measurements), ())
    return RecordProposal(who, currency, measured)
