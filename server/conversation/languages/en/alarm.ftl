# Alarms and calls for help. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## Notices: alarms
alarm-runner = { $runner } (bib { $bib })
alarm-overdue = ALARM: { $runner } is OVERDUE at { $place }.
alarm-overdue-nowhere = ALARM: { $runner } is OVERDUE.
alarm-asked-for-help = ALARM: { $runner } has ASKED FOR HELP.
alarm-help-needed = ALARM: HELP IS NEEDED for { $runner }.
alarm-silent = { $name } HAD IT AND DOES NOT ANSWER ANY MORE.
alarm-unanswered = STILL NOBODY HAS ANSWERED.
alarm-says-self = { $runner }, { $when }{ $words ->
    [none] , sent no words.
   *[other] {": ‘"}{ $words }{"’"}
 }
alarm-says = { $who }{ $part ->
    [none] {""}
   *[other] {", "}{ $part }{","}
 } reports { $when }{ $words ->
    [none] , without words.
   *[other] {": ‘"}{ $words }{"’"}
 }
alarm-newest = Newest, { $when }, { $who }: ‘{ $words }’
alarm-answer-all = Can you see to it? Answer ‘I have it’ and it is yours. All who can are asked now, and again in { $length }.
alarm-beside = If you are with her: stay with her, and call { $emergency } or { $name } ({ $phone }) YOURSELF: you can say what you see.
alarm-two = Danger to life: { $emergency } at once, do not wait. { $name }: { $phone }.
alarm-two-none = Danger to life: { $emergency } at once, do not wait.
alarm-control = YOU are race control: look in the race’s own results{ $place ->
    [none] , ask your points
   *[other] , ask { $place }
 } and the sweep whether they have seen her, and write here what you find.
alarm-control-help = YOU are race control: find out who of yours is nearest to her, send them, and write here who goes and when they are there.
alarm-more = More: write ‘what is known’. For rescuers: ‘what do I tell them’.
alarm-more-follows = What is known, and what to read out to rescuers, follow as messages of their own.
known-first = KNOWN about { $runner }, { $when }:
read-out-help-by = { $who } has called for help for her{ $words ->
    [none] .
   *[other] {" with the words: "}{ $words }.
 }
call-yours = your call for help
call-for-you = the call for help for you
call-for = the call for help for { $runner }
call-unnamed = your call for help
call-made = { $who } has called for help for you, { $when }.
call-asked = Asked: { $names }.
call-do-not-wait = I tell you who takes it. In danger do not wait for that: call { $emergency }.
call-nobody = NOBODY HAS ANSWERED, { $length } after { $call }: call { $emergency } now.
call-nobody-to-ask = NOBODY here can be asked about { $call }: call { $emergency } now.
call-given-back = { $name } can't any more: NOBODY HAS { $call } NOW. If it can't wait, call { $emergency } now.
call-lost = { $name } had it and does not answer any more: NOBODY HAS { $call } NOW. Call { $emergency } now.
call-held = { $name } HAS { $call }{ $when ->
    [none] .
   *[other] {", since "}{ $when }.
 }
call-does = { $name } wrote { $when }: ‘{ $words }’
call-does-not-said = { $name } has not written yet what they do{ $phone ->
    [none] : write here, it goes to them word for word.
   *[other] : ring { $phone }, or write here, it goes to them word for word.
 }
call-if-worse = If it gets worse, call { $emergency } at once; you need nobody’s leave.
call-stay = Stay where you are if it is safe; everything warm on, off the ground, out of the wind. What you write or share here goes to those on it.
call-scene =
    If you are with her: stay with her. Lay her out of the wind on something dry, everything warm on.
    Head, neck or back hurt: do not move her. Bleeding: press and go on pressing.
    Does not wake or breathe normally: { $emergency } now, and do as they say. Keep this phone free.
call-over = OVER: { $call } is over ({ $reason }){ $who ->
    [none] .
   *[other] {", "}{ $who }{", "}{ $when }.
 }
