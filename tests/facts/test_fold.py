"""The fold: what single stories come to."""

from __future__ import annotations

import time
from dataclasses import replace
from datetime import timedelta

import pytest

from server.facts.entry import Fix, Kind, Retired, Source
from server.facts.fold import fold
from server.facts.state import Going, Interval
from server.facts.status import TABLE, Step, after

K = Kind
NIGHT = "40:00"


@pytest.fixture
def maren(entry, event, clock, placer):
    """Folds (kind, clock, fields) rows into maren's state."""

    def go(*rows, now=NIGHT):
        entries = [entry(kind, when, **(more[0] if more else {})) for kind, when, *more in rows]
        return fold(entries, event, clock(now), placer).runner("maren")

    return go


MILL = {"point": "mill"}
CHAPEL = {"point": "chapel"}
MOSS = {"point": "moss"}
FINISH = {"point": "finish"}
START = {"point": "start"}
RCT = {"id": "told"}
DNS = {"how": Retired.DID_NOT_START}

STORIES = [
    ([], "3:00", Going.BEFORE_START),
    ([], "4:00", Going.MOVING),
    ([(K.IN, "3:30", START)], "3:40", Going.BEFORE_START),
    ([(K.OUT, "3:58", START)], "3:59", Going.MOVING),
    ([(K.IN, "4:01", START)], NIGHT, Going.MOVING),
    ([(K.IN, "6:00", MILL)], NIGHT, Going.AT_POINT),
    ([(K.IN, "6:00", MILL), (K.OUT, "6:05", MILL)], NIGHT, Going.MOVING),
    ([(K.IN, "6:00", MILL), (K.OUT, "6:00", MILL)], NIGHT, Going.MOVING),
    ([(K.THROUGH, "6:00", MILL)], NIGHT, Going.MOVING),
    ([(K.OUT, "6:00", MILL)], NIGHT, Going.MOVING),
    ([(K.IN, "6:00", MILL), (K.RESTING, "6:10")], NIGHT, Going.RESTING),
    ([(K.RESTING, "7:10"), (K.MOVING_AGAIN, "7:40")], NIGHT, Going.MOVING),
    ([(K.IN, "6:00", MILL), (K.POSITION, "6:30", {"fix": Fix(0.203, 0)})], NIGHT, Going.AT_POINT),
    ([(K.IN, "6:00", MILL), (K.POSITION, "6:50", {"fix": Fix(0.22, 0)})], NIGHT, Going.MOVING),
    ([(K.IN, "6:00", MILL), (K.POSITION, "6:50", {"fix": Fix(0.22, 3)})], NIGHT, Going.AT_POINT),
    ([(K.IN, "23:00", FINISH)], NIGHT, Going.FINISHED),
    ([(K.THROUGH, "23:00", FINISH)], NIGHT, Going.FINISHED),
    ([(K.OUT, "23:10", FINISH)], NIGHT, Going.FINISHED),
    ([(K.IN, "23:00", FINISH), (K.IN_HAND, "23:05")], NIGHT, Going.CLOSED),
    ([(K.RETIRED, "9:00")], NIGHT, Going.RETIRED),
    ([(K.RETIRED, "9:00"), (K.IN, "9:30", CHAPEL)], NIGHT, Going.RETIRED),
    ([(K.RETIRED, "9:00"), (K.OUT, "9:30", CHAPEL)], NIGHT, Going.RETIRED),
    ([(K.RETIRED, "9:00"), (K.IN_HAND, "9:40")], NIGHT, Going.IN_HAND),
    ([(K.RETIRED, "9:00"), (K.RACE_CONTROL_TOLD, "9:10")], NIGHT, Going.RETIRED),
    ([(K.RETIRED, "9:00"), (K.IN_HAND, "9:40"), (K.RACE_CONTROL_TOLD, "9:50")], NIGHT, Going.CLOSED),
    ([(K.RETIRED, "9:00"), (K.RACE_CONTROL_TOLD, "9:10"), (K.IN_HAND, "9:40")], NIGHT, Going.CLOSED),
    ([(K.RACE_CONTROL_TOLD, "8:00"), (K.RETIRED, "9:00"), (K.IN_HAND, "9:40")], NIGHT, Going.IN_HAND),
    ([(K.IN_HAND, "8:58"), (K.RETIRED, "9:00")], NIGHT, Going.IN_HAND),
    ([(K.IN_HAND, "6:58"), (K.IN, "8:00", MILL), (K.RETIRED, "9:00")], NIGHT, Going.RETIRED),
    ([(K.RETIRED, "3:00", DNS)], NIGHT, Going.IN_HAND),
    ([(K.RETIRED, "4:30", DNS)], NIGHT, Going.IN_HAND),
    ([(K.IN, "6:00", MILL), (K.RETIRED, "6:30", DNS)], NIGHT, Going.AT_POINT),
    ([(K.RETIRED, "4:30", DNS), (K.IN, "6:00", MILL)], NIGHT, Going.AT_POINT),
    ([(K.RETIRED, "3:00", DNS), (K.OUT, "3:55", {"point": "start"})], "3:56", Going.MOVING),
    (
        [(K.RETIRED, "4:30", DNS), (K.RACE_CONTROL_TOLD, "4:40"), (K.THROUGH, "6:00", MILL)],
        NIGHT,
        Going.MOVING,
    ),
    (
        [(K.RETIRED, "4:30", DNS), (K.RACE_CONTROL_TOLD, "4:40"), (K.ASKED_FOR_HELP, "6:00")],
        NIGHT,
        Going.MOVING,
    ),
    ([(K.RETIRED, "4:30", DNS), (K.RESTING, "6:00")], NIGHT, Going.RESTING),
    ([(K.RETIRED, "4:30", DNS), (K.IN, "23:00", FINISH)], NIGHT, Going.FINISHED),
    ([(K.RETIRED, "4:30", DNS), (K.POSITION, "6:00", {"fix": Fix(0.1, 0.0)})], NIGHT, Going.IN_HAND),
    ([(K.RETIRED, "4:30", DNS), (K.IN, "6:00", {**MILL, "unconfirmed": True})], NIGHT, Going.IN_HAND),
    ([(K.RETIRED, "3:00", DNS), (K.IN, "3:30", MILL)], NIGHT, Going.IN_HAND),
    ([(K.IN, "3:00", MILL)], NIGHT, Going.MOVING),
    ([(K.THROUGH, "6:00", MILL), (K.RETIRED, "6:30", DNS)], NIGHT, Going.MOVING),
]


