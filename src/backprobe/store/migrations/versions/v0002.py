"""Rosters."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the table of rosters."""
    op.create_table(
        "roster_row",
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("number", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("content", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("organisation", "kind", "number", name="pk_roster_row"),
    )


def downgrade() -> None:
    """Drop it, and what is in it."""
    op.drop_table("roster_row")