call-over-in-hand-you = OVER: { $who } says that you are looked after, { $when }.
call-over-in-hand-of = OVER: { $who } says that { $runner } is looked after, { $when }.
call-over-stand-down = OVER: { $who } has ended the alarm, { $when }: { $call } counts as seen to.
call-over-taken-back = OVER: { $call } has been taken back{ $who ->
    [none] .
   *[other] {" by "}{ $who }{", "}{ $when }.
 }
call-over-again = If help is still needed, write ‘help’ again or call { $emergency }.
meanwhile-words = FROM { $who }{ $part ->
    [none] {""}
   *[other] {" ("}{ $part }{")"}
 }, { $when }: ‘{ $words }’
meanwhile-report = { $who }{ $part ->
    [none] {""}
   *[other] {" ("}{ $part }{")"}
 }, { $when }, on { $runner }: { $fact }{ $words ->
    [none] .
   *[other] {". ‘"}{ $words }{"’"}
 }
meanwhile-place = PLACE of { $runner }, shared { $when } by { $who }: { $place }.
meanwhile-own-place = PLACE of { $who }{ $part ->
    [none] {""}
   *[other] {" ("}{ $part }{")"}
 }, who is on the call for help for { $runner }, shared { $when }: { $place }.
meanwhile-doubted = NOT CONFIRMED, may be true: { $text }
meanwhile-reply = The alarm is open. What whoever has it writes here goes to her, word for word.
alarm-news = AN ALARM IS OPEN about { $runner }: { $kind }, { $when }. { $holder ->
    [none] Others are being asked.
   *[other] { $holder } has it.
 }
news-stay =
    You need do nothing now: stay where you are, phone on and loud. I tell you when it is over.
    If you see or hear of { $runner }, write it here at once.
news-at-point =
    If { $runner } comes to { $place }: keep her there, write ‘{ $bib } in’ here and tell { $name }, { $phone }.
    I tell you when it is over.
news-danger = If you find her in danger: { $emergency } first.
unreached-kind-your-call-for-help = called for help and can’t be told who has it
alarm-sweep = ALARM: SWEEP THROUGH { $place } and { $runner } was not seen there.
alarm-look-again = LOOK AGAIN: { $runner }, alarm still open. { $name ->
    [none] What is known now?
   *[other] { $name }, what is known now?
 }
alarm-handed-on = ALARM HANDED ON TO YOU: { $runner }. Those asked before have not taken it.
alarm-handed-on-held = ALARM HANDED ON TO YOU: { $runner }. { $name } has it, but does not answer any more.
alarm-given-back = { $name } can't any more: NOBODY HAS THE ALARM about { $runner } NOW. The next are being asked.
alarm-handed-on-back = ALARM HANDED ON TO YOU: { $runner }. { $name } had it and can't any more.
alarm-taken = { $name } HAS THE ALARM about { $runner }: you need not answer it any more.
alarm-taken-call = { $name } HAS THE ALARM about { $runner }. YOU still make the call to race control.
alarm-call-instead = Who was to call race control about { $runner } can’t, or does not answer: you have the alarm, so YOU make the call.
alarm-answer = Answer ‘I have it’ and it is yours; no answer in { $length } and the next person is asked.
alarm-held-you = You hold this alarm. Next look: { $when }.
alarm-held-you-now = You hold this alarm. Answer ‘seen’ or ‘still missing’, or write what you know.
alarm-held = { $name } holds this alarm. Next look: { $when }.
alarm-held-untimed = { $name } holds this alarm.
alarm-call-you = YOU call now: { $name }, { $phone }. Nobody else does.
alarm-call-other = { $caller } calls race control.
alarm-call-in-place = { $caller }, who is to call race control, HAS NOT ANSWERED. Take it, and YOU call: { $name }, { $phone }.
alarm-call-none = Nobody is down to call race control. Whoever answers calls { $name }, { $phone }.
alarm-call-not-needed = Race control itself has it: nobody needs to ring them.
alarm-words = Words received: ‘{ $words }’
alarm-not-named = NOT SAID FOR WHOM: { $who } has more than one runner, and this alarm is out for each of them until { $who } says which. Ask { $who }{ $phone ->
    [none] .
   *[other] {": "}{ $phone }.
 }
