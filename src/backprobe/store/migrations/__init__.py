"""What alembic runs to bring a database to the tables of this version."""
