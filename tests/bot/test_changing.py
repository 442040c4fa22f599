"""The plan changed from a chat by the meeting's own button: what it would be, 'yes', who hears it, and its undoing."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from server.conversation.telling.message import DATA_BYTES_MAX, Press, data

if TYPE_CHECKING:
    from conftest import Race

    from bot.channels.base import Reply


def labels(reply: Reply) -> list[str]:
    """What the buttons say."""
    return [b.label for row in reply.buttons for b in row]


async def changed(race: Race, who: str) -> list[str]:
    """What somebody was told of new versions."""
    await race.tick()
    return [n["text"] for n in await race.notices(who) if n["kind"] == "new version"]


async def text(race: Race) -> str:
    """The event file in force."""
    return (await race.journal.load_event(race.event.id)).text


async def test_another_driver_by_button_and_taken_back(race: Race) -> None:
    """From 'when do I leave' to done in three presses; looking does nothing; who drove, who drives and she hear it."""
    before = await text(race)
    asked = await race.say("ana", "when do i leave for brindle gate")
    menu = await race.press("ana", asked, "Change this meeting")
    assert menu.text == "Brindle Gate, Maren: Ana. What is to change?"
    assert labels(menu) == [
        "Birgit drives",
        "Meet at another point",
        "Leave it out",
        "Just finish, no target",
    ]
    look = await race.press("ana", menu, "Birgit drives")
    assert look.text.startswith("Not changed yet. It would mean:"), look.text
    assert "Ana: No longer yours: Brindle Gate, Maren (was Ana · blue van · dry shirt)." in look.text
    assert "Birgit: New: Brindle Gate, Maren: Birgit · " in look.text
    assert labels(look) == ["Yes, change it", "No, leave it"]
    assert (await race.press("ana", look, "No")).text == "Nothing is changed."
    assert await text(race) == before
    done = await race.press("ana", look, "Yes", key="k-yes")
    assert done.text.startswith("Changed. "), done.text
    assert "Birgit" in done.text
    assert (await race.press("ana", look, "Yes", key="k-yes")).text == done.text
    assert any("Nicht mehr deins" in t or "Neu: Brindle Gate" in t for t in await changed(race, "both"))
    assert any("No longer yours: Brindle Gate" in t for t in await changed(race, "ana"))
    assert await changed(race, "tove") == []
    undone = await race.press("ana", done, "Undo")
    assert undone.text.startswith("Taken back. "), undone.text
    assert await text(race) == before
    assert any("New: Brindle Gate, Maren: Ana" in t for t in await changed(race, "ana"))


async def test_meet_elsewhere_and_leave_out(race: Race) -> None:
    """Only points where crew may be and nobody meets her are offered; the meeting is then there, with its kit."""
    asked = await race.say("ana", "when do i leave for brindle gate")
    menu = await race.press("ana", asked, "Change this meeting")
    where = await race.press("ana", menu, "Meet at another point")
    assert labels(where) == ["Low Barn finish"]
    look = await race.press("ana", where, "Low Barn finish")
    assert "Ana: Low Barn finish, Maren, place: was Brindle Gate, now Low Barn finish." in look.text
    await race.press("ana", look, "Yes")
    assert 'point = "finish"\nrunner = "maren"' in await text(race)
    asked = await race.say("ana", "when do i leave for the finish")
    menu = await race.press("ana", asked, "Change this meeting")
    await race.press("ana", await race.press("ana", menu, "Leave it out"), "Yes")
    assert 'kit = ["dry shirt"]' not in await text(race)
    assert (await race.journal.event_versions(race.event.id))[-1].version == 3


async def test_what_can_not_be_and_what_went_stale_are_said(race: Race) -> None:
    """No time limit to finish in; a plan that somebody else has changed since it was looked at."""
    menu = await race.press(
        "ana", await race.say("ana", "when do i leave for brindle gate"), "Change this meeting"
    )
    assert (await race.press("ana", menu, "Just finish")).text.startswith(
        "That can’t be: the race has no time"
    )
    mine, theirs = (
        await race.press("ana", menu, "Leave it out"),
        await race.press("ana", menu, "Birgit drives"),
    )
    await race.press("ana", theirs, "Yes")
    late = await race.press("ana", mine, "Yes")
    assert "The plan has changed meanwhile" in late.text
    assert (await race.journal.event_versions(race.event.id))[-1].version == 2


async def test_a_supporter_is_offered_no_change_and_a_made_up_button_does_nothing(race: Race) -> None:
    menu = await race.press(
        "ana", await race.say("ana", "when do i leave for brindle gate"), "Change this meeting"
    )
    skip = next(b.data for row in menu.buttons for b in row if b.label == "Leave it out")
    for who in ("fan", "vera"):
        assert "Change this meeting" not in labels(
            await race.say(who, "when does ana leave for brindle gate")
        )
        reply = await race.say(who, button=skip)
        assert not reply.text.startswith("Not changed yet"), reply.text
    reply = await race.say("ana", button="w|x|maren|gate|||")
    assert reply.text
    assert len(await race.journal.event_versions(race.event.id)) == 1


def test_the_longest_button_fits() -> None:
    """Ids of forty signs, the thousandth version."""
    assert len(data(Press.CHANGE, "d", *["x" * 16] * 3, "3e8", "abcde").encode()) <= DATA_BYTES_MAX


async def test_in_words_whoever_may_sees_what_it_would_be(race: Race) -> None:
    """Of a meeting that is not the writer's nobody can be asked to swap: the plan itself is what they can change."""
    await race.say("ines", "where is maren")
    reply = await race.say("ines", "can birgit take brindle gate instead of me")
    assert reply.text.startswith("Not changed yet. It would mean:"), reply.text
    done = await race.press("ines", reply, "Yes")
    assert "Birgit" in done.text
    assert 'crew = ["both"]\ncar = "van"' in await text(race)