alarm-named = { $name } says now: the call for help is for { $runner }. The alarm about her is open.
alarm-fact = FACT, last known: { $fact } { $when } ({ $ago }), reported by { $who }{ $place ->
    [none] .
   *[other] {": "}{ $place }.
 }
alarm-unconfirmed = NOT CONFIRMED, may be true: { $fact } { $when } ({ $ago }), reported by { $who }. Ask them.
unnamed = ALARM: CALL FOR HELP from { $who }, NOT SAID FOR WHICH RUNNER.
unnamed-ask = Call { $who } and ask who needs help and where{ $phone ->
    [none] .
   *[other] {": "}{ $phone }.
} The call came { $when }.
unnamed-to = This has gone to: { $names }.
unnamed-held = { $name } has it and finds out who it is.
unnamed-held-you =
    You have it: find out who it is. Her own alarm goes out once the caller names her, or you write ‘Name needs help’.
    If it was nothing, end it with the button.
alarm-answer-unnamed = Answer ‘I have it’ and it is yours. You are asked again until somebody has it.
unnamed-meant = { $name } says now: the call for help is for { $runner }{ $bib ->
    [none] {""}
   *[other] {" (bib "}{ $bib }{")"}
}. Her own alarm is out.
unnamed-over = STAND-DOWN: the call for help from { $who } has been taken back{ $name ->
    [none] .
   *[other] {", by "}{ $name }.
}
alarm-help-ends = The alarm ends when whoever has her writes ‘we have her’, or the safety contact or the organiser writes ‘stand down’.
alarm-help-seen = { $runner } has been seen since. Ask whether she still needs help. ‘we have her’ ends this, or ‘stand down’ by the safety contact or the organiser.
alarm-said-km = BY THE WORDS OF THE CALL she is at { $km }{ $place ->
    [none] .
   *[other] {": "}{ $place }.
 }
alarm-heard-since = HEARD SINCE, place not known: { $when } ({ $ago }), { $who }: ‘{ $words }’.
alarm-contact-lost =
    FACT: the position she shared ended { $when } ({ $ago }), and nothing has been heard of her since.
    Her phone may be empty, off or out of signal; that says nothing about her.
alarm-race-over = Her race was over { $when }: where she went after that I can’t work out.
alarm-had-her = FACT: { $who } wrote { $when } ({ $ago }) that somebody had her. Ask { $who } first where she is.
alarm-had-her-you = FACT: you wrote { $when } ({ $ago }) that somebody had her. Where is she now?
alarm-not-there = FACT: { $fact }, { $when } ({ $ago }), reported by { $who }{ $phone ->
    [none] .
   *[other] {", "}{ $phone }.
 }
alarm-fact-none = FACT: she has not been seen at any point since the start at { $when }.
alarm-expected = Expected at { $place }: { $window }.
alarm-why-alarm-line = Why now: so long a silence is very rare when all is well.
alarm-why-alarm-line-far = Why only now, { $length } after the likely time: reports come late and slow legs are common; sooner, most such alarms would be false.
alarm-why-odds = Why now: whoever would have reported her has not. More likely than not her race has ended on the way.
alarm-why-finish = Why now: by now she would be at the finish, whoever reports.
alarm-why-limit = Why now: the race's time for her is over, and nobody has seen her since. It is not the length of this silence.
alarm-why-told-missing = Why now: she was said not to be there yet when she almost surely would have been.
alarm-asked = Asked besides you: { $names }.
alarm-no-word = No answer from { $names }, asked { $when } whether she has come in.
alarm-told = Also told: { $names }.
alarm-estimate = ESTIMATE, NOT SEEN: between { $low } and { $high } on the course, likely near { $likely }.
alarm-estimate-place = Likeliest place of that estimate: { $place }.
alarm-may-be = She may simply be unreported or off the course:
alarm-may-unreported-nobody = - nobody reports from { $place };
alarm-may-unreported = - { $place } is reported by { $by }, and not every runner is caught;
alarm-may-delay = - reports from { $place } can come { $length } late;
alarm-may-signal = - no phone signal between { $from } and { $to };
alarm-may-signal-point = - no good phone signal at { $place };
alarm-may-phone = - phone empty, wet or off;
alarm-may-resting = - resting or asleep at the side, or in a shelter;
alarm-may-off = - off the course by a wrong turn, or retired on the way and picked up by others;
alarm-may-escape = - gone down on the escape route: { $route }.
by-timing-mat = a timing mat
by-volunteer = volunteers
by-crew = crew
by-runner = the runner
by-tracker = a tracker
alarm-bib = Bib { $bib }.
alarm-her = Phone { $phone }. Clothing: { $clothing }. Torch: { $torch }. { $pacer }.
alarm-pacer = Pacer with her: { $name }
alarm-no-pacer = No pacer is known to be with her
not-known = not known
alarm-numbers = { $name }: { $phone }. Emergency: { $emergency }.
alarm-numbers-rescue = { $name }: { $phone }.
alarm-read-out = To read out:
read-out-who = “This is about runner { $runner }{ $bib ->
    [none] {""}
   *[other] {", bib "}{ $bib }
 }, in { $event }.
