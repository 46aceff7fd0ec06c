"""./start on machines that lack things, run with stand-ins for Python and uv, so that nothing is downloaded."""

from __future__ import annotations

import os
import re
import shutil
import socket
import subprocess
from pathlib import Path

import pytest

TOOLS = ("bash", "cat", "cp", "dirname", "grep", "mkdir", "mv", "rm", "sed", "sha256sum", "sleep", "sort")
TRUCK = re.compile(r"truck-\d\d")
INES, TOMAS = "Ines Okafor", "Tomas Brandl"

# A Python whose `-m venv` makes a .venv of stand-ins, each of which notes its call in calls.txt.
PYTHON = """#!/bin/bash
echo "python3 $*" >>"$CALLS"
case "$*" in
    --version) echo "Python 3.11.2" ;;
    "-m venv "*)
        mkdir -p "$3/bin"
        cp "$STANDINS/venv-python" "$3/bin/python"
        cp "$STANDINS/backprobe" "$3/bin/backprobe"
        ;;
esac
"""
VENV_PYTHON = """#!/bin/bash
echo "python $*" >>"$CALLS"
if [ "$2" = pip ] && [ -n "${PIP_FAILS:-}" ]; then exit 1; fi
"""
BACKPROBE = r"""#!/bin/bash
echo "backprobe $*" >>"$CALLS"
echo "supply: thin"
case "$1" in
    judge) exit "${JUDGE_EXIT:-1}" ;;
    hand-in)
        mkdir -p "$(sed 's/.* --data \(.*\) --name .*/\1/' <<<"$*")"
        case "$*" in *"${HAND_IN_FAILS:-none}"*) exit 2 ;; esac
        ;;
esac
"""
WITHOUT_ENSUREPIP = """#!/bin/bash
case "$*" in
    "-m venv "*)
        mkdir -p "$3/bin"
        echo "The virtual environment was not created successfully because ensurepip is not available."
        exit 1
        ;;
    *"import ensurepip"*) exit 1 ;;
esac
"""
TOO_OLD = """#!/bin/bash
case "$*" in
    --version) echo "Python 3.9.2" ;;
    *) exit 1 ;;
esac
"""


class Machine:
    """A bare machine: a PATH with the shell's own tools only, a copy of ./start, and the stand-ins given."""

    def __init__(self, folder: Path, start: Path) -> None:
        self.bin, self.repo, self.calls = folder / "bin", folder / "a repo", folder / "calls.txt"
        self.standins = folder / "standins"
        for made in (self.bin, self.repo, self.standins):
            made.mkdir()
        for tool in TOOLS:
            (self.bin / tool).symlink_to(str(shutil.which(tool)))
        shutil.copy(start, self.repo / "start")
        (self.repo / "pyproject.toml").write_text("[project]\n", encoding="utf-8")
        self.put(self.standins / "venv-python", VENV_PYTHON)
        self.put(self.standins / "backprobe", BACKPROBE)

    @staticmethod
    def put(path: Path, script: str) -> None:
        """Writes an executable script."""
        path.write_text(script, encoding="utf-8")
        path.chmod(0o755)

    def start(self, *arguments: str, **extra: str) -> subprocess.CompletedProcess[str]:
        """Runs ./start from another folder and empties the list of calls before."""
        self.calls.write_text("", encoding="utf-8")
        env = {"PATH": str(self.bin), "CALLS": str(self.calls), "STANDINS": str(self.standins), **extra}
        return subprocess.run(
            [self.repo / "start", *arguments], cwd="/", env=env, capture_output=True, text=True, check=False
        )

    def called(self) -> list[str]:
        """The calls that made or changed something: venv, pip, uv, backprobe."""
        lines = self.calls.read_text(encoding="utf-8").splitlines()
        return [line for line in lines if line.startswith(("backprobe", "uv")) or " -m " in line]


@pytest.fixture
def bare(tmp_path: Path, root: Path) -> Machine:
    """A machine without any Python."""
    return Machine(tmp_path, root / "start")


