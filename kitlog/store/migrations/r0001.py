"""The first schema: everything."""

from alembic import op

from kitlog.store.marks import APPLICATION_ID
from kitlog.store.migrations import schema_1_kit, schema_1_log, schema_1_outing


def upgrade() -> None:
    """Make all tables in an empty file and mark it as ours."""
    for subject in (schema_1_kit, schema_1_log, schema_1_outing):
        for statement in subject.STATEMENTS:
            op.execute(statement)
    op.execute(f"PRAGMA application_id={APPLICATION_ID}")
