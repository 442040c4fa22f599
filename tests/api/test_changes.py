"""The plan changed during the race over the API: first what it is for whom, then it counts, each hears it, it is undone."""

from __future__ import annotations

import asyncio
from datetime import timedelta
from typing import Any

import pytest

from server.conversation.telling.new_version import change_lines
from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import reader_in
from server.conversation.telling.say import SayInEvent
from server.watch.notice import NewVersionValues, NoticeKind
from tests.api.conftest import EVENT, Running
from tests.api.test_little_heard import running as with_text

CHANGES = f"/v1/events/{EVENT}/changes"
SWAP = {"what": "who goes", "meeting": "ember-maren", "crew": ["jonas", "tomas"], "car": "estate"}


async def change(running: Running, person: str, **body: Any) -> tuple[int, Any]:
    status, answer = await running.call(person, "POST", CHANGES, body)
    return status, answer.get("data") or answer["error"]


async def under_way(running: Running) -> None:
    """Two and a half hours into the race, she has been at the mill."""
    await running.reachable()
    running.clock.advance(timedelta(hours=3, minutes=31))
    assert (await running.report("ana", "in", "mill"))[0] == 200
    running.clock.advance(timedelta(minutes=10))
    assert (await running.report("ana", "out", "mill"))[0] == 200


async def looked(running: Running) -> None:
    """A look at the event: one that follows a change at once is left to the next where the machine is slow."""
    await running.parts.ticker.tick(running.clock.now())


async def told(running: Running) -> dict[str, list[str]]:
    """What each person was told of changes so far, line by line."""
    found: dict[str, list[str]] = {}
    for m in await running.parts.journal.made(EVENT):
        if m.notice.key.kind is NoticeKind.NEW_VERSION:
            values, who = m.notice.values, m.notice.key.person
            assert isinstance(values, NewVersionValues)
            event = (await running.parts.pictures.event(EVENT)) if who else running.built.event
            say = SayInEvent(reader_in(event, who), running.clock.now(), event, "")
            found.setdefault(who, []).extend(change_lines(say, values))
    return found


async def text(running: Running) -> str:
    return (await running.parts.journal.load_event(EVENT)).text


async def test_what_it_would_be_for_whom_and_nothing_is_done(running: Running, event_text: str) -> None:
    """Who drives where, new times to leave, kit that lies in the other car, meetings that can't both be made."""
    await under_way(running)
    status, found = await change(running, "ana", **SWAP, dry_run=True)
    assert (status, found["done"], found["version"], found["refused"]) == (200, False, 1, [])
    said = {p["id"]: "\n".join(p["lines"]) for p in found["people"]}
    assert set(said) == {"ana", "jonas", "tomas", "maren"}
    assert "No longer yours: Ember Quarry, Maren" in said["ana"]
    assert "New: Ember Quarry, Maren: Jonas, Tomas · grey estate" in said["jonas"]
    assert "in blue van, which does not come there now: dry top; two full bottles" in said["jonas"]
    assert "who goes: was Ana, Tomas, now Jonas, Tomas" in said["tomas"]
    assert "Harrow Fold finish, Maren: no time to leave yet" in said["jonas"], "he comes from elsewhere then"
    assert "(was Sun" in said["jonas"]
    assert "Hand it over" not in said["maren"]
    assert any("from Ravel Dod to Ember Quarry is an estimate" in m for m in found["minds"]), found["minds"]
    assert await text(running) == event_text
    assert await told(running) == {}


async def test_it_counts_each_concerned_hears_old_and_new_and_so_does_its_undoing(
    running: Running, event_text: str
) -> None:
    await under_way(running)
    status, done = await change(running, "ana", **SWAP, over=1)
    assert (status, done["done"], done["version"]) == (200, True, 2)
    assert set(done["told"]) == {"Ana", "Jonas", "Tomas", "Maren"}
    await looked(running)
    heard = await told(running)
    assert set(heard) == {"ana", "jonas", "tomas", "maren"}
    assert any("No longer yours: Ember Quarry" in line for line in heard["ana"])
    assert any("Ember Quarry, Maren: no time to leave yet" in x for x in heard["jonas"]), heard
    event = await running.parts.pictures.event(EVENT)
    assert event.meeting("ember-maren").crew == ("jonas", "tomas")

    running.clock.advance(timedelta(minutes=2))
    status, undone = await change(running, "ana", undo=2)
    assert (status, undone["done"], undone["version"]) == (200, True, 3)
    assert set(undone["told"]) == set(done["told"])
    assert await text(running) == event_text
    await looked(running)
    again = await told(running)
    assert any("New: Ember Quarry, Maren: Ana, Tomas" in line for line in again["ana"])