@pytest.fixture
def machine(bare: Machine) -> Machine:
    """A machine with Python and its venv module."""
    bare.put(bare.bin / "python3", PYTHON)
    return bare


def test_without_python_it_says_what_to_install(bare: Machine) -> None:
    """No python3: exit 1 and the line to type."""
    done = bare.start()
    assert done.returncode == 1
    assert "apt-get install python3" in done.stderr
    assert not (bare.repo / ".venv").exists()


def test_with_an_old_python_it_says_which_it_found(bare: Machine) -> None:
    """A Python before 3.11: exit 1, what is needed and what is here."""
    bare.put(bare.bin / "python3", TOO_OLD)
    done = bare.start()
    assert done.returncode == 1
    assert "3.11 or newer" in done.stderr
    assert "Python 3.9.2" in done.stderr


def test_without_python3_venv_it_says_the_one_line(bare: Machine) -> None:
    """Debian's python3 without python3-venv: exit 1, the apt line on a line of its own, no half-made .venv."""
    bare.put(bare.bin / "python3", WITHOUT_ENSUREPIP)
    done = bare.start()
    assert done.returncode == 1
    assert "  apt-get install python3-venv" in done.stderr.splitlines()
    assert not (bare.repo / ".venv").exists()


def test_the_demo_is_judged_and_the_record_named(machine: Machine) -> None:
    """Findings that are not all good (judge's exit 1) are no failure of ./start; the last line names the PDF."""
    done = machine.start("--judge")
    assert done.returncode == 0, done.stderr
    assert "supply: thin" in done.stdout
    record = Path(done.stdout.splitlines()[-1].removeprefix("The record: "))
    assert record == machine.repo / "out" / "truck-07.pdf"
    assert machine.called()[-1].endswith(f"--record {record}")


def test_a_refused_demo_is_a_failure(machine: Machine) -> None:
    """Exit 2 of judge is passed on."""
    assert machine.start("--judge", JUDGE_EXIT="2").returncode == 2


@pytest.fixture
def yard(machine: Machine) -> Machine:
    """A machine with a fleet of three: one that ends as proven, one that somebody else gave up, one not begun."""
    fleet = {"truck-07": (INES, "proven"), "truck-23": (TOMAS, "abandoned"), "truck-30": (INES, None)}
    for name, (person, end) in fleet.items():
        folder = machine.repo / "demo" / "linden-yard" / name
        folder.mkdir(parents=True)
        said = f'[hand_over]\nend = "{end}"\n' if end else ""
        (folder / "job.toml").write_text(f'[job]\ntechnician = "{person}"\n{said}', encoding="utf-8")
        (folder / "journal.jsonl").write_text("of an earlier day\n", encoding="utf-8")
    (machine.repo / "demo" / "linden-yard" / "corners.txt").write_text("corners\n", encoding="utf-8")
    return machine


@pytest.fixture
def port() -> int:
    """A port on which nobody listens."""
    with socket.socket() as held:
        held.bind(("127.0.0.1", 0))
        return int(held.getsockname()[1])


def test_the_app_is_served_on_the_fleet(yard: Machine, port: int) -> None:
    """Every folder is handed in to its technician, the abandoned job signed before; then the app is served."""
    done = yard.start("--port", str(port))
    assert done.returncode == 0, done.stderr
    calls = [call for call in yard.called() if call.startswith("backprobe")]
    assert [call.split()[1] for call in calls] == ["keys", "sign", "hand-in", "hand-in", "serve"]
    _, sign, of_ines, of_tomas, _ = calls
    assert TRUCK.findall(sign) == ["truck-23"]
    assert TRUCK.findall(of_ines) == ["truck-07", "truck-30"]
    assert of_ines.endswith(f"--to {INES}")
    assert TRUCK.findall(of_tomas) == ["truck-23"]
    assert of_tomas.endswith(f"--to {TOMAS}")
    data = yard.repo / "out" / "linden-yard"
    assert yard.called()[-1] == f"backprobe serve --data {data} --listen 127.0.0.1:{port}"
    assert (data / "corners.txt").is_file()
    assert [path.name for path in data.parent.iterdir()] == ["linden-yard"]


