# What is wrong with a file, and what to do about it: `wrong-` and `do-`. Values come in as they stand in the file.

### event

## any key
wrong-missing = '{ $key }' is missing
wrong-no-text = { $value } is no text
do-put-quotes = Put it in quotes: { $key } = "{ $value }".
wrong-text-holds-control-character-u = the text holds the control character U+{ $character }
do-type-text-anew = Type the text anew.
wrong-text-characters = the text has { $count } characters
do-keep-it-to = Keep it to { $most }.
wrong-text-more-line = the text has more than one line
do-write-line = Write it on one line.
wrong-no-number = { $value } is no number
wrong-number-outside = { $value } is outside { $low } to { $high }
do-give-within-range = Give { $key } within that range.
wrong-no-whole-number = { $value } is no whole number
do-write-without-decimals = Write it without decimals.
wrong-neither-true-nor-false = { $value } is neither true nor false
do-write-true-false-without-quotes = Write true or false, without quotes.
do-write-hours-minutes = Write hours and minutes, as in "29:00".
wrong-no-list-texts = { $value } is no list of texts
do-write-list-of-texts = Write { $key } = ["...", "..."].
do-write-own-line-below = Write { $key } = {"{"} ... {"}"}, or [{ $head }] on its own line below the [[{ $listed }]] it is of.
do-begin-each-own-line-below = Begin each one with [[{ $head }]] on its own line below the [[{ $listed }]] it is of.
do-write-own-line = Write [{ $key }] on its own line, or { $key } = {"{"} ... {"}"}.
wrong-no-list-tables = '{ $key }' is no list of tables
do-begin-each-own-line = Begin each one with [[{ $head }]] on its own line.
wrong-too-many = { $count } { $key } are too many
do-keep-them = Keep them to { $most }.
wrong-time-out-range = the time is out of range
wrong-key-not-known = the key '{ $key }' is not known
do-did-mean = Did you mean '{ $near }'?
do-known-here = Known here: { $known }.
do-stilepost-keys-says-what-each = `stilepost keys { $table }` says what each means.
do-write = Write one of: { $words }.
do-use = Use one of: { $known }.
wrong-not-known-here = '{ $word }' is not known here
wrong-no-table = { $value } is no table

## times
wrong-no-length-time = '{ $text }' is no length of time
do-write-hours-minutes-29-00 = Write hours and minutes, as in "29:00" or "6:30".
wrong-no-pace = '{ $text }' is no pace
do-write-minutes-seconds-per-km-10 = Write minutes and seconds per km, as in "10:50", or per mile, as in "14:00/mile".
wrong-text-no-time-of-day = '{ $text }' is no time of day
wrong-no-time-day = { $value } is no time of day
do-write-22-00 = Write { $key } = "22:00".
do-write-hours-minutes-09-30 = Write hours and minutes, as in "09:30" or "21:05".
do-write-11-30-sun-11 = Write "11:30", "Sun 11:30" or a date and time such as 2027-06-20T11:30.
wrong-no-moment = '{ $text }' is no moment
wrong-does-not-exist-clocks-go = { $wall } does not exist in { $zone }: the clocks go forward over it
do-take-time-before-after-hour = Take a time before or after the hour that is left out.
wrong-comes-twice-clocks-go-back = { $wall } comes twice in { $zone } as the clocks go back; the first is taken
do-if-second-meant-write = If the second is meant, write { $key } = { $offset }.
do-write-without-quotes = Write { $key } = { $meant }, without quotes.
do-write-date-time-without-quotes = Write date and time without quotes, as in { $key } = { $example }.
do-add-time-day-t05-00 = Add the time of day: { $key } = { $value }T05:00 is five in the morning.
wrong-no-date-time = { $value } is no date and time
wrong-year-cannot-right = the year { $year } can't be right
do-check-year = Check the year.

## the file as such
wrong-file-characters = the file has { $count } characters
do-event-file-most-route = An event file has at most { $most }: is this the route?
wrong-brackets-nested-too-deep = brackets are nested too deep
wrong-value-impossible = a value is impossible: { $error }
do-compare-example-file = Compare with the example file.
do-compare-line-example-file-quotes = Compare the line with the example file: quotes, brackets, commas.
wrong-telephone-number-stands-without-quotes = the telephone number { $value } stands without quotes
do-put-quotes-country-code = Put it in quotes, with its country code, as in { $key } = "{ $abroad }".
wrong-date-written-another-way-file = the date { $value } is written in another way than this file has it
do-write-moment = Write { $key } = { $moment }.
wrong-no-day-time = { $value } is no day or time that there is
do-check-day-hour-minute-2027 = Check day, hour and minute: { $key } = 2027-06-19T05:00.
do-use-straight-quotes-not-curly = Use straight quotes, " and ", not curly ones.
do-key-table-already-keep-use = This key or table is there already: keep one, or use [[...]] for a list of tables.
do-write-decimals-point-21-3 = Write decimals with a point: 21.3.
do-put-times-lengths-quotes-29 = Put times and lengths in quotes: "29:00".
do-write-minutes = Write minutes as a number: { $key } = { $minutes }
do-put-words-quotes-name-skelter = Put words in quotes: name = "Skelter Mill". true and false stand without.
do-quote-missing = A quote is missing.
do-each-line-key-value-heading = Each line is key = value, a [heading], or a comment after "#".
wrong-no-event-table = there is no [event] table
do-begin-file-event-name-starts = Begin the file with [event], name, starts, time_zone.
do-give-race-name-name-long = Give the race a name, as in name = "The Long Stile Hundred".
wrong-no-emergency-number-given-112 = no emergency number is given, 112 is used
do-write-emergency-number-112-what = Write emergency_number = "112", or what holds where the race is.
do-say-where-race-time-zone = Say where the race is: time_zone = "Europe/London".
do-say-when-starts-2027-06 = Say when: starts = 2027-06-19T05:00 (local time).
wrong-nobody-knows-how-reach-race = nobody knows how to reach race control
wrong-no-race-control = there is no race control
do-add-race-control-name-phone = Add [race_control] with name and phone.
do-give-telephone-number = [{ $table }] needs a telephone number.
wrong-not-among-people-nothing-can = { $name } is not among the [[people]]: nothing can be sent to her
do-add-people-name-phone = Add [[people]] with name = "{ $name }" and her phone.