async def test_told_before_the_first_report_too_as_somebody_asked_for_it(running: Running) -> None:
    await running.reachable()
    status, done = await change(running, "olga", **SWAP)
    assert status == 200
    assert "Jonas" in done["told"]


async def test_the_same_request_again_is_done_once(running: Running) -> None:
    """A phone whose answer was lost on the way sends it again, the undoing as well."""
    for _ in range(2):
        status, done = await change(running, "ana", **SWAP, over=1)
        assert (status, done["done"], done["version"]) == (200, True, 2)
    for _ in range(2):
        status, done = await change(running, "ana", undo=2)
        assert (status, done["done"], done["version"]) == (200, True, 3)
    assert len(await running.parts.journal.event_versions(EVENT)) == 3


async def test_of_two_changes_made_at_once_the_second_is_looked_at_anew(running: Running) -> None:
    await change(running, "ana", **SWAP, over=1)
    status, error = await change(running, "jonas", what="skip", meeting="ravel-maren", over=1)
    assert (status, error["code"]) == (409, "not_now")
    assert "changed meanwhile" in error["what"]
    status, error = await change(running, "jonas", undo=2)
    assert status == 403, "another's change is taken back by them, or by an organiser"
    assert (await change(running, "olga", undo=2))[0] == 200
    status, error = await change(running, "olga", undo=2)
    assert status == 200, "the same again"
    status, error = await change(running, "olga", undo=1)
    assert status == 422


@pytest.mark.parametrize("person", ["tomas", "vera", "sam"])
async def test_who_may_not_is_refused_before_anything_is_looked_at(running: Running, person: str) -> None:
    status, error = await change(running, person, what="skip", meeting="no such thing", dry_run=True)
    assert (status, error["code"]) == (403, "not_yours")


@pytest.mark.parametrize(
    ("body", "words"),
    [
        ({"what": "move", "meeting": "mill-maren", "point": "pell"}, "Pell Bridge"),
        ({"what": "skip", "meeting": "gone"}, "not in the plan any more"),
        ({"what": "who goes", "meeting": "mill-maren", "crew": ["ana"], "car": "van"}, "so already"),
    ],
)
async def test_what_can_not_be_says_why_and_changes_nothing(
    running: Running, event_text: str, body: dict[str, Any], words: str
) -> None:
    status, found = await change(running, "ana", **body, dry_run=True)
    assert status == 200
    assert words in " ".join(found["refused"])
    status, error = await change(running, "ana", **body)
    assert (status, error["code"]) == (409, "not_now")
    assert words in error["what"]
    assert await text(running) == event_text


async def test_a_target_given_up_is_told_to_her_crew_and_home(running: Running) -> None:
    await under_way(running)
    status, _ = await change(running, "maren", what="just finish")
    assert status == 200
    await looked(running)
    heard = await told(running)
    assert {"ana", "jonas", "tomas", "ines", "maren"} <= set(heard)
    assert heard["ines"][0] == "Maren’s target: was 29:00, now 34:00."


async def test_a_person_added_can_be_invited_and_goes_to_meetings(running: Running) -> None:
    await running.reachable()
    assert (await change(running, "ana", what="person", name="Per", drives=True, car="van"))[0] == 200
    event = await running.parts.pictures.event(EVENT)
    per = next(p.id for p in event.people if p.name == "Per")
    body = {"what": "who goes", "meeting": "brindle-maren", "crew": [per], "car": "van"}
    status, done = await change(running, "ana", **body, dry_run=True)
    assert (status, done["refused"]) == (200, [])
    assert {"Per", "Ana"} <= {p["name"] for p in done["people"]}


