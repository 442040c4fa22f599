title = Stilepost
board = Board
exercise = EXERCISE: this is practice, nothing of it has happened.
aid = An aid to a crew, not a rescue service. In danger call { $number } first.
call = Call { $name }
emergency = Emergency { $number }
now = now { $when }
you-are = You are { $name }, { $parts }
leave = Log out of this browser
last-known = Last known
nothing-yet = Nothing has been reported yet.
told-by = reported by { $who }, { $ago }
estimate = Estimate, not seen
estimate-near = near { $likely } on the course
estimate-between = between { $low } and { $high } on the course, likely near { $likely }
estimate-points = between { $from } and { $to }
points = Points ahead: likely time, and between when
reached = Points reached
in-at = in { $when }
out-at = out { $when }
through-at = through { $when }
reported-none = reached; no time reported
gets-there = { $odds } that she gets there
gets-there-you = { $odds } that you get there
own-clock = { $when } your clock
bar-own = your clock: { $times }
next-meeting = Next meeting
my-meeting = Your next meeting
further-meetings = Other meetings
mine = yours
others = { $who }
leave-by = Leave by
you-are-there = you are there
leave-by-unknown = no leave-by: the drive is not confirmed
be-there = Be there from
until-heard = she is heard of
wait-until = Wait until
have-ready = Have ready
food = Food
if-missed = If missed
parking = Parking
arrives = Arrives
lost = This meeting can't be made: { $why }
no-signal = No phone signal there.
cut-offs = Cut-offs
cut-off-line = { $name }, { $edge } by { $when }: { $odds } that she makes it
cut-off-line-you = { $name }, { $edge } by { $when }: { $odds } that you make it
stop-log = Stop log
log-rows = Entry by entry
doubted = Not confirmed yet, does not count
doubted-line = { $what } { $when }, reported by { $who }: { $why }
alarms = Alarm
alarm-line = { $kind }, raised { $when }{ $point ->
    [none] {""}
   *[other] , { $point }
}{ $words ->
    [none] {""}
   *[other] {": ‘"}{ $words }{"’"}
}
alarm-held = { $who } has answered and holds it.{ $again ->
    [none] {""}
   *[other] { " " }Look again { $again }.
}
alarm-open = Sent to { $told }; nobody has answered yet.
alarm-unreached = NOBODY HAS BEEN REACHED. { $told } DID NOT ANSWER. TELEPHONE NOW.
alarm-nobody = NOBODY HAS BEEN REACHED. NO CHANNEL WORKS. TELEPHONE NOW.
held = Runners are held.
blind = { $what ->
    [none] our own channels
   *[other] { $what }
 } DOWN since { $when }: the silence of those who write there means nothing from then on. Telephone them.