## points
wrong-id-cannot-used = the id '{ $given }' can't be used
do-use-small-letters-digits-hyphens = Use small letters, digits and hyphens, such as '{ $value }'.
do-name-gpx-file-stands-beside = Name the GPX file that stands beside this one: route = "route.gpx".
wrong-event-names-route-so-do = [event] names a route and so do the [[courses]]
wrong-no-course = there is no course '{ $course }'
do-known = Known: { $ids }.
do-several-courses-say = There are several courses: say which ({ $course_ids }).
do-give-point-name-name-skelter = Give the point a name, as in name = "Skelter Mill".
do-give-distance-km-21-3 = Give its distance, km = 21.3, or a waypoint of the route, waypoint = "Mill".
wrong-crew-may-come-here-but = crew may come here, but nothing says where to park
do-add-crew-parking-walk-minutes = Add crew = {"{"} parking = "...", walk_in_minutes = 5 {"}"}.
do-say-when-cut-off-when = Say when: cut_off = {"{"} when = "out", clock = "Sun 11:30" {"}"}.
wrong-next-stage-starts-before-race = the next stage starts before the race
do-give-weekday-sun-07-00 = Give the weekday, as in "Sun 07:00".
wrong-stage-ends-here-stays-until = a stage ends here, and she stays until the next one
do-leave-stop-minutes-out = Leave stop_minutes out.
wrong-cut-off-cut-offs = there are cut_off and cut_offs
do-put-them-all-into-cut = Put them all into cut_offs.
wrong-two-cut-offs-same-moment = two cut-offs for the same moment
do-keep-out = Keep one for "in" and one for "out".
do-say-whether-must-out-then = Say whether she must be in or out by then: when = "in" or when = "out".
wrong-cut-off-clock-elapsed = a cut-off has clock and elapsed
wrong-cut-off-no-time = a cut-off has no time
do-give-clock-sun-11-30 = Give one: clock = "Sun 11:30" (time of day) or elapsed = "6:30" (since her start).
wrong-closes-before-opens = it closes before it opens
do-check-two-times-weekday = Check the two times, with weekday.
do-give-both-none = Give both or none.
do-say-reports-volunteer-crew-timing = Say who reports: by = "volunteer" (or "crew", "timing mat", "runner", "tracker", "nobody").
wrong-chance-0-nobody = a chance of 0 is nobody
wrong-chance-missing = 'chance' is missing
do-write-how-surely-reported-above = Write how surely she is reported, above 0 up to 1, as in chance = 0.9.
do-say-where-begins-from-km = Say where it begins: from_km = 60.
do-say-where-ends-km-78 = Say where it ends: to_km = 78.
wrong-stretch-ends-km-before-begins = the stretch ends at km { $to_km }, before it begins
do-check-from-km-km = Check from_km and to_km.

## points together
wrong-id-used-twice-first-line = the id '{ $thing_id }' is used twice in { $kind } (first on line { $line })
do-give-its-own-id = Give this one its own: id = "{ $thing_id }-2".
do-place-passed-twice-two-points = A place that the course comes by twice is two points, only one of them the end.
do-list-points-running-order = List the points in running order.
wrong-course-needs-two-points-least = a course needs two points at least
do-add-points = Add [[points]].
wrong-also-name-line = '{ $name }' is also a name of '{ $name2 }' (line { $line })
do-people-must-able-tell-two = People must be able to tell the two: call them outward and homeward, or first and second.
wrong-easily-mixed-up = '{ $name }' and '{ $name2 }' are easily mixed up
do-choose-names-differ-more = Choose names that differ more.
wrong-crew-report-from-where-they = crew are to report from '{ $name }', where they have no access
do-add-crew-another-reporter = Add crew = {"{"} ... {"}"} or another reporter.
wrong-nobody-reports-from-any-point = nobody reports from any point, so silence would never raise an alarm
do-say-reports-reports-volunteer-chance = Say who reports: reports = [ {"{"} by = "volunteer", chance = 0.9 {"}"} ].
wrong-cut-off-before-start = the cut-off at '{ $name }' is before the start
do-check-day-time = Check day and time.
wrong-cut-off-after-time-limit = the cut-off at '{ $name }' is after the time limit
do-check-limit-event = Check it, and limit in [event].
wrong-must-out-before-must = at '{ $name }' she must be out before she must be in
wrong-cut-off-earlier-before = the cut-off at '{ $name }' is earlier than the one before, at '{ $name2 }'
do-check-both-order-points = Check both, and the order of the points.
wrong-no-stage-ends-start-none = no stage ends at the start, and none follows the finish
do-give-next-stage-points-where = Give next_stage to the points where a night lies between.
wrong-stage-after-starts-before-before = the stage after '{ $name }' starts before the one before it
do-give-each-stage-own-day = Give each stage its own day, in running order.
wrong-cut-off-before-stage-leads = the cut-off at '{ $name }' is before the stage that leads there starts
do-check-day-time-next-stage = Check day and time, and next_stage of the point before.
wrong-nobody-out-cut-off-next = nobody is out of '{ $name }' by the cut-off there: the next stage starts after it
do-write-when-time-not-before = Write when = "in", or a time not before next_stage.
wrong-stage-after-starts-before-cut = the stage after '{ $name }' starts before the cut-off there
do-check-day-time-those-cut = Check day and time, and those of the cut-off.
wrong-crew-access-closes-before-start = crew access at '{ $name }' closes before the start
do-give-weekday-sun-14-00 = Give the weekday, as in "Sun 14:00".
wrong-crew-access-opens-after-race = crew access at '{ $name }' opens after the race is over
wrong-no-runner = there is no runner
do-add-runners-name-target = Add [[runners]] with name and target.
wrong-also-runner = { $key } '{ $value }' is also that of runner '{ $seen }'
do-reports-could-not-told-apart = Reports could not be told apart: make them differ.
do-add-people-id = Add [[people]] with id = "{ $person }".
wrong-no-person-people = there is no person '{ $person }' in [[people]]
wrong-starts-more-day-before-event = { $name } starts more than a day before the event, or weeks after
do-check-start-event = Check her start and that of the event.
wrong-personal-data-would-blanked-before = personal data would be blanked before the race is over
do-give-day-after-race = Give a day after the race.
wrong-km-stands-after-km = '{ $name }' at km { $km } stands after '{ $last_name }' at km { $last_km }
do-list-points-running-order-each = List the points in running order, each farther on.
wrong-stretch-ends-km-finish-km = the stretch ends at km { $to_km }, the finish is at km { $finish_km }
do-check-km = Check the km.
wrong-lies-beyond-course-finish-km = { $key } = { $km } lies beyond the course, the finish is at km { $finish_km }
wrong-paces-from-km-but-rules = { $name } paces from km { $from_km }, but the rules allow pacers from km { $allowed_km }
do-choose-later-point-pace-from = Choose a later point for pace_from.
wrong-pace-comes-before-pace-from = pace_to comes before pace_from
do-exchange-two-correct = Exchange the two, or correct one.
wrong-pacer-joins-km-but-rules = a pacer joins at km { $km }, but the rules allow pacers from km { $allowed_km }
do-let-pacer-join-later-meeting = Let the pacer join at a later meeting.
wrong-pacers-would-rules-allow = { $count } pacers would be with her, the rules allow { $pacers_at_once }
do-say-where-before-leaves-pacer = Say where the one before leaves: pacer_leaves.