read-out-not-named = The caller has not yet said which of several runners needs help.
read-out-last = She was last known { $fact } on { $when }, local time, reported by { $who }.
read-out-heard = On { $when }, local time, { $who } sent word, with no place: ‘{ $words }’.
read-out-last-place = That place: { $place }.
read-out-last-km = That is { $km } into the course.
read-out-not-there = On { $when }, local time, { $who } sent word that she was not at { $place } yet.
read-out-over = Her race was over on { $when }, local time.
read-out-had-her = On { $when }, local time, { $who } sent word that somebody had her.
read-out-none = She has not been seen at any point since she started on { $when }, local time.
read-out-expected = She was expected at { $place }, most likely { $likely }; by { $late }, local time, 9 in 10 would have been there.
read-out-help = She has asked for help{ $words ->
    [none] .
   *[other] {" with the words: "}{ $words }.
 }
read-out-estimate = Estimate, not seen: she may be near { $place }.
read-out-her = Clothing: { $clothing }. Torch: { $torch }. Her phone: { $phone }.”
alarm-cautions =
    Stilepost is an aid, not a rescue service: emergency number, race control and mountain rescue decide.
    Do not go onto the course alone or in the dark to look for her. Keep this phone charged and free.
stand-down = STAND-DOWN: the alarm for { $runner } is over ({ $of_kind }).
stand-down-seen = STAND-DOWN: { $runner } has been seen at { $place }, { $when }, reported by { $by }.
stand-down-why = Why: { $reason }. By { $by }, { $when }.
stand-down-thanks = Nothing more to do. If you called anybody, tell them too.
stand-down-reason-seen = seen
stand-down-reason-stand-down = stood down by hand
stand-down-reason-taken-back = the report behind it was taken back
stand-down-reason-meant = the call for help was for { $other }
stand-down-reason-in-hand = somebody has her
stand-down-reason-retired = her race is over, retired
stand-down-reason-finished = finished
stand-down-reason-other = { $reason }
alarm-kind-overdue = overdue
alarm-kind-asked-for-help = asked for help
alarm-kind-sweep = sweep through without her
alarm-kind-other = alarm
test-alarm = TEST ALARM, nothing has happened. Answer ‘I have it’ by { $when }.
test-alarm-why = Leave this phone as it will be at night: charged, loud, on the table. Who does not answer is shown to the organiser.
unreached = COULD NOT REACH { $name } ({ $what }) since { $when }. Tried: { $channels }. Please telephone them.
unreached-silent = NO ANSWER from { $name } ({ $what }) since { $when }. Please telephone them.
unreached-kind-leave-now = leave now
unreached-kind-late = question whether she has come in
unreached-kind-wake-up = wake-up
unreached-kind-test-alarm = test alarm
unreached-phone = { $name }: { $phone }.
outage-open = DOWN since { $when }: { $what }. Reports over it come late; the silence of those who use it raises no alarm meanwhile. Telephone them.
outage-open-out = DOWN since { $when }: { $what }. Notices by it wait, or go over a person's next channel.
outage-over = { $what } was down from { $from } to { $to } ({ $length }). What waited has been read; times are worked out anew.
outage-over-out = { $what } was down from { $from } to { $to } ({ $length }). What waited there goes out now.
outage-what-server = our server or its database
outage-what-telegram = our Telegram bot
outage-what-email = our e-mail
outage-what-text = our text messages
outage-what-webhook = our webhook
outage-what-other = our channel { $name }
distress = Are you hurt? Call { $emergency }. { $name }: { $phone }.
distress-for-her = Is she hurt? Call { $emergency }. { $name }: { $phone }.
distress-passed-on = Your words have gone to your crew and safety contact{ $count ->
    [0] .
   *[other] {": "}{ $names }.
 }
