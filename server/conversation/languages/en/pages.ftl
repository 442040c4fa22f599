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
estimate-between = between { $low } and { $high } on the course, likely near { $likely }
estimate-points = between { $from } and { $to }
points = Points ahead: likely time, and between when
points-unheard = Expected by now, nothing reported from there
reached = Points reached
in-at = in { $when }
out-at = out { $when }
through-at = through { $when }
reported-none = reached; no time reported
gets-there = { $odds } that she gets there
own-clock = { $when } your clock
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
people-bound = bound for { $name }, there from { $when }
unreachable = can't be reached over any channel
profile = Course: height along the way, points, where she was last known
profile-none = The route has no heights.
chat = Chat
chat-hint = Ask or report: ‘where is she’, ‘in at the mill 5 min ago’, ‘what do I bring’
send = Send
share-place = Share where I am
asking-place = asking this device where it is
place-refused = This device does not say where it is.
place-shared = Shared where I am.
not-sent = Not sent: no connection. Try again.
stale = No connection since { $when }. What you see may be old.
notices = Told to you
join-title = Join a crew
join-lead = Type the code of your invitation.
join-code = Code
join-look = Look
join-yes = That is me
join-no = Not me
join-who = You are { $name } in { $event }: { $parts }.
join-wrong = This code can't be used. Ask whoever invited you for a new one.
join-wait = Too many wrong codes. Wait a quarter of an hour.
stranger = Nothing is shown to somebody who is not part of an event. Use the link of your invitation.
answer-title = Your answer
answer-done = You answered ‘{ $answer }’ { $when }. Nothing more is needed here; to say something else, write in your chat.
answer-over = No answer is wanted to this any more.
answer-no-link = This link can't be used: it is too old, or not whole. Answer in your chat or on the page, or telephone your crew.
no-events = You have no part in an event yet.
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
first-then-leave = After that: leave by { $when } for { $place }.
first-then-be = After that: be at { $place } from { $when }.
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
bars-read = Solid: reported. Hatched: estimate, with the likely time as a line. Thin line below: when you are to be there. Upright line: now.
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
going-before-the-start = before the start
going-moving = on the course
going-at-a-point = at a point
going-resting = resting
going-retired = retired, not yet with anybody
going-retired-in-hand = retired, with somebody
going-finished = finished
going-closed = closed
## Sheet and display
sheet = My sheet, to print
sheet-as-of = As it stands { $when }. Later times may be other: look at the page again when there is a connection.
sheet-cards = If something goes wrong
look = Display
look-device = as the device
look-day = day
look-dark = dark
look-red = red, for the night
look-large = large text
