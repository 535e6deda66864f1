"""A plan of which something is asked, read from the data file, so that the answer needs no more of it."""

from kitlog.packing.assess import judge_of
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_mending import PowerAsked
from kitlog.workbench.reads import Reads


def power_asked(bench: Reads, assessment: Assessment) -> PowerAsked:
    """An assessed plan with the kit of today, to be answered beside the window too."""
    kit = bench.kit()
    judge = judge_of(assessment.outing, kit, bench.library, bench.history(), assessment.now)
    return PowerAsked(assessment, tuple(kit.items), bench.library, judge)
