"""README and docs: short, with links that lead somewhere and examples that print what is shown."""

from __future__ import annotations

import doctest
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

README_LINES_MAX = 80
EXAMPLE_BY_LINE = 25
LINK = re.compile(r"(?<!!)\[[^\]]*\]\(([^)\s]+)\)|!\[[^\]]*\]\(([^)\s]+)\)")
CONSOLE = re.compile(r"^```console\n(.*?)^```", re.M | re.S)
ANY_LINES = "…"


def anchors(page: str) -> set[str]:
    """The anchors that a page's headings make."""
    headings = re.findall(r"^#+\s+(.*)$", page, re.M)
    return {re.sub(r"[^\w\- ]", "", heading.lower()).strip().replace(" ", "-") for heading in headings}


def dead_links(path: str, page: str, root: Path) -> list[str]:
    """The links of a page to files or headings that are not there; addresses on the web are not asked."""
    dead: list[str] = []
    for target in ("".join(groups) for groups in LINK.findall(page)):
        if re.match(r"[a-z]+:", target):
            continue
        name, _, anchor = target.partition("#")
        file = (root / path).parent / name if name else root / path
        if not file.exists() or (anchor and anchor not in anchors(file.read_text(encoding="utf-8"))):
            dead.append(f"{path}: {target}")
    return dead


def examples(page: str) -> list[tuple[str, list[str]]]:
    """The commands in a page's console blocks, each with the lines shown as its output."""
    shown: list[tuple[str, list[str]]] = []
    for line in (line for block in CONSOLE.findall(page) for line in block.splitlines()):
        if line.startswith("$ "):
            shown.append((line[2:], []))
        elif shown:
            shown[-1][1].append(line.rstrip())
    return shown


def matches(shown: list[str], printed: str) -> bool:
    """Whether the output is what is shown; a line '…' stands for any lines, a '…' at a line's end for its rest."""
    parts = [re.escape(line) for line in shown]
    pattern = "\n".join(part.replace(ANY_LINES, ".*") if part != ANY_LINES else r"(?:.|\n)*?" for part in parts)
    return re.fullmatch(pattern, "\n".join(line.rstrip() for line in printed.strip("\n").splitlines())) is not None


def pages(texts: dict[str, str]) -> dict[str, str]:
    """The Markdown pages of the tree."""
    return {path: text for path, text in texts.items() if path.endswith(".md")}


@pytest.fixture
def workplace(tmp_path: Path, root: Path) -> Path:
    """A folder with a copy of the demo, for commands that write beside their input."""
    shutil.copytree(root / "demo", tmp_path / "demo", ignore=shutil.ignore_patterns("*journal*", "blobs"))
    return tmp_path


def run(command: str, folder: Path) -> str:
    """What a shell command prints, with backprobe on the PATH."""
    path = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    done = subprocess.run(
        ["bash", "-c", command],
        cwd=folder,
        env={**os.environ, "PATH": path},
        capture_output=True,
        text=True,
        check=False,
    )
    return done.stdout + done.stderr


def test_every_link_leads_somewhere(texts: dict[str, str], root: Path) -> None:
    """Links between pages, to files and to headings hold."""
    dead = [fault for path, page in pages(texts).items() for fault in dead_links(path, page, root)]
    assert not dead, "\n".join(dead)


def test_the_readme_is_short_and_shows_an_example_early(texts: dict[str, str]) -> None:
    """README stays under 80 lines, names both commands, and code with its result begins by line 25."""
    readme = texts["README.md"]
    assert len(readme.splitlines()) < README_LINES_MAX
    assert "./start" in readme
    assert "./check" in readme
    early = "\n".join(readme.splitlines()[:EXAMPLE_BY_LINE])
    assert "```console\n$ " in early or "\n>>> " in early


def test_examples_print_what_is_shown(texts: dict[str, str], workplace: Path) -> None:
    """The console blocks of all pages are run in a copy of the demo's surroundings and compared."""
    wrong: list[str] = []
    for path, page in pages(texts).items():
        for command, shown in examples(page):
            printed = run(command, workplace)
            if not matches(shown, printed):
                wrong.append(f"{path}: $ {command}\n{printed}")
    assert not wrong, "\n".join(wrong)


def test_python_examples_print_what_is_shown(texts: dict[str, str]) -> None:
    """The >>> lines of all pages give the results shown."""
    parser, runner = doctest.DocTestParser(), doctest.DocTestRunner(verbose=False)
    for path, page in pages(texts).items():
        runner.run(parser.get_doctest(page, {}, path, path, 0))
    assert runner.summarize(verbose=False).failed == 0


def test_a_dead_link_is_seen(tmp_path: Path) -> None:
    """Missing files and missing headings are reported; addresses on the web are let be."""
    (tmp_path / "a.md").write_text("# One thing, two\n", encoding="utf-8")
    page = "[x](a.md) [y](a.md#one-thing-two) [z](https://example.org/) [q](b.md) [r](a.md#three) ![s](c.svg)"
    assert dead_links("page.md", page, tmp_path) == ["page.md: b.md", "page.md: a.md#three", "page.md: c.svg"]


def test_a_wrong_example_is_seen(tmp_path: Path) -> None:
    """Output that differs is not taken for what is shown; '…' stands for lines or the rest of a line."""
    [(command, shown)] = examples("```console\n$ echo one; echo two\none\ntwo\n```\n```sh\n$ false\n```")
    assert matches(shown, run(command, tmp_path))
    assert not matches(["one"], "one\ntwo\n")
    assert not matches(["one.two"], "one two\n")
    assert matches(["one", "…", "four"], "one\ntwo\nthree\nfour\n")
    assert matches(["time: …"], "time: 12 s\n")
