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


CONSTANT = "Red,off,12.5,\nRed,accessory,12.45,\nRed,on,12.3,\nRed,running,14.1,\nRed,after,12.5,\n"
IGNITION = "Violet,off,0.01,\nViolet,accessory,0.02,\nViolet,on,12.25,\nViolet,running,14.05,\n"
HEAD = "wire,key,volts,capture\n"


def test_each_wire_has_one_heading_that_says_what_to_do(tmp_path, capsys):
    """Fit, not to be tapped, never to be tapped, not settled: in words, without a percentage."""
    text = HEAD.replace("capture", "capture,circuit") + CONSTANT + "Red,crank,11.2,min\nBlue,on,12.3,,ABS\nGrey,,,\n"
    lines = printed(text, tmp_path, capsys)
    assert [line for line in lines if line and line[0] != " "][:3] == [
        "Red: constant, holds, fit for the supply by its volts",
        "Blue: not settled yet, never tap",
        "Grey: not settled yet, do not tap",
    ]


def test_a_proven_pair_asks_for_the_circuits_by_name(tmp_path, capsys):
    """What volts cannot show is what is left to do."""
    cranks = "Red,crank,11.2,min\nViolet,crank,11.6,min\n"
    lines = printed(HEAD + CONSTANT + IGNITION + cranks, tmp_path, capsys)
    assert lines[-3:-1] == ["supply: Red", "ignition: Violet"]
    assert lines[-1].endswith("one pair is proven on its volts; before tapping, name the circuit of Red and Violet")


def test_a_crank_is_asked_for_with_its_care(tmp_path, capsys):
    """Out of gear, parking brake on, nobody near the engine."""
    lines = printed(HEAD + CONSTANT + IGNITION + "Violet,crank,11.6,min\n", tmp_path, capsys)
    assert lines[-1].startswith("next: measure Red while the engine cranks, with a MIN hold (out of gear")


def test_a_meter_without_a_hold_is_to_blame(tmp_path, capsys):
    """Both wires stand, but no display can prove them in the crank."""
    table = tmp_path / "readings.csv"
    table.write_text(HEAD + CONSTANT + IGNITION + "Red,crank,11.2,\nViolet,crank,11.6,\n")
    assert main(["probe", str(table), "--system", "12", "--captures", "display"]) == 0
    assert "a meter with a MIN hold, or a fast recorder" in capsys.readouterr().out.splitlines()[-1]


def test_a_weak_battery_is_to_blame(tmp_path, capsys):
    """Three live wires fell below 8.5 V in the crank: no other wire will do better."""
    wires = "".join(f"{name},on,12.3,\n{name},off,12.5,\n{name},crank,{volts},min\n" for name, volts in WEAK.items())
    lines = printed(HEAD + wires, tmp_path, capsys)
    assert lines[-1] == "next: charge and test the battery: in the crank no wire stayed above 8.10 V"


WEAK = {"Red": 8.1, "Blue": 7.9, "Green": 7.7}


def test_one_line_passed_over_is_one_line(tmp_path, capsys):
    """Not '1 lines were'."""
    lines = printed(HEAD + "Red,on,12.3,\nRed,off,126,\n", tmp_path, capsys)
    assert "1 line was passed over:" in lines
