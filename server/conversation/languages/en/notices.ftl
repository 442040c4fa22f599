# What is told unasked. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## Notices: meetings
leave-soon = Get ready: leave by { $leave_by } for { $place } to meet { $runner }, be there from { $be_there }.
leave-soon-here = Get ready: be at { $place } from { $be_there } to meet { $runner }.
leave-now = Leave now for { $place } to meet { $runner }: be there from { $be_there }.
leave-now-by = Leave by { $leave_by } for { $place } to meet { $runner }: be there from { $be_there }.
leave-now-still = Leave-by for { $place } was { $leave_by }. At a normal drive from now you are there at { $there }, before { $runner } is likely to come.
leave-now-late = Leave-by for { $place } was { $leave_by }. At a normal drive you may be there after { $runner } comes in. Drive as always: getting there safely matters more.
meeting-she-comes = { $runner } at { $place }: { $window }.
meeting-drive = Drive { $length }{ $from ->
    [none] .
   *[other] {" from "}{ $from }.
 }
meeting-no-drive = Nobody has confirmed how long the drive is, so there is no leave-by. Tell me how long it takes.
meeting-wait = Wait until { $until }.
meeting-wait-short = Wait until { $until }, then go on to your next meeting: { $odds } that { $runner } has come by then.
meeting-kit = Bring: { $kit }.
meeting-take-back = Take back there: { $kit }.
meeting-food = Food: { $food }
meeting-if-missed = If missed: { $text }
meeting-no-signal = No phone signal at { $place }.
be-there = Be at { $place } from { $be_there } to meet { $runner }.
move-on = Move on from { $place }: { $runner } has very likely gone by unseen.
move-on-closes = Leave { $place }: crew access closes at { $until }. { $runner } has not been seen there.
unseen = Nobody has seen { $runner } since { $when } ({ $ago }).
stay = Stay at { $place }: nobody has seen { $runner } since { $when } ({ $ago }).
stay-go = You may go on{ $next ->
    [none] {""}
   *[other] {" to "}{ $next }
 }: { $names } { $count ->
    [one] stays
   *[other] stay
 } at { $place } for { $runner }.
stay-sought = An alarm is open: she is being looked for.
stay-until = Until she is heard of, or race control says where she is. When she comes, write ‘she is in’.
stay-may-go = { $names } may go on{ $next ->
    [none] .
   *[other] {" to "}{ $next }.
 }
stay-not-next = Do not leave for { $next } before that.
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
lost-access-closed = Crew access there is closed, or closes before she is likely to come.
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
brief-nothing-heard = If you hear nothing: keep to these times, then drive on. If she does not come, tell race control and your crew once you have signal.
brief-nothing-heard-plain = If you hear nothing: keep to these times, then drive on. If she does not come, tell race control once you have signal.
wake-up = Time to wake up: leave by { $leave_by } for { $place } to meet { $runner }.
wake-up-there = Time to wake up: be at { $place } from { $be_there } to meet { $runner }.
wake-up-answer = Answer ‘awake’, or somebody else will be asked to go.

