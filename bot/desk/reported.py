"""Reports: handed to the server at once, told back in words, with one tap to confirm or undo."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

from bot.api_client import ApiError, Told, UnreachableError
from bot.channels.base import Reply
from bot.desk import alarmed, stand_in
from bot.desk.memory import Handed
from bot.desk.visit import Visit
from bot.words import UNDO_WITHIN, AskBack, Choice, Distress, Need, Report, Reported
from server.event.model import PartKind
from server.facts.entry import RACE_LEVEL, Fix, Kind
from server.wording import replies
from server.wording.answer import NotedAnswer, RunnerHere
from server.wording.message import Button, Press, Rows, data
from server.wording.say import lines

HANDED_KEPT = 20
_OWN = frozenset({PartKind.RUNNER, PartKind.PACER})


async def report(visit: Visit, said: Reported) -> Reply:
    """Hand in every report of a message; what was noted is told back."""
    noted: list[NotedAnswer] = []
    last: tuple[Report, NotedAnswer] | None = None
    for number, one in enumerate(said.reports):
        if one.kind is Kind.DRIVE_CONFIRMED:
            return await _drive(visit, one, visit.key(number))
        if one.kind is Kind.CREW_LEFT and one.point is None:
            one = replace(one, point=await _left_from(visit))
            if one.point is None:
                return visit.reply(visit.s("noted-on-the-road-untold"))
        answer = (await hand_in(visit, one, visit.key(number))).data
        noted.append(answer)
        last = (one, answer)
    assert last is not None, "a Reported holds a report"
    about = {r.runner for r in said.reports if r.kind is not Kind.CREW_THERE}
    if len(about) == 1:
        visit.speaks_of(about.pop())
    if len(noted) > 1:
        text = replies.say_many(visit.say, tuple(noted), UNDO_WITHIN)
        open_ones = [a for a in noted if a.unconfirmed]
        buttons = tuple(row for a in open_ones for row in _right_of(visit, a))
        return visit.reply(text, buttons or visit.undo_button(noted[-1].entry))
    if last[0].of_crew and not last[1].unconfirmed:
        return await stand_in.held_up(visit, last[1].entry, last[0].words)
    return _one(visit, *last)


def _right_of(visit: Visit, answer: NotedAnswer) -> Rows:
    """Right or wrong, of one of several reports: each by the name of its runner."""
    right = Button(visit.s("button-right-of", runner=answer.runner_name), data(Press.CONFIRM, answer.entry))
    wrong = Button(visit.s("button-wrong-of", runner=answer.runner_name), data(Press.UNDO, answer.entry))
    return ((right, wrong),)


def _one(visit: Visit, one: Report, answer: NotedAnswer) -> Reply:
    supporter = visit.kinds <= {PartKind.SUPPORTER}
    if one.kind is Kind.STAND_DOWN and answer.unconfirmed:
        return visit.reply(
            visit.s("ask-stand-down", runner=answer.runner_name), visit.confirm_buttons(answer.entry)
        )
    text = replies.say_noted(visit.say, answer, one.words, UNDO_WITHIN, ask=True, supporter=supporter)
    if supporter:
        return visit.reply(text, visit.undo_button(answer.entry))
    if one.placed_by_words:
        kept = visit.s("noted-seen-kept") if answer.unconfirmed else ""
        text = lines(visit.s("noted-seen", **_seen(visit, one, answer)), kept)
        return _ask_where_seen(visit, one, lines(text, _how_told(visit, answer)))
    if answer.unconfirmed:
        return visit.reply(lines(text, _how_told(visit, answer)), visit.confirm_buttons(answer.entry))
    if one.kind is Kind.HOW_SHE_IS and PartKind.RUNNER in visit.kinds and not answer.told:
        text = lines(text, visit.s("word-told-nobody"))
    return visit.reply(text, (*visit.undo_button(answer.entry), *_after(visit, one)))


def _how_told(visit: Visit, answer: NotedAnswer) -> str:
    """Of a report that does not count yet only how she is has been told to anybody."""
    told = answer.told if answer.unconfirmed else ()
    return visit.s("noted-how-told", names=visit.say.all(told)) if told else ""


def _seen(visit: Visit, one: Report, answer: NotedAnswer) -> dict[str, str | int]:
    return {"runner": answer.runner_name, "when": visit.say.when(answer.at), "words": one.words}


def _after(visit: Visit, one: Report) -> Rows:
    """After 'in', the button for 'out' of the same point."""
    runner = visit.runner(one.runner)
    if runner is None or one.kind is not Kind.IN or one.point is None:
        return ()
    if next((p.finish for p in runner.points if p.id == one.point), False):
        return ()
    label = visit.s("button-out", place=visit.point_name(runner.id, one.point))
    return ((Button(label, visit.report_data("out", one.point, runner.id)),),)


async def _left_from(visit: Visit) -> str | None:
    """From which point this person's car leaves: where the server last had them, else where the drive to
    their next meeting begins. None where that is no point of the course."""
    there = await visit.api.people(visit.address, visit.event.id)
    mine = next((p.at_name for p in there.data.people if p.name == visit.person.name), "")
    runner = visit.context().runner(None) or next(iter(visit.event.runners), None)
    if runner is None:
        return None
    if mine:
        return next((p.id for p in runner.points if p.name == mine), None)
    coming = await visit.api.next(visit.address, visit.event.id, runner.id)
    begins = next((m.values.drive_from for m in coming.data.meetings if m.mine), None)
    return begins if begins in {p.id for p in runner.points} else None


async def on_the_road(visit: Visit, words: str) -> Reply:
    """'leaving' with no leave-now open: crew have left the point they were at."""
    runner = visit.context().runner(None) or next(iter(visit.event.runners), None)
    one = Report(Kind.CREW_LEFT, visit.sent_at, runner.id if runner else None, words=words)
    return await report(visit, Reported((one,)))


async def _drive(visit: Visit, one: Report, key: str) -> Reply:
    """'drive from the hotel to Brindle Gate 35 min': from now on somebody stands for that drive. Without a
    'from' it is the drive to that meeting as planned."""
    start = one.words
    if not start and one.runner is not None:
        coming = await visit.api.next(visit.address, visit.event.id, one.runner)
        found = (m.values.drive_from for m in coming.data.meetings if m.values.point == one.point)
        start = next((f for f in found if f), "")
    place = visit.point_name(one.runner, one.point)
    if not start or one.amount is None:
        return visit.reply(visit.s("noted-drive-from", place=place))
    told = await hand_in(visit, replace(one, words=f"{start} > {one.point}"), key)
    values = {"from": visit.point_name(one.runner, start) or start, "to": place}
    text = visit.s("noted-drive", length=visit.say.length(one.amount), **values)
    return visit.reply(text, visit.undo_button(told.data.entry))


async def hand_in(visit: Visit, one: Report, key: str) -> Told[NotedAnswer]:
    """One report to the server, and into memory for undo. Raises what the API raises."""
    runner = one.runner or (visit.event.runners[0].id if visit.event.runners else "")
    if one.kind is Kind.POSITION and not one.placed_by_words:
        raise ValueError("a position has a fix: it is handed in by `position`")
    body = _body(visit, one, key)
    if one.kind in RACE_LEVEL:
        told = await visit.api.race(visit.address, visit.event.id, body)
    else:
        told = await visit.api.check_in(visit.address, visit.event.id, runner, body)
    how = await _how_besides(visit, one, runner, key) if one.kind not in RACE_LEVEL else None
    if how is not None:
        both = tuple(dict.fromkeys((*told.data.told, *how.told)))
        told = replace(told, data=replace(told.data, told=both))
    unsure, also = told.data.unconfirmed, "" if how is None else how.entry
    waiting = await _open_notices(visit) if unsure else ()
    handed = Handed(told.data.entry, visit.now, visit.event.id, one, unsure, visit.key(), also, waiting)
    visit.memory.handed.append(handed)
    del visit.memory.handed[:-HANDED_KEPT]
    return told


async def _how_besides(visit: Visit, one: Report, runner: str, key: str) -> NotedAnswer | None:
    """'in at mill 14:55, feet bad': how she is, as an entry of its own; None where nothing is said of it."""
    if not one.condition or one.kind is Kind.HOW_SHE_IS:
        return None
    body = _body(visit, replace(one, kind=Kind.HOW_SHE_IS, guessed=False), f"{key}.how")
    before = next((h.also for h in visit.memory.handed if h.entry == body["replaces"]), "")
    body["replaces"] = before or None
    return (await visit.api.check_in(visit.address, visit.event.id, runner, body)).data


def _body(visit: Visit, one: Report, key: str) -> dict[str, Any]:
    # Seen by words, with no place on the globe: all it says is that she is up and moving, once somebody stands for it.
    kind = Kind.MOVING_AGAIN if one.placed_by_words and one.kind is Kind.POSITION else one.kind
    unsure = one.guessed and not visit.incoming.short_form
    return {
        "kind": kind.value,
        "point": one.point,
        "seen_at": one.seen_at.isoformat(),
        "sent_at": visit.sent_at.isoformat(),
        "key": key,
        "how": one.how.value if one.how else None,
        "amount_s": one.amount.total_seconds() if one.amount else None,
        "until": one.until.isoformat() if one.until else None,
        "words": one.words[:2000] or None,
        # The watch finds a confirmed drive by where it goes (point) and where it starts (about).
        "about": one.words.partition(" > ")[0] if kind is Kind.DRIVE_CONFIRMED else None,
        "replaces": _replaced(visit, one),
        **({"unconfirmed": True, "doubt": "guessed"} if unsure and one.kind not in RACE_LEVEL else {}),
    }


def _replaced(visit: Visit, one: Report) -> str | None:
    """The entry this one is instead of: the one made from the message of which this is the edited form; for
    a correction this person's last of the same kind and runner, else the last one; else none."""
    edited = visit.first_key()
    if edited:
        return next((h.entry for h in visit.memory.handed if h.message == edited), None)
    if not one.corrects:
        return None
    mine = [h for h in visit.memory.handed if h.event == visit.event.id and h.report.runner == one.runner]
    same = [h for h in mine if h.report.kind is one.kind]
    there = [h for h in same if h.report.point == one.point]
    if there:
        return there[-1].entry
    return (same or mine)[-1].entry if mine else None


