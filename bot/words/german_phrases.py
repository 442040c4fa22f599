"""The table of German phrases: what is replaced, and by which words of the English tables. Order is part of it.

'ä', 'ö', 'ü' and 'ß' also find 'ae', 'a' and so on. What is narrower stands first; single words stand last.
"""

from __future__ import annotations

_LIMIT = r"(?:zeitlimits?|zielschluss|karenzzeit|karenz|sollzeit|limit|cut ?-? ?offs?)"
_OFF = r"(?:los|losfahren|ab|abfahren|aufbrechen|weg|wegfahren|fahren|starten|losmachen|aufstehen)"

_TIMES = (
    (r"\bvor (\d+) min\b", r"\1 min ago"),
    (r"\bvor (?:einer|1) (?:viertelstunde|viertel stunde)\b", "15 min ago"),
    (r"\bvor (?:einer|1) (?:dreiviertelstunde|dreiviertel stunde)\b", "45 min ago"),
    (r"\bvor (?:einer |1 )?(?:halben stunde|halbe stunde|halbstunde)\b", "30 min ago"),
    (r"\bvor (?:einer|1) stunde\b", "60 min ago"),
    (r"\bvor (\d+) stunden?\b", r"\1 hours ago"),
    (r"\bvor (?:einem |ein )?paar min\b", "5 min ago"),
    (r"\bin (\d+) min\b", r"in \1 min"),
    (r"\bviertel nach\b", "quarter past"),
    (r"\bviertel vor\b", "quarter to"),
    (r"\bkurz (?:vor|nach) (\d{1,2})\b(?! min| uhr \d)", r"about \1 oclock"),
    (r"\b(\d+)(?: min)? nach (\d+)\b", r"\1 past \2"),
    (r"\b(\d+)(?: min)? vor (\d+)\b", r"\1 to \2"),
    (r"\b(?:(?:so um|um|gegen|seit|ab) )?(\d{1,2}:\d\d)(?: uhr)?\b", r"at \1"),
    (r"\b(\d{4}) uhr\b", r"\1"),
    (r"\b(?:(?:um|gegen|seit|ab) )?(\d{1,2}) uhr\b", r"at \1 oclock"),
    (r"\b(?:um|gegen) (\d{1,2})\b", r"at \1"),
    (r"\bmitternacht\b", "midnight"),
    (r"\b(?:um )?mittags?\b", "noon"),
    (r"\b(?:nachmittags?|abends?|am abend|am nachmittag|heute abend)\b", "pm"),
    (r"\b(?:morgens|früh|frühs|am morgen|heute früh|nachts|heute morgen)\b", "am"),
    (r"\b(?:gestern abend|gestern)\b", "yesterday"),
)

