"""The desk against the real server over HTTP: asked, told, corrected, joined, in distress, and with the
server gone."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import timedelta
from typing import TYPE_CHECKING

import pytest

from bot.channels.base import Reply
from server.facts.entry import Fix, Retired
from server.facts.passages import Passage
from server.facts.state import Going
from tests.bot.conftest import START

if TYPE_CHECKING:
    from conftest import Race

ASKED = (
    "next", "when is she at brindle gate", "finish", "where is she", "is she on plan", "how long at the last stop",
    "cutoff", "have we missed her", "wait or go", "where is everyone", "what do we bring", "what do we take back",
    "what does she eat", "when do we leave", "how long is the drive", "is it dark at gate", "last heard",
    "what if she slows by 10%", "and at gate if she leaves now", "plan", "next meeting", "how is she",
    "her feet are bad what do we do", "race control number", "what can i ask", "help", "send me the picture",
)  # fmt: skip


@pytest.mark.parametrize("when", ["before the start", "on the way"])
async def test_every_question_is_answered(race: Race, race_to_come: Race, when: str) -> None:
    """Crew can ask everything, before the start and on the way: no error, no gap, no bare first line."""
    chosen = race if when == "on the way" else race_to_come
    for question in ASKED:
        reply = await chosen.say("ana", question)
        assert reply.text, question
        assert "…" not in reply.text.replace("…’", ""), (question, reply.text)
        assert "could not take that" not in reply.text, (question, reply.text)
        assert "did not understand" not in reply.text, (question, reply.text)
        assert not re.match(r"^[\d:]+$", reply.text.split("\n")[0])


async def test_the_answer_comes_first_then_how_fresh(race: Race) -> None:
    """First the window, then the last fact and who reported it; what the window's edges mean is said on asking why."""
    lines = (await race.say("ana", "when is she at brindle gate")).text.split("\n")
    assert re.match(r"Maren at Brindle Gate: about \d\d:\d\d \(\d\d:\d\d to \d\d:\d\d\)\.$", lines[0])
    assert "Last known: out of Skelter Mill 07:08, reported by Ana (22 min ago)." in lines
    assert "With a report from Moor Cross I could say it more exactly." in lines
    why = (await race.say("ana", "why?")).text
    assert "1 time in 10 she comes before the first, 1 in 10 after the last" in why


async def test_why_tells_of_others_times(race: Race) -> None:
    """How many others' times count, and what they make of the way to the next point."""
    minute = timedelta(minutes=1)
    gone = [
        Passage(str(bib), point, START + (first + bib / 4) * minute)
        for bib in range(20)
        for point, first in (("mill", 62), ("moor", 142))
    ]
    await race.journal.keep_passages("hill", gone, "olga")
    why = (await race.say("ana", "why?")).text
    assert re.search(
        r"Times of 20 others today are in it too: to Moor Cross the day goes about \d+% slower than planned",
        why,
    )


async def test_somebody_abroad_reads_both_clocks(race: Race) -> None:
    """The safety contact in another zone gets the point's time and their own."""
    text = (await race.say("ines", "where is maren")).text
    assert "07:08 (08:08 your clock)" in text


async def test_german(race: Race) -> None:
    """A German reader asks and is answered in German, of both runners in a line each, and more of the one chosen."""
    asked = await race.say("both", "wann ist sie in Brindle Gate")
    first, second = asked.text.split("\n")
    assert first.startswith("Maren in Brindle Gate: ")
    assert second.startswith("Tove in Brindle Gate: ")
    told = await race.press("both", asked, "Maren")
    assert told.text.startswith("Maren in Brindle Gate: etwa ")
    again = await race.say("both", "und im ziel?")
    assert again.text.startswith("Maren in Low Barn finish: etwa ")