## people
do-give-runner-name-name-maren = Give the runner a name, as in name = "Maren".
do-give-target-finish-29-00 = Give one: target = {"{"} finish = "29:00" {"}"}, {"{"} pace_all_in = "10:50" {"}"} or {"{"} easy_pace = "6:30", margin = "1:30" {"}"}; or none, with past_race or own_runs instead.
do-add-start-under-waves-known = Add its start under [waves]{ $known ->
    [none] {"."}
   *[other] ; known: { $known }.
 }
wrong-no-wave = there is no wave '{ $wave }'
do-write-minutes-seconds-per-km = Write minutes and seconds per km.
wrong-several-forms-target-given = several forms of target are given
wrong-target-empty = the target is empty
wrong-easy-pace-margin-go-together = easy_pace and margin go together
do-say-from-point-from-start = Say from which point on: from = "start".
wrong-no-telephone-number = '{ $text }' is no telephone number
do-write-country-code-44-1632 = Write it with country code: "+44 1632 960001".
wrong-no-country-code = '{ $text }' has no country code
do-write-from-abroad-44-1632 = Write it as from abroad: "+44 1632 960001".
do-give-person-name-name-ana = Give the person a name, as in name = "Ana".
wrong-quiet-hours-need-both-ends = quiet hours need both ends
do-write-quiet-from-22-00 = Write quiet = {"{"} from = "22:00", to = "06:00" {"}"}.
do-write-area-city-europe-london = Write area and city, as in "Europe/London".
wrong-no-time-zone = '{ $name }' is no time zone
do-check-what-follows = Check the @ and what follows it.
do-write-whole-beginning-https = Write it whole, beginning with https://.
wrong-no-channel = there is no channel '{ $name }'
wrong-channel-named-twice = a channel is named twice
do-name-each-once-order-try = Name each one once, in the order to try.
wrong-channel-no-address = the channel '{ $name }' has no address
do-add-take-out-channels = Add { $name } = ... or take it out of channels.
do-say-what-person = Say what this person is: { $kinds }.
do-say-where-drive-begins-from = Say where the drive begins: from = "start".
do-say-where-drive-ends-mill = Say where the drive ends: to = "mill".
do-say-where-point-mill = Say where: point = "mill".
do-name-trouble-trouble-hot-spot = Name the trouble: trouble = "hot spot on a foot".
wrong-no-list = { $key } is no list
do-write-poles-name-torch-hours = Write { $key } = ["poles", {"{"} name = "torch", hours = 9 {"}"}].
wrong-two-bags-wait-at = two of her bags wait at '{ $point }'
do-put-all-into-one-bag = Put it all into one: what she eats from there is labelled on each.
wrong-no-point-drop-bags = '{ $point }' is no point for drop bags
do-ask-race-then-add-drop = Ask the race; then add "drop bag" to the kinds of that point, or send the bag elsewhere.
do-correct-per-h-or-what-one-holds = Correct per_h, or what one of the things holds.
wrong-eaten-twice = '{ $name }' stands twice in one of her fuel plans
do-write-it-once-added-up = Write it once, with per_h added up.
wrong-mg-hardly-any = { $mg } mg in one is next to nothing
do-write-milligrams = Write milligrams, not grams: { $key } = 300.
wrong-two-fuel-plans-begin = two of her fuel plans begin at '{ $from_point }'
do-join-them-into-let-begin = Join them into one, or let one begin at a later point.
wrong-ml-hour-not-even-sip = { $fluid_ml_per_h } ml an hour is not even a sip
do-write-millilitres-not-litres-fluid = Write millilitres, not litres: fluid_ml_per_h = 500.
do-say-where-bag-waits-point = Say where the bag waits: point = "mill".
wrong-time-zone-hours-from-suns = the time zone { $time_zone } is { $apart_h } hours from the sun's time where the route is
do-check-time-zone-route-right = Check time_zone, and that the route is the right one: it begins at longitude { $lon }.
do-say-when-bad-when-second = Say when it is bad: when = "the second night".
do-write-what-wants-told-words = Write what she wants to be told: words = "left, right, count".
do-name-name-gel-per-h = Name it: {"{"} name = "gel", per_h = 1 {"}"}.
do-say-how-many-hour-name = Say how many in an hour: {"{"} name = "gel", per_h = 1 {"}"}.
do-name-item-name-head-torch = Name the item: {"{"} name = "head torch" {"}"}.
wrong-no-people-named-plan-can = no people are named: a plan can be made, but nobody is told anything
do-add-people-their-parts-ladder = Add [[people]] with their parts, one with ladder = 1.
wrong-runner-cannot-answer-alarm-about = a runner can't answer an alarm about herself
do-put-ladder-another-person = Put the ladder on another person.
wrong-part-given-twice = the part '{ $value }' is given twice
do-keep-two = Keep one of the two.
wrong-no-crew-car-comes-how = no crew car comes to '{ $name }': how a runner who retires there gets away is not said
do-ask-race-add-transport-under = Ask the race, and add transport = "..." there, or under [event] for every such point.
wrong-alarm-about-would-reach-nobody = an alarm about { $name } would reach nobody: the ladder is empty
do-give-somebodys-part-ladder-1 = Give somebody's part ladder = 1.
do-give-person-part-kind-safety = Give one person the part {"{"} kind = "safety contact", ladder = 1 {"}"}.
wrong-no-safety-contact = { $name } has no safety contact
wrong-step-ladder-also = step { $ladder } of the ladder for { $name } is also that of '{ $person }'
do-both-told-once-number-them = Both are told at once; number them if not meant.
wrong-nobody-call-race-control = nobody is to call race control
do-give-exactly-persons-part-calls = Give exactly one person's part calls_race_control = true.
wrong-both-call-race-control = '{ $person }' and '{ $person2 }' are both to call race control
do-keep-person = Keep one person.
wrong-call-race-control-but-no = { $name } is to call race control, but has no telephone number
do-add-phone = Add phone.
wrong-ladder-but-no-way-reach = { $name } is on the ladder, but there is no way to reach them
do-add-phone-email-channels = Add phone, email or channels.
wrong-ladder-but-others-cannot-telephone = { $name } is on the ladder, but others can't telephone them
wrong-name = the { $kind } '{ $name }' has the name of '{ $seen }'
do-people-could-mix-them-up = People could mix them up: make them differ.