def test_it_says_where_desk_and_phone_are_and_how_to_end(yard: Machine, port: int, texts: dict[str, str]) -> None:
    """The desk's address, the way to a phone in the desk's own words, Ctrl-C and where things are kept."""
    said = yard.start("--port", str(port)).stdout
    assert f"Desk:   http://127.0.0.1:{port}/desk.html" in said
    assert "enrol a phone for Ines Okafor" in said
    for words in ("People and phones", "open on this machine"):
        assert f'"{words}"' in said
        assert f'"{words}"' in texts["web/desk/words/en.ts"]
    assert "docs/deploy.md" in said
    assert "Ctrl-C ends it" in said
    assert "out/linden-yard" in said
    assert max(map(len, said.splitlines())) <= 120


def test_what_was_entered_is_kept(yard: Machine, port: int) -> None:
    """The second start hands nothing in and touches no file of the data."""
    yard.start("--port", str(port))
    entered = yard.repo / "out" / "linden-yard" / "entered"
    entered.write_text("a reading\n", encoding="utf-8")
    yard.start("--port", str(port))
    assert [call.split()[:2] for call in yard.called()] == [["backprobe", "serve"]]
    assert entered.is_file()


def test_an_interrupted_hand_in_leaves_no_half_fleet(yard: Machine, port: int) -> None:
    """The second person's folder is refused: exit 2, nothing is served, and the next start hands in all three."""
    done = yard.start("--port", str(port), HAND_IN_FAILS="truck-23")
    assert done.returncode == 2
    assert not [call for call in yard.called() if call.startswith("backprobe serve")]
    assert not (yard.repo / "out" / "linden-yard").exists()
    assert yard.start("--port", str(port)).returncode == 0
    handed_in = [call for call in yard.called() if call.startswith("backprobe hand-in")]
    assert sorted(name for call in handed_in for name in TRUCK.findall(call)) == ["truck-07", "truck-23", "truck-30"]
    assert [path.name for path in (yard.repo / "out").iterdir()] == ["linden-yard"]


def test_the_fleet_itself_is_left_alone(yard: Machine, port: int) -> None:
    """Journals in the demo's folders are those of the terminal: they are neither changed nor handed in."""
    yard.start("--port", str(port))
    journals = list((yard.repo / "demo").rglob("journal.jsonl"))
    assert {path.read_text(encoding="utf-8") for path in journals} == {"of an earlier day\n"}
    assert not [call for call in yard.called() if f"{yard.repo}/demo/" in call]


def test_a_taken_port_is_named_with_the_next(yard: Machine, port: int) -> None:
    """Somebody listens there: exit 1 and the option to choose another, before anything is made."""
    with socket.socket() as other:
        other.bind(("127.0.0.1", port))
        other.listen()
        done = yard.start("--port", str(port))
    assert done.returncode == 1
    assert f"Port {port} of this machine is taken" in done.stderr
    assert f"./start --port {port + 1 if port < 65535 else 8750}" in done.stderr
    assert yard.called() == []


@pytest.mark.parametrize("given", [("--port",), ("--port", "0"), ("--port", "65536"), ("--port", "eight")])
def test_a_port_that_is_none_is_refused(yard: Machine, given: tuple[str, ...]) -> None:
    """Exit 1 and what is expected; nothing was made."""
    done = yard.start(*given)
    assert done.returncode == 1
    assert "a number from 1 to 65535 is expected" in done.stderr
    assert yard.called() == []


def test_a_servers_settings_are_no_business_of_the_demo(yard: Machine, port: int) -> None:
    """A database named in the environment stays untouched: the commands do not see it."""
    yard.put(yard.standins / "backprobe", '#!/bin/bash\n[ -z "${BACKPROBE_STORE:-}" ] || exit 9\n' + BACKPROBE)
    assert yard.start("--port", str(port), BACKPROBE_STORE="postgresql://elsewhere/fleet").returncode == 0


