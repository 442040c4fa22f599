"""Judged are those whom what came in concerns, and those whose time has come; nobody else, however large the field."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import timedelta

import pytest

from server.api import due, ticker
from server.api.building import Built, build
from server.facts.entry import Entry, Kind, Source
from server.journal import Outcome
from tests.api.conftest import EVENT, RUNNER, Running
from tests.api.field import many
from tests.api.test_never_deaf import served

SECOND, ALONE = "maren-1", "maren-2"
ALL = [RUNNER, SECOND, ALONE]


class Watched:
    """A server over three runners of circles of their own, all judged; `whom` is who has been judged since last asked."""

    def __init__(self, running: Running) -> None:
        self.running, self._whom = running, list[str]()
        really = running.parts.ticker._judge_one

        async def noted(*given: object) -> object:
            self._whom.append(str(given[2]))
            return await really(*given)  # type: ignore[arg-type]

        running.parts.ticker._judge_one = noted  # type: ignore[method-assign,assignment]

    def whom(self) -> list[str]:
        """Those judged since, but for what is judged of no runner each time."""
        found, self._whom = [r for r in self._whom if r], []
        return found

    async def tick(self, **later: float) -> list[str]:
        """Tick then; whom it judged."""
        self.running.clock.advance(timedelta(**later))
        await self.running.parts.ticker.tick(self.running.clock.now())
        return self.whom()

    async def report(self, runner: str, **body: object) -> list[str]:
        """Report on a runner; whom that had judged."""
        path = f"/v1/events/{EVENT}/runners/{runner}/checkins"
        status, said = await self.running.call("olga", "POST", path, body)
        assert status == 200, said
        return self.whom()


@pytest.fixture(scope="module")
def field(built: Built, event_files: dict[str, bytes]) -> tuple[str, Built]:
    """Two runners with crews of their own, and one with nobody."""
    text = many(built.event, 3, 2)
    return text, build(text, event_files)


@pytest.fixture(autouse=True)
def a_large_field(monkeypatch: pytest.MonkeyPatch) -> None:
    """Three runners are too many to be judged at every tick."""
    monkeypatch.setattr(due, "FEW", 0)


@asynccontextmanager
async def watched(url: str, field: tuple[str, Built], files: dict[str, bytes]) -> AsyncIterator[Watched]:
    async with served(url, field[0], files, field[1], timedelta(hours=5)) as running:
        found = Watched(running)
        assert sorted(await found.tick()) == ALL
        while await found.tick(seconds=1):
            pass
        yield found


async def test_only_whom_a_report_concerns_is_judged(
    sqlite_url: str, field: tuple[str, Built], event_files: dict[str, bytes]
) -> None:
    """Hers and nobody else's; a tick at the same moment judges nobody again; race-level facts concern all."""
    async with watched(sqlite_url, field, event_files) as here:
        for runner in (SECOND, ALONE):
            assert await here.report(runner, kind="how she is", words="fine") == [runner]
        assert await here.tick() == []
        fact = {"kind": "access closed", "point": "ravel"}
        status, said = await here.running.call("olga", "POST", f"/v1/events/{EVENT}/race", fact)
        assert status == 200, said
        assert sorted(here.whom()) == ALL


async def test_who_said_where_they_are_concerns_those_they_meet(
    sqlite_url: str, field: tuple[str, Built], event_files: dict[str, bytes]
) -> None:
    """Told of the one runner, it is true of the driver for every other whom they meet."""
    async with watched(sqlite_url, field, event_files) as here:
        assert await here.report(ALONE, kind="crew there", point="mill", person="ana") == [ALONE, RUNNER]


async def test_what_another_server_heard_is_judged_at_the_next_tick(
    sqlite_url: str, field: tuple[str, Built], event_files: dict[str, bytes]
) -> None:
    """And what became of a notice on its way."""
    async with watched(sqlite_url, field, event_files) as here:
        journal, now = here.running.parts.journal, here.running.clock.now()
        seen = Entry(
            "", EVENT, SECOND, Kind.IN, now, now, now, "vera", Source.VOLUNTEER, "x", "k", point="mill"
        )
        await journal.append(seen)
        assert await here.tick() == [SECOND]
        while await here.tick(seconds=1):
            pass
        mine = [
            d for d in await journal.claim(["telegram"], here.running.clock.now(), 1) if d.notice.key.runner
        ]
        for d in mine:
            await journal.report(d.id, Outcome.SENT, here.running.clock.now())
        assert await here.tick() == [d.notice.key.runner for d in mine] != []