distress-reaches-nobody = It is written down, but has reached NOBODY: nobody is connected. Please telephone.
distress-not-passed-on = I could NOT send your words on. Please telephone.
distress-whose = You did not say which runner: the alarm is out for { $names }. Which one is it?
distress-which = You did not say which runner. Write her name or number now, or press: her own alarm goes out then.
distress-named = For { $runner }: her own alarm is out.
distress-about = The alarm is about { $runner }, of whom we spoke before. If another runner needs help, write that with her name, at once.
distress-meant = For { $runner }: her alarm stays open. Taken back for { $others }.
distress-meant-all = The alarms stay open for { $names }.
distress-joins = An alarm about it is open already: this has joined it. { $holder ->
    [none] NOBODY HAS ANSWERED YET: call { $emergency }.
   *[other] { $holder } has it.
 }
now-holder = YOU HAVE THE ALARM about { $runner }.
now-control = 1. Call { $name } now, { $phone }, unless you have. ‘what do I tell them’ gives you the words.
now-control-other = 1. { $caller } is to call { $name }; ring { $phone } yourself if you are not sure that it has been done.
now-ring = 2. Ring { $who }{ $phone ->
    [none] {""}
   *[other] {", "}{ $phone }
 }: where, what, who is with her?
now-write = 3. Write here what you do: it goes to her and to whoever called, word for word. If you can't go on, write ‘can't’.
now-look = 2. Write here what you find out. If you can't go on, write ‘can't’.
now-ends = It ends when whoever has her writes ‘we have her’, or by ‘stand down’ of the safety contact or the organiser.
now-asked = Nobody has the alarm about { $runner }. Can you see to it? Write ‘I have it’; if not, write ‘can't’.
now-asked-held = { $name } has the alarm about { $runner }. Stay reachable; what you know of her, write here, it goes to { $name }.
now-call =
    Call { $emergency } AT ONCE if she does not wake or breathe normally, has a fit or chest pain, her face or tongue swells,
    she is hot or cold and confused, weak on one side, or bleeds and it does not stop.
now-call-own =
    Call { $emergency } AT ONCE if you can hardly breathe, have chest pain or had a fit, your face or tongue swells,
    you are hot or cold and can't think clearly, weak on one side, or bleed and it does not stop.
now-call-unsure = If you are not sure: call { $emergency }. You need nobody's leave, and a call too many does no harm.
now-call-open = Also if nobody has answered here, or nobody can reach her soon.
now-call-open-own = Also if nobody has answered here, or nobody can reach you soon.
now-call-then = Then { $name }: { $phone }.
now-tell = Read this out; say first where you are yourself and what you see.
now-tell-less = Her name and number, where she is, what happened, whether she wakes and breathes normally, who is with her, your own number.
distress-where = If you can, send your position or write where you are. Stay warm; stay on the course if that is safe.
distress-not-hurt = If nothing is wrong, write ‘undo’.
grave = If she or anybody near you is in danger call { $emergency } now. { $name }: { $phone }. Medics decide whether she goes on.
grave-own = If you are in danger call { $emergency } now. { $name }: { $phone }. Medics decide whether you go on.
grave-help = If everybody is to be told at once, write ‘she needs help’.
grave-help-own = If everybody is to be told at once, write ‘help’.