_QUESTIONS = (
    (r"\bist sie (?:schon |jetzt |noch |gerade )*bei (?:euch|dir|jemandem)\b", "is she with you"),
    (r"\b(?:wen|wem) (?:ruf\w*|soll|sollen|kann|können|muss|müssen|darf|telefonier\w*) (?:ich|wir)\b.*$",
     "who do i call"),
    (r"^(?:hat|haben|habt) (?:ihr |jemand |irgendwer |irgendjemand |wer |einer )(?:\w+ ){0,5}"
     r"(?:gehört|mitbekommen|gesehen)\b", "when last heard"),
    (r"\bwann (?:müssen|muss|sollen|soll|sollten) (?:wir|ich)(?: \w+){0,2} (?:in|am|an|bei|im) (.+?) (?:sein|stehen)\b",
     r"when do we need to be at \1"),
    (r"\b(?:ist|war) sie (?:schon |bereits |etwa )*(?:an uns |hier |bei uns )(?:schon |bereits )?"
     r"(?:durch|vorbei\w*|vorüber)",
     "has she gone through already"),
    (r"\bwer holt (?:sie|(\w+))(?: \w+)? ab\b", r"who picks her up \1"),
    (r"\bwie lange? (?:hat|war|ging|dauerte) (?:die|ihre|der|ihr) (?:pause|stopp|halt|rast|aufenthalt)\b",
     "how long was the stop"),
    (r"\bist es (?:noch |sehr )*weit (?:bis|nach|zu|zum|zur)\b", "how far is it to"),
    (r"\b(?:kann|könnte) (\w+) (?:mein\w*|unser\w*) (?:treffen|treffpunkt|schicht|fahrt)(?: \w+)? übernehmen\b",
     r"can \1 take my meeting"),
    (r"\bist der alarm (?:\w+ )?(?:offen|vorbei|aktiv|beendet)\b", "is the alarm still open"),
    (r"\bwas ist (?:\w+ )?mit (?:dem|diesem) alarm\b", "what about the alarm"),
    (r"\bwas ist (?:da |hier )?(?:passiert|geschehen)\b", "what happened"),
    (r"\b(?:muss|soll|müssen|sollen) (?:ich|wir) (?:mir|uns) (?:jetzt )?sorgen machen\b", "should i be worried"),
    (r"\b(?:kann|darf|können|dürfen) (?:ich|wir) (?:jetzt |noch )*(?:schlafen|ins bett|mich hinlegen|uns hinlegen)\b",
     "can i sleep"),
    (r"^(?:sorry,? |nein,? )?(?:berichtigung|korrektur|korrigiere|richtig ist)\b[ :,]*", "correction "),
    (r"\bfahrt (?:vom|von der|von|ab) (.+?) (?:nach|bis|zum|zur) (?=\w)", r"drive from \1 to "),
    (r"was kann ich (?:dich )?(?:alles )?(?:fragen|tun|machen|schreiben)|was kannst du", "what can i ask"),
    (r"was (?:muss|habe) ich (?:hier |denn |zu |jetzt )?(?:zu )?tun|was ist (?:hier )?meine aufgabe", "what is my job"),
    (r"wie (?:melde|funktioniert|geht) (?:ich|das|es)(?: hier)?\b(?! ihr)", "how does this work"),
    (r"\b(?:der |den )?start (?:ist |wurde |wird |hat sich |verzögert sich |verschiebt sich )?(?:(?:um|at) )?"
     r"(?:(\d+) (min|stunden?)|(?:1 |eine )?(halbe) stunde|(?:1 |eine )?(viertelstunde)) ?(?:nach hinten )?"
     r"(?:verschoben|verspätet|verzögert|später|verlegt)?", r"start delayed by \1 \2 \3 \4"),
    (r"\b(?:der )?start (?:ist |wurde |wird )?(?:nach hinten )?(?:verschoben|verspätet|verzögert|verlegt)", "start delayed"),
    (r"^(?:sollen|soll|muss) (?:wir|ich) (?:noch )?(?:auf|at) (.+?) (?:noch )?warten oder.*$",
     r"should we wait for \1 or go"),
    (r"^(?:darf|kann|soll|sollte|muss) (?:sie|ich|ihr) .*\b(?:schlafen|hinlegen|ibu\w*|paracetamol|aspirin|schmerz\w+|"
     r"salz\w*|cola|koffein|tablette\w*|medikament\w*|magnesium)\b.*$", "what do we do about it"),
    (r"\b(?:was hilft|hilft|helfen)\b(?: (\w+))? ?(?:bei|gegen|wenn|at)\b", r"what do we do about \1 if"),
    (r"^(?:hilft|helfen)\b", "what do we do with"),
    (r"\bwas (?:macht|tut|nimmt|gibt|hilft|nehmen|geben|mache|tue)(?: man| wir| ich)? (?:bei|gegen|wenn|at)\b",
     "what do we do if"),
    (r"^was (?:bei|gegen|at) (?=\w+ ?\??$)", "what do we do if "),
    (r"^was (?:soll|sollen|kann|können|muss|müssen) (?:ich|wir|man) (?:bei|gegen|at) (.+?) (?:machen|tun|"
     r"nehmen)", r"what do we do if \1"),
    (r"(?<=, )was (?:machen?|tun?|tue) (?:wir|ich)(?: jetzt| nun| dann)?(?= ?\??$)", "what do we do now"),
    (r"\b(?:und )?was (?:nun|jetzt|tun|machen)\b(?= ?\??$)", "what do we do now"),
    (r"^wie (?:behandelt man|behandle ich|behandeln wir|versorgt man|versorge ich|tapet man|tape ich)\b",
     "what do we do if"),
    (
        r"was (?:(?:sollen |können |soll |kann )?(?:wir|ich|man) )?(?:tun|machen|mache|mach|tu)(?: wir| ich)?,? "
        r"(?:bei|wenn|falls|gegen)|was,? (?:wenn|falls|hilft gegen)",
        "what do we do if",
    ),
    (r"(?:die )?\bkarten?\b", "if then cards"),
    (r"(?:wer|wem) (?:weiß|wissen|wurde|ist|sind|hat|haben)(?: \w+)? (?:davon|bescheid|informiert|benachrichtigt|"
     r"alarmiert|gesagt worden)|wer weiß (?:davon|bescheid)", "who knows about this"),
    (r"(?:soll|kann|darf|sollen|können|dürfen) (?:ich|wir) (?:ihr|zu ihr)\b(?: \w+)? ?(?:entgegen ?(?:laufen|gehen)?|"
     r"hochlaufen|hochgehen|hinlaufen|raufgehen)|(?:ihr )?entgegen ?(?:laufen|gehen)", "should i walk towards her"),
    (r"wann (?:wechsel\w*|ändern sich|kippt|kippen) (?:die |das )?ziele?\b|bis wann gilt (?:plan|ziel) ([abc])",
     "when do the goals change"),
    (r"wie (?:steh|stehe|lieg|liege|bin) ich(?: (?:da|in der zeit|im plan|gut))*|wie mache? ich mich|"
     r"wie läuft es bei mir|"
     r"bin ich (?:gut |noch )?(?:in der zeit|im plan)", "how is my race"),
    (r"(?:wenn|falls) sie (?:um )?(\d+) ?(?:prozent|%) (langsamer|schneller)\b(?: (?:wird|ist|läuft|geht))?",
     r"if she goes \1 percent \2"),
    (r"(?:wenn|falls) sie (?:langsamer|schneller) (?:wird|ist|läuft)", "if she goes slower"),
    (r"\blangsamer\b", "slower"),
    (r"\bschneller\b", "faster"),
    (r"(?:wenn|falls) sie (jetzt|gleich|sofort|in \d+ min)(?: \w+)? (?:los\w*|läuft|raus\w*|weiter\w*|aufbricht|"
     r"geht|startet)",
     r"if she leaves \1"),
    (r"wie viel verspätung|wieviel verspätung|wie weit hinten|hinter (?:dem )?plan|zu spät dran|"
     r"im verzug", "behind plan"),
    (r"(?:vor|im|nach|in) (?:dem |der )?(?:plan|zeit)\b(?! in| bei)|gut in der zeit|liegt sie (?:gut|"
     r"im plan)", "on plan"),
    (r"wann (?:schließt|macht|schließen|machen)(?: (?:die|der))? (.+?) (?:zu|dicht)\b|wann schließt (.+?)(?: ?\?|$)",
     r"what time do they close \1\2"),
    (r"(?:schafft|packt|reißt) sie (?:es|das|die|den)?(?: noch)?(?: rechtzeitig)?"
     rf"(?: (?:zeit|{_LIMIT}))?", "cutoff at"),
    (rf"\b{_LIMIT}\b", "cutoff"),
    (r"(?:haben|habe) (?:wir|ich) sie (?:schon )?(?:verpasst|übersehen)|\bverpasst\b", "have we missed her"),
    (r"(?:ist|war) sie (?:schon |bereits )(?:durch|vorbei|weg|raus|vorbeigekommen|durchgelaufen)",
     "has she gone through already"),
    (r"(?:sollen|soll|müssen|muss|lohnt es sich|lohnt) (?:(?:wir|ich) )?(?:noch |länger |hier |weiter )*(?:zu )?"
     r"(?:warten|bleiben)(?: oder \w+)?|warten oder (?:fahren|gehen|weiter\w*|los\w*)|wie lange (?:noch |sollen wir |"
     r"soll ich |müssen wir )*warten", "should we wait or go"),
    (r"was (?:bekommen|nehmen|kriegen) (?:wir|ich) (?:von ihr )?(?:zurück|mit zurück)|"
     r"was gibt sie (?:uns )?(?:zurück|ab)",
     "what do we take back"),
    (r"was (?:soll|sollen|muss|müssen|muß) (?:ich|wir|alles) (?:alles )?(?:mitbringen|mitnehmen|einpacken|packen|"
     r"dabeihaben|dabei haben|bereithalten|hinbringen)|was (?:bringen|nehmen|bring|nehm|brauchen|brauche|brauch) "
     r"(?:wir|ich)(?: alles)?(?: mit)?|was braucht sie|welche (?:sachen|ausrüstung)|was muss (?:mit|ins auto)",
     "what do we bring"),
    (r"was (?:isst|trinkt|ißt) sie|was will sie (?:essen|trinken)|was gibt es (?:zu )?(?:essen|trinken)|"
     r"\b(?:essen|verpflegung|trinken)\b", "what does she eat"),
    (rf"wann (?:\w+ )?(?:wir|ich)\b(.*?)\b{_OFF}\b", r"when do we leave \1"),
    (r"wann (?:fahr|fahre|fahren|starten|starte) (?:wir|ich)", "when do we leave"),
    (rf"(?:müssen|muss|sollen|soll) (?:wir|ich) (?:schon |jetzt |bald )*{_OFF}\b", "do we have to leave now"),
    (r"^(?:muss|müssen|brauche|brauch|brauchen|soll|sollen|sollte|sollten) (?:ich|wir) (?:noch |auch |dann )*"
     r"(?:nach|zum|zur|ins|bis) (?!hause\b|arzt\b)(.+?) (?:zu )?(?:fahren|kommen)(?= ?\?|$)",
     r"do we need to drive to \1"),
    (r"^was (?:alles )?(?:mitbringen|mitnehmen|einpacken)(?= ?\?|$)", "what do we bring"),
    (r"(?:habe|haben) (?:ich|wir) (?:noch |genug |etwas |ein bisschen )*zeit\b", "how much time have we got"),
    (r"\breicht (?:die zeit|uns die zeit|mir die zeit|es) (?:noch )?(?=für|zum|um|bis)|"
     r"\bbleibt (?:noch |uns |mir )*zeit\b|"
     r"\bwie ?viel zeit (?:bleibt|haben|habe|hab|ist)\b", "how much time have we got "),
    (r"^gibts? (?:es |da |dort )*", "is there "),
    (r"wie (?:lang|lange|weit) (?:fahr\w*|brauch\w*|dauert|ist|wäre)(?: (?:ich|wir|man|es|die fahrt))+"
     r"(?: (?:nach|bis|zu|zum|zur|bis nach))?|fahrzeit(?: (?:nach|bis))?", "how long is the drive to"),
    (r"wo treffen wir (?:sie|uns)(?: (?:als nächstes|das nächste mal))?|nächster treffpunkt|nächstes treffen|"
     r"wo müssen wir (?:als nächstes )?hin|\btreffpunkt\b", "where do we meet her next"),
    (r"wann treffen wir sie", "when do we meet her"),
    (r"\b(?:parken|parkplatz|anfahrt|adresse)\b", "parking"),
    (r"^(?:der |ihr |mein )?(?:renn)?(?:bericht|ergebnis)(?: bitte)?(?= ?\?|$)|"
     r"^(?:die |eine )?zusammenfassung(?: bitte)?(?= ?\?|$)",
     "summary"),
    (r"^(?:und |na )?wie (?:lief|war) (?:es|das rennen|ihr rennen|s|alles)(?: für sie| insgesamt| gegen den plan)?"
     r"(?= ?\?|$)|"
     r"^(?:und |na )?wie ist (?:es|das rennen|ihr rennen|alles) gelaufen(?= ?\?|$)", "how did it go"),
    (r"^(?:und )?ist (?:es|das rennen|ihr rennen|alles) (?:jetzt |schon |nun |now )?(?:vorbei|zu ende|aus|gelaufen)"
     r"(?= ?\?|$)", "is it over"),
    (r"^(?:und )?was war (?:denn |da )*los(?= ?\?|$)", "what happened"),
    (r"wie weit ist sie(?: schon)?|wie viele? km|wieviel km", "how far along is she"),
    (r"ist sie (?:schon|endlich) (?:da|hier|angekommen|drin)", "is she here yet"),
    (r"wie lange? (?:dauert es )?noch(?: bis sie (?:da|hier|kommt)(?: ist)?)?", "how long until she is here"),
    (r"(?:wie lange|wie lang) (?:war|stand|blieb|ist|steht|sitzt|hat) sie", "how long was she at"),
    (r"wo (?:ist|sind|steckt|stecken|bleibt|bleiben) (?:alle|die anderen|der rest)", "where is everyone"),
    (r"wer (?:fährt|chauffiert|lenkt)(?: (?:denn|eigentlich|jetzt|als nächstes|morgen|heute))* "
     r"(?:mit dem auto |mit dem bus )?(?:nach|zu|zum|zur|bis|hin\w*|dahin|dorthin|in|bei|am|an|ins)\b", "who drives to"),
    (r"wer (?:nimmt|hat|holt) (?:das|den|unser\w*|mein\w*) (?:auto|wagen|bus)\b", "who takes the car"),
    (r"welches (?:auto|fahrzeug) (?:fährt|kommt|geht|ist)|welcher (?:wagen|bus) (?:fährt|kommt|geht|ist)", "which car goes"),
    (r"wer (?:fährt|läuft|geht) (?:alles )?mit\b", "who goes with"),
    (r"wer fährt\b(?! (?:mit|bei|zusammen))(?: sie)?", "who drives"),
    (r"wer (?:ist|steht|wartet|geht|kommt|läuft|holt|übernimmt) (?:in|bei|an|am|nach|mit|zu|als|gerade)\b",
     "who is at"),
    (r"\bwer\b", "who"),
    (r"wo (?:ist|steckt|bleibt|läuft|befindet sich) (?:sie|unsere \w+)(?: gerade| jetzt| aktuell)?|wo bist du|"
     r"\bstandort\b", "where is she"),
    (r"wann (?:ist|kommt|erreicht|läuft|wird|dürfte|müsste|sollte|kann) (?:sie )", "when is she at "),
    (r"wann (?:kommt|ist|erreicht|läuft) (\w+) (?:an|in|am|bei|ein)", r"when is \1 at"),
    (r"(?:im|am|ins|zum|durchs|ins) ziel\b|\bzieleinlauf\b", "at the finish"),
    (r"\b(?:ziel(?:zeit|ankunft)?|fertig)\b(?= ?\?|$)", "finish"),
    (r"\bziel(?:zeit|ankunft)?\b", "finish"),
    (r"wie (?:geht es|geht) (?:ihr|der läuferin|ihr so)|wie (?:fühlt sie sich|ist sie drauf|sieht sie aus)|"
     r"geht es ihr gut|alles (?:ok|gut|okay) (?:bei|mit) ihr", "how is she"),
    (r"wann (?:habt ihr|haben wir|wurde sie|hat jemand|habe ich) (?:zuletzt|das letzte mal) (?:etwas |"
     r"was )?(?:von ihr )?"
     r"(?:gehört|gesehen)|letzte meldung|letzte nachricht|zuletzt (?:gesehen|gehört|gemeldet)|"
     r"(?:gibt es |was )(?:etwas |was )?neues|irgendwas neues|neuigkeiten|schon was gehört", "when last heard"),
    (r"(?:wann )?(?:geht (?:die|) ?sonne (?:unter|auf)|ist sonnenuntergang|sonnenuntergang|sonnenaufgang|"
     r"wird es (?:dunkel|"
     r"hell|nacht))|ist es (?:dort|da|dann)?(?: dann| dort| da)? ?(?:schon |noch )?(?:dunkel|hell)|"
     r"\bdunkel\b", "is it dark"),
    (r"nächste[rsnm]? (?:punkt|station|halt|stelle|posten)|als nächstes|an der nächsten|am nächsten|"
     r"der nächste", "next point"),
    (r"und (?:der|die|das) danach|und danach|und dann|und der nächste", "and the one after"),
    (r"\b(?:zeitplan|plan|ablauf)\b", "plan"),
    (r"(?:telefon)?nummer(?: der| von der)? (?:rennleitung|bergwacht|orga)|notrufnummer|"
     r"\bnotruf\b", "race control number"),
)  # fmt: skip

