"""The keys that phones sign with."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the table of public keys."""
    op.create_table(
        "signing_key",
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("phone", sa.Text(), nullable=False),
        sa.Column("given_at", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("organisation", "key", name="pk_signing_key"),
    )


def downgrade() -> None:
    """Drop it: whose the keys were is then known no more."""
    op.drop_table("signing_key")
