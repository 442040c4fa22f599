"""Two runners and one crew, and what ends a call for help: sentences in a world with two of one's own, and the desk."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import TYPE_CHECKING

import pytest

from server.conversation.understanding import Asked, Context, Distress, Question, Reported, understand
from server.event.model import PartKind
from server.facts.entry import Kind
from server.facts.state import Going
from tests.bot import world

if TYPE_CHECKING:
    from conftest import Race


def _writer(part: str, language: str = "de") -> Context:
    """Somebody of that part for both runners; the runner herself has none but her own."""
    own = ("maren",) if part == "runner" else ("maren", "tove")
    ctx: Context = world.crew_of_maren()
    return replace(ctx, parts=frozenset({PartKind(part)}), own_runners=own, language=language)


@pytest.mark.parametrize(
    ("text", "part", "meaning"),
    [
        ("entwarnung", "safety contact", "ask runner"),
        ("alles gut, entwarnung", "safety contact", "ask runner"),
        ("Entwarnung für Maren", "safety contact", "stand-down - 15:10"),
        ("all good, stand down", "safety contact", "ask runner"),
        ("all clear for Maren", "safety contact", "stand-down - 15:10"),
        ("keine entwarnung", "safety contact", "kept"),
        ("noch keine entwarnung", "safety contact", "ask runner"),
        ("wieder auf dem weg, alles gut", "runner", "moving again - 15:10"),
        ("bin wieder auf der strecke", "runner", "moving again - 15:10"),
        ("weg wieder gefunden", "runner", "moving again - 15:10"),
        ("back on course all fine", "runner", "moving again - 15:10"),
        ("found the path again", "runner", "moving again - 15:10"),
        ("bin da", "runner", "in lathe 15:10"),
        ("bin in brindle", "runner", "in brindle 15:10"),
        ("bin im ziel", "runner", "in finish 15:10"),
        ("i am here", "runner", "in lathe 15:10"),
        ("i can't find the path again", "runner", "distress"),
        ("finde den weg nicht wieder", "runner", "distress"),
        ("noch nicht wieder auf dem weg", "runner", "how she is 15:10"),
        ("still lost", "runner", "distress"),
        ("i'm hurt", "runner", "distress"),
        ("feet hurt and i can't walk", "runner", "distress"),
    ],
)
def test_what_ends_a_call_for_help(text: str, part: str, meaning: str) -> None:
    """A stand-down and 'on the course again' are known in both languages, their opposites never taken for them."""
    assert world.brief(understand(text, _writer(part))) == meaning


@pytest.mark.parametrize(
    "text", ["feet hurt", "i am ok but very slow, feet hurt", "my legs hurt", "quads hurt a bit"]
)
def test_sore_feet_are_no_call_for_help(text: str) -> None:
    """What every runner says at night wakes nobody; whether she is in danger may be asked."""
    assert world.brief(understand(text, _writer("runner", "en"))) != "distress"


TWO = (
    # crew's own place and movements need no runner
    ("bin am kettle howe", "crew there kettle 15:10"),
    ("wir sind in brindle gate", "crew there brindle 15:10"),
    ("we are at brindle", "crew there brindle 15:10"),
    ("bin jetzt am brindle gate", "crew there brindle 15:10"),
    ("at brindle gate", "ask who"),
    ("am brindle gate", "ask who"),
    ("parked", "ask point"),
    ("geparkt", "ask point"),
    ("fahr jetzt los", "acknowledge"),
    ("wir fahren los", "acknowledge"),
    ("bin da", "ask point"),
    ("bin im ziel", "crew there finish 15:10"),
    ("auf dem weg nach brindle", "crew left - 15:10"),
    # both
    ("beide sind los", "out lathe 15:10 & out mill 15:10 /tove"),
    ("both are off", "out lathe 15:10 & out mill 15:10 /tove"),
    ("both have left", "out lathe 15:10 & out mill 15:10 /tove"),
    ("both in", "in lathe 15:10 & in mill 15:10 /tove"),
    ("beide sind da", "in lathe 15:10 & in mill 15:10 /tove"),
    ("hab beide", "in hand - 15:10 & in hand - 15:10 /tove"),
    ("hab sie beide", "in hand - 15:10 & in hand - 15:10 /tove"),
    ("got both", "in hand - 15:10 & in hand - 15:10 /tove"),
    ("beide ok", "how she is 15:10 & how she is 15:10 /tove"),
    ("wo sind beide", "ask runner"),
    ("hoffentlich sind beide bald da", "no check-in"),
    ("got both bottles", "no check-in"),
    # reports that could be about either are asked
    ("sie ist weiter", "ask runner"),
    ("sie hat blasen", "ask runner"),
    ("tove jetzt auch da, blasen am fuß", "in mill 15:10 /tove"),
    # a question is never a report
    ("was hilft bei blasen", "cards"),
    ("was tun bei krampf", "cards"),
    ("hilft cola", "cards"),
    ("hilft cola bei übelkeit", "cards"),
    ("darf sie schlafen", "cards"),
    ("was macht man bei durchfall", "cards"),
    ("was gegen müdigkeit", "cards"),
    ("wie behandelt man blasen", "cards"),
    ("was soll ich bei blasen machen", "cards"),
    ("was hilft gegen krämpfe", "cards"),
    ("sie hat blasen, was nun", "cards"),
    ("sie friert was tun", "cards"),
    ("was tun wenn sie friert", "cards"),
    ("darf sie ibuprofen nehmen", "cards"),
    ("soll sie salz nehmen", "cards"),
    ("kann sie mit blasen weiterlaufen", "cards"),
    ("muss sie zum arzt wenn sie kotzt", "cards"),
    ("was wenn sie sich übergibt", "cards"),
    ("hilft salz gegen krämpfe", "cards"),
    ("helfen salztabletten", "cards"),
    ("was mache ich wenn sie verwirrt ist", "cards"),
    ("ist cola gut bei übelkeit", "cards"),
    ("sie zittert, was machen wir", "cards"),
    ("blasen?", "cards"),
    ("what helps with blisters", "cards"),
    ("does coke help", "cards"),
    ("can she sleep", "cards"),
    ("should she take ibuprofen", "cards"),
    ("hat sie blasen", "ask runner"),
    ("ist ihr kalt", "ask runner"),
    # places in the other language, and places that are not on the course
    ("wann ist maren an der brücke", "at pell"),
    ("wann ist maren an der mühle", "at mill"),
    ("when is maren at the bridge", "at pell"),
    ("wann ist maren am fluss", "ask point"),
    ("wann ist maren am hubertushof", "ask point"),
    ("when is maren at the castle", "ask point"),
    # the start
    ("der start ist um 30 min verschoben", "start delayed - 15:10"),
    ("der start verzögert sich um 20 min", "start delayed - 15:10"),
    ("start is delayed by 30 min", "start delayed - 15:10"),
    # waiting for one of them is no question about the finish
    ("soll ich auf maren warten oder zum ziel", "wait or go"),
)


@pytest.mark.parametrize(("text", "meaning"), TWO)
def test_with_two_runners_of_ones_own(text: str, meaning: str) -> None:
    """What needs no runner asks for none, 'both' is a report for each, a question is none, no place is guessed."""
    meant = understand(text, _writer("crew"))
    if meaning == "no check-in":
        assert not isinstance(meant, Reported) or not {r.kind for r in meant.reports} & {
            Kind.IN,
            Kind.OUT,
            Kind.IN_HAND,
        }
        return
    assert world.brief(meant) == meaning


def test_a_delay_of_the_start_has_its_length() -> None:
    """'Um 30 min verschoben' says by how much."""
    meant = understand("der start ist um 30 min verschoben", _writer("crew"))
    assert isinstance(meant, Reported)
    assert meant.reports[0].amount == timedelta(minutes=30)


def test_a_runners_name_after_a_question_about_oneself_asks_where_she_is() -> None:
    """'Und Tove?' repeats a question about a runner; after 'what must I do' it asks where Tove is."""
    ctx = _writer("crew")
    for last, meaning in (
        (Asked(Question.DUTY), "where /tove"),
        (Asked(Question.NUMBERS), "where /tove"),
        (Asked(Question.FINISH, "maren"), "finish /tove"),
        (Asked(Question.FINISH), "where /tove"),
    ):
        assert world.brief(understand("und tove?", replace(ctx, last=last))) == meaning


async def test_a_stand_down_is_about_the_open_alarm(race: Race) -> None:
    """'Entwarnung' with two runners ends, once more asked, the alarm that is open, whoever was spoken of last."""
    race.at("07:40")
    await race.say("tove", "hab mich verlaufen")
    await race.tick()  # type: ignore[misc]
    await race.say("ines", "i have it")
    await race.say("ines", "where is maren")
    asked = await race.say("ines", "all good, stand down")
    assert asked.text == "End the alarm for Tove for everybody? It is still on: press ‘Right’ or write ‘yes’."
    assert (await race.state()).runner("tove").help_open is not None
    assert (await race.say("ines", "yes")).text.startswith("Confirmed.")
    assert [e.runner for e in await race.entries("stand-down")] == ["tove"]  # type: ignore[attr-defined]
    assert (await race.say("ines", "who knows about tove")).text.startswith("No alarm is open about Tove.")


async def test_going_on_leaves_the_call_for_help_open_until_it_is_taken_back(race: Race) -> None:
    """She says she is on the course again: noted, with how she is, and told that the alarm stays; 'undo' ends it,
    however late."""
    race.at("07:40")
    await race.say("maren", "i am lost")
    await race.tick()  # type: ignore[misc]
    race.at("08:00")
    told = (await race.say("maren", "back on course, all fine")).text.split("\n")
    assert any(x.startswith("The alarm about your call for help stays open all the same") for x in told)
    assert told[-1] == "If it was nothing, write ‘undo’: that takes your call for help back."
    assert len(await race.entries("how she is")) == 1
    assert (await race.say("ana", "who knows about this")).text.startswith("Nobody has taken the alarm")
    await race.say("maren", "undo")
    assert (await race.say("ana", "who knows about this")).text.startswith("No alarm is open about Maren.")
    assert (await race.state()).runner("maren").going is Going.MOVING


async def test_a_false_alarm_of_her_own_is_taken_back(race: Race) -> None:
    """A runner may not stand an alarm down, but her own call was hers to make: 'false alarm' takes it back."""
    await race.say("maren", "help")
    await race.tick()  # type: ignore[misc]
    await race.say("maren", "false alarm")
    assert (await race.say("ana", "who knows about this")).text.startswith("No alarm is open about Maren.")


@pytest.mark.parametrize("words", ["i have it, driving to her", "I have it, driving to him"])
async def test_taking_it_needs_no_answer_to_what_else_was_said(race: Race, words: str) -> None:
    """'I have it, driving there': of which runner is not asked before the one open alarm is theirs, and the words go on."""
    await race.say("maren", "help, broken arm")
    await race.tick()  # type: ignore[misc]
    told = (await race.say("both", words)).text
    assert "Welche Läuferin" not in told
    assert (await race.say("ana", "who knows about this")).text.startswith("Birgit has the alarm"), told


async def test_crew_of_two_are_answered_about_both(race: Race) -> None:
    """'Next', 'where' with two runners and none named: a line for each, and nothing is asked back."""
    for question in ("nächster punkt", "wo ist sie", "wo sind beide"):
        told = (await race.say("both", question)).text
        assert "Welche Läuferin" not in told
        assert "Maren" in told, question
        assert "Tove" in told, question
    open_again = await race.say("both", "sie ist weiter")
    assert open_again.text == "Welche Läuferin?"


async def test_crew_of_two_are_told_of_their_earliest_meeting(race: Race) -> None:
    """When to leave, where next, what to bring is theirs: the earliest of their meetings, with its runner's name."""
    for question in (
        "wann muss ich los",
        "nächster treffpunkt",
        "was bringen wir mit",
        "wie lange fahre ich",
    ):
        told = (await race.say("both", question)).text
        assert "Welche Läuferin" not in told, question
        assert "Tove" in told.split("\n")[0], (question, told)
        assert "Brindle Gate" in told, (question, told)
    assert "poles" in (await race.say("both", "was bringen wir mit")).text