@pytest.mark.parametrize(("rows", "now", "going"), STORIES)
def test_where_she_is_in_her_race(maren, rows, now, going) -> None:
    """Each short story ends in the state a person would say she is in."""
    assert maren(*rows, now=now).going is going


@pytest.mark.parametrize(
    ("rows", "refused"),
    [
        ([(K.IN, "3:00", MILL)], [K.IN]),
        ([(K.IN, "6:00", {"point": "nowhere"})], [K.IN]),
        ([(K.RETIRED, "9:00"), (K.OUT, "9:30", CHAPEL)], [K.OUT]),
        ([(K.IN, "23:00", FINISH), (K.RETIRED, "23:30")], [K.RETIRED]),
        ([(K.IN, "6:00", MILL), (K.RETIRED, "6:30", DNS)], [K.RETIRED]),
        ([(K.RETIRED, "4:30", DNS), (K.IN, "6:00", MILL)], [K.RETIRED]),
        ([(K.RETIRED, "4:30", DNS | {"point": "start"}), (K.MOVING_AGAIN, "6:00")], [K.RETIRED]),
        ([(K.NOT_HERE_YET, "6:00", {"point": "nowhere"})], [K.NOT_HERE_YET]),
        ([(K.IN_HAND, "3:00")], [K.IN_HAND]),
    ],
)
def test_what_the_table_does_not_allow_is_listed(maren, rows, refused) -> None:
    """A refused entry is listed, is not among those folded, and leaves no trace in the times."""
    state = maren(*rows)
    assert [e.kind for e in state.refused] == refused
    assert not {e.id for e in state.refused} & set(state.folded)
    assert all(t.arrived is None or t.arrived.entry in state.folded for t in state.times)


