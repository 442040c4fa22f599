"""Ways of asking what nobody here knows (the weather, what the rules allow her to leave behind), and what somebody who
slept has missed. German is looked for as it was typed: these words are rare in a report."""

from __future__ import annotations

WEATHER = r"""
    \b(weather|temperature|windy|degrees|gusts?|thunderstorms?)\b
    \bhow (cold|warm|hot|wet|windy|icy|muddy|foggy)\b(?! (is|was|are|does|did) (she|her|it for))
    \b(will|is|was|would|does|did) it (going to |still |very |be |get )*(cold|warm|hot|freezing|freeze|rain|raining|\
      wet|windy|snow|snowing|storm|stormy|icy|foggy|misty)\b
    \bwill (she|it) (get|be) (rained on|wet|soaked)\b
    \b(wetter|regnet|schneit|gewittert|wettervorhersage)\b
    \bwie (kalt|warm|heiss|windig|nass)\b(?! (ist|war) (ihr|sie))
    \bwird es (\w+ )?(kalt|warm|heiss|nass|windig|regnen|schneien|frieren)\b
"""

_THING = (
    r"(?:(?:my|her|the|some|any|these|those|our|a|an|old|spare|wet|empty|half|of) )*(?:poles?|sticks?|jackets?|"
    r"layers?|torch\w*|head torch|lamps?|bags?|drop bags?|vest|pack|rucksack|bottles?|shoes|socks|clothes|clothing|kit|"
    r"gear|stuff|things?|rubbish|litter|waste|gloves|hats?|shell|waterproofs?|it|them|something|anything)"
)

LEAVE_THERE = rf"""
    \b(can|could|may|must|ok (to|if)|allowed to)\b (i |we |she )?(just )?(drop|leave|dump|ditch|stash|hand in|hand over|\
      deposit|throw away|get rid of) (off )?{_THING}\b
    \b(darf|kann|koennen|duerfen|kann) (ich|sie|wir) (\w+ ){{0,5}}(abgeben|ablegen|deponieren|dalassen|zuruecklassen|\
      liegen lassen|liegenlassen|loswerden)\b
    \b(darf|kann|koennen|duerfen) (ich|sie|wir) (\w+ ){{0,2}}(stoecke|jacke|tasche|sachen|zeug|lampe|schicht) \
      (\w+ ){{0,3}}lassen\b
"""

CATCH_UP = r"""
    \b(did|have|what did|what have|what) (i|we) (have )?miss(ed)?( anything| something| much| out)?$
    \b(did|have) (i|we) miss(ed)? (anything|something|much|any news|any message\w*|a message)\b
    \banything (happen\w*|new|important|changed) (while|since|when)\b
    \bwhat (has |have |is |did )?(happen\w*|changed|new|i miss\w*) (while|since|when)\b
    \b(catch me up|fill me in|bring me up to (speed|date)|up to speed)\b
    \bhab(e)? (ich|wir) (was|etwas|irgendwas|irgendetwas|viel) verpasst\b
    \bwas (hab|habe|haben) (ich|wir) verpasst\b
    \bwas ist (\w+ )?passiert\b.*\b(waehrend|seit|als ich|in der zwischenzeit|inzwischen)\b
    \bwas gibt es neues\b|\bwas gibts neues\b|\bbring mich auf (den )?(neuesten )?stand\b
"""
