"""`backprobe roster preview`: what is printed, and refusals in plain words."""

from __future__ import annotations

import json
from pathlib import Path

import openpyxl
import pytest
from jsonschema import Draft202012Validator

from backprobe.cli.main import main

ROOT = Path(__file__).resolve().parents[2]
GOOD = "plate,vin,serial\nLY 07,1M8GDM9AXKP042788,0417\nLY 08,,0418\n"
BAD = "plate,day,colour\nLY 07,soon,red\nLY 08,2026-03-31,red\n"


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A folder with a good list and a bad one, to work in."""
    monkeypatch.chdir(tmp_path)
    for name, text in (("good.csv", GOOD), ("bad.csv", BAD)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    return tmp_path


def answered(capsys, *words):
    """Exit code and answer with --json: one line, valid by the schema of its kind."""
    code = main(["roster", "preview", *words, "--json"])
    out, err = capsys.readouterr()
    assert (out.count("\n"), err) == (1, "")
    answer = json.loads(out)
    schema = ROOT / "schemas" / f"{'roster' if answer['ok'] else 'error'}.schema.json"
    Draft202012Validator(json.loads(schema.read_text(encoding="utf-8"))).validate(answer)
    return code, answer


def test_a_good_list(folder, capsys):
    """Two new vehicles, nothing to be said of them."""
    code, answer = answered(capsys, "good.csv")
    assert (code, len(answer["new"]), answer["bad"], answer["doubts"]) == (0, 2, [], [])


def test_a_bad_cell(folder, capsys):
    """Its row, heading and text; the other row is shown as what would be new."""
    code, answer = answered(capsys, "bad.csv")
    assert (code, answer["bad_rows"], len(answer["new"])) == (1, 1, 1)
    assert (answer["bad"][0]["row"], answer["bad"][0]["column"], answer["bad"][0]["text"]) == (2, "day", "soon")


def test_in_lines(folder, capsys):
    """Counts, the bad cell, columns passed over, and that nothing would be taken."""
    assert main(["roster", "preview", "bad.csv"]) == 1
    assert capsys.readouterr().out.splitlines() == [
        "bad.csv, vehicles: 1 new, 0 changed, 0 unchanged, 1 that cannot be taken",
        "cannot be taken:",
        '  row 2, day: "soon" (a day, 2026-03-31 or 31.03.2026; with slashes the month may be meant first)',
        "columns passed over: colour",
        "nothing would be taken until every row can be",
    ]


def test_against_an_earlier_list(folder, capsys):
    """LY 07 gets another unit, LY 08 stays, LY 09 is new."""
    (folder / "later.csv").write_text("plate,serial\nLY 07,0500\nLY 08,0418\nLY 09,\n", encoding="utf-8")
    code, answer = answered(capsys, "later.csv", "--known", "good.csv")
    assert (code, answer["unchanged"], [each["name"] for each in answer["new"]]) == (0, 1, ["LY 09"])
    assert answer["changed"] == [
        {"row": 2, "name": "LY 07", "changes": [{"what": "unit_serial", "before": "0417", "after": "0500"}]}
    ]
    main(["roster", "preview", "later.csv", "--known", "good.csv"])
    assert "  row 2, LY 07: unit_serial 0417 → 0500" in capsys.readouterr().out


def test_a_workbook_and_a_column_map(folder, capsys):
    """Under the office's own names; the note says which sheet was read."""
    book = openpyxl.Workbook()
    for row in (["Kennz.", "FIN"], ["LY 07", "1M8GDM9A7KP042788"]):
        book.active.append(row)
    book.save("trucks.xlsx")
    code, answer = answered(capsys, "trucks.xlsx", "--columns", "plate=Kennz.,vin=FIN")
    assert (code, answer["columns"]) == (1, {"plate": "Kennz.", "vin": "FIN"})
    assert answer["doubts"][0]["column"] == "FIN"
    assert answer["notes"] == ["read from the sheet 'Sheet'"]


def test_a_long_list_of_faults_is_cut(folder, capsys):
    """Forty are shown, the rest counted; JSON holds them all."""
    (folder / "long.csv").write_text("plate,day\n" + "".join(f"T{n},soon\n" for n in range(50)), encoding="utf-8")
    main(["roster", "preview", "long.csv"])
    assert "  … and 10 more" in capsys.readouterr().out
    assert len(answered(capsys, "long.csv")[1]["bad"]) == 50


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["none.csv"], "none of this name"),
        (["good.csv", "--columns", "plate"], "name=theirs"),
        (["good.csv", "--columns", "plate=Kennz."], "as the column map says"),
        (["good.csv", "--known", "none.csv"], "none of this name"),
        (["good.csv", "--nonsense"], "unrecognized"),
    ],
)
def test_refusals(folder, capsys, words, said):
    """In plain words, with exit code 2."""
    code, answer = answered(capsys, *words)
    assert code == 2
    assert said in answer["error"]
