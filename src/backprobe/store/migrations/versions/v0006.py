"""The stage that the next thing to do in a job belongs to, so that a phone can lead there before it has judged."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Add the column; null until a job is judged again."""
    op.add_column("job", sa.Column("next_stage", sa.Text(), nullable=True))


def downgrade() -> None:
    """Drop it."""
    op.drop_column("job", "next_stage")