async def test_follow_ups(race: Race) -> None:
    """'and the one after?' goes on from the last question; another person's question does not matter."""
    await race.say("ana", "when is she at moor cross")
    await race.say("ines", "when is tove at the finish")
    assert (await race.say("ana", "and the one after?")).text.startswith("Maren at Brindle Gate:")


async def test_a_report_is_noted_undone_and_corrected(race: Race) -> None:
    """Free text with a time is noted, taken back by one word within ten minutes, corrected later."""
    race.at("09:20")
    noted = await race.say("ana", "in at moor cross 9:14")
    assert noted.text.startswith("Noted: Maren in at Moor Cross, 09:14.")
    assert (await race.state()).runner("maren").going is Going.AT_POINT
    undone = await race.say("ana", "undo")
    assert undone.text == "Taken back: Maren in at Moor Cross, 09:14."
    assert (await race.state()).runner("maren").going is Going.MOVING
    await race.say("ana", "in at moor cross 9:14")
    race.at("09:40")
    assert (await race.say("ana", "undo")).text.startswith("That is more than 10 min old.")
    await race.say("ana", "correction: in at moor cross 9:10")
    times = (await race.state()).runner("maren").at_point("moor")
    assert times is not None
    assert times.arrived is not None
    assert times.arrived.at == race.clock.now().replace(hour=8, minute=10, second=0)


async def test_an_edited_message_replaces_what_it_said(race: Race) -> None:
    """Mending a message in the chat mends the report made from it."""
    race.at("09:20")
    await race.say("ana", "in at moor cross 9:14", key="first")
    await race.say("ana", "in at moor cross 9:10", key="first.edited", edits="first")
    times = (await race.state()).runner("maren").at_point("moor")
    assert times is not None
    assert times.arrived is not None
    assert times.arrived.at == race.clock.now().replace(hour=8, minute=10)


async def test_the_same_message_again_counts_once(race: Race) -> None:
    """A message that a channel hands over twice makes one entry, and is answered as it was."""
    first = await race.say("ana", "in at gate 7:29", key="same")
    again = await race.say("ana", "in at gate 7:29", key="same")
    assert again == first
    assert "is that right?" in again.text
    assert len(await race.entries("in")) == 2  # the mill and this one


async def test_a_late_message_is_told_from_when_it_was_sent(race: Race) -> None:
    """'20 min ago' counts from when it was written, not from when it got through."""
    sent = race.clock.now()
    race.at("09:00")
    await race.say("ana", "out of mill 20 min ago", sent_at=sent)
    seen = [e.seen_at for e in await race.entries("out") if e.point == "mill"]  # type: ignore[attr-defined]
    assert sent - timedelta(minutes=20) in seen


async def test_what_was_guessed_is_kept_and_asked_about(race: Race) -> None:
    """'in' alone: the point is a guess, so it counts only after a tap."""
    race.at("09:14")
    reply = await race.say("ana", "in")
    assert reply.text == (
        "Maren in at Brindle Gate, 09:14: is that right?\nIt counts once you press ‘Right’."
    )
    assert (await race.state()).runner("maren").going is Going.MOVING
    assert (await race.press("ana", reply, "Right")).text == "Confirmed. Thank you."
    assert (await race.state()).runner("maren").going is Going.AT_POINT


async def test_buttons_report_what_is_expected_next(race: Race) -> None:
    """Under an answer hang the reports that are due; 'in' brings 'out'."""
    race.at("09:14")
    reply = await race.say("ana", "where is she")
    noted = await race.press("ana", reply, "In at Moor Cross")
    assert noted.text.startswith("Noted: Maren in at Moor Cross, 09:14.")
    race.at("09:17")
    assert (await race.press("ana", noted, "Out of Moor Cross")).text.startswith(
        "Noted: Maren out of Moor Cross, 09:17."
    )


