# Times, answers, replies, buttons. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

# For dates and numbers.
locale = en_GB

## Times, lengths, places
both-clocks = { $there } ({ $here } your clock)
window = about { $likely } ({ $early } to { $late })
window-over = expected { $likely } ({ $early } to { $late }), nothing reported from there
window-there = there since { $likely }
window-set = { $likely }
window-due = about { $likely }, any time from now to { $late }
window-open = any time from now to { $late }
window-stood = about { $likely } ({ $early } to { $late })
window-own = , your clock { $likely } ({ $early } to { $late })
window-own-over = , your clock { $likely } ({ $early } to { $late })
window-own-there = , your clock { $likely }
window-own-set = , your clock { $likely }
window-own-open = , your clock { $late } at the latest
window-own-due = , your clock { $likely }, { $late } at the latest
window-short = { $likely } ({ $early } to { $late })
window-how = How to read a time like 14:35 (14:10 to 15:20): about 14:35; 1 time in 10 she comes before 14:10, 1 in 10 after 15:20. Asking ‘why?’ explains it again.
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
fact-in-hand = with us at { $place }
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
fact-in-hand-nowhere = with us, place not given
fact-sweep-through-nowhere = sweep through, place not given
fact-not-here-yet-nowhere = not there yet, place not given
place-km = { $km } into the course
place-nowhere = a place not given

