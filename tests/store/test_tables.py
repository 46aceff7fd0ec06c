"""The tables keep what they promise by their keys alone."""

from __future__ import annotations

import pytest

from backprobe.store.tables import metadata


@pytest.mark.parametrize(
    ("table", "key"),
    [
        ("entry", ("organisation", "id")),
        ("unit_claim", ("organisation", "serial")),
        ("blob", ("organisation", "sha256")),
        ("report", ("organisation", "digest")),
    ],
)
def test_what_must_be_single_is_a_primary_key(table: str, key: tuple[str, ...]) -> None:
    """An entry's id, a unit's vehicle, a file, a report: each once in an organisation."""
    assert tuple(column.name for column in metadata.tables[table].primary_key.columns) == key


def test_no_table_has_a_place_for_a_secret() -> None:
    """Tokens, codes and passwords are kept as hashes: no column is named after the plain ones."""
    columns = {column.name for table in metadata.tables.values() for column in table.columns}
    assert {"token_sha256", "code_sha256", "password_hash"} <= columns
    assert not columns & {"token", "code_plain", "password"}