async def test_out_is_asked_back(race: Race) -> None:
    """'out' may be the point or the race: the bot asks, and either way is one tap."""
    race.at("09:10")
    await race.say("ana", "in at moor cross")
    reply = await race.say("ana", "she's out")
    assert reply.text == "Out of what? Left Moor Cross and going on, or out of the race?"
    over = await race.press("ana", reply, "Her race is over")
    assert over.text.startswith("Noted: Maren retired at Moor Cross, 09:10.")
    assert over.text.endswith("It counts already. How did her race end?")
    assert (await race.state()).runner("maren").going is Going.RETIRED
    noted = await race.press("ana", over, "Own choice")
    assert noted.text.startswith("Noted: Maren retired at Moor Cross, 09:10.")
    assert (await race.state()).runner("maren").retirement.how is Retired.OWN_CHOICE  # type: ignore[union-attr]
    state = (await race.state()).runner("maren")
    assert (state.going, state.retirement.point) == (Going.RETIRED, "moor")  # type: ignore[union-attr]
    await race.say("ana", "undo")
    assert (await race.state()).runner("maren").going is Going.AT_POINT


@pytest.mark.parametrize("words", ["she is out of the race", "sie ist aus dem Rennen", "sie ist leider raus"])
async def test_out_of_the_race_counts_before_it_is_said_how(race: Race, words: str) -> None:
    """She is retired and home has been told, whatever becomes of 'how'; 'how' tells nobody anew, and undo is of both."""
    first = await race.say("ana", words)
    retirement = (await race.state()).runner("maren").retirement
    assert retirement is not None
    assert retirement.how is Retired.NOT_SAID
    assert "Ines" in first.text
    told = len(await race.journal.made(race.event.id))
    await race.press("ana", first, "Medics")
    after = (await race.state()).runner("maren").retirement
    assert after == replace(retirement, how=Retired.WITHDRAWN)
    assert len(await race.journal.made(race.event.id)) == told
    await race.press("ana", first, "Undo")
    assert (await race.state()).runner("maren").going is Going.MOVING


@pytest.mark.parametrize(
    "words", ["she has given up on gels, own idea", "Jonas has retired to the car", "she quit smiling"]
)
async def test_what_may_not_be_the_end_is_asked_first(race: Race, words: str) -> None:
    """Nobody's race is ended by words that may be about something else."""
    await race.say("ana", words)
    assert (await race.state()).runner("maren").going is Going.MOVING


async def test_out_between_points_has_no_place(race: Race) -> None:
    """She has left the mill and is in nowhere: her race is over at a place that is not known, never at the mill."""
    reply = await race.say("ana", "she's out")
    over = await race.press("ana", reply, "Her race is over")
    noted = await race.press("ana", over, "Own choice")
    assert noted.text.startswith("Noted: Maren retired, place not given")
    assert (await race.state()).runner("maren").retirement.point is None  # type: ignore[union-attr]


async def test_a_volunteers_list(race: Race) -> None:
    """A list of bibs is kept bib by bib; an unknown one is asked about; a volunteer may not ask for
    positions."""
    race.at("09:20")
    reply = await race.say("vera", "214 in 0912 out 0915; 78 in 0918")
    assert reply.text.startswith("Noted: 2 reports.")
    assert "No runner has bib 78. Did you mean:" in reply.text
    assert (await race.press("vera", reply, "Tove (87)")).text.startswith(
        "Noted: Tove in at Moor Cross, 09:18."
    )
    state = await race.state()
    assert state.runner("maren").at_point("moor").left is not None  # type: ignore[union-attr]
    assert state.runner("tove").at_point("moor").arrived is not None  # type: ignore[union-attr]
    refused = await race.say("vera", "where is maren")
    assert refused.text == "Your part in the event does not allow that."
    assert "Moor" not in refused.text