def test_a_refused_report_does_not_hide_an_allowed_one(maren) -> None:
    """A mat's 'out' after she retired is refused; the crew's earlier 'out' of the same point then counts."""
    state = maren(
        (K.IN, "6:00", MILL),
        (K.OUT, "6:05", MILL),
        (K.RETIRED, "8:00"),
        (K.OUT, "8:30", {**MILL, "source": Source.TIMING_MAT}),
    )
    mill = state.at_point("mill")
    assert mill.left.source is Source.CREW
    assert state.last_known.kind == "out"
    assert [e.source for e in state.refused] == [Source.TIMING_MAT]


def test_the_more_trusted_report_gives_the_time(maren, clock) -> None:
    """Mat before volunteer before crew; both are kept."""
    t = maren(
        (K.IN, "6:00", MILL),
        (K.IN, "6:02", {**MILL, "source": Source.TIMING_MAT}),
        (K.IN, "5:58", {**MILL, "source": Source.RUNNER}),
    ).at_point("mill")
    assert t.arrived.at == clock("6:02")
    assert [s.source for s in t.also_arrived] == [Source.CREW, Source.RUNNER]


def test_among_equals_the_one_sent_first_gives_the_time(maren, clock) -> None:
    """Two of the crew disagree: the one who sent first counts, whatever time it names."""
    t = maren(
        (K.IN, "6:00", {**MILL, "id": "a", "sent_at": clock("6:20")}),
        (K.IN, "6:03", {**MILL, "id": "b", "sent_at": clock("6:04")}),
    ).at_point("mill")
    assert t.arrived.entry == "b"


def test_out_before_in_never_gives_a_negative_stop(maren, clock) -> None:
    """The less trusted time gives way, the difference becomes its spread, and she has left."""
    state = maren((K.IN, "6:05", {**MILL, "source": Source.TIMING_MAT}), (K.OUT, "6:03", MILL))
    t = state.at_point("mill")
    assert (t.arrived.at, t.left.at, t.left.spread) == (clock("6:05"), clock("6:05"), timedelta(minutes=2))
    assert state.going is Going.MOVING


def test_the_trusted_time_wins_whichever_it_is(maren, clock) -> None:
    """A mat's 'out' before the crew's 'in': both are at the mat's time."""
    t = maren((K.IN, "6:05", MILL), (K.OUT, "6:03", {**MILL, "source": Source.TIMING_MAT})).at_point("mill")
    assert (t.arrived.at, t.left.at, t.arrived.spread) == (clock("6:03"), clock("6:03"), timedelta(minutes=2))


def test_through_is_in_and_out(maren, clock) -> None:
    """'Through' gives both times and says that she did not stay."""
    t = maren((K.THROUGH, "6:00", MILL)).at_point("mill")
    assert (t.arrived.at, t.left.at, t.through) == (clock("6:00"), clock("6:00"), True)


def test_later_points_imply_earlier_ones(maren) -> None:
    """In at the third point: the earlier ones were reached, and no time is invented for them."""
    state = maren((K.IN, "14:00", MOSS))
    assert state.reached == ("start", "mill", "chapel", "moss")
    assert [(t.implied, t.arrived) for t in state.times[:3]] == [(True, None)] * 3


def test_a_position_implies_the_points_well_behind_it(maren) -> None:
    """At km 46 the points up to km 45 were reached; km 45.2 does not say so of km 45."""
    assert maren((K.POSITION, "10:00", {"fix": Fix(0.46, 0)})).reached == ("start", "mill", "chapel")
    assert maren((K.POSITION, "10:00", {"fix": Fix(0.452, 0)})).reached == ("start", "mill")


def test_rests(maren, clock) -> None:
    """A rest begins with 'resting' and ends with 'moving again' or the next progress."""
    state = maren(
        (K.RESTING, "7:00"),
        (K.MOVING_AGAIN, "7:20"),
        (K.IN, "8:00", CHAPEL),
        (K.RESTING, "8:05", {"amount": timedelta(minutes=90)}),
    )
    assert state.rests == (Interval(clock("7:00"), clock("7:20")), Interval(clock("8:05"), None))
    assert state.rest_until == clock("9:35")
    after_it = maren((K.IN, "8:00", CHAPEL), (K.RESTING, "8:05"), (K.OUT, "9:00", CHAPEL))
    assert after_it.rests == (Interval(clock("8:05"), clock("9:00")),)