async def test_everybody_reads_it_in_their_own_language(running: Running, event_text: str) -> None:
    """The preview in the asker's words, whatever they are."""
    assert 'name = "Ana"\n' in event_text
    german = event_text.replace('name = "Ana"\n', 'name = "Ana"\nlanguage = "de"\n')
    files = {"route.gpx": (await running.parts.journal.load_event(EVENT)).files["route.gpx"]}
    from server.api.building import build

    await running.parts.journal.store_event(
        german, files, build(german, files).event, "test", running.clock.now()
    )
    _, found = await change(running, "ana", **SWAP, dry_run=True)
    assert any("Abfahrt" in line or "noch keine" in line for p in found["people"] for line in p["lines"])
    _, found = await change(running, "ana", what="skip", meeting="gone", dry_run=True)
    assert found["refused"] == ["dieses Treffen steht nicht mehr im Plan."]


async def test_where_she_has_been_nothing_is_changed_and_nobody_sent(
    running: Running, event_text: str
) -> None:
    """A meeting behind her is refused before anybody looks at it, and so is a new one behind her."""
    await under_way(running)
    for body in (
        {"what": "skip", "meeting": "mill-maren"},
        {"what": "who goes", "meeting": "mill-maren", "crew": ["jonas"], "car": "estate"},
        {"what": "kit", "meeting": "mill-maren", "kit": ["a flag"]},
    ):
        _, found = await change(running, "ana", **body, dry_run=True)
        assert "already" in " ".join(found["refused"]), body
        status, error = await change(running, "ana", **body)
        assert (status, error["code"]) == (409, "not_now"), body
    _, found = await change(running, "ana", what="move", meeting="ember-maren", point="start", dry_run=True)
    assert "past that point" in " ".join(found["refused"])
    assert await text(running) == event_text
    status, _ = await change(running, "ana", what="skip", meeting="ember-maren", dry_run=True)
    assert status == 200


