"""When reports reached a job last, when somebody spoke in it last, and what a feed has pushed in a day."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None

COLUMNS = (
    ("job", "said_at", sa.Text()),
    ("job", "reported_at", sa.Text()),
    ("feed", "day", sa.Text()),
    ("feed", "requests", sa.Integer()),
    ("feed", "bytes", sa.BigInteger()),
)


def upgrade() -> None:
    """Add the columns."""
    for table, name, kind in COLUMNS:
        op.add_column(table, sa.Column(name, kind, nullable=True))


def downgrade() -> None:
    """Drop them."""
    for table, name, _ in reversed(COLUMNS):
        op.drop_column(table, name)