async def test_whose_time_has_come_is_judged_and_everybody_has_their_turn(
    sqlite_url: str, field: tuple[str, Built], event_files: dict[str, bytes], monkeypatch: pytest.MonkeyPatch
) -> None:
    """By the watch's own word, in a field of any size; besides, of a large one some every half minute, the longest left
    first, of a small one all at every tick."""
    async with watched(sqlite_url, field, event_files) as here:
        ticker, clock = here.running.parts.ticker, here.running.clock
        first = ticker._dues[EVENT].next()
        assert first is not None
        clock.set(first)
        assert set(await here.tick()) & set(ALL)
        for runner in ALL:
            ticker._dues[EVENT].judged(runner, 99, None, clock.now(), ())
        monkeypatch.setattr(due, "FEW", 2)
        ticker._dues[EVENT]._round = clock.now()
        assert await here.tick(seconds=29) == []
        assert await here.tick(seconds=1) == ALL[:2]
        assert await here.tick(seconds=30) == [ALL[2], ALL[0]]
        monkeypatch.setattr(due, "FEW", 3)
        assert sorted(await here.tick()) == ALL


async def test_who_has_only_moved_on_is_judged_now_and_then(
    sqlite_url: str, field: tuple[str, Built], event_files: dict[str, bytes]
) -> None:
    """A fix each half minute is judged each second minute; anything else about her at once, and all there is by then."""
    async with watched(sqlite_url, field, event_files) as here:
        runner = here.running.built.event.runner(SECOND)
        course = field[1].courses[runner.course]

        async def moves(km: float) -> list[str]:
            here.running.clock.advance(timedelta(seconds=30))
            spot = course.at(km)
            fix = {"type": "Point", "coordinates": [spot.lon_deg, spot.lat_deg]}
            place = {"type": "Feature", "geometry": fix, "properties": {"accuracy_m": 10.0}}
            path = f"/v1/events/{EVENT}/runners/{SECOND}/positions"
            status, said = await here.running.call("olga", "POST", path, place)
            assert status == 200, said
            await here.running.parts.ticker.tick(here.running.clock.now())
            return here.whom()

        assert await here.report(SECOND, kind="out", point="mill") == [SECOND]
        while await here.tick(seconds=1):
            pass
        judged = here.running.parts.ticker._dues[EVENT]._judged[SECOND]
        looks = [(await moves(22.0 + n / 20), here.running.clock.now() - judged) for n in range(8)]
        assert [whom for whom, after in looks if after < due.MOVED] == [[]] * 3
        assert next(whom for whom, after in looks if after >= due.MOVED) == [SECOND]
        assert sum(whom == [SECOND] for whom, _ in looks) == 2
        assert await here.report(SECOND, kind="how she is", words="fine") == [SECOND]


async def test_whoever_is_reported_on_comes_first_though_a_place_of_hers_waits(
    sqlite_url: str, field: tuple[str, Built], event_files: dict[str, bytes]
) -> None:
    """A fix waits for its turn; a check-in behind it is judged at once, before others that wait."""
    async with watched(sqlite_url, field, event_files) as here:
        assert await here.report(SECOND, kind="out", point="mill") == [SECOND]
        while await here.tick(seconds=1):
            pass
        dues = here.running.parts.ticker._dues[EVENT]
        dues.moved[SECOND] = dues._looks
        dues.facts |= dict.fromkeys((RUNNER, ALONE), dues._looks)
        assert (await here.report(SECOND, kind="in", point="stile-out"))[0] == SECOND


async def test_others_passages_have_all_on_course_judged_before_long(
    sqlite_url: str, field: tuple[str, Built], event_files: dict[str, bytes], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Spread over two minutes, the longest left first, and nobody more often than that; the same again is nothing new. Who
    waits for it is judged at once where she is reported on, before a whole field.
    """
    monkeypatch.setattr(ticker, "WITH_HER", 0)
    async with watched(sqlite_url, field, event_files) as here:
        running = here.running
        dues = running.parts.ticker._dues[EVENT]
        for runner in ALL:
            dues.judged(runner, 99, None, running.clock.now() - timedelta(hours=1), ())

        async def passes(elapsed: str) -> list[str]:
            body = {"csv": f"bib,point,elapsed\n7,mill,{elapsed}\n"}
            status, said = await running.call("olga", "POST", f"/v1/events/{EVENT}/passages", body)
            assert status == 200, said
            return await here.tick()

        assert await passes("3:00") == []
        assert await here.tick(seconds=39) == []
        assert await here.tick(seconds=1) == ALL[:1]
        assert await passes("3:01") == []
        assert await passes("3:01") == []
        assert await here.tick(seconds=40) == ALL[1:2]
        dues.facts[RUNNER] = dues._looks
        assert await here.report(ALL[2], kind="how she is", words="fine") == ALL[2:]
        del dues.facts[RUNNER]
        assert await here.tick(seconds=79) == []
        assert await here.tick(seconds=1) == ALL[:1]
        for runner in ALL:
            dues.judged(runner, 99, None, running.clock.now(), ())
        assert await passes("3:02") == []
        assert await here.tick(seconds=60) == []
        assert await passes("3:03") == []
        for runner in ALL:  # on a picture from before the last passage
            dues.judged(runner, dues._looks - 1, None, running.clock.now(), ())
        assert await here.tick(seconds=119) == []
        assert await here.tick(seconds=1) == ALL
