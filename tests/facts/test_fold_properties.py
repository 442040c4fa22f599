"""The fold under any order, doubling and lateness: one outcome."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from server.facts.conflict_resolution import counted
from server.facts.entry import Entry, Fix, Kind, Retired, Source
from server.facts.fold import fold
from server.facts.folding import Folding
from server.facts.state import Going
from server.facts.status import TABLE

POINTS = ("start", "mill", "chapel", "moss", "finish", "nowhere", None)
BUSY = (Kind.IN, Kind.OUT, Kind.THROUGH, Kind.POSITION, Kind.TAKEN_BACK, Kind.CONFIRMED, Kind.RETIRED)
quick = settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


@st.composite
def journals(draw: st.DrawFn, kinds: tuple[Kind, ...] = (*BUSY, *Kind)) -> list[tuple]:
    """Rows of plain values: any kinds in any order, links among them, keys that clash now and then."""
    n = draw(st.integers(0, 14))
    names = [f"e{i}" for i in range(n)]
    maybe_name = st.none() | st.sampled_from(names or ["e0"])
    return [
        (
            draw(st.sampled_from(kinds)),
            draw(st.integers(0, 160)),
            {
                "id": name,
                "key": draw(st.sampled_from([name, name, name, "shared"])),
                "sender": draw(st.sampled_from(["ana-phone", "mat"])),
                "runner": draw(st.sampled_from(["maren", "maren", "maren", "ines", None])),
                "source": draw(st.sampled_from(Source)),
                "point": draw(st.sampled_from(POINTS)),
                "unconfirmed": draw(st.sampled_from([False, False, False, True])),
                "about": draw(maybe_name),
                "replaces": draw(st.none() | maybe_name),
                "how": draw(st.none() | st.sampled_from(Retired)),
                "fix": draw(st.none() | st.builds(Fix, st.floats(0, 1), st.floats(0, 0.1))),
                "amount": draw(st.none() | st.just(timedelta(minutes=30))),
                "late": draw(st.integers(0, 300)),
                "edge": draw(st.sampled_from([None, "in", "out"])),
                "wave": draw(st.sampled_from([None, "B"])),
            },
        )
        for name in names
    ]


def build(entry, clock, rows) -> list[Entry]:
    """Entries from rows, ten minutes a tick from 02:00, received late by so many minutes."""
    out = []
    for kind, tick, fields in rows:
        more = dict(fields)
        seen = clock("2:00") + timedelta(minutes=10 * tick)
        late = timedelta(minutes=more.pop("late"))
        out.append(entry(kind, seen, sent_at=seen, received_at=seen + late, **more))
    return out


@quick
@given(rows=journals(), data=st.data())
def test_any_order_and_any_doubling_end_in_one_state(entry, event, clock, placer, rows, data) -> None:
    """Shuffled, with some entries given again (also under a new id, as a repeat that was sent later)."""
    entries = build(entry, clock, rows)
    now = clock("20:00")
    expected = fold(entries, event, now, placer)
    shuffled = data.draw(st.permutations(entries))
    doubles = data.draw(st.lists(st.sampled_from(entries), max_size=5)) if entries else []
    assert fold([*shuffled, *doubles], event, now, placer) == expected


@quick
@given(rows=journals(), data=st.data())
def test_a_repeat_under_a_new_id_changes_nothing(entry, event, clock, placer, rows, data) -> None:
    """The same sender, key and content received again later: the same state, the same head."""
    entries = build(entry, clock, rows)
    if not entries:
        return
    now = clock("20:00")
    chosen = data.draw(st.sampled_from(entries))
    again = replace(chosen, id="zz", received_at=chosen.received_at + timedelta(days=1))
    if chosen.key == "shared":
        return  # a key that clashes: the repeat is of whichever was kept
    assert fold([again, *entries], event, now, placer) == fold(entries, event, now, placer)


@quick
@given(rows=journals(), asked=st.lists(st.tuples(st.integers(0, 14), st.integers(-120, 1600)), max_size=6))
def test_a_fold_that_grows_ends_as_the_whole(entry, event, clock, placer, rows, asked) -> None:
    """Entries added one by one, and the state asked for in between, at times in any order: what it ends in depends on the
    entries alone, and so does every state on the way."""
    entries = build(entry, clock, rows)
    folding, moments = Folding(event, placer), dict(asked)
    for n, e in enumerate(entries):
        folding.add([e])
        if n in moments:
            at = event.starts + timedelta(minutes=moments[n])
            assert folding.at(at) == fold(entries[: n + 1], event, at, placer)
    now = clock("20:00")
    assert folding.at(now) == fold(entries[::-1], event, now, placer)
    assert folding.at(now) is folding.at(now)


@quick
@given(rows=journals(), data=st.data())
def test_an_undo_undone_is_as_if_neither_had_been(entry, event, clock, placer, rows, data) -> None:
    """Taking back and taking that back leaves every fact about the runners as it was."""
    entries = build(entry, clock, rows)
    if not entries:
        return
    now = clock("30:00")
    about = data.draw(st.sampled_from(entries)).id
    undo = entry(Kind.TAKEN_BACK, "28:00", about=about, id="undo", runner=None)
    redo = entry(Kind.TAKEN_BACK, "28:10", about="undo", id="redo", runner=None)
    before, after = fold(entries, event, now, placer), fold([redo, *entries, undo], event, now, placer)
    assert after.runners == before.runners
    assert after == before


@quick
@given(rows=journals(kinds=tuple(k for k in Kind if k not in (Kind.TAKEN_BACK, Kind.CONFIRMED))))
def test_taken_back_is_as_never_said(entry, event, clock, placer, rows) -> None:
    """Taking every entry back leaves the runners as with no entry at all."""
    entries = [replace(e, replaces=None, key=e.id) for e in build(entry, clock, rows)]
    undo = [entry(Kind.TAKEN_BACK, "19:00", about=e.id, id=f"undo-{e.id}", runner=None) for e in entries]
    now = clock("20:00")
    assert fold([*undo, *entries], event, now, placer).runners == fold([], event, now, placer).runners


@quick
@given(rows=journals())
def test_every_entry_ends_in_one_place(entry, event, clock, placer, rows) -> None:
    """Counted, future, unconfirmed, in conflict or cancelled: never two of them, never a negative stop."""
    entries = build(entry, clock, rows)
    c = counted(entries, clock("20:00"))
    ids = [e.id for part in (c.counts, c.future, c.unconfirmed) for e in part]
    assert len(ids) == len(set(ids))
    state = fold(entries, event, clock("20:00"), placer)
    for r in state.runners:
        assert r.going in TABLE
        assert not set(r.folded) & {e.id for e in r.refused}
        for t in r.times:
            assert t.arrived is None or t.left is None or t.left.at >= t.arrived.at
            assert t.implied == (t.arrived is None and t.left is None)
        assert all(i.end is None or i.end >= i.start for i in r.rests)
        assert all(e.seen_at > clock("20:00") for e in r.future)
        if r.going is Going.RETIRED:
            assert r.retirement is not None


@quick
@given(rows=journals(), minutes=st.integers(0, 1600))
def test_only_what_was_seen_by_now_counts(entry, event, clock, placer, rows, minutes) -> None:
    """At an earlier `now`, leaving out what is seen later, but for calls for help, gives the same runners but for the
    marks."""
    entries = build(entry, clock, rows)
    now = clock("2:00") + timedelta(minutes=minutes)
    whole = fold(entries, event, now, placer)
    keys = [e.key for e in entries]
    if len(set(keys)) < len(keys):
        return  # of two entries under one key the one kept may be a later one
    been = [e for e in entries if e.seen_at <= now or e.kind is Kind.ASKED_FOR_HELP]
    seen = fold(been, event, now, placer)
    assert [replace(r, future=()) for r in whole.runners] == list(seen.runners)


@quick
@given(
    said=st.lists(st.sampled_from([Kind.RESTING, Kind.MOVING_AGAIN]), min_size=1, max_size=12),
    cut_offs=st.lists(st.integers(600, 900), min_size=1, max_size=12),
    ids=st.randoms(use_true_random=False),
    data=st.data(),
)
def test_of_one_moment_the_last_told_holds(entry, event, clock, placer, said, cut_offs, ids, data) -> None:
    """One message says several things of one minute, as does the organiser: whatever ids they got and in whatever order
    they are read, they fold as they were told."""
    now = clock("20:00")
    names = [f"{ids.getrandbits(64):016x}" for _ in range(len(said) + len(cut_offs))]
    entries = [
        entry(kind, "8:00", id=names.pop(), key="u.77" if i == 0 else f"u.77.{i}")
        for i, kind in enumerate(said)
    ]
    untils = [clock("2:00") + timedelta(minutes=m) for m in cut_offs]
    entries += [
        entry(Kind.CUT_OFF_MOVED, "8:00", id=names.pop(), key=f"c.{i}", runner=None, point="chapel", until=u)
        for i, u in enumerate(untils)
    ]
    state = fold(data.draw(st.permutations(entries)), event, now, placer)
    last = Going.RESTING if said[-1] is Kind.RESTING else Going.MOVING
    assert state.runner("maren").going is last
    assert {at for _, _, at in state.cut_offs_moved} == {untils[-1]}


@quick
@given(minutes=st.lists(st.integers(0, 30), min_size=2, max_size=8, unique=True), data=st.data())
def test_of_one_moment_what_was_sent_later_holds(entry, event, clock, placer, minutes, data) -> None:
    """Two messages about one minute: the one sent later says how it is, also where both came in late and crossed."""
    kinds = [data.draw(st.sampled_from([Kind.RESTING, Kind.MOVING_AGAIN])) for _ in minutes]
    entries = [
        entry(
            kind,
            "8:00",
            id=f"{data.draw(st.integers(0, 2**32))}-{m}",
            sent_at=clock("8:00") + timedelta(minutes=m),
            received_at=clock("9:00") - timedelta(minutes=m),
        )
        for kind, m in zip(kinds, minutes, strict=True)
    ]
    state = fold(data.draw(st.permutations(entries)), event, clock("20:00"), placer)
    last = kinds[minutes.index(max(minutes))]
    assert state.runner("maren").going is (Going.RESTING if last is Kind.RESTING else Going.MOVING)
