"""The starter draws against run times and label figures of published sources.

Sources as read for this project; X: computed from the figures of the source, B: second-hand, M: from memory.
"""

from collections import defaultdict

import pytest

from kitlog.files.resources import load_library, resources_folder
from kitlog.kit.kinds import Kind, PhaseWay

LIBRARY = load_library(resources_folder())
USES = {(use.device, use.name): use for use in LIBRARY.starter_uses}


def mean_w(device: str, during: PhaseWay) -> float:
    """Mean likely draw of the usual day of a device."""
    return sum(
        use.likely_w * share.share
        for use in LIBRARY.starter_uses
        if use.device == device
        for share in use.shares
        if share.during is during
    )


def test_each_way_of_a_device_is_named_once() -> None:
    assert len(USES) == len(LIBRARY.starter_uses)


def test_shares_add_up_to_one_in_each_way_of_moving() -> None:
    sums: dict[tuple[Kind, str, PhaseWay], float] = defaultdict(float)
    for use in LIBRARY.starter_uses:
        for share in use.shares:
            sums[use.kind, use.device, share.during] += share.share
    assert sums
    assert all(total == pytest.approx(1) for total in sums.values())


def test_the_usual_day_of_a_device_fills_the_phases_usual_for_its_kind() -> None:
    """Whoever takes a starter over gets a draw in every phase in which the kind is used."""
    with_shares = {(use.kind, use.device) for use in LIBRARY.starter_uses if use.shares}
    for kind, device in with_shares:
        during = {s.during for u in LIBRARY.starter_uses if u.device == device for s in u.shares}
        assert during == set(LIBRARY.facts(kind).used_in), device


def test_low_likely_and_high_rise() -> None:
    assert all(use.low_w <= use.likely_w <= use.high_w for use in LIBRARY.starter_uses)


@pytest.mark.parametrize(
    ("name", "amps"),
    [("transmit 5 W", 1.4), ("receive", 0.14), ("standby", 0.04)],
)
def test_radio_draws_are_amps_times_volts(name: str, amps: float) -> None:
    """Ailunce figures: 1.4 A, 140 mA and 40 mA at 7.4 V (B, X)."""
    assert USES["hand-held, 5/5/90", name].likely_w == pytest.approx(amps * 7.4)


def test_most_of_the_radio_is_the_professional_set() -> None:
    """Motorola XTS 5000 manual: 2.1 A at 7.5 V (B, X)."""
    assert USES["hand-held, 5/5/90", "transmit 5 W"].high_w == pytest.approx(2.1 * 7.5)


def test_radio_mean_of_5_5_90() -> None:
    """5 % transmit, 5 % receive, 90 % standby: Hytera Europe, Wildtalk (B); mean 0.8362 W (X)."""
    assert mean_w("hand-held, 5/5/90", PhaseWay.FLIGHT) == pytest.approx(0.8362)
    assert mean_w("hand-held, 5/5/90", PhaseWay.HIKE_UP) == pytest.approx(0.8362)


def test_radio_mean_of_a_competition() -> None:
    """5, 25, 70: common practice; 1.0 W to one digit (X)."""
    assert mean_w("hand-held, competition or school", PhaseWay.FLIGHT) == pytest.approx(1.0, abs=0.05)


@pytest.mark.parametrize(
    ("device", "wh"), [("heated gloves, 16 Wh a pair", 16.0), ("heated gloves, 32 Wh a pair", 32.0)]
)
def test_heated_gloves_run_as_long_as_their_maker_says(device: str, wh: float) -> None:
    """High 3 h, medium 5 h, low 7 h: Ororo help page (B, X)."""
    hours = {name: wh / USES[device, name].likely_w for name in ("high", "medium", "low")}
    assert hours == pytest.approx({"high": 3, "medium": 5, "low": 7}, rel=0.02)


def test_action_camera_runs_as_long_as_pages_say() -> None:
    """6.6 Wh (M) in 60 to 90 min: actioncameraexpert.com (B, X)."""
    camera = USES["action camera", "recording"]
    assert 60 <= 60 * 6.6 / camera.likely_w <= 90


def test_phone_in_mixed_use_lies_between_the_label_classes() -> None:
    """EU 2023/1669 classes A and G as listed by a compliance site: 0.37 and 0.83 W (B, X)."""
    phone = USES["phone", "mixed use"]
    assert (phone.low_w, phone.high_w) == (0.37, 0.83)
    assert phone.likely_w == pytest.approx((0.37 + 0.83) / 2)


def test_phone_screen_runs_as_long_as_one_phone_s_page_says() -> None:
    """15.7 Wh last 4 to 6 h: Xewli, Papyrus page (B, X)."""
    phone = USES["phone", "screen on"]
    assert (phone.low_w, phone.high_w) == pytest.approx((15.7 / 6, 15.7 / 4), abs=0.05)
    assert phone.likely_w == pytest.approx(15.7 / 5, abs=0.05)


def test_grey_scale_computer_is_like_hand_held_navigation() -> None:
    """Two AA cells of 6 to 7 Wh for 11 to 22 h: GPS hacking book, cyclists' forum (B, X)."""
    computer = USES["flight computer, grey-scale", "on, no light"]
    assert 6 / 22 < computer.likely_w < 7 / 11


def test_messenger_reports_each_ten_minutes() -> None:
    """1.1 to 1.3 mAh a report at 3.7 V: NAL Shout ts manual (B, X); idle 0.02 to 0.04 W beside it (M)."""
    reports = [mah * 3.7 * 6 / 1000 for mah in (1.1, 1.3)]
    messenger = USES["satellite messenger", "position each 10 min"]
    assert messenger.low_w == pytest.approx(reports[0] + 0.02, abs=0.002)
    assert messenger.high_w == pytest.approx(reports[1] + 0.04, abs=0.002)
    assert USES["satellite messenger", "position each 2 min"].high_w > 5 * reports[0]


@pytest.mark.parametrize(
    ("device", "name", "watts"),
    [
        ("phone", "flight mode, screen off", (0.02, 0.05, 0.15)),
        ("phone", "flight mode, logging, screen off", (0.25, 0.45, 0.8)),
        ("phone", "tracking, screen off", (0.5, 0.9, 1.6)),
        ("phone", "screen on, full brightness, moving map", (3, 4, 6)),
        ("phone", "call, weak signal", (1, 1.8, 3)),
        ("audio vario, solar", "on", (0.005, 0.02, 0.08)),
        ("flight computer, grey-scale", "on, no light", (0.15, 0.4, 0.7)),
        ("flight computer, colour", "full brightness", (1, 1.8, 3)),
        ("hand-held, 5/5/90", "transmit 1 W", (3, 4.5, 6)),
        ("action camera", "recording", (4, 5.2, 7)),
    ],
)
def test_draws_from_memory(device: str, name: str, watts: tuple[float, float, float]) -> None:
    """From memory (M): plausibility, no check of truth."""
    use = USES[device, name]
    assert (use.low_w, use.likely_w, use.high_w) == watts


def test_a_beacon_draws_nothing_until_it_is_used() -> None:
    beacons = [use for use in LIBRARY.starter_uses if use.kind is Kind.BEACON]
    assert beacons
    assert all(use.high_w == 0 for use in beacons)


def test_every_powered_kind_has_a_starter() -> None:
    powered = {Kind.PHONE, Kind.INSTRUMENT, Kind.RADIO, Kind.TRACKER, Kind.BEACON, Kind.CAMERA, Kind.GLOVES, Kind.LIGHT}
    assert powered <= {use.kind for use in LIBRARY.starter_uses}
