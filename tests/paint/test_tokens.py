"""Contrast after WCAG 2.1, definitions "relative luminance" and "contrast ratio"; thresholds of 1.4.3 and 1.4.11 and of the design."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtGui import QColor

from kitlog.paint.mark import Mark
from kitlog.paint.tokens import DARK, LIGHT, SPACING, Tokens, blend

THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])


def luminance(colour: QColor) -> float:
    def linear(channel: int) -> float:
        share = channel / 255
        return share / 12.92 if share <= 0.03928 else ((share + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(c) for c in (colour.red(), colour.green(), colour.blue()))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: QColor, other: QColor) -> float:
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def texts(theme: Tokens) -> dict[str, QColor]:
    return {name: getattr(theme, name) for name in ("ink", "muted", "accent", "fine", "look", "stop")}


def test_the_ratio_of_black_on_white_is_the_21_of_wcag():
    assert contrast(QColor("black"), QColor("white")) == pytest.approx(21.0)
    assert contrast(QColor("#777777"), QColor("white")) == pytest.approx(
        4.48, abs=0.01
    )  # known borderline grey of 1.4.3


@THEMES
def test_every_text_on_the_plain_grounds(theme: Tokens):
    least = 6.2 if theme.dark else 5.6
    for name, colour in texts(theme).items():
        for ground in (theme.paper, theme.surface):
            assert contrast(colour, ground) >= least, name


@THEMES
def test_every_text_on_tints_and_sunk_ground(theme: Tokens):
    for name, colour in texts(theme).items():
        for ground in (theme.sunk, theme.selection, theme.tile(Mark.LOOK), theme.tile(Mark.STOP)):
            assert contrast(colour, ground) >= 4.5, name


@THEMES
@pytest.mark.parametrize("mark", list(Mark))
def test_a_chips_word_on_its_own_ground(theme: Tokens, mark: Mark):
    assert contrast(theme.state(mark), theme.chip(mark)) >= 4.5


@THEMES
def test_words_on_full_accent(theme: Tokens):
    assert contrast(theme.on_accent, theme.accent) >= 4.5


@THEMES
def test_outlines_of_controls_and_shapes_of_states(theme: Tokens):
    for ground in (theme.surface, theme.paper, theme.sunk, theme.selection):
        assert contrast(theme.outline, ground) >= 3.0
        assert contrast(theme.accent, ground) >= 3.0
    for mark in Mark:
        assert contrast(theme.state(mark), theme.tile(mark)) >= 3.0


@THEMES
def test_unknown_is_never_on_a_coloured_ground(theme: Tokens):
    assert theme.state(Mark.NOT_KNOWN) == theme.muted
    assert theme.chip("not known") == theme.surface
    assert theme.tile("not known") == theme.sunk
    assert theme.tile("fine") == theme.surface


def test_a_state_that_is_none_of_the_words_is_refused():
    with pytest.raises(ValueError, match="good"):
        LIGHT.state("good")


def test_the_spacing_scale_grows():
    assert list(SPACING) == sorted(SPACING) == [4, 8, 12, 16, 24, 32]


@given(st.floats(0, 1))
def test_a_blend_lies_between_its_colours(share: float):
    mixed = blend(LIGHT.ink, share, LIGHT.paper)
    for channel in ("red", "green", "blue"):
        low, high = sorted(getattr(c, channel)() for c in (LIGHT.ink, LIGHT.paper))
        assert low <= getattr(mixed, channel)() <= high