def test_contact_lost_until_heard_again(maren) -> None:
    """The end of a live location is noted, and is over as soon as anything is heard."""
    assert maren((K.CONTACT_LOST, "7:00")).contact_lost is not None
    assert maren((K.CONTACT_LOST, "7:00"), (K.IN, "8:00", CHAPEL)).contact_lost is None


def test_help_counts_unconfirmed_and_says_nothing_of_her_place(maren) -> None:
    """A guessed cry for help is open at once; as a place it is not yet a fact."""
    state = maren((K.ASKED_FOR_HELP, "9:00", {"unconfirmed": True, "fix": Fix(0.5, 0), "id": "h"}))
    assert state.help_open is not None
    assert state.help_open.id == "h"
    assert state.last_known is None
    assert state.unconfirmed == ()


@pytest.mark.parametrize(
    ("more", "still_open"),
    [
        ([(K.STAND_DOWN, "10:00", {"about": "h"})], []),
        ([(K.STAND_DOWN, "10:00", {"about": "notice-7"})], []),
        ([(K.IN_HAND, "10:00")], []),
        ([(K.STAND_DOWN, "8:00")], ["h", "g"]),
        ([(K.TAKEN_BACK, "9:05", {"about": "h"})], ["g"]),
        ([(K.IN, "10:00", CHAPEL)], ["h", "g"]),
        ([(K.STAND_DOWN, "10:00", {"unconfirmed": True})], ["h", "g"]),
    ],
)
def test_what_ends_a_request_for_help(maren, more, still_open) -> None:
    """Stand-down, in hand or taking it back end it; a sighting or an unconfirmed word does not."""
    asked = [(K.ASKED_FOR_HELP, "9:00", {"id": "h"}), (K.ASKED_FOR_HELP, "9:30", {"id": "g"})]
    assert [h.id for h in maren(*asked, *more).helps_open] == still_open


def test_a_stand_down_ends_no_call_that_was_still_under_way(maren, clock) -> None:
    """Whoever ended the alarm had not read it: a call written before and received after stays open."""
    offline = (K.ASKED_FOR_HELP, "9:30", {"id": "g", "received_at": clock("10:20")})
    state = maren((K.ASKED_FOR_HELP, "9:00", {"id": "h"}), offline, (K.STAND_DOWN, "10:00"))
    assert [h.id for h in state.helps_open] == ["g"]


def test_what_comes_in_meanwhile_is_kept_while_a_call_is_open(maren, clock) -> None:
    """In the order in which it came, from the first open call on; nothing once somebody has her."""
    before, after = (K.HOW_SHE_IS, "8:50", {"words": "fine", "id": "b"}), (K.HELP_WORD, "9:20", {"id": "w"})
    call = (K.ASKED_FOR_HELP, "9:00", {"id": "h"})
    late = (K.POSITION, "8:58", {"fix": Fix(0.3, 0), "id": "p", "received_at": clock("9:30")})
    assert [e.id for e in maren(before, call, after, late).meanwhile] == ["h", "w", "p"]
    assert maren(before, call, after, late, (K.IN_HAND, "9:40")).meanwhile == ()


def test_who_had_her_when_she_called_answers_nothing(maren) -> None:
    """Only 'in hand' of a moment after the call answers it, closed or not; and says which entry that was."""
    over = ((K.IN, "23:00", FINISH), (K.IN_HAND, "23:05"))
    call, hand = (K.ASKED_FOR_HELP, "23:30", {"id": "h"}), (K.IN_HAND, "23:40", {"id": "again"})
    assert maren(*over, call, now=NIGHT).helps_in_hand == ()
    assert [h.id for h in maren(*over, call, now=NIGHT).helps_open] == ["h"]
    after = maren(*over, call, hand, now=NIGHT)
    assert (after.going, after.helps_open) == (Going.CLOSED, ())
    assert [(h, s.entry) for h, s in after.helps_in_hand] == [("h", "again")]


