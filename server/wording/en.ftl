# Every sentence that a person reads, in English. Values come in already worded (times, lists, distances);
# numbers come as numbers only where a plural hangs on them. What to avoid: see the glossary.

## Times, lengths, places

both-clocks = { $there } ({ $here } your clock)
window = likely { $likely }, between { $early } and { $late }; 1 in 10 earlier, 1 in 10 later
window-over = expected { $likely }, between { $early } and { $late }; nothing reported from there
window-there = there since { $likely }
window-set = { $likely }
window-due = likely { $likely }, any time from now to { $late }; 1 in 10 later
window-open = any time from now to { $late }; 1 in 10 later
window-stood = likely { $likely }, between { $early } and { $late }
window-own = (your clock: likely { $likely }, between { $early } and { $late })
window-own-over = (your clock: { $likely }, between { $early } and { $late })
window-own-there = (your clock: { $likely })
window-own-set = (your clock: { $likely })
window-own-open = (your clock: latest { $late })
window-own-due = (your clock: likely { $likely }, latest { $late })
window-short = { $likely } ({ $early } to { $late })
duration-none = under a minute
duration-min = { $minutes } min
duration-h = { $hours } h
duration-h-min = { $hours } h { $minutes } min
ago = { $length } ago
in-time = in { $length }
just-now = just now
km = { $number } km
miles = { $number } miles
odds-under = under 1 in 20
odds-over = over 19 in 20
odds-about = about { $tenths } in 10
degrees = { $lat } { $north ->
    [north] north
   *[south] south
 }, { $lon } { $east ->
    [east] east
   *[west] west
 }
utm-too = (UTM { $utm })
nobody = nobody
somebody = somebody

## Kinds of check-in as facts: 'out of Mill'

fact-in = in at { $place }
fact-out = out of { $place }
fact-through = through { $place } without staying
fact-position = seen at { $place }
fact-resting = resting at { $place }
fact-moving-again = moving again from { $place }
fact-asked-for-help = asked for help at { $place }
fact-retired = retired at { $place }
fact-in-hand = in hand at { $place }
fact-sweep-through = sweep through { $place }
fact-not-here-yet = not at { $place } yet
fact-other = { $kind } at { $place }
fact-in-nowhere = in, place not given
fact-out-nowhere = out, place not given
fact-through-nowhere = went through without staying, place not given
fact-position-nowhere = seen, place not given
fact-resting-nowhere = resting, place not given
fact-moving-again-nowhere = moving again, place not given
fact-asked-for-help-nowhere = asked for help, place not given
fact-retired-nowhere = retired, place not given
fact-in-hand-nowhere = in hand, place not given
fact-sweep-through-nowhere = sweep through, place not given
fact-not-here-yet-nowhere = not there yet, place not given
place-km = { $km } into the course
place-nowhere = a place not given

## How fresh

fresh = Last known: { $fact } { $when }, told by { $who } ({ $ago }).
fresh-nothing = Nothing heard of { $name } yet.
fresh-before = { $name } has not started yet.
fresh-doubted = { $count ->
    [one] One report is kept but not counted: it still has to be confirmed.
   *[other] { $count } reports are kept but not counted: they still have to be confirmed.
 }
fresh-blind = DOWN since { $when }: { $what ->
    [none] our own line
   *[other] { $what }
 }. Something may have been missed.
fresh-held = Runners are held by race control. Times count on from the release.
fresh-held-until = Runners are held by race control until { $until }.
fresh-ended = The race was ended by race control { $when }{ $place ->
    [none] .
   *[other] {", from "}{ $place }{" on."}
 }
fresh-sharper = A report from { $name } would sharpen this.

## Marks before a notice

mark-delayed = [delayed, was due { $when }] { $text }
mark-repeat = [may be a repeat{ $short ->
    [0] {""}
   *[other] {" of no. "}{ $short }
 }] { $text }
mark-number = (no. { $short })

# In a mail, which has no buttons.
mail-answer = To answer, open this page and press there: { $link }
mail-answer-note = The link answers as you, until { $until }: do not pass it on. Opening it answers nothing yet. A reply to this mail is read by nobody.
mail-no-page = A reply to this mail is read by nobody, and this counts as unanswered until you answer in your chat or on the page.{ $phone ->
    [none] {""}
   *[other] { " " }If you have neither, telephone { $name }: { $phone }.
}

## Notices: meetings

leave-now = Leave now for { $place } to meet { $runner }: be there from { $be_there }.
leave-now-by = Leave by { $leave_by } for { $place } to meet { $runner }: be there from { $be_there }.
leave-now-late = Leave-by for { $place } was { $leave_by }. At a normal drive you may be there after { $runner } comes in. Drive as always; nobody gains by haste.
meeting-she-comes = { $runner } at { $place }: { $window }.
meeting-drive = Drive { $length }{ $from ->
    [none] .
   *[other] {" from "}{ $from }.
 }
meeting-no-drive = No drive time is confirmed, so no leave-by is given. Tell me how long the drive is.
meeting-wait = Wait until { $until }.
meeting-wait-short = Wait until { $until }, then go on to your next meeting: { $odds } that { $runner } has come by then.
meeting-kit = Bring: { $kit }.
meeting-take-back = Take back there: { $kit }.
meeting-food = Food: { $food }
meeting-if-missed = If missed: { $text }
meeting-no-signal = No phone signal at { $place }.
be-there = Be at { $place } from { $be_there } to meet { $runner }.
move-on = Move on from { $place }: no reason to wait for { $runner } past { $until }.
move-on-next-other = Next meeting: { $place }, { $runner }.
move-on-next = Next meeting: { $place }.
window-moved = New times for { $place }: { $what }
window-moved-was = Before: { $was }.
window-moved-leave = leave by { $leave_by }{ $was ->
    [none] {""}
   *[other] {" (was "}{ $was })
 }, be there from { $be_there }, wait until { $until }.
window-moved-there = be there from { $be_there }, wait until { $until }.
unreported-out = Nobody has reported { $runner } out of { $place }. Tell me when she left; if she is still with you, write ‘still here’ and stay.
meeting-lost = { $runner } at { $place } can't be met any more. Do not try to make it.
meeting-lost-why = { $runner } at { $place }: { $window }.
lost-access-closed = Crew access there is closed.
lost-not-both = The same crew can’t make this meeting and the one before it.
lost-too-late = The drive takes longer than is left.
lost-she-has-left = She was out of there { $when }.
brief = Before you lose signal: { $count ->
    [one] the next meeting.
   *[other] the next { $count } meetings.
 }
brief-meeting = { $place }: { $runner } { $window }.
brief-times = Be there from { $be_there }; move on at { $until }.
brief-leave = Leave by { $leave_by }.
brief-signal = Signal is back at { $place }.
brief-nothing-heard = If you hear nothing: keep to these times, then drive on. If she does not come, tell race control and your crew as soon as you have signal.
brief-nothing-heard-plain = If you hear nothing: keep to these times, then drive on. If she does not come, tell race control as soon as you have signal.
wake-up = Time to wake up: leave by { $leave_by } for { $place } to meet { $runner }.
wake-up-there = Time to wake up: be at { $place } from { $be_there } to meet { $runner }.
wake-up-answer = Answer ‘awake’, or somebody else will be asked to go.

## Notices: where she is

arrived = { $runner } is in at { $place }, { $when }, told by { $who }.
arrived-through = { $runner } went through { $place } at { $when } without staying, told by { $who }.
arrived-stop = Planned stop: { $length }.
arrived-kit = Have ready: { $kit }.
arrived-next = Then { $place }: { $window }.
left = { $runner } is out of { $place }, { $when }, told by { $who }.
left-next = Next { $place }: { $window }.
left-next-her = { $runner } next at { $place }: { $window }.
finished = { $runner } has finished: { $when }, told by { $who }.
finished-crew = Tell me when you have her with you (‘in hand’).
word-of-her = Word of { $runner }, { $when }, told by { $who }: ‘{ $words }’
word-rests = Resting since { $since }{ $until ->
    [none] .
   *[other] {", until "}{ $until }{" as was said."}
 }
