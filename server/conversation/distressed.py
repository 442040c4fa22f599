"""Calls for help: whom to call first, then the words go on at once, and what else they say is kept after them.

A call that does not say for which of the writer's runners goes out for each of them, marked so; the reply asks which,
and the answer takes it back for the others.
"""

from __future__ import annotations

from dataclasses import replace

from server.conversation import actions, alarmed, button_payload
from server.conversation.dialogue import Handed
from server.conversation.multi_runner import AT_MOST
from server.conversation.submit import hand_in
from server.conversation.telling import replies
from server.conversation.telling.message import Rows
from server.conversation.telling.say import lines
from server.conversation.understanding import UNDO_WITHIN, Choice, Distress, MeantFor, Report, says, whose
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import SPOKEN_OF, Visit
from server.event.model import PartKind
from server.facts.entry import Kind


async def distress(visit: Visit, cry: Distress) -> Reply:
    """Whom to call stands first, and the words go on at once; nothing here waits for a tap."""
    whom: tuple[str | None, ...]
    whom = (cry.runner, *cry.also) if cry.runner is not None else _all_it_may_be(visit, cry)
    # More than can each have their alarm raised: it goes to who answers for the race and for runners at home.
    many = cry.runner is None and not whom
    whom, unnamed = whom or (None,), many or (cry.runner is None and len(whom) > 1)
    told: tuple[str, ...] | None = None
    entry, number, anew = "", -1, not unnamed
    joins: str | None = None
    for number, her in enumerate(whom):
        one = Report(
            Kind.ASKED_FOR_HELP, min(visit.sent_at, visit.now), her, words=cry.words, unnamed=unnamed
        )
        try:
            answer = await hand_in(visit, one, visit.key(number))
            told = tuple(dict.fromkeys((*(told or ()), *answer.told)))
            entry = entry or answer.entry
            anew = anew and answer.status != "same again" and answer.joins is None
            joins = answer.joins if answer.joins is not None else joins
        except Refused:
            continue
    control = (visit.event.race_control.name, visit.event.race_control.phone)
    number_112 = visit.event.emergency_number
    text = replies.say_distress(
        visit.say, control, number_112, told, by_self=cry.by_self, anew=anew, joins=joins
    )
    text = lines(text, await _besides(visit, cry, number + 1))
    buttons = visit.undo_button(entry) if entry else ()
    open_ones = _just_open(visit)
    if cry.runner is not None and not open_ones:
        text = lines(text, _about_whom(visit, cry))
    if open_ones and told is not None:
        # What is to be answered stands below the numbers to call, above the rest.
        first, passed, *rest = text.split("\n")
        names = _names(visit, [h.report.runner for h in open_ones])
        which = visit.s("distress-whose", names=names) if names else visit.s("distress-which")
        text = lines(first, passed, which, *rest)
        buttons = (*_offer(visit, open_ones), *buttons)
    return visit.reply(text, buttons)


def _all_it_may_be(visit: Visit, cry: Distress) -> tuple[str, ...]:
    """The runners whom a call that names nobody may be for. Whoever runs and says nothing of 'her' speaks of themselves;
    () for somebody with no runner of their own and a whole field before them."""
    runs = tuple(p.runner for p in visit.event.parts if p.kind is PartKind.RUNNER and p.runner)
    if cry.by_self and runs and not says(cry.words, "she"):
        return runs[:1]
    ids = tuple(r.id for r in visit.context().candidates())
    own = set(ids) <= set(visit.context().own_runners)
    return ids if own or len(ids) <= AT_MOST else ()


def _open_calls(visit: Visit) -> list[Handed]:
    """The calls of this person's last message that did not say for whom, while that is not answered."""
    unnamed = [h for h in visit.memory.handed if h.report.unnamed and h.event == visit.event.id]
    return [h for h in unnamed if h.message == unnamed[-1].message] if unnamed else []


async def _calls_known(visit: Visit) -> list[Handed]:
    """The same as the server knows them, where this program has been started again since: the newest words of theirs."""
    found: list[Handed] = []
    for r in visit.event.runners:
        for a in await alarmed.open_alarms(visit, r.id):
            if a.unnamed_call and a.unnamed_by == visit.person.id:
                one = Report(Kind.ASKED_FOR_HELP, a.raised_at, r.id, words=a.words, unnamed=True)
                found.append(Handed(a.unnamed_call, visit.now, visit.event.id, one, False))
    newest = max((h.report.seen_at for h in found), default=visit.now)
    words = {h.report.words for h in found if h.report.seen_at == newest}
    return [h for h in found if h.report.words in words]


def _just_open(visit: Visit) -> list[Handed]:
    """The same while a bare name is still an answer to it."""
    return [h for h in _open_calls(visit) if visit.now - h.at <= SPOKEN_OF]


def _about_whom(visit: Visit, cry: Distress) -> str:
    """Whom the alarm is about, where the words left that to what was spoken of before and others are theirs too."""
    her = visit.runner(cry.runner)
    by_name = (
        her is None or cry.also or any(n and n.lower() in cry.words.lower() for n in (her.name, her.bib))
    )
    if by_name or len(visit.context().candidates()) < 2 or her is None:
        return ""
    return visit.s("distress-about", runner=her.name)


def _names(visit: Visit, runners: list[str | None]) -> str:
    return visit.say.all(r.name for r in map(visit.runner, runners) if r is not None)