async def test_a_line_of_two_halves_is_looked_at_as_a_whole(race: Race) -> None:
    """'in … out …' in one line: nobody hears of the 'in' by itself, as if she were still there."""
    race.at("12:30")
    await race.say("vera", "214 in 0910 out 0940")
    before = len(await race.journal.made(race.event.id))
    await race.say("olga", "214 in gate 1210 out 1222")
    assert (await race.state()).runner("maren").at_point("gate").left is not None  # type: ignore[union-attr]
    kinds = {m.notice.key.kind.value for m in (await race.journal.made(race.event.id))[before:]}
    assert "arrived" not in kinds


@pytest.mark.parametrize("words", ["help", "SOS", "i am hurt", "lost in the fog cant see the flags"])
async def test_distress_is_sent_on_at_once(race: Race, words: str) -> None:
    """A runner in distress reads whom to call in the first line, and the entry is there before any tap."""
    reply = await race.say("maren", words)
    assert reply.text.split("\n")[0] == "Are you hurt? Call 112. Race control: +44 1632 960001."
    assert "Ana" in reply.text
    (entry,) = await race.entries("asked for help")
    assert (entry.words, entry.unconfirmed) == (words, False)  # type: ignore[attr-defined]
    assert (await race.state()).runner("maren").help_open is not None
    assert (await race.say("maren", "undo")).text
    assert (await race.state()).runner("maren").help_open is None


async def test_distress_with_the_server_gone(race: Race) -> None:
    """Without the server the numbers are still given, and it is said plainly that nothing got through."""
    await race.say("maren", "next")
    await race.runner.cleanup()
    reply = await race.say("maren", "im hurt")
    assert reply.text.split("\n")[0].startswith(
        "If you are in danger call 112 now. Race control: +44 1632 960001."
    )
    assert "NOTHING is noted yet." in reply.text
    other = await race.say("ana", "in at moor cross")
    assert other.text.startswith("The server can’t be reached just now. NOTHING is noted yet.")
    assert (reply.again, other.again) == (True, True)


async def test_positions(race: Race) -> None:
    """The runner's own phone is where she is; a live share is taken silently; a driver's phone is the driver's place, never
    hers."""
    km_22 = Fix(54.5 + 22 / 111.2, -2.6, 10.0)
    race.at("08:10")
    mine = await race.say("maren", fix=km_22)
    assert mine.text.startswith("Noted: position of Maren, 08:10.")
    live = await race.say("maren", fix=Fix(54.5 + 22.1 / 111.2, -2.6, 10.0), live=True)
    assert live.silent
    other = await race.say("ana", fix=km_22)
    assert other.text == "Noted as your place, not Maren’s."
    assert {e.by for e in await race.entries("position")} == {"maren"}  # type: ignore[attr-defined]
    race.at("08:12")  # later than her place: of two entries of one moment either may come first
    for person, lost in (("ana", 0), ("maren", 1)):
        ended = await race.say(person, live_ended=True)
        assert ended.text == "The shared position has ended. That says nothing about Maren."
        assert len(await race.entries("contact lost")) == lost
    state = (await race.state()).runner("maren")
    assert state.contact_lost is not None
    assert state.going is not Going.RESTING


async def test_a_sighting_in_words(race: Race) -> None:
    """A sighting without coordinates is kept with its words and how she looked; the leg is asked about."""
    race.at("08:30")
    reply = await race.say("ana", "saw her 10 min ago on the ridge road going up, looking rough")
    assert "Maren was seen, 08:20" in reply.text
    assert "Between which points was that?" in reply.text
    assert await race.entries("how she is")
    await race.press("ana", reply, "Skelter Mill – Moor Cross")
    (note,) = await race.entries("note")
    assert "Skelter Mill – Moor Cross" in note.words  # type: ignore[attr-defined]


async def test_how_she_is_reaches_the_next_crew(race: Race) -> None:
    """What one writes about how she is, the next reads when asking."""
    await race.say("ana", "eating well, feet fine, mood low")
    assert "eating well, feet fine, mood low" in (await race.say("both", "how is maren")).text


