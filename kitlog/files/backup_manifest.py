"""What a backup says of itself, and how much it may hold."""

from typing import Annotated, Literal, Self

from pydantic import AwareDatetime, Field, model_validator
from pydantic_core import PydanticCustomError

from kitlog.kit.paper import MAX_BYTES, ContentHash
from kitlog.units.model import Frozen
from kitlog.units.text import Line

DATABASE = "kitlog.db"
MANIFEST = "manifest.json"
HEADER = 100
"""Bytes of the head of a database."""

MAX_DATABASE = 512 << 20
"""Greatest data file in bytes; ten thousand items are about 5 MB."""
MAX_PAPERS = 10_000
MAX_ALL_PAPERS = 3 << 30
"""Greatest sum of the papers: with it the zip stays under the 4 GB that any zip program can read."""
MAX_MANIFEST = (16 << 10) + MAX_PAPERS * 128


class PackedPaper(Frozen):
    """A paper in a backup: the hash under which it lies, and its size in bytes."""

    sha256: ContentHash
    size: Annotated[int, Field(ge=1, le=MAX_BYTES)]


class Manifest(Frozen):
    """What a backup says of itself.

    Attributes:
        version: 1 = without papers, 2 = with them.
        made_at: when it was packed; program: the version that did.
        application_id, data_schema: the marks in the data file's header.
        size: of the data file, in bytes; sha256: of its bytes, in hexadecimal.
    """

    format: Literal["kitlog backup"] = "kitlog backup"
    version: Literal[1, 2] = 2
    made_at: AwareDatetime
    program: Line
    application_id: Annotated[int, Field(ge=0, le=0xFFFFFFFF)]
    data_schema: Annotated[int, Field(ge=0, le=0xFFFFFFFF)]
    size: Annotated[int, Field(ge=HEADER, le=MAX_DATABASE)]
    sha256: ContentHash
    papers: Annotated[tuple[PackedPaper, ...], Field(max_length=MAX_PAPERS)] = ()

    @model_validator(mode="after")
    def _check(self) -> Self:
        hashes = {paper.sha256 for paper in self.papers}
        if len(hashes) < len(self.papers) or (self.papers and self.version == 1):
            raise PydanticCustomError("backup.foreign", "{format}", {"format": self.format})
        return self

    @property
    def members(self) -> list[str]:
        """Names of everything in the zip, sorted."""
        return sorted([DATABASE, MANIFEST, *(paper_member(paper.sha256) for paper in self.papers)])


def paper_member(sha256: str) -> str:
    """What a paper is called in the zip."""
    return f"papers/{sha256}"
