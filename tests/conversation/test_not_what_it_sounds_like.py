"""Words that sound like a report, a question or a request and are another: minutes of the hour, others behind her, roads
that are shut, what is told the writer, a pacer who is out."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest

from server.conversation.understanding import (
    AskBack,
    Asked,
    Context,
    Danger,
    Kept,
    Need,
    Question,
    Report,
    Reported,
    Request,
    Requested,
    Unclear,
    Understood,
    read,
)
from server.conversation.understanding.read import Guess, _decide
from server.conversation.understanding.sentence import read_sentence
from server.event.model import PartKind
from server.facts.entry import Kind
from tests.bot import world
from tests.bot.world import parts, reports_in

CREW = replace(world.crew_of_maren(), runners=(world.MAREN,))
RUNNER = replace(CREW, parts=frozenset({PartKind.RUNNER}))
PACER = replace(CREW, parts=frozenset({PartKind.PACER}))


def _parts(words: str, ctx: Context = CREW) -> tuple[Understood, ...]:
    return parts(read(words, ctx).meant)


def _told(words: str, ctx: Context = CREW) -> list[Report]:
    return reports_in(read(words, ctx).meant)


@pytest.mark.parametrize(
    ("words", "kind", "minute"),
    [
        ("out at 36", Kind.OUT, 36), ("is da seit 24, flucht wie ein kesselflicker", Kind.IN, 24),
        ("repartie à 36, j'ai récup les bouteilles vides", Kind.OUT, 36), ("raus is sie um 54", Kind.OUT, 54),
    ],
)  # fmt: skip
def test_a_number_that_is_no_hour_is_a_minute(words: str, kind: Kind, minute: int) -> None:
    """Of this hour, or of the one before."""
    (one,) = _told(words)
    assert (one.kind, one.seen_at.minute) == (kind, minute)
    assert one.seen_at <= CREW.now


@pytest.mark.parametrize(
    "words", ["in just after midnight", "kurz nach mitternacht drin", "arrivée juste après minuit"]
)
def test_an_hour_of_the_clock_is_no_minute(words: str) -> None:
    """'Just after midnight' is midnight, whatever minute it is now."""
    now = datetime(2027, 6, 20, 0, 40, tzinfo=UTC)  # 01:40 in Britain
    (one,) = _told(words, replace(CREW, now=now, runners=(replace(world.MAREN, reached="kettle"),)))
    assert one.seen_at == datetime(2027, 6, 19, 23, 0, tzinfo=UTC)


def test_others_who_were_behind_her_say_nothing_of_where_she_is() -> None:
    """She is not where the writer waits."""
    (one,) = _told("nope. nothing. two who were behind her at the stile have come in already")
    assert (one.kind, one.point) == (Kind.NOT_HERE_YET, "lathe")


@pytest.mark.parametrize("ctx", [CREW, PACER])
def test_what_is_said_to_the_reader_is_not_hers(ctx: Context) -> None:
    """A lie-down that somebody else has earned."""
    (meant,) = _parts("cheers mate. go and have a lie down, youve earned it", ctx)
    assert isinstance(meant, Kept)
    assert not meant.of_her


def test_a_road_that_is_shut_is_no_cut_off() -> None:
    """What the file says of it is quoted."""
    asked = [
        p.question for p in _parts("what time do they shut the road past the lathe") if isinstance(p, Asked)
    ]
    assert Question.CUT_OFF not in asked


def test_what_is_to_be_told_the_writer_goes_to_nobody() -> None:
    """'Tell me it's me'."""
    assert not any(
        isinstance(p, Requested) for p in _parts("poles. have i got them or has ana. tell me its me")
    )


def test_what_is_to_be_told_her_goes_on_whole() -> None:
    """With every word of it."""
    words = "tell her from me the dog is fine and shes to eat something"
    (meant,) = _parts(words)
    assert isinstance(meant, Requested)
    assert (meant.request, meant.words) == (Request.PASS_ON, words)


def test_a_drive_that_is_asked_about_is_not_noted() -> None:
    """'It is only half an hour, isn't it'."""
    assert not _told("can i have another 20 mins, its only half an hour to the mill isnt it")


def test_a_pacer_who_is_out_is_asked_how() -> None:
    """Off with her, or no longer with her; of a place it is plain."""
    (back,) = _parts("im out", PACER)
    assert isinstance(back, AskBack)
    assert [c.label for c in back.choices] == ["out", "cant_come"]
    assert [r.kind for r in _told("im out of the lathe 12:05", PACER)] == [Kind.OUT]


