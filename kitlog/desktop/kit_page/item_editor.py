"""The editor of one item: what every item has, and the facets that fit its kind."""

from functools import partial
from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QMenu, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.kit_page.cable_form import CableForm
from kitlog.desktop.kit_page.capacity_question import answer, look_at_capacity
from kitlog.desktop.kit_page.details import implausible_text
from kitlog.desktop.kit_page.facet_fields import FACET_FIELDS, FACET_TITLES, FITTING
from kitlog.desktop.kit_page.facet_form import FacetForm
from kitlog.desktop.kit_page.facet_part import FacetPart
from kitlog.desktop.kit_page.item_fields import MainFields, MoreFields
from kitlog.desktop.papers_field import PapersField
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.section import Section
from kitlog.desktop.parts.tab_order import tab_stops
from kitlog.desktop.parts.wrap_row import WrapRow
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS, Kind
from kitlog.packing.capacity import refuse_more_out_than_in
from kitlog.wording.translate import _


class ItemEditor(Dialog):
    """Add an item, or edit one.

    Attributes:
        item_id: of the item that was saved.
    """

    def __init__(self, desk: Desk, item: Item | None, parent: QWidget) -> None:
        title = _("Add item") if item is None else _("Edit {name}").format(name=item.name)
        super().__init__(title, _("Add") if item is None else _("Save"), parent, wide=640)
        self._desk, self._is_new = desk, item is None
        self._item = item or Item(id=desk.bench.new_id(), name="new", kind=_next_kind(desk.bench.items()))
        self.item_id = self._item.id
        self._begins_at: QWidget | None = None
        library = desk.bench.library
        self.main_fields, self.more = MainFields(library), MoreFields()
        self.facets: dict[str, FacetPart] = {}
        self._facet_rows = QVBoxLayout()
        self.more_facets = Button(_("More facets"), Rank.ACT)
        self.more_facets.clicked.connect(self._offer_facets)
        self.body.addWidget(self.main_fields)
        self.body.addLayout(self._facet_rows)
        self.body.addWidget(self.more_facets)
        self.body.addWidget(self.more)
        self.papers = PapersField(desk, self._item.papers)
        papers = Section(_("Papers and photos"))
        papers.rows.addWidget(self.papers)
        self.body.addWidget(papers)
        self.papers.changed.connect(self._chain)
        self._put(self._item, desk.bench.items())
        self.main_fields.changed.connect(self._look)
        self.main_fields.changed.connect(self._look_at_power)
        self.main_fields.kind_changed.connect(self._show_fitting)
        self._look()
        self.main_fields.name.setFocus()

    def begin_at(self, name: str) -> None:
        """Begin at the field that is meant: a name of the model, ``mass_g`` or ``battery.place``; seen when shown."""
        facet, _dot, _field = name.partition(".")
        if facet in FACET_FIELDS:
            self._show_facet(facet)
        self._begins_at = self._field(name)
        if self._begins_at is not None:
            self._begins_at.setFocus(Qt.FocusReason.TabFocusReason)

    def _field(self, name: str) -> QWidget | None:
        facet, _dot, field = name.partition(".")
        form = self.facets.get(facet)
        if isinstance(form, CableForm):
            return form.one
        if isinstance(form, FacetForm):
            return form.ways.table if field == "ways" and form.ways is not None else form.fields.get(field)
        return {"mass_g": self.main_fields.mass, "state": self.more.state, "volume_ml": self.more.volume}.get(name)

    def draft(self) -> Item:
        """The item as it stands in the form.

        Raises:
            pydantic.ValidationError, Fault: something cannot be so.
        """
        facets = {name: form.model() for name, form in self.facets.items()}
        raw = {name: getattr(self._item, name) for name in Item.model_fields}
        papers = {"papers": self.papers.papers}
        made = Item(**(raw | self.main_fields.values() | self.more.values() | facets | papers))
        refuse_more_out_than_in(made)
        return self._seen_now(made)

    def _seen_now(self, item: Item) -> Item:
        """A charge on hand without a time is that of now."""
        battery = item.battery
        if battery is None or battery.on_hand_pct is None or battery.on_hand_at is not None:
            return item
        return item.model_copy(update={"battery": battery.model_copy(update={"on_hand_at": self._desk.bench.now()})})

    def changed(self) -> bool:
        """Papers that were attached or taken off count too."""
        return super().changed() or self.papers.papers != self._item.papers

    def showEvent(self, event: QShowEvent) -> None:
        """Chain what was put in before there was a window."""
        super().showEvent(event)
        self._chain()
        if self._begins_at is not None and not event.spontaneous():
            self.scroller.ensureWidgetVisible(self._begins_at, 0, look.px(96))

    def accept(self) -> None:
        """Save, or say what cannot be so."""
        if self.attempt(self._save):
            super().accept()

    def _save(self) -> None:
        draft, bench = self.draft(), self._desk.bench
        if self._is_new:
            bench.add_item(draft)
        elif draft != self._item:
            bench.edit_items([draft])

    def _put(self, item: Item, others: tuple[Item, ...]) -> None:
        self.main_fields.put(item)
        if self._is_new:
            self.main_fields.name.setText("")
        self.more.put(item, [other for other in others if other.kind in {*SET_KINDS, Kind.CAMERA, Kind.CARABINER}])
        self._show_fitting()
        for name in FACET_FIELDS:
            if getattr(item, name) is not None:
                self._show_facet(name)

    def _show_fitting(self) -> None:
        kind = self.main_fields.chosen_kind()
        fitting = FITTING.get(kind, ())
        for name, form in tuple(self.facets.items()):
            if form.is_empty() and (name not in fitting or isinstance(form, CableForm) != (kind is Kind.CABLE)):
                form.setParent(None)
                form.deleteLater()
                del self.facets[name]
        for name in fitting:
            self._show_facet(name)

    def _show_facet(self, name: str, _checked: bool = False) -> None:  # noqa: FBT001, FBT002  # Qt tells it
        if name not in self.facets:
            kind = self.main_fields.chosen_kind()
            form = self._form(name, kind)
            form.put(getattr(self._item, name), kind)
            form.changed.connect(self._look_at_power)
            form.grown.connect(self._chain)
            self.facets[name] = form
            self._facet_rows.addWidget(form)
            self._look_at_power()
        self._chain()

    def _form(self, name: str, kind: Kind) -> FacetPart:
        if name == "battery" and kind is Kind.CABLE:
            return CableForm()
        form = FacetForm(name, self._desk.bench.library)
        if form.ways is not None:
            form.ways.today = lambda: self._desk.bench.now().date()
        form.answered.connect(lambda meaning: answer(meaning, self.facets))
        return form

    def _look_at_power(self) -> None:
        """Say at once what capacity and draws come to."""
        item = look_at_capacity(self.main_fields.chosen_kind(), self.facets)
        form = self.facets.get("battery")
        if isinstance(form, FacetForm) and form.ways is not None:
            form.ways.show_draws(item)
        if isinstance(form, CableForm):
            form.hint(self.main_fields.name.text())

    def _chain(self) -> None:
        """Tab goes through the form as it is seen: name to zones, facets, the rest."""
        papers = (*self.papers.findChildren(WrapRow, "paper"), self.papers.attach_act)
        parts = (self.main_fields, *self.facets.values(), self.more_facets, self.more, *papers)
        stops = [stop for part in parts for stop in tab_stops(part) if stop.window() is self]
        for before, after in pairwise(stops):
            self.setTabOrder(before, after)

    def _offer_facets(self) -> None:
        menu = QMenu(self)
        for name in FACET_FIELDS:
            if name not in self.facets:
                menu.addAction(_(FACET_TITLES[name])).triggered.connect(partial(self._show_facet, name))
        menu.exec(self.more_facets.mapToGlobal(self.more_facets.rect().bottomLeft()))
        menu.deleteLater()

    def _look(self) -> None:
        """Ask about an unusual mass; hold back what has no name."""
        named = bool(self.main_fields.name.text().strip())
        self.want("" if named else _("It needs a name."))
        values = self.main_fields.values() | {"name": "draft", "battery": self._item.battery}
        draft = self._item.model_copy(update=values)
        band = self._desk.bench.implausible(draft)
        self.main_fields.ask("" if band is None else implausible_text(draft, band, self._desk))


def _next_kind(items: tuple[Item, ...]) -> Kind:
    """What is missing of wing, harness, reserve and helmet, in this order; else other."""
    owned = {item.kind for item in items}
    return next((kind for kind in SET_KINDS if kind not in owned), Kind.OTHER)
