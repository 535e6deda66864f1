"""Anybody's table - CSV in any dialect, a workbook, a pasted block - read as a kit, with doubts instead of guesses."""
