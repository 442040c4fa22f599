# The plan and the crew’s movements. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

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
plan-ascent = ascent: the organiser has { $stated }, the route measures { $ours } ({ $percent } %). Theirs may count every small rise of a map or a watch, ours is smoothed so that noise makes no climb, or the route leaves some out; the pace goes by ours, a past race’s ascent is compared with theirs
plan-past-ascent = the { $had } of { $name } are as its organiser states them, the { $ours } of this course as the route measures, which is often less: write the organiser’s figure as stated_ascent_m, and like is compared with like
plan-short-race = the rule’s exponent (1.06) was fitted on races up to about 4 h and is hopeful this far beyond: the range is wider for it
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
plan-fuel-untrained = from { $place }: { $amount } g carbohydrate an hour is more than the { $trained } g that were trained
plan-fuel-apart = from { $place }: what she eats makes { $made } g carbohydrate an hour, the plan says { $amount } g
plan-fuel-caffeine-dose = from { $place }: { $thing } holds { $amount } mg caffeine, more than { $most } mg at once (adults who are not pregnant: { $source })
plan-fuel-caffeine-day = { $amount } mg caffeine in 24 hours is more than { $most } mg (adults who are not pregnant: { $source }); they are reached between { $place } and { $next }, and coffee and cola at stops come on top
plan-fuel-dry = { $place } to { $next }: { $count } bottles for up to { $takes }, and she carries { $has }: where is water on the way?
plan-fuel-do-above = Plan less an hour from there, or correct what one of the things holds
plan-fuel-do-below = Plan more an hour from there, unless what she eats at stops makes it up
plan-fuel-do-untrained = Plan less, or try it in training and write trained_carbohydrate_g_per_h anew
plan-fuel-do-apart = Correct the figure an hour, or per_h and what each thing holds
plan-fuel-do-caffeine-dose = Plan a smaller dose, or correct caffeine_mg
plan-fuel-do-caffeine-day = Plan fewer an hour, or begin with them later
plan-fuel-do-dry = Ask where there is water and add it as a point, or write how many bottles she carries: bottles = { $count }
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
cut-off-earlier = For 9 chances in 10, if she goes on: { $points }.
plan-goals = Goals{ $stages ->
    [yes] , the sum of the stages
   *[no] {""}
 }: A { $a } (a good day), B { $b } (the target), C { $c } (a hard day).
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
plan-torch-others = Torch in other goals: { $about }.
plan-torch-other = { $goal ->
    [limit] just in by the time limit
   *[other] { $goal }
 } from { $from } ({ $from_when }) to { $to } ({ $to_when })
plan-no-torch = No torch is needed at this pace; carry what the rules ask for.
plan-no-torch-b = In goal B no torch is needed, at other paces there is one.
plan-changes = Goals change over: out later than this, the next goal holds.
plan-change = { $place }: { $goals }
plan-change-goal = { $goal } until { $when }
plan-latest = out of { $place } by { $when }
plan-latest-none = out of { $place }: no time is early enough
plan-odds = Cut-off { $edge } at { $place } by { $when }: { $odds } to be in time if she goes on; { $going } that she goes on to there.
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
plan-move-opens = crew are let in at { $place } only from { $opens }: { $p } to be there before her
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
plan-move-awake-drives = { $person } will have been awake for { $least } to { $most } at the ends of these drives
plan-move-two-runners = one crew meets { $runner } and { $other }: the odds are counted as if their nights had nothing in common; weather that slows both is not in them
plan-move-awake-assumed = { $person } is taken to be awake since { $since }: say when they get up or mean to sleep (awake_since, sleeps)
plan-move-swap = { $person }, in the same car, drives instead
plan-move-sleep = { $person } sleeps before this drive, from { $from } to { $until }
plan-move-no-access = crew have no access to { $place }
plan-move-crowd = { $count ->
    [one] one person is
   *[other] { $count } people are
 } to meet her at { $place }
plan-move-closes-first = { $place } closes before the rules allow crew
plan-move-closed-before-her = { $place } is closed to crew before she is likely to come, { $likely }
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

## Kit that the dark, the cold or the wet needs, and where she gets it
plan-kit-missing = { $runner } needs { $thing ->
    [torch] a torch
    [warm] a warm layer
   *[wet] a rain jacket
 } { $about }, and no list says that she has it by then