## drives, cars, meetings
wrong-drive-goes-from-itself = the drive goes from '{ $from_place }' to itself
do-correct-from = Correct from or to.
wrong-drive-from-given-twice = the drive from '{ $from_place }' to '{ $to_place }' is given twice
do-keep = Keep one.
wrong-how-long-drive-from-takes = how long the drive from '{ $from_place }' to '{ $to_place }' takes is not said
do-add-minutes-35-without-no = Add minutes = 35; without it there is no leave-by.
wrong-nobody-confirmed-drive-from = nobody has confirmed the drive from '{ $from_place }' to '{ $to_place }'
do-add-confirmed-once-person-checked = Add confirmed_by = "..." once a person has checked it; until then there is no leave-by.
wrong-name-point = '{ $place }' is the name of the point '{ $id }'
do-write-id = Write its id: '{ $id }'.
wrong-no-point-place-but-much = '{ $place }' is no point or place, but much like '{ $near }'
wrong-no-drive-leads-from = no drive leads from or to '{ $place }'
do-add-under-drives-write-id = Add it under [[drives]], or write the id of a point or place.
wrong-met-twice = '{ $runner }' is met twice at '{ $point }'
do-put-both-into-meeting = Put both into one meeting.
wrong-crew-no-access = crew have no access to '{ $name }'
do-choose-another-point-add-crew = Choose another point, or add crew = {"{"} ... {"}"} to this one.
wrong-people-meet-where-allowed = { $count } people are to meet her at '{ $name }', where { $most } are allowed
do-name-fewer-people = Name fewer people.
wrong-meet-but-no-part-crew = '{ $person }' is to meet her, but has no part as crew or pacer
do-add-kind-crew-their-parts = Add {"{"} kind = "crew" {"}"} to their parts.
wrong-people-meet-rules-allow = { $count } people are to meet her, the rules allow { $most }
wrong-nobody-named-go-meeting = nobody is named to go to this meeting
do-add-crew = Add crew = ["..."].
wrong-no-part-pacer = '{ $person }' has no part as pacer
do-add-kind-pacer-their-parts = Add {"{"} kind = "pacer" {"}"} to their parts.
wrong-travels-does-not-go-meeting = '{ $name }' travels in '{ $car }', which does not go to this meeting
do-put-into-car-goes = Put it into a car that goes there.
wrong-people-go-seats = { $count } people go in '{ $car }', which seats { $seats }
do-check-seats-name-second-car = Check the seats, or name a second car.
wrong-cars-used-rules-allow = { $count } cars are used for { $name } ({ $cars }), the rules allow { $most }
do-use-fewer-cars = Use fewer cars.
wrong-no-point-asks-permit = no point asks for the permit '{ $name }'
do-permits-asked = Permits asked for: { $known }.
do-add-permit-crew-point = Add permit = "..." to crew = {"{"} ... {"}"} of a point.
wrong-crew-need-permit-nobody-says = crew need the permit '{ $permit }' at '{ $name }', and nobody says who has it
do-ask-race-then-write-permits = Ask the race, then write permits = ["{ $permit }"] at the car, or at the part of who holds it.
wrong-where-comes-from-not-said = where '{ $id }' comes from is not said, so there is no leave-by
do-add-from-here-starts-car = Add from = ... here or starts_at = ... to the car.
wrong-no-drive-from-so-no = there is no drive from '{ $came_from }' to '{ $here }', so '{ $id }' has no leave-by
do-add-under-drives = Add it under [[drives]].