word-moves = Moving again since { $since }.
word-at = She is at { $place }, in since { $since }.
word-no-rest = Not resting, as far as is known.
word-retired = She has retired, and nobody has her in hand yet.
word-next = Next for you, { $place }: { $window }.
word-taken-back = Taken back: the word of { $runner }, { $when }, no longer counts: ‘{ $words }’
retired = { $runner } has retired at { $place }, { $when }, told by { $who }.
retired-nowhere = { $runner } has retired, { $when }, told by { $who }; where is not known.
retired-how = Why: { $how }.
retired-words = They wrote: ‘{ $words }’
retired-pick-up = Pick-up: { $who }.
retired-no-pick-up = Nobody is down to fetch her yet. Who goes?
retired-in-hand = Somebody has her in hand.
retired-not-in-hand = She is watched until somebody has her in hand: tell me ‘in hand’ when you do.
retired-race-control = Race control knows.
retired-has-her = { $who } has { $runner } in hand, { $when }.
retired-in-hand-taken-back = Taken back: nobody has { $runner } in hand after all. She is watched again until somebody has.
retired-waits-hand = Nobody has said yet that they have { $runner } in hand.
retired-waits-race-control = Race control still has to know that { $runner } has retired. You tell them now: { $name } { $phone }. Answer ‘race control told’ when done.
retired-call-you = You tell race control: { $name } { $phone }. Answer ‘race control told’ when done.
retired-call-other = { $caller } tells race control; no need for you to ring there.
retired-tell-race-control = Race control has to know: { $name } { $phone }. Answer ‘race control told’ when done.
how-own-choice = her own choice
how-timed-out = timed out
how-withdrawn-by-medics-or-officials = withdrawn by medics or officials
how-did-not-start = did not start
how-not-said = not said yet
in-hand = Somebody has { $runner } in hand: { $who } says so, { $when }.
in-hand-where = Where: { $place }.
in-hand-nowhere = Where that is was not said.
in-hand-words = { $who } wrote: ‘{ $words }’
in-hand-alarm = The alarm about { $runner } stays open all the same.
in-hand-calm = No alarm is open about { $runner }; you need do nothing now. Whether she goes on was not said: for an hour her silence raises no alarm, then she is watched as before.
in-hand-ask = To ask: { $who } { $phone }.
cut-off-falling = { $runner } and the cut-off at { $place } ({ $edge } by { $cut_off }): { $odds } to make it, and falling.
cut-off-rising = { $runner } and the cut-off at { $place } ({ $edge } by { $cut_off }): again { $odds } to make it.
cut-off-latest = For 9 in 10 she has to be out of { $place } by { $when }.
cut-off-not-possible = Being out of { $place } early enough for 9 in 10 is no longer possible.
edge-in = in
edge-out = out
late = { $runner } at { $place }? Later than 9 in 10 would have been. Has she been there?
late-window = Expected: { $window }.
late-answer = Yes, not yet, or nobody there to see?
sweep = SWEEP THROUGH { $place }, and { $runner } was not seen there.
race-change-start-delayed = The start is delayed{ $amount ->
    [none] {""}
   *[other] {" by "}{ $amount }
 }{ $until ->
    [none] .
   *[other] {", to "}{ $until }.
 }
race-change-wave-moved = { $runner }’s start has moved{ $until ->
    [none] .
   *[other] {" to "}{ $until }.
 }
race-change-runners-held = Runners are held{ $place ->
    [none] {""}
   *[other] {" at "}{ $place }
 }{ $until ->
    [none] {" until further notice."}
   *[other] {" until "}{ $until }.
 }
race-change-runners-released = Runners are released{ $place ->
    [none] .
   *[other] {" at "}{ $place }.
 }
race-change-race-ended-early = The race has been ended by race control{ $place ->
    [none] .
   *[other] {" from "}{ $place }{" on."}
 }
race-change-rerouted = The course has been changed{ $place ->
    [none] .
   *[other] {" near "}{ $place }.
 }
race-change-cut-off-moved = The cut-off at { $place }{ $edge ->
    [none] {""}
   *[other] {" ("}{ $edge }{")"}
 } has moved{ $until ->
    [none] .
   *[other] {" to "}{ $until }.
 }
race-change-access-closed = Crew access at { $place } is closed{ $until ->
    [none] .
   *[other] {" until "}{ $until }.
 } Do not drive there.
race-change-access-opened = Crew access at { $place } is open again.
race-change-other = News from race control: { $change }.
race-change-words = { $words }
race-change-all-anew = All times are computed anew.
race-ended-crew = The planned meetings hold no longer, and no leave-now comes any more. Where { $runner } is to be fetched, race control says, or she herself: ask before you drive, { $name } { $phone }. Whoever has her writes ‘in hand’; until then she is watched.
race-ended-runner = Where you go now, race control says: { $name } { $phone }. Tell your crew where they can fetch you.
race-change-who = Told by { $who }.

## Notices: alarms

alarm-runner = { $runner } (bib { $bib })
alarm-overdue = ALARM: { $runner } is OVERDUE at { $place }.
alarm-overdue-nowhere = ALARM: { $runner } is OVERDUE.
alarm-asked-for-help = ALARM: { $runner } has ASKED FOR HELP.
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
alarm-answer = Answer ‘I have it’ and it is yours; no answer in { $length } and the next person is asked.
alarm-held-you = You hold this alarm. Next look: { $when }.
alarm-held-you-now = You hold this alarm. Answer ‘seen’ or ‘still missing’, or write what you know.
alarm-held = { $name } holds this alarm. Next look: { $when }.
alarm-held-untimed = { $name } holds this alarm.
alarm-call-you = YOU call now: { $name }, { $phone }. Nobody else does.
alarm-call-other = { $caller } calls race control. Please do not call them yourself about this.
alarm-call-in-place = { $caller }, who is to call race control, HAS NOT ANSWERED. Take it, and YOU call: { $name }, { $phone }.
alarm-call-none = Nobody is down to call race control. Whoever answers calls { $name }, { $phone }.
alarm-life = If you think she is in danger, call { $emergency } at once; do not wait for this.
alarm-words = Words received: ‘{ $words }’
alarm-not-named = NOT SAID FOR WHOM: { $who } has more than one runner, and this alarm is out for each of them until { $who } says which. Ask { $who }{ $phone ->
    [none] .
   *[other] {": "}{ $phone }.
 }
alarm-named = { $name } says now: the call for help is for { $runner }. The alarm about her is open.
alarm-fact = FACT, last known: { $fact } { $when } ({ $ago }), told by { $who }.
alarm-unconfirmed = NOT CONFIRMED, may be true: { $fact } { $when } ({ $ago }), told by { $who }. Ask them.
unnamed = ALARM: CALL FOR HELP from { $who }, NOT SAID FOR WHICH RUNNER.
unnamed-ask = Call { $who } and ask who needs help and where{ $phone ->
    [none] .
   *[other] {": "}{ $phone }.
} The call came { $when }.
unnamed-to = This has gone to: { $names }.
unnamed-held = { $name } has it and finds out who it is.
unnamed-held-you = You have it: find out who it is. Her own alarm goes out once the caller names her, or you write ‘Name needs help’. If it was nothing, end it with the button.
alarm-answer-unnamed = Answer ‘I have it’ and it is yours. You are asked again until somebody has it.
unnamed-meant = { $name } says now: the call for help is for { $runner }{ $bib ->
    [none] {""}
   *[other] {" (bib "}{ $bib }{")"}
}. Her own alarm is out.
unnamed-over = STAND-DOWN: the call for help from { $who } has been taken back{ $name ->
    [none] .
   *[other] {", by "}{ $name }.
}
alarm-help-ends = The alarm ends when whoever has her writes ‘in hand’, or the safety contact or the organiser writes ‘stand down’.
alarm-help-seen = { $runner } has been seen since. Ask whether she still needs help; ‘in hand’ ends this, or ‘stand down’ by the safety contact or the organiser.
alarm-said-km = BY THE WORDS OF THE CALL she is at { $km }{ $place ->
    [none] .
   *[other] {": "}{ $place }.
 }
alarm-heard-since = HEARD SINCE, place not known: { $when } ({ $ago }), { $who }: ‘{ $words }’.
alarm-contact-lost = FACT: the position she shared ended { $when } ({ $ago }), and nothing has been heard of her since. Her phone may be empty, off or out of signal; of her it says nothing.
alarm-race-over = Her race was over { $when }: where she went after that, no forecast can say.
alarm-had-her = FACT: { $who } wrote { $when } ({ $ago }) that somebody had her. Ask { $who } first where she is.
alarm-had-her-you = FACT: you wrote { $when } ({ $ago }) that somebody had her. Where is she now?
alarm-not-there = FACT: { $fact }, { $when } ({ $ago }), told by { $who }{ $phone ->
    [none] .
   *[other] {", "}{ $phone }.
 }
