"""What an installer reads: the pair, the next reading, and why."""

from __future__ import annotations

from backprobe.cli.main import main


def printed(text: str, tmp_path, capsys) -> list[str]:
    """What `backprobe probe` prints for a 12 V table."""
    table = tmp_path / "readings.csv"
    table.write_text(text)
    assert main(["probe", str(table), "--system", "12"]) == 0
    return capsys.readouterr().out.splitlines()


def test_a_header_alone_asks_for_any_wire(tmp_path, capsys):
    """Nothing is known, so any wire will do."""
    lines = printed("wire,key,volts\n", tmp_path, capsys)
    assert "supply: none yet" in lines
    (asked,) = [line for line in lines if line.startswith("next: ")]
    assert "a wire not yet" in asked


def test_a_constant_is_only_proven_for_as_long_as_it_was_watched(tmp_path, capsys):
    """The reason says for how many minutes, and that the circuit is unknown."""
    lines = printed("wire,key,volts,capture,after_min\nRed,after,12.6,,25\nRed,on,12.4,,\n", tmp_path, capsys)
    assert any("proven for 25 minutes" in line for line in lines)
    assert any("circuit not identified" in line for line in lines)


def test_what_was_passed_over_is_listed_with_its_place(tmp_path, capsys):
    """A line that could not be taken is shown with file and line."""
    lines = printed("wire,key,volts\nRed,on,12.4\nRed,off,126\n", tmp_path, capsys)
    assert any("readings.csv, line 3" in line for line in lines)
