"""Everything that can be read through a workbench, for comparing."""

from typing import Any

from kitlog.workbench.workbench import Workbench


def all_reads(bench: Workbench) -> dict[str, Any]:
    """Every stored thing; equal where the data file holds the same."""
    return {
        "pilots": bench.pilots(),
        "items": bench.items(),
        "flights": bench.flights(),
        "rules": bench.rules(),
        "records": bench.records(),
        "events": bench.events(),
        "outings": bench.outings(),
        "ticks": {outing.id: bench.ticks(outing.id) for outing in bench.outings()},
    }