plan-kit-late = { $runner } needs { $thing ->
    [torch] a torch
    [warm] a warm layer
   *[wet] a rain jacket
 } { $about }, and gets it only at { $place } ({ $at }), { $got ->
    [one] { $given }
   *[many] between { $given } and { $last }
 }
plan-kit-when = from { $from }{ $clock ->
    [one] {""}
   *[many] {" "}to { $to }
 }{ $road ->
    [one] {" "}at { $least }
   *[many] {", "}between { $least } and { $most } by her pace
 }{ $paces ->
    [all] {""}
   *[some] {" "}({ $about })
 }
plan-kit-pace = { $goal ->
    [limit] just in by the time limit
   *[other] goal { $goal }
 }
plan-kit-do-give = Write it in the kit of { $place } ({ $at }), or before, or in carries = ["{ $thing ->
    [torch] head torch
    [warm] warm layer
   *[wet] rain jacket
 }"] if she has it on her from the start
plan-kit-do-carry = No crew or bag meets her before: write it in carries = ["{ $thing ->
    [torch] head torch
    [warm] warm layer
   *[wet] rain jacket
 }"] of [[runners]]
plan-kit-battery = The lights { $runner } has by then are burnt out and it is dark { $about }; { $lasts } are listed in all
plan-kit-do-battery = Add a torch or battery with its hours to a meeting, a bag or carries, or write in more hours
plan-kit-hours = { $runner } is in the dark for up to { $dark }, and nothing says how long “{ $torch }” lasts
plan-kit-do-hours = Write its hours, those of its batteries too: { "{" } name = "head torch", hours = 8 { "}" }
plan-kit-required = The race asks for { $thing }, and no list of { $runner }’s has it
plan-kit-required-late = The race asks for { $thing }, and { $runner } has it only from { $place }
plan-kit-required-taken = The race asks for { $thing } all the way, and crew take it from { $runner } at { $place }
plan-kit-do-keep = Leave out the line with take_back there, or hand her another { $thing } at the same stop
plan-kit-do-required = Write it in carries, in the race’s own words: carries = ["{ $thing }"]
plan-kit-taken-none = At { $place } crew are to take { $thing } back from { $runner }, who has not got it there
plan-kit-do-taken = Take it back at a later stop, or write where she gets it: carries = ["{ $thing }"]
plan-kit-no-spare = { $runner } has one light for the night ({ $torch }) and no spare
plan-kit-do-spare = Add a second torch or a battery
# The same on paper, for people who have no file before them.
plan-kit-do-give-paper = Have it brought to { $place } ({ $at }) or before, or she carries it from the start
plan-kit-do-carry-paper = No crew or bag meets her before: she has to carry it from the start
plan-kit-do-battery-paper = Have one more torch or a charged battery brought, or she carries it from the start
plan-kit-do-hours-paper = Settle before the start which light and which batteries last that long
plan-kit-do-keep-paper = Leave it with her, or hand her another there
plan-kit-do-required-paper = Pack it for the start: the race may ask her for it there
plan-kit-do-taken-paper = Settle before the start where she gets it
plan-kit-do-spare-paper = Pack a second torch or a battery

# -- ready for this course?
ready-no-runs = Ready for this course? No recordings of hers are named: own_runs = ["long.gpx"] in her table, and they are held against it.
ready-missing = Ready for this course? { $count ->
    [one] One thing
   *[other] { $count } things
} she has not done yet in the recordings named:
ready-enough = Ready for this course? The recordings named have all it asks:
ready-feet = longest time on her feet { $had }{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, the plan is { $course }
ready-climb = climb on a long run { $had } m a km{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, the course has { $course }
ready-steep = down on steep ground (1 in 5 and more) { $had } m in one run{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, the course has { $course } m
ready-dark = in the dark { $had } in one run{ $file ->
    [none] {""}
   *[other] {" "}({ $file })
}, the plan has { $course }
ready-by = { $what }: once about { $asked } by { $by }.
ready-too-late = { $what }: about { $asked } was to be by { $by }, which is over. Not now: plan slower for it.
ready-is-enough = { $what }: enough.
ready-practice = Shares and dates are common practice, no source, and no training plan. Ill or in pain: ask a doctor, not this.
