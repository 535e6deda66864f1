"""Sentences for what a service book cannot take: rules, records, measured values, papers, events."""

from kitlog.wording.translate import N_

SERVICE = {
    "rule.no_limit": (
        N_("the rule {rule} has no limit, no date and no event"),
        N_("Give it months, hours, launches, a date or an event."),
    ),
    "rule.recommended_after_due": (
        N_("the recommended interval of {rule} is longer than the due one"),
        N_("Swap the two."),
    ),
    "rule.unknown": (N_("no rule {rule}"), N_("Look at the rules of the item.")),
    "rule.ambiguous": (
        N_("{count} rules of the item are called “{rule}”"),
        N_("Name it by its id: kitlog service rules --json."),
    ),
    "rule.has_records": (N_("the rule {rule} has records"), N_("Mark it as not applying; history stays.")),
    "rule.not_offered": (
        N_("no rule {rule} is offered for {name}"),
        N_("See: kitlog service rules --item; a rule of your own is made with: kitlog service rule set."),
    ),
    "rule.none_of_model": (
        N_("the model of {name} has no rule {rule}"),
        N_("Make one with: kitlog service rule set --model."),
    ),
    "rule.no_notices": (
        N_("{name} has no rule to look for the maker’s notices"),
        N_("Take it first: kitlog service rule take ITEM maker.notices --model."),
    ),
    "rule.no_model": (
        N_("{name} names no model, so nothing else can be of the same"),
        N_("Enter maker and model of the item first, or make the rule for this item alone."),
    ),
    "rule.wants_a_date": (N_("{rule} is a date printed on the item"), N_("Enter that date.")),
    "record.in_future": (N_("{day} has not been yet"), N_("Enter the day on which it was done.")),
    "record.next_before_done": (
        N_("the next service on {next} lies before this one on {done}"),
        N_("Enter the day that stands on the paper."),
    ),
    "measurement.unit": (
        N_("{what} is not measured in {unit}"),
        N_("Enter one of these: {units}. A figure of another unit or gauge is written down as it is."),
    ),
    "measurement.negative": (N_("{what} of {value} cannot be"), N_("Look at the paper again.")),
    "measurement.unread": (
        N_("“{value}” is no measurement"),
        N_('Write what, value, unit, gauge and place where the paper says them: "porosity 182 s, gauge A, cell 12".'),
    ),
    "paper.not_a_paper": (
        N_("it is neither PDF nor JPEG nor PNG, whatever its name says"),
        N_("Save it as a PDF or a photo, and attach that."),
    ),
    "paper.too_large": (N_("it has more than {limit} MB"), N_("Scan it with fewer dots, or in parts.")),
    "paper.empty": (N_("the file is empty"), N_("Choose another one.")),
    "paper.no_folder": (N_("there is no such folder"), N_("Make it first; the papers are saved into it.")),
    "record.unknown": (N_("no such record"), N_("Look at the service book.")),
    "record.before_made": (
        N_("{day} lies before {made}, the day it was made"),
        N_("Correct the day here or in Kit, or say that it is so (--sure)."),
    ),
    "record.hours_backwards": (
        N_("{hours} h on {day} do not agree with {other} h on {other_day}: hours never run backwards"),
        N_("Correct the figure, or say that it is so (--sure)."),
    ),
    "record.launches_backwards": (
        N_("{launches} launches on {day} do not agree with {other} on {other_day}: they never run backwards"),
        N_("Correct the figure, or say that it is so (--sure)."),
    ),
    "record.hours_below_log": (
        N_("{hours} h on {day} are less than the {logged} h that opening balance and log held by then"),
        N_("Correct the figure, or say that it is so (--sure)."),
    ),
    "record.hours_above_log": (
        N_("{hours} h on {day} are far more than the {logged} h that opening balance and log held by then"),
        N_("Correct the figure, or say that it is so (--sure)."),
    ),
    "record.launches_below_log": (
        N_("{launches} launches on {day} are fewer than the {logged} that opening balance and log held by then"),
        N_("Correct the figure, or say that it is so (--sure)."),
    ),
    "event.no_items": (N_("nothing says what it happened to"), N_("Name at least one item.")),
    "event.no_note": (N_("nothing says what happened"), N_("Say it in the note.")),
    "event.unknown": (N_("no such event"), N_("Look at the history of the item.")),
    "event.before_made": (
        N_("{day} lies before {made}, the day on which {name} was made"),
        N_("Correct the day here or in Kit."),
    ),
    "rule.event_unknown": (
        N_("“{value}” is no event that can be logged, so the rule would never answer to it"),
        N_("Choose among: {known}; or say that it is so (--sure)."),
    ),
    "incident.unknown": (N_("nothing of the name “{name}” can be logged"), N_("Choose among: {known}.")),
    "event.in_future": (N_("{day} has not been yet"), N_("Enter the day on which it happened.")),
}
