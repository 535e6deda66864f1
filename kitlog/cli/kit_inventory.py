"""kitlog kit inventory: serial numbers, values and photos, for an insurance claim."""

from kitlog.cli import documents
from kitlog.cli.book_options import CURRENCY, book_options, give, refuse_paper_alone
from kitlog.cli.call import DONE, Call
from kitlog.cli.parser import Verbs
from kitlog.wording.translate import _


def add(verbs: Verbs) -> None:
    """Add the verb."""
    text = _("an inventory with serial numbers, values and photos, as an insurer asks for")
    parser = verbs.add("inventory", text, _inventory)
    parser.add_argument(
        "items", metavar=_("ITEM"), nargs="*", help=_("only these, by name or id (default: all that is not retired)")
    )
    parser.add_argument("--retired", action="store_true", help=_("with retired and used-up items"))
    book_options(parser)


def _inventory(call: Call) -> int:
    from kitlog.cli.item_named import item_named
    from kitlog.wording.inventory_content import InventoryShown, inventory_content

    options = call.options
    refuse_paper_alone(call, "kitlog kit inventory")
    with call.reading() as bench:
        currency = options.currency or bench.preference(CURRENCY)
        only = frozenset(item_named(bench, name, _("ITEM")).id for name in options.items)
        listed = bench.inventory(only, retired=options.retired)
        shown = InventoryShown(not options.no_photos, currency, bench.lacking(listed.papers))
        give(call, bench, inventory_content(listed, bench.now(), shown), text=not options.json)
    if options.json:
        from kitlog.files.book_json import inventory_json

        return documents.say_json(inventory_json(listed, currency, shown.lacking))
    return DONE
