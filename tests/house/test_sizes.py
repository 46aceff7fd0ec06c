"""No module is too long to read in one sitting, no function too long for one screen or too wide for one call."""

from __future__ import annotations

import ast

MODULE_LINES_MAX = 400
FUNCTION_LINES_MAX = 60
PARAMETERS_MAX = 6
POSITIONAL_MAX = 2
GIVEN = (["scope", "receive", "send"],)  # the signature is not ours: an ASGI application's

Function = ast.FunctionDef | ast.AsyncFunctionDef


def parameters(function: Function) -> tuple[int, int]:
    """How many parameters a function has, and how many of them may be given by position; self and cls not counted."""
    args = function.args
    positional = [arg.arg for arg in (*args.posonlyargs, *args.args)]
    bound = positional[:1] in (["self"], ["cls"])
    by_position = 0 if positional[bound:] in GIVEN else len(positional) - bound
    starred = sum(1 for arg in (args.vararg, args.kwarg) if arg is not None)
    return by_position + len(args.kwonlyargs) + starred, by_position


def function_faults(function: Function) -> list[str]:
    """What is too long or too wide about one function."""
    lines = (function.end_lineno or function.lineno) - function.lineno + 1
    every, by_position = parameters(function)
    rules = (
        (lines > FUNCTION_LINES_MAX, f"{lines} lines"),
        (every > PARAMETERS_MAX, f"{every} parameters"),
        (by_position > POSITIONAL_MAX, f"{by_position} parameters by position"),
    )
    return [f"line {function.lineno} {function.name}: {said}" for broken, said in rules if broken]


def faults(source: str) -> list[str]:
    """What is too long or too wide in a module."""
    lines = len(source.splitlines())
    too_long = [f"{lines} lines"] if lines > MODULE_LINES_MAX else []
    functions = [node for node in ast.walk(ast.parse(source)) if isinstance(node, Function)]
    return too_long + [fault for function in functions for fault in function_faults(function)]


def test_modules_and_functions_stay_small(texts: dict[str, str]) -> None:
    """Modules of at most 400 lines; functions of at most 60, at most 6 parameters, by position at most 2."""
    ours = {p: t for p, t in texts.items() if p.endswith(".py") and p.split("/")[0] in {"src", "builders", "web"}}
    assert len(ours) > 10
    found = [f"{path} {fault}" for path, text in ours.items() for fault in faults(text)]
    assert not found, "\n".join(found)


def test_a_long_module_is_seen() -> None:
    """401 lines are one too many."""
    assert faults("a = 1\n" * 400) == []
    assert faults("a = 1\n" * 401) == ["401 lines"]


def test_a_long_function_is_seen() -> None:
    """A function of 1 + 59 lines passes, one of 1 + 60 does not, also as a method."""
    assert faults("def f():\n" + "    a = 1\n" * 59) == []
    assert faults("def f():\n" + "    a = 1\n" * 60) == ["line 1 f: 61 lines"]
    assert faults("class C:\n    async def f(self):\n" + "        a = 1\n" * 60) == ["line 2 f: 61 lines"]


def test_a_wide_function_is_seen() -> None:
    """Two by position and four by keyword pass; a third by position or a seventh does not."""
    assert faults("class C:\n    def f(self, a, b, *, c, d, e, f): return a") == []
    assert faults("def f(a, b, c): return a") == ["line 1 f: 3 parameters by position"]
    assert faults("def f(a, b, /, c): return a") == ["line 1 f: 3 parameters by position"]
    assert faults("def f(a, b, *, c, d, e, f, g): return a") == ["line 1 f: 7 parameters"]
    assert faults("def f(a, *b, c, d, e, f, **g): return a") == ["line 1 f: 7 parameters"]
