"""What deploy/ and the README tell people to type is there: commands, options, settings, files."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import click
import pytest

from server.cli.main import stilepost
from server.settings import table

ROOT = Path(__file__).parents[2]
PAGES = sorted(
    [ROOT / "README.md", ROOT / "DEVELOPERS.md", *(p for p in (ROOT / "deploy").iterdir() if p.is_file())]
)
SETTINGS = {row.env for row in table()}


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_every_setting_named_is_one(page: Path) -> None:
    """A misspelt one would stop the start, at night."""
    named = set(re.findall(r"STILEPOST_[A-Z_]+", page.read_text("utf-8")))
    assert named <= SETTINGS


def commands(page: Path) -> list[list[str]]:
    """Every 'stilepost …' of a page: in backticks, in a shell line, in a unit or a container."""
    text = page.read_text("utf-8").replace('", "', " ").replace('["', "`").replace('"]', "`")
    found = re.findall(
        r"(?:`|/bin/|^|&& )stilepost ([a-z][^`#\n]*?)(?:`|$|\s{2,}#|, (?:then|and)\b)", text, re.M
    )
    return [line.split() for line in found]


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_every_command_named_is_one(page: Path) -> None:
    """With options that it knows."""
    for name, *words in commands(page):
        command = stilepost.commands.get(name)
        assert command is not None, (page.name, name)
        options = {
            o for p in command.params if isinstance(p, click.Option) for o in (*p.opts, *p.secondary_opts)
        }
        assert {w for w in words if w.startswith("--")} <= options, (page.name, name, words)


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_every_option_that_takes_a_value_is_given_one(page: Path) -> None:
    """Typed as it stands there it runs: '--qr' alone is refused."""
    for name, *words in commands(page):
        for option in stilepost.commands[name].params:
            if not isinstance(option, click.Option) or option.is_flag:
                continue
            for word, after in pairwise([*words, "--"]):
                assert word not in option.opts or not after.startswith("--"), (page.name, name, words)


def test_the_pages_name_the_commands_that_matter() -> None:
    """The reader of the test above reads: these were found."""
    named = {words[0] for page in PAGES for words in commands(page)}
    assert {
        "serve",
        "bot",
        "invite",
        "invitations",
        "token",
        "load",
        "backup",
        "restore",
        "demo",
        "plan",
    } <= named


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_every_file_of_ours_that_is_named_exists(page: Path) -> None:
    """Units, containers, pages."""
    text = page.read_text("utf-8")
    for name in re.findall(r"deploy/[A-Za-z@_.-]+\.(?:service|timer|yaml|conf|md)|deploy/Dockerfile", text):
        assert (ROOT / name).exists(), name
    for name in re.findall(r"\]\(([A-Za-z_./-]+)\)", text):
        assert (page.parent / name).exists(), name
