"""What must hold for every sentence that can be put together from how people ask, report, hope and pass on."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from server.conversation.understanding import (
    AskBack,
    Context,
    Distress,
    Report,
    Reported,
    Several,
    Understood,
    understand,
)
from server.conversation.understanding.sentence import read_sentence
from server.event.model import PartKind
from server.facts.entry import Kind
from tests.bot import world
from tests.examples import examples

CHECK_INS = frozenset(
    {
        Kind.IN, Kind.OUT, Kind.THROUGH, Kind.RETIRED, Kind.RESTING, Kind.MOVING_AGAIN, Kind.NOT_HERE_YET,
        Kind.SWEEP_THROUGH,
    }
)  # fmt: skip
WHO = ("she", "maren", "Tove", "214", "the runner", "sie", "she's", "shes", "")
VERBS = (
    "in", "out", "through", "is in", "is out", "left", "has left", "arrived", "came in", "got to", "is here", "reached",
    "went through", "resting", "moving again", "retired", "dropped", "pulled", "not here yet", "hasnt arrived", "gone",
    "ist da", "ist raus", "ist angekommen", "los", "durch", "noch nicht da", "schläft", "ran straight past",
)  # fmt: skip
PLACES = ("", "lathe", "at wether lathe", "Brindle", "the mill", "long stile", "finish", "nowhere", "the pub")
TIMES = (
    "", "now", "1502", "3:02", "5 to 3", "half two", "halb drei", "20 mins ago", "24:10", "25:70", "yesterday 2350",
    "at 3", "at noon", "vor 10 min", "12am", "just before three", "by 4", "99999",
    "99999999999999 min ago", "9999999999999999 ago", "for 999999999999 hours", "1" + "0" * 400 + " hours ago",
)  # fmt: skip
MORE = (
    "",
    "looking rough",
    "and eating",
    "!!!",
    "🎉",
    "; 87 in 1509",
    ", should be at kettle by 6",
    "lol",
    "bitte",
)
ASKING = ("when", "where", "has", "is", "did", "what time", "how long", "who", "will", "should")
ASKING_IN_GERMAN = ("wann", "wo", "ist", "hat", "wie lange", "wer hat", "ob", "kommt", "war", "warum")
GERMAN_VERBS = (
    "da", "raus", "angekommen", "los", "durch", "noch nicht da", "in lathe angekommen", "raus aus lathe", "weg", "drin",
    "in brindle", "um 1502 rein", "aufgegeben",
)  # fmt: skip
# What begins so and stands before a report makes no report of it.
HOPES = (
    "i hope", "hopefully", "hoping", "fingers crossed", "if", "as soon as", "let me know when", "i wonder if", "maybe",
    "i bet", "once", "probably",
)  # fmt: skip
HEARSAY = (
    "apparently", "jonas says", "a marshal told me", "i think", "someone said", "i heard", "the tracker says",
    "looks like", "according to ana",
)  # fmt: skip
words = st.sampled_from
reports = st.tuples(words(WHO), words(VERBS), words(PLACES), words(TIMES), words(MORE)).map(
    lambda parts: " ".join(p for p in parts if p)
)
CONTEXTS: dict[str, Context] = {
    "crew": world.crew_of_maren(),
    "runner": world.the_runner(),
    "volunteer": world.volunteer_at("lathe"),
    "at night": world.at_night(),
    "at the lathe": world.at_the_lathe(),
    "near the end": world.near_the_end(),
    "crew, German": replace(world.crew_of_maren(), language="de"),
    "volunteer, German": replace(world.volunteer_at("lathe"), language="de"),
}
contexts = words(tuple(CONTEXTS))


def _reports(meant: Understood) -> tuple[Report, ...]:
    if isinstance(meant, Several):
        return tuple(r for part in meant.parts for r in _reports(part))
    if isinstance(meant, Reported):
        return meant.reports
    return meant.also if isinstance(meant, AskBack) else ()


def _counted(meant: Understood) -> set[Kind]:
    """The kinds of check-in that would count at once."""
    return {r.kind for r in _reports(meant) if r.kind in CHECK_INS and not r.guessed}


@settings(max_examples=examples(300))
@given(reports, contexts, words(("", "?", " ??", "!")))
def test_reading_never_fails(text: str, who_writes: str, end: str) -> None:
    """Whatever is put together from names, times and verbs, something is made of it."""
    understand(text + end, CONTEXTS[who_writes])
    understand(text.upper() + end, CONTEXTS[who_writes])


@settings(max_examples=300)
@given(reports, contexts, words(("", *ASKING)))
def test_a_question_mark_never_makes_a_check_in(text: str, who_writes: str, lead: str) -> None:
    """What ends in a question mark is asked, whoever writes it: nothing counts from it."""
    assume(";" not in text)  # two clauses: the first may be a report, and only the second is asked
    meant = understand(f"{lead} {text.rstrip('!')}?".strip(), CONTEXTS[who_writes])
    assert not _counted(meant), f"{lead} {text}?"


@settings(max_examples=300)
@given(
    words(ASKING),
    words(("she", "maren", "tove", "the runner")),
    words(VERBS[:23]),
    words(PLACES),
    words(TIMES),
    contexts,
)
def test_a_question_word_never_makes_a_check_in(
    lead: str, who: str, verb: str, place: str, time: str, who_writes: str
) -> None:
    """What begins as a question is one, with or without its mark."""
    sentence = f"{lead} {who} {verb} {place} {time}".strip()
    assert not _counted(understand(sentence, CONTEXTS[who_writes])), sentence


@given(
    words(ASKING_IN_GERMAN),
    st.just("sie"),
    words(GERMAN_VERBS),
    words(("", "jetzt", "um 3", "schon")),
)
def test_a_german_question_word_never_makes_a_check_in(lead: str, who: str, verb: str, time: str) -> None:
    """The same in German, from whoever writes."""
    sentence = f"{lead} {who} {time} {verb}"
    for who_writes in ("crew, German", "volunteer, German", "crew"):
        assert not _counted(understand(sentence, CONTEXTS[who_writes])), sentence


@settings(max_examples=200)
@given(words(HOPES), words(WHO[:3]), words(VERBS[:13]), words(PLACES[1:6]), words(TIMES[:6]), contexts)
def test_a_hope_is_no_check_in(
    hope: str, who: str, verb: str, place: str, time: str, who_writes: str
) -> None:
    """Hopes, conditions and requests record no arrival and no departure, not even to be confirmed."""
    sentence = f"{hope} {who} {verb} {place} {time}".strip()
    kinds = {r.kind for r in _reports(understand(sentence, CONTEXTS[who_writes]))}
    assert not kinds & {Kind.IN, Kind.OUT, Kind.THROUGH, Kind.RETIRED}, sentence


@settings(max_examples=200)
@given(words(HEARSAY), words(WHO[:3]), words(VERBS[:16]), words(PLACES[:6]), words(TIMES[:8]), contexts)
def test_hearsay_never_counts(told: str, who: str, verb: str, place: str, time: str, who_writes: str) -> None:
    """What somebody else is said to have seen waits for whoever can stand for it."""
    sentence = f"{told} {who} {verb} {place} {time}".strip()
    assert not _counted(understand(sentence, CONTEXTS[who_writes])), sentence


@given(
    words(
        ("hoffentlich ist", "wenn", "falls", "sag mir wenn", "vielleicht ist", "bestimmt ist", "ich hoffe")
    ),
    words(GERMAN_VERBS),
    contexts,
)
def test_a_german_hope_is_no_check_in(hope: str, verb: str, who_writes: str) -> None:
    """The same in German."""
    kinds = {r.kind for r in _reports(understand(f"{hope} sie {verb}", CONTEXTS[who_writes]))}
    assert not kinds & {Kind.IN, Kind.OUT, Kind.THROUGH, Kind.RETIRED}, f"{hope} sie {verb}"


@given(words(("angeblich ist", "jonas meint", "ich glaube", "laut jonas ist")), words(GERMAN_VERBS), contexts)
def test_german_hearsay_never_counts(told: str, verb: str, who_writes: str) -> None:
    """The same in German."""
    assert not _counted(understand(f"{told} sie {verb}", CONTEXTS[who_writes])), f"{told} sie {verb}"


NEGATED = (
    "has not arrived", "hasnt left", "is not in", "isnt out", "is not through", "did not leave", "has not retired",
    "hasn't come in", "never arrived", "is not here", "ist nicht da", "ist noch nicht raus", "ist nicht durch",
    "hat nicht aufgegeben",
)  # fmt: skip


@given(
    words(("she", "maren", "sie")),
    words(NEGATED),
    words(PLACES[:6]),
    words(("", "yet", "1502", "now")),
    contexts,
)
def test_a_negative_is_never_its_opposite(
    who: str, verb: str, place: str, time: str, who_writes: str
) -> None:
    """'Not in' is never 'in', 'not out' never 'out', 'not retired' never 'retired'."""
    sentence = f"{who} {verb} {place} {time}".strip()
    kinds = {r.kind for r in _reports(understand(sentence, CONTEXTS[who_writes]))}
    assert not kinds & {Kind.IN, Kind.OUT, Kind.THROUGH, Kind.RETIRED}, sentence


SHORT_WORDS = {Kind.IN: ("in", "arr"), Kind.OUT: ("out", "dep"), Kind.THROUGH: ("through",)}
items = st.lists(
    st.tuples(
        words(("214", "87")),
        words(tuple(SHORT_WORDS)),
        st.integers(0, 1),
        st.integers(0, 12 * 60),
    ),
    min_size=1,
    max_size=6,
)


@given(items, words((" ", "; ", ", ", "\n")), words(("%H%M", "%H:%M", "%H.%M")), st.booleans())
def test_the_short_form_comes_back_as_it_went(
    rows: list[tuple[str, Kind, int, int]], between: str, clock: str, loud: bool
) -> None:
    """Bib, word, time: whatever is written in the grammar of text messages is read as just that."""
    ctx = world.volunteer_at("lathe")
    moments = [ctx.now - timedelta(minutes=ago) for *_, ago in rows]
    zone = ZoneInfo(ctx.time_zone)
    told = [
        f"{bib} {SHORT_WORDS[kind][n % len(SHORT_WORDS[kind])]} {at.astimezone(zone).strftime(clock)}"
        for (bib, kind, n, _), at in zip(rows, moments, strict=True)
    ]
    text = between.join(told)
    meant = understand(text.upper() if loud else text, ctx)
    assert isinstance(meant, Reported), text
    runners = {"214": "maren", "87": "tove"}
    wanted = [(runners[bib], kind, at) for (bib, kind, *_), at in zip(rows, moments, strict=True)]
    assert [(r.runner, r.kind, r.seen_at) for r in meant.reports] == wanted, text


SPOKEN = {
    "halb {next}": 30, "fünf vor halb {next}": 25, "fuenf nach halb {next}": 35, "viertel nach {this}": 15,
    "viertel vor {next}": 45, "dreiviertel {next}": 45, "viertel {next}": 15, "zehn nach {this}": 10,
    "zwanzig vor {next}": 40, "kurz nach {this}": 0, "um {this}": 0, "{this} uhr": 0,
}  # fmt: skip
HOURS = ("zwölf", "eins", "zwei", "drei", "vier", "fünf", "sechs", "sieben", "acht", "neun", "zehn", "elf")


@given(words(tuple(SPOKEN)), st.integers(0, 11), st.integers(5, 200), st.booleans())
def test_german_clock_times(said: str, hour: int, ago: int, afternoon: bool) -> None:
    """'Halb drei' is half past two, by day and by night, a while after it was so."""
    zone = ZoneInfo("Europe/Berlin")
    then = datetime(2027, 6, 20, hour + 12 * afternoon, SPOKEN[said], tzinfo=zone).astimezone(UTC)
    now = then + timedelta(minutes=ago)
    text = said.format(this=HOURS[hour], next=HOURS[(hour + 1) % 12])
    found = read_sentence(f"sie ist {text} angekommen", Context(now, "Europe/Berlin", ())).time
    assert found is not None, text
    assert found.at == then, text


@given(words(("sos", "hilfe", "help", "mayday")), reports)
def test_a_cry_of_hers_is_heard_in_any_words(cry: str, text: str) -> None:
    """A runner who cries for help is in distress, whatever else she writes, in either language."""
    for language in ("en", "de"):
        ctx = replace(world.the_runner(), parts=frozenset({PartKind.RUNNER}), language=language)
        assert isinstance(understand(f"{text} {cry}", ctx), Distress), text
