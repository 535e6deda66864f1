"""Sample data for the gallery: eighteen months of service dates."""

from datetime import date

from kitlog.paint.mark import Mark
from kitlog.paint.service_picture import HoursLimit, ServiceLane, ServicePicture, ServiceWords, Stage

LANES = (
    ServiceLane(
        "Carabiners, pair", "replace, 24 months", Mark.STOP, due=Stage(date(2027, 4, 2), "overdue since 2 Apr")
    ),
    ServiceLane("Carabiners, pair", "replace, 500 h", Mark.FINE, hours=HoursLimit("407.6 h left, beyond the band")),
    ServiceLane(
        "Wing", "check, 24 months", Mark.LOOK, due=Stage(date(2027, 5, 22), "22 May"), book_by=date(2027, 5, 1)
    ),
    ServiceLane(
        "Wing",
        "check, 100 h",
        Mark.FINE,
        hours=HoursLimit(
            "16.8 h left, about 31 Jul; 3 Jul to 14 Sep", date(2027, 7, 31), date(2027, 7, 3), date(2027, 9, 14)
        ),
    ),
    ServiceLane(
        "Wing",
        "trim, 50 h",
        Mark.FINE,
        hours=HoursLimit(
            "31.6 h left, about 1 Nov; 10 Sep to 25 Jan", date(2027, 11, 1), date(2027, 9, 10), date(2028, 1, 25)
        ),
    ),
    ServiceLane(
        "Reserve",
        "repack, two stages",
        Mark.FINE,
        due=Stage(date(2027, 11, 30), "due 30 Nov"),
        recommended=Stage(date(2027, 5, 30), "recommended 30 May"),
        book_by=date(2027, 11, 9),
    ),
    ServiceLane(
        "Harness, pod",
        "check, 12 months",
        Mark.FINE,
        due=Stage(date(2027, 11, 30), "30 Nov"),
        book_by=date(2027, 11, 9),
    ),
    ServiceLane("First aid pouch", "dressings", Mark.FINE, due=Stage(date(2027, 9, 30), "30 Sep")),
    ServiceLane("Papers", "insurance", Mark.FINE, due=Stage(date(2027, 12, 31), "31 Dec"), book_by=date(2027, 12, 1)),
    ServiceLane("Helmet", "replace, 60 months", Mark.FINE, due=Stage(date(2028, 3, 31), "31 Mar 2028")),
    ServiceLane(
        "Radio", "capacity test", Mark.NOT_KNOWN, unknown="no record: not known until a first test is recorded"
    ),
)

SPRING_TO_WINTER = ("Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")

SERVICE = ServicePicture(
    first=date(2027, 4, 1),
    months=(*SPRING_TO_WINTER, "Jan", "Feb", "Mar", *SPRING_TO_WINTER[:6]),
    today=date(2027, 4, 16),
    lanes=LANES,
    outings=(
        date(2027, 5, 1),
        date(2027, 5, 2),
        date(2027, 5, 15),
        date(2027, 7, 3),
        date(2027, 7, 4),
        date(2027, 8, 14),
    ),
    words=ServiceWords(
        today="today, 16 Apr",
        recommended="recommended",
        due="due",
        book_by="book by",
        hours="limit by hours: likely day and span",
        outing="planned outing",
    ),
)
