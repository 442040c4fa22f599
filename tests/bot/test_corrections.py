"""Which of one's own reports is taken back or corrected, and that a race that is over is said before any window."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from bot.conversing import Conversing

if TYPE_CHECKING:
    from datetime import datetime

    from conftest import Race


async def _times(race: Race, point: str) -> tuple[datetime | None, datetime | None]:
    found = (await race.state()).runner("maren").at_point(point)
    if found is None:
        return None, None
    return (found.arrived.at if found.arrived else None, found.left.at if found.left else None)


async def _seen_in(race: Race) -> None:
    """Ana reports her at the moor, two minutes after she came."""
    race.at("08:40")
    await race.say("ana", "in at moor cross 8:38")


@pytest.mark.parametrize(
    "words", ["undo through moor", "undo moor cross", "sorry undo through moor cross please"]
)
async def test_undo_names_the_report(race: Race, words: str) -> None:
    """What was reported at that point is taken back, though something else was reported after it."""
    race.at("08:40")
    await race.say("ana", "through moor cross 8:38")
    await race.say("ana", "feet bad, mood low")
    assert (await race.say("ana", words)).text.startswith("Taken back: Maren through Moor Cross")
    assert await _times(race, "moor") == (None, None)
    assert len(await race.entries("how she is")) == 1
    assert not await race.entries("not here yet")


async def test_a_time_put_right_before_a_comma(race: Race) -> None:
    """Whatever stands behind it says why; one report is left, with the words."""
    await _seen_in(race)
    await race.say("ana", "no hang on, 8:36, my watch is fast")
    arrived, _ = await _times(race, "moor")
    assert arrived is not None
    assert arrived.minute == 36


async def test_undo_of_a_point_too_old_says_how_to_correct_it(race: Race) -> None:
    """Older than ten minutes nothing is taken back, least of all what came later."""
    await _seen_in(race)
    race.at("08:55")
    await race.say("ana", "eating well, mood good")
    text = (await race.say("ana", "undo in at moor cross")).text
    assert text == (
        "That is more than 10 min old. Send what is right instead: ‘correction: in at Moor Cross 14:20’."
    )
    assert len(await race.entries("taken back")) == 0


async def test_undo_where_one_reported_nothing(race: Race) -> None:
    """Nothing of theirs there: that is said with how to correct it, and nothing else is taken back."""
    await race.say("ana", "eating well, mood good")
    text = (await race.say("ana", "undo in at brindle gate")).text
    assert text.startswith("I have no report of yours at Brindle Gate to take back; nothing is changed.")
    assert len(await race.entries("taken back")) == 0


@pytest.mark.parametrize(
    "words",
    ["moor cross was 8:35 not 8:38", "in at moor cross was 8:35", "the moor cross was 8:35, not 8:38"],
)
async def test_a_time_is_corrected_by_its_point(race: Race, words: str) -> None:
    """The writer's own report there gets the new time; what was reported elsewhere since stays as it was."""
    await _seen_in(race)
    race.at("10:40")
    await race.say("ana", "out of moor cross 8:45")
    await race.say("ana", "in at brindle gate 10:35")
    if words.startswith("in"):
        await race.say("ana", words)
        assert [t.strftime("%H:%M") for t in await _times(race, "moor") if t] == ["07:35", "07:45"]
    else:
        # The bare name is about the later of two reports there.
        await race.say("ana", words.replace("8:35", "8:50").replace("8:38", "8:45"))
        assert [t.strftime("%H:%M") for t in await _times(race, "moor") if t] == ["07:38", "07:50"]
    gate = (await _times(race, "gate"))[0]
    assert gate is not None
    assert gate.strftime("%H:%M") == "09:35"


async def test_a_corrected_time_of_nobodys_report_is_asked_about(race: Race) -> None:
    """Where the writer reported nothing, 'Moor Cross was 7:25 not 7:20' is kept and asked about."""
    text = (await race.say("ana", "moor cross was 7:25 not 7:20")).text
    assert text.startswith("Maren in at Moor Cross, 07:25: is that right?")


async def test_a_race_that_is_over_comes_before_any_window(race: Race) -> None:
    """After she retired: what, where, when and by whom first, not that there is no window."""
    race.at("08:50")
    await race.say("ana", "she retired at moor cross 8:48 own choice")
    for words in ("has maren quit?", "when will she finish", "when is she at brindle gate", "next"):
        first = (await race.say("ana", words)).text.split("\n")[0]
        assert "retired" in first, (words, first)
        assert "no window" not in first
    first = (await race.say("ana", "when will she finish")).text.split("\n")[0]
    assert first.startswith("Maren: retired at Moor Cross 08:48, reported by Ana")