race-changes = From the race
people = People
people-at = at { $name } since { $when }
people-bound = next: { $name }, there from { $when }
unreachable = can't be reached over any channel
profile = Course: height along the way, points, where she was last known
chat = Chat
chat-hint = Ask or report: ‘where is she’, ‘in at the mill 5 min ago’, ‘what do I bring’
send = Send
share-place = Share where I am
asking-place = asking this device where it is
place-refused = This device does not say where it is.
place-shared = Shared where I am.
photo = Photo
photo-unreadable = That file is no picture that can be read here. Choose a photo (JPEG, PNG or WebP).
not-sent = Not sent: no connection. Try again.
stale = No connection since { $when }. What you see may be old.
notices = Told to you
join-title = Join a crew
join-lead = Type the code of your invitation.
join-code = Code
join-look = Look
join-yes = That is me
join-no = Not me
join-wrong = This code can't be used. Ask whoever invited you for a new one.
join-wait = Too many wrong codes. Wait a quarter of an hour.
stranger = Nothing is shown to somebody who is not part of an event. Use the link of your invitation.
answer-title = Your answer
answer-done = You answered ‘{ $answer }’ { $when }. Nothing more is needed here; to say something else, write in your chat.
answer-over = No answer is wanted to this any more.
answer-no-link = This link can't be used: it is too old, or not whole. Answer in your chat or on the page, or telephone your crew.
error-title = That did not work
error-back = Back to the board
part-runner = runner
part-crew = crew
part-pacer = pacer
part-safety-contact = safety contact
part-organiser = organiser
part-volunteer = volunteer
part-supporter = supporter
kind-overdue = Overdue
kind-asked-for-help = Asked for help
kind-sweep = Sweep is through, she is not
edge-in = in
edge-out = out
race-runners-held = Runners are held{ $until ->
    [none] {""}
   *[other] { " " }until { $until }
}{ $by ->
    [none] {""}
   *[other] {", says "}{ $by }
}
race-race-ended-early = The race has been ended early, { $at }{ $by ->
    [none] {""}
   *[other] {", says "}{ $by }
}{ $words ->
    [none] {""}
   *[other] {": ‘"}{ $words }{"’"}
}
race-access-closed = Crew access is closed: { $point }{ $by ->
    [none] {""}
   *[other] {", says "}{ $by }
}
race-cut-off-in-moved = Cut-off in at { $point } is now { $until }{ $by ->
    [none] {""}
   *[other] {", says "}{ $by }
}
race-cut-off-out-moved = Cut-off out of { $point } is now { $until }{ $by ->
    [none] {""}
   *[other] {", says "}{ $by }
}
race-rerouted = The course has been rerouted{ $words ->
    [none] {""}
   *[other] {": "}{ $words }
}{ $by ->
    [none] {""}
   *[other] {", says "}{ $by }
}

