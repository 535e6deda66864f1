"""A paragraph has room for all of its lines."""

import pytest
from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.text import Paragraph
from kitlog.paint.type_scale import Role

TEXT = "Packers' pages: the suspicion of damp is enough; the other causes are common practice. " * 2


@pytest.mark.parametrize("width", range(300, 420, 7))
def test_a_margin_takes_width_and_adds_height(window, qtbot, width: int) -> None:
    outer = QWidget()
    qtbot.addWidget(outer)
    rows = QVBoxLayout(outer)
    rows.setContentsMargins(0, 0, 0, 0)
    indented, plain = Paragraph(TEXT, Role.SMALL), Paragraph(TEXT, Role.SMALL)
    indented.setContentsMargins(look.px(32), 0, 0, look.px(6))
    for paragraph in (indented, plain):
        rows.addWidget(paragraph)
    outer.resize(width, 400)
    outer.show()
    lines = plain.heightForWidth(width - look.px(32))
    assert indented.heightForWidth(width) == lines + look.px(6)
    assert indented.height() >= lines + look.px(6)