# --- asking where somebody was seen ---------------------------------------------------------------------


def _legs(runner: RunnerHere) -> tuple[tuple[str, str], ...]:
    """The leg she should be on, the one before and the two after, as point ids."""
    ids = [p.id for p in runner.points]
    reached = ids.index(runner.reached) if runner.reached in ids else 0
    first = max(0, reached - 1)
    return tuple(zip(ids[first:-1], ids[first + 1 :], strict=True))[:4]


def _ask_where_seen(visit: Visit, one: Report, text: str) -> Reply:
    """Between which points: the answer goes into the journal as words beside the sighting."""
    runner = visit.runner(one.runner)
    if runner is None:
        return visit.reply(text)
    choices, labels = [], []
    for a, b in _legs(runner):
        label = visit.s(
            "choice-between",
            **{"from": visit.point_name(runner.id, a), "to": visit.point_name(runner.id, b)},
        )
        note = replace(
            one, kind=Kind.NOTE, words=f"{one.words} ({label})", guessed=False, condition=False,
            placed_by_words=False,
        )  # fmt: skip
        choices.append(Choice(label, Reported((note,))))
        labels.append(label)
    visit.memory.choices, visit.memory.need = tuple(choices), None
    return visit.reply(lines(text, visit.s("ask-where-seen")), visit.pick_buttons(tuple(labels)))


