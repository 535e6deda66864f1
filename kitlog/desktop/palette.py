"""The palette of a theme for Fusion; every colour comes from the tokens."""

from PySide6.QtGui import QColor, QPalette

from kitlog.paint.tokens import Tokens


def palette(tokens: Tokens) -> QPalette:
    """The palette of a theme."""
    made = QPalette()
    for role, colour in _roles(tokens).items():
        made.setColor(role, colour)
    for role in (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, role, tokens.muted)
    return made


def _roles(t: Tokens) -> dict[QPalette.ColorRole, QColor]:
    role = QPalette.ColorRole
    return {
        role.Window: t.paper,
        role.WindowText: t.ink,
        role.Base: t.surface,
        role.AlternateBase: t.sunk,
        role.Text: t.ink,
        role.PlaceholderText: t.muted,
        role.Button: t.surface,
        role.ButtonText: t.ink,
        role.BrightText: t.on_accent,
        role.Highlight: t.accent,
        role.HighlightedText: t.on_accent,
        role.Link: t.accent,
        role.LinkVisited: t.accent,
        role.ToolTipBase: t.surface,
        role.ToolTipText: t.ink,
        role.Light: t.surface,
        role.Midlight: t.hairline,
        role.Mid: t.strong_line,
        role.Dark: t.outline,
        role.Shadow: t.ink,
        role.Accent: t.accent,
    }
