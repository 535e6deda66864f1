"""What a service record says, in words."""

from kitlog.kit.service import Result
from kitlog.wording.translate import N_, _

RESULTS = {
    Result.PASSED: N_("passed"),
    Result.WITH_REMARKS: N_("passed with remarks"),
    Result.FAILED: N_("failed"),
}


def result_text(result: Result | None) -> str:
    """How an inspection ended; empty where the paper does not say."""
    return _(RESULTS[result]) if result else ""


def result_choices() -> list[tuple[str, str]]:
    """All results to choose from, *not given* first."""
    return [("", _("not given")), *((result.value, result_text(result)) for result in Result)]