async def test_ones_own_place_needs_no_runner_and_places_what_follows(race: Race) -> None:
    """'Bin am …' counts at once; 'Tove auch da, Blasen am Fuß' is then in there, and how she is."""
    race.at("09:40")
    there = await race.say("both", "bin am brindle gate")
    assert there.text.startswith("Notiert: du bist in Brindle Gate, 09:40.")
    race.at("09:50")
    noted = await race.say("both", "tove jetzt auch da, blasen am fuß")
    assert noted.text.startswith("Notiert für Tove: in Brindle Gate angekommen, 09:50.")
    assert len(await race.entries("how she is")) == 1
    asked = await race.say("both", "was hilft bei blasen")
    assert "\nhot spot or blister on a foot. SANITÄTER holen" in asked.text
    assert len(await race.entries("how she is")) == 1


async def test_both_are_off_is_a_report_for_each(race_to_come: Race) -> None:
    """Each is kept by itself, asked by the runner's name; one 'ja' stands for the whole message."""
    race_to_come.at("05:01")
    asked = await race_to_come.say("both", "beide sind los")
    assert [[b.label for b in row] for row in asked.buttons] == [
        ["Maren: richtig", "Maren: falsch"],
        ["Tove: richtig", "Tove: falsch"],
    ]
    assert (await race_to_come.say("both", "ja")).text.startswith("Bestätigt.")
    state = await race_to_come.state()
    assert {state.runner(r).going for r in ("maren", "tove")} == {Going.MOVING}