alarm-fact-none = FACT: she has not been seen at any point since the start at { $when }.
alarm-expected = Expected at { $place }: { $window }.
alarm-why-now = It comes { $length } after the likely time because reports come late and slow legs are common: sooner, most such alarms would be false.
alarm-asked = This alarm went before to: { $names }.
alarm-asked-none = You are the first who gets this alarm.
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
alarm-may-escape = - gone down by { $route }.
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
read-out-last = She was last known { $fact } on { $when }, local time, told by { $who }.
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
alarm-cautions = Stilepost is an aid, not a rescue service: emergency number, race control and mountain rescue decide. Do not go onto the course alone or in the dark to look for her. Keep this phone charged and free.
stand-down = STAND-DOWN: the alarm for { $runner } is over ({ $of_kind }).
stand-down-seen = STAND-DOWN: { $runner } has been seen at { $place }, { $when }, told by { $by }.
stand-down-why = Why: { $reason }. By { $by }, { $when }.
stand-down-thanks = Nothing more to do. If you called anybody, tell them too.
stand-down-reason-seen = seen
stand-down-reason-stand-down = stood down by hand
stand-down-reason-taken-back = the report behind it was taken back
stand-down-reason-meant = the call for help was for { $other }
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
outage-over = { $what } was down from { $from } to { $to } ({ $length }). What waited has been read; times are computed anew.
outage-over-out = { $what } was down from { $from } to { $to } ({ $length }). What waited there goes out now.
outage-what-server = our server or its database
outage-what-telegram = our Telegram bot
outage-what-email = our e-mail
outage-what-text = our text messages
outage-what-webhook = our webhook
outage-what-other = our channel { $name }

## Notices: corrections and doubts

correction-moved = Correction: { $runner } { $what } was { $now_at }, not { $was_at }. By { $by }.
correction-now = Correction: { $runner } { $what }: now { $now_at }. By { $by }.
correction-taken-back = Taken back: { $runner } { $what } is no longer so. By { $by }.
correction-taken-back-at = Taken back: { $runner } { $what } { $was_at } is no longer so. By { $by }.
correction-watch-on = She is watched again from here on.
correction-race-control = If race control was told that her race is over, tell them now that it is not: { $name } { $phone }.
unconfirmed = Please confirm: { $runner } { $fact }, { $when }? Told by { $who }.
unconfirmed-seen = Please confirm: was { $runner } seen on the move, { $when }? Told by { $who }.
unconfirmed-words = Written: ‘{ $words }’
unconfirmed-why = Kept, but not counted: { $doubt }.
doubt-future = the time lies in the future
doubt-unknown-runner = no such runner is in the event
doubt-unknown-point = no such point is on her course
doubt-before-start = the time lies before the start
doubt-retired = she was reported as retired before that
doubt-finished = she was reported as finished before that
doubt-out-before-in = out lies before in
doubt-behind = that is behind where she was
doubt-too-fast = nobody runs that fast
doubt-closed = her race was over by then
doubt-off-course = the place is far off the course
doubt-vehicle = it moves at road speed: tracker in a car?
doubt-parked = it is where cars park: tracker in a car?
doubt-other-post = it comes from a volunteer who stands at another point
doubt-supporter = it comes from a supporter
doubt-guessed = part of it was guessed from what was written
doubt-crew-position = it is the place of a phone that is not hers
doubt-not-named = it does not say for which runner
doubt-does-not-fit = it does not fit what was reported before
doubt-none = it has to be confirmed

## Answers

point-next = { $runner } at { $place }: { $window }.
point-reached = { $runner } was in at { $place } { $when }{ $left ->
    [none] .
   *[other] {" and out "}{ $left }.
 }
point-left = { $runner } was out of { $place } { $when }.
point-through = { $runner } went through { $place } { $when }.
point-is-in = { $runner } is in at { $place } since { $when }.
point-odds = That is if she gets there: { $odds }.
point-odds-first = { $runner } at { $place } at all: { $odds }.
point-if = If she gets there: { $window }.
point-planned = Plan: { $when } ({ $gap }).
gap-late = { $length } behind
gap-early = { $length } ahead
gap-none = on plan
no-more-points = { $runner } has no point left ahead: { $going }.
going-before-the-start = not started yet
going-moving = on the move
going-at-a-point = at a point
going-resting = resting
going-retired = retired
going-retired-in-hand = retired, somebody has her in hand
going-finished = finished
going-closed = finished, with her crew
no-forecast = There is no window for { $place } to give you.
where-between = { $runner } was last known { $fact } { $when }, told by { $who } ({ $ago }).
where-seen = { $runner } was last seen { $when }, { $place }, told by { $who } ({ $ago }).
where-estimate = Estimate, not seen: between { $low } and { $high } on the course, likely near { $likely }.
where-estimate-near = Estimate, not seen: near { $likely } on the course.
where-legs = That lies between { $from } and { $to }.
where-at = { $runner } is at { $place }, in since { $when }, told by { $who } ({ $ago }).
where-gone-on = Nobody has reported her out of there; { $odds } that she has gone on.
where-ended = { $runner }: { $going }.
gap-answer-late = { $runner } is about { $length } behind plan at { $place }, { $window }.
gap-answer-early = { $runner } is about { $length } ahead of plan at { $place }, { $window }.
gap-answer-none = { $runner } is on plan at { $place }, { $window }.
gap-fact = In at { $place } { $when }: { $gap } there.
gap-none-known = There is no plan time to hold against.
supposed-slower = If { $runner } goes { $percent }% slower from here: { $place } { $window }.
supposed-faster = If { $runner } goes { $percent }% faster from here: { $place } { $window }.
supposed-leaving = If { $runner } leaves at { $when }: { $place } { $window }.
supposed-on-the-move = { $runner } is not known to be at a point: this is how it stands, on the move.
supposed-only = A what-if: nobody has been told, nothing is changed.
stop-over = { $runner } was at { $place } for { $length } ({ $from } to { $to }){ $gap ->
    [none] .
   *[other] {", "}{ $gap }.
 }
stop-over-plan = planned { $length }
stop-on = { $runner } is still at { $place }, in since { $from } ({ $length } so far){ $gap ->
    [none] .
   *[other] {", "}{ $gap }.
 }
stop-through = { $runner } went through { $place } { $when } without staying.
stop-half = { $runner } at { $place }: in { $from }, out { $to }. One of the two is not known, so the length is not either.
stop-none = No stop of { $runner } has been reported yet.
not-reported = not reported
cut-off-answer = { $place }, { $edge } by { $when }: { $odds } that { $runner } makes it.
cut-off-line = { $place }, { $edge } by { $when }: { $odds }.
cut-off-more = After that:
cut-offs-none = No cut-off is left for { $runner }.
missed-seen-out = Yes, gone: { $runner } was out of { $place } { $when }.
missed-seen-in = No: { $runner } is in at { $place } since { $when }, and not reported out.
missed-gone-on = { $runner } was in at { $place } at { $when } and has not been reported out; { $odds } that she has gone on.
missed-odds-high = Likely yes: { $odds } that { $runner } has left { $place } already.
missed-odds-even = It could be: { $odds } that { $runner } has left { $place } already.
missed-odds-low = Likely not: { $odds } that { $runner } has left { $place } already.
until-heard = she is heard of
wait-advice-wait = Wait{ $until ->
    [none] .
   *[other] {" until "}{ $until }.
 }
wait-advice-go = Go on{ $next ->
    [none] .
   *[other] {" to "}{ $next }.
 }
wait-expected = { $runner } at { $place }: { $window }.
wait-next-leave = Leave by { $leave_by } for { $next }.
people-line = { $name }: { $parts }{ $where ->
    [none] {""}
   *[other] {", "}{ $where }
 }.
people-at = at { $place } since { $when }
people-bound = bound for { $place }, there from { $when }
people-bound-untimed = bound for { $place }
people-unreached = NOT REACHED
people-phone = phone { $phone }
people-car = { $car }
people-none = Nobody is known to be at { $place }.
people-nobody = Nobody else has a part that you may see.
people-head = { $count ->
    [one] One person:
   *[other] { $count } people:
 }
