"""How much of the program one message runs through: what has to be read to understand it, when it goes wrong at night."""

from __future__ import annotations

import asyncio
import re
import sys
import threading
from collections.abc import AsyncIterator, Collection, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from pathlib import Path
from types import FrameType
from typing import Any

import pytest

from server.event.model import Event
from tests.bot.conftest import Prepared, Race, before_start, on_the_way, serving, small_event  # noqa: F401 - fixtures

ROOT = Path(__file__).parents[2]
WORDS = ("server/conversation/", "server/api/", "bot/")
QUESTION, CHECK_IN = (70, 125), (78, 192)
"""Files of the conversation (its sentences too), the API and the bot; files in all: as it is. Meant: 20, 55; 30, 70."""

BY_THE_CLOCK = "server/pages/stream.py"
"""It looks for what is to be shown twice a second, whatever is said: now and then just meanwhile."""


@pytest.fixture
async def race(on_the_way: Prepared, tmp_path: Path, small_event: Event) -> AsyncIterator[Race]:  # noqa: F811
    """The race at 07:30: Maren is between the mill and the gate."""
    async with serving(on_the_way, tmp_path, small_event) as served:
        yield served


@contextmanager
def traced(race: Race) -> Iterator[dict[str, None]]:
    """The project's files of which anything is called meanwhile, in every thread, as they are first called."""
    found: dict[str, None] = {}
    own = tuple(str(ROOT / part) for part in ("server", "bot"))

    def saw(frame: FrameType, _event: str, _arg: Any) -> None:
        name = frame.f_code.co_filename
        if name.startswith(own) and not name.endswith(BY_THE_CLOCK):
            found.setdefault(name.removeprefix(f"{ROOT}/"))

    # Threads that run already are not seen: those that think for the server, and its database's, begin anew.
    asyncio.get_running_loop().set_default_executor(ThreadPoolExecutor())
    database = race.journal._store._threads
    assert database is not None
    database._usually.shutdown()
    database._usually = ThreadPoolExecutor(1, "database")
    threading.setprofile(saw)
    sys.setprofile(saw)
    try:
        yield found
    finally:
        sys.setprofile(None)
        threading.setprofile(None)  # type: ignore[arg-type]


def counted(files: Collection[str]) -> tuple[int, int]:
    """Those of the conversation, the API and the bot; all."""
    return sum(f.startswith(WORDS) for f in files), len(files)


@pytest.mark.parametrize(
    ("who", "text", "most"),
    [("ana", "when is she at the gate", QUESTION), ("olga", "maren in at moor cross 7:58", CHECK_IN)],
)
async def test_a_message_runs_through_no_more_files(
    race: Race, who: str, text: str, most: tuple[int, int]
) -> None:
    """A question; a check-in until it is noted, with the watch's look at it."""
    race.at("08:00")
    await race.say("ana", "where is she")
    with traced(race) as files:
        await race.say(who, text)
    found = counted(files)
    assert (found[0] <= most[0], found[1] <= most[1]) == (True, True), (found, sorted(files))


async def test_a_report_goes_the_way_that_the_guide_tells(race: Race) -> None:
    """The files that DEVELOPERS.md names for one report's way come on in that order, and all of them do."""
    guide = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").split("One report's way")[1]
    named = re.findall(r"^\d+\. .*?`([\w/]+\.py)`", guide, re.MULTILINE)
    race.at("08:00")
    await race.say("ana", "where is she")
    with traced(race) as files:
        await race.say("olga", "maren in at moor cross 7:58")
    order = list(files)
    assert len(named) == 10
    assert sorted(named, key=order.index) == named
