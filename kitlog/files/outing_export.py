"""An outing of the data file as JSON, items by their names, so that another kit or a person can read it."""

from collections import Counter
from collections.abc import Iterable
from typing import Any

from kitlog.kit.item import Item
from kitlog.outing.outing import Outing


def outing_json(outing: Outing, items: Iterable[Item]) -> dict[str, Any]:
    """What `kitlog.files.outing_json.read_outing` reads; the data file's own id stays behind.

    An item that shares its name with another, or with another's id, keeps its id.
    """
    names = unambiguous_names(items)
    tree = outing.model_dump(mode="json", exclude_none=True, exclude={"id"})
    tree["set"] = {kind: names.get(item, item) for kind, item in tree["set"].items()}
    tree["left_out"] = [names.get(item, item) for item in tree["left_out"]]
    for part, fields in (
        ("pinned", ("item",)),
        ("uses", ("item",)),
        ("starts", ("item",)),
        ("plugs", ("device", "bank")),
    ):
        for entry in tree.get(part, ()):
            entry.update({field: names.get(entry[field], entry[field]) for field in fields})
    if "evening" in tree:
        tree["evening"]["priority"] = [names.get(item, item) for item in tree["evening"]["priority"]]
    return tree


def unambiguous_names(items: Iterable[Item]) -> dict[str, str]:
    """Names by id of the items that a name alone tells apart."""
    every = tuple(items)
    times = Counter(item.name for item in every) + Counter({item.id for item in every})
    return {item.id: item.name for item in every if times[item.name] == 1}