numbers = { $name }: { $phone }. Emergency: { $emergency }.
bring = Bring to { $place } for { $runner }: { $kit }.
bring-none = Nothing is listed to bring to { $place } for { $runner }.
bring-safety = Do not go without: { $kit }.
bring-car = In the { $car }: { $items }.
bring-food = Food: { $food }
bring-dark = She is likely there in the dark.
take-back = Take back at { $place }: { $kit }.
take-back-none = Nothing is listed to take back at { $place }.
food = { $runner } at { $place }: { $food }
food-carry = To carry to { $place } ({ $length } at goal B): about { $things }.
food-bottles = { $count ->
    [one] one bottle of half a litre
   *[other] { $count } bottles of half a litre
 }
food-none = Nothing is written down for { $runner } to eat or drink at { $place }.
fuel = From there on: { $words }
fuel-figures = Per hour: { $figures }. Drink to thirst.
fuel-kcal = { $amount } kcal
fuel-carbohydrate = { $amount } g carbohydrate
fuel-fluid = bottles for { $amount } mL
fuel-sodium = { $amount } mg sodium
leave = Leave by { $leave_by } for { $place }; be there from { $be_there }.
leave-lost = { $runner } at { $place } can’t be met any more. { $why }
leave-over = Leave-by for { $place } was { $leave_by }. Drive as always; nobody gains by haste.
leave-ended = No meeting and no leave-by holds any more. Where she is to be fetched, race control says, or she herself: ask before you drive.
leave-unknown = No leave-by for { $place } yet: the drive is not confirmed. Be there from { $be_there }.
leave-these = That is for { $crew }{ $from ->
    [none] .
   *[other] {", from "}{ $from }.
 }
other-car = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 }: leave by { $leave_by }{ $from ->
    [none] .
   *[other] {" from "}{ $from }.
 }
other-car-unknown = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 }: no leave-by, their drive{ $from ->
    [none] {""}
   *[other] {" from "}{ $from }
 } is not confirmed.
other-car-stays = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 }: stay at { $place }, no drive.
other-car-lost = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 } can’t make it to { $place }.
leave-on-way = You are on the way to { $place } since { $left }; be there from { $be_there }.
leave-there = You are at { $place } already.
leave-not-you = For { $crew }, not for you:
leave-none = There is no meeting left to leave for.
drive = Drive to { $place }: { $length }{ $walk ->
    [none] {""}
   *[other] {", then "}{ $walk }{" on foot"}
 }.
drive-from = From { $from }.
drive-estimated = Not confirmed by anybody: no leave-by rests on it.
drive-unknown = No drive to { $place } is written down.
meeting = Next: { $place }, { $runner } { $window }.
ride = To { $place } for { $runner }: { $crew }{ $car ->
    [none] {""}
   *[other] {", "}{ $car }
}{ $from ->
    [none] {""}
   *[other] {", from "}{ $from }
}. { $how ->
    [stays] They are there already and stay.
    [open] Be there from { $be_there }; no leave-by, the drive is not confirmed.
   *[leave] Leave by { $leave_by }, be there from { $be_there }.
}
ride-nobody = Nobody is written down for the meeting with { $runner } at { $place }.
ride-none = { $place ->
    [none] No meeting with { $runner } is left to drive to.
   *[other] No meeting with { $runner } at { $place } is planned or still to come, so nobody is down to drive there.
}
meeting-who = Going: { $crew }{ $car ->
    [none] .
   *[other] {", "}{ $car }.
 }
meeting-way = { $place }, parking: { $parking }{ $walk ->
    [none] .
   *[other] {", then "}{ $walk }{" on foot."}
 }
meeting-way-unknown = Nothing is written down on how to get to { $place }.
meeting-parking = Parking: { $parking }{ $walk ->
    [none] .
   *[other] {", then "}{ $walk }{" on foot."}
 }
meeting-hours = Open to crew { $hours }.
hours-both = from { $opens } to { $closes }
hours-from = from { $opens }
hours-to = to { $closes }
meeting-after = Then { $place }: { $window }.
meeting-none = No meeting with { $runner } is left.
dark-yes = Yes: dark at { $place } when { $runner } is likely there ({ $window }).
dark-no = No: light at { $place } when { $runner } is likely there ({ $window }).
plan-says-nothing = { $words ->
    [none] The plan does not say that. What is known:
   *[other] The plan says nothing about ‘{ $words }’. What is known:
}
time-left = { $length } left until you must leave for { $place }. What that is enough for the plan does not say.
time-left-unknown = How much time is left the plan does not say: there is no leave-by for { $place }.
time-left-none = No time is left before { $place }: the leave-by is over.
time-own = Whether there is time for that the plan does not say. Your limits:
weather-unknown = The plan does not say what the weather will be: ask the weather service or race control.
leave-there-unknown = The plan does not say whether anything may be left or handed over there: that is for the race’s rules. Ask race control: { $name } { $phone }.
leave-there-crew = Crew meet her at { $place }: { $crew }.
leave-there-no-crew = No crew meeting is planned at { $place }.
catch-up = Since { $when }: { $count ->
    [one] one message to you.
   *[other] { $count } messages to you.
 }
catch-up-nothing = Nothing was sent to you since { $when }.
catch-up-line = { $when }: { $text }
catch-up-waits = { $when }, STILL WAITS FOR YOUR ANSWER (no. { $short }): { $text }
dark-unknown = Light at { $place } is not known to me.
heard = { $runner }: { $fact } { $when }, told by { $who } ({ $ago }).
how-she-is = { $who }, { $when } ({ $ago }): ‘{ $words }’
how-she-is-none = Nobody has written yet how { $runner } is.
how-help = { $runner }’s call for help of { $when } is still open: ‘{ $words }’
plan-head = Plan of { $runner }, in (goal B), A to C:
plan-row = { $place } ({ $km }): { $times }{ $was ->
    [none] {""}
   *[other] {", was "}{ $was }
 }{ $stop ->
    [none] {""}
   *[other] {", stop "}{ $stop }
 }
card = { $trouble }: { $tries }.
card-red = Red flags: { $flags }.
card-call = Call: { $call }
picture-dark = dark
picture-row = { $place } ({ $km }): { $times }{ $dark ->
    [none] {""}
   *[other] {", "}{ $dark }
 }
cards-which = Which? Ask for example ‘what if her stomach goes wrong’.
cards-line = { $name }: { $trouble }
cards-none = No card is written for that.
cards-medical = A card is a reminder, not medical advice: medics and race doctors decide.

## Answers: who knows, towards her, how the runner stands, goals

told-none = No alarm is open about { $runner }.
told-held = { $holder } has the alarm about { $runner } ({ $kind }, since { $since }){ $again ->
    [none] .
   *[other] {"; next look "}{ $again }.
 }
told-not-held = Nobody has taken the alarm about { $runner } yet ({ $kind }, since { $since }).
told-answered = { $name }: asked { $when }, answered ‘{ $answer }’ { $at }.
told-asked = { $name }: asked { $when }, no answer yet.
told-only = { $name }: told { $when }, nothing asked of them.
told-failed = { $name }: NOT REACHED, tried { $when }.
told-race-control = Race control knows, since { $when }.
told-race-control-not = Nobody has reported that race control knows: { $name }, { $phone }.
told-words = The words: ‘{ $words }’
told-race-control-phone = To call there: { $name }, { $phone }.
told-danger = In danger: { $emergency } first.
taken-alarm = { $runner }: { $kind }, since { $since }.
towards = Ask race control before anybody goes towards her: { $name }, { $phone }. I can’t decide that.
towards-alarm = An alarm is open and nobody has it yet: answer it first.
towards-alarm-held = { $holder } has the open alarm: speak to { $holder } first.
towards-rule = Race rules: outside help for { $runner } only at crew points. Away from them it may cost her the race.
towards-rule-anywhere = The race’s rules do not forbid help away from crew points.
towards-note = Race rules for crew: { $note }
towards-instead = Where she will look for you: { $place }, from { $be_there }{ $until ->
    [none] {" until she is heard of."}
   *[other] {" until "}{ $until }.
 }
towards-if = If somebody goes all the same: never alone, never without a light; one of you stays at { $place } with a phone that works; write here who goes, when, and when they are back.
my-race-late = You are about { $length } behind plan at { $place }.
my-race-early = You are about { $length } ahead of plan at { $place }.
my-race-on-plan = You are on plan at { $place }.
my-race-next = { $place }: { $window }.
my-race-cut-off = Next cut-off: { $place }, { $edge } by { $when }; { $odds } that you make it.
my-race-latest = For 9 in 10 be out of { $place } by { $when }.
my-race-no-cut-off = No cut-off is left ahead of you.
my-race-old = What I know of you is old ({ $ago }). Write ‘in’ or ‘out’, or send your position.
my-race-ended = Your race: { $going }.
goals-next = { $runner } out of { $place }: { $goals }.
goals-gone = { $goal } no longer
goals-meaning = Out later than that, the next goal holds (after C: none). By what is known now.
goals-none = No goal changes over any more for { $runner }.
cut-off-none-at = No cut-off lies ahead of { $runner } at { $place }.
cut-off-access = Crew access at { $place } is open { $hours }.
cut-off-no-hours = No closing time for crew at { $place } is written down.

