"""An item named on the command line, by its id or its unique name."""

from typing import TYPE_CHECKING

from kitlog.fault import InputFault

if TYPE_CHECKING:
    from kitlog.kit.item import Item
    from kitlog.workbench.workbench import Workbench


def item_named(bench: "Workbench", name: str, option: str) -> "Item":
    """The one item of that id or name, `called` as typed.

    Raises:
        InputFault: ``item.unknown`` or ``item.ambiguous`` with ``field`` and ``name``.
    """
    from kitlog.kit.called import called
    from kitlog.units.strict_json import shown

    items = bench.items()
    found = tuple(item for item in items if item.id == name) or called(items, name)
    if not found:
        raise InputFault("item.unknown", field=option, name=shown(name))
    if len(found) > 1:
        raise InputFault("item.ambiguous", field=option, name=shown(name), count=len(found))
    return found[0]
