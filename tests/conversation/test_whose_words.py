"""Whose words they are: the writer's own are none of hers, words for somebody go to them, a question beside other words is
answered, and an end that is not said plainly is asked about."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from server.conversation.understanding import (
    Acknowledged,
    AskBack,
    Asked,
    Context,
    Kept,
    Need,
    Question,
    Report,
    Reported,
    Request,
    Requested,
    Several,
    Unclear,
    put_right,
    read,
)
from server.event.model import PartKind
from server.facts.entry import Kind
from tests.bot import world
from tests.bot.world import MAREN, NOW, crew_of_maren, reports_in

CREW = replace(crew_of_maren(), runners=(MAREN,))
RUNNER = replace(CREW, parts=frozenset({PartKind.RUNNER}))


@pytest.mark.parametrize(
    ("text", "ctx", "to"),
    [
        ("for ana: two gels and the grey buff, she left them", CREW, "ana"),
        ("für jonas: bring die decke mit", CREW, "jonas"),
        ("pour ana : les gants bleus", CREW, "ana"),
        ("tomas: your shoes are in the boot", CREW, "tomas"),
        ("tell ana to bring my blue gloves", RUNNER, "ana"),
    ],
)
def test_words_for_somebody_go_to_them(text: str, ctx: Context, to: str) -> None:
    """Whole, and as nothing that is said of her."""
    meant = read(text, ctx).meant
    assert isinstance(meant, Requested)
    assert (meant.request, meant.to, meant.words) == (Request.PASS_ON, to, text)


@pytest.mark.parametrize(
    ("text", "question"),
    [
        ("long day already. what comes after the lathe", Question.COURSE),
        ("im soaked and fed up. which car am i in", Question.RIDE),
        ("sauwetter hier. was kommt nach der furt", Question.COURSE),
        ("on est trempés. c'est quelle couleur sa veste", Question.LOOKS),
    ],
)
def test_the_clause_that_asks_is_answered(text: str, question: Question) -> None:
    """Whatever else is said beside it."""
    meant = read(text, CREW).meant
    asked = meant.parts[0] if isinstance(meant, Several) else meant
    assert isinstance(asked, Asked)
    assert asked.question is question


@pytest.mark.parametrize(
    "text",
    [
        "my mate has a sore head from the stove",
        "we sit in the dark and jonas snores",
        "tomas schnarcht im bus",
    ],
)
def test_what_is_said_of_others_is_not_hers(text: str) -> None:
    """It may be kept; never as how she is."""
    meant = read(text, CREW).meant
    told = meant.reports if isinstance(meant, Reported) else ()
    assert not any(r.kind in (Kind.HOW_SHE_IS, Kind.RESTING) for r in told)
    assert not (isinstance(meant, Kept) and meant.of_her)


def test_a_question_that_nobody_could_make_out_is_no_note() -> None:
    """It is said not to be understood."""
    text = "the stove is lit and the kettle is on. do you have a joke"
    assert read(text, CREW).meant == Unclear(text)


@pytest.mark.parametrize(
    ("text", "ctx"),
    [
        ("she has handed in her number at the desk", CREW),
        ("thats me done, not going on", RUNNER),
        ("sie hat die startnummer abgegeben", CREW),
        ("dossard rendu à la table", CREW),
    ],
)
def test_an_end_that_is_not_said_plainly_is_asked_about(text: str, ctx: Context) -> None:
    """With a button; nothing counts before it is pressed."""
    meant = read(text, ctx).meant
    assert isinstance(meant, AskBack)
    assert meant.need is Need.DROPPED


@pytest.mark.parametrize("text", ["has she handed in her number?", "i hope she isnt going on like this"])
def test_an_end_that_is_asked_or_hoped_is_none(text: str) -> None:
    """Neither is asked about."""
    meant = read(text, CREW).meant
    assert not (isinstance(meant, AskBack) and meant.need is Need.DROPPED)


@pytest.mark.parametrize(
    "text",
    ["mill in at 0840, is that right?", "mühle 8:40 raus, stimmt das?", "moulin sortie à 8:40, c'est vrai ?"],
)
def test_whether_a_time_is_right_is_a_question(text: str) -> None:
    """The time is nobody's report."""
    meant = read(text, CREW).meant
    assert isinstance(meant, Asked)
    assert (meant.question, meant.point) == (Question.LAST_STOP, "mill")


def test_minutes_alone_put_the_last_time_right() -> None:
    """'Make that 07' keeps the hour, unless it is to come; of a longer tale nothing is taken."""
    last = Report(Kind.OUT, NOW.replace(minute=4), "maren", "mill")
    for words, at in (("07", NOW.replace(minute=7)), ("52", NOW.replace(hour=NOW.hour - 1, minute=52))):
        again = put_right(f"make that {words}, my watch is off", last, CREW)
        assert again is not None
        assert again.seen_at == at
    assert put_right("52 of them are here", last, CREW) is None


