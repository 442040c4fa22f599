"""Sentences as crew, runner and home write them in the small hours, in both languages, typed with cold thumbs."""

from __future__ import annotations

from dataclasses import replace

import pytest

from server.conversation.understanding import Context, understand
from server.event.model import PartKind
from tests.bot import world

HOME = frozenset({PartKind.SAFETY_CONTACT})


def _writer(who: str, language: str) -> Context:
    ctx: Context = {
        "crew": world.crew_of_maren(),
        "crew at night": world.at_night(),
        "home": replace(world.crew_of_maren(), parts=HOME),
        "runner": world.the_runner(),
    }[who]
    return replace(ctx, language=language)


ENGLISH = (
    ("crew at night", "shes jsut gone thru kettle didnt stop lookd ok", "through kettle 03:20"),
    ("crew at night", "maren out of kettel 2.58", "out kettle 02:58"),
    ("crew at night", "any sign of her yet our end dead", "last heard"),
    ("crew at night", "weve overslept sorry leaving in 5", "note - 03:20"),
    ("crew at night", "whos got the spare battries", "bring"),
    ("crew at night", "do we have to be at ashen ford before 5", "leave ashen"),
    (
        "crew at night",
        "she came in at ravel abt ten min ago and is sat with a blanket",
        "in ravel 03:10 & resting - 03:20",
    ),
    ("crew at night", "shes being sick again wont eat", "how she is 03:20"),
    ("crew at night", "not seen her nobody has seen her and its been an hour", "not here yet ravel 03:20"),
    ("crew", "she told me shes dropping at brindle", "ask retired"),
    ("crew", "medics have got her lying down at lathe", "resting lathe 15:10"),
    ("crew", "she left her poles at lathe can someone go back", "bring lathe"),
    ("crew", "she left her poles at lathe", "no arrival"),
    ("crew", "wheres the next place we can actually get to her", "meeting"),
    ("crew", "is it far to ashen from here", "drive ashen"),
    ("crew", "dont wait for us were stuck behind a tractor", "note - 15:10"),
    ("crew", "ok shes off again", "out lathe 15:10"),
    ("crew", "who fetches her if she stops", "who would fetch her"),
    ("crew", "she is not with us", "not here yet lathe 15:10"),
    ("crew", "she isnt with us yet", "not here yet lathe 15:10"),
    ("home", "is she with you?", "where"),
    ("home", "has anyone actually seen her since midnight", "last heard"),
    ("home", "should i be worried its been ages", "who knows"),
    ("home", "is jonas awake", "people"),
    ("home", "who do i ring if nobody picks up", "numbers"),
    ("home", "when did you last hear from maren", "last heard"),
    ("home", "can i go to bed or will you wake me", "leave"),
    ("runner", "lost the markers near the quarry", "distress"),
    ("runner", "need my warm jacket at brindle and soup", "how she is 15:10"),
    ("runner", "how long have i got till the cut off at ravel", "cut-off ravel"),
    ("runner", "feet are wrecked gonna need tape at next stop", "how she is 15:10"),
    ("runner", "im at lathe going straight thru", "through lathe 15:10"),
    ("runner", "turned my ankle but ok walking it off", "how she is 15:10"),
)
GERMAN = (
    ("crew at night", "maren is grad duch kettle howe, sah gut aus", "through kettle 03:20"),
    ("crew at night", "sie war um kurz nach drei in ravel und is gleich weiter", "in ravel 03:00"),
    ("crew at night", "wann müssn wir in ashen sein", "leave ashen"),
    ("crew at night", "hat jemand was von ihr gehört seit mitternacht", "last heard"),
    ("crew at night", "wir ham verpennt, fahren jetz erst los", "note - 03:20"),
    ("crew at night", "brauchn wir die lampe in ashen noch", "bring ashen"),
    ("crew at night", "sie sitzt in ravel und zittert", "resting ravel 03:20"),
    ("crew at night", "immer noch nix von ihr zu sehn hier", "not here yet ravel 03:20"),
    ("crew at night", "is sie schon an uns vorbei?", "missed"),
    ("crew at night", "wer holt tove ab wenn sie aufhört", "people"),
    ("crew at night", "wie lang hat die pause in kettle gedauert", "last stop kettle"),
    ("crew", "sie steigt in brindle aus hat sie gesagt", "how she is 15:10"),
    ("crew", "sanis haben sie in lathe hingelegt", "resting lathe 15:10"),
    ("crew", "ihre stöcke stehen noch in lathe", "no arrival"),
    ("crew", "wo kommen wir als nächstes zu ihr hin", "meeting"),
    ("crew", "ist es weit bis ashen von hier", "drive ashen"),
    ("crew", "wartet nicht auf uns, stehen hinter nem traktor", "note - 15:10"),
    ("crew", "so sie ist wieder los", "out lathe 15:10"),
    ("crew", "sie ist nicht bei uns", "not here yet lathe 15:10"),
    ("home", "ist sie schon bei euch?", "where"),
    ("crew", "20 min hinter plan und schlecht gelaunt", "how she is 15:10"),
    ("crew", "sie sieht echt müde aus", "how she is 15:10"),
    ("home", "muss ich mir sorgen machen die ist überfällig", "who knows"),
    ("home", "wer weiss alles bescheid", "who knows"),
    ("home", "kann ich jetzt schlafen gehn", "leave"),
    ("home", "ist jonas wach", "people"),
    ("home", "wen ruf ich an wenn keiner drangeht", "numbers"),
    ("runner", "hab mich verlaufen irgendwo nach der mühle", "distress"),
    ("runner", "brauch in brindle die warme jacke und suppe", "how she is 15:10"),
    ("runner", "wie viel zeit hab ich noch bis zum limit in ravel", "cut-off ravel"),
    ("runner", "bin in lathe, lauf gleich weiter", "in lathe 15:10"),
    ("runner", "knöchel umgeknickt aber geht", "how she is 15:10"),
    ("runner", "brauch hilfe", "distress"),
)


@pytest.mark.parametrize(("who", "text", "meaning"), ENGLISH)
def test_english(who: str, text: str, meaning: str) -> None:
    """As written; 'no arrival' where it may be taken for anything but that she came or went."""
    _holds(understand(text, _writer(who, "en")), meaning)


@pytest.mark.parametrize(("who", "text", "meaning"), GERMAN)
def test_german(who: str, text: str, meaning: str) -> None:
    """The same."""
    _holds(understand(text, _writer(who, "de")), meaning)


def _holds(meant: object, meaning: str) -> None:
    got = world.brief(meant)
    if meaning == "no arrival":
        assert not got.startswith(("in ", "out ", "through "))
    else:
        assert got == meaning