## Replies to reports

noted-seen = Noted: { $runner } was seen, { $when }: ‘{ $words }’
noted-seen-kept = It goes on to those who can confirm it; until then it does not count.
noted-how = Noted how { $runner } is: ‘{ $words }’
meeting-not-among = { $place } is not among your next meetings.
picture-none = There is no picture to send. In words:
photo-kept = I can’t see pictures, and this one is not kept. Write what it shows, for example ‘in at { $place } 14:20’.
photo-words-only = The picture itself is not kept, only your words.
other-unreadable = I can’t read that. Please write it.
live-ended = The shared position has ended. That says nothing of { $runner }.
position-whose = Is { $runner } with that phone?

noted = Noted: { $runner } { $fact }, { $when }.
noted-note = Noted.
noted-crew-there = Noted: you are at { $place }, { $when }.
noted-crew-left = Noted: you left { $place }, { $when }.
noted-on-the-road-untold = Noted. Drive carefully.
noted-awake = Noted: you are awake.
noted-race-control = Noted: race control knows.
noted-in-hand = Noted: { $runner } is in hand, { $when }.
noted-stand-down = Noted: the alarm is over.
noted-position = Noted: position of { $runner }, { $when }.
noted-same = That was here already; it counts once.
noted-kept = { $runner } { $fact }, { $when }: is that right?
noted-unconfirmed = Kept, but not counted yet: { $doubt }. Is it right?
noted-kept-why = It is kept, and counts once that is confirmed: { $doubt }.
noted-supporter = Kept, but it counts only once crew confirm it.
noted-guessed = It is kept, and counts once you press ‘Right’.
noted-next = Next { $place }: { $window }.
noted-undo = Wrong? ‘Undo’ within { $minutes } min.
noted-told = Told to { $names }.
noted-how-told = How she is was told to { $names }.
noted-drive = Noted: the drive from { $from } to { $to } takes { $length }. Leave-bys rest on it from now on.
noted-drive-from = From where to { $place }? Write for example ‘drive from the hotel to { $place } 35 min’.
noted-many = Noted: { $count ->
    [one] one report.
   *[other] { $count } reports.
 }
undone = Taken back: { $runner } { $fact }, { $when }.
undone-words = Taken back: ‘{ $words }’
undone-plain = Taken back.
undo-nothing = There is nothing of yours from the last { $minutes } min to take back.
undo-over = That is more than { $minutes } min old. Send what is right instead, for example ‘correction: in at { $place } 14:20’.
undo-none-there = I have no report of yours at { $place } at hand to take back; nothing has been changed. Send what is right instead, for example ‘correction: in at { $place } 14:20’.
held-up = Noted: ‘{ $words }’. I have told nobody: telephone whoever can be there in your place. Drive safely.
stand-in-asked = I can’t change who goes where: agree it by telephone.
stand-in-call = Crew with a number:
stand-in-nobody = Nobody else of the crew has a number here.
stand-in-person = { $name } ({ $part }): { $phone }
stand-in-control = { $name }: { $phone }
word-told-nobody = It has gone to NOBODY just now: who asks how you are reads it. Telephone if it matters.
how-far = To { $place } (at { $km }): about { $distance } from where you likely are.
how-far-course = { $place } is at { $km } of the course.
confirmed = Confirmed. Thank you.
answered-yours = It is yours. I ask again { $when }.
answered-yours-untimed = It is yours.
answered-other = { $name } has it already. Thank you.
answered = Noted for no. { $short }. Thank you.
answer-nothing-open = Noted, though nothing is open that needs an answer.
answered-seen = Where was she seen, and when? Press one, or write it.
answered-when = When? ‘now’, ‘10 min ago’ or a time.
distress = Are you hurt? Call { $emergency }. { $name }: { $phone }.
distress-for-her = Is she hurt? Call { $emergency }. { $name }: { $phone }.
distress-passed-on = Your words have gone to your crew and safety contact{ $count ->
    [0] .
   *[other] {": "}{ $names }.
 }
distress-reaches-nobody = It is written down, but it has reached NOBODY: no one is connected. Please telephone.
distress-not-passed-on = I could NOT send your words on. Please telephone.
distress-whose = You did not say which runner: the alarm is out for { $names }. Which one is it?
help-in-events = The alarm is out in { $events }.
help-other-event = Is it about { $event }? Then write it again at once with ‘{ $name }’ in it.
distress-which = You did not say which runner. Write her name or number now, or press: her own alarm goes out then.
distress-named = For { $runner }: her own alarm is out.
distress-about = The alarm is about { $runner }, of whom we spoke before. If another runner needs help, write that with her name, at once.
distress-meant = For { $runner }: her alarm stays open. Taken back for { $others }.
distress-meant-all = The alarms stay open for { $names }.
distress-where = If you can, send your position or write where you are. Stay warm; stay on the course if that is safe.
distress-not-hurt = If nothing is wrong, write ‘undo’.
grave = If she is in danger call { $emergency } now. { $name }: { $phone }. Medics decide whether she goes on.
grave-own = If you are in danger call { $emergency } now. { $name }: { $phone }. Medics decide whether you go on.
grave-help = If everybody is to be told at once, write ‘she needs help’.
grave-help-own = If everybody is to be told at once, write ‘help’.
help-still-open = The alarm about your call for help stays open all the same{ $holder ->
    [none] {""}
   *[other] {" with "}{ $holder }
 } until somebody writes ‘stand down’.
help-was-nothing = If it was nothing, write ‘undo’: that takes your call for help back.

## Asking back

ask-out = Out of what? Left { $place } and going on, or out of the race?
ask-out-nowhere = Out of what? Left a point and going on, or out of the race?
ask-dropped = ‘{ $word }’: is her race over, or something else?
ask-retired-how = It counts already. How did her race end?
ask-point = Which point do you mean?
ask-who = Who is at { $place }?
ask-runner = Which runner?
ask-bib = No runner has bib { $bib }. { $count ->
    [0] Please look again.
   *[other] Did you mean:
 }
ask-where-seen = Between which points was that?
of-runner = { $runner }: { $line }
race-only-organiser = Not noted, and it does not count: only the organiser can say that the start moves, runners are held or a cut-off changes. Tell { $name }: { $phone }.
button-right-of = { $runner }: right
button-wrong-of = { $runner }: wrong
event-chosen = { $event }: now write your message once more.
picked-before = That button is done with already. To change what was noted, write it.
button-old = I no longer know what that button was for. Write it again in words, with the runner’s name.
ask-event = Which event?
ask-with-us = { $runner } is with you. Does that end the alarm about her call for help? It is still on for everybody: press ‘Right’ or write ‘yes’ if she needs no more help.
ask-stand-down = End the alarm for { $runner } for everybody? It is still on: press ‘Right’ or write ‘yes’.
choice-left = Left { $place }, going on
choice-left-plain = Left a point, going on
choice-crew = I am
choice-her = { $runner } is
choice-over = Her race is over
choice-else = Something else
choice-both = Both
choice-all = All of them
choice-runner = { $name } ({ $bib })
choice-between = { $from } – { $to }
not-understood-help = If you need help: call { $emergency }, and write ‘help’; that goes to your crew and safety contact at once.
not-understood = I did not understand that. Write ‘what can I ask’ for examples.
nothing-to-say = Hello. Write ‘what can I ask’ for examples.
thanks = Good.

button-in-plain = In
button-out-plain = Out

## Joining

stranger = This number or chat is not known here. If you have an invitation, send its code.
join-preview = You are { $name }. Part: { $parts }. Event: { $event }. Is that you?
join-done-plain = Welcome, { $name }. Write ‘what can I ask’ for examples.
join-no = Then nothing is joined, and the code stays unused. Tell whoever sent it.
group-bound = From now on this group hears what concerns all of the crew at { $name }: changes of the race, an alarm that is over, the finish. Never where she is, nor what is one person's: that comes to each of you alone. ‘/group off’ ends it.
group-free = This group hears nothing more of { $name } by itself. Each of you is told what is yours as before.
join-private = Send the code to me alone, not in a group.
part-line = { $kind }{ $runner ->
    [none] {""}
   *[other] {" for "}{ $runner }
 }