# --- positions -------------------------------------------------------------------------------------------


async def position(visit: Visit, fix: Fix, runner: str) -> Reply:
    """A shared place. A runner's or pacer's phone is where she is; anybody else's is asked about."""
    own = bool(visit.kinds & _OWN)
    body = {
        "kind": Kind.POSITION.value,
        "seen_at": visit.sent_at.isoformat(),
        "sent_at": visit.sent_at.isoformat(),
        "key": visit.key(),
        "fix": {
            "lat": fix.lat,
            "lon": fix.lon,
            **({"accuracy_m": fix.accuracy_m} if fix.accuracy_m is not None else {}),
            **({"speed_m_s": fix.speed_m_s} if fix.speed_m_s is not None else {}),
            **({"heading_deg": fix.heading_deg} if fix.heading_deg is not None else {}),
        },
        **({} if own else {"unconfirmed": True, "doubt": "crew-position"}),
    }
    told = await visit.api.check_in(visit.address, visit.event.id, runner, body)
    answer = told.data
    place = Report(Kind.POSITION, visit.sent_at, runner)
    visit.memory.handed.append(Handed(answer.entry, visit.now, visit.event.id, place, answer.unconfirmed))
    if visit.incoming.live and not answer.unconfirmed:
        return visit.reply("")
    text = replies.say_noted(visit.say, answer, "", UNDO_WITHIN)
    if not answer.unconfirmed:
        return visit.reply(text, visit.undo_button(answer.entry))
    if not own:
        text = lines(text.split("\n")[0], visit.s("position-whose", runner=answer.runner_name))
    return visit.reply(
        text,
        (
            (
                Button(visit.s("button-on-foot"), data(Press.CONFIRM, answer.entry)),
                Button(visit.s("button-in-car"), data(Press.UNDO, answer.entry)),
            ),
        ),
    )


