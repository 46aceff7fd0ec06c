"""What stands in the tree is done: no stubs, no notes to finish it, no tests that cannot fail."""

from __future__ import annotations

import ast
import io
import re
import tokenize

NOTE = re.compile(r"\b(?:TO[D]O|FIX[M]E|XX[X]|HAC[K])\b")
MAY_BE_EMPTY = {"overload", "abstractmethod"}
CHECKING_CALLS = {"raises", "warns", "fail", "check_schema", "validate"}
Function = ast.FunctionDef | ast.AsyncFunctionDef


def last_name(node: ast.expr) -> str:
    """The last word of a dotted name, of what is called or of what is indexed."""
    if isinstance(node, ast.Attribute):
        return node.attr
    if isinstance(node, ast.Call):
        return last_name(node.func)
    if isinstance(node, ast.Subscript):
        return last_name(node.value)
    return node.id if isinstance(node, ast.Name) else ""


def is_empty(function: Function) -> bool:
    """Whether nothing is done in a function beside its docstring, `pass` and `...`."""
    return all(
        isinstance(node, ast.Pass) or (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant))
        for node in function.body
    )


def stubs(source: str) -> list[str]:
    """The functions of a module that are not done, with their lines."""
    tree = ast.parse(source)
    of_protocols = {
        member
        for owner in ast.walk(tree)
        if isinstance(owner, ast.ClassDef) and any(last_name(base) == "Protocol" for base in owner.bases)
        for member in owner.body
    }
    empty = [
        f"line {node.lineno} {node.name} does nothing"
        for node in ast.walk(tree)
        if isinstance(node, Function) and is_empty(node) and node not in of_protocols
        if not MAY_BE_EMPTY & {last_name(decorator) for decorator in node.decorator_list}
    ]
    owed = [
        f"line {node.lineno} raises NotImplementedError"
        for node in ast.walk(tree)
        if isinstance(node, ast.Raise) and node.exc is not None and last_name(node.exc) == "NotImplementedError"
    ]
    return empty + owed


def notes(source: str) -> list[str]:
    """The comments and strings of a module that say it is not finished."""
    tokens = tokenize.generate_tokens(io.StringIO(source).readline)
    worded = (token for token in tokens if token.type in (tokenize.COMMENT, tokenize.STRING))
    return [f"line {token.start[0]} {token.string[:60]}" for token in worded if NOTE.search(token.string)]


def asserts(node: ast.AST) -> bool:
    """Whether something under a node can fail a test: an assertion on more than a constant, or a checking call."""
    for part in ast.walk(node):
        if isinstance(part, ast.Assert) and not isinstance(part.test, ast.Constant):
            return True
        if isinstance(part, ast.Call) and (last_name(part.func) in CHECKING_CALLS or expects(part)):
            return True
    return False


def expects(call: ast.Call) -> bool:
    """Whether a call waits for something on a page: `expect(…).to_…(…)`, `expect(…).not_to_…(…)`."""
    awaited = call.func
    named = isinstance(awaited, ast.Attribute) and awaited.attr.startswith(("to_", "not_to_"))
    return named and isinstance(awaited.value, ast.Call) and last_name(awaited.value) == "expect"


def idle_tests(source: str) -> list[str]:
    """The tests of a module that check nothing, themselves or through a function of the same module."""
    tree = ast.parse(source)
    functions = [node for node in ast.walk(tree) if isinstance(node, Function)]
    checking = {function.name for function in functions if asserts(function)}
    return [
        f"line {function.lineno} {function.name} checks nothing"
        for function in functions
        if function.name.startswith("test_") and function.name not in checking
        if not checking & {last_name(call.func) for call in ast.walk(function) if isinstance(call, ast.Call)}
    ]


def test_nothing_in_the_product_is_a_stub(sources: dict[str, str]) -> None:
    """No function of the product does nothing, raises NotImplementedError or says that it is not finished."""
    found = [f"{path} {fault}" for path, text in sources.items() for fault in (*stubs(text), *notes(text))]
    assert not found, "\n".join(found)


def test_every_test_can_fail(texts: dict[str, str]) -> None:
    """Each test asserts something."""
    tests = {path: text for path, text in texts.items() if re.search(r"^tests/.*test_\w+\.py$", path)}
    assert len(tests) > 10
    found = [f"{path} {fault}" for path, text in tests.items() for fault in idle_tests(text)]
    assert not found, "\n".join(found)


def test_a_stub_is_seen() -> None:
    """Empty functions and owed ones are reported; protocols and overloads are not."""
    assert stubs("def f():\n    pass") == ["line 1 f does nothing"]
    assert stubs("def f():\n    '''Words.'''\n    ...") == ["line 1 f does nothing"]
    assert stubs("def f():\n    raise NotImplementedError('later')") == ["line 2 raises NotImplementedError"]
    assert stubs("class P(Protocol[T]):\n    def f(self): ...") == []
    assert stubs("@typing.overload\ndef f(): ...") == []
    assert stubs("def f():\n    '''Words.'''\n    return 1") == []


def test_an_unfinished_note_is_seen() -> None:
    """Notes to self are reported in comments and in strings, and only as whole words."""
    word = "TO" + "DO"
    assert notes(f"a = 1  # {word}: more\n") == [f"line 1 # {word}: more"]
    assert len(notes(f'"""Words.\n\n{word} later.\n"""\n')) == 1
    assert notes(f"{word}S = 1\n") == []


def test_an_idle_test_is_seen() -> None:
    """A test without an assertion, or with one on a constant, is reported; one that calls a checking helper is not."""
    assert idle_tests("def test_a():\n    f()") == ["line 1 test_a checks nothing"]
    assert idle_tests("def test_a():\n    assert True") == ["line 1 test_a checks nothing"]
    assert idle_tests("def test_a():\n    with pytest.raises(E):\n        f()") == []
    assert idle_tests("def test_a():\n    expect(page).to_be_visible()") == []
    assert idle_tests("def test_a():\n    expect(page)") == ["line 1 test_a checks nothing"]
    assert idle_tests("def same(a):\n    assert a == 1\ndef test_a():\n    same(f())") == []
