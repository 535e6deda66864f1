"""One item instead of another on an outing."""

from kitlog.outing.outing import Outing, Pin


def swapped(outing: Outing, item_id: str, instead_id: str) -> Outing:
    """The outing with `instead_id` in the place of `item_id`, which is left out; items named by id."""
    both = {item_id, instead_id}
    old = next((pin for pin in outing.pinned if pin.item == item_id), None)
    pin = old.model_copy(update={"item": instead_id, "n": None}) if old else Pin(item=instead_id)
    chosen = {kind: instead_id if name == item_id else name for kind, name in outing.set.model_dump().items()}
    return outing.model_copy(
        update={
            "pinned": (*(p for p in outing.pinned if p.item not in both), pin),
            "left_out": (*(name for name in outing.left_out if name not in both), item_id),
            "set": outing.set.model_copy(update=chosen),
        }
    )
