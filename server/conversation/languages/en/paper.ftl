# Sheets, calendars, files. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

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
paper-bag = To be had at { $place }{ $runner ->
    [none] {""}
   *[other] {" for "}{ $runner }
 }: { $things }
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
paper-after-her = Leave once { $runner } has left { $place }{ $after ->
    [none] , at once
   *[other] , at the latest { $after } after
 }; not before. She means to leave it { $times }. If she has not come by { $until }, new times come by message{ $signal ->
    [none] {" once you are where there is signal"}
   *[other] {""}
 }.
paper-after-other = Leave once { $runner } has left { $place }, and by { $until } at the latest, whether or not { $runner } has come. Planned to leave it { $times }.
paper-after-goal = { $goal } { $when }
paper-leave-once-title = For { $place } once { $runner } has left { $left }
paper-cell-leave-once = Leave
paper-other-car-once = { $crew }{ $car ->
    [none] {""}
   *[other] {" ("}{ $car }{")"}
 }: leave once { $runner ->
    [none] she
   *[other] { $runner }
 } has left { $place }, not before.
paper-cell-once = once { $runner ->
    [none] she
   *[other] { $runner }
 } has left { $place }
paper-cell-after = { $after ->
    [none] at once
   *[other] at the latest { $after } after
 }; not before. Planned: { $times }
paper-cell-after-other = by { $until } at the latest, come or not. Planned: { $times }
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
paper-pacer-way = You run with { $runner } from { $from } (planned { $start }) to { $to } ({ $end }), { $length }. { $before ->
    [none] {""}
   *[other] Be signed in { $before } before she comes.{" "}
 }Your own light, warm layer, food and drink: they are on no list of hers.
paper-rides-along = You ride along, { $car }{ $driver ->
    [none] {""}
   *[other] {" "}({ $driver } drives)
 }{ $origin ->
    [none] {""}
   *[other] {" "}from { $origin }
 }{ $leave ->
    [at] , leaving by { $at },
    [after] {" "}once she has left { $before },
   *[none] {""}
 } to { $places }: your own meeting is reached from there.
paper-pace-length = { $length } together
paper-stand-title = { $runner } at { $place }
paper-as-of = As planned on { $when }. Times move once she is on her way: ask before leaving.
paper-stays = It holds what was planned on { $when }; what is heard later is on the board and in the chat.
paper-window-how = First to last time: 1 time in 10 she comes earlier, 1 time in 10 later.
paper-aid = An aid to a crew, not a rescue service. In danger of life call { $emergency } first, then race control: { $name ->
    [none] {""}
   *[other] { $name }{", "}
 }{ $phone }.
paper-rescue-who = Mountain rescue
paper-rescue = { $who }: { $name ->
    [none] {""}
   *[other] { $name }{" "}
 }{ $phone }.
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
paper-stay = Stay: you are there already{ $place ->
    [none] , from the meeting before
   *[other] , from { $place }
 }.
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
paper-head-silences = If nothing is heard of { $runner } (goals A / B / C)
paper-silence-clock = These are the race’s times: { $when }.
paper-silence-after = After, then asked about at
paper-silence-likely = Likely there
paper-silence-asked = Crew asked
paper-silence-home = Home told
paper-silence-alarm = Alarm
paper-silence-point = { $place }, then { $next }
paper-silence-no-alarm = none
paper-silence-far = After { $place } the alarm comes { $length } past the likely time (goal B).
paper-silence-never = After { $place } silence alone raises no alarm (goal B).
paper-silence-nobody-reports = Nobody reports from { $places }.
paper-silence-may-be-missed = Those who report from { $place } miss about 1 runner in { $count }.
paper-silence-few-told = Most are not reported from { $place }: nobody is named who would.
paper-silence-uncertain = Her time there is uncertain: 1 in 10 would come over { $length } later.
paper-silence-shorter = One reporter more at { $place } brings it to { $when }.
paper-silence-told = Crew there who answer ‘not yet’ bring it to { $when }.
paper-head-phones = Telephones
paper-phone = { $name } ({ $parts }) { $phone }
paper-head-how = How each drive is made up
paper-allowed-by = Allowed: { $rules }.
paper-head-drives = Who drives where
paper-car = car
paper-who = who
paper-made-of = made up of
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