_REPORTS = (
    (r"\b(?:sah|sieht|sahen|sehen|schaut|schaute)(?: \w+){1,4} aus\b", "looks tired"),
    (r"\b(?:steigt|hört|gibt)(?: (?!ihr\b)\w+){0,3} (?:aus|auf)\b(?! die| den| das)", "wants to stop"),
    (r"(?:besenläufer|besenwagen|schlussläufer|schlussmann|schlussfahrzeug|besen)\b", "sweeper"),
    (r"(?:wir haben sie|habe sie|haben sie|sie ist|sie sitzt)(?: jetzt| sicher| bei uns| bei mir)* (?:im auto|im wagen|"
     r"eingesammelt)",
     "picked her up"),
    (r"\bist (?:noch )?nicht bei (?:uns|mir)\b", "is not here yet"),
    (r"\bist (?:(?:jetzt|hier|endlich|wieder|schon|gerade|gut|sicher) )*bei (?:uns|mir)\b", "is with us"),
    (r"^(?:(?:ja|ok|so|puh|also|und|,) )*(?:wir |ich )?(?:haben|habe) sie(?: (?:jetzt|hier|endlich|wieder|gefunden|"
     r"bei uns|bei mir))*(?= ?[.!]*$)", "we have got her"),
    (r"(?:rennleitung|orga|veranstalter) (?:weiß (?:es|bescheid|davon)|ist informiert|informiert|verständigt)|"
     r"(?:habe|haben) (?:die |der )?(?:rennleitung|orga) (?:angerufen|informiert|bescheid gesagt|verständigt)",
     "told race control"),
    (r"\b(?:war |es war )?(?:nur )?(?:(?:einen?|ein|1) )?(?:fehlalarm|falscher alarm)\b", "false alarm"),
    (r"\balarm (?:ist )?(?:vorbei|beendet|aufgehoben)\b|\balarm (?:beenden|aufheben)\b", "alarm over"),
    (r"\bentwarnung\b(?: für(?: die)?\b)?", "stand down"),
    (r"(?<!nicht )\bwieder (?:zurück )?(?:auf (?:dem|den|der|die) (?:richtigen )?(?:weg|pfad|kurs|strecke|route|trail)|"
     r"auf kurs|richtig)\b", "back on course"),
    (r"\b(?:den |die |meinen )?(?:richtigen )?(?:weg|pfad|strecke|markierung\w*|route) (?:jetzt )?(?:wieder )?gefunden\b|"
     r"\bnicht mehr verlaufen\b", "found the path"),
    (r"(?:noch )?(?:nichts|niemand)(?: \w+)? (?:von ihr )?(?:gesehen|zu sehen)(?: von ihr)?|"
     r"(?:noch )?keine spur(?: von ihr)?|"
     r"(?:noch |immer noch )?nichts von ihr(?: zu sehen| gesehen)?|(?:noch )?nicht (?:da|hier|drin|durch|"
     r"angekommen|aufgetaucht|"
     r"eingetroffen|vorbeigekommen|in sicht|gesehen)|(?:ist|war) (?:hier |bei uns )?noch nicht|noch nicht (?=in|"
     r"bei|an|am)|"
     r"(?:warten|warte) (?:noch|immer noch) auf sie", "not here yet "),
    (r"(?:ist )?(?:gerade |eben )?(?:ohne (?:halt|pause|stopp|anzuhalten) )?(?:durchgelaufen|durchgerannt|"
     r"durchmarschiert|durch)"
     r"(?: ohne (?:halt|pause|stopp|anzuhalten))?\b", "through"),
    (r"ohne (?:halt|pause|stopp|anzuhalten)", "without stopping"),
    (r"(?:vom|von|durch|die|der|den)? ?(?:arzt|ärztin|sanitätern?|sanis?|rennleitung|orga|posten)\b(?: \w+){0,3} "
     r"(?:rausgenommen|herausgenommen|rausgezogen|aus dem rennen genommen|gestoppt)", "withdrawn by the medics"),
    (r"(?:rausgenommen|herausgenommen|rausgezogen|aus dem rennen genommen)", "she got pulled"),
    (r"(?:aus dem rennen|raus aus dem rennen)", "out of the race"),
    (r"(?:hat )?(?:aufgegeben|hingeschmissen)", "given up"),
    (r"(?:ist |hat )?ausgeschieden", "retired"),
    (r"(?:ist |hat )?(?:ausgestiegen|aufgehört|abgebrochen)", "bailed"),
    (r"^(?:sie |\w+ )?ist (?:leider|nun leider|jetzt leider|offiziell) raus(?= ?[.!]*$)", "she is out of the race"),
    (r"(?:ist )?(?:gerade |eben |pünktlich |jetzt )*(?<!nicht )gestartet\b", "has started"),
    (r"\b(?:wird|will|möchte) (?:\w+ ){0,2}weiter(?:laufen|gehen|machen|rennen)\b|"
     r"\b(?:läuft|geht|macht) (?:auf jeden fall|auf alle fälle) weiter\b", "will go on"),
    (r"\b(?:läuft|geht|macht|rennt) (?:(?:jetzt|wieder|noch|trotzdem|doch|nun|now) )*weiter\b", "goes on"),
    (r"(?:nicht gestartet|startet nicht|nicht am start)", "did not start"),
    (r"(?:will|möchte|überlegt) (?:\w+ )?(?:aufgeben|aufhören|aussteigen|aufzugeben|aufzuhören|"
     r"auszusteigen)", "wants to stop"),
    (r"\b(?:ich )?bin (?:jetzt |schon |gerade |auch )*(?=at the finish)", "i'm "),
    (r"\b(?:ich )?bin (?:jetzt |schon |gerade |endlich )*(?:da|hier|angekommen|vor ort)\b", "i'm here"),
    (r"^(?:ich bin |wir sind |bin |sind )?(?:jetzt )?auf dem weg (?:nach|zum|zur|zu|at)\b", "on our way to"),
    (r"\bbin wieder (?:unterwegs|am laufen|im rennen)\b", "on our way again"),
    (r"(?:ist )?(?:wieder (?:raus|los|unterwegs|losgelaufen)|losgelaufen|weitergelaufen|weiter gelaufen|abgelaufen|"
     r"weitergegangen|losmarschiert|weg|los|weiter)(?: aus| von)?\b", "left"),
    (r"\braus (?:aus|bei|von|in)\b", "out of"),
    (r"\b(?:raus|hinaus|draußen)\b", "out"),
    (r"(?:läuft|geht) wieder|wieder auf den beinen|aufgestanden", "moving again"),
    (r"(?:macht|ist in der|in|kurze|braucht|mache) pause|\b(?:schläft|pennt|schlafe|ruht|ruhe)\b(?: sich aus)?|"
     r"legt sich hin|"
     r"hingelegt|\bpause\b|\bsitzt\b|\bsitze\b|\bnickerchen\b", "resting"),
    (r"(?:ist |gerade |eben )*(?:angekommen|eingetroffen|eingelaufen|reingekommen|aufgetaucht|ist da|ist hier|ist drin|"
     r"reingelaufen|\brein\b|\bdrin\b|\bda\b|\bhier\b)", "arrived"),
    (r"\b(?:haben|habe|sind|bin)? ?(?:schon |jetzt )?(?:geparkt|eingeparkt)\b", "parked"),
    (r"(?:wir sind|ich bin|bin|sind) (?:schon |jetzt |gerade |wieder )*(?:in|bei|am|an|zurück in|schon in)\b",
     "we are at"),
    (r"\b(?:sehe sie|gesehen|gesichtet|getroffen|überholt)\b", "saw her"),
)  # fmt: skip