async def test_only_the_organiser_moves_the_start(race_to_come: Race) -> None:
    """Crew who write that the start is put off are told that it was not counted, and whom to tell."""
    told = (await race_to_come.say("both", "der start ist um 30 min verschoben")).text
    assert told.startswith("Nicht notiert: ")
    assert told.endswith("Sag es Race control: +44 1632 960001.")
    assert not await race_to_come.entries("start delayed")


async def test_a_name_after_a_question_of_ones_own_asks_where_she_is(race: Race) -> None:
    """'Und Tove?' after 'was muss ich tun', or long after any question, is where Tove is."""
    await race.say("both", "was muss ich tun")
    assert (await race.say("both", "und tove?")).text.startswith("Tove")
    await race.say("both", "wann ist maren im ziel")
    race.at("08:20")
    await race.say("both", "maren hat blasen")
    assert "finish" not in (await race.say("both", "und tove?")).text.split("\n")[0]


async def test_the_duty_of_crew_reads_well_for_two(race: Race) -> None:
    """Two names stand before no verb that would have to agree with them."""
    text = (await race.say("both", "was muss ich tun")).text
    duty = next(line for line in text.split("\n") if line.startswith("Du bist Crew für Maren und Tove. "))
    assert duty.count("Maren") == 1


async def test_she_is_whom_was_spoken_of_last(race: Race) -> None:
    """Asked of Maren, then told of Tove: 'sie' is Tove, also after a question about nobody; an hour later it is asked."""
    race.at("07:40")
    await race.say("both", "wo ist maren")
    await race.say("both", "tove in skelter mill angekommen 7:35")
    await race.say("both", "was hilft bei blasen")
    assert "Tove" in (await race.say("both", "sie ist weiter")).text
    race.at("09:00")
    assert (await race.say("both", "sie ist weiter")).text == "Welche Läuferin?"


