"""The pure rooms reach out to nothing: their imports are read and held to the list of what is pure."""

from __future__ import annotations

import ast
from collections.abc import Mapping
from functools import cache
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PURE = (
    "server/course", "server/plan", "server/forecast", "server/watch", "server/event",
    "server/facts", "server/conversation", "server/drafting",
)  # fmt: skip
OUTSIDE = frozenset(
    {
        "aiohttp", "sqlalchemy", "aiosqlite", "asyncpg", "alembic", "telegram", "apscheduler", "aiosmtplib",
        "asyncio", "socket", "ssl", "http", "urllib", "requests", "httpx", "subprocess", "threading", "os",
        "time", "sqlite3", "random", "secrets", "structlog", "logging", "click", "jinja2", "prometheus_client",
    }
)  # fmt: skip
LAYERS: tuple[tuple[str, ...], ...] = (
    ("server.clock", "server.log", "server.doors", "server.sentences"),
    ("server.course",),
    ("server.event",),
    ("server.facts",),
    ("server.forecast",),
    ("server.plan",),
    ("server.watch",),
    ("server.conversation", "server.journal"),
    ("server.paper", "server.settings", "server.drafting"),
    ("server.api",),
    ("server.pages", "bot"),
    ("server.app",),
    ("demo_event",),
    ("server.cli",),
)
"""The house from the ground up. A module may import from its own room and from those below; rooms of one storey know nothing
of each other. Loose files at the ground belong to no room and are used by all."""
OUTER_ROOMS = ("server.api", "server.pages", "server.journal", "server.app", "server.api.ticker", "server.cli",
               "server.settings", "server.log", "server.clock", "bot.channels", "bot.loops", "bot.worker",
               "bot.conversing")  # fmt: skip
CLOCKS = frozenset({"now", "today", "utcnow", "time", "monotonic", "perf_counter"})
LIBRARIES_ALLOWED = {"server/conversation/training/grammar.py": {"random"}}
"""A command's own: draws of a generator with a seed, the same at every training."""

MODULES = sorted(
    [
        Path("server/sentences.py"),
        *(p.relative_to(ROOT) for room in PURE for p in (ROOT / room).rglob("*.py")),
    ]
)
"""Those of the pure rooms, and the loader of sentences they stand on: it reads the package's own files, once a process."""


