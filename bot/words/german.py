"""German sentences put into the plain English words that the tables know: phrase by phrase, longest first.

Enough for what crew ask and report in the demo; a phrase that is missing is added to the table.
"""

from __future__ import annotations

import re

_PHRASES: tuple[tuple[str, str], ...] = (
    (r"was kann ich (dich )?(fragen|tun|machen)", "what can i ask"),
    (
        r"was ((sollen |können )?wir |kann ich |soll ich )?(tun|machen)( wir| ich)?,? (bei|wenn|falls|gegen)"
        r"|was,? (wenn|falls)",
        "what do we do if",
    ),
    (r"(die )?karten?\b", "if then cards"),
    (r"wie viel verspätung|wie weit hinten|hinter (dem )?plan", "behind plan"),
    (r"vor (dem )?plan|im plan|nach plan", "on plan"),
    (r"(haben|hab) (wir|ich) sie verpasst|verpasst", "have we missed her"),
    (r"ist sie schon (durch|vorbei|weg)", "has she gone through already"),
    (r"(sollen|soll|müssen) (wir|ich) (noch )?warten|warten oder (fahren|gehen|weiter)", "should we wait or go"),
    (r"was (sollen|müssen|muss|soll|nehmen|bringen) (wir|ich) ?(mit)?(bringen|nehmen)?( mit)?", "what do we bring"),
    (r"was (bekommen|nehmen) (wir|ich) zurück", "what do we take back"),
    (r"was (isst|trinkt) sie|was will sie (essen|trinken)|essen|verpflegung", "what does she eat"),
    (r"wann (müssen|muss|fahren|sollen|soll) (wir|ich) (los|losfahren|ab|abfahren)( fahren)?", "when do we leave"),
    (r"wie lange (fahren|dauert die fahrt|brauchen wir)|fahrzeit|wie lange ist die fahrt", "how long is the drive"),
    (r"wo treffen wir (sie|uns)( als nächstes)?|nächster treffpunkt|nächstes treffen", "where do we meet her next"),
    (r"wann treffen wir sie", "when do we meet her"),
    (r"wie weit ist sie( schon)?", "how far along is she"),
    (r"ist sie schon (da|hier|angekommen)", "is she here yet"),
    (r"wie lange noch", "how long until she is here"),
    (r"was (soll|sollen|muss|müssen) (ich|wir) (einpacken|packen|dabeihaben)", "what do we bring"),
    (r"(wir sind|ich bin) (in|bei|am|an)", "we are at"),
    (r"(sie )?braucht hilfe", "she needs help"),
    (r"(gerade|eben) los", "just left"),
    (r"\bdanke( schön| dir)?", "thanks"),
    (r"wo ist (sie|er)( gerade| jetzt)?|wo steckt sie|wo bist du", "where is she"),
    (r"wo (ist|sind) (alle|die anderen)", "where is everyone"),
    (r"wie lange (war|stand|blieb) sie", "how long was she at"),
    (r"wann (ist|kommt|erreicht) (sie|er)", "when is she at"),
    (r"wann (kommt|ist) (\w+) (an|in|am|bei)", r"when is \2 at"),
    (r"(im|am|ins|zum) ziel", "at the finish"),
    (r"\bziel(zeit)?\b", "finish"),
    (r"wie (geht es|geht's|gehts) ihr", "how is she"),
    (r"zeitlimit|zielschluss|karenzzeit|sollzeit", "cutoff"),
    (r"wann (habt ihr|haben wir|wurde sie) zuletzt (etwas )?(von ihr )?(gehört|gesehen)", "when last heard"),
    (r"letzte meldung|gibt es (etwas )?neues|was neues", "when last heard"),
    (r"ist es (dort|da) (schon )?dunkel|wird es dunkel|\bdunkel\b", "is it dark"),
    (r"nächste[rn]? punkt|als nächstes|nächste station", "next point"),
    (r"und (der|die|das) danach|und danach|und dann", "and the one after"),
    (r"zeitplan|\bplan\b", "plan"),
    (r"(noch )?nicht (da|hier|angekommen)", "not here yet"),
    (r"(ist )?(angekommen|eingetroffen|ist da|ist hier|ist drin|rein)", "arrived"),
    (r"(ist )?(raus|wieder los|losgelaufen|weitergelaufen|abgelaufen|weg)( aus)?", "left"),
    (r"durchgelaufen|(ist )?durch\b", "through"),
    (r"(macht|ist in der|in) pause|schläft|ruht( sich aus)?|legt sich hin", "resting"),
    (r"läuft wieder|geht wieder|wieder unterwegs", "moving again"),
    (r"(hat )?aufgegeben|ausgestiegen|aufgehört", "retired own choice"),
    (r"besenläufer|besenwagen|schlussläufer", "sweeper"),
    (r"gesehen", "saw her"),
    (r"hilfe|notfall", "help"),
    (r"verletzt", "hurt"),
    (r"verlaufen|verirrt", "lost"),
    (r"rückgängig|zurücknehmen|stimmt nicht|falsch", "undo"),
    (r"ich übernehme|übernehme ich|hab ich|mach ich", "i have it"),
    (r"verstanden|alles klar|gut danke", "ok"),
    (r"\bwach\b", "awake"),
    (r"sind unterwegs|bin unterwegs|fahren los|fahre los", "on our way"),
    (r"\bja\b", "yes"),
    (r"\bnein\b", "no"),
    (r"\bnoch nicht\b", "not yet"),
    (r"vor (\d+) ?(min\w*)", r"\1 min ago"),
    (r"vor (einer|1) stunde", "an hour ago"),
    (r"vor einer halben stunde", "half an hour ago"),
    (r"viertel nach", "quarter past"),
    (r"viertel vor", "quarter to"),
    (r"(\d+) nach (\d+)", r"\1 past \2"),
    (r"(\d+) vor (\d+)", r"\1 to \2"),
    (r"um (\d{1,2}) uhr (\d{2})", r"at \1:\2"),
    (r"um (\d{1,2}) uhr", r"at \1 oclock"),
    (r"\b(\d{1,2}) uhr (\d{2})", r"\1:\2"),
    (r"\bjetzt\b|\bgerade\b", "now"),
    (r"\bund\b", "and"),
    (r"\bsie\b", "she"),
    (r"\bin\b|\bbei\b|\bbeim\b|\bam\b|\bnach\b|\ban\b|\bzum\b|\bzur\b|\bbis\b", "at"),
    (r"\bist\b", "is"),
    (r"\bwann\b", "when"),
    (r"\bwo\b", "where"),
    (r"\baus\b", "out of"),
    (r"\bum\b", "at"),
)  # fmt: skip
_COMPILED = tuple((re.compile(p), to) for p, to in _PHRASES)
_HALF = re.compile(r"\bhalb (\w+)")
_NUMBERS = {
    "eins": 1, "ein": 1, "zwei": 2, "drei": 3, "vier": 4, "fünf": 5, "sechs": 6, "sieben": 7, "acht": 8, "neun": 9,
    "zehn": 10, "elf": 11, "zwölf": 12, "zwanzig": 20, "dreißig": 30,
}  # fmt: skip
_MARKS = re.compile(
    r"\b(?:wann|wo|wie|sie|ist|nicht|und|wir|haben|was|ich|noch|schon|angekommen|hilfe|verletzt|ja|nein|raus|"
    r"gerade|sind|bin|braucht|soll|vor \d+ min|uhr|"
    r"halb|viertel|ziel|danach|dunkel|verpasst|übernehme|wach|danke|eben|zeitplan|rückgängig|los|durch)\b"
)


def is_german(text: str, reader_language: str) -> bool:
    """Whether a sentence is German: two of its words say so, or one and the writer reads German."""
    marks = set(_MARKS.findall(text.lower()))
    return len(marks) >= (1 if reader_language.startswith("de") else 2)


def to_english(text: str) -> str:
    """The sentence with German phrases put into the words of the tables; names stay."""
    t = text.lower()
    for word, number in _NUMBERS.items():
        t = re.sub(rf"\b{word}\b", str(number), t)
    # 'halb drei' is half past two.
    t = _HALF.sub(lambda m: f"{int(m[1]) - 1 or 12}:30" if m[1].isdigit() else m[0], t)
    for pattern, to in _COMPILED:
        t = pattern.sub(to, t)
    return t
