"""The second schema: what a pilot knows of draws and charge, chargers, and the night before an outing."""

from alembic import op

from kitlog.store.migrations import schema_2_power


def upgrade() -> None:
    """Add what the power budget asks of kit and outing; a draw in W stays as it was."""
    for statement in schema_2_power.STATEMENTS:
        op.execute(statement)