part-runner = runner
part-crew = crew
part-pacer = pacer
part-safety-contact = safety contact
part-organiser = organiser
part-volunteer = volunteer
part-supporter = supporter

## What can be asked

usage-crew = Ask as you talk: ‘when is she at { $place }’, ‘next’, ‘finish’, ‘where is she’, ‘have we missed her’, ‘wait or go’, ‘what do we bring’, ‘when do we leave’, ‘cut-off’, ‘dark at { $place }’, ‘what if she slows by 10%’, ‘and the one after?’; once it is over ‘how did it go’.
usage-report = Report as you talk: ‘in at { $place } 5 to 3’, ‘out 20 min ago’, ‘not here yet’, ‘saw her on the ridge going up, looking tired’, ‘she is eating, feet fine’. ‘Undo’ takes the last one back for { $minutes } min.
usage-volunteer = Report bibs: ‘214 in 0312 out 0319; 87 in 0315’, ‘214 through’, ‘sweep through’. ‘Undo’ takes the last one back for { $minutes } min.
duty-runner = You are the runner. Say ‘in’ and ‘out’ at points when you can, or share your live location; ‘resting’ when you stop for long; ‘help’ if you need it. Your crew and { $control } hear of it.
duty-crew = You are crew for { $runner }. You get a message when to leave, with the kit to have ready: answer it. Say when you are at a point yourself, then report each arrival and departure there by name; and ‘not here yet’ when asked.
duty-pacer = You pace { $runner }. Be at the point where you join, with a light and a warm layer of your own. Report her at points; if one of you is hurt, write ‘help’ and call { $emergency }.
duty-safety-contact = You are the safety contact of { $runner }, at home, reachable all night. If she is overdue or asks for help you get an alarm here: answer ‘I have it’ within 5 min, and see that somebody looks for her. { $calls ->
    [yes] You are the one who calls { $control }, { $phone }.
   *[no] One named person calls { $control }; the alarm says who.
 } If life may be in danger call { $emergency } first. Before the start a test alarm comes: answer it with the phone as it will be at night.
duty-organiser = You are the organiser. You hear of outages, of people who can’t be reached and of alarms; you say when the start is delayed, runners are held, or a cut-off moves.
duty-volunteer = You report runners at your point: bib, ‘in’ and ‘out’ with the time. You see no positions.
duty-supporter = You follow { $runner }: ask ‘next’, ‘where’ or ‘finish’. Nothing is asked of you.
duty-all = ‘what can I ask’ lists what you can write here. This is an aid, not a rescue service.
usage-runner = Write ‘in’, ‘out’, ‘resting’, ‘moving’, or send your position. Ask ‘next’, ‘cut-off’, ‘plan’, and after it ‘how did it go’. If you write help, hurt or lost, it goes to your crew at once.
usage-answer = Answer an alarm with ‘I have it’ or its button.

## Buttons

button-in = In at { $place }
button-out = Out of { $place }
button-through = Through { $place }
button-not-here-yet = Not here yet
button-was-nothing = It was nothing: end it for all
button-undo = Undo
button-right = Right
button-wrong = Wrong
button-yes = Yes
button-no = No
button-not-yet = Not yet
button-nobody-there = Nobody there
button-i-have-it = I have it
button-ok = OK
button-leaving = Leaving now
button-on-our-way = On our way
button-cannot = Can’t go
button-awake = Awake
button-seen = Seen, she is fine
button-still-missing = Still missing
button-race-control-told = Race control told
button-in-hand = She is with us
button-i-go = I go
button-join = Yes, that is me
button-not-me = No
button-own-choice = Own choice
button-timed-out = Timed out
button-medics = Medics or officials
button-did-not-start = Did not start
button-next = Next
button-bring = What to bring
button-where = Where
button-after = The one after
button-in-car = In a car
button-on-foot = With the runner
button-just-now = Just now
button-ten-ago = 10 min ago
button-twenty-ago = 20 min ago
button-other = { $word }

## Errors to a person

error-no_such_code = That code is not valid: mistyped, used, or over. Ask whoever sent it for a new one.
error-not_yours = Your part in the event does not allow that.
error-not_found = There is no such thing in the event.
error-conflict = That came before with other content. Both are kept, and somebody will be asked which holds.
error-not_now = That does not fit what has been reported: { $what }.
error-too_many = Too many wrong tries. Wait a few minutes.
error-not_ready = The server can’t answer that yet. Ask again in a minute.
error-other = The server could not take that. Nothing was noted. Try again; if it stays, telephone.
error-fault = A fault of mine: I could not read that. NOTHING is noted. Write it in other words; if it is urgent, telephone.
error-unreachable = The server can’t be reached just now. NOTHING is noted yet. Your message is kept: it is dealt with, as of when you sent it, once the server answers, and then you are told. No need to send it again; if it is urgent, telephone.
error-unreachable-not-kept = The server can’t be reached just now. NOTHING is noted, and your message is not kept. Send it again; if it is urgent, telephone.

## The commands in a chat's menu

menu-start = Join with the code you were given
menu-next = When she gets to the next point, and where to be
menu-leave = When we have to leave
menu-group = Tell this group what concerns all of the crew
menu-kit = What to bring and have ready
menu-missed = Have we missed her?
menu-where = Where she is now, as far as known
menu-plan = The plan, point by point
menu-cutoffs = The cut-offs to come
menu-food = What she eats and drinks next
menu-cards = What to do if something goes wrong
menu-numbers = Race control and the emergency number
menu-usage = How to ask and how to report

## The plan: what target and pace came from

plan-source-finish = finish in { $target }
plan-source-pace = { $pace } min/km with all stops
plan-source-easy = easy pace { $easy } plus { $margin } min/km, scaled from 50 km
plan-source-costs = pace from published costs by gradient
plan-source-own-runs = { $count ->
    [one] one of her own runs
   *[other] { $count } of her own runs
 }, { $distance }, the longest { $longest }
plan-source-past-race = { $name } in { $time }, by distance and climb
plan-source-results = past results, { $count } finishers in { $fastest } to { $slowest }
plan-source-results-any = past results

## The plan: notes

plan-unlikely = { $target } is unlikely by { $about }: the odds are about 1 in { $one_in }
plan-unlikely-very = { $target } is unlikely by { $about }: the odds are under 1 in 200
plan-predicted = { $about } gives { $likely }, between { $low } and { $high }; 1 in 10 faster, 1 in 10 slower
plan-predicted-beside = { $about } alone would give { $likely }, between { $low } and { $high }; 1 in 10 faster, 1 in 10 slower. Goals and windows do not go by it
plan-longest-run = the longest run recorded is { $longest }: how she fades later is the usual figure, not her own
plan-paused = { $paused } of standing still in her own runs were left out
plan-jumps = { $count ->
    [one] one jump of the satellite fix was left out
   *[other] { $count } jumps of the satellite fix were left out
 }
plan-far-race = { $name } and this race differ in effort by a factor of { $times }: the further from what she has run, the less it says
plan-short-race = the rule was fitted on races up to about 4 h and is hopeful past a marathon
plan-few-near = few have finished near { $target }: the shape is of runners around { $middle }
plan-easy-scaled = easy pace plus a margin suits a flat 50 km; here it was scaled to { $course } with { $ascent } of ascent (as { $effort } on the level, times growing as distance to the power 1.06), which is hopeful past a day on foot
plan-no-heights = the route has no heights: climbs, descents and altitude are missing from this plan, so that hilly legs come out too short and level ones too long; use a route file with heights
plan-surface-unknown = surface ‘{ $surface }’ on { $where } is not known and costs nothing; known are { $known }
plan-goal-a-target = goal A is the target: the planned stops leave no time to be faster
plan-goal-a-limit = goal A is as fast as her limits allow, { $fastest }
plan-goal-c = goal C would be late for { $about }: it was pulled in by { $pulled } at the finish
plan-limit = the race’s time limit
plan-cut-off-in = the cut-off in at { $place }
plan-cut-off-out = the cut-off out of { $place }
plan-walking = walking costs no time on { $walked } of { $course }; the longest are { $about }
plan-walking-mostly = walking costs no time on { $walked } of { $course } at this target: run what goes down
plan-span = { $from } to { $to }
plan-stages = a race in stages: the target is the sum of the stages, the times at the points are by the clock, nights and all
plan-rested = after { $rest } of rest at { $place } she is taken to begin as after { $after } on foot (common practice, no source)
plan-few-stops = stops are planned at { $planned } in all; one to two hours are usual in a long race (common practice)
plan-fuel-above = from { $place }: { $amount } { $unit } is above the published { $low } to { $high } ({ $source })
plan-fuel-below = from { $place }: { $amount } { $unit } is below the published { $low } to { $high } ({ $source })
plan-caution-thirst = Figures are for planning. Drink to thirst, eat what has been tried in training.
plan-caution-danger = Drinking far beyond thirst is a danger in itself; whoever is confused, vomits again and again, has a swollen face or hands or a bad headache is seen by a medic before anything else is given.
plan-caution-pills = Pills for pain and salt are a matter for the race’s medics.
plan-factor-level-ground = level ground
plan-factor-hills = hills
plan-factor-fade = fade
plan-factor-night = night
plan-factor-heat = heat
plan-factor-mud = mud
plan-factor-snow = snow
plan-factor-altitude = altitude

