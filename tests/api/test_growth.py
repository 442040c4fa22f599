"""What a report costs must not grow with the field, nor with the journal: its CPU against that of the smallest of the same
run, so that no machine is too slow for it. `python -m tests.bench scale` measures the same at sizes that take longer."""

from __future__ import annotations

import shutil
import sys
import time
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path
from types import FrameType

import pytest

from server.api.building import Built, build
from server.event import parse_event
from tests.api.field import many
from tests.api.test_never_deaf import served
from tests.bench.scale import journal_of

pytestmark = pytest.mark.usefixtures("built_afresh")  # what a server takes to work out is measured

GROWS = 2.0
"""At most so many times the CPU of one runner with 500 entries (own choice: 0.9 to 1.2 measured; before it was 3 with ten
times the entries, and seconds with a hundred runners)."""


def _steps(work: Callable[[], object]) -> int:
    """How many instructions of Python ran: the same on every machine."""
    steps = 0

    def trace(frame: FrameType, event: str, _value: object) -> Callable[..., object]:
        nonlocal steps
        frame.f_trace_lines, frame.f_trace_opcodes = False, True
        steps += event == "opcode"
        return trace

    before = sys.gettrace()
    sys.settrace(trace)
    try:
        work()
    finally:
        sys.settrace(before)
    return steps


def test_an_event_file_holds_a_whole_field(built: Built) -> None:
    """Runners with crews and runners without, in one file; ten more take as much to read as the ten before them (one check
    that looks at everybody for each of them makes it 1.015; 1.003 measured)."""
    ten, twenty, thirty = (
        _steps(lambda text=text: parse_event(text))  # type: ignore[misc]
        for text in (many(built.event, 2 * n, n) for n in (5, 10, 15))
    )
    assert (thirty - twenty) / (twenty - ten) < 1.005
    whole = parse_event(many(built.event, 600, 100)).event
    assert whole is not None
    assert (len(whole.runners), len(whole.meetings)) == (600, 100 * len(built.event.meetings))


async def _report_cpu_s(url: str, one: Built, files: dict[str, bytes], runners: int, entries: int) -> float:
    """CPU of a report on her, in all threads: the least of several, as what else the machine does makes some dearer."""
    text = many(one.event, runners, 1)
    field = build(text, files)
    spent = []
    async with served(url, text, files, field, timedelta(hours=6)) as running:
        for some in journal_of(field, entries, running.clock.now()):
            await running.parts.journal.append_all(some)
        await running.report("olga", "how she is", words="fine")
        for _ in range(4):
            running.clock.advance(timedelta(seconds=20))
            began = time.process_time()
            status, said = await running.report("olga", "how she is", words="fine")
            spent.append(time.process_time() - began)
            assert status == 200, said
    return min(spent)


async def test_a_report_costs_the_same_in_a_field_and_late_in_a_race(
    sqlite_template: Path, tmp_path: Path, built: Built, event_files: dict[str, bytes]
) -> None:
    """With a hundred runners, with a thousand, and with ten times the entries, about what one runner with 500 costs."""
    cost = {}
    for runners, entries in ((1, 500), (100, 500), (1000, 1000), (1, 5000)):
        path = tmp_path / f"{runners}-{entries}.db"
        shutil.copy(sqlite_template, path)
        url = f"sqlite+aiosqlite:///{path}"
        cost[runners, entries] = await _report_cpu_s(url, built, event_files, runners, entries)
    least = cost[1, 500]
    assert {size: round(s / least, 2) for size, s in cost.items() if s > GROWS * least} == {}