OFFERED_MAX = 12
"""So many runners have a button; the others are named in words (own choice: a phone's screen, twice)."""
_GONE = frozenset({"closed", "before the start"})


def _offer(visit: Visit, calls: list[Handed]) -> Rows:
    found = [r for r in (visit.runner(h.report.runner) for h in calls) if r is not None]
    offered: tuple[Choice, ...]
    if found:
        everyone = visit.s("choice-both") if len(found) == 2 else visit.s("choice-all")
        offered = (*(Choice(r.id, MeantFor((r.id,))) for r in found), Choice("all", MeantFor(())))
    else:
        # Those who are out there first; who has long been at home, or has not started, last.
        found = sorted(visit.event.runners, key=lambda r: r.going in _GONE)[:OFFERED_MAX]
        everyone = ""
        offered = tuple(Choice(r.id, MeantFor((r.id,), calls[-1].entry)) for r in found)
    labels = [visit.s("choice-runner", name=r.name, bib=r.bib or "none") for r in found]
    visit.memory.choices, visit.memory.need = offered, None
    return button_payload.offer(visit, (*labels, *((everyone,) if everyone else ())), offered)


def says_whose(visit: Visit, text: str) -> MeantFor | None:
    """'Tove', 'it's Maren', 'both', 'beide' while it is asked for whom the call was; None for anything else."""
    return _answer_in(visit, text, _just_open(visit))


async def says_whose_again(visit: Visit, text: str) -> MeantFor | None:
    """The same where this program was started again since the call, and remembers nothing of it: a name by itself, or
    'both', is looked up at the server before it is read as a question."""
    few = 2 <= len(visit.context().candidates()) <= AT_MOST
    if visit.memory.handed or not few or not _may_answer(visit, text):
        return None
    calls = [h for h in await _calls_known(visit) if visit.now - h.report.seen_at <= SPOKEN_OF]
    return _answer_in(visit, text, calls)


def _may_answer(visit: Visit, text: str) -> bool:
    return whose(text, visit.context()) is not None


def _answer_in(visit: Visit, text: str, calls: list[Handed]) -> MeantFor | None:
    said = whose(text, visit.context())
    if not calls or said is None:
        return None
    nobodys = calls[-1].entry if calls[-1].report.runner is None else ""
    if not said:
        return None if nobodys else MeantFor(())
    known = {r.id for r in visit.event.runners} if nobodys else {h.report.runner for h in calls}
    return MeantFor(said, nobodys) if said[0] in known else None


async def _named(visit: Visit, runner: str, call: str) -> Reply:
    """Her own alarm goes out, and those who were told that nobody knew for whom are told."""
    key = f"{visit.key()}.meant"
    done = await actions.take_back(call, key, meant=runner)
    one = Report(Kind.ASKED_FOR_HELP, done.at, runner)
    kept = [h for h in visit.memory.handed if h.entry != call]
    visit.memory.handed = [*kept, Handed(done.entry, visit.now, visit.event.id, one, False, visit.message())]
    visit.speaks_of(runner)
    told = visit.s("noted-told", names=visit.say.all(done.told)) if done.told else ""
    named = visit.s("distress-named", runner=done.runner_name)
    return visit.reply(lines(named, told), visit.undo_button(done.entry))


async def meant_for(visit: Visit, meant: MeantFor) -> Reply:
    """The call stays for whom it was, and is taken back for the others; those told of either are told which."""
    if meant.call and meant.runners:
        return await _named(visit, meant.runners[0], meant.call)
    calls = _open_calls(visit) or await _calls_known(visit)
    kept = [h for h in calls if not meant.runners or h.report.runner in meant.runners]
    if not kept:
        return visit.reply(visit.s("nothing-to-say"))
    told: tuple[str, ...] = ()
    gone: set[str] = set()
    for number, h in enumerate(calls):
        key = f"{visit.key(number)}.meant"
        if h not in kept:
            done = await actions.take_back(h.entry, key, meant=kept[0].report.runner)
            gone.add(h.entry)
        elif visit.kinds <= {PartKind.SUPPORTER}:
            continue  # a supporter confirms nothing; that it was not for the others says enough
        else:
            done = await actions.confirm(h.entry, key)
        told = tuple(dict.fromkeys((*told, *done.told)))
    visit.memory.handed = [
        replace(h, report=replace(h.report, unnamed=False)) if h in kept else h
        for h in visit.memory.handed
        if h.entry not in gone
    ]
    visit.speaks_of(kept[0].report.runner if len(kept) == 1 else None)
    stay = _names(visit, [h.report.runner for h in kept])
    others = _names(visit, [h.report.runner for h in calls if h not in kept])
    text = (
        visit.s("distress-meant", runner=stay, others=others)
        if others
        else visit.s("distress-meant-all", names=stay)
    )
    return visit.reply(
        lines(text, visit.s("noted-told", names=visit.say.all(told)) if told else ""),
        visit.undo_button(kept[0].entry),
    )


async def _besides(visit: Visit, cry: Distress, start: int) -> str:
    """Where the same words say she was seen: kept as a report of its own, after the call and never in its way."""
    noted = []
    for number, one in enumerate(cry.reports, start=start):
        try:
            noted.append(await hand_in(visit, one, visit.key(number)))
        except Refused:
            continue
    return lines(
        *(replies.say_noted(visit.say, a, cry.words, UNDO_WITHIN, ask=True).split("\n")[0] for a in noted)
    )