## Notices: a driver, a car or a pacer has fallen out
uncovered = Nobody goes to { $place } to meet { $runner } now: { $who } can’t{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-still = Still nobody goes to { $place } to meet { $runner }: { $who } can’t{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-part = { $goes } { $count ->
    [one] goes
   *[other] go
 } to { $place }, but without { $who }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-pacer = No pacer for { $runner } from { $place }: { $who } can’t{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 }
uncovered-you-could = You could: { $how }.
uncovered-first = Press ‘I go’ and it is yours; the first who does has it.
uncovered-others = Could go: { $others }.
uncovered-other = { $who }, { $how }
uncovered-nobody = NOBODY is left who could be there in time. { $runner } will have to do without.
uncovered-no-pacer = Nobody is left who could pace. { $runner } will go on alone.
uncovered-kit-in = For there, in { $car }: { $kit }.
uncovered-fetch = Fetch them on your way, or bring the like.
uncovered-also = Open as well: { $places }.
uncovered-also-at = { $place } (about { $when })
uncovered-kit = She needs there: { $kit }.
uncovered-words = { $who } wrote: ‘{ $words }’
uncovered-you = { $who } says that you can’t come to { $place }{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 } You get no leave-now for it, and others are asked.
uncovered-you-wrong = If that is wrong, press ‘I go’.
uncovered-you-drive = You drive to { $place } now: { $who } can’t.
uncovered-other-drives = { $driver } drives to { $place } now: { $who } can’t.
uncovered-without = You go to { $place } without { $who }.
her-all = Nobody of yours will be at { $place }.
her-pacer = No pacer at { $place }: { $who } can’t run.
her-kit = Not everything will be at { $place }.
uncovered-her-lacks = Not there: { $kit }.
uncovered-her-before = Ask for what you need at { $place }: those who meet you there know.
uncovered-her-nobody = Nobody of yours meets you before. Ask at the aid stations, and plan with what you carry.
uncovered-tell = Tell { $runner } at { $before }: { $what }.
uncovered-give = Give her before she goes, from what you have: { $kit }.
lacks-all = nobody of hers will be at { $place }
lacks-pacer = no pacer at { $place }, { $who } can’t run
lacks-kit = not everything will be at { $place }
could-leave-by = leave by { $when }, { $drive }
could-now = leaving now, there about { $when }, { $drive }
could-estimated = leaving now, there about { $when }, { $drive } by estimate, nobody has confirmed it
could-after = after the meeting before it, { $drive }
could-unknown = how long the drive is, nobody knows
could-drive = { $length } drive{ $from ->
    [none] {""}
   *[other] {" from "}{ $from }
 }
could-odds = { $how }; { $odds } that { $runner } has not gone on by then
could-gives-up = You would then miss: { $places }.
alone = { $who }, on foot with { $runner }, can’t go on{ $why ->
    [none] .
   *[other] {" ("}{ $why }).
 } { $runner } may be alone now.
alone-ask = Ask { $who } where both are, and who needs what{ $phone ->
    [none] .
   *[other] {": "}{ $phone }.
 }
alone-numbers = Hurt: { $emergency } first, then { $name } { $phone }. Whoever meets { $runner } next looks out for both.
fell-out-car = the car
fell-out-driver = not able to drive
fell-out-pacer = not able to run
fell-out-own-safety = not well, or hurt
covered = { $who } goes to { $place } to meet { $runner }, for { $gone }.
covered-you = You go to { $place } to meet { $runner }, for { $gone }. All have been told.
covered-her = { $who } comes to { $place } for { $gone }.
covered-times = Leave by { $leave_by }, be there from { $be_there }.
covered-be-there = Be there from { $be_there }.
covered-leave-now = Leave when you are ready, be there from { $be_there } if the drive allows. Drive as always.
covered-back = { $who } { $count ->
    [one] goes
   *[other] go
 } to { $place } to meet { $runner } after all, as planned.
covered-back-her = { $who } { $count ->
    [one] comes
   *[other] come
 } to { $place } after all, as planned.
covered-not-you = You need not go.
lost-uncovered = Nobody goes there now: who was to can’t come.

## Notices: a new version of the event file during the race
new-version = The plan has changed for you (version { $version }).
new-item = { $place }, { $runner }, { $what }: was { $was ->
    [none] nothing
   *[other] { $was }
 }, now { $now ->
    [none] nothing
   *[other] { $now }
 }.
new-meeting = New: { $place }, { $runner }: { $what }.
new-meeting-gone = No longer yours: { $place }, { $runner } (was { $what }).
# The same for the runner, who is met.
new-met = You are met there now: { $place } ({ $what }).
new-met-gone = Nobody meets you there any more: { $place } (was { $what }).
new-post = Your post: was { $was }, now { $now }.
new-what-place = place
new-what-parking = car park
new-what-crew = who goes
new-what-car = car
new-what-from = coming from
new-what-drive = drive there
new-what-kit = bring
new-what-take-back = take back
new-what-food = food
new-what-pacer = pacer
new-what-if-missed = if missed
new-target = { $runner }’s target: was { $was ->
    [none] none
   *[other] { $was }
 }, now { $now ->
    [none] none
   *[other] { $now }
 }.
new-kit-left = { $place }, { $runner }: in { $car }, which does not come there now: { $things }. Hand it over before.
new-time = { $place }, { $runner }: { $now ->
    [none] no time to leave yet, as nobody has confirmed the drive
   *[other] leave by { $now }
 }{ $was ->
    [none] {""}
   *[other] {" "}(was { $was })
 }, be there from { $be_there }.
new-free = You have nowhere to go any more.

## Notices: where she is
arrived = { $runner } is in at { $place }, { $when }, reported by { $who }.
arrived-through = { $runner } went through { $place } at { $when } without staying, reported by { $who }.
arrived-stop = Planned stop: { $length }.
arrived-kit = Have ready: { $kit }.
arrived-next = Then { $place }: { $window }.
left = { $runner } is out of { $place }, { $when }, reported by { $who }.
left-next = Next { $place }: { $window }.
left-next-her = { $runner } next at { $place }: { $window }.
finished = { $runner } has finished: { $when }, reported by { $who }.
finished-crew = Tell me when you have her with you (‘we have her’).
word-of-her = Word of { $runner }, { $when }, reported by { $who }: ‘{ $words }’
word-rests = Resting since { $since }{ $until ->
    [none] .
   *[other] {", until "}{ $until }{" as was said."}
 }
word-moves = Moving again since { $since }.
word-at = She is at { $place }, in since { $since }.
word-no-rest = Not resting, as far as is known.
word-retired = She has retired, and nobody has said yet that she is with them.
word-next = Next for you, { $place }: { $window }.
word-taken-back = Taken back: the word of { $runner }, { $when }, no longer counts: ‘{ $words }’
retired = { $runner } has retired at { $place }, { $when }, reported by { $who }.
retired-nowhere = { $runner } has retired, { $when }, reported by { $who }; where is not known.
retired-how = Why: { $how }.
retired-words = They wrote: ‘{ $words }’
retired-asked = { $you ->
    [yes] Can you fetch her{ $place ->
        [none] {""}
       *[other] {" "}at { $place }
     }? You are asked first: press who goes.
   *[no] Asked to fetch her{ $place ->
        [none] {""}
       *[other] {" "}at { $place }
     }: { $who }{ $car ->
        [none] {""}
       *[other] {" "}({ $car })
     }.
 }
retired-drive = { $said ->
    [yes] From { $from }
   *[no] From { $from }, by the plan
 }: { $length ->
    [none] the drive is not known.
   *[other] { $length }{ $sure ->
        [yes] .
       *[no] , an estimate nobody has confirmed.
     }
 }
retired-is-there = { $you ->
    [yes] You are there{ $said ->
        [yes] .
       *[no] {" "}by the plan.
     }
   *[no] { $said ->
        [yes] They are there.
       *[no] By the plan they are there.
     }
 }
retired-busy = Before that they are to meet another runner at { $place }: say so if it can't be done.
retired-else = If not, next: { $who }.
retired-goes = { $you ->
    [yes] You fetch { $runner }
   *[no] { $who } fetches { $runner }
 }{ $place ->
    [none] {""}
   *[other] {" "}at { $place }
 }: there about { $there }.
retired-where-not-said = Where she is was not said. Last known: { $fact } { $when }, reported by { $who }.
retired-bring = Bring: { $kit ->
    [none] {""}
   *[other] { $kit };{" "}
 }dry clothes, a blanket, something warm to drink.
retired-transport = The race’s own transport: { $words }
retired-no-car = No car of yours comes to { $place }: how she gets to { $to }, or is fetched from there, { $name } says ({ $phone }).
retired-stay = Stay there and keep warm. Write to me when somebody is with you.
retired-no-pick-up = Nobody is down to fetch her yet. Who goes?
retired-in-hand = She is with us: somebody has her.
retired-not-in-hand = She is watched until somebody has her. Write ‘we have her’ when you do.
retired-race-control = Race control knows.
retired-has-her = { $who } has { $runner }, { $when }.
retired-in-hand-taken-back = Taken back: nobody has { $runner } after all. She is watched again until somebody has.
retired-waits-hand = Nobody has said yet that they have { $runner }. Who has her writes ‘we have her’.
retired-waits-race-control = Race control still has to know that { $runner } has retired. You tell them now: { $name } { $phone }. Answer ‘race control told’ when done.
retired-call-you = You tell race control: { $name } { $phone }. Answer ‘race control told’ when done.
retired-call-other = { $caller } tells race control; no need for you to ring there.
retired-tell-race-control = Race control has to know: { $name } { $phone }. Answer ‘race control told’ when done.
how-own-choice = her own choice
how-timed-out = timed out
how-withdrawn-by-medics-or-officials = withdrawn by medics or officials
how-did-not-start = did not start
how-not-said = not said yet
in-hand = { $runner } is with us: { $who } says so, { $when }.
in-hand-where = Where: { $place }.
in-hand-nowhere = Where was not said.
in-hand-words = { $who } wrote: ‘{ $words }’
in-hand-alarm = The alarm about { $runner } stays open all the same.
in-hand-calm =
    No alarm is open about { $runner }; you need do nothing, and leave for no meeting with her until she goes on.
    Whether she goes on was not said: for an hour her silence raises no alarm, then she is watched as before.
in-hand-still =
    Is { $runner } still with you? Your last word of it is of { $when }, and nobody has said whether she goes on.
    Press what holds, or write it. Without an answer she is watched from { $until } as if she had gone on.
in-hand-ask = To ask: { $who } { $phone }.
cut-off-falling = Cut-off at { $place }, { $edge } by { $cut_off }: { $odds } that { $runner } makes it, and falling.
cut-off-rising = Cut-off at { $place }, { $edge } by { $cut_off }: again { $odds } that { $runner } makes it.
cut-off-latest = For 9 chances in 10 she has to be out of { $place } by { $when }.
cut-off-not-possible = She can no longer be out of { $place } early enough for 9 chances in 10.
before-dark-crew = { $runner } may be in the dark before her torch: dark from { $dark }, and { $things } waits for her only at { $place }: { $window }
before-dark-give-crew = Get it to her at { $give } instead, { $when }: { $meets ->
    [none] nobody is planned to meet her there, so say who goes.
    [one] { $who } meets her there. Pass it on, or lend her one.
   *[other] { $who } meet her there. Pass it on to them, or lend her one.
 }
before-dark-none-crew = No crew point comes before that in the light. Go to { $place } early with it; tell the race’s people on the way that she has no light.
before-dark-here-crew = { $runner } is at { $here } now: give her a light there before she goes on.
before-dark-here-her = You are at { $here } now: take a light from there before you go on.
before-dark-holders = It is with { $who }, for the meeting at { $place }.
before-dark-her = You may be in the dark before your torch: dark from { $dark }, and { $things } waits only at { $place }: { $window }
before-dark-give-her = Ask for one at { $give }, { $when }{ $meets ->
    [none] {""}
    [one] : { $who } meets you there
   *[other] : { $who } meet you there
 }. Don’t go on into the dark without a light.
before-dark-none-her = No crew point comes before that. Ask for a light at the next aid station; don’t go on into the dark without one.
edge-in = in
edge-out = out
late = Has { $runner } been at { $place }? She is later than expected.
late-window = Expected: { $window }.
late-answer = Yes, not yet, or is nobody there to see?
late-home = { $runner } is late at { $place }, not overdue. This is no alarm.
tracker-quiet = Her tracker has sent nothing since { $when } ({ $ago }). That says nothing about her.
tracker-disagrees = A person and her tracker disagree: { $who } saw her at { $place } { $seen }; the tracker was { $km ->
    [none] off the course
   *[other] at { $km }
 } at { $when }.
stands = { $runner }’s tracker has not moved for { $length }{ $place ->
    [none] {""}
   *[other] {", near "}{ $place }
 }{ $km ->
    [none] {""}
   *[other] {", "}{ $km }
 }. That is longer than almost any stop.
stands-where = Place: { $at }. It has sent from there since { $since }, last { $until }.
stands-do = Do you know why? If she rests, write ‘she rests’; if you have seen her, where and when. The tracker may also lie somewhere without her.
late-home-do = Look at the race's own results, or ask { $name }, { $phone }: did she go through { $place }?
late-home-write = If so, write it here with the time, as in ‘through { $place } 02:10’.
late-home-next = If nothing is heard of her, the alarm comes at { $when }.
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
 } has moved{ $was ->
    [none] {""}
   *[other] {" from "}{ $was }
 }{ $until ->
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
race-change-all-anew = All times are worked out anew.
race-ended-crew =
    The planned meetings hold no longer, and no leave-now comes any more.
    Where to fetch { $runner }, race control or she herself says: ask before you drive, { $name } { $phone }.
    Whoever has her writes ‘we have her’; until then she is watched.
race-ended-runner = Where you go now, race control says: { $name } { $phone }. Tell your crew where to fetch you.
race-change-who = Reported by { $who }.

## Notices: corrections and doubts
correction-moved = Correction: { $runner } { $what } was { $now_at }, not { $was_at }. By { $by }.
correction-now = Correction: { $runner } { $what }: now { $now_at }. By { $by }.
correction-taken-back = Taken back: { $runner } { $what } is no longer so. By { $by }.
correction-taken-back-at = Taken back: { $runner } { $what } { $was_at } is no longer so. By { $by }.
correction-watch-on = She is watched again from here on.
correction-race-control = If race control was told that her race is over, tell them now that it is not: { $name } { $phone }.
unconfirmed = Please confirm: { $runner } { $fact }, { $when }? Reported by { $who }.
unconfirmed-seen = Please confirm: was { $runner } seen on the move, { $when }? Reported by { $who }.
unconfirmed-words = Written: ‘{ $words }’
unconfirmed-why = It does not count yet: { $doubt }.
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
doubt-not-named = it does not say for which runner
doubt-does-not-fit = it does not fit what was reported before
doubt-none = it has to be confirmed

## A cut-off missed: the fact, the rule, who decides
past-cut-off = { $fact }. Cut-off { $there ->
    [yes] there
   *[no] at { $place }
 }: { $edge } by { $cut_off }.
past-cut-off-in-after-it = { $runner } came in at { $place } { $when }
past-cut-off-out-after-it = { $runner } was out of { $place } { $when }
past-cut-off-there-after-it = { $runner } was still at { $place } { $when }
past-cut-off-not-in-by-it = { $seen ->
    [none] { $runner } was not at { $place } yet { $when }
   *[other] { $runner } was still at { $seen } { $when }
 }
past-cut-off-not-reported-out = { $runner } came in at { $place } { $when } and nobody has reported her out
past-cut-off-told-by = Reported by { $who }.
past-cut-off-rule = By the rule her race ends there; race control decides. Nobody has said yet whether { $runner } goes on.
past-cut-off-unsure = She may have left in time unseen. If she has not, race control decides whether { $runner } goes on.
past-cut-off-you-run = Stay at the point, or with the nearest marshal, until you have spoken to race control: { $name } { $phone }. Then tell me whether you go on.
past-cut-off-stay = Stay with her. Ask the race people there or { $name } { $phone }, then press what they say.
past-cut-off-ask = You find out: { $name } { $phone }. Then press what they say.
past-cut-off-decide = You decide: press what it is.
past-cut-off-wait = Asked to find out: { $who }. Stay where you are until you hear; she is watched meanwhile.
past-cut-off-nobody = Ask race control: { $name } { $phone }. Stay where you are until it is known; she is watched meanwhile.
past-cut-off-if-let-on = Only if { $runner } is let go on: leave by { $leave_by } for { $place }.
past-cut-off-over-goes-on = { $runner } goes on after the cut-off at { $place }: { $seen ->
    [none] { $who } says so, { $when }.
   *[other] seen at { $seen }, { $when }.
 } Her later points hold again.
past-cut-off-over-moved = { $runner } has not missed the cut-off at { $place }: it is { $edge } by { $cut_off } now. Her later points count again.
past-cut-off-over-wrong = Taken back: { $runner } has not missed the cut-off at { $place } ({ $edge } by { $cut_off }). What was reported was wrong.
button-goes-on = She goes on
button-race-over = Her race is over

## Said to have retired
unconfirmed-over = Has { $runner } retired{ $place ->
    [none] {""}
   *[other] {" "}at { $place }
 }? { $who } heard so from somebody else, { $when }.
unconfirmed-over-asks = Not confirmed: { $runner } is watched as before. Do you know it from her, or see her there? Then press.
alarm-past-cut-off = FACT: { $limit } Race control may have ended her race: ask there first.
alarm-said-over = Said to have ended her race, NOT CONFIRMED: { $fact }, { $when } ({ $ago }), { $hearsay ->
    [yes] { $who } heard it from somebody else
   *[no] reported by { $who }
 }: ‘{ $words }’
said-over-seen = { $runner } has been seen since{ $place ->
    [none] {""}
   *[other] : { $place }
 }, { $when }, reported by { $who }.
said-over-was = What was said of her having retired ({ $when }){ $words ->
    [none] {""}
   *[other] {" "}‘{ $words }’
 } does not hold.
doubt-hearsay = heard from somebody else
fresh-said-over = Said to have retired{ $place ->
    [none] {""}
   *[other] {" "}at { $place }
 }, { $when }, { $hearsay ->
    [yes] { $who } heard it from somebody else
   *[no] reported by { $who }
 }; not confirmed{ $words ->
    [none] .
   *[other] : ‘{ $words }’
 }
noted-hearsay = Only heard from somebody else: { $runner } has retired{ $place ->
    [none] {""}
   *[other] {" "}at { $place }
 }. It does not count yet; she is watched as before.
noted-hearsay-asked = Asked: { $names }.
ask-hearsay = Do you know it from her, or did you see her there? Then press.
button-from-her = I know it from her
position-yours = Noted as your place{ $place ->
    [none] {""}
   *[other] : { $place }
 }, not { $runner }’s.
says-to-you = { $who } says: ‘{ $words }’
says-back = { $who } takes that back: ‘{ $words }’
says-picture = { $back ->
    [yes] { $who } takes a picture back{ $words ->
        [none] .
       *[other] : ‘{ $words }’
    }
   *[no] { $who } sends a picture{ $words ->
        [none] .
       *[other] : ‘{ $words }’
    }
}
picture-where = { $page ->
    [none] The picture is on the race’s page, in the chat.
   *[other] The picture: { $page }
}
elsewhere-told = { $who } wants to meet somewhere else than { $place }: ‘{ $words }’
elsewhere-unchanged = Nothing in the plan is changed. Agree it among you; whoever keeps the plan can change it.
swap-asked = { $who } asks you to go to { $place } to meet { $runner }: ‘{ $words }’
swap-window = She is likely there { $window }.
swap-be-there = Be there from { $when }.
swap-refused = { $who } can’t go to { $place }. It stays with you.
reminder = You asked to be reminded ({ $when }): ‘{ $words }’
awaited = { $runner } { $fact }, { $when } (reported by { $by }).
awaited-soon = { $runner } at { $place }: { $window }.
awaited-unseen = { $runner } is past { $place }: nobody reported her there, and she was seen at { $then }.
awaited-over = { $runner }’s race is over, before she was { $edge ->
    [out] out of
   *[in] in at
} { $place }.
awaited-asked = You asked for that ({ $when }): ‘{ $words }’
# -- after the race
look-back = Looking back on { $runner } at { $event }, over { $when }, so that the next race is better. Three questions:
look-back-how = Answer each in a line that begins with its number, as in ‘3 leave earlier’. What you write stands on the page that is made of the race.
