"""While an alarm is open: what is asked about it is answered, what takes it names it, and 'right' is about the report
that was asked about last."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from server.facts.state import Going

if TYPE_CHECKING:
    from conftest import Race

ABOUT_THE_ALARM = (
    "is the alarm still open", "is the alarm over?", "what happened", "what happened?", "what about the alarm",
    "should i be worried", "do we need to worry", "ist der alarm noch offen?", "was ist mit dem alarm?",
    "was ist passiert?", "muss ich mir sorgen machen?",
)  # fmt: skip


WHAT_IS_UP = (
    "what's going on",
    "whats happening??",
    "was ist los??",
    "qu'est-ce qui se passe ??",
    "c'est grave ?",
)


async def _help(race: Race) -> None:
    await race.say("maren", "help, i fell and can't walk")
    await race.tick()  # type: ignore[misc]


@pytest.mark.parametrize("words", ABOUT_THE_ALARM)
async def test_questions_about_the_alarm(race: Race, words: str) -> None:
    """With none open that is said, when she would be late, the last known; with one: since when, its words, whom to call."""
    none = (await race.say("ana", words)).text.split("\n")
    assert none[0] == "No alarm is open about Maren."
    assert none[1].startswith("Maren is not late. ")
    assert any(line.startswith("Last known: ") for line in none)
    await _help(race)
    text = (await race.say("ana", words)).text
    assert text.startswith("Nobody has taken the alarm about Maren yet (asked for help, since 07:30).")
    assert "The words: ‘help, i fell and can't walk’" in text
    assert "Race control, +44 1632 960001" in text
    assert text.endswith("In danger: 112 first.")


@pytest.mark.parametrize("words", ["can i sleep now", "can i sleep now?", "kann ich jetzt schlafen?"])
async def test_nobody_is_sent_to_bed_past_an_open_alarm(race: Race, words: str) -> None:
    """The alarm comes first, and 'no meeting' is no answer then."""
    await _help(race)
    for who in ("ana", "ines"):
        asked = await race.say(who, words)
        if who == "ines":
            asked = await race.press(who, asked, "Maren")
        assert asked.text.startswith("Nobody has taken the alarm about Maren yet"), asked.text
        assert "no meeting left" not in asked.text


async def test_how_she_is_begins_with_the_call_that_is_open(race: Race) -> None:
    """'Is she hurt' is answered with the words of her own call for help, before anything written since."""
    await _help(race)
    await race.say("ana", "eating well, mood good")
    lines = (await race.say("ana", "is she hurt")).text.split("\n")
    assert lines[0] == "Maren’s call for help of 07:30 is still open: ‘help, i fell and can't walk’"
    assert "eating well" in lines[1]
    await race.say("maren", "undo")
    assert "call for help" not in (await race.say("ana", "is she hurt")).text


@pytest.mark.parametrize("words", ["right", "yes", "that's right", "correct"])
async def test_right_confirms_what_was_asked_about(race: Race, words: str) -> None:
    """With an alarm open before it, 'right' to 'is that right?' confirms the report and takes nothing over."""
    await _help(race)
    race.at("08:40")
    await race.say("ana", "a marshal says she is in at moor cross 8:38")
    assert (await race.say("ana", words)).text.startswith("Confirmed. Thank you.")
    assert (await race.state()).runner("maren").going is Going.AT_POINT
    assert "Nobody has taken the alarm" in (await race.say("ana", "who knows about this")).text


async def test_stimmt_confirms_it_in_german(race: Race) -> None:
    """'Stimmt' and 'ja, das ist richtig' are 'that is right'."""
    for minute, words in ((38, "stimmt"), (39, "ja, das ist richtig")):
        await _help(race)
        race.at("08:40")
        await race.say("both", f"a marshal says maren is in at moor cross 8:{minute}")
        assert (await race.say("both", words)).text.startswith("Bestätigt.")


async def test_no_takes_back_what_was_asked_about(race: Race) -> None:
    """'No' to 'is that right?' is about the report too."""
    await _help(race)
    race.at("08:40")
    await race.say("ana", "a marshal says she is in at moor cross 8:38")
    assert (await race.say("ana", "no")).text.startswith("Taken back: Maren in at Moor Cross")


async def test_a_notice_that_came_since_is_what_yes_is_about(race: Race) -> None:
    """An alarm raised after the question about the report is newer than it: 'yes' is to the alarm, and names it."""
    race.at("08:40")
    await race.say("ana", "a marshal says she is in at moor cross 8:38")
    await _help(race)
    text = (await race.say("ana", "yes")).text
    assert text.startswith("It is yours. I ask again ")
    assert "\nMaren: asked for help, since 08:40.\nThe words: ‘help, i fell and can't walk’" in text


async def test_taking_by_button_names_it(race: Race) -> None:
    """However it is taken, the reply says which alarm it is."""
    await _help(race)
    text = (await race.say("ines", "i have it")).text
    assert "Maren: asked for help, since 07:30" in text


@pytest.mark.parametrize("words", ["im ok, false alarm", "all good, false alarm", "alles gut, fehlalarm"])
async def test_her_all_clear_says_that_the_alarm_is_still_open(race: Race, words: str) -> None:
    """Her own 'false alarm' among other words is kept as how she is; the reply says what is open and what ends it."""
    await _help(race)
    text = (await race.say("maren", words)).text
    assert text.startswith(f"Noted how Maren is: ‘{words}’")
    assert "stays open all the same until somebody writes ‘stand down’." in text
    assert "write ‘undo’" in text
    assert (await race.state()).runner("maren").help_open is not None
    await race.say("maren", "undo")
    assert (await race.state()).runner("maren").help_open is None


async def test_undo_after_words_that_went_on_takes_the_call_back(race: Race) -> None:
    """She was told 'if nothing is wrong, write undo'; what she wrote meanwhile went on to those on it, and is not what she
    means."""
    await _help(race)
    assert (await race.say("maren", "still here nobody came")).text.startswith("Sent on word for word")
    await race.say("maren", "undo")
    assert (await race.state()).runner("maren").help_open is None


async def test_who_reports_her_in_reads_that_her_call_is_open_and_what_ends_it(race: Race) -> None:
    """Ana has seen her since: nobody else can say whether she still needs help, and unasked the alarm goes on for hours."""
    await _help(race)
    race.at("08:40")
    text = (await race.say("ana", "maren in at brindle gate")).text
    assert text.startswith("Noted: Maren in at Brindle Gate")
    assert "Maren’s call for help of 07:30 is still open: ‘help, i fell and can't walk’" in text
    assert "Ask whether she still needs help. ‘we have her’ ends this" in text
    await race.say("ana", "got her")
    assert "still open" not in (await race.say("ana", "maren out of brindle gate")).text


@pytest.mark.parametrize("words", WHAT_IS_UP)
async def test_what_is_going_on_is_the_alarm_while_one_is_open(race: Race, words: str) -> None:
    """And not what was told since the writer last asked."""
    await _help(race)
    text = (await race.say("ana", words)).text
    assert text.startswith("Nobody has taken the alarm about Maren yet (asked for help, since 07:30)."), text


async def test_not_her_takes_back_the_call_that_was_for_somebody_else(race: Race) -> None:
    """Everybody hears that it is over; the words are kept as nobody's report; the number stands first."""
    race.at("07:31")
    await race.say("ana", "maren is not responding")
    text = (await race.say("ana", "not maren!! a marshal. ambulance is on its way")).text
    assert text.startswith("If you or anybody near you is in danger call 112 now.")
    assert "Taken back: ‘maren is not responding’" in text
    assert (await race.state()).runner("maren").helps_open == ()


@pytest.mark.parametrize("words", ["no, me, not her", "nein ich, nicht sie"])
async def test_me_and_not_her_is_none_of_hers_any_more(race: Race, words: str) -> None:
    """What was kept as how she is was the writer's; what was theirs already stays."""
    await race.say("ana", "maren fell over, wrist really hurts")
    text = (await race.say("ana", words)).text
    assert text.startswith("If you or anybody near you is in danger call 112 now.")
    assert "Nothing of it counts as a report of her." in text
    await race.say("ana", "my car broke down, can't come")
    assert (await race.say("ana", words)).text == "It is kept as yours already, and not as the runner’s."
