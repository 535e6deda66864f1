"""A paper or photo on record: its bytes lie beside the data file under their hash, here is what is known of it."""

from enum import StrEnum
from typing import Annotated

from pydantic import Field

from kitlog.units.model import Frozen
from kitlog.units.text import Name

MAX_BYTES = 64 << 20
"""Greatest paper; a scan of twenty pages is about 10 MB."""

ContentHash = Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")]
"""SHA-256 in hexadecimal."""


class MediaType(StrEnum):
    """What can be attached: shown by any system, and nothing that runs."""

    PDF = "application/pdf"
    JPEG = "image/jpeg"
    PNG = "image/png"


class Paper(Frozen):
    """A paper or photo that belongs to an item or a service record.

    Attributes:
        sha256: of its bytes; name: what it was called; size: bytes.
    """

    sha256: ContentHash
    name: Name
    media_type: MediaType
    size: Annotated[int, Field(ge=1, le=MAX_BYTES)]
