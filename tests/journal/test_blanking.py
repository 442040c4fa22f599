"""Deletion: positions, words, pictures, addresses gone; times and points stay; never during an alarm."""

from __future__ import annotations

import base64
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from server.event.model import Event
from server.facts.entry import Entry, Fix, Kind
from server.facts.state import LastKnown
from server.journal import Journal, Outcome, RefusedError, Status, UnknownError
from server.watch.notice import AlarmValues, Notice, NoticeKind, PassedOnValues, StandDownValues, Urgency

SECRET = "Fuchsbau-4711"
MakeEntry = Callable[..., Entry]
MakeNotice = Callable[..., Notice]


def alarm(start: datetime) -> AlarmValues:
    """An alarm that says where she was last, in words and degrees."""
    known = LastKnown("e-1", "in", "mill", 21.3, Fix(54.123456, -2.2), start, "ana", start)
    return AlarmValues(
        "a1", "overdue", "mill", known, None, None, (54.123456, -2.2), (), (), None, None, 1, SECRET
    )


async def fill(loaded: Journal, entry: MakeEntry, notice: MakeNotice, start: datetime) -> None:
    """Her position, words about her, a conflict, a picture, a delivered notice, an answer, a raw update."""
    await loaded.append(entry("pos", kind=Kind.POSITION, by="maren", fix=Fix(54.123456, -2.2), words=SECRET))
    await loaded.append(entry("pos", kind=Kind.POSITION, by="maren", fix=Fix(54.123456, -2.3), words=SECRET))
    await loaded.append(entry("note", kind=Kind.NOTE, runner=None, words="by Tomas", by="tomas"))
    await loaded.keep_picture("long-stile", None, "maren", SECRET.encode(), "image/png", start)
    await loaded.add_notices(
        [notice("tomas", kind=NoticeKind.OVERDUE, values=alarm(start), urgency=Urgency.ALARM)], start
    )
    [claimed] = await loaded.claim(["telegram"], start)
    await loaded.report(claimed.id, Outcome.SENT, start, text=SECRET, detail=SECRET)
    await loaded.answer("long-stile", 1, "tomas", SECRET, start)
    await loaded.bind("maren", "telegram", "444", start)
    await loaded.store_updates("telegram", [(1, f'{{"chat": 444, "text": "{SECRET}"}}')], start)
    [update] = await loaded.next_updates("telegram", start)
    await loaded.update_done(update.id, start)


async def stand_down(loaded: Journal, notice: MakeNotice, start: datetime) -> None:
    """End the alarm."""
    over = StandDownValues("a1", "overdue", "seen", "ana", start)
    await loaded.add_notices([notice("tomas", kind=NoticeKind.STAND_DOWN, values=over)], start)


async def everything(journal: Journal, tmp_path: Path) -> str:
    """All that the database holds, as text, pictures decoded."""
    path = tmp_path / "all.jsonl"
    await journal.dump(path)
    return path.read_text()


async def test_refused_during_an_alarm(
    loaded: Journal, entry: MakeEntry, notice: MakeNotice, start: datetime
) -> None:
    """While an alarm is open nothing is blanked, and the reason is given; stand-down frees it."""
    await fill(loaded, entry, notice, start)
    for person in ("maren", "jonas"):
        with pytest.raises(RefusedError, match=r"alarm is open .*a1"):
            await loaded.blank_person(person, start)
    with pytest.raises(RefusedError, match="stand-down"):
        await loaded.blank_event("long-stile", start)
    entries = await loaded.entries("long-stile")
    assert entries[0].words == SECRET
    await loaded.append(entry("sd", kind=Kind.STAND_DOWN, about="a1"))
    await loaded.blank_person("jonas", start)


async def test_a_person(
    loaded: Journal, entry: MakeEntry, notice: MakeNotice, start: datetime, tmp_path: Path
) -> None:
    """Nothing she wrote, no place she was, no way to reach her is left anywhere; what others did is."""
    await fill(loaded, entry, notice, start)
    await stand_down(loaded, notice, start)
    token = await loaded.issue_token("maren", "phone", [], start)
    head = await loaded.head("long-stile")
    assert "54.123456" in await everything(loaded, tmp_path)
    (tmp_path / "all.jsonl").unlink()
    done = await loaded.blank_person("maren", start)
    assert (done.entries, done.pictures, done.updates, done.notices) == (1, 1, 1, 2)
    assert [v.version for v in done.texts_left] == [1], "the file still names her, and that is said"
    left = await everything(loaded, tmp_path)
    for gone in (SECRET, "54.123456", '"444"', "Maren"):
        assert gone not in left
    first, second = await loaded.entries("long-stile")
    assert (first.point, first.fix, first.words) == ("mill", None, "")
    assert second.words == "by Tomas"
    assert await loaded.check_token(token, start) is None
    assert await loaded.addresses("maren") == ()
    assert await loaded.head("long-stile") != head, "caches must notice"
    resent = entry("pos", kind=Kind.POSITION, by="maren", fix=Fix(54.123456, -2.2), words=SECRET)
    assert (await loaded.append(resent)).status is Status.SAME_AGAIN
    with pytest.raises(UnknownError, match="no person"):
        await loaded.blank_person("nobody", start)