async def share_ended(visit: Visit, runner: str | None) -> Reply:
    """A live position ended. That says nothing of her; of her own or her pacer's phone it is kept that contact was
    lost, so that nobody takes the silence after it for rest."""
    here = visit.runner(runner)
    if here is not None and visit.kinds & _OWN:
        body = {
            "kind": Kind.CONTACT_LOST.value,
            "seen_at": visit.sent_at.isoformat(),
            "sent_at": visit.sent_at.isoformat(),
            "key": visit.key(),
        }
        await visit.api.check_in(visit.address, visit.event.id, here.id, body)
    return visit.reply(visit.s("live-ended", runner=here.name if here else ""))


# --- distress --------------------------------------------------------------------------------------------


async def distress(visit: Visit, cry: Distress) -> Reply:
    """Whom to call stands first, and the words go on at once; nothing here waits for a tap."""
    runner = cry.runner or next(iter(visit.context().own_runners), None)
    runner = runner or (visit.event.runners[0].id if visit.event.runners else None)
    told: tuple[str, ...] | None = None
    entry, again = "", False
    for number, whose in enumerate((runner, *cry.also) if runner is not None else ()):
        one = Report(Kind.ASKED_FOR_HELP, visit.sent_at, whose, words=cry.words)
        try:
            answer = (await hand_in(visit, one, visit.key(number))).data
            told = tuple(dict.fromkeys((*(told or ()), *answer.told)))
            entry = entry or answer.entry
        except UnreachableError:
            again = True
        except ApiError:
            continue
    control = (visit.event.race_control.name, visit.event.race_control.phone)
    text = replies.say_distress(visit.say, control, visit.event.emergency_number, told, by_self=cry.by_self)
    text = lines(text, await _besides(visit, cry))
    # What did not get through is handed over again by itself, until it does.
    return Reply(text, visit.undo_button(entry) if entry else (), again=again)


async def _besides(visit: Visit, cry: Distress) -> str:
    """Where the same words say she was seen: kept as a report of its own, after the call and never in its way."""
    noted = []
    for number, one in enumerate(cry.reports, start=len(cry.also) + 1):
        try:
            noted.append((await hand_in(visit, one, visit.key(number))).data)
        except (ApiError, UnreachableError):
            continue
    return lines(
        *(replies.say_noted(visit.say, a, cry.words, UNDO_WITHIN, ask=True).split("\n")[0] for a in noted)
    )