async def test_of_two_changes_before_the_next_look_both_are_told(
    running: Running, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The look after the first never came: what it changed is told with the second, once."""
    await under_way(running)

    async def left_to_the_next(event: str) -> None:
        """As on a slow machine."""

    with monkeypatch.context() as slow:
        slow.setattr(running.parts.ticker, "after_entry", left_to_the_next)
        assert (await change(running, "ana", **SWAP))[0] == 200
        assert (await change(running, "ana", what="kit", meeting="brindle-maren", kit=["a drum"]))[0] == 200
    await looked(running)
    heard = await told(running)
    assert any("No longer yours: Ember Quarry" in line for line in heard["ana"]), heard
    assert any("a drum" in line for line in heard["ana"]), heard
    assert any("New: Ember Quarry" in line for line in heard["jonas"]), heard
    assert (await change(running, "ana", what="kit", meeting="brindle-maren", kit=["a horn"]))[0] == 200
    await looked(running)
    again = await told(running)
    assert sum("No longer yours: Ember Quarry" in line for line in again["ana"]) == 1, "not told twice"
    assert again["jonas"] == heard["jonas"]


async def test_she_hears_that_nobody_meets_her_there(running: Running) -> None:
    """A meeting left out, and back: she is told in words of her own, its crew in theirs."""
    await under_way(running)
    status, done = await change(running, "jonas", what="skip", meeting="ravel-maren", over=1)
    assert status == 200, done
    await looked(running)
    heard = await told(running)
    assert any(
        x.startswith("Nobody meets you there any more: Ravel Dod (was Jonas") for x in heard["maren"]
    ), heard
    assert any("No longer yours: Ravel Dod, Maren" in x for x in heard["jonas"])
    assert not any("yours" in x for x in heard["maren"])


async def test_a_loaded_version_and_a_change_before_the_next_look_are_both_told(
    running: Running, event_text: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A file loaded by hand and a change on its heels: who the file concerned hears of it with the change. One that was
    loaded before anything was reported was never to be told, and is not then either."""
    from server.api.building import build

    journal = running.parts.journal
    files = {"route.gpx": (await journal.load_event(EVENT)).files["route.gpx"]}

    async def load(text: str) -> None:
        built = await asyncio.to_thread(build, text, files)
        await journal.store_event(text, files, built.event, "by hand", running.clock.now())

    assert 'finish = "29:00"' in event_text
    await load(early := event_text.replace('finish = "29:00"', 'finish = "29:30"'))
    await under_way(running)
    await looked(running)
    assert await told(running) == {}

    async def left_to_the_next(event: str) -> None:
        """As on a slow machine."""

    with monkeypatch.context() as slow:
        slow.setattr(running.parts.ticker, "after_entry", left_to_the_next)
        await load(early.replace('finish = "29:30"', 'finish = "30:30"'))
        running.clock.advance(timedelta(minutes=1))
        assert (await change(running, "ana", what="kit", meeting="brindle-maren", kit=["a drum"]))[0] == 200
    await looked(running)
    heard = await told(running)
    assert "Maren’s target: was 29:30, now 30:30." in heard["ines"], heard
    assert any("a drum" in line for line in heard["ana"]), heard


MOVED = {"what": "cut-off", "point": "ember", "until": "2027-09-12T10:30:00+01:00"}


async def cut_offs_told(running: Running) -> dict[str, list[str]]:
    """What each person was told of cut-offs that moved, the first line of each notice."""
    event = await running.parts.pictures.event(EVENT)
    found: dict[str, list[str]] = {}
    for m in await running.parts.journal.made(EVENT):
        if m.notice.key.kind is NoticeKind.RACE_CHANGE:
            who = m.notice.key.person
            text = say_notice(m.notice, event, reader_in(event, who), running.clock.now()).text
            found.setdefault(who, []).append(text.partition("\n")[0])
    return found


async def test_a_cut_off_is_moved_by_the_same_path_and_back(running: Running, event_text: str) -> None:
    """Looked at, it does nothing and says what each would hear; then each hears old and new; undone, they hear that too."""
    await under_way(running)
    status, found = await change(running, "olga", **MOVED, dry_run=True)
    assert (status, found["done"], found["refused"]) == (200, False, [])
    said = {p["id"]: "\n".join(p["lines"]) for p in found["people"]}
    assert {"ana", "jonas", "ines", "maren"} <= set(said)
    first = "The cut-off at Ember Quarry (in) has moved from Sun 09:30 to Sun 10:30."
    assert said["ana"].startswith(first), said["ana"]
    assert await cut_offs_told(running) == {}
    status, done = await change(running, "olga", **MOVED, over=1)
    assert (status, done["done"]) == (200, True)
    assert "Ana" in done["told"]
    status, again = await change(running, "olga", **MOVED, over=1)
    assert (status, again["entry"]) == (200, done["entry"]), "the same request again"
    await looked(running)
    assert (await cut_offs_told(running))["ana"] == [first]
    assert await text(running) == event_text
    running.clock.advance(timedelta(minutes=5))
    for _ in range(2):
        assert (await change(running, "olga", undo_entry=done["entry"]))[0] == 200
    await looked(running)
    await looked(running)
    back = "The cut-off at Ember Quarry (in) has moved from Sun 10:30 to Sun 09:30."
    assert (await cut_offs_told(running))["ana"] == [first, back]
    running.clock.advance(timedelta(minutes=5))
    assert (await change(running, "olga", **MOVED))[0] == 200
    await looked(running)
    assert (await cut_offs_told(running))["ana"] == [first, back, first]


@pytest.mark.parametrize(
    ("body", "words"),
    [
        ({"point": "pell"}, "no cut-off at that point"),
        ({"point": "ember", "until": None}, "new time is missing"),
        ({"point": "ember", "edge": "out"}, "no cut-off at that point"),
    ],
)
async def test_a_cut_off_that_can_not_be_moved_says_why(
    running: Running, body: dict[str, Any], words: str
) -> None:
    _, found = await change(running, "olga", **{**MOVED, **body}, dry_run=True)
    assert words in " ".join(found["refused"])


async def test_who_is_no_organiser_moves_no_cut_off(running: Running) -> None:
    for body in ({**MOVED, "dry_run": True}, MOVED, {"undo_entry": "anything"}):
        status, error = await change(running, "ana", **body)
        assert (status, error["code"]) == (403, "not_yours"), body


async def test_a_person_added_is_invited_at_once(running: Running) -> None:
    """The code that comes back opens the door for them and for nobody else; looking makes none."""
    _, looked_at = await change(running, "ana", what="person", name="Per", dry_run=True)
    assert looked_at["invited"] is None
    assert await running.parts.journal.invitations(EVENT) == ()
    _, done = await change(running, "ana", what="person", name="Per")
    invited = done["invited"]
    assert invited["link"].endswith(f"/join#{invited['code']}")
    assert invited["link"].startswith("http://127.0.0.1:")
    body = {"code": invited["code"], "channel": "device", "address": "telephone", "preview": True}
    status, found = await running.call(None, "POST", "/v1/join", body)
    assert status == 200
    assert found["data"]["name"] == "Per", found


async def test_what_was_doubtful_before_is_not_told_of_a_change(sqlite_url: str, event_text: str) -> None:
    """No list has her torch, which `check` said: who then swaps a driver hears of the swap alone."""
    text = event_text.replace('name = "head torch, fresh battery", weight = "safety"', 'name = "fresh socks"')
    text = text.replace('name = "spare head torch", weight = "safety"', 'name = "spare hat"')
    async with with_text(sqlite_url, text.replace('torch = "head torch, spare in the pack"', "")) as server:
        assert any(p.field == "runners.maren.carries" for p in server.built.warnings)
        body = {**SWAP, "dry_run": True}
        status, found = await server.call("ana", "POST", f"/v1/events/{server.built.event.id}/changes", body)
        assert status == 200, found
        assert found["data"]["minds"]
        assert not [m for m in found["data"]["minds"] if "torch" in m]


DRIVE = {"what": "drive time", "meeting": "brindle-maren", "start": "mill", "minutes": 55}


async def test_a_drive_is_confirmed_each_hears_when_they_leave_now_and_it_is_undone(
    running: Running, event_text: str
) -> None:
    """41 min by Ana from the mill become 55 by Jonas: those who go leave 14 min earlier, in the file with his name."""
    await under_way(running)
    _, found = await change(running, "jonas", **DRIVE, dry_run=True)
    said = {p["id"]: "\n".join(p["lines"]) for p in found["people"]}
    assert "Brindle Gate, Maren, drive there: was 41 min, now 55 min" in said["ana"]
    assert "maren" not in said, "how long they drive is nothing to her who runs"
    assert "leave by" in said["ana"]
    assert "(was 13:15)" in said["ana"]
    assert await text(running) == event_text
    _, done = await change(running, "jonas", **DRIVE, over=1)
    assert (done["done"], done["version"]) == (True, 2)
    await looked(running)
    assert any("was 41 min, now 55 min" in line for line in (await told(running))["ana"])
    drive = next(d for d in (await running.parts.pictures.event(EVENT)).drives if d.to_place == "brindle")
    assert (drive.from_place, drive.minutes, drive.confirmed_by) == ("mill", 55, "jonas")
    running.clock.advance(timedelta(minutes=2))
    _, undone = await change(running, "jonas", undo=2)
    assert undone["done"]
    assert await text(running) == event_text
    await looked(running)
    assert any("was 55 min, now 41 min" in line for line in (await told(running))["ana"])


@pytest.mark.parametrize(
    ("body", "why"),
    [
        ({"minutes": None}, "the minutes are missing"),
        ({"start": None}, "not said from where"),
        ({"minutes": 41, "by": "ana"}, "so already"),
        ({"meeting": "mill-maren", "start": "start"}, "been at that meeting"),
    ],
)
async def test_a_drive_that_can_not_be_confirmed_says_why(
    running: Running, body: dict[str, Any], why: str
) -> None:
    await under_way(running)
    person = body.get("by", "jonas")
    asked = {k: v for k, v in (DRIVE | body).items() if v is not None and k != "by"}
    _, found = await change(running, person, **asked, dry_run=True)
    assert any(why in x for x in found["refused"]), found


async def test_what_was_told_of_a_drive_in_the_chat_is_put_right_there(running: Running) -> None:
    """It was told after the file and goes before it: other minutes in the file would change nothing."""
    await under_way(running)
    fact = {
        "key": "k-drive",
        "kind": "drive confirmed",
        "point": "brindle",
        "words": "mill > brindle",
        "amount_s": 3000,
    }
    status, _ = await running.call("ana", "POST", f"/v1/events/{EVENT}/runners/maren/checkins", fact)
    assert status == 200
    _, found = await change(running, "jonas", **DRIVE, dry_run=True)
    assert any("Tell the new time there" in x for x in found["refused"]), found