@pytest.mark.parametrize("words", ["she's had enough. done. number's coming off", "sie macht die nummer ab"])
def test_a_number_that_comes_off_is_asked_about(words: str) -> None:
    """It may be the end of her race."""
    (back,) = _parts(words)
    assert isinstance(back, AskBack)
    assert back.need is Need.DROPPED


def test_a_list_with_times_in_four_digits_is_bib_by_bib() -> None:
    """Whoever is not seen yet is not she."""
    volunteer = world.volunteer_at("lathe")
    (back,) = _parts("lathe so far: 201 at 1358, 214 at 1404, 219 at 1406. 207 not seen yet", volunteer)
    assert isinstance(back, AskBack)
    assert [(r.runner, r.kind, r.seen_at.minute) for r in back.also] == [("maren", Kind.IN, 4)]


def test_her_own_time_is_that_of_the_cut_off() -> None:
    """She leaves in no car."""
    (asked,) = _parts("when do i have to leave the lathe", RUNNER)
    assert isinstance(asked, Asked)
    assert asked.question is Question.CUT_OFF


@pytest.mark.parametrize(
    "words", ["did she take the gloves at the lathe", "hat sie die handschuhe mitgenommen"]
)
def test_what_came_of_it_is_in_no_plan(words: str) -> None:
    """What was to be brought is no answer."""
    (asked,) = _parts(words)
    assert not (isinstance(asked, Asked) and asked.question is Question.BRING)


def test_ones_own_day_is_not_hers() -> None:
    """Where to be, and when."""
    (asked,) = _parts("give me my day in order. where, when, thats all")
    assert isinstance(asked, Asked)
    assert asked.question is Question.DUTY


def test_a_question_behind_a_comma_is_no_note() -> None:
    """It is asked about, answered or said not to be understood; the rest is kept, and counts for nothing of her."""
    words = "chucking it down, cant do more than 30 on the valley rd, am i still there before her"
    parts = _parts(words)
    assert [p for p in parts if isinstance(p, Unclear | AskBack | Asked)]
    assert not any(isinstance(p, Kept) and p.of_her for p in parts)
    assert all(r.kind is Kind.NOTE for p in parts if isinstance(p, Reported) for r in p.reports)


def test_where_the_next_is_near_both_are_offered() -> None:
    """A wrong answer costs more than a tap, though the likeliest alone would do."""
    said = read_sentence("is it alright", CREW)
    back = _decide(Guess(said, (("where", 0.5), ("people", 0.3))), CREW)
    assert isinstance(back, AskBack)
    assert [c.label for c in back.choices] == ["where", "people"]
    assert isinstance(_decide(Guess(said, (("where", 0.5), ("people", 0.05))), CREW), Asked)


@pytest.mark.parametrize(
    ("words", "question"),
    [
        ("fast n reh erwischt, alles gut, fahr jetzt langsamer", Question.SLOWER),
        ("wer hat meine stirnlampe eingsteckt", Question.BRING),
        ("sie ist im ziel 14:24, sitzt auf der bank und isst pommes", Question.FOOD),
    ],
)
def test_what_the_writer_or_she_does_asks_nothing_of_the_plan(words: str, question: Question) -> None:
    """A driver who slows down, a torch of one's own, chips on a bench."""
    assert question not in [p.question for p in _parts(words) if isinstance(p, Asked)]


@pytest.mark.parametrize(
    "words", ["no the second time", "nein ich mein den anderen", "non l'autre celui du retour"]
)
def test_the_other_pass_of_a_place_is_the_question_before(words: str) -> None:
    """Of a place that is passed twice; of any other they mean something else."""
    last = Asked(Question.AT, "maren", "stile-out", words="when is she at the stile")
    (again,) = _parts(words, replace(CREW, last=last))
    assert isinstance(again, Asked)
    assert (again.question, again.point) == (Question.AT, "stile-back")
    other = _parts(words, replace(CREW, last=replace(last, point="lathe")))
    assert not [p for p in other if isinstance(p, Asked) and p.point is not None and "stile" in p.point]


@pytest.mark.parametrize(
    "words",
    [
        "she is having a sit down at the mill, going on 15 min now", "resting at the mill, going on for 20 min",
        "sie sitzt an der mühle, geht auf 20 min", "elle se repose au moulin, ça va faire 20 min",
    ],
)  # fmt: skip
def test_how_long_something_has_lasted_sends_her_nowhere(words: str) -> None:
    """A rest that 'goes on' for so long is none that is over."""
    assert {r.kind for r in _told(words)} <= {Kind.RESTING}


