"""Sample data for the gallery: how much is stowed where, in the middle of one evening."""

from kitlog.paint.mark import Mark
from kitlog.paint.zone_picture import ZoneFill, ZoneFlag, ZoneLine, ZonePicture

ZONES = ZonePicture(
    title="Where it rides",
    stowed="stowed",
    to_stow="still to stow",
    zones=(
        ZoneFill("worn", "Worn", "3 250 g, 2 910 stowed", 3250, 2910, mass="3 250 g"),
        ZoneFill("cockpit", "Cockpit", "861 g, 478 stowed", 861, 478, mass="861 g"),
        ZoneFill("front container", "Front container", "1 420 g, all stowed", 1420, 1420, mass="1 420 g"),
        ZoneFill("side pocket", "Side pocket", "442 g, 382 stowed", 442, 382, mass="442 g"),
        ZoneFill("back pocket", "Back pocket", "752 g, 414 stowed", 752, 414, mass="752 g"),
        ZoneFill("under seat", "Under seat", "1 618 g, none stowed", 1618, 0, mass="1 618 g"),
        ZoneFill(
            "rucksack",
            "Rucksack",
            "8 516 g, 3 890 stowed",
            8516,
            3890,
            "wing, wing sack and carabiners still out",
            "8 516 g",
        ),
    ),
    carabiner=ZoneFlag(Mark.STOP, "overdue"),
    lines=(
        ZoneLine("On the back to launch", "13.6 kg", "all but what is worn", is_figure=True),
        ZoneLine("In hand", "nothing"),
        ZoneLine("Left in the car", "dry shoes, 690 g, not counted"),
    ),
)