def test_last_known_is_the_last_confirmed_place(maren, clock) -> None:
    """By seen time, not by when it came in; a report not yet confirmed does not move it."""
    state = maren(
        (K.OUT, "7:00", MILL),
        (K.IN, "6:50", {**MILL, "received_at": clock("12:00")}),
        (K.IN, "9:00", {**CHAPEL, "unconfirmed": True, "received_at": clock("13:00")}),
    )
    assert (state.last_known.kind, state.last_known.km) == ("out", 20.0)
    assert state.last_heard == clock("12:00")
    assert [e.point for e in state.unconfirmed] == ["chapel"]


def test_confirming_makes_it_fact_and_taking_that_back_undoes_it(maren) -> None:
    """Unconfirmed, confirmed, the confirmation taken back, that again: folded only while confirmed."""
    doubted = (K.IN, "9:00", {**CHAPEL, "unconfirmed": True, "id": "x"})
    yes = (K.CONFIRMED, "9:10", {"about": "x", "id": "c"})
    undo = (K.TAKEN_BACK, "9:20", {"about": "c", "id": "u"})
    redo = (K.TAKEN_BACK, "9:30", {"about": "u", "id": "r"})
    assert maren(doubted).going is Going.MOVING
    assert maren(doubted, yes).going is Going.AT_POINT
    assert maren(doubted, yes).last_known.point == "chapel"
    assert maren(doubted, yes, undo).going is Going.MOVING
    assert maren(doubted, yes, undo, redo).going is Going.AT_POINT


def test_a_rejected_doubt_is_asked_about_no_more(maren) -> None:
    """An unconfirmed entry that was taken back is neither folded nor listed."""
    state = maren(
        (K.IN, "9:00", {**CHAPEL, "unconfirmed": True, "id": "x"}), (K.TAKEN_BACK, "9:10", {"about": "x"})
    )
    assert (state.unconfirmed, state.going) == ((), Going.MOVING)


def test_undoing_retired_starts_the_watch_again(maren) -> None:
    """'Retired' and 'finished' taken back: she is out there again; taken back in turn, she is not."""
    gone = (K.RETIRED, "9:00", {"id": "x"})
    undo = (K.TAKEN_BACK, "9:20", {"about": "x", "id": "u"})
    assert maren(gone, undo).going is Going.MOVING
    assert maren(gone, undo).retirement is None
    assert maren(gone, undo, (K.TAKEN_BACK, "9:30", {"about": "u"})).going is Going.RETIRED
    done = (K.IN, "9:00", {**FINISH, "id": "x"})
    assert maren(done, (K.IN_HAND, "9:05"), undo).going is Going.MOVING


@pytest.mark.parametrize("name", ["first", "key-of-first"])
def test_a_correction_names_an_id_or_a_key_of_its_sender(entry, event, clock, name) -> None:
    """Both ways replace; a key of another sender does not."""
    first = entry(K.IN, "6:00", point="mill", id="first", key="key-of-first")
    better = entry(K.IN, "6:30", point="mill", id="better", replaces=name)
    state = fold([better, first], event, clock(NIGHT)).runner("maren")
    assert state.at_point("mill").arrived.at == clock("6:30")
    assert state.at_point("mill").also_arrived == ()
    stranger = replace(better, replaces="key-of-first", sender="other", id="other", source=Source.RUNNER)
    state = fold([stranger, first], event, clock(NIGHT)).runner("maren")
    assert state.at_point("mill").arrived.entry == "first"


def test_an_unconfirmed_correction_waits(entry, event, clock) -> None:
    """Until somebody confirms a doubtful correction the first report holds."""
    first = entry(K.IN, "6:00", point="mill", id="first")
    better = entry(K.IN, "6:30", point="mill", id="better", replaces="first", unconfirmed=True)
    state = fold([better, first], event, clock(NIGHT)).runner("maren")
    assert state.at_point("mill").arrived.entry == "first"
    assert state.unconfirmed == (better,)


