"""Sample data for the gallery: the weight picture of one evening."""

from kitlog.paint.mark import Mark
from kitlog.paint.weight_picture import Pointer, Range, ReserveBar, TakeOff, WeightPicture, ZoneSums

WEIGHT = WeightPicture(
    title="Weight",
    caption="everything that leaves the ground, against the certified range of Ferrow Dunlin M",
    range=Range(80.0, 100.0, "80.0 low limit", "high limit 100.0", Mark.FINE),
    take_off=TakeOff(87.46, 1.018, "Take-off", "87.5", "± 1.0 kg"),
    landing=Pointer(85.74, "Landing 85.7", "all water and food gone"),
    ballast=Pointer(90.0, "middle 90.0: 2.5 kg of ballast, optional"),
    out="out",
    middle="middle",
    not_known="range not known",
    reserve=ReserveBar(
        "Reserve",
        "Ostrel Quadrat 110, printed load 75 to 110 kg. Sources differ on whether the wing counts: both figures stand.",
        Range(75.0, 110.0, "75", "110", Mark.FINE),
        (Pointer(83.11, "without the wing 83.1"), Pointer(87.46, "with the wing 87.5")),
    ),
    zones=ZoneSums(
        "By zone in the air, kg",
        "most of ± 1.0 is the pilot (person scale, 16 Apr); weigh the wing next: ± 0.13 to ± 0.05",
        (
            ("Pilot", "70.60"),
            ("Overhead", "4.35"),
            ("Harness", "3.25"),
            ("Worn", "3.25"),
            ("Cockpit", "0.86"),
            ("Front container", "1.42"),
            ("Under seat", "1.62"),
            ("Side pocket", "0.44"),
            ("Back pocket", "1.67"),
        ),
        ("Take-off", "87.46"),
    ),
)
