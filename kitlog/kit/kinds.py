"""The closed lists that an item is described with: kind, zone, state, mass source, layer, place."""

from enum import StrEnum


class Kind(StrEnum):
    """What an item is."""

    WING = "wing"
    HARNESS = "harness"
    RESERVE = "reserve"
    HELMET = "helmet"
    CARABINER = "carabiner"
    SPEED_SYSTEM = "speed system"
    INSTRUMENT = "instrument"
    PHONE = "phone"
    RADIO = "radio"
    POWER_BANK = "power bank"
    TRACKER = "tracker"
    BEACON = "beacon"
    CAMERA = "camera"
    LIGHT = "light"
    CABLE = "cable"
    CHARGER = "charger"
    GARMENT = "garment"
    GLOVES = "gloves"
    FOOTWEAR = "footwear"
    EYEWEAR = "eyewear"
    VESSEL = "vessel"
    FOOD = "food"
    PAPERS = "papers"
    TOOL = "tool"
    TREE_KIT = "tree kit"
    FIRST_AID = "first aid"
    MEDICINE = "medicine"
    SIGNAL = "signal"
    SHELTER = "shelter"
    BUOYANCY = "buoyancy"
    BALLAST = "ballast"
    OXYGEN = "oxygen"
    RELIEF = "relief"
    SKIN_CARE = "skin care"
    POLES = "poles"
    WIND_METER = "wind meter"
    BAG = "bag"
    OTHER = "other"


SET_KINDS = (Kind.WING, Kind.HARNESS, Kind.RESERVE, Kind.HELMET)
"""What the pilot flies in: chosen by the pilot, never by mass."""


class Zone(StrEnum):
    """Where an item rides."""

    OVERHEAD = "overhead"
    HARNESS = "harness"
    WORN = "worn"
    COCKPIT = "cockpit"
    SIDE_POCKET = "side pocket"
    BACK_POCKET = "back pocket"
    UNDER_SEAT = "under seat"
    FRONT_CONTAINER = "front container"
    RUCKSACK = "rucksack"
    IN_HAND = "in hand"
    LEFT_IN_CAR = "left in the car"


class ItemState(StrEnum):
    """Whether an item can go along."""

    IN_SERVICE = "in service"
    AWAY = "away"
    LENT = "lent"
    BORROWED = "borrowed"
    LOST = "lost"
    RETIRED = "retired"


USABLE_STATES = frozenset({ItemState.IN_SERVICE, ItemState.BORROWED})
"""States in which an item is at hand."""


class MassSource(StrEnum):
    """How a mass was taken; decides its tolerance."""

    KITCHEN_SCALE = "kitchen scale"
    LUGGAGE_SCALE = "luggage scale"
    PERSON_SCALE = "person scale"
    MAKERS_FIGURE = "maker's figure"
    GUESS = "guess"


class Layer(StrEnum):
    """The layer a garment belongs to."""

    BASE = "base"
    MID = "mid"
    INSULATION = "insulation"
    WIND = "wind"


class Place(StrEnum):
    """Where a device lies, for its temperature."""

    COCKPIT = "cockpit"
    CLOSED_POCKET = "closed pocket"
    UNDER_SHELL = "under the shell"
    THIGH_POCKET = "thigh pocket"
    BACK_POCKET = "back pocket"
    GLOVE_CUFF = "glove cuff"


class PhaseWay(StrEnum):
    """How a stretch of the day is spent."""

    TRAVEL = "travel"
    HIKE_UP = "hike up"
    WAIT = "wait at launch"
    FLIGHT = "flight"
    PACK_UP = "pack up"
    WALK_OUT = "walk out"
    RIDE_HOME = "ride home"
    NIGHT = "night"

    @classmethod
    def _missing_(cls, value: object) -> "PhaseWay | None":
        """Short forms that pilots type: wait, walk, ride, hike; underscores for blanks."""
        text = str(value).strip().lower().replace("_", " ")
        short = {"wait": cls.WAIT, "walk": cls.WALK_OUT, "ride": cls.RIDE_HOME, "hike": cls.HIKE_UP}
        if text in short:
            return short[text]
        return next((way for way in cls if way.value == text), None)
