"""The event file's own words in a reply: before 'not understood' and before 'the plan says nothing'; each question of a
message has its answer or is quoted back."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from conftest import Race


async def test_what_the_file_says_stands_first(race: Race) -> None:
    """Word for word, with where it stands; a volunteer, who may not see it, gets none of it."""
    told = (await race.say("ana", "so if we missed her at the mill then, whats it say")).text
    assert "drive on to Brindle Gate" in told, told
    other = (await race.say("vera", "so if we missed her at the mill then, whats it say")).text
    assert "drive on to" not in other


async def test_a_question_of_something_else_gets_no_line(race: Race) -> None:
    """The weir is a car park, no swimming bath."""
    told = (await race.say("ana", "is there a swimming pool in the village")).text
    assert "weir" not in told
    assert "plan says of" not in told


async def test_each_of_two_questions_is_answered_or_quoted_back(race: Race) -> None:
    """'Who is at the gate and what's she eating there': one never swallows the other."""
    told = (await race.say("maren", "whos at brindle gate and whats the code for the blue tent")).text
    assert "Ana" in told, told
    assert "code for the blue tent" in told or "it is not in the plan" in told, told


async def test_words_for_two_people_go_to_each(race: Race) -> None:
    """'Tell Ana … and Birgit a cold beer' is for both; '… and Birgit is late' is told to Ana."""
    told = (await race.say("ines", "tell ana we need the big shoes, and birgit a cold beer please")).text
    assert "Birgit" in told, told
    assert "‘birgit a cold beer please’" in told, told
    one = (await race.say("ines", "tell ana we need the big shoes and birgit is late")).text
    assert "birgit is late’" in one, one


async def test_one_word_with_a_full_stop_is_a_report_beside_a_question(race: Race) -> None:
    """'Out. how far to go still?': out of what is asked, and how far is answered."""
    race.at("09:20")
    await race.say("ana", "maren in at brindle gate 9:14")
    told = (await race.say("ana", "out. how far has she to go still?")).text
    assert "Left Brindle Gate" in told, told
    assert "Still to come" in told, told