## The plan: light, goals, cut-offs

plan-rests = Rests on: { $source }.
plan-change-next = Goals change over: out of { $place }, { $goals }.
plan-light = Light, and where the plan has her then: { $light }.
cut-off-earlier = For 9 in 10, if she goes on: { $points }.
plan-goals = Goals: A { $a } (a good day), B { $b } (the target), C { $c } (a hard day).
plan-goals-odds = { $sides ->
    [both] At the finish 1 in 10 is faster than A, 1 in 10 slower than C, if she gets there; before it A to C
    [A] At the finish 1 in 10 is faster than A, if she gets there; C, and A to C before it,
    [C] At the finish 1 in 10 is slower than C, if she gets there; A, and A to C before it,
   *[none] A to C
 } are three ways to run it, not odds: crew go by the windows of their meetings{ $limited ->
    [yes] , which hold if she is in by the time limit
   *[no] {""}
 }.
plan-light-civil-dawn = first light { $when } (at { $km })
plan-light-sunrise = sunrise { $when } (at { $km })
plan-light-sunset = sunset { $when } (at { $km })
plan-light-civil-dusk = last light { $when } (at { $km })
plan-torch = Torch from { $from } ({ $from_when }) to { $to } ({ $to_when }).
plan-no-torch = No torch is needed at this pace; carry what the rules ask for.
plan-changes = Goals change over: out later than this, the next goal holds.
plan-change = { $place }: { $goals }
plan-change-goal = { $goal } until { $when }
plan-latest = out of { $place } by { $when }
plan-latest-none = out of { $place }: no time is early enough
plan-odds = Cut-off { $edge } at { $place } by { $when }: { $odds } to make it.
plan-planned-notes = What the planner says:

## Crew movements: what will not work, and what could help

move-not-allowed = NOT ALLOWED: { $what }. { $remedy }.
move-broken = { $what } (rule: { $rule })
move-trouble = { $place }, { $runner }: { $what }
move-offer = { $place }, { $runner }: what could help: { $what }
plan-move-name = { $name }
plan-move-on-foot = { $person } is on foot with { $runner } then
plan-move-stranded = { $person } is { $place ->
    [none] nowhere that is known
   *[other] {"at "}{ $place }
 }, and { $car } sets out from { $origin ->
    [none] a place nobody has said
   *[other] { $origin }
 }
plan-move-no-driver = nobody who goes in { $car } is said to drive
plan-move-seats = { $people } people go in { $car }, which seats { $seats }
plan-move-no-car-there = { $person } comes off the course at { $place }, where no car comes
plan-move-hand-over = { $person } takes over at { $place }, and no meeting brings them there
plan-move-not-fetched = { $person } hands over at { $place }, and no meeting fetches them there
plan-move-pacer-not-fetched = { $person } paces on to the finish, and no meeting fetches them there
plan-move-closed = crew access at { $place } is closed
plan-move-no-way = how { $car } gets to { $place } is not known: { $origin ->
    [none] nobody has said where they set out from
   *[other] {"no drive from "}{ $origin }{" is given"}
 }
plan-move-estimated = { $drive } from { $origin } to { $place } is an estimate that nobody has confirmed
plan-move-short = { $p } to be at { $place } before her, less than the { $sure } in 100 that can be promised
plan-move-leaves-early = to be at { $following } in time crew leave { $place } at { $wait }: { $p } to see her there
plan-move-clash = { $p } to see her at { $first } and then be at { $place } before her, less than the { $sure } in 100 that can be promised
plan-move-confirm = confirm or correct the drive from { $origin } to { $place }: { $about }
plan-move-part-drive = drive { $took }
plan-move-part-road = road { $took }
plan-move-part-the-way-back = as the way back { $took }
plan-move-part-night = night { $took }
plan-move-part-traffic = traffic { $took }
plan-move-part-full-car-park = a full car park { $took }
plan-move-part-fuel = fuel { $took }
plan-move-part-walk-out = out to the car { $took }
plan-move-part-walk-in = in on foot { $took }
plan-move-part-unloading = unloading { $took }
plan-move-part-pacer-signs-in = the pacer signs in { $took }
plan-move-searched-in-part = other cars or people may do better still than what is offered: not everything was searched through
plan-move-not-searched = whether other cars or people would do better was too much to search through
plan-move-skip-others = leave this meeting out: the others gain by it
plan-move-skip = leave this meeting out: it carries no torch, warm layer, pacer or hand-over
plan-move-other-car = { $car } goes to this meeting, with { $about }: { $p } to be there before her
plan-move-asleep = { $person } means to sleep from { $from } to { $until }, but drives then: move the sleep, or let somebody else drive
plan-move-awake = { $person } will have been awake for { $awake } at the end of this drive
plan-move-two-runners = one crew meets { $runner } and { $other }: the odds are counted as if their nights had nothing in common; weather that slows both is not in them
plan-move-awake-assumed = { $person } is taken to be awake since { $since }: say so in the event file with awake_since or sleeps
plan-move-swap = { $person }, in the same car, drives instead
plan-move-sleep = { $person } sleeps before this drive, from { $from } to { $until }
plan-move-no-access = crew have no access to { $place }
plan-move-crowd = { $count ->
    [one] one person is
   *[other] { $count } people are
 } to meet her at { $place }
plan-move-closes-first = { $place } closes before the rules allow crew
plan-move-closed-before-her = { $place } is closed to crew before she is likely to come, { $early } at the earliest
plan-move-opens-after-her = crew may come to { $place } only when she is likely gone: she leaves by { $late }
plan-move-cars-at = { $count ->
    [one] one car comes
   *[other] { $count } cars come
 } to { $place } ({ $about })
plan-move-permit-elsewhere = { $about } would come without the permit “{ $permit }”, which { $holders } has
plan-move-permit-unsaid = crew need the permit “{ $permit }” at { $place }, and nobody says who has it: ask the race, then write permits = ["{ $permit }"] at the car or person
plan-move-vehicles = { $count } cars come to meet { $runner }: { $about }
plan-move-pacer-early = a pacer joins at { $here }
plan-move-pacers = { $count } pacers would be with her
plan-rule-help = outside help at crew points only
plan-rule-people-at = { $count ->
    [0] no crew
    [one] one person at most
   *[other] { $count } people at most
 } at { $place }
plan-rule-people = { $count ->
    [0] no crew at all
    [one] one of the crew at most
   *[other] { $count } crew at most
 }
plan-rule-not-before = no crew before its time
plan-rule-crew-not-before = no crew anywhere before { $opens }
plan-rule-opens = no crew at { $place } before { $opens }
plan-rule-closes = no crew at { $place } after { $closes }
plan-rule-cars-at = { $count ->
    [0] no cars
    [one] one car of one runner at most
   *[other] { $count } cars of one runner at most
 } at { $place }
plan-rule-permit = permit “{ $permit }” at { $place }
plan-rule-vehicles = { $count ->
    [0] no vehicles
    [one] one vehicle at most
   *[other] { $count } vehicles at most
 }
plan-rule-pacer-from = pacers from { $from }
plan-rule-pacers = { $count ->
    [0] no pacers
    [one] one pacer
   *[other] { $count } pacers
 } at once