_TROUBLE = (
    (r"(?:finde|sehe) (?:den |keinen |die |niemand )?(?:weg|pfad|markierung\w*|"
     r"strecke)(?: nicht(?: mehr)?)?", "can not find the path"),
    (r"kann nicht(?: mehr)? (?:laufen|gehen|weiter\w*|aufstehen|auftreten)|kann nicht mehr\b", "can not go on"),
    (r"(?:krankenwagen|rettungswagen|notarzt|bergwacht|rettung)\b(?: \w+)? (?:gerufen|angerufen|unterwegs|verständigt)|"
     r"(?:ruft?|holt?|brauchen?|braucht) (?:\w+ )?(?:krankenwagen|rettungswagen|notarzt|bergwacht|rettung)",
     "called the ambulance"),
    (r"(?:braucht|will|brauchen für sie) (?:dringend |sofort )?(?:hilfe|(?:einen )?(?:arzt|sanitäter|"
     r"sani))", "needs help"),
    (r"zusammengebrochen|umgekippt|bewusstlos|ohnmächtig", "collapsed"),
    (r"\b(?:schwer|schlimm) verletzt|\bverletzt\b|\bverletzung\b", "hurt"),
    (r"\b(?:verlaufen|verirrt|verloren gegangen)\b", "lost"),
    (r"\b(?:hilfe|notfall)\b", "help"),
    (r"\b(?:gestürzt|hingefallen|gestolpert|hingeflogen)\b", "fell"),
    (r"\b(?:knöchel|bein|arm|fuß|handgelenk) gebrochen", "broken leg"),
    (r"(?:schlecht|übel|gekotzt|kotzt|erbrochen|übergeben|übergibt sich|magen\w*|durchfall)\b(?! drauf)", "sick"),
    (r"\b(?:blasen?)\b", "blister"),
    (r"\bfüße?n?\b", "feet"),
    (r"\b(?:knie)\b", "knee"),
    (r"\b(?:krampf|krämpfe)\b", "cramp"),
    (r"\b(?:umgeknickt|umgeknackst|verknackst|verstaucht|gezerrt)\b", "limping"),
    (r"\b(?:zittert|friert|schlottert|unterkühlt)\b", "shivering"),
    (r"\b(?:verwirrt|redet wirr|wirr|nicht ansprechbar)\b", "confused"),
    (r"(?:gut|super|bestens|schlecht|mies) drauf|\bstimmung\b|\blaune\b", "mood"),
    (r"\b(?:müde|kaputt|fertig|platt|erschöpft|am ende|k\.? ?o\.?)\b", "feels tired"),
    (r"\b(?:hat hunger|isst|gegessen|trinkt|getrunken)\b", "eating"),
    (r"\b(?:humpelt|schmerzen|tut weh)\b", "limping in pain"),
    (r"\b(?:kalt)\b", "cold"),
    (r"\b(?:lächelt|lacht)\b", "smiling"),
    (r"\bsieht (?:gut|schlecht|müde|fit|stark) aus\b", "looks tired"),
)  # fmt: skip

