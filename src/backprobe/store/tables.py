"""The tables of the store.

Entries are the truth. `job`, `unit_claim`, `unit_wait` and `blob_use` are worked out from them, so that lists answer at
once and a database index can decide which vehicle a unit is in. Times are texts (RFC 3339, UTC), the same in every
database; digests are sha256 in hex.
"""

from __future__ import annotations

from sqlalchemy import (
    BigInteger,
    Boolean,
    Column,
    Float,
    ForeignKeyConstraint,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    Table,
    Text,
    UniqueConstraint,
)

ENDED = ("proven", "abandoned")  # states of jobs without more work; a provisional one is owed something

metadata = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
    }
)

# `cursor` is that of the newest entry; it is raised in the transaction that writes the entries
organisation = Table(
    "organisation",
    metadata,
    Column("id", Text, primary_key=True),
    Column("name", Text, nullable=False),
    Column("cursor", BigInteger, nullable=False),
)

person = Table(
    "person",
    metadata,
    Column("id", Text, primary_key=True),
    Column("organisation", Text, nullable=False, index=True),
    Column("name", Text, nullable=False),
    Column("language", Text, nullable=False),
    Column("units", Text, nullable=False),
    Column("role", Text, nullable=False),
    Column("login", Text, unique=True),
    Column("password_hash", Text),
    Column("made_at", Text, nullable=False),
)

phone = Table(
    "phone",
    metadata,
    Column("id", Text, primary_key=True),
    Column("organisation", Text, nullable=False),
    Column("person", Text, nullable=False),
    Column("device", Text, nullable=False),
    Column("label", Text, nullable=False),
    Column("token_sha256", Text, nullable=False, unique=True),
    Column("enrolled_at", Text, nullable=False),
    Column("seen_at", Text),
    Column("withdrawn_at", Text),
    UniqueConstraint("organisation", "device"),
)

# the public key (hex) that a phone signs with; a phone may have had several
signing_key = Table(
    "signing_key",
    metadata,
    Column("organisation", Text, primary_key=True),
    Column("key", Text, primary_key=True),
    Column("phone", Text, nullable=False),
    Column("given_at", Text, nullable=False),
)

enrolment = Table(
    "enrolment",
    metadata,
    Column("code_sha256", Text, primary_key=True),
    Column("organisation", Text, nullable=False),
    Column("person", Text, nullable=False),
    Column("expires_at", Text, nullable=False),
    Column("used_at", Text),
)

session = Table(
    "session",
    metadata,
    Column("token_sha256", Text, primary_key=True),
    Column("person", Text, nullable=False),
    Column("csrf", Text, nullable=False),
    Column("expires_at", Text, nullable=False),
)

# an entry is its bytes (`raw`); the other columns are read from them, or say how it came here
entry = Table(
    "entry",
    metadata,
    Column("organisation", Text, primary_key=True),
    Column("id", Text, primary_key=True),
    Column("cursor", BigInteger, nullable=False),
    Column("job", Text, nullable=False),
    Column("kind", Text, nullable=False),
    Column("device", Text, nullable=False),
    Column("seq", BigInteger, nullable=False),
    Column("digest", Text, nullable=False),
    Column("raw", LargeBinary, nullable=False),
    Column("received_at", Text, nullable=False),
    Column("phone", Text),
    UniqueConstraint("organisation", "cursor"),
    Index("ix_entry_job_cursor", "organisation", "job", "cursor"),
    Index("ix_entry_job_device_seq", "organisation", "job", "device", "seq"),
)

quarantine = Table(
    "quarantine",
    metadata,
    Column("number", Integer, primary_key=True, autoincrement=True),
    Column("organisation", Text, nullable=False),
    Column("digest", Text, nullable=False),
    Column("code", Text, nullable=False),
    Column("error", Text, nullable=False),
    Column("entry", Text),
    Column("job", Text),
    Column("raw", LargeBinary, nullable=False),
    Column("received_at", Text, nullable=False),
    Column("phone", Text),
    Column("decision", Text),
    Column("decided_at", Text),
    UniqueConstraint("organisation", "digest"),
)

blob = Table(
    "blob",
    metadata,
    Column("organisation", Text, primary_key=True),
    Column("sha256", Text, primary_key=True),
    Column("bytes", BigInteger, nullable=False),
    Column("type", Text, nullable=False),
    Column("kept_at", Text, nullable=False),
    Column("phone", Text),
    Column("quarantined", Boolean, nullable=False),
)

