"""The stop log in short, and what of it is shown to crew and medics."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

import pytest

from server.facts.stop_log import Flag, Item, Level, Logged, in_short

START = datetime(2027, 6, 19, 4, 0, tzinfo=UTC)


@dataclass(frozen=True, slots=True)
class Said:
    """An entry of the log."""

    seen_at: datetime
    logged: tuple[Logged, ...]


def at(hours: float, *logged: Logged) -> Said:
    """Logged so many hours after the start."""
    return Said(START + timedelta(hours=hours), logged)


ATE, DRANK, PEED = Logged(Item.ATE), Logged(Item.DRANK), Logged(Item.PEED)
NOT_EATEN, NOT_PEED = Logged(Item.ATE, level=Level.NONE), Logged(Item.PEED, level=Level.NONE)
IBU = Logged(Item.PAINKILLER, words="ibuprofen")


def test_sums_and_what_was_last() -> None:
    """Amounts add up; of mood and pee the newest stands."""
    found = in_short(
        [
            at(2, Logged(Item.DRANK, 500), Logged(Item.ATE, 40), Logged(Item.MOOD, level=Level.GOOD)),
            at(4, Logged(Item.DRANK, 250), NOT_PEED, Logged(Item.MOOD, level=Level.BAD)),
        ],
        START,
        START + timedelta(hours=5),
    )
    assert found is not None
    assert (found.since, found.drank_ml, found.ate_g) == (START + timedelta(hours=2), 750, 40)
    assert [one.level for _, one in found.last] == [Level.NONE, Level.BAD]


def test_nothing_said_is_not_nothing_eaten() -> None:
    """What nobody logged stays unknown; 'nothing eaten' is said."""
    drank = in_short([at(2, DRANK)], START, START + timedelta(hours=3))
    assert drank is not None
    assert (drank.ate_g, drank.drank_ml, drank.drank_some) == (None, None, True)
    told = in_short([at(2, NOT_EATEN)], START, START + timedelta(hours=3))
    assert told is not None
    assert told.ate_g == 0
    assert in_short([], START, START) is None


def test_what_lies_ahead_is_not_told() -> None:
    """An entry seen later than now does not count."""
    assert in_short([at(2, DRANK)], START, START + timedelta(hours=1)) is None


@pytest.mark.parametrize(
    ("entries", "hours", "flags"),
    [
        ([at(4, NOT_PEED, IBU)], 5, [Flag.PAINKILLER_NO_PEE]),
        ([at(4, PEED), at(4.1, IBU)], 5, []),
        ([at(4, IBU)], 5, []),
        ([at(4, NOT_PEED)], 5, []),
        ([at(6, NOT_PEED)], 6.5, [Flag.NO_PEE]),
        ([at(4, Logged(Item.PEED, level=Level.BAD))], 4.5, [Flag.DARK_PEE]),
        ([at(2, IBU, PEED), at(5, IBU, PEED)], 5, [Flag.PAINKILLERS]),
        ([at(2, Logged(Item.DRANK, 1500)), at(3, Logged(Item.DRANK, 1000))], 3, [Flag.MUCH_DRUNK]),
        ([at(1, Logged(Item.DRANK, 1000))], 1.1, []),
        ([at(2, Logged(Item.DRANK, 1400))], 2, []),
        ([at(4, NOT_EATEN)], 4, [Flag.NOT_EATING]),
        ([at(2, ATE), at(4, NOT_EATEN)], 4, []),
    ],
)
def test_flags(entries: list[Said], hours: float, flags: list[Flag]) -> None:
    """Each flag, and what comes near it and is none."""
    found = in_short(entries, START, START + timedelta(hours=hours))
    assert found is not None
    assert [f for f, _ in found.flags] == flags