@pytest.mark.parametrize(
    ("text", "whose"),
    [
        ("both need help", ["maren", "tove"]),
        ("beide brauchen hilfe", ["maren", "tove"]),
        ("they are both hurt, need help", ["maren", "tove"]),
        ("Maren and Tove need help", ["maren", "tove"]),
        ("Tove und Maren brauchen Hilfe", ["maren", "tove"]),
        ("they need an ambulance", ["maren", "tove"]),
        ("Tove needs help", ["tove"]),
        ("she needs help", [None]),
    ],
)
def test_a_call_for_two_is_for_both(text: str, whose: list[str | None]) -> None:
    """Nobody of the two is left out because one sentence spoke of both."""
    meant = understand(text, _writer("crew"))
    assert isinstance(meant, Distress)
    assert [meant.runner, *meant.also] == whose
    assert meant.words == text


async def test_both_need_help_raises_both_alarms_and_undo_ends_both(race: Race) -> None:
    """Each alarm is raised in the same minute with the same words; 'undo' takes both calls back."""
    await race.say("both", "both need help, rock fall")
    await race.tick()  # type: ignore[misc]
    calls = await race.entries("asked for help")
    assert sorted(e.runner for e in calls) == ["maren", "tove"]
    assert {e.words for e in calls} == {"both need help, rock fall"}
    state = await race.state()
    assert state.runner("maren").help_open is not None
    assert state.runner("tove").help_open is not None
    await race.say("both", "undo")
    state = await race.state()
    assert state.runner("maren").help_open is None
    assert state.runner("tove").help_open is None


