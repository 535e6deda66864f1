"""What is printed: the service book of one item, and the inventory."""

from collections.abc import Collection, Iterable

from kitlog.fault import InputFault
from kitlog.kit.inventory import Inventory, inventory
from kitlog.kit.item_book import ItemBook, item_book
from kitlog.kit.paper import Paper
from kitlog.workbench.reads import Reads


class BookReads(Reads):
    """Reads for books on paper."""

    def item_book(self, item_id: str) -> ItemBook:
        """All that is on record about one item today, struck entries among it.

        Raises:
            InputFault: ``item.unknown`` with ``name``.
        """
        item = self.item(item_id)
        if item is None:
            raise InputFault("item.unknown", name=item_id)
        return item_book(item, self.items(), self.book(), self.now().date(), self._owner())

    def inventory(self, only: Collection[str] = (), *, retired: bool = False) -> Inventory:
        """What there is and what it cost.

        Args:
            only: ids of the items that are listed; empty = all but retired and used-up ones.
            retired: list those as well.
        """
        return inventory(self.items(), self.now().date(), self._owner(), only=only, retired=retired)

    def lacking(self, papers: Iterable[Paper]) -> frozenset[str]:
        """The hashes of those papers whose bytes are missing beside the data file, or damaged."""
        from kitlog.files.papers import look

        named = tuple(papers)
        whole = {paper.sha256 for paper in look(self.path, named).whole}
        return frozenset(paper.sha256 for paper in named) - whole

    def _owner(self) -> str:
        pilot = self.pilot()
        return "" if pilot is None else pilot.name
