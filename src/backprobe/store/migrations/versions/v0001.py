"""The first tables."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Make the tables."""
    _blob()
    _blob_use()
    _enrolment()
    _entry()
    _feed()
    _job()
    _organisation()
    _person()
    _phone()
    _quarantine()
    _report()
    _session()
    _unit_claim()
    _unit_wait()
    _job_person()


def downgrade() -> None:
    """Drop the tables, and what is in them."""
    for name in (
        "job_person",
        "unit_wait",
        "unit_claim",
        "session",
        "report",
        "quarantine",
        "phone",
        "person",
        "organisation",
        "job",
        "feed",
        "entry",
        "enrolment",
        "blob_use",
        "blob",
    ):
        op.drop_table(name)


def _blob() -> None:
    op.create_table(
        "blob",
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("sha256", sa.Text(), nullable=False),
        sa.Column("bytes", sa.BigInteger(), nullable=False),
        sa.Column("type", sa.Text(), nullable=False),
        sa.Column("kept_at", sa.Text(), nullable=False),
        sa.Column("phone", sa.Text(), nullable=True),
        sa.Column("quarantined", sa.Boolean(), nullable=False),
        sa.PrimaryKeyConstraint("organisation", "sha256", name="pk_blob"),
    )


def _blob_use() -> None:
    op.create_table(
        "blob_use",
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("sha256", sa.Text(), nullable=False),
        sa.Column("job", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("organisation", "sha256", "job", name="pk_blob_use"),
    )
    op.create_index("ix_blob_use_job", "blob_use", ["organisation", "job"])


def _enrolment() -> None:
    op.create_table(
        "enrolment",
        sa.Column("code_sha256", sa.Text(), nullable=False),
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("person", sa.Text(), nullable=False),
        sa.Column("expires_at", sa.Text(), nullable=False),
        sa.Column("used_at", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("code_sha256", name="pk_enrolment"),
    )


def _entry() -> None:
    op.create_table(
        "entry",
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("cursor", sa.BigInteger(), nullable=False),
        sa.Column("job", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("device", sa.Text(), nullable=False),
        sa.Column("seq", sa.BigInteger(), nullable=False),
        sa.Column("digest", sa.Text(), nullable=False),
        sa.Column("raw", sa.LargeBinary(), nullable=False),
        sa.Column("received_at", sa.Text(), nullable=False),
        sa.Column("phone", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("organisation", "id", name="pk_entry"),
        sa.UniqueConstraint("organisation", "cursor", name="uq_entry_organisation_cursor"),
    )
    op.create_index("ix_entry_job_cursor", "entry", ["organisation", "job", "cursor"])
    op.create_index("ix_entry_job_device_seq", "entry", ["organisation", "job", "device", "seq"])


def _feed() -> None:
    op.create_table(
        "feed",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("label", sa.Text(), nullable=False),
        sa.Column("token_sha256", sa.Text(), nullable=False),
        sa.Column("columns", sa.Text(), nullable=False),
        sa.Column("made_at", sa.Text(), nullable=False),
        sa.Column("withdrawn_at", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_feed"),
        sa.UniqueConstraint("token_sha256", name="uq_feed_token_sha256"),
    )
    op.create_index("ix_feed_organisation", "feed", ["organisation"])


def _job() -> None:
    op.create_table(
        "job",
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("verdict", sa.Text(), nullable=False),
        sa.Column("urgency", sa.Integer(), nullable=False),
        sa.Column("fails", sa.Integer(), nullable=False),
        sa.Column("thin", sa.Integer(), nullable=False),
        sa.Column("open", sa.Integer(), nullable=False),
        sa.Column("next", sa.Text(), nullable=True),
        sa.Column("vin", sa.Text(), nullable=True),
        sa.Column("plate", sa.Text(), nullable=True),
        sa.Column("fleet_number", sa.Text(), nullable=True),
        sa.Column("vehicle_type", sa.Text(), nullable=True),
        sa.Column("unit_sheet", sa.Text(), nullable=True),
        sa.Column("serial", sa.Text(), nullable=True),
        sa.Column("unit_id", sa.Text(), nullable=True),
        sa.Column("yard", sa.Text(), nullable=True),
        sa.Column("lat", sa.Float(), nullable=True),
        sa.Column("lon", sa.Float(), nullable=True),
        sa.Column("entries", sa.Integer(), nullable=False),
        sa.Column("cursor", sa.BigInteger(), nullable=False),
        sa.Column("judged_cursor", sa.BigInteger(), nullable=False),
        sa.Column("search", sa.Text(), nullable=False),
        sa.Column("made_at", sa.Text(), nullable=False),
        sa.Column("updated_at", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("organisation", "id", name="pk_job"),
    )
    op.create_index("ix_job_state", "job", ["organisation", "state", "urgency", "cursor", "id"])
    op.create_index("ix_job_urgency", "job", ["organisation", "urgency", "cursor", "id"])


def _organisation() -> None:
    op.create_table(
        "organisation",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("cursor", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_organisation"),
    )


def _person() -> None:
    op.create_table(
        "person",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("language", sa.Text(), nullable=False),
        sa.Column("units", sa.Text(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("login", sa.Text(), nullable=True),
        sa.Column("password_hash", sa.Text(), nullable=True),
        sa.Column("made_at", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_person"),
        sa.UniqueConstraint("login", name="uq_person_login"),
    )
    op.create_index("ix_person_organisation", "person", ["organisation"])


def _phone() -> None:
    op.create_table(
        "phone",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("person", sa.Text(), nullable=False),
        sa.Column("device", sa.Text(), nullable=False),
        sa.Column("label", sa.Text(), nullable=False),
        sa.Column("token_sha256", sa.Text(), nullable=False),
        sa.Column("enrolled_at", sa.Text(), nullable=False),
        sa.Column("seen_at", sa.Text(), nullable=True),
        sa.Column("withdrawn_at", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_phone"),
        sa.UniqueConstraint("organisation", "device", name="uq_phone_organisation_device"),
        sa.UniqueConstraint("token_sha256", name="uq_phone_token_sha256"),
    )


def _quarantine() -> None:
    op.create_table(
        "quarantine",
        sa.Column("number", sa.Integer(), autoincrement=True, nullable=False),
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("digest", sa.Text(), nullable=False),
        sa.Column("code", sa.Text(), nullable=False),
        sa.Column("error", sa.Text(), nullable=False),
        sa.Column("entry", sa.Text(), nullable=True),
        sa.Column("job", sa.Text(), nullable=True),
        sa.Column("raw", sa.LargeBinary(), nullable=False),
        sa.Column("received_at", sa.Text(), nullable=False),
        sa.Column("phone", sa.Text(), nullable=True),
        sa.Column("decision", sa.Text(), nullable=True),
        sa.Column("decided_at", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("number", name="pk_quarantine"),
        sa.UniqueConstraint("organisation", "digest", name="uq_quarantine_organisation_digest"),
    )


def _report() -> None:
    op.create_table(
        "report",
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("digest", sa.Text(), nullable=False),
        sa.Column("unit", sa.Text(), nullable=False),
        sa.Column("time_s", sa.Float(), nullable=False),
        sa.Column("row", sa.Text(), nullable=False),
        sa.Column("received_at", sa.Text(), nullable=False),
        sa.Column("feed", sa.Text(), nullable=False),
        sa.Column("job", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("organisation", "digest", name="pk_report"),
    )
    op.create_index("ix_report_unit", "report", ["organisation", "unit", "job"])


def _session() -> None:
    op.create_table(
        "session",
        sa.Column("token_sha256", sa.Text(), nullable=False),
        sa.Column("person", sa.Text(), nullable=False),
        sa.Column("csrf", sa.Text(), nullable=False),
        sa.Column("expires_at", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("token_sha256", name="pk_session"),
    )


def _unit_claim() -> None:
    op.create_table(
        "unit_claim",
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("serial", sa.Text(), nullable=False),
        sa.Column("job", sa.Text(), nullable=False),
        sa.Column("vehicle", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("organisation", "serial", name="pk_unit_claim"),
    )
    op.create_index("ix_unit_claim_job", "unit_claim", ["organisation", "job"])


def _unit_wait() -> None:
    op.create_table(
        "unit_wait",
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("serial", sa.Text(), nullable=False),
        sa.Column("job", sa.Text(), nullable=False),
        sa.Column("entry", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("organisation", "serial", "job", name="pk_unit_wait"),
    )
    op.create_index("ix_unit_wait_job", "unit_wait", ["organisation", "job"])


def _job_person() -> None:
    op.create_table(
        "job_person",
        sa.Column("organisation", sa.Text(), nullable=False),
        sa.Column("job", sa.Text(), nullable=False),
        sa.Column("person", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("organisation", "job", "person", name="pk_job_person"),
        sa.ForeignKeyConstraint(
            ["organisation", "job"], ["job.organisation", "job.id"], name="fk_job_person_organisation_job"
        ),
    )
    op.create_index("ix_job_person_person", "job_person", ["organisation", "person"])
