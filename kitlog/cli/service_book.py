"""kitlog service book: all that is on record about one item, for a buyer, an inspector or an insurer."""

from kitlog.cli import documents
from kitlog.cli.book_options import CURRENCY, book_options, give, refuse_paper_alone
from kitlog.cli.call import DONE, Call
from kitlog.cli.parser import Verbs
from kitlog.wording.translate import _


def add(verbs: Verbs) -> None:
    """Add the verb."""
    text = _("the service book of one item: hours, what is due, all that was done or happened")
    parser = verbs.add("book", text, _book)
    parser.add_argument("item", metavar=_("ITEM"), help=_("name or id of the item"))
    parser.add_argument("--costs", action="store_true", help=_("with its value and what service cost"))
    book_options(parser)


def _book(call: Call) -> int:
    from kitlog.cli.item_named import item_named
    from kitlog.wording.book_content import Shown, book_content

    options = call.options
    refuse_paper_alone(call, "kitlog service book")
    with call.reading() as bench:
        currency = options.currency or bench.preference(CURRENCY)
        book = bench.item_book(item_named(bench, options.item, _("ITEM")).id)
        shown = Shown(
            costs=options.costs,
            photos=not options.no_photos,
            currency=currency,
            lacking=bench.lacking(book.papers),
        )
        give(call, bench, book_content(book, bench.now(), shown), text=not options.json)
    if options.json:
        from kitlog.files.book_json import book_json

        return documents.say_json(book_json(book, shown.lacking))
    return DONE