## movements, shares
do-no-file-yet = There is no { $what } in this file yet.
wrong-no-such = there is no { $what } '{ $word }'
wrong-place-id-point = the place '{ $id }' has the id of a point
do-points-places-already-leave-out = Points are places already: leave this one out.
wrong-lat-lon-so-place = '{ $name }' has lat and lon, and so has its place '{ $place }'
do-keep-them-place-only = Keep them at the place only.
wrong-given-beside-minutes-whole-drive = { $key } is given beside minutes, which are the whole drive
do-count-into-minutes-leave-out = Count it into minutes and leave { $key } out.
wrong-minutes-km-straight-line-faster = { $minutes } minutes for { $km } km in a straight line is faster than any car may go
do-check-minutes-lat-lon-both = Check the minutes, and lat and lon of both places.
wrong-rules-allow-crew-only-once = the rules allow crew only once the race is over
wrong-closes-before-rules-allow-crew = '{ $point }' closes before the rules allow crew (crew_not_before)
do-leave-meeting-out = Leave this meeting out.
wrong-joins-leaves-same-meeting = '{ $pacer_joins }' joins her and leaves her at the same meeting
do-let-two-another-meeting = Let one of the two be at another meeting.
wrong-leaves-here-but-joins-no = '{ $pacer_leaves }' leaves her here, but joins her at no meeting before
do-add-pacer-joins-earlier-meeting = Add pacer_joins to an earlier meeting.
wrong-crew-but-foot-then-pacer = '{ $person }' is to be with the crew, but is on foot with her then, as pacer
do-take-name-out-add-pacer = Take the name out, or add pacer_leaves before.
wrong-joins-here-but-already = '{ $pacer_joins }' joins her here, but is with her already
do-add-pacer-leaves-meeting-between = Add pacer_leaves to a meeting in between.
wrong-joins-but-said-pace-only = '{ $person }' joins her at '{ $point }', but is said to pace only from '{ $said }'
do-make-pace-from-meeting-agree = Make pace_from and the meeting agree.
wrong-named-twice = '{ $name }' is named twice
wrong-cannot-crew-meets = { $running } can't be in the crew that meets her
do-name-somebody-else = Name somebody else.
wrong-crew-come-from-itself = the crew of '{ $point }' come from '{ $point }' itself
do-leave-from-out-name-where = Leave from out, or name where they come from.
wrong-nobody-goes-said-drive = nobody who goes in '{ $car }' is said to drive
do-add-drives-true-part-them = Add drives = true to a part of one of them.
wrong-would-been-awake-over-two = '{ $person }' would have been awake for over two days at the start
wrong-awake-only-after-race = '{ $person }' would be awake only from after the race on
wrong-two-sleeps-overlap = two sleeps of '{ $person }' overlap
do-join-them-into = Join them into one.
wrong-share-from-ends-comes-before = the share from '{ $from_point }' ends at '{ $to_point }', which comes before
wrong-from = { $gap } from '{ $names }' to '{ $names2 }'
wrong-nobody-runs = nobody runs
wrong-two-people-run = two people run
do-let-each-share-begin-where = Let each share begin where the one before ends.
wrong-nobody-runs-from = nobody runs from '{ $names }' to '{ $names2 }'
do-add-share-up-finish = Add a share up to the finish.
wrong-crew-but-runs-share-then = '{ $person }' is to be with the crew, but runs a share then
do-write-sleeps-from-sun-01 = Write sleeps = [ {"{"} from = "Sun 01:00", to = "Sun 03:00" {"}"} ].
wrong-sleep-ends-before-begins-lasts = a sleep ends before it begins, or lasts over 16 hours
do-give-both-weekday = Give both with weekday.
do-say-runs-person-ana = Say who runs it: person = "ana".
do-say-where-share-begins-from = Say where the share begins: from = "start".
do-say-where-share-ends-mill = Say where the share ends: to = "mill".

## pace, weather
do-write-past-race-name-fell = Write past_race = {"{"} name = "Fell 50", km = 52, ascent_m = 1900, time = "7:40" {"}"}.
do-write-weather-from-sat-12 = Write [[weather]] with from = "Sat 12:00", to = "Sat 18:00", temperature_c = 27, humidity = 55; or ground = "mud" with from_km and to_km.
wrong-recordings-too-many = { $count } recordings are too many
do-name-best = Name the best { $most }.
do-name-each-recording-once-would = Name each recording once: it would count twice.
wrong-not-beside-event-file = '{ $name }' is not beside the event file
do-copy-file-next-event-file = Copy the file next to the event file and write its name: '{ $last }'.
do-give-ascent-metres-0-level = Give the ascent in metres, 0 for a level race.
wrong-km-km-h-no-speed = { $km } km in { $time } is { $speed_km_h } km/h, no speed on foot
do-write-hours-minutes-7-40 = Write hours and minutes, as in "7:40"; look whether they were mixed up.
wrong-weather-ends-km-before-begins = the weather ends at km { $to_km }, before it begins
wrong-weather-says-nothing = this weather says nothing
wrong-humidity-without-temperature-c-says = humidity without temperature_c says nothing
do-add-temperature-c = Add temperature_c.
wrong-weather-ends-before-begins = the weather ends before it begins
wrong-weather-over-days-before-start = this weather is over days before the start
do-check-date = Check the date.

### plan

## files beside the event file
wrong-no-file = there is no file { $file }
do-correct-name = Correct its name.
do-put-beside-event-file-correct = Put it beside the event file, or correct its name
wrong-not-utf-8-text-line = it is not UTF-8 text (line { $line })
do-save-csv-utf-8 = Save it as CSV in UTF-8
wrong-recorded-same-time-run-would = it was recorded at the same time as { $file }: one run would count twice
do-keep-better-two-correct-clock = Keep the better of the two, or correct the clock of the device

## results
do-write-h-mm-ss-since = Write h:mm:ss since the start, or seconds; leave it empty where none was recorded
wrong-no-elapsed-time = '{ $text }' is no elapsed time
wrong-too-large = it is too large
do-give-years-results-line-runner = Give one year's results, one line a runner
wrong-no-runners = it has no runners
do-give-header-line-then-line = Give a header line, then one line a runner
wrong-no-csv-file = it is no CSV file ({ $error })
do-save-csv-commas = Save it as CSV with commas
wrong-no-column-named-after-finish = no column is named after the finish, '{ $name }'
wrong-later-point-earlier-time-before = a later point has an earlier time than the one before it
do-give-elapsed-times-since-start = Give elapsed times since the start, not legs or times of day
wrong-finishers-too-few-see-shape = { $count } finishers are too few to see a shape
do-add-results-other-years = Add results of other years
wrong-km-m-ascent-no-race = { $km } km with { $ascent_m } m of ascent is no race
do-give-distance-km-1-2000 = Give distance in km (1 to 2000) and ascent in metres
wrong-km-no-speed-foot = { $time } for { $km } km is no speed on foot
do-look-whether-hours-minutes-mixed = Look whether hours and minutes were mixed up