# --- undo, confirm ---------------------------------------------------------------------------------------


async def undo_last(visit: Visit) -> Reply:
    """Take back this person's last report, if it is not older than ten minutes."""
    minutes = str(round(UNDO_WITHIN.total_seconds() / 60))
    if not visit.memory.handed:
        return visit.reply(visit.s("undo-nothing", minutes=minutes))
    call = alarmed.takes_back(visit)
    return await undo(visit, (call or visit.memory.handed[-1]).entry)


async def undo(visit: Visit, entry: str, *, judged: bool = False) -> Reply:
    """Take back one entry; later than ten minutes only what still waits to be confirmed, or a call for help. The server
    keeps to that by when it stored the entry: a button outlives this memory. `judged`: 'wrong' under a notice that
    asked about it, which has no such limit."""
    handed = next((h for h in visit.memory.handed if h.entry == entry), None)
    called = handed is not None and handed.report.kind is Kind.ASKED_FOR_HELP
    within = None if judged else UNDO_WITHIN
    try:
        answer = (await visit.api.take_back(visit.address, entry, f"{visit.key()}.undo", within)).data
    except ApiError as error:
        if error.code != "too_late":
            raise
        return _too_late(visit, handed)
    told = answer.told
    if handed is not None:
        answer = replace(answer, kind=handed.report.kind, at=handed.report.seen_at)
        if handed.also:
            how = await visit.api.take_back(visit.address, handed.also, f"{visit.key()}.undo.how")
            told = tuple(dict.fromkeys((*told, *how.data.told)))
    gone = {entry}
    for number, h in enumerate(_same_call(visit, handed) if called else (), start=1):
        await visit.api.take_back(visit.address, h.entry, f"{visit.key(number)}.undo")
        gone.add(h.entry)
    visit.memory.handed = [h for h in visit.memory.handed if h.entry not in gone]
    text = replies.say_undone(visit.say, answer, handed.report.words if handed else "")
    return visit.reply(lines(text, _told_to(visit, told)))


def _too_late(visit: Visit, handed: Handed | None) -> Reply:
    place = visit.point_name(handed.report.runner, handed.report.point) if handed else visit.some_place()
    minutes = str(round(UNDO_WITHIN.total_seconds() / 60))
    return visit.reply(visit.s("undo-over", minutes=minutes, place=place or visit.s("place-nowhere")))


def _same_call(visit: Visit, call: Handed | None) -> list[Handed]:
    """The calls for the other runners that the same message made: it was nothing for any of them."""
    calls = (h for h in visit.memory.handed if h.report.kind is Kind.ASKED_FOR_HELP)
    return [h for h in calls if call is not None and h != call and h.message and h.message == call.message]


def _told_to(visit: Visit, people: tuple[str, ...]) -> str:
    return visit.s("noted-told", names=visit.say.all(people)) if people else ""


async def _open_notices(visit: Visit) -> tuple[int, ...]:
    """What waits for this person's answer once a report is in: it may itself have brought a notice."""
    events = (await visit.api.me(visit.address)).data.events
    return next((e.open_notices for e in events if e.id == visit.event.id), ())


def just_offered(visit: Visit, *, by_name: bool) -> Handed | None:
    """The report that this person handed in last, where they were asked 'is that right?' within the last minutes.
    A bare 'yes' (not `by_name`) is about it only while no notice to them has come since."""
    last = visit.memory.handed[-1] if visit.memory.handed else None
    if last is None or not last.unconfirmed or last.event != visit.event.id:
        return None
    newest = by_name or set(visit.event.open_notices) <= set(last.open_notices)
    return last if newest and visit.now - last.at <= UNDO_WITHIN else None


