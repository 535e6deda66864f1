"""Steps from one schema to the next, in order; a released step is never edited.

A step is a module with ``upgrade()``, which uses alembic's ``op``. To add one: write ``rNNNN.py``, name it in `STEPS`,
raise `kitlog.store.marks.SCHEMA`, change the tables, and keep a small file of the old schema in ``tests/store/old``.
Plain ADD, RENAME and DROP COLUMN are better than alembic's batches, which make the table anew.
"""

STEPS: tuple[str, ...] = (
    "kitlog.store.migrations.r0001",
    "kitlog.store.migrations.r0002",
    "kitlog.store.migrations.r0003",
)
"""Modules; the n-th leads to schema n."""