@pytest.mark.parametrize(
    ("who", "words"),
    [
        ("ana", "skip brindle gate"),
        ("ana", "Let's drop the meeting at Brindle Gate please"),
        ("ana", "can we leave out brindle?"),
        ("both", "Brindle Gate mit Maren auslassen"),
        ("both", "lass uns Brindle Gate bei Maren weglassen"),
        ("maren", "on saute Brindle Gate"),
        ("maren", "annulons le rendez-vous à Brindle Gate"),
    ],
)
async def test_a_meeting_is_left_out_in_words(race: Race, who: str, words: str) -> None:
    """It leads to the same preview and the same yes; the words alone change nothing."""
    before = await text(race)
    look = await race.say(who, words)
    assert "Brindle Gate, Maren (" in look.text, look.text
    assert "Tove" not in look.text
    assert len(labels(look)) == 2
    assert await text(race) == before
    done = await race.press(who, look, labels(look)[0])
    assert len(labels(done)) == 1, done.text
    assert 'kit = ["dry shirt"]' not in await text(race)


@pytest.mark.parametrize(
    "words",
    [
        "she dropped at brindle gate",
        "drop bag at brindle gate",
        "did she skip brindle gate",
        "she may drop at brindle gate",
        "skip brindle gate she is hurt",
        "skip",
        "don't skip brindle gate",
        "cancel the alarm at brindle gate",
    ],
)
async def test_other_words_with_such_a_word_in_them_are_no_change(race: Race, words: str) -> None:
    reply = await race.say("ana", words)
    assert not reply.text.startswith("Not changed yet"), reply.text


async def test_the_target_is_given_up_in_words(race: Race) -> None:
    """Here the race has no time limit to finish in: that is said, by the same path."""
    assert (await race.say("ana", "just finish maren")).text.startswith("That can’t be: the race has no time")
    which = await race.say("both", "vergiss das Ziel")
    assert (which.text, labels(which)) == ("Was ist gemeint?", ["Maren", "Tove"])
    assert "Zeitlimit" in (await race.press("both", which, "Tove")).text


async def test_who_may_not_change_the_plan_is_shown_no_change_for_words_either(race: Race) -> None:
    for who in ("fan", "vera"):
        reply = await race.say(who, "skip brindle gate")
        assert not reply.text.startswith("Not changed yet"), reply.text


async def test_a_thing_is_added_to_the_kit_in_words(race: Race) -> None:
    """Looked at first, done on 'yes', told to who drives there; what was on the list stays on it."""
    look = await race.say("ana", "add gloves to the kit for Brindle Gate")
    assert look.text.startswith("Not changed yet. It would mean:"), look.text
    assert "gloves" not in await text(race)
    done = await race.press("ana", look, "Yes")
    assert done.text.startswith("Changed. "), done.text
    assert '"gloves"' in await text(race)
    assert "dry shirt" in (await race.say("ana", "what do i bring to brindle gate")).text
    await race.press("ana", done, "Undo")
    assert '"gloves"' not in await text(race)


async def test_a_person_is_added_in_words_and_their_invitation_told(race: Race) -> None:
    """Name and number; who added them reads the invitation, once."""
    look = await race.say("ana", "add Petra to the crew, her number is +44 1632 960044")
    assert labels(look) == ["Yes, change it", "No, leave it"], look.text
    done = await race.press("ana", look, "Yes")
    assert "Petra is added. Their invitation, good once: " in done.text
    assert 'phone = "+44 1632 960044"' in await text(race)


async def test_the_button_of_an_older_wish_adds_nothing(race: Race) -> None:
    """The words stand with who wrote them, and are the last ones: an older button is not about those."""
    first = await race.say("ana", "add gloves to the kit for Brindle Gate")
    await race.say("ana", "add goggles to the kit for Brindle Gate")
    assert "no longer know" in (await race.press("ana", first, "Yes")).text
    assert '"goggles"' not in await text(race)


async def test_a_wish_that_differs_in_its_last_word_is_another(race: Race) -> None:
    """The button of the first does nothing of the second: one person with two numbers, one thing at two places."""
    first = await race.say("ana", "add Petra to the crew, her number is +44 1632 960044")
    second = await race.say("ana", "add Petra to the crew, her number is +44 1632 960055")
    assert "no longer know" in (await race.press("ana", first, "Yes")).text
    assert '"Petra"' not in await text(race)
    assert (await race.press("ana", second, "Yes")).text.startswith("Changed. ")
    assert "+44 1632 960055" in await text(race)


@pytest.mark.parametrize("words", ["bring her to Brindle Gate too", "add 10 minutes to Brindle Gate"])
async def test_neither_she_nor_minutes_are_kit(race: Race, words: str) -> None:
    """What is no thing is not offered as one."""
    assert not (await race.say("ana", words)).text.startswith("Not changed yet")