def test_prepare_only_sets_up(machine: Machine) -> None:
    """--prepare makes .venv, installs without the test extras, and judges nothing."""
    assert machine.start("--prepare").returncode == 0
    venv, install = machine.called()
    assert venv.startswith("python3 -m venv ")
    assert install.endswith(f"--editable {machine.repo}")


def test_the_second_time_nothing_is_made_again(machine: Machine) -> None:
    """Twice in a row: the second run only judges."""
    machine.start("--judge")
    machine.start("--judge")
    assert [call.split()[0] for call in machine.called()] == ["backprobe"]


def test_a_changed_pyproject_is_installed_again(machine: Machine) -> None:
    """When pyproject.toml changes, the package is installed again into the same .venv."""
    machine.start("--prepare")
    (machine.repo / "pyproject.toml").write_text("[project]\nname = 'other'\n", encoding="utf-8")
    machine.start("--prepare")
    assert [call.split()[:3] for call in machine.called()] == [["python", "-m", "pip"]]


def test_test_extras_are_added_and_kept(machine: Machine) -> None:
    """--test installs the extras on top; a later plain start leaves them alone."""
    machine.start("--prepare")
    machine.start("--prepare", "--test")
    assert machine.called()[0].endswith("[test]")
    machine.start("--prepare")
    assert machine.called() == []


def test_an_interrupted_install_is_made_anew(machine: Machine) -> None:
    """An installation that broke off is not trusted: the next run makes .venv again."""
    assert machine.start("--prepare", PIP_FAILS="yes").returncode != 0
    assert machine.start("--prepare").returncode == 0
    assert [call.split()[2] for call in machine.called()] == ["venv", "pip"]


def test_a_half_made_venv_is_made_anew(machine: Machine) -> None:
    """A .venv whose Python is gone is made again, though it was installed once."""
    machine.start("--prepare")
    (machine.repo / ".venv" / "bin" / "python").unlink()
    machine.start("--prepare")
    assert [call.split()[2] for call in machine.called()] == ["venv", "pip"]


def test_a_moved_folder_gets_a_venv_of_its_own(machine: Machine) -> None:
    """Scripts in .venv name their folder, so a moved one is made again."""
    machine.start("--prepare")
    machine.repo = machine.repo.rename(machine.repo.with_name("moved"))
    machine.start("--prepare")
    assert [call.split()[2] for call in machine.called()] == ["venv", "pip"]


def test_uv_is_used_where_it_is(machine: Machine) -> None:
    """With uv on the PATH, uv makes .venv and installs."""
    machine.put(
        machine.bin / "uv",
        '#!/bin/bash\necho "uv $1" >>"$CALLS"\n[ "$1" = venv ] && exec python3 -m venv "${@: -1}"\nexit 0\n',
    )
    machine.start("--prepare")
    assert [call for call in machine.called() if call.startswith("uv")] == ["uv venv", "uv pip"]
    assert not [call for call in machine.called() if "pip install" in call]


def test_an_unknown_option_is_refused(machine: Machine) -> None:
    """A mistyped option does nothing but say so."""
    done = machine.start("--prepair")
    assert done.returncode == 1
    assert "unknown option: --prepair" in done.stderr
    assert machine.called() == []


def test_the_demo_job_is_there(root: Path) -> None:
    """The job that ./start judges is in the tree."""
    said = dict(
        line.split("#")[0].strip().split("=", 1)
        for line in (root / "start").read_text(encoding="utf-8").splitlines()
        if line.startswith(("demo=", "judged="))
    )
    assert (root / said["demo"] / said["judged"] / "job.toml").is_file()


@pytest.mark.parametrize("script", ["start", "check", ".ci/run"])
def test_the_commands_are_executable_bash(script: str, root: Path) -> None:
    """Each can be run as it is, stops at the first error and parses."""
    text = (root / script).read_text(encoding="utf-8")
    assert os.access(root / script, os.X_OK)
    assert text.startswith("#!/usr/bin/env bash\n")
    assert "\nset -euo pipefail\n" in text
    assert subprocess.run(["bash", "-n", root / script], check=False).returncode == 0