## recordings
do-export-activity-again-from-watchs = Export the activity again from the watch's own program, as FIT or TCX, or as GPX with times
wrong-mb-more = it has { $mb } MB, more than { $most_mb }
do-give-activity = Give one activity
wrong-empty = it is empty
wrong-neither-gpx-nor-fit-nor = it is neither GPX nor FIT nor TCX
wrong-watch-calls-not-run = the watch calls it '{ $word }', not a run
do-give-recordings-runs-hikes-only = Give recordings of runs and hikes only
wrong-no-track-point-time-so = no track point has a time, so it is a route, not a recording
wrong-fit-file-damaged = the FIT file is damaged ({ $error })
wrong-tcx-file-damaged = the TCX file is damaged ({ $error })
wrong-file-declares-doctype-tcx-never = the file declares a DOCTYPE, which TCX never needs
wrong-samples-time-least-needed = it has { $count } samples with a time, at least { $least } are needed
wrong-km-min-too-short-learn = it is { $km } km in { $minutes } min, too short to learn from
do-give-runs-more-kilometre-five = Give runs of more than a kilometre and five minutes
wrong-lasts-days = it lasts { $days } days
do-give-activity-file = Give one activity a file
wrong-neither-distances-nor-positions = it has neither distances nor positions
wrong-no-heights-so-nothing-can = it has no heights, so nothing can be learnt about hills
do-give-recording-watch-writes-heights = Give a recording of a watch that writes heights
wrong-m-foot-rest-pauses-jumps = { $walked_m } m of it were on foot, the rest is pauses and jumps
do-give-run-more-kilometre = Give a run of more than a kilometre
wrong-km-h-over-km-faster = { $speed_km_h } km/h over { $km } km is faster than anybody has run
do-leave-out-rides-give-recordings = Leave out rides; give recordings of runs and hikes
wrong-under-3-km-own-running = there are under 3 km of her own running to learn from
do-add-longer-runs = Add longer runs

## target and plan
do-give-finish-pace-all-easy = Give finish, or pace_all_in, or easy_pace with margin
wrong-over-days-longer-can-planned = { $time } is over { $days } days, longer than can be planned here
do-look-whether-hours-minutes-mixed-up = Look whether hours and minutes were mixed up, or plan the race in stages
wrong-km-slower-anybody-walks = { $time } for { $km } km is slower than anybody walks
do-look-whether-hours-minutes-pace = Look whether hours and minutes, or pace and finish, were mixed up
wrong-easy-pace-needs-margin-0 = an easy pace needs a margin of 0 to 10 min/km beside it
do-write-margin-1-30-two = Write margin = "1:30"; one to two minutes are usual for a first ultra
wrong-no-time-aim = { $time } is no time to aim for
do-give-time-above-zero = Give a time above zero
wrong-planned-stops-alone-take-target = the planned stops alone take { $stops }, the target is { $target }
do-shorten-stop-minutes-points-aim = Shorten stop_minutes at the points, or aim for a later finish
wrong-plan-needs-start-finish-least = a plan needs a start and a finish at least
do-add-points-course = Add the points of the course
wrong-no-km-known = no km is known for { $unplaced }
do-give-km-waypoint-route = Give km, or a waypoint of the route
wrong-km-does-not-come-after = { $name } at km { $km } does not come after the point before it
do-put-points-running-order-place = Put the points in running order; a place the course comes by twice is two points
wrong-km-route-ends-km = { $name } is at km { $km }, the route ends at km { $length_km }
do-correct-km-state-organisers-distance = Correct the km, or state the organiser's distance as stated_km
wrong-rate-outside = { $name } = { $value } is outside { $low } to { $high }
do-give-what-does-good-ground = Give what she does on good ground when fresh, or leave it out
wrong-factor-outside-0-5-5 = factor = { $factor } is outside 0.5 to 5
do-write-1-10-tenth-slower = Write 1.10 for a tenth slower
wrong-stretch-from-km-km-no = the stretch from km { $from_km } to km { $to_km } has no length
do-put-smaller-km-first = Put the smaller km first
wrong-past-results-leave-too-little = past results leave too little time to get to { $name } with the planned stops
do-shorten-stops-before-look-whether = Shorten the stops before it, or look whether the results are of this course
wrong-before-start = { $name } is before her start
do-correct-cut-off = Correct the cut-off
wrong-races-time-limit = the race's time limit
wrong-start-next-stage = the start of the next stage at { $name }
do-aim-finish-earlier = Aim for a finish in { $aim } or earlier
do-no-finish-time-meets-cut = No finish time meets the cut-offs as they stand
do-stop-less-before = { $instead }, or stop less before it (stops up to there: { $stops })
wrong-slower-anybody-walks-course = { $target } is slower than anybody walks this course
do-plan-longer-stops-aim-earlier = Plan longer stops, or aim for an earlier finish
do-aim-later-finish = Aim for a later finish
wrong-card-nothing-try-first = the card '{ $id }' has nothing to try first
do-give-least-step-try-first = Give at least one step, as in try_first = ["stop at once, dry, tape"]