def imported(tree: ast.AST) -> set[str]:
    """Every module a file imports, wherever in it the import stands."""
    found: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found |= {a.name for a in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found.add(node.module)
            found |= {f"{node.module}.{a.name}" for a in node.names}
    return found


def asks_a_clock_or_a_file(tree: ast.AST) -> set[str]:
    """Calls such as datetime.now() and open(): what would make an answer depend on more than its arguments."""
    found: set[str] = set()
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        if isinstance(node.func, ast.Name) and node.func.id in ("open", "input", "print"):
            found.add(node.func.id)
        if isinstance(node.func, ast.Attribute) and node.func.attr in CLOCKS:
            owner = node.func.value
            if isinstance(owner, ast.Name) and owner.id in ("datetime", "date", "time"):
                found.add(f"{owner.id}.{node.func.attr}")
    return found


def modules_of(*folders: str) -> dict[str, Path]:
    """Every module of these folders by its dotted name; a package by the name of its folder."""
    found = {}
    for path in (p for folder in folders for p in (ROOT / folder).rglob("*.py")):
        parts = path.relative_to(ROOT).with_suffix("").parts
        found[".".join(parts[:-1] if parts[-1] == "__init__" else parts)] = path
    return found


def storey(module: str) -> tuple[int, str] | None:
    """The storey and the room a module lives in, None for the roots that hold rooms and nothing else."""
    for height, rooms in enumerate(LAYERS):
        for room in rooms:
            if module == room or module.startswith(room + "."):
                return height, room
    return None


def arrows_up(imports: Mapping[str, set[str]]) -> set[tuple[str, str]]:
    """Which module takes what from a higher storey, or from another room of its own."""
    found = set()
    for module, taken in imports.items():
        for other in taken:
            here, there = storey(module), storey(other)
            if here and there and here[1] != there[1] and there[0] >= here[0]:
                found.add((module, other))
    return found


@cache
def all_imports() -> dict[str, set[str]]:
    """For each of our modules those of ours that it imports anywhere, those for types only too; a name taken from a
    package counts as the package where it is no module itself."""
    ours = modules_of("server", "bot", "demo_event")
    found: dict[str, set[str]] = {}
    for name, path in ours.items():
        taken: set[str] = set()
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                taken |= {a.name for a in node.names}
            elif isinstance(node, ast.ImportFrom) and node.module:
                full = {f"{node.module}.{a.name}" for a in node.names}
                taken |= {n if n in ours else node.module for n in full}
        found[name] = (taken & ours.keys()) - {name}
    return found


def test_every_module_has_its_storey() -> None:
    """A room that nobody put into the table is none that the table holds."""
    assert {m for m in modules_of("server", "bot", "demo_event") if storey(m) is None} == {"server"}


def test_no_arrow_goes_up() -> None:
    """A room knows those it stands on, never those that stand on it."""
    assert arrows_up(all_imports()) == set()


def test_there_is_no_circle() -> None:
    """No two modules need each other, inside a room as little as between rooms."""
    try:
        tuple(TopologicalSorter(all_imports()).static_order())
    except CycleError as circle:
        pytest.fail(" -> ".join(circle.args[1]))


def drawn() -> str:
    """The rooms as a Mermaid picture: who imports whom, without the arrows that others imply."""
    taken: dict[str, set[str]] = {}
    for module, others in all_imports().items():
        here = storey(module)
        if here is not None:
            rooms = {there[1] for there in map(storey, others) if there is not None}
            taken.setdefault(here[1], set()).update(rooms - {here[1], *LAYERS[0]})
    reach: dict[str, set[str]] = {}
    for room in TopologicalSorter(taken).static_order():
        reach[room] = set().union(taken.get(room, ()), *(reach[r] for r in taken.get(room, ())))
    lines = ["flowchart BT"]
    for room in (r for rooms in LAYERS[1:] for r in rooms):
        needs = taken.get(room, set())
        direct = needs - set().union(*(reach[r] for r in needs))
        lines += [f"    {below} --> {room}" for below in sorted(direct)]
    return "\n".join(lines)


def test_the_picture_in_the_guide_is_the_code() -> None:
    """DEVELOPERS.md shows the rooms as they are; where it does not, this prints the picture that belongs there."""
    guide = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert f"```mermaid\n{drawn()}\n```" in guide, drawn()


@pytest.mark.parametrize(
    ("module", "other", "bad"),
    [
        ("server.forecast.bridge", "server.plan.timetable", True),
        ("server.plan.stage_odds", "server.forecast.outlook", False),
        ("server.journal.journal", "server.conversation", True),
        ("server.api.parts", "server.app", True),
        ("server.watch", "server.watch.table", False),
    ],
)
def test_the_table_can_say_no(module: str, other: str, bad: bool) -> None:
    """Up and sideways are found, down and one's own room are let be."""
    assert bool(arrows_up({module: {other}})) is bad


def test_there_are_rooms_to_read() -> None:
    """The list of pure rooms finds modules in each, so that a moved folder fails here and not silently."""
    for room in PURE:
        assert any(str(m).startswith(room) for m in MODULES), room


@pytest.mark.parametrize("module", MODULES, ids=str)
def test_a_pure_module_reaches_out_to_nothing(module: Path) -> None:
    """No library that talks to the world, no outer room, no clock, no file."""
    tree = ast.parse((ROOT / module).read_text(encoding="utf-8"))
    names = imported(tree)
    allowed = LIBRARIES_ALLOWED.get(module.as_posix(), set())
    assert {n for n in names if n.split(".")[0] in OUTSIDE - allowed} == set()
    assert {n for n in names if n.startswith(OUTER_ROOMS)} == set()
    assert asks_a_clock_or_a_file(tree) == set()


@pytest.mark.parametrize(
    ("text", "bad"),
    [
        ("import aiohttp", True),
        ("def f():\n    from sqlalchemy import select", True),
        ("from server.journal import Journal", True),
        ("from server import journal", True),
        ("from datetime import datetime\nx = datetime.now()", True),
        ("open('x')", True),
        ("import numpy", False),
        ("from server.facts.entry import Entry", False),
    ],
)
def test_the_reader_sees_what_it_must(text: str, bad: bool) -> None:
    """The check itself can fail: it finds hidden imports, outer rooms, clocks and files."""
    tree = ast.parse(text)
    names = imported(tree)
    found = {n for n in names if n.split(".")[0] in OUTSIDE or n.startswith(OUTER_ROOMS)}
    assert bool(found | asks_a_clock_or_a_file(tree)) is bad
