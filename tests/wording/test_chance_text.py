from hypothesis import given
from hypothesis import strategies as st

from kitlog.budget.power.chance import odds_of
from kitlog.wording.chance_text import error_text, odds_sentence, odds_text


def test_a_chance_is_said_as_finely_as_the_days_drawn_allow():
    assert odds_sentence(odds_of(9_700, 10_000)) == "97.0\u00a0% (±\u00a00.2)"
    assert odds_sentence(odds_of(450, 500)) == "90\u00a0% (±\u00a01)"


def test_all_days_are_not_certainty():
    """Wilson's bound by hand: n / (n + 1.96^2) = 10000 / 10003.84 = 99.96 %, 500 / 503.84 = 99.24 %."""
    assert odds_text(odds_of(10_000, 10_000)) == ">99.9\u00a0%"
    assert odds_text(odds_of(500, 500)) == ">99.2\u00a0%"
    assert odds_text(odds_of(0, 10_000)) == "<0.1\u00a0%"
    assert odds_text(odds_of(0, 500)) == "<0.8\u00a0%"
    assert error_text(odds_of(500, 500)) == ""
    assert odds_sentence(odds_of(500, 500)) == ">99.2\u00a0% (all 500 days agree)"


@given(st.integers(1, 20_000).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_it_is_never_rounded_to_certain_or_never(held_of: tuple[int, int]):
    text = odds_text(odds_of(*held_of))
    assert text not in {"100\u00a0%", "100.0\u00a0%", "0\u00a0%", "0.0\u00a0%"}
    if 0 < held_of[0] < held_of[1]:
        assert error_text(odds_of(*held_of)) not in {"", "±\u00a00.0", "±\u00a00"}