def test_a_second_correction_brings_back_no_first_report(entry, event, clock) -> None:
    """'Out 6:22', '20, not 22', '19 sorry': one is left; the third taken back, it is the second, and never the first."""
    first = entry(K.OUT, "6:22", point="mill", id="first")
    second = entry(K.OUT, "6:20", point="mill", id="second", replaces="first")
    third = entry(K.OUT, "6:19", point="mill", id="third", replaces="second")
    back = entry(K.TAKEN_BACK, "6:40", id="back", about="third")
    for said, left in (([third, first, second], "third"), ([back, second, third, first], "second")):
        times = fold(said, event, clock(NIGHT)).runner("maren").at_point("mill")
        assert times.left.entry == left
        assert times.also_left == ()


def test_a_ring_of_corrections_has_a_last_word(entry, event, clock) -> None:
    """Two entries that replace each other: the one sent last counts."""
    a = entry(K.IN, "6:00", point="mill", id="a", replaces="b")
    b = entry(K.IN, "6:30", point="mill", id="b", replaces="a")
    for pair in ([a, b], [b, a]):
        assert fold(pair, event, clock(NIGHT)).runner("maren").at_point("mill").arrived.entry == "b"


def test_confirming_each_other_confirms_nothing(entry, event, clock) -> None:
    """Two unconfirmed confirmations of each other stay unconfirmed."""
    a = entry(K.CONFIRMED, "6:00", about="b", id="a", unconfirmed=True)
    b = entry(K.CONFIRMED, "6:30", about="a", id="b", unconfirmed=True)
    assert len(fold([a, b], event, clock(NIGHT)).runner("maren").unconfirmed) == 2


def test_the_same_key_counts_once_and_other_content_is_a_conflict(entry, event, clock) -> None:
    """Sent again with the same key: once. With another time under it: the first received holds, listed."""
    first = entry(K.IN, "6:00", point="mill", id="first", key="k")
    again = replace(first, id="again", sent_at=clock("6:10"), received_at=clock("6:10"))
    other = replace(first, id="other", seen_at=clock("6:09"), received_at=clock("6:11"))
    state = fold([other, again, first], event, clock(NIGHT))
    assert state.conflicts == (("first", "other"),)
    assert state.runner("maren").folded == ("first",)


def test_taking_back_a_repeat_takes_back_what_it_repeats(entry, event, clock) -> None:
    """The id given to a repeated sending leads to the entry that counts."""
    first = entry(K.IN, "6:00", point="mill", id="first", key="k")
    again = replace(first, id="again", received_at=clock("6:10"))
    undo = entry(K.TAKEN_BACK, "6:12", about="again")
    assert fold([first, again, undo], event, clock(NIGHT)).runner("maren").times == ()


def test_the_future_is_kept_and_marked_until_it_comes(maren) -> None:
    """A seen time past `now` is listed, not folded; later the same entry counts."""
    row = (K.IN, "8:00", CHAPEL)
    early = maren(row, now="7:59")
    assert (len(early.future), early.going, early.last_heard) == (1, Going.MOVING, None)
    assert maren(row, now="8:00").going is Going.AT_POINT


def test_a_call_for_help_waits_for_no_clock(maren) -> None:
    """Her telephone is ahead, or ours was put back since: she is helped now."""
    state = maren((K.IN, "6:00", MILL), (K.ASKED_FOR_HELP, "9:00"), now="7:00")
    assert state.help_open is not None
    assert state.future == ()


def test_an_undo_seen_in_the_future_undoes_nothing_yet(maren) -> None:
    """A wrong clock on a phone must not hide what is known."""
    rows = [(K.IN, "8:00", {**CHAPEL, "id": "x"}), (K.TAKEN_BACK, "9:00", {"about": "x"})]
    assert maren(*rows, now="8:30").going is Going.AT_POINT
    assert maren(*rows, now="9:00").going is Going.MOVING


RACE = {"runner": None, "source": Source.VOLUNTEER}
HALF = timedelta(minutes=30)