async def confirm_said(visit: Visit, last: Handed) -> Reply:
    """'Right' in words: of a message that made several reports it is about all of them."""
    others = [h for h in visit.memory.handed if h.unconfirmed and h.message == last.message and h != last]
    for number, h in enumerate(others if last.message else (), start=1):
        await confirm(visit, h.entry, number)
    return await confirm(visit, last.entry)


async def confirm(visit: Visit, entry: str, number: int = 0) -> Reply:
    """It is right: it counts from now on."""
    told = (await visit.api.confirm(visit.address, entry, f"{visit.key(number)}.confirm")).data.told
    visit.memory.handed = [
        replace(h, unconfirmed=False) if h.entry == entry else h for h in visit.memory.handed
    ]
    return visit.reply(lines(visit.s("confirmed"), _told_to(visit, told)), visit.undo_button(entry))


# --- asking back -----------------------------------------------------------------------------------------


async def ask_back(visit: Visit, back: AskBack) -> Reply:
    """Hand in what was clear, ask about the rest, offer each way it may be meant."""
    clear = ""
    if back.also:
        clear = (await report(visit, Reported(back.also))).text
    visit.memory.choices, visit.memory.need = back.choices, back.need
    labels = tuple(_label(visit, back, c) for c in back.choices)
    return visit.reply(lines(clear, _question(visit, back)), visit.pick_buttons(labels))


def _question(visit: Visit, back: AskBack) -> str:
    match back.need:
        case Need.OUT:
            place = visit.point_name(None, back.point)
            return visit.s("ask-out", place=place) if place else visit.s("ask-out-nowhere")
        case Need.DROPPED:
            return visit.s("ask-dropped", word=back.word)
        case Need.HOW:
            return visit.s("ask-retired-how")
        case Need.POINT:
            return visit.s("ask-point")
        case Need.WHO:
            return visit.s("ask-who", place=visit.point_name(None, back.point))
        case Need.RUNNER:
            return visit.s("ask-runner")
        case Need.BIB:
            return visit.s("ask-bib", bib=back.word, count=len(back.choices))


def _name_of(visit: Visit, choice: Choice) -> str:
    """The name of the runner whom a choice is about."""
    reports = choice.then.reports if isinstance(choice.then, Reported) else ()
    known = (visit.runner(r.runner) for r in reports)
    return next((r.name for r in known if r is not None), "")


_WHO_LABELS = {"crew": "choice-crew", "her": "choice-her"}
_HOW_LABELS = {
    "own choice": "button-own-choice",
    "timed out": "button-timed-out",
    "withdrawn by medics or officials": "button-medics",
    "did not start": "button-did-not-start",
    "over": "choice-over",
    "else": "choice-else",
}


def _label(visit: Visit, back: AskBack, choice: Choice) -> str:
    if choice.label == "left":
        place = visit.point_name(None, back.point)
        return visit.s("choice-left", place=place) if place else visit.s("choice-left-plain")
    if choice.label in _WHO_LABELS:
        return visit.s(_WHO_LABELS[choice.label], runner=_name_of(visit, choice))
    if choice.label in _HOW_LABELS:
        return visit.s(_HOW_LABELS[choice.label])
    runner = visit.runner(choice.label)
    if runner is not None:
        return visit.s("choice-runner", name=runner.name, bib=runner.bib)
    return visit.point_name(None, choice.label) or choice.label


def minutes_ago(visit: Visit, kind: str, point: str, runner: str) -> Rows:
    """Buttons 'just now', '10 min ago', '20 min ago' for one report."""
    labels = (("button-just-now", 0), ("button-ten-ago", 10), ("button-twenty-ago", 20))
    return tuple(
        (Button(visit.s(label), visit.report_data(kind, point, runner, minutes)),)
        for label, minutes in labels
    )


def pressed_report(visit: Visit, kind: str, point: str | None, runner: str, minutes: int) -> Report:
    """The report of a button."""
    return Report(Kind(kind), visit.sent_at - timedelta(minutes=minutes), runner, point)
