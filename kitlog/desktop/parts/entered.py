"""What stands in the fields of a form, whatever fields they are: to tell whether anything was changed."""

from PySide6.QtWidgets import QAbstractButton, QComboBox, QLineEdit, QPlainTextEdit, QTableWidget, QWidget

Entered = tuple[object, ...]


def entered(form: QWidget) -> Entered:
    """All that is typed, chosen and ticked, in the order of the fields; two that are equal hold the same.

    Numbers and days are seen as the text in their line, so that what is typed and not read yet counts too. What opens
    over the form, a calendar for one, is no part of it.
    """
    fields = (child for child in form.findChildren(QWidget) if child.window() is form.window())
    return tuple(value for field in fields if (value := _value(field)) is not None)


def _value(field: QWidget) -> object:
    match field:
        case QLineEdit():
            return field.text()
        case QPlainTextEdit():
            return field.toPlainText()
        case QTableWidget():
            places = [(row, column) for row in range(field.rowCount()) for column in range(field.columnCount())]
            return tuple(cell.text() if (cell := field.item(*place)) is not None else "" for place in places)
        case QComboBox():
            return field.currentIndex(), field.currentText()
        case QAbstractButton() if field.isCheckable():
            return field.isChecked()
    return None