@pytest.mark.parametrize(
    "words", ["pause de 10 min au moulin là ça repart", "she rested 10 min at the mill, off again now"]
)
def test_a_rest_that_is_over_is_none(words: str) -> None:
    """Whoever is going again when it is written is not told as resting last."""
    assert [r.kind for r in _told(words)][-1:] != [Kind.RESTING]


@pytest.mark.parametrize(
    "words",
    ["the race office just told me they moved the cut-off", "die rennleitung hat mir gesagt es gibt ne umleitung",
     "la direction de course m'a dit que la barrière est reculée"],
)  # fmt: skip
def test_what_race_control_told_the_writer_is_not_that_they_know(words: str) -> None:
    """Who told whom: they told, and were told nothing."""
    assert Kind.RACE_CONTROL_TOLD not in {r.kind for r in _told(words)}


@pytest.mark.parametrize("words", ["lost the wall. back on it now", "verlaufen, bin aber wieder auf dem weg"])
def test_who_was_lost_and_is_back_is_asked(words: str) -> None:
    """With the number first; nobody is called out of bed for a way that is found again."""
    assert read(words, RUNNER).danger is Danger.ASK


@pytest.mark.parametrize(
    ("words", "kind", "clock"),
    [
        ("da!!! 8 uhr 10", Kind.IN, "08:10"), ("214 durch 8 uhr 10", Kind.THROUGH, "08:10"),
        ("noch nicht da 14 uhr 40", Kind.NOT_HERE_YET, "14:40"), ("not here yet, 14:40", Kind.NOT_HERE_YET, "14:40"),
        ("seit ungefähr einer stunde zehn ist sie da", Kind.IN, "14:00"), ("sie ist seit 20 min da", Kind.IN, "14:50"),
        ("elle est là depuis 20 minutes", Kind.IN, "14:50"), ("elle est là depuis 14 heures", Kind.IN, "14:00"),
    ],
)  # fmt: skip
def test_hours_and_lengths_are_no_bibs(words: str, kind: Kind, clock: str) -> None:
    """'8 uhr 10' is one time; since when she has been there is when she came."""
    (one,) = _told(words)
    assert (one.kind, one.seen_at.astimezone(ZoneInfo(world.ZONE)).strftime("%H:%M")) == (kind, clock)


@pytest.mark.parametrize(
    "words", ["noch nicht da, warte seit 20 min", "seit zwei stunden hat sie nichts gegessen"]
)
def test_how_long_somebody_waits_is_no_time_of_what_is_seen_now(words: str) -> None:
    """That she is not there, or how she is, is seen when it is written."""
    assert all(r.seen_at == CREW.now for r in _told(words))


@pytest.mark.parametrize(
    "words", ["elle est avant la chapelle", "kurz vor der kapelle", "saw her just before the chapel"]
)
def test_short_of_a_point_is_not_at_it(words: str) -> None:
    """She was seen; between which points is asked."""
    told = _told(words)
    assert told
    assert all(r.point != "chapel" or r.placed_by_words for r in told)
    assert not [r for r in told if r.kind in (Kind.IN, Kind.OUT, Kind.THROUGH)]


@pytest.mark.parametrize(
    "words",
    ["sie ist zwischen lathe und hier", "shes between brindle and here", "elle est entre lathe et ici"],
)
def test_between_two_places_is_one_whereabouts(words: str) -> None:
    """Cut at no 'and'."""
    (one,) = _told(words)
    assert one.placed_by_words
    assert one.words == words


@pytest.mark.parametrize(
    "words", ["not gone yet", "noch nicht weg", "pas encore partie", "she hasnt left yet"]
)
def test_not_gone_is_neither_gone_nor_not_come(words: str) -> None:
    """Of who is at a point: she is there yet."""
    told = _told(
        words, replace(world.at_the_lathe(), runners=(replace(world.MAREN, reached="lathe", at="lathe"),))
    )
    assert [(r.kind, r.point) for r in told] == [(Kind.HOW_SHE_IS, "lathe")]


