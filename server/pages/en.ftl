title = Stilepost
board = Board
aid = An aid to a crew, not a rescue service. In danger call { $number } first.
call = Call { $name }
emergency = Emergency { $number }
now = now { $when }
you-are = You are { $name }, { $parts }
leave = Log out of this browser
last-known = Last known
nothing-yet = Nothing has been reported yet.
told-by = told by { $who }, { $ago }
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
doubted = Kept, not counted
doubted-line = { $what } { $when }, told by { $who }: { $why }
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
asking-place = asking this device where it is …
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