@pytest.mark.parametrize(
    ("text", "question"),
    [
        ("did they set off on time", Question.START),
        ("is the start still at half four", Question.START),
        ("geht das heute pünktlich los", Question.START),
        ("le départ est à l'heure ?", Question.START),
        ("is that their clock or ours", Question.CLOCK),
        ("nach welcher uhr geht das", Question.CLOCK),
        ("c'est l'heure de chez qui", Question.CLOCK),
        ("which points has she still got to do", Question.COURSE),
        ("welche posten kommen noch", Question.COURSE),
        ("il reste quels points à passer", Question.COURSE),
        ("did my report of the mill get to you", Question.MINE),
        ("was hab ich vorhin gemeldet", Question.MINE),
        ("tu as bien reçu mon message", Question.MINE),
        ("what colour is she wearing", Question.LOOKS),
        ("welche farbe hat die jacke", Question.LOOKS),
        ("elle est habillée de quelle couleur", Question.LOOKS),
    ],
)
def test_what_the_file_says_can_be_asked(text: str, question: Question) -> None:
    """In three languages."""
    meant = read(text, CREW).meant
    assert isinstance(meant, Asked)
    assert meant.question is question


HARD = frozenset(
    {Kind.IN, Kind.OUT, Kind.THROUGH, Kind.RESTING, Kind.MOVING_AGAIN, Kind.IN_HAND, Kind.SWEEP_THROUGH}
)


def told_in(text: str, ctx: Context) -> tuple[Report, ...]:
    """Every report that a message is read as."""
    meant = read(text, ctx).meant
    parts = meant.parts if isinstance(meant, Several) else (meant,)
    return tuple(r for p in parts if isinstance(p, Reported) for r in p.reports)


@pytest.mark.parametrize(
    "text",
    [
        "a bloke came by, says he has seen nobody since the lathe. but he left the lathe at one",
        "radio: a lad saw a woman in orange who bore left at the lathe an hour ago",
        "sweepers set off from the lathe at 8",
        "hab sie am telefon, die schicken zwei leute los",
        "sie steht noch hinterm zelt",
        "un promeneur a vu une fille en rouge assise près du sentier",
    ],
)
def test_numbers_and_places_in_a_story_are_no_report_of_her(text: str) -> None:
    """Of a man, of somebody whom nobody knows, of sweepers yet to go, of a telephone: nothing waits for a yes."""
    assert not [r for r in told_in(text, CREW) if r.kind in HARD | {Kind.NOT_HERE_YET}]


@pytest.mark.parametrize(
    "text", ["now in the hall at 20:40", "a hundred metres, and moving", "number picked up"]
)
def test_nobody_is_in_anywhere_before_the_start(text: str) -> None:
    """Where neither she nor a place is named."""
    before = replace(MAREN, reached=None, at=None, going="before the start", start=NOW + timedelta(hours=9))
    assert not [r for r in told_in(text, replace(CREW, runners=(before,))) if r.kind in HARD]


def test_here_of_somebody_at_home_is_no_point() -> None:
    """It is what their clock shows."""
    home = replace(CREW, parts=frozenset({PartKind.SAFETY_CONTACT}))
    assert not [r for r in told_in("two in the morning here. may i sleep", home) if r.kind in HARD]


def test_a_pacer_who_waits_speaks_of_themselves() -> None:
    """And of her once they run together."""
    pacer = replace(CREW, parts=frozenset({PartKind.PACER}), waits=True)
    text = "shoes on but the knees are stiff and cold"
    assert not [r for r in told_in(text, pacer) if r.kind is Kind.HOW_SHE_IS]
    meant = read("that with or without", pacer).meant
    assert not (isinstance(meant, Kept) and meant.of_her)


def test_who_runs_and_begins_with_the_place_is_there() -> None:
    """'Lathe! soup was great'; not where the words go on to say that she left."""
    (told,) = told_in("lathe! that soup was the best ever", RUNNER)
    assert (told.kind, told.point, told.seen_at) == (Kind.IN, "lathe", NOW)
    assert not [r for r in told_in("lathe! off again, lovely soup", RUNNER) if r.kind is Kind.IN]
    assert not [
        r for r in told_in("brindle: dry socks please", RUNNER) if r.kind is Kind.IN and not r.guessed
    ]


def test_a_piece_of_a_message_is_not_sent_to_all() -> None:
    """Only what says so; with the whole, where the piece is as short as 'warn people'."""
    meant = read("three k. she sings. warn people", CREW).meant
    parts = meant.parts if isinstance(meant, Several) else (meant,)
    assert [p.words for p in parts if isinstance(p, Requested)] in ([], ["three k. she sings. warn people"])


