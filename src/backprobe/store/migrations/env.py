"""Run by alembic for each migration."""

from backprobe.store.migrate import run_migrations

run_migrations()