def test_with_its_verb_behind_what_is_said_first_a_clause_asks_nothing() -> None:
    """'Jetzt ist sie weg' states, 'ist sie jetzt weg' asks."""
    there = replace(world.at_the_lathe(), runners=(replace(world.MAREN, reached="lathe", at="lathe"),))
    assert [r.kind for r in _told("so jetzt ist sie weg", there)] == [Kind.OUT]
    assert not _told("ist sie jetzt weg", there)


@pytest.mark.parametrize(
    "words",
    [
        "can jonas bring the spare torch",
        "kann jonas die ersatzlampe mitbringen",
        "est-ce que jonas peut apporter la frontale",
    ],
)
def test_what_one_of_them_is_asked_to_bring_is_for_them(words: str) -> None:
    """And is no question of what stands in the plan; who takes a meeting over is."""
    (meant,) = _parts(words)
    assert isinstance(meant, Requested)
    assert (meant.request, meant.to) == (Request.PASS_ON, "jonas")
    assert not isinstance(_parts("can jonas take brindle instead of me")[0], Requested)


@pytest.mark.parametrize(
    "words", ["how far to tomas", "wie weit ist es zu tomas", "c'est loin jusqu'à tomas"]
)
def test_how_far_it_is_to_somebody_is_where_they_are(words: str) -> None:
    """And not how far it is to a point."""
    (asked,) = _parts(words)
    assert isinstance(asked, Asked)
    assert (asked.question, asked.person) == (Question.PEOPLE, "tomas")


@pytest.mark.parametrize("words", ["will i make it", "schaff ich das", "est-ce que je vais y arriver"])
def test_whether_she_makes_it_is_of_her_limits(words: str) -> None:
    """Asked by her."""
    (asked,) = _parts(words, RUNNER)
    assert isinstance(asked, Asked)
    assert asked.question in (Question.CUT_OFF, Question.MY_RACE)


@pytest.mark.parametrize(
    "words",
    ["tomas says his knee is done", "tomas sagt sein knie ist hin", "jonas reckons his ankle is finished"],
)
def test_a_knee_that_somebody_tells_of_is_theirs(words: str) -> None:
    """Nobody's race is over by it, and nothing of it is how she is."""
    meant = _parts(words)
    assert not [p for p in meant if isinstance(p, AskBack)]
    assert not [r for r in _told(words) if r.kind in (Kind.RETIRED, Kind.HOW_SHE_IS)]


@pytest.mark.parametrize(
    "words", ["214 plodding on", "214 trottet weiter", "le 214 avance doucement", "soaked through"]
)
def test_who_plods_on_is_not_out(words: str) -> None:
    """Nor through, who is soaked through."""
    assert not [r for r in _told(words) if r.kind in (Kind.RETIRED, Kind.OUT, Kind.THROUGH)]


@pytest.mark.parametrize(
    ("words", "ctx"),
    [
        ("j'arrive pas à lire ton message", RUNNER), ("mein kind hat fieber, bin zuhause", CREW),
        ("la frontale de secours est dans le coffre", CREW), ("je viens de me réveiller, elle en est où ?", CREW),
        ("cant see brindle gate from here", CREW), ("elle est trempée mais elle rigole", CREW),
        ("trempée jusqu'aux os mais ça va", RUNNER), ("shes soaked but smiling", CREW),
        ("bin grad wach geworden, was war", CREW),
    ],
)  # fmt: skip
def test_what_only_sounds_like_danger_gets_no_number_first(words: str, ctx: Context) -> None:
    """Reading, waking, a child's fever, spares, rain."""
    assert not read(words, ctx).danger.grave


@pytest.mark.parametrize(
    ("words", "ctx"),
    [
        ("j'arrive pas à respirer", RUNNER), ("elle a de la fièvre et elle délire", CREW),
        ("cant see the gate, everything is blurry", CREW), ("elle vient de se réveiller, elle sait pas où elle est", CREW),
        ("elle est trempée et elle tremble, lèvres bleues", CREW), ("soaked and shivering, cant stop", CREW),
        ("un type me suit depuis le moulin", RUNNER), ("a man keeps following me", RUNNER),
        ("woke up on the rumble strip", CREW), ("bin auf dem randstreifen aufgewacht", CREW),
        ("je me suis réveillé sur la bande d'arrêt", CREW), ("she sees things. sheep on the road that arent there", CREW),
    ],
)  # fmt: skip
def test_what_is_danger_beside_those_words_gets_it(words: str, ctx: Context) -> None:
    """The same words of somebody who is in danger."""
    assert read(words, ctx).danger.grave