@pytest.mark.parametrize(
    "words",
    ["made it to the mill, parked on the edge of the field", "arrivé à skelter mill, garé au bord du champ",
     "here at the mill, car park's full so I'm on the verge by the bridge"],
)  # fmt: skip
def test_who_parks_has_come_there_and_not_she(words: str) -> None:
    """Nothing is said of her."""
    told = reports_in(read(words, CREW).meant)
    assert [(r.kind, r.point) for r in told] == [(Kind.CREW_THERE, "mill")]


@pytest.mark.parametrize(
    "words",
    ["jonas übernimm du lathe, ich muss schlafen", "jonas can you take lathe, I need sleep",
     "jonas tu peux prendre lathe, je dois dormir"],
)  # fmt: skip
def test_who_is_asked_by_name_to_take_a_meeting(words: str) -> None:
    """With all that was written."""
    meant = read(words, CREW).meant
    assert isinstance(meant, Requested)
    assert (meant.request, meant.to, meant.point, meant.words) == (Request.SWAP, "jonas", "lathe", words)


@pytest.mark.parametrize(
    "words", ["ok got it, I'm taking lathe", "I'll do lathe", "ich übernehme lathe", "je m'occupe de lathe"]
)
def test_who_takes_a_meeting_answers_who_goes(words: str) -> None:
    """No 'ok' and no request."""
    meant = read(words, CREW).meant
    assert isinstance(meant, Acknowledged)
    assert meant.answer == "i go"


def test_who_takes_a_meeting_asks_nobody_he_names_besides() -> None:
    """'Jonas has the poles' is no request to Jonas."""
    meant = read("I'll do lathe then. jonas has the poles though", CREW).meant
    parts = meant.parts if isinstance(meant, Several) else (meant,)
    asked = [c.then for p in parts if isinstance(p, AskBack) for c in p.choices]
    assert not [p for p in (*parts, *asked) if isinstance(p, Requested) and p.person is not None]


@pytest.mark.parametrize(
    ("words", "minute"),
    [("let everyone know I have the poles and she left here at 14:20 with a sore knee", 20),
     ("sag allen bescheid: sie ist um 14:15 los, hat aber die handschuhe nicht mit", 15),
     ("dis à tout le monde qu'elle est partie à 14h15 et que je suis avec elle", 15)],
)  # fmt: skip
def test_what_all_are_to_know_goes_on_whole_and_what_it_tells_of_her_counts(words: str, minute: int) -> None:
    """Every clause; a departure among them is one."""
    meant = read(words, world.at_the_lathe()).meant
    assert isinstance(meant, Several)
    told = [(r.kind, r.seen_at.minute) for r in reports_in(meant)]
    assert told == [(Kind.OUT, minute)]
    assert [p.words for p in meant.parts if isinstance(p, Requested)] == [words]


def test_what_all_are_to_know_may_be_two_sentences() -> None:
    """Nobody reads half of it."""
    words = "please tell the others we moved to the upper car park. bring the chairs"
    meant = read(words, CREW).meant
    assert isinstance(meant, Requested)
    assert meant.words == words


def test_a_bib_a_place_and_a_time_without_a_colon_are_one_report() -> None:
    """'rein in' is one thing in two words."""
    told = reports_in(
        read(
            "214 rein in candle 1118", replace(world.at_the_lathe(), parts=frozenset({PartKind.VOLUNTEER}))
        ).meant
    )
    assert [(r.kind, r.point, r.seen_at.minute) for r in told] == [(Kind.IN, "candle", 18)]


@pytest.mark.parametrize(
    "words",
    [
        "she's up again, leaving now with two gels",
        "wieder auf, geht jetzt los",
        "elle repart, debout, elle s'en va",
    ],
)
def test_who_rests_where_the_writer_stands_and_leaves_is_out_of_there(words: str) -> None:
    """And not only on the move somewhere."""
    rests = replace(MAREN, reached="lathe", going="resting")
    told = reports_in(read(words, replace(CREW, runners=(rests,), point="lathe")).meant)
    assert [(r.kind, r.point) for r in told if r.kind is not Kind.HOW_SHE_IS] == [(Kind.OUT, "lathe")]


@pytest.mark.parametrize(
    "words", ["bus läuft wieder, ich fahr direkt nach lathe", "van runs again, heading straight to lathe"]
)
def test_who_comes_again_straight_to_a_place_comes_to_no_other(words: str) -> None:
    """The meetings before it stay without them."""
    told = reports_in(read(words, CREW).meant)
    assert [r.point for r in told if r.kind is Kind.CAN_COME] == ["lathe"]