## How fresh
fresh = Last known: { $fact } { $when }, reported by { $who } ({ $ago }).
fresh-nothing = Nothing heard of { $name } yet.
fresh-before = { $name } has not started yet.
fresh-doubted = { $count ->
    [one] One report is not confirmed yet and does not count.
   *[other] { $count } reports are not confirmed yet and do not count.
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
fresh-sharper = With a report from { $name } I could say it more exactly.

## Marks before a notice
mark-exercise = [EXERCISE, nothing has happened] { $text }
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
going-retired-in-hand = retired, with us
going-finished = finished
going-closed = finished, with her crew
no-forecast = I have no time for { $place }.
where-between = { $runner } was last known { $fact } { $when }, reported by { $who } ({ $ago }).
where-seen = { $runner } was last seen { $when }, { $place }, reported by { $who } ({ $ago }).
where-estimate = Estimate, not seen: between { $low } and { $high } on the course, likely near { $likely }.
where-estimate-near = Estimate, not seen: near { $likely } on the course.
where-legs = That lies between { $from } and { $to }.
where-at = { $runner } is at { $place }, in since { $when }, reported by { $who } ({ $ago }).
where-gone-on = Nobody has reported her out of there; { $odds } that she has gone on.
where-ended = { $runner }: { $going }.
gap-answer-late = { $runner } is about { $length } behind plan. { $place }: { $window }.
gap-answer-early = { $runner } is about { $length } ahead of plan. { $place }: { $window }.
gap-answer-none = { $runner } is on plan. { $place }: { $window }.
gap-fact = In at { $place } { $when }: { $gap } there.
gap-none-known = There is no plan time to hold against.
supposed-slower = If { $runner } goes { $percent }% slower from here: { $place } { $window }.
supposed-faster = If { $runner } goes { $percent }% faster from here: { $place } { $window }.
supposed-leaving = If { $runner } leaves at { $when }: { $place } { $window }.
supposed-later = If { $runner } takes { $length } more: { $place } { $window }.
supposed-sooner = If { $runner } takes { $length } less: { $place } { $window }.
supposed-on-the-move = { $runner } is on the move, not at a point: this is how it stands.
supposed-only = Only worked out: nobody has been told, nothing is changed.
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
cut-off-split = In time if she goes on: { $odds }; that she goes on to there: { $going }.
cut-off-line = { $place }, { $edge } by { $when }: { $odds }.
cut-off-more = After that:
cut-offs-none = No cut-off is left for { $runner }.
missed-seen-out = Yes, gone: { $runner } was out of { $place } { $when }.
missed-seen-in = No: { $runner } is in at { $place } since { $when }; nobody has reported her out.
missed-gone-on = Perhaps: { $runner } was in at { $place } at { $when }, nobody has reported her out; { $odds } that she has gone on.
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
people-unreached = my messages do not get through: telephone
people-phone = phone { $phone }
people-car = { $car }
people-none = Nobody is known to be at { $place }.
people-nobody = Nobody else has a part that you may see.
people-head = { $count ->
    [one] One person:
   *[other] { $count } people:
 }
numbers = Danger to life: { $emergency } first. { $name }: { $phone }.
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
fuel-caffeine = { $amount } mg caffeine
leave = Leave by { $leave_by } for { $place }; be there from { $be_there }.
leave-lost = { $runner } at { $place } can’t be met any more. { $why }
leave-over = Leave-by for { $place } was { $leave_by }. Drive as always: getting there safely matters more.
leave-ended = No meeting and no leave-by holds any more. Where she is to be fetched, race control says, or she herself: ask before you drive.
leave-unknown = No leave-by for { $place } yet: nobody has confirmed the drive. Be there from { $be_there }.
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
drive-estimated = Nobody has confirmed it, so no leave-by is made from it.
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
dark-yes = Yes, it is dark at { $place } when { $runner } comes: { $window }.
dark-no = No, it is light at { $place } when { $runner } comes: { $window }.
plan-says-nothing = { $words ->
    [none] The plan does not say that. What is known:
   *[other] The plan says nothing about ‘{ $words }’. What is known:
}
time-left = { $length } until you must leave for { $place }. What that is enough for the plan does not say.
time-left-unknown = There is no leave-by for { $place }, so I can’t say how much time is left.
time-left-none = No time is left before { $place }: the leave-by is over.
time-own = Whether there is time for that the plan does not say. Your limits:
weather-unknown = The plan does not say what the weather will be: ask the weather service or race control.
leave-there-unknown = The plan does not say whether anything may be left or handed over there. Ask race control: { $name } { $phone }.
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
heard = { $runner }: { $fact } { $when }, reported by { $who } ({ $ago }).
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
card-box = ■ RED FLAGS. { $red_line }
card-box-flag = ■ { $flag }
card-box-end = ■ Not sure? Call.
card = Try first, with none of these: { $tries }.
card-red = { $trouble }. A MEDIC is fetched, and she waits there, if: { $flags }.
paper-card-red = A MEDIC, and she waits there, if: { $flags }.
card-call = Call: { $call }
picture-dark = dark
picture-row = { $place } ({ $km }): { $times }{ $dark ->
    [none] {""}
   *[other] {", "}{ $dark }
 }
cards-which = Which? Ask for example ‘what if her stomach goes wrong’.
cards-line = - { $trouble }
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
told-failed = { $name }: my message did not get through, tried { $when }.
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
towards-if =
    If somebody goes all the same: never alone, never without a light. One stays at { $place } with a phone that works.
    Write here who goes, when, and when they are back.
my-race-late = You are about { $length } behind plan at { $place }.
my-race-early = You are about { $length } ahead of plan at { $place }.
my-race-on-plan = You are on plan at { $place }.
my-race-next = { $place }: { $window }.
my-race-cut-off = Next cut-off: { $place }, { $edge } by { $when }; { $odds } that you make it.
my-race-latest = For 9 chances in 10 be out of { $place } by { $when }.
my-race-no-cut-off = No cut-off is left ahead of you.
my-race-old = What I know of you is old ({ $ago }). Write ‘in’ or ‘out’, or send your position.
my-race-ended = Your race: { $going }.
goals-next = { $runner } out of { $place }: { $goals }.
goals-gone = { $goal } no longer
goals-meaning = If she is out later than that, the next goal counts (after C: none). By what is known now.
goals-none = No goal changes over any more for { $runner }.
cut-off-none-at = No cut-off lies ahead of { $runner } at { $place }.
cut-off-access = Crew access at { $place } is open { $hours }.
cut-off-no-hours = No closing time for crew at { $place } is written down.

## Replies to reports
noted-seen = Noted: { $runner } was seen, { $when }: ‘{ $words }’
noted-seen-kept = It counts once somebody who can confirms it; they are asked.
noted-how = Noted how { $runner } is: ‘{ $words }’
meeting-not-among = { $place } is not among your next meetings.
picture-none = There is no picture to send. In words:
photo-how = Send it here: whoever is with her tonight sees it, without its place and camera data. I can’t see what is on it, so write what has to be done, for example ‘in at { $place } 14:20’.
photo-unseen = I can’t see what is on it. Write what has to be done, for example ‘in at { $place } 14:20’.
photo-shown = { $names ->
    [none] The picture is kept, but shown to nobody yet.
   *[other] The picture is kept, and shown to { $names }.
}
photo-lost = The picture did not come through. Please send it again.
photo-too-large = The picture is too large (at most 700 kB). Send it smaller.
photo-unreadable = That is no picture I can keep. Send a photo (JPEG, PNG or WebP).
other-unreadable = I can’t read that. Please write it.
live-ended = The shared position has ended. That says nothing about { $runner }.
noted = Noted: { $runner } { $fact }, { $when }.
noted-cannot-come = Noted: { $who } can’t come. No leave-now for { $who }; the others are asked.
noted-can-come = Noted: { $who } can come again, as planned.
noted-takes-over = It is yours, { $who }. All who have to know are told.
answered-cannot-come = Noted: you can’t go. The others are asked who can. If you are tired or unwell: do not drive, stop where it is safe and rest.
answered-cannot-why = You need do nothing more. If it is the car, or you can go after all, write it.
answered-you-go = It is yours. The times are in the next message.
answered-goes = { $who } goes already; you need not.
cannot-come-driver = You first: stop where it is safe, and do not drive on. Sleep, or let somebody else drive.
cannot-come-own-safety = You first: hurt or ill, call { $emergency }. Do not drive.
cannot-come-car = You first: off the road, lights on, stand away from the traffic. Hurt? { $emergency }.
cannot-come-pacer = You first: if you can’t walk on safely, call { $emergency } or race control ({ $phone }), stay warm and share where you are.
cannot-come-back = When it changes, write ‘I can come again’.
noted-note = Noted.
noted-crew-there = Noted: you are at { $place }, { $when }.
noted-crew-left = Noted: you left { $place }, { $when }.
noted-on-the-road-untold = Noted. Drive carefully.
noted-awake = Noted: you are awake.
noted-race-control = Noted: race control knows.
noted-in-hand = Good: { $runner } is with you, { $when }.
noted-stand-down = Noted: the alarm is over.
noted-position = Noted: position of { $runner }, { $when }.
noted-same = I had that already; it counts once.
noted-kept = { $runner } { $fact }, { $when }: is that right?
noted-unconfirmed = It does not count yet: { $doubt }. Is it right?
noted-kept-why = It counts once somebody confirms it. Why: { $doubt }.
noted-supporter = It counts once crew confirm it.
noted-guessed = It counts once you press ‘Right’.
noted-in-place-of = In place of { $when }.
noted-next = Next { $place }: { $window }.
noted-undo = Wrong? ‘Undo’ within { $minutes } min.
noted-told = Told to { $names }.
noted-how-told = How she is was told to { $names }.
noted-drive = Noted: the drive from { $from } to { $to } takes { $length }. Leave-bys go by it from now on.
noted-drive-from = From where to { $place }? Write for example ‘drive from the hotel to { $place } 35 min’.
noted-many = Noted: { $count ->
    [one] one report.
   *[other] { $count } reports.
 }
undone = Taken back: { $runner } { $fact }, { $when }.
undone-words = Taken back: ‘{ $words }’
undone-plain = Taken back.
undo-nothing = You have sent nothing in the last { $minutes } min that could be taken back.
undo-over = That is more than { $minutes } min old. Send what is right instead: ‘correction: in at { $place } 14:20’.
undo-none-there = I have no report of yours at { $place } to take back; nothing is changed. Send what is right instead: ‘correction: in at { $place } 14:20’.
held-up = Noted: ‘{ $words }’. I have told nobody: telephone whoever can be there for you. Drive safely.
stand-in-asked = I can’t change who goes where: agree it by telephone.
stand-in-call = Crew with a number:
stand-in-nobody = Nobody else of the crew has a number here.
stand-in-person = { $name } ({ $part }): { $phone }
stand-in-control = { $name }: { $phone }
word-told-nobody = Nobody has been sent it: whoever asks how you are reads it. Telephone if it matters.
how-far = To { $place } (at { $km }): about { $distance } from where you likely are.
how-far-course = { $place } is at { $km } of the course.
confirmed = Confirmed. Thank you.
answered-yours = It is yours. I ask again { $when }.
answered-yours-untimed = It is yours.
answered-other = { $name } has it already. Thank you.
answered = Thank you, your answer is in.
answered-on-our-way = Good, you are on the road. Drive carefully.
answered-cannot-alarm = Noted: you can’t take it. { $names ->
    [none] Whoever is next is asked at once.
   *[other] Asked besides you: { $names }; whoever is next is asked at once.
 }
answered-cannot-held = Noted: you can’t take it. { $name } has it.
answered-gave-back = Noted: you do not have it any more. The next are asked at once, and whoever called for help is told.
answered-cannot = Understood, you can’t. Whoever is next is asked.
answered-yes = Thank you.
answered-not-yet = Thank you: not yet.
answered-nobody-there = Thank you: nobody is there to see her.
answered-still-missing = Thank you: still missing. The alarm stays open.
answered-ok = Good, you have read it.
answered-no = Thank you: no.
answered-i-have-it = Good, you have it.
answered-unreached-i-have-it = Good, you ring them. What you hear of them or of her, write it here.
answered-unreached-cannot = Understood, you can’t ring. Whoever is next is asked.
answered-goes-on = Thank you: she goes on.
answered-race-over = Thank you: her race is over.
answer-nothing-open = Noted, though nothing is open that needs an answer.
answered-seen = Where was she seen, and when? Press one, or write it.
answered-when = When? ‘now’, ‘10 min ago’ or a time.
help-in-events = The alarm is out in { $events }.
help-other-event = Is it about { $event }? Then write it again at once with ‘{ $name }’ in it.
passed-on = Sent on word for word to { $names }.
passed-on-place = Where you are has gone to { $names ->
    [none] nobody yet
   *[other] { $names }
 }, on the call for help for { $runner }.
help-still-open = The alarm about your call for help stays open all the same{ $holder ->
    [none] {""}
   *[other] {" with "}{ $holder }
 } until somebody writes ‘stand down’.
help-was-nothing = If it was nothing, write ‘undo’: that takes your call for help back.

## Asking back
ask-out = Out of what? Left { $place } and going on, or out of the race?
ask-out-nowhere = Out of what? Left a point and going on, or out of the race?
ask-dropped = ‘{ $word }’: is her race over, or something else?
ask-dropped-own = ‘{ $word }’: is your race over, or something else?
ask-retired-where = { $own ->
    [yes] Where are you? Share your position or write the place: whoever fetches you needs it.
   *[no] Where is she? Write the place, or ask her: whoever fetches her needs it.
 }
ask-retired-how = It counts already. How did her race end?
ask-point = Which point do you mean?
ask-who = Who is at { $place }?
ask-runner = Which runner?
ask-bib = No runner has bib { $bib }. { $count ->
    [0] Nothing is noted for that: please look again.
   *[other] Did you mean:
 }
bibs-left = Nothing is noted for { $bibs }: no runner has that bib.
ask-where-seen = Between which points was that?
of-runner = { $runner }: { $line }
race-only-organiser = Not noted: only the organiser can say that the start moves, runners are held or a cut-off changes. Tell { $name }: { $phone }.
button-right-of = { $runner }: right
button-wrong-of = { $runner }: wrong
event-chosen = { $event }: now write your message once more.
picked-before = That button has been used. To change what was noted, write it.
button-old = I no longer know what that button was for. Write it in words, with the runner’s name.
ask-event = Which event?
ask-with-us = { $runner } is with you. Does she need no more help? The alarm is still on for everybody: press ‘Right’ or write ‘yes’ to end it.
noted-no-alarm = No alarm about { $runner } is open, so there is none to end. I have kept your words; she is watched as before.
ask-stand-down = End the alarm for { $runner } for everybody? It is still on: press ‘Right’ or write ‘yes’.
choice-left = Left { $place }, going on
choice-left-plain = Left a point, going on
choice-crew = I am
choice-her = { $runner } is
choice-crew-left = I did
choice-her-left = { $runner } did
ask-who-left = Who left { $place }?
choice-over = Her race is over
choice-over-own = Your race is over
choice-else = Something else
choice-both = Both
choice-all = All of them
choice-runner = { $bib ->
    [none] { $name }
   *[other] { $name } ({ $bib })
 }
button-undo-of = Undo: { $event }
choice-between = { $from } – { $to }
choice-point-km = { $place } ({ $km })
not-understood-help = If you need help: call { $emergency }, and write ‘help’; that goes to your crew and safety contact at once.
clause-not-done = Not understood: ‘{ $words }’. Ask it again by itself, in other words.
not-understood = I did not understand that. Write ‘what can I ask’ for examples.
nothing-to-say = Hello. Write ‘what can I ask’ for examples.
thanks = Good.
button-in-plain = In
button-out-plain = Out

## Joining
stranger = This number or chat is not known here. If you have an invitation, send its code.
join-preview = Hello { $name }, you are { $parts } at { $event }. Is that you?
join-asks-runner = You write how it goes and when you need help; your crew and the race report you at the points.
join-asks-crew = You are told when to leave and where to be, and say when she came and when she went.
join-asks-pacer = You are told where you join her, and report for both of you while you run.
join-asks-safety-contact = When she is overdue an alarm comes: answer it with ‘I have it’ or ‘can’t’. A test alarm comes before the start; answer that too.
join-asks-organiser = You report what holds for everybody: a late start, a stop, a cut-off moved.
join-asks-volunteer = You report each runner by bib, in and out at your point.
join-asks-supporter = Nothing is asked of you; you see where she was last reported and when she is due next.
join-done-plain = Welcome, { $name }. Write ‘what can I ask’ for examples.
join-no = Then nothing is joined, and the code stays unused. Tell whoever sent it.
group-bound =
    From now on this group hears what concerns all of the crew at { $name }: changes of the race, an alarm that is over, the finish.
    Never where she is, nor what is one person’s: that comes to each of you alone. ‘/group off’ ends it.
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
usage-crew =
    Ask as you talk:
    ‘when is she at { $place }’, ‘next’, ‘finish’, ‘where is she’, ‘have we missed her’, ‘wait or go’
    ‘what do we bring’, ‘when do we leave’, ‘cut-off’, ‘dark at { $place }’
    ‘what if she slows by 10%’, ‘and the one after?’; once it is over ‘how did it go’
usage-report =
    Report as you talk:
    ‘in at { $place } 5 to 3’, ‘out 20 min ago’, ‘not here yet’
    ‘saw her on the ridge going up, looking tired’, ‘she is eating, feet fine’
    ‘Undo’ takes the last one back for { $minutes } min.
usage-volunteer =
    Report bibs: ‘214 in 0312 out 0319; 87 in 0315’, ‘214 through’, ‘sweep through’.
    ‘Undo’ takes the last one back for { $minutes } min.
duty-runner =
    You are the runner. Say ‘in’ and ‘out’ at points when you can, or share your live location.
    ‘resting’ when you stop for long; ‘help’ if you need it: your crew and { $control } hear of it.
duty-crew =
    You are crew for { $runner }. A message tells you when to leave and what to have ready: answer it.
    Say when you are at a point yourself. Then report each arrival and departure there by name, and ‘not here yet’ when asked.
duty-pacer =
    You pace { $runner }. Be at the point where you join, with a light and a warm layer of your own.
    Report her at points. If one of you is hurt, write ‘help’ and call { $emergency }.
duty-safety-contact =
    You are the safety contact of { $runner }, at home, reachable all night.
    If she is overdue or asks for help an alarm comes here: answer ‘I have it’ within 5 min, and see that somebody looks for her.
    { $calls ->
        [yes] You are the one who calls { $control }, { $phone }.
       *[no] One named person calls { $control }; the alarm says who.
    } Life may be in danger: { $emergency } first.
    Before the start comes a test alarm: answer it with the phone as it will be at night.
duty-organiser =
    You are the organiser. You hear of outages, of people who can’t be reached and of alarms.
    You say when the start is delayed, runners are held, or a cut-off moves.
duty-volunteer = You report runners at your point: bib, ‘in’ and ‘out’ with the time. You see no positions.
duty-supporter = You follow { $runner }: ask ‘next’, ‘where’ or ‘finish’. Nothing is asked of you.
duty-all = ‘what can I ask’ lists what you can write here. This is an aid, not a rescue service.
usage-runner =
    Write ‘in’, ‘out’, ‘resting’, ‘moving’, or send your position.
    Ask ‘next’, ‘cut-off’, ‘plan’, and after it ‘how did it go’.
    If you write help, hurt or lost, it goes to your crew at once.
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
button-unreached-i-have-it = I’ll ring them
button-unreached-cannot = Can’t ring them
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
button-alarm-known = What is known
button-alarm-tell = What to tell rescuers
button-just-now = Just now
button-ten-ago = 10 min ago
button-twenty-ago = 20 min ago
button-other = { $word }

## Errors to a person
error-no_such_code = That code is not valid: mistyped, used, or over. Ask whoever sent it for a new one.
error-not_yours = Your part in the event does not allow that.
error-not_found = There is no such thing in the event.
error-conflict = That came before with other words. Both are kept, and somebody is asked which is right.
error-not_now = That does not fit what has been reported: { $what }.
error-too_many = Too many wrong tries. Wait a few minutes.
error-not_ready = The server can’t answer that yet. Ask again in a minute.
error-other = The server could not take that. Nothing was noted. Try again; if it stays, telephone.
error-fault = A fault of mine: I could not read that. NOTHING is noted. Write it in other words; if it can’t wait, telephone.
error-unreachable =
    The server can’t be reached just now. NOTHING is noted yet.
    I keep your message and hand it over, with its time, once the server answers; then you are told. If it can’t wait, telephone.
error-unreachable-not-kept = The server can’t be reached just now. NOTHING is noted and your message is not kept. Send it again; if it can’t wait, telephone.

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

## What was said, kept in its own words
kept = Kept in your words: ‘{ $words }’
goes-already = You go to { $place } already, and nobody else has to be asked.
kept-own = It is kept as yours already, and not as the runner’s.
kept-note = Noted in your words: ‘{ $words }’. Nothing of it counts as a report of her.
ask-danger = Is she in danger? Then call { $emergency }, and press below.
ask-danger-own = Are you in danger? Then call { $emergency }, and press below.
button-danger-yes = Yes, tell everyone
button-danger-no = No
ask-meaning = ‘{ $word }’: which do you mean?
rivals-unknown = I do not know how others are doing, nor her place: ask race control. { $name }: { $phone }.
rules-unknown = I do not know the rules of the race: ask race control. { $name }: { $phone }.
elsewhere-unknown = { $words ->
    [none] I do not know that: it is not in the plan. Somebody at the place may know.
   *[other] The plan says nothing about ‘{ $words }’. Somebody at the place may know.
 }
signal-unknown = I do not know what the signal is there. Whoever has been there may know.
elsewhere-unknown-at = { $words ->
    [none] The plan does not say that of { $place }.
   *[other] The plan says nothing about ‘{ $words }’ at { $place }.
 } Who is there may know; else ask { $name }: { $phone }.
parking-known = Crew park at { $place }: { $parking }. More than that is not said.
signal-known = { $signal ->
    [none] No phone signal at { $place }, by the plan.
   *[other] Patchy phone signal at { $place }, by the plan.
 }
signal-unsaid = The plan says nothing bad of the signal at { $place }, so it should be there. Who has been there knows more; else ask { $name }: { $phone }.
why-times = The middle time is the likeliest; 1 time in 10 she comes before the first, 1 in 10 after the last. They rest on her plan and every report so far.
why-others = Times of { $others } others today are in it too: to { $place } the day goes { $way ->
    [longer] about { $percent }% slower than planned
    [less] about { $percent }% faster than planned
   *[same] as planned
 }.
request-swap = I can’t change who does what: ‘{ $words }’. Please telephone:
meaning-when-there = When she is there
meaning-when-there-own = When I am there
meaning-finish = When she finishes
meaning-finish-own = When I finish
meaning-where = Where she is
meaning-where-own = Where I am put
meaning-plan-gap = Ahead of or behind the plan
meaning-last-stop = How long the stop was
meaning-cut-off = The cut-off
meaning-missed = Whether we missed her
meaning-wait-or-go = Wait or go on
meaning-people = Who is where
meaning-ride = Who drives where
meaning-bring = What to bring
meaning-take-back = What to take from her
meaning-food = What she eats
meaning-food-own = What I eat
meaning-leave = When to leave
meaning-drive = How long the drive is
meaning-dark = When it is dark
meaning-heard = What was last heard
meaning-what-if = If she is slower
meaning-leaves-now = If she leaves now
meaning-plan = The plan
meaning-meeting = The next meeting
meaning-how-is-she = How is she?
meaning-how-is-she-own = What is known of me
meaning-trouble = What to do about it
meaning-numbers = Telephone numbers
meaning-picture = The profile
meaning-photo = A photo
meaning-walk-towards = Walking to meet her
meaning-who-knows = Who knows of it
meaning-my-race = How my race goes
meaning-goals = Goals A, B, C
meaning-why = Why that time
meaning-signal = Telephone signal
meaning-catch-up = What I missed
meaning-duty = What my job is
meaning-cover = Who can stand in
meaning-report = How it went
meaning-usage = What I can ask
meaning-unknown-weather = The weather
meaning-unknown-rivals = Other runners
meaning-unknown-rules = The rules
meaning-unknown-other = Something else
meaning-in = She is in
meaning-in-own = I am in
meaning-out = She left, going on
meaning-out-own = I am on my way again
meaning-through = She went through
meaning-through-own = I went through
meaning-position = She was seen
meaning-position-own = Where I am
meaning-resting = She is resting
meaning-resting-own = I am resting
meaning-moving = She is moving again
meaning-moving-own = I am moving again
meaning-retired = Her race is over
meaning-retired-own = Your race is over
meaning-sweep = The sweep came through
meaning-not-here-yet = Not here yet
meaning-condition = I say how she is
meaning-condition-own = I say how I am
meaning-with-us = She is with us
meaning-with-us-own = I am with crew
meaning-hearsay = Somebody else said so
meaning-supposed = Only a guess
meaning-note = A note
meaning-race-news = News of the race
meaning-crew-there = We are there
meaning-crew-left = We are on the way
meaning-drive-takes = How long the drive takes
meaning-about-me = About me
meaning-cant-come = I can’t come
meaning-can-come = I can come again
meaning-held-up = I am held up, and come later
meaning-i-have-it = I have it
meaning-i-go = I go there
meaning-race-control-told = Race control knows
meaning-alarm-over = She is safe
meaning-alarm-over-own = I am safe
meaning-nobody-there = Nobody is there
meaning-awake = I am awake
meaning-ok = OK
meaning-yes = Yes
meaning-no = No
meaning-undo = Take the last one back
meaning-correction = Correct the time
meaning-other-person = That was another runner
meaning-pass-message = Pass a message on
meaning-swap = Swap with somebody
meaning-meet-elsewhere = Meet elsewhere
meaning-mute = Send me less
meaning-remind-me = Remind me
meaning-small-talk = Nothing, just talking
race-news-noted = Noted. Those affected are told.
race-news-how-long = By how long, or until when? Write it as in ‘the start is delayed by 30 min’. Nothing is noted yet.
race-news-which-cut-off = Which cut-off, and until when? Write it as in ‘cut-off at { $place } extended to 18:00’. Nothing is noted yet.
sent-to = Told to { $names }: ‘{ $words }’
sent-to-nobody = Kept, but told to nobody yet: ‘{ $words }’
sent-waits = { $name } reads it from { $when }, unless they write sooner.
sent-unheard = Can’t be reached here: { $names }. Please telephone.
swap-sent = Until somebody takes it, it stays with you.
swap-whose = Nobody was asked: I know of no meeting of yours there that is to come.
quiet-until = No news until { $when }. Alarms and your own meetings still come.
to-bed = Sleep well. Other news waits until { $when }; alarms and your own meetings wake you before that, so leave the phone on and loud.
quiet-how-long = Until when? Write ‘quiet until 18:00’.
quiet-over = News comes again from now on.
remind-at = I’ll remind you at { $when }. Set an alarm clock as well if you must not miss it.
remind-when = At what time? Write ‘remind me at 18:00’ and what of. What you need to know of her comes by itself.
request-race = I can’t pass that on to the race: ‘{ $words }’. Please telephone:
noted-cannot-come-to = Noted: { $who } can’t come to { $place }. No leave-now for { $who }; the others are asked.

# What the file says besides meetings, and what is the writer's own.
rules-known = Of the rules I have only these; for anything else ask race control. { $name }: { $phone }.
rule-note = Note of the race: { $note }
rule-points = Outside help for her only at crew points.
rule-cars = { $count ->
    [one] One car may come to her meetings.
   *[other] At most { $count } cars may come to her meetings.
 }
rule-people = { $count ->
    [one] One person may be her crew.
   *[other] At most { $count } people may be her crew.
 }
rule-pacers = Pacers: { $count } at a time, from { $km } on.
rule-not-before = No crew at any point before { $when }.
start-at = { $runner } starts { $when }.
start-was = { $runner } started { $when }.
start-no-change = I know of no change.
clock-now = Times here are by the clock of the race: it is now { $now } there.
clock-yours = Where your own clock differs, its time stands behind in brackets.
course-ahead = Still to come: { $points }.
course-point = { $place } ({ $km })
course-hills = How many climbs that is I do not know: I count none.
looks = { $runner }{ $bib ->
    [none] {""}
   *[other] {", bib "}{ $bib }
 }{ $clothing ->
    [none] : what she wears is not written down.
   *[other] {": "}{ $clothing }.
 }
looks-torch = Light: { $torch }.
looks-none = What { $runner }{ $bib ->
    [none] {""}
   *[other] {" (bib "}{ $bib }{")"}
 } wears is not written down.
mine-fact = I have from you: { $runner } { $fact }, { $when }.
mine-words = I have from you, { $when }: ‘{ $words }’
mine-none = I have no report from you of that.
late-not-yet = { $runner } is not late. She would be if nothing is heard from { $place } by { $when }.
late-already = { $runner } is late: expected at { $place } by { $when } at the latest.
in-doubt = Is somebody in danger? Then call { $emergency }.
grave-any = If you or anybody near you is in danger call { $emergency } now. { $name }: { $phone }.
grave-any-drive = Who feels faint, drowsy, cold through or sees badly does not drive on: stop, and let somebody else go.
grave-any-help = Is somebody in danger? ‘Yes’ sends your words to everybody here.
meaning-start-time = When it starts
meaning-clock = Whose clock it is
meaning-course-ahead = What lies ahead
meaning-my-reports = What I have from you
meaning-clothing = What she wears
meaning-clothing-own = What I wear
remind-leave = A message tells you when to leave.
button-tell-all = Tell the others
new-link = Set the race up here; the link opens once, within a day. The draft is in { $folder }, and another `stilepost new` goes on with it.
new-stop = Ctrl-C stops this server. What is published is served from then on by `stilepost serve`.
new-no-folder = { $folder }: nothing can be written there. Name another folder.
new-again = Answer again?
new-written = Written: { $file }. Next: `stilepost check` it, `stilepost load` it, `stilepost serve`, and `stilepost invite` each person; or `stilepost new` in a browser.
new-no-file = { $file }: can't be read ({ $why }). Check the path.
new-paste-end = Paste it here, or give the name of a file; an empty line ends it.
new-unusual = { $file }: it is not written in a form that is changed here ({ $why }). Give each table a heading of its own, such as [[points]], or name another folder.
meaning-pace = Her pace
meaning-pace-own = My pace
meaning-words = What a word means
meaning-complaint = Something of yours was wrong
meaning-offer = I offer to help
meaning-unremind = No reminder
remind-over = Cancelled: no reminder { $when }.
remind-none = I have no reminder for you that is still to come.
light-dark-at = It will be dark at { $place } when she is there.
light-left = Not with her: her light. { $dark } Told to { $names }.
light-meet = Take a torch to { $place }, where crew meet her next: { $crew }.
light-carries = By the plan she has: { $torch }.
light-control = Nobody meets her before dark, or she has no other light? Tell { $name }: { $phone }.
await-open = You hear at once when { $runner } is { $edge ->
    [out] out of
   *[in] in at
} { $place }.
await-before = I’ll wake you { $length } before { $runner } may be at { $place } at the earliest: there { $window } now. If that moves, so does this. Set an alarm clock as well if you must not miss it.
await-set = I’ll tell you at once when { $runner } is { $edge ->
    [out] out of
   *[in] in at
} { $place }, also at night{ $window ->
    [none] .
   *[other] : there { $window }.
}
await-was = { $runner } is past that: { $fact }, { $when }.
await-past = { $runner } is past { $place } already.
await-race-over = { $runner }’s race is over. There is nothing more to wait for at { $place }.
await-over = Cancelled: no message when { $runner } is { $edge ->
    [out] out of
   *[in] in at
} { $place }.
pace-last = { $from } to { $to }: { $leg }.
pace-before = Before, { $from } to { $to }: { $leg }.
pace-whole = Since the start, stops included: { $leg }.
pace-leg = { $distance } in { $length }, { $pace }
pace-per-km = { $pace } min per km
pace-per-mile = { $pace } min per mile
pace-of = By the times that were reported; no tracker measures it.
pace-none = No pace yet: nobody has reported { $runner } at a point since the start.
complaint-sorry = Sorry about that. This is what holds now:
complaint-right = A time was wrong? Write the right one, as in ‘in at { $place } 13:42’. Fewer messages: ‘quiet until 18:00’.
term-none = Which word do you mean? These are asked about most:
term-window = ‘14:35 (14:10 to 15:20)’: about 14:35; 1 time in 10 she comes before 14:10, 1 time in 10 after 15:20.
term-estimate = ‘About’ and ‘expected’ are estimates: nobody has seen her there. ‘In’, ‘out’ and ‘through’ were reported by the person who is named.
term-late = ‘Late’: she should have been heard of by now, 9 times in 10. It is a question to those at the point, no alarm.
term-overdue = ‘Overdue’: unheard of for so long that home and the crew are called, one after another, until one answers.
term-held = ‘Held’: the organisers keep the runners where they are. Nobody is late meanwhile.
term-unconfirmed = ‘Not confirmed’: kept, but it counts only once somebody who can know says that it is right.
term-with-us = ‘With us’: crew, a medic or the race has her. Nobody need look for her.
term-last-known = ‘Last known’: the last that a person or a mat reported of her. All else is an estimate.
term-cut-off = ‘Cut-off’: by then she must be there, or out again where it says so, or race control takes her out.
term-sweep = ‘Sweep’: those who walk behind the last runner.
term-stand-down = ‘Stand-down’: the alarm is over; nobody need do anything more.
term-leave-by = ‘Leave by’: who sets off later may miss her.
term-resting = ‘Resting’: somebody reported that she sits or sleeps. By itself it is no cause for worry.
term-goals = ‘Goals A, B, C’: a good day, the plan, and a hard day that still gets there.
term-out-of-race = ‘DNF’: did not finish. ‘DNS’: did not start.
term-clock = ‘07:40’ is a time of day, by the 24-hour clock of the race; a length is written ‘40 min’ or ‘2 h 10 min’.

## Changing the plan during the race
change-ask = Change this meeting
change-what = { $place }, { $runner }: { $who }. What is to change?
change-drives = { $name } drives
change-skip = Leave it out
change-move = Meet at another point
change-finish = Just finish, no target
change-where = Meet { $runner } where instead of { $place }?
change-nowhere = There is no other point ahead where crew may be and nobody meets { $runner }.
change-for = { $name }: { $what }
change-left = Nothing is changed.
change-yes = Yes, change it
change-no = No, leave it
change-undo = Undo the change
change-would = Not changed yet. It would mean:
change-for-nobody = Nobody has anything to do differently.
change-mind = Look at this first: { $what }
change-refused = That can’t be: { $what }
change-done = Changed. { $count ->
    [0] Nobody has anything to do differently.
   *[other] { $names } { $count ->
        [one] hears
       *[other] hear
     } it.
 }
change-undone = Taken back. { $count ->
    [0] Nobody has anything to do differently.
   *[other] { $names } { $count ->
        [one] hears
       *[other] hear
     } it.
 }
change-stale = The plan has changed meanwhile. Look at the meeting again, then change it.
change-not-nothing-changes = it is so already.
change-not-no-meeting = that meeting is not in the plan any more.
change-not-no-runner = there is no such runner. Name her.
change-not-no-point = there is no such point on her course.
change-not-met-there = somebody meets her there already. Change that meeting.
change-not-nobody-goes = nobody would go. Leave the meeting out instead.
change-not-no-person = there is no such person. Add them first.
change-not-no-car = there is no such car.
change-not-no-name = a name is missing.
change-not-name-taken = somebody of that name is there already. Add a second name.
change-not-not-that-part = only crew, pacers and supporters can be added here.
change-not-no-limit = the race has no time limit to finish in. Give a later target in the event file.
change-not-unusual = the event file is written in a form that can’t be changed here. Change the file and load it.
change-not-past = she has been at that meeting already, or her race is over. Correct the report if that is wrong.
change-not-behind = she is past that point, or her race is over. Choose one ahead of her.
change-not-not-last = the plan has been changed since, or that was no change made here. Change it by hand.
change-not-no-cut-off = there is no cut-off at that point. Choose one that has.
change-not-no-time = the new time is missing. Give it as in 18:30.
change-not-no-drive = it is not said from where. Choose the drive again.
change-not-no-minutes = the minutes are missing. Give them as in 40.
change-not-drive-told = somebody told in the chat how long this drive takes, and that counts. Tell the new time there, as in ‘the drive to the mill takes 40 min’.
change-invited = { $name } is added. Their invitation, good once: { $link } (code { $code }). Send it to them now, it is not shown again.
change-really = Change it now?
change-which = Which one do you mean?
change-who-may = { $who } can’t change that. Who may: { $names }.

# -- the stop log
button-log-stop = Log the stop
button-medic = I am a medic
log-offer = What did { $runner } do{ $place ->
    [none] {""}
   *[other] {" "}at { $place }
}? A press is kept at once; then how much, if you know. Or write it: ‘drank 500, ate half a banana, no ibuprofen’.
log-noted = Logged for { $runner }: { $what }.
noted-log = Logged: ‘{ $words }’.
log-more-ate = How much? Press grams of carbohydrate, or write what it was: ‘half a banana’.
log-more-drank = How much? Press, or write ml: ‘400’.
log-more-peed = What was it like?
log-more-mood = How is the mood?
log-more-feet = How are the feet?
log-more-painkiller = Which one? Press, or write it with the dose.
log-more-slept = How long? Press, or write minutes.
log-more-changed = What? Press, or write it.
log-item-ate = Ate
log-item-drank = Drank
log-item-peed = Peed
log-item-mood = Mood
log-item-feet = Feet
log-item-painkiller = Painkiller
log-item-slept = Slept
log-item-changed = Changed
log-ate = ate, amount not said
log-ate-none = nothing eaten
log-ate-amount = ate { $amount } g of carbohydrate
log-ate-words = ate { $words }
log-drank = drank, amount not said
log-drank-none = nothing drunk
log-drank-amount = drank { $amount } ml
log-drank-words = drank { $words }
log-peed = peed
log-peed-none = not peed
log-peed-good = peed, clear
log-peed-bad = peed, dark
log-peed-words = peed: { $words }
log-mood = mood
log-mood-good = mood good
log-mood-so-so = mood so-so
log-mood-bad = mood low
log-mood-words = mood: { $words }
log-feet = feet
log-feet-good = feet good
log-feet-so-so = feet sore
log-feet-bad = feet bad
log-feet-words = feet: { $words }
log-painkiller = a painkiller
log-ate-unsaid = no food logged
log-drank-unsaid = no drink logged
log-painkiller-unsaid = no painkiller logged
log-painkiller-none = no painkiller
log-painkiller-words = painkiller: { $words }
log-slept = slept
log-slept-none = no sleep
log-slept-amount = slept { $amount } min
log-slept-words = slept: { $words }
log-changed = changed something
log-changed-words = changed: { $words }
log-word-ibuprofen = ibuprofen
log-word-paracetamol = paracetamol
log-word-socks = socks
log-word-shoes = shoes
log-word-top = top
log-word-battery = torch battery
log-with = { $what } ({ $words })
log-at = { $what }, { $when }
log-since = Log since { $since }: { $what }.
log-nothing = Nothing is logged of what { $runner } ate, drank or took.
log-row = { $when }{ $place ->
    [none] {""}
   *[other] , { $place }
}: { $what } ({ $by })
log-medic = { $who } was shown this as a medic ({ $when }).
log-not-advice = This is what was logged, not all there was. What to do about it is for the race’s medics.
log-for-medics = What { $runner } ate, drank and took is for her crew, and for a medic who has her. If you are that medic, press: it is kept that you said so, and her crew can see it.
log-flag-painkiller-and-no-pee = CAUTION: a painkiller, and no pee logged since { $since }. No further painkiller without the race’s medics: show them this.
log-flag-no-pee = CAUTION: not peed since { $since }, as logged. Show this to the race’s medics.
log-flag-dark-pee = CAUTION: dark pee logged at { $since }. Show this to the race’s medics.
log-flag-painkillers-again = CAUTION: more than one painkiller, the last at { $since }. No further one without the race’s medics.
log-flag-much-drunk = CAUTION: more than 750 ml an hour logged since { $since }. She drinks to thirst, no more; swollen, sick, headache or confused: medics at once.
log-flag-not-eating = Nothing eaten after { $since }, as logged: see the card for the stomach.
look-back-kept = Kept: { $kept }. It stands on the page that is made of the race. Thank you.
look-back-well = what was well
look-back-wrong = what went wrong
look-back-next = what you will do otherwise
follow-given =
    The link for followers: { $link }
    It shows at which points you were, half an hour late and to a quarter of an hour: no position, nobody of your crew. An earlier link ends. ‘Take the link back’ ends this one.
follow-taken-back = The link for followers is taken back. Whoever opens it sees nothing of you.
follow-not-yours = Only the runner gives followers a link, or takes it back.

## A line of the event file, word for word
written = { $kind ->
    [rule] The race’s note says: { $text }.
    [must] She must have with her, by the plan: { $text }.
    [transport] Whoever retires { $name ->
        [none] is taken back
       *[other] at { $name } is taken back
     }, by the plan: { $text }.
    [parking] The plan says of parking at { $name }: { $text }.
    [permit] The plan says of a permit at { $name }: { $text }.
    [surface] The plan says of the ground at { $name }: { $text }.
    [escape] The plan says of the way off { $name }: { $text }.
    [pace] { $name } runs with her, by the plan: { $text }.
    [travel] The plan says of the journey: { $text }.
    [beds] The plan says of beds: { $text }.
    [entry] The plan says of registration: { $text }.
    [missed] If she is missed at { $name }, the plan says: { $text }.
    [kit] The plan has for { $name }: { $text }.
    [food] The plan has to eat and drink at { $name }: { $text }.
    [way] The plan says of the way to { $name }: { $text }.
    [bag] Her drop bag at { $name }, by the plan: { $text }.
    [carries] { $name } carries, by the plan: { $text }.
    [fuel] The plan says of food from { $name } on: { $text }.
    [prompt] The plan says, for ‘{ $name }’: { $text }.
    [hear] { $name } wants to hear, by the plan: { $text }.
    [not_hear] { $name } does not want to hear, by the plan: { $text }.
    [card] The plan says, for ‘{ $name }’: { $text }.
   *[other] { $name ->
        [none] The plan says: { $text }.
       *[other] The plan says of { $name }: { $text }.
     }
 }
written-sleep = { $person } means to sleep from { $start } to { $end }.
needed-next = Yes, next there:
needed-nowhere = No meeting of yours is left.
needed-yes = Yes, you are down for { $place }.
needed-no = No, you are not down for { $place }. { $crew ->
    [none] No meeting is planned there.
   *[other] Down for it: { $crew }.
 }
parking-else-unknown = I know no other place to park: the plan has none. { $name } may know: { $phone }.
crew-food-unknown = The plan says nothing of food for crew, only of hers. Somebody at the place may know.
fetch-unknown = Nobody is written down to fetch her. { $name } decides how she gets off: { $phone }.
fetch-access = { $place } is a crew point: crew can drive there.
fetch-no-access = { $place } is no crew point: no car of yours goes there by the plan.
fetch-nearest = Nearest by the plan:
near-there = { $name }, at { $place }{ $since ->
    [none] {""}
   *[other] {" "}since { $since }
 }{ $phone ->
    [none] {""}
   *[other] {": "}{ $phone }
 }
near-bound = { $name }, bound for { $place }{ $phone ->
    [none] {""}
   *[other] {": "}{ $phone }
 }
on-spot-nobody = I do not know of anybody who is at a point now.
on-spot-search-unknown = Who is out looking for her I do not know; { $name } may: { $phone }.
next-bit = Next: { $place }, about { $distance } from { $last }.
ground-else = More than that the plan does not say of the ground.
took = { $runner } took { $length }, from { $start }.
took-so-far = { $runner } has been under way for { $length }, since { $start }.
late-from = { $runner } counts as late if nothing is heard from { $place } by { $when }.
