"""The pages by name; each is imported when it is first shown."""

from kitlog.desktop.desk import Desk
from kitlog.desktop.page import Page


def page_class(name: str) -> type[Page]:
    """The class of a page.

    Raises:
        KeyError: there is no such page.
    """
    if name == "kit":
        from kitlog.desktop.kit_page.page import KitPage

        return KitPage
    if name == "service":
        from kitlog.desktop.service_page.page import ServicePage

        return ServicePage
    if name == "outing":
        from kitlog.desktop.outing_page.page import OutingPage

        return OutingPage
    if name == "repack":
        from kitlog.desktop.repack_page.page import RepackPage

        return RepackPage
    if name == "flights":
        from kitlog.desktop.flights_page.page import FlightsPage

        return FlightsPage
    raise KeyError(name)


def build_page(name: str, desk: Desk) -> Page:
    """A page on a desk."""
    return page_class(name)(desk)