## The first sentence
first-leave = Leave by { $when } for { $place }.
first-leave-now = Leave now for { $place }, if you have not: it was to be by { $when }.
first-be-there = Be at { $place } from { $when }.
first-on-way = You are on the way to { $place }: be there from { $when }.
first-there = You are at { $place }.
first-stay = Wait until { $when }.
first-stay-heard = Stay until she is heard of.
first-lost = You can't make { $place }: { $why }.
first-no-meeting = No meeting of yours is left.
first-pacing = You run with { $runner } to { $to }. Next: { $place }, about { $when }.
first-then-leave = After that: leave by { $when } for { $place }.
first-then-be = After that: be at { $place } from { $when }.
first-then-after = After that: for { $place }, once { $runner } has left { $here }.
first-due = { $runner } is due about { $when }.
first-due-any-time = { $runner } is due any time until { $when }.
first-was-due = { $runner } was due about { $when }; nothing reported.
first-there-since = { $runner } has been there since { $when }.
first-i-am-there = I am there
first-bring = What to bring
first-nothing = Nothing for you to do now.
first-next-is = Next is { $place }.
first-field = { $going } of { $of } are still in the race.
first-you-next = Next: { $place }, { $km } from where you were last reported. You are due about { $when }.
first-you-next-at = Next: { $place }, { $km } into the course. You are due about { $when }.
first-run-over = Your race is over.
first-volunteer = Report each runner by bib, in and out.
first-volunteer-at = You are at { $place }: { $count } still to come. Report each by bib, in and out.
say-on-way = on my way to { $place }
say-there = I am at { $place }
say-in = { $bib } in at { $place }
say-out = { $bib } out of { $place }
## Places of the page
places = Parts of this page
place-now = Now
place-plan = Plan
place-chat = Chat
place-people = People
unread = { $count } unread
people-none = Your part does not show other people's numbers.
plan-none = Your part does not show how a race goes.
waiting = Not sent yet, written { $when }. It goes by itself when there is a connection.
needs-script = This needs JavaScript. Without it, telephone race control.
bars-read = Solid: reported. Hatched: estimate, with the likely time as a line. Upright line: now.
bars-read-mine = Thin line below: when you are to be there.
bar-unheard = expected by now, nothing reported from there
## An open alarm
alarm-what = What to do, whom to telephone
part-race-control = race control
part-rescue = rescue
## What each part sees first
duty = When an alarm comes
duty-danger = Life in danger: { $number } first.
duty-answer = Answer it within { $length }, here or in your chat: ‘I have it’, or ‘can't’. Else the next one is asked.
duty-call-you = Call { $name } yourself: { $phone }.
duty-call-other = The alarm says who calls { $name } ({ $phone }). If you are not sure that it was done, call.
duty-look = See that somebody looks for her, and write in the chat what you find out.
duty-end = It ends when somebody has her, or when you write ‘stand down’.
duty-ladder = Telephone in this order
section = Your next section
section-due = { $place }: { $when }
section-ground = { $km }, +{ $up } -{ $down } m
section-carry = With you, by the plan: { $things }
section-torch-now = TORCH: it is dark.
section-torch = TORCH before { $place }: dark from { $when }.
section-next-crew = Your crew next: { $place }, { $when }: { $crew }.
section-crew = At { $place }: { $crew }.
section-nobody = None of your crew is at { $place }.
section-food = Food: { $food }
section-kit = { $item }{ $car ->
    [none] {""}
   *[other] { " " }({ $car })
}
station = Your point: { $place }
station-any = Report a runner
station-where = Point
station-due = Still to come
station-none = All have been reported.
station-more = and { $count } more
bib = Bib
bib-in = In
bib-out = Out
field = The field
field-line = { $count } { $what }
field-points = In and out at each point
field-here = There
field-to-come = To come
field-late = Late: { $count }
field-late-line = { $who }: awaited at { $place } until { $when }
field-missed = Cut-off missed: { $count }
field-danger = Cut-off in danger: { $count }
field-danger-line = { $who }: { $place } by { $when }, { $odds }
field-not-started = Not reported at the start: { $count }
field-retired = Out of the race: { $count }
field-place-line = { $who }{ $place ->
    [none] {""}
   *[other] , { $place }
}{ $when ->
    [none] {""}
   *[other] , { $when }
}
going-before-the-start = before the start
going-moving = on the course
going-at-a-point = at a point
going-resting = resting
going-retired = retired, not yet with anybody
going-retired-in-hand = retired, with somebody
going-finished = finished
going-closed = closed
## The map
map = Map of the course
map-last = Last known: { $fact }.
map-estimate = Estimate, not seen: likely between { $from } and { $to }, { $low } to { $high } on the course; { $odds }.
map-places = Places on the map, and the way there
map-mine = you meet her here
map-parking = Parking: { $words }.
map-to-car-park = Navigate to the car park
map-to-point = Navigate to the point
map-geo = Opens the map program of this phone. If nothing opens, type the numbers into it. For a point whose car park has no position the link leads to the point on the course.
## Web push
push-on = Let it wake this phone
push-off = Wake this phone no more
push-is-on = This phone is woken for notices.
push-refused = Not switched on: this browser does not allow it, or the server can't be reached. Allow notices for this page in the browser's settings and try again.
push-says = Notices then come with the page closed too. It can't promise that: the maker of the browser passes them on, a phone without signal, on silent or saving power shows them late or never, and some want the page put on the home screen first. Nobody counts as reached until they answer. Keep the sound on, and a telephone call between you agreed.
## Sheet and display
sheet = My sheet, to print
sheet-paper = My whole sheet as planned, PDF, { $size }
sheet-as-of = As it stands { $when }. Later times may be other: look at the page again when there is a connection.
sheet-cards = If something goes wrong
look = Display
look-device = as the device
look-day = day
look-dark = dark
look-red = red, for the night
look-large = large text
setup-title = Set up a race
setup-language-name = English
setup-steps = Steps
setup-step = step { $number } of { $all }
setup-course = Race
setup-points = Points
setup-runner = Runner
setup-people = People
setup-meetings = Meetings
setup-check = Check
setup-publish = Publish
setup-save = Save
setup-on = Save, on to { $step }
setup-to = Go to { $step }
setup-wrong = Still to do here
setup-doubt = Worth a look:
setup-gone = Take out
setup-take-out = Take the draft out (zip: event.toml and route)
setup-put-in = Put a draft in
setup-put-in-lead = A zip that was taken out here, or an event.toml. It takes the place of this draft; this one stays beside it as replaced.zip.
setup-put-in-file = File
setup-put-in-do = Put in
setup-parcel-zip = This zip can't be read. Take the draft out again, or choose the event.toml itself.
setup-parcel-event = There is no event.toml in UTF-8 in it. Choose the zip that was taken out here.
setup-parcel-large = That is too much: at most 60 files and 100 MB.
setup-unusual = Nothing was changed: this event.toml is not written in a form that these pages can change ({ $why }). Give each table a heading of its own, such as [[points]].
setup-broken = The draft’s event.toml can't be changed here as it stands. Mend it in a text editor and put it in again.
setup-door-lead = This page is for whoever holds the organiser’s link. On the server’s machine `stilepost new` makes one; it opens once.
setup-door-code = Key from the link (what stands behind #)
setup-door-open = Open
setup-link-used = This link has been used already, or is too old. `stilepost new` makes another; the draft is kept.
setup-stranger = This browser holds no key to the set-up.
setup-course-lead = Choose the GPX file of the route; its waypoints become points. All can be changed later.
setup-route = Route (GPX)
setup-route-again = Another route (GPX)
setup-course-found = { $km } km, { $up } m up, { $down } m down, { $points } points
setup-profile = Profile of the course with its points
setup-name = Name of the race
setup-name-hint = as people call it
setup-day = Day of the start
setup-clock = Start, by the race’s clock
setup-zone = Time zone of the race
setup-limit = Time limit (hours)
setup-limit-hint = 30:00
setup-control = Race control: who answers
setup-control-hint = Race control
setup-control-phone = Race control: number
setup-emergency = Emergency number where the race is
setup-start = Start
setup-finish = Finish
setup-points-lead = Where crew may come is what meetings are made of. Touch a point to change it.
setup-paste = Paste the race’s table
setup-paste-lead = Points with km, name, cut-off and crew, a line each. It counts only once you have seen what was read.
setup-paste-hint = 21.5 km; Mill; 11:30; crew yes
setup-read = Read it
setup-read-found = Read: { $count } rows
setup-read-new = a new point
setup-read-known = changes the point there is
setup-read-lost = no km, and no point of that name: it is left out
setup-read-left = Nothing was made of these lines. Give each km, name and time, or leave them.
setup-take = That is right: take { $count } rows
setup-route-broken = The route breaks off at km { $from } and goes on { $gap } km away. Where a stage ends there, say at that point when the next one starts (the way between is not run); else draw the line through.
setup-taken-but = Taken. Lines of which nothing was made: { $count }.
setup-crew-short = crew
setup-crew-yes = · crew yes
setup-crew-no = · no crew
setup-cut-line = cut-off { $when }
setup-point-new = Another point
setup-point-name = Name
setup-km-hint = 21.5
setup-crew-may = Crew may come
setup-aid = Aid station
setup-water = Water
setup-bag = Drop bags
setup-cut = Cut-off
setup-cut-hint = Sat 23:30, or +18:30
setup-edge = By then she must be
setup-edge-out = out
setup-edge-in = in
setup-stop = Planned stop (min)
setup-by = Who reports there
setup-by-nobody = nobody
setup-by-crew = crew
setup-by-volunteer = volunteers
setup-by-timing-mat = timing mat
setup-by-runner = the runner
setup-by-tracker = a tracker
setup-parking = Where to park
setup-parking-hint = field by the weir
setup-runner-lead = A time she means to finish in, or a race she has run: the timetable follows from it.
setup-runner-name = Her name
setup-bib = Bib
setup-target = Target, whole time (hours)
setup-target-hint = 29:00
setup-past = A race she has run
setup-past-lead = In place of a target, or beside it.
setup-past-name = Which
setup-past-ascent = Climb (m)
setup-past-time = Her time
setup-timetable = Timetable
setup-no-timetable = The timetable stands here once route, start, points and a target are right.
setup-between = between { $early } and { $late }
setup-people-lead = Who drives, who is her safety contact at home (asked first when something is wrong), who calls race control.
setup-person-new = Another person
setup-person-more = Save, and one more
setup-person-name = Name
setup-phone = Telephone
setup-email = E-mail
setup-language = Language
setup-drives = drives
setup-calls = calls race control
setup-ladder = As safety contact asked
setup-station = As volunteer at
setup-ladder-first = first
setup-ladder-second = second
setup-ladder-third = third
setup-car = Car
setup-awake = Driver: awake since
setup-sleeps = Means to sleep
setup-sleeps-hint = Sun 01:00 – Sun 03:00
setup-cars = Cars
setup-car-name = Car
setup-car-hint = blue van
setup-seats = Seats
setup-meetings-lead = Who goes where, with what. Times are worked out from her pace and the drives.
setup-no-crew-points = There is no point where crew may come: tick ‘Crew may come’ at step 2.
setup-no-drivers = Nobody drives yet: tick ‘crew’ and ‘drives’ for somebody at step 4.
setup-suggest = Suggest meetings
setup-likely = likely { $when }
setup-from = Car comes from
setup-from-before = the one before
setup-kit = Kit, with commas
setup-kit-hint = head torch, warm layer
setup-food = Food and drink
setup-food-hint = rice pudding, coffee
setup-legs = Drives
setup-legs-lead = Only a drive that somebody stands by makes a ‘leave by’.
setup-leg = { $start } to { $end }
setup-guess = Estimated by distance: { $minutes } min. Not confirmed.
setup-minutes = Minutes
setup-stands-by = Who stands by it
setup-nobody-yet = nobody yet
setup-ready = Ready for this course?
setup-remarks = What the plan says of it
setup-right = Nothing stands in the way.
setup-not-right = Something is still missing.
setup-publish-wrong = Not yet: { $count ->
    [one] one mistake stands in the way.
   *[other] { $count } mistakes stand in the way.
 }
setup-publish-lead = Publishing loads the race into this server and makes one invitation a person. It can be changed and published again.
setup-publish-do = Publish and invite
setup-published = Published as version { $version }.
setup-changes = What changes against version { $version }
setup-as-stored = Published as it stands here (version { $version }).
setup-invite-all = New invitations for who has not come
setup-invited-lead = One a person, good once, for two weeks. They are shown this once: let each scan theirs now, or send the link.
setup-qr = QR of the invitation of { $name }
setup-code = Code
setup-here-only = This server has no public address (STILEPOST_PUBLIC_URL): the links open only where this page opens.
setup-transport = How the race takes away who retires
setup-transport-hint = sweep bus, on the hour
setup-do-emergency = Fill in the emergency number at step 1.
setup-do-control = Fill in the telephone number of race control at step 1.
setup-do-runner = Fill in her name, and a target or a race she has run.
setup-do-contact = Tick ‘safety contact’ for somebody at step 4, asked first.
setup-do-calls = Tick ‘calls race control’ for exactly one person.
setup-do-phone = Fill in their telephone number.
setup-do-people = Add who drives and who is her safety contact at step 4.
setup-do-reports = Say at a point ‘Who reports there’.
setup-do-transport = Ask the race, and fill in ‘How the race takes away who retires’ at step 1.
setup-do-name = Fill in the name of the race.
setup-do-starts = Fill in the day and the time of the start.
setup-do-zone = Choose the time zone of the race.
setup-do-route = Choose the GPX file of the route.
setup-do-span = Write hours and minutes, as in 29:00.
setup-do-km = Write its distance from the start, as in 21.5.
setup-do-cut = Write a time of day (23:30), with a weekday (Sat 23:30), or the hours since the start (+18:30).
setup-do-past = Fill in km, climb and time of the race she has run, or none of them.
setup-do-target = Fill in a target, or a race she has run.
setup-do-confirm = Choose who stands by this drive; until then it gives no time to leave.
setup-tap = Touch the profile: its km goes into the point that is open below, or into a new one.
setup-joins = Pacer who joins here
setup-leaves = Pacer who leaves here
setup-own = How she runs
setup-own-lead = Recordings give her own pace by slope, split times of past years the shape of this course. Both may be left out.
setup-own-files = Recordings of her runs (GPX, FIT, TCX)
setup-results = Split times of others on this course (CSV)
setup-gone-file = Take out { $name }
setup-not-kept = NOT KEPT: the draft can't be written in { $folder } ({ $why }). What you typed stands here still; let the server write there, then save again.
setup-carries = On her from the start, with commas
setup-carries-hint = rain jacket, head torch 8 h
setup-do-fuel = Change what she eats and drinks, or leave it if it is meant so.
setup-do-kit = Write it among the kit of a meeting before then, or at step 3 among what is on her from the start; the hours of a light behind its name, as in ‘head torch 8 h’.
setup-not-taken = The table you pasted is read, but not taken yet: take it below, or empty its box, then go on.
setup-do-number = Write a number, as in 12.
setup-joined = Have come already
setup-not-begun = not begun
setup-missing = { $count } still missing
setup-stage = A stage ends here: the next one starts
setup-stage-hint = Sun 07:00
setup-runners-more = More runners
setup-runner-new = Another runner
setup-fuel = What she eats and drinks
setup-fuel-lead = An hour, from a point until the next one named. To plan bottles and bags with: she drinks to thirst.
setup-fuel-part = From a point on
setup-fuel-more = From another point on
setup-fuel-from = From
setup-fuel-words = In words
setup-fuel-hint = a bar each half hour
setup-fuel-carbohydrate = Carbohydrate (g an hour)
setup-fuel-kcal = Energy (kcal an hour)
setup-fuel-fluid = Fluid (ml an hour)
setup-fuel-sodium = Sodium (mg an hour)

## Changing the plan
change = Change the plan
change-this = Change
change-crew = Who goes
change-own-car = their own car
change-car = Car
change-point = Point
change-first = Nothing counts before you have seen what it is for whom and said yes.
change-who = Somebody else goes, or another car
change-elsewhere = Meet at another point
change-look = See what it changes
change-kit = Bring other things
change-kit-lines = One thing a line
change-skip = Leave the meeting out
change-drive = The drive there from { $start }
change-drive-known = { $minutes } min, somebody stands by it.
change-drive-estimate = { $minutes } min by estimate: nobody stands by it, so it gives no time to leave.
change-drive-unknown = Nobody knows how long it takes, so there is no time to leave.
change-drive-minutes = Minutes, door to door; you stand by it
change-more = Add a meeting or a person, or give the target up
change-add = Add a meeting
change-person = Add a person
change-name = Name
change-phone = Telephone
change-drives = Drives
change-finish = Just finish: the target is given up, the time limit holds
change-cut-off = A cut-off has moved
change-cut-off-which = Cut-off
change-cut-off-until = New time
change-invited-lead = Let them scan this now, or send the link: it is good once, for two weeks, and is not shown again.
follow-title = Followers
follow-none = This link shows nothing: it was taken back, has run out, or was never one. Ask the runner for a new one.
follow-before = { $runner } has not reached a point yet.
follow-last = { $runner } was at { $place } about { $when }, { $km } from the start.
follow-finished = { $runner } has finished, about { $when }.
follow-over = { $runner } is not in the race any more. The last point was { $place }, about { $when }.
follow-next = Next: { $place }.
follow-far = From the start
follow-about = About
follow-delay = All of this is at least { $minutes } minutes old, each time the nearest { $step } minutes. A long silence means nothing here: there is no signal on much of a course.
follow-asked = You looked at { $when }; this page does not change by itself.
follow-again = Look again
follow-on = There is a link for followers.
follow-off = There is no link for followers.
follow-once = Send this link to whoever may follow. It is not shown again.
follow-qr = QR of the link for followers
follow-shows = Whoever has the link sees at which points you were, { $minutes } minutes late, each time the nearest { $step } minutes. They see no position, nobody of your crew and no alarm.
follow-give = Give a link
follow-new = Give a new link, the old one ends
follow-take-back = Take the link back