plan-remedy-crew-point = Meet her at a point with crew access
plan-remedy-fewer-people = Name fewer people
plan-remedy-leave-out = Leave this meeting out
plan-remedy-other-point = Meet her at another point
plan-remedy-fewer-cars = Use fewer cars
plan-remedy-permit = Send the car or person that has it, or leave this meeting out
plan-remedy-later = Let the pacer join later
plan-remedy-pacer-leaves = Say where the one before leaves: pacer_leaves

## Paper: table, calendar, sheet

paper-point = point
paper-leg = leg
paper-climb = climb m
paper-in = { $goal } in
paper-out = { $goal } out
paper-stop = stop
paper-cut-off = cut-off
paper-minutes-for = minutes for
paper-due = { $edge } { $when }
paper-goal = goal { $goal }
paper-height = height, m
paper-no-heights = the route has no heights
paper-goals-band = goals A to C
paper-night = night
paper-goal-b = goal B, the target
paper-carries = what { $runner } carries
paper-from = from
paper-to = to
paper-takes = takes
paper-at-most = at most
paper-kcal = kcal
paper-carbohydrate = carbohydrate g
paper-sodium = sodium mg
paper-bottles = bottles
paper-what = what
paper-bag = To be had at { $place }: { $things }
paper-bag-kcal = { $amount } kcal
paper-bag-carbohydrate = { $amount } g carbohydrate
paper-bag-sodium = { $amount } mg sodium
paper-meeting-title = { $runner } at { $place }: be there from { $be_there }
paper-leave-title = Leave by { $leave_by } for { $place }: { $runner }
paper-own-title = Your crew at { $place }
paper-leave = Leave by { $leave_by }{ $from ->
    [none] {""}
   *[other] {", from "}{ $from }
 }.
paper-after-her = But stay at { $place } until { $runner } is out of there, or until { $until }: from then on new times come by message.
paper-no-drive = No leave-by: { $from ->
    [none] where they come from is not said
   *[other] no drive from { $from } to { $place } is written down
 }.
paper-no-leave = No leave-by: nobody stands by the drive yet.
paper-be-there = Be there from { $be_there }.
paper-expected = { $runner }: { $window }.
paper-planned = Planned { $when }{ $length ->
    [none] .
   *[other] {", stop "}{ $length }.
 }
paper-wait = Wait until { $until }.
paper-wait-short = Wait until { $until }, then go on to your next meeting: { $odds } that { $runner } has come by then.
paper-drive = Drive { $length }.
paper-parking = Parking: { $parking }
paper-kit-safety = MUST be there: { $kit }.
paper-kit = Bring: { $kit }.
paper-food = Food: { $food }
paper-if-missed = If missed: { $text }
paper-pacer-joins = { $who } joins her as pacer.
paper-pacer-leaves = { $who } leaves her as pacer.
paper-lost = By this plan the meeting can’t be made: { $why }
paper-start-title = { $event }: start
paper-pace-title = Pace { $runner }, { $from } to { $to }
paper-pace-length = { $length } together
paper-stand-title = { $runner } at { $place }
paper-as-of = As planned on { $when }. Times move once she is on her way: ask before leaving.
paper-stays = It holds what was planned on { $when }; what is heard later is on the board and in the chat.
paper-aid = An aid to a crew, not a rescue service. In danger of life call { $emergency } first, then race control: { $name ->
    [none] {""}
   *[other] { $name }{", "}
 }{ $phone }.
paper-rescue = Mountain rescue: { $name } { $phone }.
paper-head-numbers = Who to call
paper-head-meetings = Meetings
paper-head-plan = Her plan
paper-head-cards = If this, then that
paper-head-cut-offs = Cut-offs
paper-head-light = Light
paper-head-fuel = What she carries
paper-cell-leave = Leave by
paper-cell-from = from { $place }
paper-cell-there = Be there from
paper-cell-comes = She likely comes
paper-cell-between = { $early } to { $late }
paper-stay = Stay: you are there already, from { $place }.
paper-cell-stay = stay
paper-cell-own = { $here } your clock
paper-cell-planned = Planned
paper-cell-likely = Likely
paper-cell-crew-until = Crew wait until
paper-cell-wait = Wait until
paper-permit = Permit needed: { $permit }{ $who ->
    [none] {", nobody says who has it: ask the race"}
   *[other] {", "}{ $who }{" has it"}
 }.
paper-hours = Crew allowed { $from ->
    [none] {""}
   *[other] {"from "}{ $from }
 }{ $to ->
    [none] {""}
   *[other] {" until "}{ $to }
 }.
paper-allowed = At most { $what }.
paper-people-max = { $count ->
    [one] one person
   *[other] { $count } people
 }
paper-cars-max = { $count ->
    [one] one car
   *[other] { $count } cars
 }
paper-race-clock = The times of this table are those of the clock at the race.
paper-head-glove = Keep this page in the glove box
paper-head-phones = Telephones
paper-phone = { $name } ({ $parts }) { $phone }
paper-head-how = What the way is made of
paper-allowed-by = Allowed: { $rules }.
paper-head-drives = Who drives where
paper-car = car
paper-who = who
paper-made-of = made of
paper-in-time = there before her
paper-drives-her = { $name } (drives)
paper-own-car = their own way
paper-there-already = there already
paper-not-promised = { $odds }, not promised
paper-no-meetings = No meeting is planned for you.
paper-runner = { $name }{ $bib ->
    [none] {""}
   *[other] {", bib "}{ $bib }
 }. { $clothing }
paper-no-signal = No phone signal there.
paper-rules = Race rules for crew: { $rules }

## What `stilepost check` says

check-mistakes = { $count ->
    [one] 1 mistake
   *[other] { $count } mistakes
 } to correct.
check-right = { $file }: right. { $runners } runner(s), { $points } points, { $people } people, { $meetings } meetings. `stilepost load { $file }` stores it.

cli-error = Error: { $what }
cli-written = written: { $file }
cli-not-written = { $file }: can't be written ({ $why }). Choose another place.
cli-no-runner = --runner: the event has no runner '{ $runner }'. Use one of: { $known }.
cli-breaks-rules = the plan breaks { $count ->
    [one] a rule
   *[other] { $count } rules
 } of the race: see NOT ALLOWED above. Change the file, then plan again.

## What `stilepost load` says

load-ask = Store this?
load-nothing-stored = nothing was stored.
load-stored = { $event }: stored as version { $version }.
load-new = { $event }: a new event, '{ $name }'.
load-unreadable = version { $version } can't be read by this Stilepost:
load-no-change = { $event }: nothing changes against version { $version }.
change-added = { $thing }: added
change-removed = { $thing }: removed
change-changed = { $thing }: { $field } was { $was ->
    [none] not given
   *[other] { $was }
 }, becomes { $now ->
    [none] not given
   *[other] { $now }
 }
change-thing-event = event
change-thing-course = course
change-thing-runner = runner
change-thing-person = person
change-thing-car = car
change-thing-meeting = meeting
change-thing-if-then-card = if-then card
change-thing-place = place
change-thing-stretch = stretch
change-thing-drive = drive
change-thing-part = part
change-thing-relay-share = relay share
change-thing-weather = weather
change-thing-point = point

## Stages: in before the next one starts

stage-odds = { $place }: { $odds } to be in before the next stage starts { $when }; then likely { $rest } of rest there, 1 time in 10 { $least ->
    [none] hardly any
   *[other] under { $least }
 }.
stage-odds-by = { $place }: { $odds } to be in by { $by } for the next stage, which starts { $when }; then likely { $rest } of rest there, 1 time in 10 { $least ->
    [none] hardly any
   *[other] under { $least }
 }.
stage-low = That is low: ask the race now what becomes of those who come in later.

report-finished = { $runner } finished { $when }{ $length ->
        [none] .
       *[other] , after { $length }.
    }
report-retired = { $runner } did not finish: retired{ $place ->
        [none] { "" }
       *[other] { " " }at { $place }
    }, { $when } ({ $how }).
report-not-started = { $runner } did not start.
report-not-over = It is not over for { $runner }: { $going }.
report-late = Against the plan (goal B), at { $place }: { $length } behind; planned { $planned }.
report-early = Against the plan (goal B), at { $place }: { $length } ahead; planned { $planned }.
report-on-plan = Against the plan (goal B), at { $place }: on plan ({ $planned }).
report-lost = Time was lost: { $parts }.
report-won = Time was made up: { $parts }.
report-leg = { $from } to { $to } { $length }
report-stop = stop at { $place } { $length }
report-even = No leg and no stop was { $length } or more off the plan.
report-whole = The whole, point by point with what became of it: write ‘plan’.
menu-report = How it went, against the plan