async def _notices(race: Race, who: str) -> list[str]:
    """What a person has been sent, oldest first."""
    return [n["text"] for n in await race.notices(who)]


WHICH = (
    (
        "both",
        "sie braucht hilfe",
        "Ist sie verletzt? Ruf 112 an. Race control: +44 1632 960001.",
        "Du hast nicht gesagt, welche Läuferin: der Alarm läuft für Maren und Tove. Welche ist es?",
        "Beide",
        "Für Tove: ihr Alarm bleibt offen. Zurückgenommen für Maren.",
    ),
    (
        "ines",
        "she needs help",
        "Is she hurt? Call 112. Race control: +44 1632 960001.",
        "You did not say which runner: the alarm is out for Maren and Tove. Which one is it?",
        "Both",
        "For Tove: her alarm stays open. Taken back for Maren.",
    ),
)


@pytest.mark.parametrize(("who", "words", "first", "which", "everyone", "answered"), WHICH)
@pytest.mark.parametrize("how", ["button", "words"])
async def test_a_call_that_names_nobody_is_for_each_until_it_is_said(
    race: Race, who: str, words: str, first: str, which: str, everyone: str, answered: str, how: str
) -> None:
    """Both alarms at once, which say that nobody knows for whom; asked which; the answer stands the other down with
    the reason, and those who look for the right one hear that it is she."""
    reply = await race.say(who, words)
    said = reply.text.split("\n")
    assert (said[0], said[2]) == (first, which)
    assert [row[0].label for row in reply.buttons][:3] == ["Maren (214)", "Tove (87)", everyone]
    state = await race.state()
    assert all(state.runner(r).help_open is not None for r in ("maren", "tove"))
    sent = (await _notices(race, "olga"))[-2:]
    name = "Birgit" if who == "both" else "Ines"
    for text, runner in zip(sorted(sent), ("Maren (bib 214)", "Tove (bib 87)"), strict=True):
        assert text.startswith(f"ALARM: HELP IS NEEDED for {runner}.")
        assert f"NOT SAID FOR WHOM: {name} has more than one runner, and this alarm is out for each" in text
    race.at("07:31")
    told = await (race.press(who, reply, "Tove") if how == "button" else race.say(who, "Tove"))
    assert told.text.split("\n")[0] == answered
    state = await race.state()
    assert (state.runner("maren").help_open, state.runner("tove").help_open is None) == (None, False)
    await race.tick()  # type: ignore[misc]
    down = [t for t in await _notices(race, "ana") if t.startswith("STAND-DOWN")]
    assert len(down) == 1
    assert f"Why: the call for help was for Tove. By {name}, 07:31." in down[0]
    known = [t for t in await _notices(race, "olga") if "says now: the call for help is for" in t]
    assert [t.split("\n")[0] for t in known] == [
        f"{name} says now: the call for help is for Tove (bib 87). The alarm about her is open."
    ]
    assert (await race.say("olga", "who knows about maren")).text.startswith("No alarm is open about Maren.")
    race.at("07:36")
    await race.tick()  # type: ignore[misc]
    again = (await _notices(race, "olga"))[-1]
    assert "Tove" in again
    assert "NOT SAID FOR WHOM" not in again


