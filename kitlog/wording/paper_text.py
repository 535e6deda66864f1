"""Papers and photos in words."""

from kitlog.kit.paper import MediaType, Paper
from kitlog.wording.figures import with_unit
from kitlog.wording.translate import N_, _

TYPES = {MediaType.PDF: N_("PDF"), MediaType.JPEG: N_("photo (JPEG)"), MediaType.PNG: N_("photo (PNG)")}

_KB, _MB = 1_000, 1_000_000


def paper_text(paper: Paper) -> str:
    """What a paper is called, what it is and how much it holds."""
    return f"{paper.name}, {_(TYPES[paper.media_type])}, {size_text(paper.size)}"


def size_text(size: int) -> str:
    """Bytes as kB or MB of 1,000."""
    if size < _MB:
        return with_unit(max(size / _KB, 1), "kB")
    return with_unit(size / _MB, "MB", 1)
