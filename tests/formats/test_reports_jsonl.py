"""JSON lines become the table that everything else reads."""

from __future__ import annotations

import pytest

from backprobe.formats.reports_csv import read_reports
from backprobe.formats.reports_jsonl import table_of_json_lines


def test_objects_of_any_keys_become_one_table() -> None:
    """The keys of all lines are the columns; what a line lacks is empty; a comma in a text is quoted."""
    lines = ['{"t": "2026-03-31T08:05:00Z", "supply_V": 12.61}', "", '{"t": "2026-03-31T08:06:00Z", "note": "a, b"}']
    table, skipped, count = table_of_json_lines(lines, file="push")
    assert table == ["t,supply_V,note", "2026-03-31T08:05:00Z,12.61,", '2026-03-31T08:06:00Z,,"a, b"']
    assert (skipped, count) == ((), 0)
    read = read_reports(table, file="push")
    assert [report.supply_V for report in read.reports] == [12.61, None]


def test_values_are_written_as_they_are_meant() -> None:
    """True and false as words, null as nothing, lists left out, line breaks as spaces."""
    table, _, _ = table_of_json_lines(['{"a": true, "b": null, "c": [1], "d": "x\\ny", "e": 1e400}'], file="push")
    assert table == ["a,b,d,e", "true,,x y,inf"]


@pytest.mark.parametrize("line", ["{", "[1]", "7", '"x"', "[" * 100_000])
def test_what_is_no_object_is_named_and_counted(line: str) -> None:
    """With its line."""
    table, skipped, count = table_of_json_lines(['{"t": "x"}', line], file="push")
    assert (len(table), count) == (2, 1)
    assert (skipped[0].place.line, skipped[0].place.file) == (2, "push")


def test_of_many_faults_the_first_twenty_are_shown() -> None:
    """And all are counted."""
    _, skipped, count = table_of_json_lines(["x"] * 30, file="push")
    assert (len(skipped), count) == (20, 30)