@pytest.mark.parametrize(
    ("rows", "maren_starts", "ines_starts"),
    [
        ([], "4:00", "4:30"),
        ([(K.START_DELAYED, "3:00", {"amount": HALF})], "4:30", "5:00"),
        ([(K.START_DELAYED, "3:00", {"amount": HALF}), (K.START_DELAYED, "4:10", {"amount": 2 * HALF})],
         "5:00", "5:30"),
        ([(K.START_DELAYED, "3:00", {"until": "5:15"})], "5:15", "5:45"),
        ([(K.WAVE_MOVED, "3:00", {"wave": "B", "until": "6:00"})], "4:00", "6:00"),
        ([(K.WAVE_MOVED, "3:00", {"wave": "B", "amount": HALF})], "4:00", "5:00"),
        ([(K.WAVE_MOVED, "3:00", {"wave": "B", "until": "6:00"}),
          (K.START_DELAYED, "3:30", {"amount": HALF})], "4:30", "6:30"),
        ([(K.START_DELAYED, "3:00", {"amount": HALF}),
          (K.WAVE_MOVED, "3:30", {"wave": "B", "until": "6:00"})], "4:30", "6:00"),
        ([(K.START_DELAYED, "3:00", {"runner": "ines", "until": "6:15"})], "4:00", "6:15"),
    ],
)  # fmt: skip
def test_starts_move(entry, event, clock, rows, maren_starts, ines_starts) -> None:
    """Delays and waves move the starts of those they concern, by amount or to a time."""
    entries = []
    for kind, when, more in rows:
        until = {"until": clock(more["until"])} if "until" in more else {}
        entries.append(entry(kind, when, **{**RACE, **more, **until}))
    state = fold(entries, event, clock("3:50"))
    state = fold(entries, event, clock("4:20")) if state.future else state
    assert state.runner("maren").start == clock(maren_starts)
    assert state.runner("ines").start == clock(ines_starts)


def test_holds(entry, event, clock) -> None:
    """Held for all, at a point, for one; released ends what it covers; a point holds who is there."""
    rows = [
        entry(K.IN, "6:00", point="mill"),
        entry(K.HELD, "6:10", point="mill", **RACE),
        entry(K.RELEASED, "6:40", point="mill", **RACE),
        entry(K.HELD, "8:00", until=clock("8:30"), **RACE),
        entry(K.HELD, "8:20", until=clock("9:00"), **RACE),
        entry(K.HELD, "10:00", runner="ines"),
    ]
    state = fold(rows, event, clock("11:00"))
    mill, night = Interval(clock("6:10"), clock("6:40")), Interval(clock("8:00"), clock("9:00"))
    assert state.held == (night,)
    assert state.runner("maren").held == (mill, night)
    assert state.runner("ines").held == (night, Interval(clock("10:00"), None))
    other = entry(K.RELEASED, "10:20", point="moss", runner=None)
    assert fold([*rows, other], event, clock("11:00")).runner("ines").held[-1].end is None
    free = fold([*rows, entry(K.RELEASED, "10:30", **RACE)], event, clock("11:00"))
    assert free.runner("ines").held[-1].end == clock("10:30")


def test_a_held_point_holds_from_when_she_comes(entry, event, clock) -> None:
    """Held at the mill before she is there: she is held from her arrival on, and not at all if she has left
    or the hold is over by then."""
    hold = entry(K.HELD, "6:00", point="mill", until=clock("7:00"), **RACE)

    def held(*reports):
        rows = [hold, *(entry(k, when, point="mill") for k, when in reports)]
        return fold(rows, event, clock("11:00")).runner("maren").held

    assert held() == ()
    assert held((K.IN, "6:30")) == (Interval(clock("6:30"), clock("7:00")),)
    assert held((K.IN, "5:30"), (K.OUT, "5:50")) == ()
    assert held((K.IN, "7:30")) == ()


