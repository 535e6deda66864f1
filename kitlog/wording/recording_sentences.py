"""What is said of a flight recording that cannot be read: what happened or why, and what to do."""

from kitlog.wording.translate import N_

RECORDING = {
    "recording.too_large": (
        N_("it has {bytes} bytes, more than {limit}"),
        N_("Check whether it is the right file, or cut it into one recording a flight."),
    ),
    "recording.not_igc": (
        N_("there is no fix record of a flight in it"),
        N_("Choose a recording in the IGC format; its name mostly ends in .igc."),
    ),
    "recording.no_fix": (
        N_("none of its fixes can be used (without satellites: {invalid}, broken: {broken})"),
        N_("Take the recording of another instrument, or enter the flight by hand."),
    ),
    "recording.no_date": (
        N_("it does not say on which day it was made"),
        N_("Give the day of the flight with --date, or enter the flight by hand."),
    ),
}
"""By code of the fault."""