## routes
do-export-route-again-gpx-use = Export the route again as GPX and use the new file
wrong-web-page-not-route-download = this is a web page, not a route: the download probably needed a log-in
wrong-kml-file-not-gpx = this is a KML file, not GPX
wrong-tcx-file-not-gpx = this is a TCX file, not GPX
wrong-news-feed-not-gpx = this is a news feed, not GPX
wrong-zip-kmz-archive-not-gpx = this is a zip or KMZ archive, not GPX
wrong-gzip-archive-not-gpx = this is a gzip archive, not GPX
wrong-pdf-not-gpx = this is a PDF, not GPX
wrong-json-not-gpx = this is JSON, not GPX
wrong-fit-recording-not-gpx = this is a FIT recording, not GPX
wrong-file-empty = the file is empty
wrong-file-mb-more-mb = the file has { $mb } MB, more than { $most_mb } MB
wrong-file-ends-middle-after-broken = the file ends in the middle, as after a broken download
do-download-export-again = Download or export it again
wrong-not-well-formed-xml = this is not well-formed XML: { $name }
wrong-file-begins-not-gpx = the file begins with <{ $tag }>, not with <gpx>
wrong-file-declares-doctype-gpx-never = the file declares a DOCTYPE, which GPX never needs and which can be made to exhaust a reader
do-remove-doctype-export-route-again = Remove the DOCTYPE, or export the route again with another program
wrong-text-not-utf-8-though = the text is not UTF-8, though the file does not name another encoding
do-save-file-utf-8-export = Save the file as UTF-8, or export the route again
wrong-files-text-encoding-cannot-read = the file's text encoding cannot be read ({ $error })
wrong-unknown-kind-gpx-known-gpx = unknown kind of GPX, { $namespace }: known are GPX 1.0 and 1.1
wrong-elements-nested-deeper = elements are nested deeper than { $max_depth }
wrong-tag-comment-longer-bytes = one tag or comment is longer than { $max_token } bytes
wrong-more-tracks-routes = more than { $max_lines } tracks and routes
do-leave-only-course-file = Leave only the course in the file
wrong-more-points = more than { $max_points } points
do-thin-track-program-made = Thin the track in the program that made it
wrong-more-waypoints = more than { $max_waypoints } waypoints
do-keep-waypoints-points-race = Keep the waypoints that are points of the race
wrong-point-no-missing = a point has no { $key }=
wrong-degrees-outside = { $key } '{ $text }' is outside -{ $limit } to { $limit }
do-correct-point-perhaps-latitude-longitude = Correct the point; perhaps latitude and longitude are exchanged
wrong-not-number = { $key } '{ $text }' is not a number
do-write-like-54-9012-point = Write it like 54.9012, with a point
wrong-height-spikes-bridged = { $file }: { $spikes } height spikes were bridged
wrong-line-heights-outside-m-taken = { $file }, line { $strange_line }: { $strange_heights } heights outside { $lowest_m } to { $highest_m } m were taken as missing
wrong-straight-km-from-km-points = { $file }: straight for { $length_km } km from km { $from_km }; points are missing there or stand in the wrong place
wrong-broken-where-no-stage = { $file }: the line breaks off at km { $from_km } and goes on { $length_km } km away, and no stage ends there; that way is not counted
do-broken-stage = Write next_stage at the point where the stage ends, or draw the line through
wrong-no-heights-from-km-drawn = { $file }: no heights from km { $from_km } to { $to_km }; drawn straight there
wrong-route-no-heights = { $file }: the route has no heights: { $lacking }
wrong-every-height-0 = { $file }: every height is 0: { $lacking }
wrong-only-points-heights = { $file }: only { $share } of the points have heights: { $lacking }
wrong-gradient-ascent-unknown-so-plan = gradient and ascent are unknown, so that the plan reckons with flat ground
wrong-line-m-long = the line is { $length_m } m long
do-use-file-holds-whole-course = Use the file that holds the whole course
wrong-line-km-long-when-points = the line is { $length_km } km long, as when points stand in the wrong order or place
do-look-route-map-export-again = Look at the route on a map and export it again
wrong-line-measures-km-but-km = the line measures { $length_km } km, but { $stated_km } km are stated
do-correct-stated-km-use-route = Correct stated_km, or use the route of this race
wrong-file-no-track-no-route = the file has no track and no route with two points or more
do-export-course-itself-not-only = Export the course itself, not only its waypoints
wrong-s-joined = { $file }: { $count } { $kind }s were joined: { $lines }
wrong-file-holds-s-do-not = the file holds { $count } { $kind }s that do not follow one another ({ $lines }; { $gap_km } km between two of them)
do-leave-only-line-that-is-course = Leave only the one that is the course in the file; where a stage ends between them, write next_stage at its last point

## points on the route
wrong-no-waypoint = { $file } has no waypoint '{ $name }'
wrong-waypoints-named = { $count } waypoints of { $file } are named '{ $name }'
do-give-points-km-instead = Give the point's km instead
do-file-no-named-waypoints-give = The file has no named waypoints: give the point's km instead
wrong-but-stands-before-not-before = '{ $name }' is at { $places }, but '{ $before }', which stands before it, is not before km { $earliest_km }
do-put-points-running-order-correct = Put the points in running order, or correct the km or the waypoint
wrong-neither-km-nor-waypoint-given = neither km nor waypoint is given
do-give-km-21-3 = Give one, as km = 21.3
wrong-km-not-course-km-long = km { $km } is not on the course, which is { $length_km } km long
do-correct-km-give-stated-km = Correct the km, or give stated_km where the organiser counts another distance
wrong-given-km-but-course-km = the { $end } is given as km { $km }, but the course has it at km { $course_km }
wrong-waypoint-from-line = waypoint '{ $waypoint }' is { $distance } from the { $end } of the line
do-correct-waypoint-use-route-race = Correct the waypoint, or use the route that has the { $end } of the race
wrong-waypoint-from-course-nearest-km = waypoint '{ $name }' is { $distance } from the course, nearest at km { $km }; at most { $reach_m } m are allowed
do-correct-waypoint-route-give-points = Correct the waypoint or the route, or give the point's km instead
wrong-km-given-but-waypoint = km { $km } is given, but waypoint '{ $name }' is at { $places }
do-correct-km-leave-out = Correct the km, or leave it out
wrong-course-comes-waypoint = the course comes by waypoint '{ $waypoint }' at { $places }
do-add-km-say-pass-meant = Add km = ... to say which pass is meant