async def test_an_event(
    loaded: Journal, event: Event, entry: MakeEntry, notice: MakeNotice, start: datetime, tmp_path: Path
) -> None:
    """The same for all; the text is rewritten by whoever knows how, or emptied; points and times stay."""
    await fill(loaded, entry, notice, start)
    await stand_down(loaded, notice, start)
    await loaded.blank_event("long-stile", start, lambda text: text.upper())
    assert (await loaded.load_event("long-stile")).text == '[EVENT]\nNAME = "THE LONG STILE HUNDRED"\n'
    await loaded.blank_event("long-stile", start)
    assert (await loaded.load_event("long-stile")).text == ""
    left = await everything(loaded, tmp_path)
    for gone in (SECRET, "54.123456", '"444"', "by Tomas", "Maren", "1632"):
        assert gone not in left
    assert [(e.point, e.seen_at) for e in await loaded.entries("long-stile")] == [
        ("mill", start + timedelta(hours=3)),
        ("mill", start + timedelta(hours=3)),
    ]


@pytest.mark.parametrize(("seconds", "due"), [(-1, False), (0, True), (1, True)])
async def test_keep_by(loaded: Journal, start: datetime, seconds: int, due: bool) -> None:
    """At its keep-by moment an event is blanked, not before, and once."""
    at = start + timedelta(days=90, seconds=seconds)
    assert (await loaded.sweep(at)).blanked == (("long-stile",) if due else ())
    assert (await loaded.sweep(at)).blanked == ()


async def test_keep_by_waits_for_stand_down(loaded: Journal, notice: MakeNotice, start: datetime) -> None:
    """An open alarm makes the sweep wait, and it says so; afterwards it happens by itself."""
    late = start + timedelta(days=91)
    values = alarm(start)
    await loaded.add_notices([notice(kind=NoticeKind.OVERDUE, values=values, urgency=Urgency.ALARM)], start)
    assert (await loaded.sweep(late)).waiting == ("long-stile",)
    await stand_down(loaded, notice, start)
    assert (await loaded.sweep(late)).blanked == ("long-stile",)


async def test_who_is_in_another_event_stays_known(loaded: Journal, event: Event, start: datetime) -> None:
    """Blanking one event leaves the addresses of people who have a part in another that goes on."""
    from dataclasses import replace

    other = replace(event, id="moss", name="Moss", people=event.people[:2], parts=event.parts[:2])
    await loaded.store_event("t", {}, other, "x", start)
    await loaded.blank_event("long-stile", start)
    assert await loaded.person_at("telegram", "111") == "ana"
    assert await loaded.person_at("telegram", "333") is None


@pytest.mark.parametrize(("seconds", "kept"), [(-1, True), (0, False)])
async def test_raw_updates_are_not_kept_for_ever(
    loaded: Journal, start: datetime, tmp_path: Path, seconds: int, kept: bool
) -> None:
    """Thirty days after it was worked off the body of an update is emptied; one still waiting never is."""
    await loaded.store_updates("telegram", [(1, SECRET), (2, "waiting")], start)
    await loaded.update_done("telegram-1", start)
    await loaded.sweep(start + timedelta(days=30, seconds=seconds))
    left = await everything(loaded, tmp_path)
    assert (SECRET in left, "waiting" in left) == (kept, True)


async def test_her_own_recordings_go_with_her(
    journal: Journal, event: Event, start: datetime, tmp_path: Path
) -> None:
    """A file that the rewritten text no longer names is deleted in every version; the route stays."""
    text = 'route = "route.gpx"\nown_runs = ["long.fit"]\n'
    files = {"route.gpx": b"the line", "long.fit": SECRET.encode()}
    for version in ("", "# again\n"):
        await journal.store_event(text + version, files, event, "ana", start)
    await journal.blank_person("maren", start, lambda old: old.replace('own_runs = ["long.fit"]\n', ""))
    for version in (1, 2):
        stored = await journal.load_event("long-stile", version)
        assert dict(stored.files) == {"route.gpx": b"the line"}
    await journal.dump(tmp_path / "all.jsonl")
    assert base64.b64encode(SECRET.encode()).decode() not in (tmp_path / "all.jsonl").read_text()


async def test_a_persons_words_go_from_what_others_were_told(
    loaded: Journal, entry: MakeEntry, notice: MakeNotice, start: datetime, tmp_path: Path
) -> None:
    """The notice stays theirs, and what was sent of it says nothing any more; words of somebody else stay."""
    kept = (await loaded.append(entry("w", kind=Kind.PASSED_ON, by="jonas", to="tomas", words=SECRET))).entry
    other = (await loaded.append(entry("v", kind=Kind.PASSED_ON, by="tomas", to="ana", words="hello"))).entry
    told = [
        notice(
            "tomas", n, NoticeKind.PASSED_ON, facts=(e.id,), values=PassedOnValues(e.id, e.by, e.words, start)
        )
        for n, e in enumerate((kept, other), start=1)
    ]
    await loaded.add_notices(told, start)
    [claimed, _] = await loaded.claim(["telegram"], start)
    await loaded.report(claimed.id, Outcome.SENT, start, text=SECRET)
    await loaded.blank_person("jonas", start)
    left = await everything(loaded, tmp_path)
    assert SECRET not in left
    assert "hello" in left
    assert len(await loaded.made("long-stile")) == 2
