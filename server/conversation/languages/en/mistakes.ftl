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
check-right = { $file }: right. { $runners ->
    [one] One runner
   *[other] { $runners } runners
 }, { $points } points, { $people } people, { $meetings } meetings. `stilepost load { $file }` stores it.
cli-error = Error: { $what }
cli-nothing-reported = nobody has been reported in { $event } yet: there is nothing to look back on
cli-log-whose = --runner: say whose log it is. Use one of: { $known }.
cli-log-columns = the first line lacks the columns { $missing }. Write time,point,log; `stilepost log` without a file prints the form.
cli-log-time = line { $line }, time: ‘{ $time }’ is no day and time. Write it as 2027-06-19 14:05, by the clock of the race.
cli-log-ahead = line { $line }, time: { $time } is still to come. Look whether day and month are right.
cli-log-point = line { $line }, point: she has no point ‘{ $point }’. Use one of: { $known }.
cli-log-words = line { $line }, log: not all of ‘{ $words }’ is understood. Write each thing by itself, with a semicolon between: ‘drank 500; ate half a banana; no ibuprofen; not peed; feet good; slept 20 min’. Leave the rest out.
cli-log-none = { $count ->
    [one] Nothing has been stored: mend it and read the file in again.
   *[other] Nothing has been stored: mend these { $count } and read the file in again.
 }
cli-log-noted = { $count ->
    [one] One new line is
   *[other] { $count } new lines are
 } in the log; there before: { $before }.
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
start-list-file = start list
start-list-more = and { $count } more
start-list-again = Mend what is named, and send the list again.
start-list-found = in the list: { $added } new, { $changed } changed, { $same } as they are stored.
start-list-not-listed = not in the list, and kept: { $names }.
passages-file = passages
passages-kept = passages: { $added } new, { $changed } changed, { $same } known already, { $wrong } rows not taken.

learn-no-json = { $file }: this is not the JSON that `stilepost afterwards` writes. Give that file, or the id of a stored event.
learn-no-runner = --runner: the next file has no runner ‘{ $runner }’. Use one of: { $known }.
learn-unusual = { $file }: its tables don’t each stand under a heading of their own, so that nothing can be written into it. Write [[runners]] and [[points]] as headings.
learn-breaks = { $file }: with what was learnt the plan no longer holds (see above), so nothing was written. Mend what is named, then try again.
learn-nothing = Nothing changes: the file says all that already, or the races can’t say more.
learn-was = The plan of { $runner } as it was:
learn-next = The next plan of { $runner }, with what was learnt:
learn-shown = Nothing is written yet. With --write it goes into { $file }, comments kept.
learn-not-finished = { $field }: no finish was reported, so no time can be learnt from it.
learn-target-stays = { $field } stays, and the plan is made for it: the race only says how likely it is. Take the target out, and the plan is made of her races.
learn-race = { $field }: { $was ->
    [none] new: { $now }
   *[other] { $now } (was { $was })
}. The plan turns it into a time for this course, with its spread.
learn-fade = { $field } = { $now }{ $was ->
    [none] {""}
   *[other] {" "}(was { $was })
}: how she slows, 1 as most do. Of { $count ->
    [one] one race
   *[other] { $count } races
} it lies between { $low } and { $high } (1 in 10 either side); drawn towards 1 as far as that can’t say more.
learn-fade-same = { $field } = { $was } stays: the race says { $low } to { $high }.
learn-stop = { $field } = { $now } (was { $was }): her { $count } stops took longer or shorter than planned; likely { $low } to { $high } min.
learn-stops-same = Her stops took as long as planned (times { $now }, { $low } to { $high }, { $count } stops): stop_minutes stay.
learn-stops-shared = Her stops took { $now } times as long as planned ({ $low } to { $high }, { $count } stops). stop_minutes are of everybody in this file, so they stay: change them by hand.
learn-carbohydrate = { $field } = { $now }{ $was ->
    [none] {""}
   *[other] {" "}(was { $was })
}: g of carbohydrate an hour, as logged in the race; { $low } to { $high } in its two halves, { $count } entries. What nobody logged is not in it.
learn-carbohydrate-same = { $field } = { $was } stays: the log says { $low } to { $high } g an hour in the two halves.
learn-fluid = Fluid: { $was } ml an hour as logged ({ $low } to { $high } in the two halves, { $count } entries). Not written: plan bottles with fluid_ml_per_h in { $field }; she drinks to thirst.
