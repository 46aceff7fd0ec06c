"""Which jobs others of their vehicle type may follow."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None

INDEX = "ix_job_usual"


def upgrade() -> None:
    """Add the column, and have finished jobs judged once more: only that says which of them are sound."""
    op.add_column("job", sa.Column("usual", sa.Boolean(), nullable=True))
    op.create_index(INDEX, "job", ["organisation", "vehicle_type", "usual", "cursor"])
    op.execute("UPDATE job SET judged_cursor = cursor - 1 WHERE state IN ('proven', 'provisional') AND cursor > 0")


def downgrade() -> None:
    """Drop both."""
    op.drop_index(INDEX, "job")
    op.drop_column("job", "usual")