async def test_the_reply_names_who_was_told_how_she_is(race: Race) -> None:
    """She writes it herself: the crew she comes to next read it, and she reads that they did; taken back, the same."""
    reply = await race.say("maren", "sitting on a wall feel sick")
    assert [e.words for e in await race.entries("resting")] == ["sitting on a wall feel sick"]  # type: ignore[attr-defined]
    assert "Told to Ana." in reply.text
    assert "Told to Ana." in (await race.say("maren", "undo")).text


async def test_how_she_was_at_a_point_is_told_and_undone_with_the_report(race: Race) -> None:
    """'in at mill, feet bad': the reply names who was told of either; undo takes both back."""
    reply = await race.say("both", "maren in at mill 7:20, looking rough")
    assert "Ana" in reply.text
    (how,) = await race.entries("how she is")
    await race.say("both", "rückgängig")
    assert {e.about for e in await race.entries("taken back")} >= {how.id}  # type: ignore[attr-defined]


async def test_a_drive_somebody_stands_for(race: Race) -> None:
    """Once a person says how long the drive takes, there is a leave-by."""
    before = await race.say("ana", "when do we leave for gate")
    assert before.text.startswith("No leave-by for Brindle Gate yet")
    noted = await race.say("ana", "drive from mill to brindle gate takes 35 min")
    assert noted.text.startswith("Noted: the drive from Skelter Mill to Brindle Gate takes 35 min.")
    after = await race.say("ana", "when do we leave for gate")
    assert after.text.startswith("Leave by ")


async def test_a_stranger_learns_nothing(race: Race) -> None:
    """Whatever somebody unknown writes, the reply is the same and names nobody and no event."""
    replies = {
        (await race.say("nobody", t)).text for t in ("where is maren", "help", "hello", "214", "Hill Sixty")
    }
    assert len(replies) == 1
    text = replies.pop()
    for word in ("Maren", "Hill", "Mill", "112", "event"):
        assert word not in text


async def test_joining(race: Race) -> None:
    """A code shows who you are and your part, binds only after yes, and works once."""
    code = await race.journal.invite("ana", "hill", "tests", race.clock.now(), timedelta(days=1))
    preview = await race.say("new", f"/start {code}")
    assert preview.text.startswith("Hello Ana, you are crew for Maren at The Hill Sixty. Is that you?\n")
    assert "say when she came" in preview.text
    assert (await race.say("new", "where is she")).text.startswith("This number or chat is not known here.")
    assert (await race.say("new", code[:4] + "-" + code[4:8] + "-" + code[8:])).text == preview.text
    welcome = await race.press("new", preview, "Yes")
    assert welcome.text.startswith("Welcome, Ana.")
    assert (await race.say("new", "next")).text.startswith("Maren at ")
    assert "not valid" in (await race.say("other", code)).text


async def test_joining_is_declined_and_not_done_in_groups(race: Race) -> None:
    """'No' leaves the code unused; in a group nothing about the person is shown."""
    code = await race.journal.invite("fan", "hill", "tests", race.clock.now(), timedelta(days=1))
    in_group = await race.say("new", code, group=True)
    assert in_group.text == "Send the code to me alone, not in a group."
    await race.say("new", code)
    assert "stays unused" in (await race.say("new", "no")).text
    assert (await race.say("third", code)).text.startswith("Hello Finn, you are supporter for Maren")


async def test_a_group_is_left_in_peace(race: Race) -> None:
    """In a group the bot speaks only when it is spoken to."""
    assert (await race.say("ana", "when is she at the mill", group=True, addressed=False)).silent


async def test_a_supporter_sees_and_says_less(race: Race) -> None:
    """A supporter gets no estimate of where she is, and their report waits for crew."""
    where = await race.say("fan", "where is she")
    assert "Estimate" not in where.text
    told = await race.say("fan", "in at moor cross 7:29")
    assert "counts once crew confirm it" in told.text
    assert (await race.state()).runner("maren").going is Going.MOVING