async def test_an_old_undo_button_is_as_old_after_a_restart(race: Race) -> None:
    """The limit goes by when the entry was stored: a bot that was started anew has forgotten it, the server has not.
    Within ten minutes it is undone all the same."""
    race.at("09:15")
    noted = await race.say("ana", "in at moor 09:14")
    race.at("09:23")
    race.desk = Conversing(race.api)
    assert (await race.press("ana", noted, "Undo")).text == "Taken back: Maren in at Moor Cross, 09:14."
    race.at("09:25")
    noted = await race.say("ana", "in at moor 09:24")
    race.at("09:36")
    race.desk = Conversing(race.api)
    late = await race.press("ana", noted, "Undo")
    assert late.text.startswith("That is more than 10 min old.")
    assert len(await race.entries("taken back")) == 1


async def test_a_call_for_help_is_taken_back_however_late(race: Race) -> None:
    """Hers alone to say that it was nothing, restart or not."""
    race.at("07:30")
    cried = await race.say("maren", "help")
    race.at("08:30")
    race.desk = Conversing(race.api)
    await race.press("maren", cried, "Undo")
    assert len(await race.entries("taken back")) == 1


@pytest.mark.parametrize("words", ["sorry, 43 she went not 45", "raus war sie um 43, nicht 45", "43 pas 45"])
async def test_minutes_alone_put_the_report_with_those_minutes_right(race: Race, words: str) -> None:
    """However long ago it was, and though other things were said since; and what it is in the place of is said."""
    await _seen_in(race)
    race.at("08:46")
    await race.say("ana", "out of moor cross 8:45")
    race.at("09:20")
    await race.say("ana", "eating well, mood good")
    text = (await race.say("ana", words)).text
    assert text.startswith("Noted: Maren out of Moor Cross, 08:43.\nIn place of 08:45.")
    assert [t.strftime("%H:%M") for t in await _times(race, "moor") if t] == ["07:38", "07:43"]


async def test_anybodys_report_is_put_right_by_its_time(race: Race) -> None:
    """Not only the writer's own: the time that was wrong says which is meant, whoever reported it."""
    await _seen_in(race)
    race.at("08:50")
    text = (await race.say("ines", "she was in at 8:33, the 8:38 was somebody elses")).text
    assert text.startswith("Noted: Maren in at Moor Cross, 08:33 (09:33 your clock).\nIn place of 08:38")
    assert [t.strftime("%H:%M") for t in await _times(race, "moor") if t] == ["07:33"]


async def test_a_number_that_is_no_time_of_hers_puts_nothing_right(race: Race) -> None:
    """Nor does a time that is still to come."""
    await _seen_in(race)
    for words in ("43 not 41", "she left with 12 not 38 bars", "in at 8:55 not 8:38"):
        await race.say("ana", words)
        assert [t.strftime("%H:%M") for t in await _times(race, "moor") if t][:1] == ["07:38"], words


async def test_a_volunteer_puts_their_own_time_right(race: Race) -> None:
    """Who may not see what was reported still knows what they themselves did; of another's time nothing is changed."""
    await _seen_in(race)
    race.at("08:46")
    await race.say("vera", "214 out of moor cross 8:45")
    race.at("09:30")
    await race.say("vera", "214 was in at 8:33, the 8:38 was another runner")
    assert [t.strftime("%H:%M") for t in await _times(race, "moor") if t] == ["07:38", "07:45"]
    text = (await race.say("vera", "214 out at 8:43 not 8:45")).text
    assert "Maren out of Moor Cross, 08:43" in text
    assert [t.strftime("%H:%M") for t in await _times(race, "moor") if t] == ["07:38", "07:43"]


async def test_a_supporter_puts_nobodys_time_right(race: Race) -> None:
    """They may not see what was reported, nor change it."""
    await _seen_in(race)
    race.at("08:50")
    await race.say("fan", "she was in at 8:33, the 8:38 was somebody elses")
    assert [t.strftime("%H:%M") for t in await _times(race, "moor") if t] == ["07:38"]