### start_list
wrong-list-empty = the list is empty
do-write-first-line-bib-name = Write a first line of: bib,name,wave,course,target. Only bib and name must be there.
wrong-quote-not-closed = a quote is not closed
do-put-quote-both-ends-cell = Put a quote at both ends of a cell, or at none.
wrong-rows-too-many = { $count } rows are too many
wrong-no-column = there is no column '{ $said }'
wrong-column-stands-twice = the column '{ $said }' stands there twice
do-take-two-out = Take one of the two out.
wrong-column-missing = the column '{ $name }' is missing
wrong-bib-stands-line-too = bib { $bib } stands on line { $seen } too
do-give-each-runner-bib-their = Give each runner a bib of their own.
wrong-row-cells-first-line = the row has { $cells } cells, the first line has { $columns }
do-put-name-separator-quotes = Put a name with the separator in it in quotes.
wrong-bib-missing = the bib is missing
wrong-no-bib = '{ $bib }' is no bib
do-use-digits-letters-most-20 = Use digits and letters, at most 20.
wrong-name-missing = the name is missing
do-write-runners-name = Write the runner's name.
wrong-bib-new-no-target = bib { $bib } is new and has no target
wrong-bib-new-no-course = bib { $bib } is new and has no course
wrong-event-file-not-changed-list = the event file is not changed by a list: { $error }
wrong-table-stands-before-first-heading = a table stands before the first heading
wrong-no-toml = the text is no TOML ({ $error })
wrong-table-not-changed-in-place = [{ $table }] can't be changed in place
do-write-each-table-under-heading = Write each table under a heading of its own.
wrong-alarm-about-new-runner-would = an alarm about a new runner would reach nobody
do-give-person-race-part-all = Give a person of the race a part for all runners in the event file: {"{"} kind = "safety contact", ladder = 9 {"}"}.

### passages
wrong-passages-json = that is no list of passages
do-passages-head = Write rows with bib, point and time (or elapsed), named so in the first line of a CSV or as the keys of a JSON list.
wrong-passage-followed = bib { $bib } is of a runner who is followed here
do-passage-check-in = Report her with a check-in instead: POST /v1/events/…/checkins, or in the chat.
wrong-passage-no-point = no course has a point '{ $said }'
wrong-passage-points = '{ $said }' is the name of several points
wrong-passage-no-time = '{ $said }' is no time
wrong-passage-before-start = { $said } is before the start
wrong-passage-to-come = { $said } is still to come
do-passage-time = Write time as the clock at the race showed it (07:58:12, Sat 07:58, 2027-09-11 07:58), or elapsed as h:mm:ss since the start.
wrong-passage-which-day = { $said } was on more than one day of the race
do-passage-day = Write the day or the date with it (Sat 07:58), and where the clocks change the offset (2027-10-31T01:30+01:00).

## put together, or with several words
wrong-outside-hours = { $text } is outside { $low } to { $high } hours
wrong-outside-pace = { $text } is outside 2:00 to 60:00 per km
do-write-number-without-quotes = Write a number without quotes.
do-write-number-point-not-comma = Write a number without quotes (a point, not a comma, before decimals).
wrong-also-on-line = { $what } (also on line { $lines })
wrong-also-on-lines = { $what } (also on lines { $lines })
wrong-line-no-toml = this line can't be read as TOML ({ $why }): { $row }
do-add-people-name-phone-or = Add [[people]] with name = "{ $name }" and her phone; if she is { $near }, write person = "{ $near }" here.
wrong-go-together = { $one } and { $other } go together
wrong-no-end = no point is the { $kind ->
    [start] start
   *[finish] finish
 }
do-give-end = Give the { $place ->
    [first] first
   *[last] last
 } one kinds = ["{ $kind }"].
wrong-second-end = '{ $name }' is a second { $kind ->
    [start] start
   *[finish] finish
 }
wrong-end-out-of-place = { $kind ->
    [start] the start is not the first point
   *[finish] the finish is not the last point
 }
wrong-no-e-mail-address = '{ $text }' is no e-mail address
wrong-no-web-address = '{ $text }' is no web address
do-several-runners-say-whom-meet = There are several runners: say whom they meet.
do-several-runners-say-whose-share = There are several runners: say whose race it is a share of.
wrong-crew-no-access-rules = crew have no access to '{ $name }', and the rules allow help at crew points only
do-name-columns-points = Name the columns as the points are: { $names }
do-column-meant = (is '{ $column }' meant for '{ $name }'?)
do-nearest-names = The nearest names are { $names }
wrong-cut-off-in = the cut-off in of { $name }
wrong-cut-off-out = the cut-off out of { $name }
wrong-past-cut-off-in = with a finish in { $finish } she is in at { $point } after { $after }, { $over } past { $limit }
wrong-past-cut-off-out = with a finish in { $finish } she is out at { $point } after { $after }, { $over } past { $limit }
wrong-finish-within-limits = a finish in { $target } needs { $needs }; within her own limits ({ $limits }) this course takes { $fastest }
wrong-finish-within-power = a finish in { $target } needs { $needs }; at the best power anybody has held so long this course takes { $fastest }
wrong-speed-uphill-level = { $uphill } m/s uphill and { $level } m/s on the level
wrong-speed-uphill = { $uphill } m/s uphill
wrong-speed-level = { $level } m/s on the level
wrong-speed-nobody-has = more than anybody's speed downhill
do-aim-later-finish-or-correct-limits = Aim for a later finish, or correct her limits
wrong-no-built-in-card = no built-in card for { $cards }
do-give-texts-every-needed-card = Give the texts of every needed card
do-known-tables = Tables: { $tables }.
wrong-point-has-check-ins = the point '{ $point }' ({ $name }) has check-ins and can't be removed
do-put-point-back = Put it back; close its crew access if it is out of use.
do-keep-id-change-name = If '{ $near }' is the same place, keep the id '{ $point }' and change its name.
wrong-no-point-on-course = there is no point '{ $point }' on this course
as-said = { $words }
both-said = { $first } { $second }