def test_the_rest_of_the_race(entry, event, clock) -> None:
    """Cut-offs moved by time or amount, access closed and opened, crew there, drives, answers, awake."""
    rows = [
        entry(K.CUT_OFF_MOVED, "5:00", point="chapel", edge="out", amount=HALF, **RACE),
        entry(K.CUT_OFF_MOVED, "5:00", point="moss", edge="in", until=clock("22:00"), **RACE),
        entry(K.ACCESS_CLOSED, "5:00", point="mill", **RACE),
        entry(K.ACCESS_CLOSED, "5:00", point="moss", **RACE),
        entry(K.ACCESS_OPENED, "6:00", point="moss", **RACE),
        entry(K.CREW_THERE, "5:40", point="mill", person="jonas"),
        entry(K.CREW_LEFT, "6:40", point="mill"),
        entry(K.RACE_ENDED_EARLY, "20:00", **RACE),
        entry(K.REROUTED, "9:00", words="by the lower path", **RACE),
        entry(K.DRIVE_CONFIRMED, "5:00", words="mill>chapel 35", **RACE),
        entry(K.ANSWERED, "5:00", about="notice-1", **RACE),
        entry(K.AWAKE, "5:00", **RACE),
        entry(K.IN, "5:00", point="mill", runner="nobody"),
    ]
    state = fold(rows, event, clock(NIGHT))
    assert state.cut_offs_moved == (
        ("chapel", "out", clock("18:30")),
        ("moss", "in", clock("22:00")),
    )
    assert state.access_closed == ("mill",)
    assert [(p, who) for p, who, _ in state.crew_there] == [("mill", "jonas")]
    assert [(p, who) for p, who, _ in state.crew_left] == [("mill", "ana")]
    assert state.ended_early.at == clock("20:00")
    assert [len(x) for x in (state.rerouted, state.drives_confirmed, state.answers)] == [1, 1, 1]
    assert state.awake == (("ana", clock("5:00")),)
    assert [e.runner for e in state.refused] == ["nobody"]


def test_sweep_through_without_a_runner_concerns_all(entry, event, clock) -> None:
    """One word about the sweep is kept for every runner."""
    state = fold([entry(K.SWEEP_THROUGH, "9:00", point="mill", **RACE)], event, clock(NIGHT))
    assert [r.sweep_through[0][0] for r in state.runners] == ["mill", "mill"]


def test_entries_of_other_events_are_passed_over(entry, event, clock) -> None:
    """A journal that holds several events folds only this one."""
    state = fold([entry(K.IN, "6:00", point="mill", event="other")], event, clock(NIGHT))
    assert state == fold([], event, clock(NIGHT))


def test_five_thousand_positions_in_well_under_a_second(entry, event, clock, placer) -> None:
    """A day of a tracker at one position each 17 s folds in about a second of CPU; ten are allowed a slow machine."""
    first = clock("4:00")
    rows = [
        entry(
            K.POSITION, first + timedelta(seconds=17 * i), fix=Fix(i / 5000, 0), id=f"p{i}",
            source=Source.TRACKER,
        )
        for i in range(5000)
    ]  # fmt: skip
    began = time.process_time()
    state = fold(rows, event, clock(NIGHT), placer).runner("maren")
    assert time.process_time() - began < 10.0
    assert len(state.positions) == 5000


def test_the_table_is_whole() -> None:
    """Every state has a row, and every row leads to a state with a row."""
    assert set(TABLE) == set(Going)
    assert {then for row in TABLE.values() for then in row.values()} <= set(TABLE)


def test_nothing_but_taking_back_leads_out_of_an_end() -> None:
    """No step leads from finished, retired or in hand back onto the course, but being seen after 'did not start'."""
    out_there = {Going.MOVING, Going.AT_POINT, Going.RESTING, Going.BEFORE_START}
    ends = (Going.FINISHED, Going.RETIRED, Going.IN_HAND, Going.CLOSED)
    back = {step for end in ends for step in Step if after(end, step) in out_there}
    assert back == {Step.STARTED_AFTER_ALL}


def test_words_of_a_rest_and_of_a_retirement_are_kept(maren) -> None:
    """'Sitting on a wall, feel sick' says how she is as much as that she rests; taken back, it says nothing."""
    sick, knee = {"words": "sitting on a wall feel sick", "id": "rest"}, {"words": "my knee"}
    rows = [(K.RESTING, "7:00"), (K.RESTING, "7:10", sick), (K.HOW_SHE_IS, "7:20", {"words": "better"})]
    state = maren(*rows, (K.RETIRED, "9:00", knee))
    assert [e.words for e in state.how_she_is] == ["sitting on a wall feel sick", "better"]
    assert state.retirement.words == "my knee"
    back = maren(*rows, (K.TAKEN_BACK, "7:30", {"about": "rest"}))
    assert [e.words for e in back.how_she_is] == ["better"]
