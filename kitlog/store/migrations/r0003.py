"""The third schema: the memory of the kit. Recordings, measurements, papers, rules by model, reminders."""

from alembic import op

from kitlog.store.migrations import schema_3_service


def upgrade() -> None:
    """Add what the service book holds; a result that is none of the known words moves into the remarks."""
    for statement in schema_3_service.STATEMENTS:
        op.execute(statement)