@pytest.mark.parametrize(("who", "words"), [("both", "beide"), ("both", "es sind beide"), ("ines", "both")])
async def test_it_may_be_both(race: Race, who: str, words: str) -> None:
    """Said so, both alarms stay, and say so; 'undo' takes both back."""
    await race.say(who, "she needs help")
    text = (await race.say(who, words)).text
    known = [t for t in await _notices(race, "olga") if "says now: the call for help is for" in t]
    assert sorted("Maren" in t.split("\n")[0] for t in known) == [False, True]
    assert text.split("\n")[0].endswith(("offen für Maren und Tove.", "open for Maren and Tove."))
    state = await race.state()
    assert all(state.runner(r).help_open is not None for r in ("maren", "tove"))
    await race.say(who, "undo")
    state = await race.state()
    assert all(state.runner(r).help_open is None for r in ("maren", "tove"))


async def test_a_second_call_by_name_leaves_the_first_open_and_asks_again(race: Race) -> None:
    """'Tove needs help' may be the answer or a second casualty: it goes out, nothing is taken back unasked."""
    await race.say("ines", "she needs help")
    reply = await race.say("ines", "tove needs help")
    assert "Which one is it?" in reply.text
    state = await race.state()
    assert [len(state.runner(r).helps_open) for r in ("maren", "tove")] == [1, 2]
    await race.press("ines", reply, "Tove")
    state = await race.state()
    assert [len(state.runner(r).helps_open) for r in ("maren", "tove")] == [0, 2]


async def test_whom_was_spoken_of_is_named_in_the_reply(race: Race) -> None:
    """'She' of the question before is Maren: one alarm, and the reply says about whom, so that a slip is seen."""
    await race.say("ines", "where is maren")
    reply = (await race.say("ines", "she needs help")).text
    assert "The alarm is about Maren, of whom we spoke before." in reply
    state = await race.state()
    assert (state.runner("maren").help_open is not None, state.runner("tove").help_open) == (True, None)


async def test_a_runners_own_help_is_hers_alone(race: Race) -> None:
    """Whoever runs and cries for help is asked nothing."""
    reply = await race.say("maren", "help")
    assert [row[0].label for row in reply.buttons] == ["Undo"]
    assert (await race.state()).runner("tove").help_open is None


@pytest.mark.parametrize("words", ["she's out", "she has dropped out"])
async def test_nobodys_race_is_ended_by_a_guess(race: Race, words: str) -> None:
    """Asked what 'out' is, with two runners and none named it is asked who: then she retires, not the first."""
    reply = await race.say("ines", words)
    if words == "she's out":
        reply = await race.press("ines", reply, "Her race is over")
    assert reply.text == "Which runner?"
    assert await race.entries("retired") == []
    assert (await race.press("ines", reply, "Tove")).text.startswith("Noted: Tove retired, place not given")
    state = await race.state()
    assert (state.runner("maren").going, state.runner("tove").going) == (Going.MOVING, Going.RETIRED)


async def test_who_left_is_asked_as_well(race: Race) -> None:
    """'Left a point, going on' of nobody named: neither is sent on before it is said."""
    reply = await race.press("ines", await race.say("ines", "she's out"), "Left a point")
    assert reply.text == "Which runner?"
    assert len(await race.entries("out")) == 3