async def test_an_alarm_is_answered_in_words(race: Race) -> None:
    """'I have it' goes to the alarm, says until when it is yours, and the next one hears who has it."""
    race.at("08:00")
    await race.say("maren", "help")
    await race.tick()  # type: ignore[misc]
    mine = await race.say("ines", "i have it")
    assert mine.text.startswith("It is yours. I ask again 08:20 (09:20 your clock).")
    race.at("08:01")
    other = await race.say("ana", "i have it")
    assert other.text == "Ines has it already. Thank you."


async def test_who_holds_an_alarm_may_give_it_back_in_words(race: Race) -> None:
    """'Can't' from the holder frees it for the next; and whoever said 'can't' may take it after all."""
    race.at("08:00")
    await race.say("maren", "help")
    await race.tick()  # type: ignore[misc]
    await race.say("ana", "can't")
    race.at("08:01")
    assert (await race.say("ana", "i have it")).text.startswith("It is yours.")
    race.at("08:03")
    await race.say("ana", "can't")
    race.at("08:04")
    assert (await race.say("ines", "i have it")).text.startswith("It is yours.")


async def test_leaving_is_noted_even_if_nobody_asked(race_to_come: Race) -> None:
    """'leaving now' with no leave-now open: crew are on the road from where their drive begins."""
    race = race_to_come
    race.at("05:20")
    reply = await race.say("ana", "leaving now")
    assert reply.text.startswith("Noted: you left Low Barn start")
    assert len(await race.entries("crew left")) == 1


async def test_an_old_or_foreign_button_does_no_harm(race: Race) -> None:
    """A button that is not ours, or whose choice is gone, is answered with a hint, not an error."""
    for data in ("x|y", "p|7", "r|in|nowhere|nobody|0", "r|in", "n|abc|yes|x|y", "q|no such|a|b", "|"):
        reply = await race.say("ana", button=data)
        assert isinstance(reply, Reply)
        assert reply.text


async def test_voice_and_pictures_are_not_left_waiting(race: Race) -> None:
    """What the desk can't read is answered at once."""
    assert (await race.say("ana", other="voice")).text == "I can’t read that. Please write it."


async def test_a_card_is_told_by_its_trouble(race: Race) -> None:
    """The built-in card that people's words mean, with red flags and race control's number; many are only listed."""
    told = (await race.say("ana", "what if her stomach goes wrong")).text
    assert told.startswith("■ RED FLAGS. Any one of these: call 112 now")
    assert "\nnausea, vomiting, nothing stays down. A MEDIC is fetched" in told
    assert "+44 1632 960001" in told
    assert "she does not leave until the medic has said she may" in told
    assert "A card is a reminder, not medical advice" in told
    every = (await race.say("ana", "cards")).text
    assert every.startswith("Which?")
    assert "- she has fallen" in every
    german = (await race.say("both", "was tun bei Übelkeit")).text
    assert german.startswith("■ WARNZEICHEN.")
    assert "Sanitäter" in german


async def test_the_plan_in_the_chat_says_light_change_over_and_notes(race: Race) -> None:
    """Below the points: what it rests on, until when goals hold, sunset and torch, what the planner says."""
    told = (await race.say("ana", "plan")).text
    assert re.search(
        r"^Rests on: finish in \d+:\d\d; pace from published costs by gradient\.$", told, re.MULTILINE
    )
    assert re.search(r"^Goals change over: out of .+, A until \d\d:\d\d, B until", told, re.MULTILINE)


async def test_cut_offs_in_the_chat_say_the_latest_times_out(race_to_come: Race) -> None:
    """Before the start: the cut-off with its odds, and the latest times out of the points before it for 9 in 10."""
    told = (await race_to_come.say("ana", "cutoff")).text
    assert re.search(r"(over|about|under) \d+ in \d+ that Maren makes it", told)
    assert re.search(r"^For 9 chances in 10.*out of Skelter Mill by \d\d:\d\d", told, re.MULTILINE)