blob_use = Table(
    "blob_use",
    metadata,
    Column("organisation", Text, primary_key=True),
    Column("sha256", Text, primary_key=True),
    Column("job", Text, primary_key=True),
    Index("ix_blob_use_job", "organisation", "job"),
)

# one row a job, for lists; `cursor` is its newest entry, `judged_cursor` the one up to which it was judged
job = Table(
    "job",
    metadata,
    Column("organisation", Text, primary_key=True),
    Column("id", Text, primary_key=True),
    Column("name", Text, nullable=False),
    Column("state", Text, nullable=False),
    Column("verdict", Text, nullable=False),
    Column("urgency", Integer, nullable=False),
    Column("fails", Integer, nullable=False),
    Column("thin", Integer, nullable=False),
    Column("open", Integer, nullable=False),
    Column("next", Text),
    Column("next_stage", Text),
    Column("vin", Text),
    Column("plate", Text),
    Column("fleet_number", Text),
    Column("vehicle_type", Text),
    Column("unit_sheet", Text),
    Column("serial", Text),
    Column("unit_id", Text),
    Column("yard", Text),
    Column("lat", Float),
    Column("lon", Float),
    Column("entries", Integer, nullable=False),
    Column("cursor", BigInteger, nullable=False),
    Column("judged_cursor", BigInteger, nullable=False),
    Column("usual", Boolean),  # whether others of its type may take over how it was done; null before it was judged
    Column("search", Text, nullable=False),
    Column("made_at", Text, nullable=False),
    Column("updated_at", Text, nullable=False),
    Column("said_at", Text),  # when somebody said something in it last, the server itself aside
    Column("reported_at", Text),  # when reports that were pushed reached it last
    Index("ix_job_urgency", "organisation", "urgency", "cursor", "id"),
    Index("ix_job_state", "organisation", "state", "urgency", "cursor", "id"),
    Index("ix_job_usual", "organisation", "vehicle_type", "usual", "cursor"),
)

job_person = Table(
    "job_person",
    metadata,
    Column("organisation", Text, primary_key=True),
    Column("job", Text, primary_key=True),
    Column("person", Text, primary_key=True),
    ForeignKeyConstraint(["organisation", "job"], ["job.organisation", "job.id"]),
    Index("ix_job_person_person", "organisation", "person"),
)

# the primary key decides which vehicle a unit is in, however many ask at once
unit_claim = Table(
    "unit_claim",
    metadata,
    Column("organisation", Text, primary_key=True),
    Column("serial", Text, primary_key=True),
    Column("job", Text, nullable=False),
    Column("vehicle", Text),
    Index("ix_unit_claim_job", "organisation", "job"),
)

# who was refused a unit: `entry` is the entry that says so
unit_wait = Table(
    "unit_wait",
    metadata,
    Column("organisation", Text, primary_key=True),
    Column("serial", Text, primary_key=True),
    Column("job", Text, primary_key=True),
    Column("entry", Text, nullable=False),
    Index("ix_unit_wait_job", "organisation", "job"),
)

feed = Table(
    "feed",
    metadata,
    Column("id", Text, primary_key=True),
    Column("organisation", Text, nullable=False, index=True),
    Column("label", Text, nullable=False),
    Column("token_sha256", Text, nullable=False, unique=True),
    Column("columns", Text, nullable=False),
    Column("made_at", Text, nullable=False),
    Column("withdrawn_at", Text),
    Column("day", Text),  # the day (UTC) of which the two counts are
    Column("requests", Integer),
    Column("bytes", BigInteger),
)

# `row` is the report's row in our own columns; `job` the job that it was handed to, once there is one
report = Table(
    "report",
    metadata,
    Column("organisation", Text, primary_key=True),
    Column("digest", Text, primary_key=True),
    Column("unit", Text, nullable=False),
    Column("time_s", Float, nullable=False),
    Column("row", Text, nullable=False),
    Column("received_at", Text, nullable=False),
    Column("feed", Text, nullable=False),
    Column("job", Text),
    Index("ix_report_unit", "organisation", "unit", "job"),
)

# a vehicle or a unit of a roster; `content` is what is known of it, as JSON
roster_row = Table(
    "roster_row",
    metadata,
    Column("organisation", Text, primary_key=True),
    Column("kind", Text, primary_key=True),
    Column("number", Integer, primary_key=True, autoincrement=False),
    Column("content", Text, nullable=False),
)
