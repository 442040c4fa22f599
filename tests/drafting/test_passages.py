"""Others' passage times read: by the clock of the race or since the start, each wrong row named, no other lost by it."""

from __future__ import annotations

import json
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from server.drafting.passages import Read, of_csv, of_json, read_passages
from server.event import Problem, parse_event
from server.event.model import Event
from server.event.times import write_span
from server.facts.passages import Passage

FOUND = parse_event(
    (Path(__file__).parents[2] / "demo_event" / "event.toml").read_text(encoding="utf-8")
).event
assert FOUND is not None
EVENT: Event = FOUND
START = EVENT.starts
NOW = START + timedelta(hours=20)


def read(csv: str, now: datetime = NOW) -> Read:
    rows = of_csv(csv, "feed.csv")
    assert not isinstance(rows, Problem), rows
    return read_passages(rows, EVENT, START, now, "feed.csv")


@pytest.mark.parametrize(
    "said", ["07:58", "Sat 07:58:00", "2027-09-11 07:58", "2027-09-11T06:58:00Z", "07:58:00.4"]
)
def test_a_time_is_read_as_the_clock_at_the_race_shows_it(said: str) -> None:
    """British summer time in September: an hour before UTC."""
    assert read(f"Bib;Name;Point;Time\n12;Somebody Else;Mill;{said}\n") == Read(
        (Passage("12", "mill", datetime(2027, 9, 11, 6, 58, tzinfo=UTC)),), ()
    )


@pytest.mark.parametrize(
    ("row", "told"),
    [
        ("1,nowhere,07:58", "2:point:no course has a point 'nowhere'"),
        ("1,mill,soon", "2:time:'soon' is no time of day"),
        ("1,mill,2027-13-40", "2:time:'2027-13-40' is no time"),
        ("1,mill,2027-09-10 07:58", "2:time:2027-09-10 07:58 is before the start"),
        ("1,mill,2027-09-12 07:58", "2:time:2027-09-12 07:58 is still to come"),
        ("214,mill,07:58", "2:bib:bib 214 is of a runner who is followed here"),
        (",mill,07:58", "2:bib:the bib is missing"),
        ("<b>,mill,07:58", "2:bib:'<b>' is no bib"),
        ("1,mill", "2:time:'' is no time"),
    ],
)
def test_a_wrong_row_is_named_and_takes_no_other_with_it(row: str, told: str) -> None:
    """Line, column and what is wrong, with what to do."""
    found = read(f"bib,point,time\n{row}\n2,mill,07:58\n")
    assert [f"{p.line}:{p.field}:{p.what}" for p in found.not_taken] == [told]
    assert all(p.remedy for p in found.not_taken)
    assert [p.bib for p in found.taken] == ["2"]


def test_a_time_that_was_on_two_days_is_asked_for_its_day() -> None:
    late = START + timedelta(hours=30)
    assert [str(p.what) for p in read("bib,point,time\n1,mill,07:58\n", late).not_taken] == [
        "07:58 was on more than one day of the race"
    ]
    assert len(read("bib,point,time\n1,mill,Sun 07:58\n", late).taken) == 1


@pytest.mark.parametrize("text", ["", "bib,time\n1,2\n", "bib,point\n1,mill\n", 'bib,point,time\n1,"mill\n'])
def test_a_whole_that_is_no_list_is_told(text: str) -> None:
    assert isinstance(of_csv(text, "feed.csv"), Problem)


@pytest.mark.parametrize("text", ["", "{}", "7", '"x"', '{"passages": 7}', "[" * 5000])
def test_a_json_that_is_no_list_is_told(text: str) -> None:
    assert isinstance(of_json(text, "feed.json"), Problem)


def test_json_takes_back_only_what_says_so() -> None:
    """A time of null takes back; one that is missing, or a number, is a wrong row."""
    rows = of_json(
        '[{"bib": 5, "point": "mill", "time": null}, {"bib": 6, "point": "mill"}, '
        '{"bib": 7, "point": "mill", "time": 1.5}, 8]',
        "feed.json",
    )
    assert not isinstance(rows, Problem)
    found = read_passages(rows, EVENT, START, NOW, "feed.json")
    assert found.taken == (Passage("5", "mill", None),)
    assert [p.line for p in found.not_taken] == [2, 3, 4]


PASSAGES = st.lists(
    st.builds(
        Passage,
        st.from_regex(r"[0-9A-Z]{1,8}", fullmatch=True).filter(lambda b: b != "214"),
        st.sampled_from([p.id for c in EVENT.courses for p in c.points]),
        st.none() | st.integers(0, 20 * 3600).map(lambda s: START + timedelta(seconds=s)),
    ),
    max_size=30,
)


@given(PASSAGES)
def test_what_is_written_is_read_back(some: list[Passage]) -> None:
    """As CSV with elapsed times, and as JSON with moments."""
    elapsed = ["" if p.at is None else write_span(p.at - START) for p in some]
    rows = [f"{p.bib}\t{p.point}\t{t}" for p, t in zip(some, elapsed, strict=True)]
    assert read("\n".join(["bib\tpoint\telapsed", *rows])) == Read(tuple(some), ())
    listed = [{"bib": p.bib, "point": p.point, "time": p.at.isoformat() if p.at else None} for p in some]
    again = of_json(json.dumps({"passages": listed}), "feed.json")
    assert not isinstance(again, Problem)
    assert read_passages(again, EVENT, START, NOW, "feed.json").taken == tuple(some)


@given(st.lists(st.lists(st.text(max_size=12), min_size=1, max_size=4), max_size=8), st.text(max_size=200))
def test_nothing_breaks_the_reader(cells: list[list[str]], text: str) -> None:
    """Each row is taken or named, whatever it holds; nothing taken lies outside the race."""
    keys = ("bib", "point", "time", "elapsed")
    listed = [dict(zip(keys, c, strict=False)) for c in cells]
    feed = "bib,point,time\n" + "\n".join(map(",".join, cells))
    for rows in (of_csv(text, "x"), of_csv(feed, "x"), of_json(text, "x"), of_json(listed, "x")):
        if not isinstance(rows, Problem):
            found = read_passages(rows, EVENT, START, NOW, "x")
            assert len(found.taken) + len(found.not_taken) == len(rows)
            assert all(p.at is None or START <= p.at <= NOW + timedelta(minutes=2) for p in found.taken)
