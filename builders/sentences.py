"""The sentences that the engine can say: every template of one in its sources, and those a catalogue lacks.

A template is a text or an f-string with its holes emptied: ``f"{wire}: {reason}"`` is ``{}: {}``. Holes that touch are
one. What stands at the edges (spaces, commas, colons, semicolons) is left off, as the catalogues do.

    python builders/sentences.py            # what the Spanish catalogue lacks, ready to be filled in
"""

from __future__ import annotations

import ast
import re
import sys
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
SOURCES = ROOT / "src" / "backprobe"
EDGES = " ;,:\n"
HOLE = re.compile(r"\{[^{}]*\}")
WORD = re.compile(r"[a-z]{2,}|\b[aA]\b")
NO_SENTENCE = re.compile(
    r"\\b|\(\?[P:]|\w\*(?: |$)|<\w+ |[|%][A-Za-z]|\| |_\{\}|\{\}_|^\w+\(0|^\d[\d. ]*$|dict\[|\n\w+ +share"
)
NAMES = {"name", "wire", "file", "lead", "serial", "typed", "place", "unit_id", "device", "unit", "twin", "own", "id"}


def templates(source: str) -> Iterator[tuple[int, str]]:
    """Each template of a sentence in a module's source, with its line; not docstrings, ids, patterns and numbers."""
    tree = ast.parse(source)
    skipped = {id(each) for node in ast.walk(tree) for each in _docstrings(node)}
    for node in _said(tree, skipped):
        text = shape(node)
        if is_sentence(text):
            yield node.lineno, text


def plain(template: str) -> str:
    """A template with nothing in its holes and nothing at its edges; holes that touch are one.

    >>> plain("; {more:g} less {word}{s}: ")
    '{} less {}'
    """
    return re.sub(r"(?:\{\}){2,}", "{}", HOLE.sub("{}", template)).strip(EDGES)


def is_sentence(template: str) -> bool:
    """Whether a template holds words and not one of them only: an id, a pattern or a list of numbers is none.

    >>> [is_sentence(each) for each in ("not measured yet", "join_{lead}_wire", "{volts:.2f} V", "{a} more")]
    [True, False, False, True]
    """
    text = plain(template)
    words = HOLE.sub(" ", text)
    return " " in text and bool(WORD.search(words)) and not NO_SENTENCE.search(text) and "'wght'" not in text


def shape(node: ast.Constant | ast.JoinedStr) -> str:
    """The template of a text or an f-string, with what its holes are filled with."""
    if isinstance(node, ast.Constant):
        return str(node.value)
    return "".join(_part(value) for value in node.values)


def _part(value: ast.expr) -> str:
    if isinstance(value, ast.FormattedValue):
        return "{" + _hole(value) + "}"
    return str(value.value) if isinstance(value, ast.Constant) else ""


def _hole(value: ast.FormattedValue) -> str:
    """A name for a hole: `#` before a figure, `=` before what somebody called a thing."""
    filled = ast.unparse(value.value)
    names = re.findall(r"[A-Za-z_]\w*", filled)
    last = names[-1] if names else "it"
    figure = last.endswith(("_V", "_A", "_s", "_mV", "_count", "_C")) and filled.startswith(
        ("said(", filled.rstrip(")"))
    )
    if value.format_spec is not None or (figure and "(" not in filled.removeprefix("said(")):
        return f"#{last}"
    if last in NAMES and not filled.endswith(")"):
        return f"={last}"
    return names[0] if filled.endswith(")") else last


def _docstrings(node: ast.AST) -> Iterator[ast.AST]:
    body = getattr(node, "body", None)
    for each in body if isinstance(body, list) else []:
        if isinstance(each, ast.Expr) and isinstance(each.value, ast.Constant):
            yield each.value


def _said(node: ast.AST, skipped: set[int]) -> Iterator[ast.Constant | ast.JoinedStr]:
    """The texts and f-strings below a node, those in the holes of others too."""
    if isinstance(node, ast.JoinedStr):
        yield node
        for value in node.values:
            if isinstance(value, ast.FormattedValue):
                yield from _said(value.value, skipped)
    elif isinstance(node, ast.Constant):
        if isinstance(node.value, str) and id(node) not in skipped:
            yield node
    else:
        for child in ast.iter_child_nodes(node):
            yield from _said(child, skipped)


def main() -> None:
    """Print what the Spanish catalogue lacks, in the lines of a catalogue, module by module."""
    from backprobe.tongues.spanish.book import pairs

    known = {plain(said) for said, _ in pairs()}
    for path in sorted(SOURCES.rglob("*.py")):
        lacking = {text.strip(EDGES) for _, text in templates(path.read_text("utf-8")) if plain(text) not in known}
        if lacking:
            print(f"# {path.relative_to(SOURCES).as_posix()}")
            print("\n".join(f"{text}\n= " for text in sorted(lacking)))


if __name__ == "__main__":
    sys.path.insert(0, str(ROOT / "src"))
    main()