## Sheets, part by part
paper-kit-in-car = { $thing } ({ $car })
paper-blank-in = In
paper-blank-out = Out
paper-blank-ate = Ate
paper-blank-drank = Drank
paper-blank-peed = Peed
paper-fact-cut-off = Cut-off { $edge } { $when }
paper-fact-latest = Out by { $when }: 9 in 10 for the cut-off at { $place }
paper-fact-stop = stop { $length }
paper-odds-if = Odds of a cut-off hold if she goes on.
paper-fact-walk = { $length } on foot from the car
paper-fact-torch = TORCH before { $place }: { $goals }
paper-dark-already = { $goals } dark from here
paper-dark-always = dark from here at every pace
paper-dark-from = { $goals } from { $when }
paper-goal-limit = the time limit’s pace
paper-head-parking = Car parks
paper-parking-head = parking
paper-grid-ref = where (degrees; UTM)
paper-know = to know
paper-not-the-car-park = (the point, not the car park)
paper-signal-patchy = patchy signal
paper-signal-none = NO signal
paper-signal = signal
paper-directions = which way
paper-stands-by = { $length }{ $who ->
    [none] {", confirmed by nobody"}
   *[other] {", says "}{ $who }
 }
paper-head-ground = No signal, ways out
paper-stretch = { $name ->
    [none] {""}
   *[other] { $name }{", "}
 }{ $from } to { $to }: { $about }
paper-stretch-silent = no signal.
paper-stretch-out = Way out: { $way }.
paper-head-bags = Drop bags
paper-head-bad-moments = For bad moments, in { $runner }’s own words
paper-prompt = { $when }: “{ $words }”
paper-wants-to-hear = Good to hear: { $words }.
paper-not-to-hear = Never say: { $words }.
paper-head-emergency = Emergency card
paper-head-say = Read this out
paper-say-who = This is { $name }, { $parts }, { $event }.{ $phone ->
    [none] {""}
   *[other] {" My number is "}{ $phone }.
 }
paper-say-runner = It is about { $runner }
paper-say-runner-blank = It is about ____________________, bib ______.
paper-say-medical = Medical note: { $note }
paper-say-what = What has happened: ______________________________ Is she awake, does she breathe normally: ______________
paper-say-where = She is at: ______________________________ (point, km, or the grid below)
paper-say-seen = Last seen at ____________________ at ____:____ by ____________, heading for ____________________
paper-say-then = They hang up first. Then call race control. Stay by the phone, keep it free.
paper-head-places = Places
paper-km = km
paper-escape = way out
paper-head-do = What you do
paper-home-reach = Be reachable from { $from } to { $to }: phone charged, loud, free. Tell the crew if you can’t be.
paper-home-late = ‘Late’ is news, not an alarm: crew are asked first, and the message says where to look.
paper-home-alarm = An alarm asks you by name: answer it. After { $length } without an answer the next person is asked.
paper-home-calls = { $mine ->
    [yes] You are who calls race control: { $name ->
        [none] {""}
       *[other] { $name }{", "}
     }{ $phone }. Read out the emergency card.
   *[no] { $who } calls race control, { $phone }. If { $who } can’t be reached, whoever has the alarm does.
 }
paper-home-again = Whoever has the alarm looks again after { $length }, or says a time.
paper-home-ends = It is over only when somebody has her in sight or race control says so. Silence ends nothing.
paper-head-ladder = Who is asked about { $runner }, one after another
paper-step = step
paper-asked-after = asked after
paper-at-once = at once
paper-phone-head = number
paper-sleeps = sleeps { $from } to { $to }
paper-calls-control = Calls race control.
paper-section = section
paper-carry-eat = carry, eat, drink
paper-at-the-stop = at the stop after it
paper-section-in = in { $when } (B), after { $takes }–{ $most }
paper-section-ground = { $km }, +{ $up } -{ $down } m
paper-section-through = through { $places }
paper-bottles-of = { $count ->
    [one] one bottle
   *[other] { $count } bottles
 }
paper-from-the-start = On you from the start: { $things }.
paper-go-through = go through
paper-crew-there = Crew: { $crew }
paper-take = Take: { $things }
paper-give-for-the-way = Give her for the way: { $things }
paper-give-back = Give back: { $things }
paper-pacer-joins-her = { $who } runs with you from here
paper-from-bag = From the drop bag: { $things }
paper-post-note = Note bib and time of everybody who comes in or goes out, also of who does not stop. Report it as agreed.
paper-post-miss = Who is expected and has not come by the last time below: say so to race control. Who has left by another way too.
paper-post-danger = Hurt, ill, confused or very cold: they stay with you, fetch the medics, call the numbers above.
paper-post-cut-off = After a cut-off race control decides. Nobody is sent on or sent away by you alone.
paper-post-none = Your point is not in the event file: race control tells you. Whom to expect is on the sheet made once it is there.
paper-post-then = Next: { $place }, { $km } further
paper-bib-head = bib
paper-runner-head = runner
paper-expect-from = from (A)
paper-expect-likely = planned (B)
paper-expect-until = last (C)
paper-in-head = in
paper-out-head = out

