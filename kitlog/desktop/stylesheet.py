"""The style sheet of fields, menus, lists and scroll bars, made from the tokens; everything else paints itself."""

from string import Template

from kitlog.desktop.look import px
from kitlog.paint.tokens import Tokens

_SHEET = Template("""
QMenuBar { background: $paper; color: $ink; padding: 0 ${s4}px; border: none; }
QMenuBar::item { background: transparent; padding: ${s4}px ${s8}px; margin: ${s2}px ${s4}px; border-radius: ${s4}px; }
QMenuBar::item:selected { background: $selection; color: $ink; }
QMenu { background: $surface; color: $ink; border: 1px solid $strong; padding: ${s4}px; }
QMenu::item { padding: ${s6}px ${s24}px ${s6}px ${s24}px; min-height: ${s16}px; border-radius: ${s4}px; }
QMenu::item:selected { background: $selection; }
QMenu::item:disabled { color: $muted; }
QMenu::separator { height: 1px; background: $hairline; margin: ${s4}px ${s8}px; }
QToolTip { background: $surface; color: $ink; border: 1px solid $strong; padding: ${s4}px ${s8}px; }
QDialog, QMessageBox { background: $surface; }

QLineEdit, QAbstractSpinBox, QComboBox, QPlainTextEdit {
  background: $surface; color: $ink; border: 1px solid $outline; border-radius: ${s6}px;
  selection-background-color: $accent; selection-color: $on_accent;
}
QLineEdit, QPlainTextEdit { placeholder-text-color: $muted; }
QLineEdit, QAbstractSpinBox, QComboBox { min-height: ${s30}px; max-height: ${s30}px; padding: 0 ${s10}px; }
QPlainTextEdit { padding: ${s6}px ${s6}px; }
QLineEdit:focus, QAbstractSpinBox:focus, QComboBox:focus, QPlainTextEdit:focus {
  border: 2px solid $accent;
}
QLineEdit:focus, QAbstractSpinBox:focus, QComboBox:focus {
  min-height: ${s28}px; max-height: ${s28}px; padding: 0 ${s9}px;
}
QLineEdit:disabled, QAbstractSpinBox:disabled, QComboBox:disabled, QPlainTextEdit:disabled {
  background: $sunk; color: $muted; border-color: $hairline;
}
QLineEdit[wrong="true"], QAbstractSpinBox[wrong="true"], QComboBox[wrong="true"] { border: 2px solid $stop; }
QAbstractSpinBox QLineEdit, QAbstractSpinBox QLineEdit:focus, QComboBox QLineEdit, QComboBox QLineEdit:focus {
  border: none; padding: 0 ${s9}px; margin: 0; min-height: 0; max-height: 9999px; background: transparent;
}
QComboBox QLineEdit, QComboBox QLineEdit:focus { padding: 0; }
QAbstractSpinBox { padding: 0; }
QAbstractSpinBox:focus { padding: 0; }
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button { width: 0; border: none; }
QAbstractSpinBox::up-arrow, QAbstractSpinBox::down-arrow { image: none; }
QComboBox { padding-right: 0; }
QComboBox::drop-down { border: none; width: ${s28}px; }
QComboBox::down-arrow { image: none; }
QDateEdit::drop-down { border: none; width: ${s28}px; }
QDateEdit::down-arrow { image: none; }
QComboBox QAbstractItemView {
  background: $surface; color: $ink; border: 1px solid $strong; outline: none; padding: ${s4}px;
  selection-background-color: $selection; selection-color: $ink;
}
QComboBox QAbstractItemView::item { min-height: ${s28}px; padding: 0 ${s8}px; }

QScrollArea, QListWidget, QTreeWidget { background: transparent; border: none; }
QListWidget, QTreeWidget { border: 1px solid $strong; border-radius: ${s6}px; outline: none; }
QListWidget:focus, QTreeWidget:focus { border: 2px solid $accent; }
QListWidget::item, QTreeWidget::item { min-height: ${s28}px; padding: 0 ${s8}px; }
QListWidget::item:selected, QTreeWidget::item:selected { background: $selection; color: $ink; }
QScrollArea > QWidget > QWidget { background: transparent; }
QTableView { background: transparent; border: none; outline: none; gridline-color: $hairline; }
QHeaderView { background: transparent; border: none; }
QHeaderView::section { background: transparent; color: $muted; border: none; padding: 0; }
QTreeWidget QHeaderView::section { padding: ${s4}px ${s8}px; border-bottom: 1px solid $hairline; }
QAbstractScrollArea::corner { background: transparent; border: none; }
QTableCornerButton::section { background: transparent; border: none; }

QScrollBar:vertical { background: transparent; width: ${s10}px; margin: 0; }
QScrollBar::handle:vertical {
  background: $strong; border-radius: ${s3}px; min-height: ${s32}px; margin: 0 ${s2}px;
}
QScrollBar:horizontal { background: transparent; height: ${s10}px; margin: 0; }
QScrollBar::handle:horizontal {
  background: $strong; border-radius: ${s3}px; min-width: ${s32}px; margin: ${s2}px 0;
}
QScrollBar::handle:hover { background: $outline; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; border: none; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }

QLabel { background: transparent; }
QLabel[tone="ink"] { color: $ink; }
QLabel[tone="muted"] { color: $muted; }
QLabel[tone="accent"] { color: $accent; }
QLabel[tone="fine"] { color: $fine; }
QLabel[tone="look"] { color: $look; }
QLabel[tone="stop"] { color: $stop; }
QTabWidget::pane { border: none; }
QProgressBar { background: $surface; border: 1px solid $outline; border-radius: ${s3}px; max-height: ${s6}px; }
QProgressBar::chunk { background: $accent; border-radius: ${s2}px; }
""")

_SIZES = (2, 3, 4, 6, 8, 9, 10, 16, 24, 28, 30, 32)


def stylesheet(tokens: Tokens) -> str:
    """The style sheet of a theme at the scale of the application font."""
    colours = {
        "paper": tokens.paper,
        "surface": tokens.surface,
        "sunk": tokens.sunk,
        "ink": tokens.ink,
        "muted": tokens.muted,
        "accent": tokens.accent,
        "on_accent": tokens.on_accent,
        "fine": tokens.fine,
        "look": tokens.look,
        "stop": tokens.stop,
        "hairline": tokens.hairline,
        "strong": tokens.strong_line,
        "outline": tokens.outline,
        "selection": tokens.selection,
    }
    names = {name: colour.name() for name, colour in colours.items()}
    return _SHEET.substitute(names, **{f"s{size}": str(px(size)) for size in _SIZES})
