"""The column `draw_w`: a device that draws one power whenever it is on is one way of use, named so."""

from collections.abc import Sequence

from kitlog.files.csv_forms import NUMBER, Form
from kitlog.kit.facets import WayOfUse

ON = "on"


def _read(text: str) -> list[dict[str, object]]:
    return [{"name": ON, "power_w": NUMBER.read(text)}]


def _write(ways: Sequence[WayOfUse]) -> str:
    """The W of the one way "on"; empty with several ways, another name, or a draw that is not taken from watts."""
    fits = len(ways) == 1 and ways[0].name == ON and ways[0].described == "watts"
    return NUMBER.write(ways[0].power_w) if fits else ""


ON_WAY = Form(_read, _write)
"""W of the one way of use "on"; its range, how sure it is and its shares of the time have no column."""