_ANSWERS = (
    (r"^(?:ja ?,? |genau ?,? )?(?:das )?(?:ist )?(?:stimmt|richtig)(?: so)?(?= ?[.,]?$)", "that is right"),
    (r"^(?:(?:ja|ok|okay) ?,? )?(?:ich )?habe? ?['’]?e?s(?: jetzt| schon)?(?= ?[.,!]?$)", "i have it"),
    (r"rückgängig|zurücknehmen|(?:das )?stimmt nicht|\b(?:war )?falsch\b|vertippt|vertan|\blöschen\b", "undo"),
    (r"(?:ich )?übernehme?(?: (?:ich|es|ihn|das))?\b|(?:ich )?kümmere? mich(?: drum| darum)?|(?:bin|"
     r"ich bin) (?:schon )?dran|"
     r"\bmache? ich\b|\bhabe ich\b(?! \w)|\bhabe (?:ihn|es)\b", "i have it"),
    (r"\balles (?:wieder |jetzt )*(?:gut|okay|ok|bestens|fein)\b", "all good"),
    (r"\bmir geht es (?:wieder |jetzt )*(?:gut|okay|ok|bestens)", "i'm fine"),
    (r"verstanden|alles klar|gut danke|geht klar|in ordnung|\bpasst\b|erledigt", "ok"),
    (r"(?:ich )?(?:bin|sind) (?:schon |jetzt )?wach|\bwach\b", "awake"),
    (r"(?:sind|bin|wir sind|ich bin) unterwegs|(?:fahren|fahre|fahr) (?:jetzt )?(?:left|los)|"
     r"\bunterwegs\b", "on our way"),
    (r"(?:ich )?kann (?:gerade |leider |jetzt )?nicht\b|geht nicht\b|schaffe? (?:ich |es )?nicht", "can not"),
    (r"(?:hier |da |there |arrived )?(?:ist )?niemand(?: (?:arrived|da|hier|mehr))?$", "nobody there"),
    (r"(?:noch|weiter|immer noch) (?:vermisst|weg|nichts)", "still missing"),
    (r"ich (?:fahre?|gehe?|hole sie)(?: hin| ab)?$", "i go"),
    (r"\bnoch nicht\b", "not yet"),
    (r"\bja\b", "yes"),
    (r"\bnein\b", "no"),
    (r"\bdanke( schön| dir| euch)?", "thanks"),
    (r"\b(?:hallo|moin|servus|guten morgen|guten abend|grüß \w+)\b", "hi"),
)  # fmt: skip

