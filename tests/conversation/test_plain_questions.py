"""Questions told from their neighbours by plain phrases, and questions that nobody could make out."""

from __future__ import annotations

from dataclasses import replace

import pytest

from server.conversation.understanding import AskBack, Asked, Context, Need, Question, Several, Unclear, read
from server.event.model import PartKind
from tests.bot import world

CREW = world.crew_of_maren()
ONE = replace(CREW, runners=(world.MAREN,))
PACER = replace(ONE, parts=frozenset({PartKind.PACER}), waits=True)
HOME = replace(ONE, parts=frozenset({PartKind.SAFETY_CONTACT}))
SHE = replace(ONE, parts=frozenset({PartKind.RUNNER}))


def _questions(words: str, ctx: Context) -> set[Question]:
    meant = read(words, ctx).meant
    parts = meant.parts if isinstance(meant, Several) else (meant,)
    return {p.question for p in parts if isinstance(p, Asked)}


@pytest.mark.parametrize(
    ("words", "question", "ctx"),
    [
        ("nobody has told me which car im in", Question.RIDE, PACER),
        ("mit wem fahr ich da hin", Question.RIDE, PACER),
        ("je monte avec qui", Question.RIDE, PACER),
        ("am I needed at Kettle or not", Question.NEEDED, ONE),
        ("muss ich nach Kettle Howe", Question.NEEDED, ONE),
        ("werde ich bei Maren an Kettle Howe gebraucht", Question.NEEDED, ONE),
        ("am i at Kettle needed", Question.NEEDED, ONE),
        ("je dois aller à Kettle Howe ?", Question.NEEDED, ONE),
        ("if she stops at the ford who gets her", Question.FETCH, ONE),
        ("wer holt sie ab wenn sie in der Furt aussteigt", Question.FETCH, ONE),
        ("qui va la chercher si elle arrête", Question.FETCH, ONE),
        ("whats the next bit", Question.NEXT_BIT, SHE),
        ("last bar of signal, anything I should know", Question.SILENT, ONE),
        ("who is out looking for her right now", Question.ON_SPOT, HOME),
        ("qui est sur place", Question.ON_SPOT, HOME),
        ("its full here, where else can we park", Question.PARKING, ONE),
        ("wo essen wir eigentlich", Question.CREW_FOOD, ONE),
        ("when do I have to get up tomorrow", Question.LEAVE, ONE),
        ("how long did it take her", Question.TOOK, HOME),
        ("combien de temps elle a mis", Question.TOOK, HOME),
        ("is she running late", Question.LATE, HOME),
        ("she should have been here ages ago", Question.LATE, ONE),
        ("müsste sie nicht längst da sein?", Question.LATE, HOME),
        ("is it boggy up there", Question.GROUND, PACER),
        ("is it dark when I take over", Question.DARK, PACER),
    ],
)
def test_a_plain_question_is_not_its_neighbour(words: str, question: Question, ctx: Context) -> None:
    """In each language, whatever the model would make of it."""
    assert _questions(words, ctx) == {question}


@pytest.mark.parametrize(
    ("words", "question"),
    [
        ("whats next", Question.NEXT_BIT),
        ("who is riding with you", Question.RIDE),
        ("what time am I needed at Kettle", Question.NEEDED),
        ("why am I down for two places at once", Question.NEEDED),
    ],
)
def test_a_phrase_is_of_whom_it_is_for(words: str, question: Question) -> None:
    """'What's next' of crew is no section of a course; 'what time am I needed' asks when."""
    assert question not in _questions(words, ONE)


def test_the_place_that_is_asked_about_is_kept() -> None:
    """Also of a message that names two."""
    asked = read("am I needed at Kettle or straight to the finish", ONE).meant
    assert isinstance(asked, Asked)
    assert asked.point == "kettle"


@pytest.mark.parametrize(
    "words",
    ["weißt du ob der Kiosk da oben was Warmes hat?", "does this thing ping on its own or do I poke it?"],
)
def test_a_question_nobody_made_out_is_asked_back(words: str) -> None:
    """With the two likeliest as buttons: it is never only noted."""
    back = read(words, ONE).meant
    if isinstance(back, Asked):
        return
    assert isinstance(back, AskBack)
    assert back.need is Need.MEANING
    assert len(back.choices) == 2
    assert all(isinstance(c.then, Asked) for c in back.choices)


def test_nonsense_is_no_question() -> None:
    """Nor has it any button."""
    assert isinstance(read("xyzzy plugh frobnicate?", ONE).meant, Unclear)


def test_beating_a_limit_goes_to_no_place() -> None:
    """A verb behind 'to' is no place that is not on the course."""
    asked = read("are they going to beat the limit?", world.near_the_end()).meant
    assert isinstance(asked, Asked | AskBack)
    assert not (isinstance(asked, AskBack) and asked.need is Need.POINT)
