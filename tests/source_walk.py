"""What the program's source says, read as a syntax tree: calls, string constants, what is marked for translation."""

import ast
from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path

import kitlog

PACKAGE = Path(kitlog.__file__).parent
ROOT = PACKAGE.parent


def modules(*parts: str) -> list[Path]:
    """The modules under some parts of the package (all of it, if none is named)."""
    folders = [PACKAGE / part for part in parts] or [PACKAGE]
    return sorted(path for folder in folders for path in folder.rglob("*.py"))


@cache
def tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def calls(paths: Iterable[Path], *names: str) -> Iterator[ast.Call]:
    """Calls of functions or classes by their bare names."""
    for path in paths:
        for node in ast.walk(tree(path)):
            if isinstance(node, ast.Call) and called(node) in names:
                yield node


def called(call: ast.Call) -> str:
    target = call.func
    return target.id if isinstance(target, ast.Name) else target.attr if isinstance(target, ast.Attribute) else ""


def text(node: ast.AST) -> str | None:
    """The string a node is, None if it is none."""
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else None


def strings(paths: Iterable[Path]) -> set[str]:
    """Every string constant but docstrings."""
    found: set[str] = set()
    for path in paths:
        documentation = {id(node.value) for node in ast.walk(tree(path)) if isinstance(node, ast.Expr)}
        found |= {
            node.value
            for node in ast.walk(tree(path))
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in documentation
        }
    return found


def marked(paths: Iterable[Path]) -> set[str]:
    """Texts that a translator finds: literals in `_`, `N_` and `ngettext`."""
    found: set[str] = set()
    for call in calls(paths, "_", "N_", "ngettext"):
        found |= {said for argument in call.args if (said := text(argument)) is not None}
    return found


def imports(path: Path) -> set[str]:
    """Names of the modules that a module imports, wherever in it."""
    found: set[str] = set()
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module, *(f"{node.module}.{alias.name}" for alias in node.names)}
    return found