_WORDS = (
    (r"\b(?:stirnlampe|kopflampe|lampe|taschenlampe)\b", "head torch"),
    (r"\bbrauchen wir\b", "do we need"),
    (r"\bbraucht sie\b", "does she need"),
    (r"\bjetzt\b|\bgerade(?: eben)?\b|\beben\b|\bsoeben\b", "now"),
    (r"\bstartnummer\b", "bib"),
    (r"\bund\b", "and"),
    (r"\boder\b", "or"),
    (r"\bsie\b", "she"),
    (r"\bihr\b", "her"),
    (r"\bin\b(?! \d+ min)|\bbei\b|\bbeim\b|\bam\b|\bnach\b|\ban\b|\bzum\b|\bzur\b|\bbis\b|\bim\b", "at"),
    (r"\bist\b", "is"),
    (r"\bwar\b", "was"),
    (r"\bhat\b", "has"),
    (r"^habe (?!ich\b)(?=\w+(?: jetzt| now)?$)", "i have "),
    (r"^haben (?!wir\b|sie\b)(?=\w+(?: jetzt| now)?$)", "we have "),
    (r"\bhaben\b|\bhabe\b", "have"),
    (r"\bwir\b", "we"),
    (r"\bich\b", "i"),
    (r"\bwann\b", "when"),
    (r"\bwo\b", "where"),
    (r"\bwie\b", "how"),
    (r"\bnicht\b", "not"),
    (r"\baus\b|\bvon\b", "out of"),
    (r"\bum\b", "at"),
    (r"\bprozent\b", "percent"),
)

PHRASES: tuple[tuple[str, str], ...] = (*_TIMES, *_QUESTIONS, *_TROUBLE, *_REPORTS, *_ANSWERS, *_WORDS)
