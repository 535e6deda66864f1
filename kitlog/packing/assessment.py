"""The assessment: everything one outing has to say, as results; `wording` makes the sentences."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime

from kitlog.budget.power.day import Day, Plug
from kitlog.budget.power.describe import DrawRange
from kitlog.budget.power.result import DayResult
from kitlog.budget.result import Finding, State, Topic
from kitlog.budget.weight import MassBalance
from kitlog.kit.due import Due
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, Zone
from kitlog.outing.conditions import Answer3, Condition
from kitlog.outing.needs import Need, Strength
from kitlog.outing.outing import Outing


@dataclass(frozen=True, slots=True)
class Truth:
    """A condition of the day: yes, no or open, and how it came about (``ticked``, ``derived``, ``flight type``)."""

    condition: Condition
    answer: Answer3
    by: str = "ticked"
    counts_as_yes: bool = False

    @property
    def holds(self) -> bool:
        """Whether needs reckon with it."""
        return self.answer is Answer3.YES or self.counts_as_yes


@dataclass(frozen=True, slots=True)
class Asked:
    """A need as this outing asks it: strength after conditions, and what asks for it.

    Attributes:
        by: names of flight types (``every flight`` for the base) and conditions that ask for it.
        raised_by: the condition that made it as strong as it is.
    """

    need: Need
    strength: Strength
    by: tuple[str, ...]
    raised_by: Condition | None = None


@dataclass(frozen=True, slots=True)
class ListLine:
    """One line of the packing list.

    Attributes:
        item: the item; n: pieces; content_ml: water in it at launch.
        mass_g: all pieces and the content, None where the mass is not known.
        needs: ids of the needs it meets, strongest first; strength: the strongest of them, None for none.
        pinned: the pilot's own choice; fitted: it goes because something fitted to it goes.
        guessed: whether what it serves is a guess.
    """

    item: Item
    n: int
    zone: Zone
    zone_on_foot: Zone
    needs: tuple[str, ...] = ()
    strength: Strength | None = None
    content_ml: int = 0
    pinned: bool = False
    fitted: bool = False
    guessed: bool = False

    @property
    def mass_g(self) -> int | None:
        """Mass of the line in g: pieces and content."""
        return None if self.item.mass_g is None else self.item.mass_g * self.n + self.content_ml

    @property
    def in_car(self) -> bool:
        """Whether it stays in the car and counts nowhere in the air."""
        return self.zone is Zone.LEFT_IN_CAR


@dataclass(frozen=True, slots=True)
class Missing:
    """A need that the kit does not meet.

    Attributes:
        state: stop for an essential, look for an advised need, fine for comfort (no finding), not known if unanswered.
        have: pieces there are of the `need.amount`; reason: why not (``none owned``, ``left out``, ``stop open`` ...).
        instead: ids of items that were passed over for it.
    """

    asked: Asked
    state: State
    have: int = 0
    reason: str = "none owned"
    instead: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PassedOver:
    """An item that could have met a need and was not taken: for which need, and why."""

    item: Item
    need: str
    reason: str
    taken: str = ""


@dataclass(frozen=True, slots=True)
class Question:
    """Something only the pilot can say: the day's questions, an open condition, an open choice of the set.

    Attributes:
        id: check id, ``condition.forest``, ``set.wing``; label: short name for the band.
        value, at: the answer, empty if there is none or it has expired.
    """

    id: str
    label: str
    kind: str
    value: str = ""
    at: datetime | None = None
    expired: bool = False

    @property
    def answered(self) -> bool:
        """Whether a valid answer stands."""
        return self.value != "" and not self.expired


@dataclass(frozen=True, slots=True)
class PowerDay:
    """The simulated day in the three cases; None where nothing could be simulated, with the reason.

    Attributes:
        planned, longest: the likely and the high case as they went into the simulation.
        unknown: ids of powered items that could not be reckoned with.
        draws: item id -> phase name -> mean draw with its range, of the devices that take part.
        swollen: ids of things that go along with a swollen battery: none of them is reckoned with.
        unplugged: plugs of the plan that find no port free on their bank; the day is simulated without them.
    """

    low: DayResult | None = None
    likely: DayResult | None = None
    high: DayResult | None = None
    reason: str = ""
    unknown: tuple[str, ...] = ()
    planned: Day | None = None
    longest: Day | None = None
    draws: Mapping[str, Mapping[str, DrawRange]] = field(default_factory=dict)
    unplugged: tuple[Plug, ...] = ()
    swollen: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Counts:
    """How many findings are a stop, a look, not known; and how many questions are open. Fine is never counted."""

    stop: int = 0
    look: int = 0
    not_known: int = 0
    open_questions: int = 0


@dataclass(frozen=True, slots=True)
class Assessment:
    """All findings, lines and sums of one outing together.

    Attributes:
        judged_on: the day whose due states govern (the last).
        chosen: the set flown in, by kind.
        stays_home: ids of usable items that are not on the list.
        grounded: ids of all items with an open stop or a swollen battery, whether they go or stay.
        next_due: of what goes along, the rule that falls due first after the outing; None where no day is known.
    """

    outing: Outing
    now: datetime
    judged_on: date
    truths: tuple[Truth, ...]
    asked: tuple[Asked, ...]
    lines: tuple[ListLine, ...]
    missing: tuple[Missing, ...]
    passed_over: tuple[PassedOver, ...]
    stays_home: tuple[str, ...]
    chosen: dict[Kind, Item]
    findings: tuple[Finding, ...]
    questions: tuple[Question, ...]
    mass: MassBalance
    power: PowerDay = field(default_factory=PowerDay)
    grounded: frozenset[str] = frozenset()
    next_due: Due | None = None

    @property
    def counts(self) -> Counts:
        """Stops, looks, not knowns and open questions."""
        states = [finding.state for finding in self.findings]
        return Counts(
            stop=states.count(State.STOP),
            look=states.count(State.LOOK),
            not_known=states.count(State.NOT_KNOWN),
            open_questions=sum(not question.answered for question in self.questions),
        )

    def of(self, topic: Topic) -> tuple[Finding, ...]:
        """The findings of one tile."""
        return tuple(finding for finding in self.findings if finding.topic is topic)

    def line(self, item_id: str) -> ListLine | None:
        """The line of an item."""
        return next((line for line in self.lines if line.item.id == item_id), None)