@pytest.mark.parametrize(
    ("gone", "words"),
    [
        ("she's left moor cross", "no wait she's come back"), ("out of moor cross", "oh shes back again"),
        ("she's gone from moor cross", "hang on, shes still here"), ("moor cross raus", "nein warte sie ist zurückgekommen"),
        ("moor cross raus", "ach ne sie ist doch noch da"), ("repartie de moor cross", "non attends elle est revenue"),
    ],
)  # fmt: skip
async def test_who_has_come_back_has_not_left(race: Race, gone: str, words: str) -> None:
    """Right after the report that she left; what came before it stays."""
    await _seen_in(race)
    await race.say("ana", gone)
    assert (await _times(race, "moor"))[1] is not None
    await race.say("ana", words)
    arrived, left = await _times(race, "moor")
    assert arrived is not None
    assert left is None


async def test_come_back_long_after_takes_nothing_back(race: Race) -> None:
    """Ten minutes on it is news, and no slip."""
    await _seen_in(race)
    await race.say("ana", "she's left moor cross")
    race.at("08:58")
    await race.say("ana", "shes come back")
    assert (await _times(race, "moor"))[1] is not None


@pytest.mark.parametrize(
    ("still", "gone"),
    [
        ("not gone yet", "ok NOW shes gone"), ("shes still here", "right now shes off"),
        ("noch nicht weg", "so jetzt ist sie weg"), ("pas encore partie", "ça y est elle est partie"),
    ],
)  # fmt: skip
async def test_not_gone_yet_and_then_gone(race: Race, still: str, gone: str) -> None:
    """That she has not left says nothing of another point; that she has, is of the one where she was."""
    await _seen_in(race)
    await race.say("ana", still)
    assert not await race.entries("not here yet")
    assert (await _times(race, "moor"))[1] is None
    await race.say("ana", gone)
    assert (await _times(race, "moor"))[1] is not None


@pytest.mark.parametrize(
    "words", ["no rubbish 8:36", "ne quatsch 8.36", "non n'importe quoi 8h36", "nah 8:36"]
)
async def test_a_time_put_right_rudely(race: Race, words: str) -> None:
    """The time of the report before, in any temper."""
    await _seen_in(race)
    await race.say("ana", words)
    arrived, _ = await _times(race, "moor")
    assert arrived is not None
    assert arrived.minute == 36


async def test_of_her_own_race_she_is_asked_as_of_hers(race: Race) -> None:
    """Whoever runs is not spoken of as somebody else."""
    reply = await race.say("maren", "i'm done")
    labels = [b.label for row in reply.buttons for b in row]
    assert "Your race is over" in labels
    assert "Her race is over" not in labels
    assert "is your race over" in reply.text


@pytest.mark.parametrize("words", ["sorry she went at 08:47", "raus war 08:47", "repartie à 8h47"])
async def test_who_tells_it_again_with_a_time_tells_a_better_one(race: Race, words: str) -> None:
    """Nobody is out of a point twice: one report is left, with the time said last, though it is the earlier."""
    await _seen_in(race)
    race.at("08:50")
    await race.say("ana", "off again")
    await race.say("ana", words)
    _, left = await _times(race, "moor")
    assert left is not None
    assert left.minute == 47
    counted = [t for t in (await race.state()).runner("maren").times if t.point == "moor"]
    assert not any(t.also_left for t in counted)


@pytest.mark.parametrize("words", ["47 sorry", "sorry 47", "47, pardon", "nein 47"])
async def test_bare_minutes_put_right_are_no_danger(race: Race, words: str) -> None:
    """No number to call above a slip of the finger."""
    await _seen_in(race)
    race.at("08:50")
    await race.say("ana", "out 0848")
    text = (await race.say("ana", words)).text
    assert text.startswith("Noted: Maren out of Moor Cross, 08:47"), text


@pytest.mark.parametrize(
    "words", ["no sorry she's still here. out in a min", "nein doch noch da, gleich weg"]
)
async def test_still_here_takes_back_out_whatever_comes_behind_it(race: Race, words: str) -> None:
    """She has not left."""
    await _seen_in(race)
    race.at("08:50")
    await race.say("ana", "out 0849")
    assert (await race.say("ana", words)).text.startswith("Taken back: Maren out of Moor Cross"), words
    assert (await _times(race, "moor"))[1] is None


async def test_minutes_put_right_are_of_the_report_and_not_of_a_note_beside_it(race: Race) -> None:
    """'In 0838, tomas is done' keeps two things; '36 sorry' is of when she came."""
    race.at("08:40")
    await race.say("ana", "at moor cross. maren in at moor cross 0838, car smells of feet and old soup")
    await race.say("ana", "36 sorry")
    arrived, _ = await _times(race, "moor")
    assert arrived is not None
    assert arrived.minute == 36
