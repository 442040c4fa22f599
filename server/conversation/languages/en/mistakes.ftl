# What the commands say of a file. Values come in already worded (times, lists, distances); numbers only where a plural hangs on them.

## What `stilepost check` says
mistake-error = error
mistake-warning = warning
check-mistakes = { $count ->
    [one] 1 mistake
   *[other] { $count } mistakes
 } to correct.
check-not-promised = { $count ->
    [one] One meeting is not promised
   *[other] { $count } meetings are not promised
 }: crew may come too late, or a drive is not confirmed. `stilepost plan { $file }` says which, why and what would help.
check-right = { $file }: right. { $runners } runner(s), { $points } points, { $people } people, { $meetings } meetings. `stilepost load { $file }` stores it.
cli-error = Error: { $what }
cli-nothing-reported = nobody has been reported in { $event } yet: there is nothing to look back on
cli-log-whose = --runner: say whose log it is. Use one of: { $known }.
cli-log-columns = the first line lacks the columns { $missing }. Write time,point,log; `stilepost log` without a file prints the form.
cli-log-time = line { $line }, time: ‘{ $time }’ is no day and time. Write it as 2027-06-19 14:05, by the clock of the race.
cli-log-ahead = line { $line }, time: { $time } is still to come. Look whether day and month are right.
cli-log-point = line { $line }, point: she has no point ‘{ $point }’. Use one of: { $known }.
cli-log-words = line { $line }, log: not all of ‘{ $words }’ is understood. Write each thing by itself, with a semicolon between: ‘drank 500; ate half a banana; no ibuprofen; not peed; feet good; slept 20 min’. Leave the rest out.
cli-log-noted = { $count } new lines are in the log, { $before } were there before.
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
start-list-found = in the list: { $added } new, { $changed } changed, { $same } as they are stored.
start-list-not-listed = not in the list, and kept: { $names }.
