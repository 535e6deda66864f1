from scenario import EVENING, LIBRARY, NAMES, O1, O2, O3, answers, changed, judged, without

from kitlog.wording.repack_text import repack_text


def text(outing=O1, **how):
    return repack_text(judged(outing, **how), NAMES, LIBRARY)


def test_every_line_of_the_list_and_its_mass() -> None:
    for outing in (O1, O2, O3):
        words = text(outing)
        for line in judged(outing).lines:
            assert line.item.name in " ".join(words.split()), line.item.name


def test_water_is_the_content_of_its_vessel() -> None:
    assert "Bladder 2 l, water 2.0\u00a0l        2\u2009138\u00a0g" in text()


def test_a_stop_is_marked_where_the_thing_is_packed() -> None:
    packing = text(O3).split("Packing list")[1]
    assert "Life vest                         620\u00a0g  ■ overdue since 4\u00a0Jul\u00a02026" in packing


def test_a_closed_stop_shows_its_reason() -> None:
    key = next(f.key for f in judged(O3).findings if f.code == "service.overdue" and f.state == "stop")
    closed = changed(O3, overrides=[{"finding": key, "reason": "Boat has a second one", "at": EVENING}])
    assert "closed by you with a reason: Boat has a second one" in text(closed)
    assert text(closed).count("■") == text(O3).count("■")


def test_answers_stand_with_their_time_and_expire() -> None:
    said = text(answers(O1, [("am.weather", "west 15")]))
    assert "west 15, at 18:30" in said
    assert "3 questions open" in text()
    assert "2 questions open" in said
    old = EVENING.replace(hour=6)
    assert "older than 6 hours" in text(answers(O1, [("am.weather", "west 15")], at=old)).replace("\n", " ").replace(
        "  ", ""
    )


def test_own_lines_are_on_the_list() -> None:
    own = changed(O1, own_lines=[{"text": "Borrowed flask", "mass_g": 300, "zone": "cockpit"}])
    assert "Borrowed flask                    300\u00a0g  your own line" in text(own)


def test_an_empty_kit_says_so() -> None:
    nobody = without(*(name for name in NAMES.values()))
    bare = changed(O1, pinned=[], left_out=[], set={}, plugs=None)
    words = text(bare, kit=nobody)
    assert "Nothing yet: no item of the kit meets a need of this outing." in words
    assert "Full before leaving" not in words
