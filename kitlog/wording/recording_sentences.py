"""What is said of a flight recording that is not simply imported: what happened or why, and what to do."""

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
    "recording.date_is_none": (
        N_("the date in its header is none: {date}"),
        N_("Give the day of the flight with --date, or enter the flight by hand."),
    ),
    "recording.hidden": (
        N_("it is hidden: its name, or that of its folder, begins with a dot"),
        N_("If it is a recording, name the file itself."),
    ),
    "recording.not_a_file": (N_("it is no plain file"), N_("Choose a recording, or a folder that holds some.")),
    "recording.cannot_read": (N_("it cannot be read: {reason}"), N_("Check its name and whether you may read it.")),
    "recording.none_in_folder": (
        N_("no recording lies in this folder"),
        N_("Choose the folder that holds the recordings; their names end in .igc."),
    ),
    "recording.no_flight": (
        N_("there is no flight in it ({valid} valid fixes)"),
        N_("If there was one, enter it by hand."),
    ),
    "recording.same_content": (N_("it is the same recording as {of}"), N_("Nothing needs to be done.")),
    "recording.same_flight": (N_("it is a second recording of the flight in {of}"), N_("Nothing needs to be done.")),
    "recording.same_flight_longer": (
        N_("it is a second recording of the flight in {of}, and has {minutes} min more of it"),
        N_("Look at both, and correct the airtime if the longer one is right."),
    ),
    "recording.overlaps": (
        N_("{minutes} min of it are also in {of}, and nobody flies twice at a time"),
        N_("Look at the times of both, and keep what was flown."),
    ),
    "recording.same_track": (
        N_("it is the track of {of} again, {minutes} min apart, as if one clock had the wrong time zone"),
        N_("Keep the one with the right time; confirm both only if both were flown."),
    ),
    "recording.same_not_entered": (
        N_("it is another recording of the flight in {of}, which was not entered"),
        N_("Confirm that flight, or import this file without the other."),
    ),
    "recording.longer_than_a_day": (
        N_("it lasts {hours} h from the first take-off to the last landing, more than a day"),
        N_("Correct take-off and landing, or leave it out."),
    ),
    "recording.looks_like": (
        N_("it may be no flight: it {likeness}"),
        N_("Confirm it if it was flown, else leave it out."),
    ),
    "recording.not_confirmed": (
        N_("it was not confirmed as a flight"),
        N_("Import it again and confirm it if it was flown."),
    ),
}
"""By code of the fault."""
