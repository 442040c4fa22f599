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
paper-after-her = Leave once { $runner } has left { $place }{ $after ->
    [none] , at once
   *[other] , at the latest { $after } after
 }; not before. She means to leave it { $times }. If she has not come by { $until }, new times come by message.
paper-after-goal = { $goal } { $when }
paper-leave-once-title = For { $place } once { $runner } has left { $left }
paper-cell-leave-once = Leave
paper-cell-once = once she has left { $place }
paper-cell-after = { $after ->
    [none] at once
   *[other] at the latest { $after } after
 }; not before. Planned: { $times }
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
paper-window-how = First to last time: 1 time in 10 she comes earlier, 1 time in 10 later.
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
paper-head-silences = If nothing is heard of { $runner } (goals A / B / C)
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
