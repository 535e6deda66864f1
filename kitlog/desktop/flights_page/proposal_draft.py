"""What the pilot makes of one recording: whether it counts, with which figures, on what it is booked."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from kitlog.kit.recordings.outcome import Status
from kitlog.packing.flown_set import NOTHING, ChosenBy, FlownSet
from kitlog.workbench.flight_import import Confirmed, Proposal


@dataclass(slots=True, eq=False)
class Draft:
    """A proposal while it is looked at; what is no proposal has no tick.

    Attributes:
        proposal: the file; books: whether anything in the kit could get its hours.
        ticked: it comes into the log; airtime_min, launches: corrected, None = as found.
        booked: what was flown; site: where; on_ground: it was ground handling.
    """

    proposal: Proposal
    books: bool
    ticked: bool
    booked: FlownSet = NOTHING
    site: str = ""
    airtime_min: float | None = None
    launches: int | None = None
    on_ground: bool = False

    @property
    def is_flight(self) -> bool:
        """Whether there is something to confirm."""
        return self.proposal.flight is not None

    @property
    def is_asked(self) -> bool:
        """Whether the pilot is asked about it: it may be no flight, or nobody knows what was flown."""
        return self.is_flight and (self.proposal.outcome.is_asked or self.lacks_set)

    @property
    def lacks_set(self) -> bool:
        """Whether its hours would be booked nowhere, though the kit has what could get them."""
        return self.is_flight and self.books and not self.booked.flown

    @property
    def minutes(self) -> float:
        """Its airtime as it would be booked."""
        flight = self.proposal.outcome.flight
        return self.airtime_min if self.airtime_min is not None else flight.airtime_min if flight else 0.0

    @property
    def takeoff_at(self) -> datetime | None:
        """When it took off."""
        flight = self.proposal.outcome.flight
        return flight.takeoff_at if flight else None

    def book_on(self, flown: tuple[str, ...]) -> None:
        """Book it on what was flown in another one; of its own day's list the rest was carried."""
        lacked, listed = self.lacks_set, (*self.booked.flown, *self.booked.carried)
        carried = tuple(item_id for item_id in listed if item_id not in flown) if self.booked.carried else ()
        self.booked = FlownSet(ChosenBy.NAMED, flown, carried)
        self.ticked = self.ticked or (lacked and not self.is_asked)

    def confirmed(self) -> Confirmed:
        """With the pilot's yes."""
        return Confirmed(self.proposal, self.airtime_min, self.launches, self.booked, self.site, self.on_ground)


def draft_of(proposal: Proposal, *, books: bool) -> Draft:
    """As it is proposed: ticked where nothing is asked."""
    draft = Draft(proposal, books=books, ticked=False, booked=proposal.booked, site=proposal.site)
    draft.ticked = draft.is_flight and not draft.is_asked
    return draft


def kept(before: Iterable[Draft], after: Iterable[Draft]) -> list[Draft]:
    """What was read anew, with what the pilot had decided about the same recordings."""
    decided = {draft.proposal.outcome.content: draft for draft in before if draft.is_flight}
    drafts = []
    for draft in after:
        known = decided.get(draft.proposal.outcome.content) if draft.is_flight else None
        if known is not None:
            known.proposal = draft.proposal
        drafts.append(known or draft)
    return drafts


def has_seconds(drafts: Iterable[Draft]) -> bool:
    """Whether a second recording of a flight in the log would be remembered with it."""
    outcomes = (draft.proposal.outcome for draft in drafts)
    return any(one.status is Status.DUPLICATE and one.in_log and _is_second(one.reasons) for one in outcomes)


def _is_second(reasons: Iterable[object]) -> bool:
    return any(getattr(reason, "code", "").startswith("recording.same_flight") for reason in reasons)