## Lists
paper-lists = lists
paper-no-fuel = No fuel plan is in the file: what she means to eat and drink an hour makes these lists ([[runners.fuel]]).
paper-head-fuel-list = Fuel by section, an hour each
paper-carbohydrate-h = carb. g/h
paper-fluid-h = fluid ml/h
paper-sodium-h = sodium mg/h
paper-caffeine-h = caffeine mg/h
paper-kcal-h = kcal/h
paper-head-ranges = Published ranges, to plan with; drink to thirst
paper-range-kcal = Energy { $low } to { $high } kcal/h: { $source }.
paper-range-carbohydrate = Carbohydrate { $low } to { $high } g/h, up to about 90 with mixed sugars by those who have trained it: { $source }.
paper-range-fluid = Fluid { $low } to { $high } ml/h, never a target: { $source }.
paper-range-sodium = Sodium: above { $most } mg a litre may be needed on long hot days: { $source }.
paper-range-caffeine = Caffeine: up to 200 mg at once, 400 mg in a day, adults who are not pregnant: { $source }.
paper-head-to-do = Before the race
paper-to-buy = To buy by { $day }
paper-to-charge = To charge by { $day }
paper-to-test = To test by { $day }
paper-head-shopping = Shopping
paper-shop-food = { $food } (for { $place }, { $crew })
paper-head-required = Required by the race
paper-required = { $name }{ $thing ->
    [none] : IN NO LIST
    [same] {""}
   *[other] : { $thing }
 }{ $place ->
    [none] {""}
   *[other] , only from { $place }
 }
paper-head-sleep = Sleep and feet
paper-who-sleeps = { $name } sleeps { $from } to { $to }
paper-feet = Shoes off and feet looked at: { $stops }
paper-feet-at = { $place } ({ $when })
paper-load-her = On { $runner } from the start
paper-load-bag = Drop bag { $place }
paper-load-car = In the { $car }
paper-load-for = For { $place }
paper-load-weight = : { $weight }{ $count ->
    [0] {""}
    [one] , one thing unweighed
   *[other] , { $count } things unweighed
 }
paper-label = { $bib ->
    [none] {""}
   *[other] { $bib }{" – "}
 }{ $place }
paper-takes-goals = takes B / C
paper-head-food-by-bag = Food, to last until the next bag or crew

## The brief
paper-brief = Crew brief
paper-brief-about = To be read before travelling
paper-part = part
paper-head-who = Who does what
paper-head-house = How we do it
paper-house-time = Leave by the sheet or the message, not by feeling. Messages are newer than paper.
paper-house-hurry = Nobody hurries on the road. A missed meeting is covered by the next one.
paper-house-cant = ‘I can’t’ is a good answer, given early: somebody else is asked at once.
paper-house-tired = Who is too tired to drive says so and does not drive. She can wait.
paper-house-seen = Say what you have seen, where and when: in, out, not here yet. A guess is called a guess.
paper-house-help = Danger of life: { $emergency } first, then race control, then the crew.
paper-head-travel = Travel
paper-head-beds = Beds
paper-head-entry = Entry
paper-head-also = Also
paper-head-rules = The race’s rules
paper-head-recce = Drives to try before
paper-recce = Drive these before the race, at the hour they will be driven where it is dark then; write the minutes in, and say them in the chat: ‘the drive to the finish takes 40 min’.
paper-stands-by-head = who stands by it
paper-driven-at = driven by
paper-measured = measured
paper-nobody-yet = NOBODY YET
paper-head-sleeps = Who sleeps when

## Afterwards
paper-afterwards = how it went
paper-head-sections = Plan and fact by section
paper-head-stops = Stops
paper-planned-head = planned
paper-took = took
paper-over = over
paper-from-to = { $from } – { $to }
paper-halves = The second half of the way against the first: { $fact } % of time; by plan { $planned } %.
paper-window-first = first
paper-window-last = last
paper-head-windows = The windows’ own score
paper-windows-score = { $inside } of { $count } arrivals lay between first and last time (8 in 10 should); the likely time was off by { $off }, half of them less.
paper-likely-head = likely
paper-came = came
paper-inside = inside
paper-inside-yes = yes, { $off }
paper-inside-no = NO, { $off }
paper-head-told = Messages, and how soon they were answered
paper-messages = messages
paper-asked-head = asked to answer
paper-answered = answered
paper-how-soon = half of them within
paper-slowest = slowest
paper-head-written = Written on the way
paper-word = { $when } { $who }: { $words }
paper-head-log = What was logged at the stops
paper-when = when
paper-logged = Logged
paper-intake-carbohydrate = Carbohydrate: { $value } g an hour as logged ({ $low } to { $high } in the two halves of the race). What nobody logged is not in it.
paper-intake-fluid = Fluid: { $value } ml an hour as logged ({ $low } to { $high } in the two halves of the race). What nobody logged is not in it.
paper-head-next = For the next plan
paper-next = Write it under [[runners]] of the next event file: { $line }
paper-head-questions = Three questions to each
paper-ask-well = What went well?
paper-ask-wrong = What went wrong, or nearly?
paper-ask-next = What will you do otherwise next time?
paper-all-stops = all of them
