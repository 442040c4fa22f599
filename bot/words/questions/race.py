"""Ways of asking about her race: where she is, when she gets where, plan, cut-offs, what-ifs."""

from __future__ import annotations

AT_PAST = r"""
    ^(when|what time) (did|was|has) she\b(?!.*\b(last|miss\w*|already)\b).*\bPT\b
"""

REPORT = r"""
    ^(the |her |a |my |race )*(report|summary|recap|debrief|results?)( please| of (the|her|my) race| for (she|her))*$
    ^(bericht|zusammenfassung|rennbericht|auswertung)$
    ^(so |and |well )*how (was|went) (the |her |my )?(race|run)( for (she|her))?( overall| in the end)?$
    ^(so |and |well )*how did (it|she|that|i|we|everything|(the|her|my) race) (all )?(go|do|end|turn out|work out)\
      ( in the end| overall| today| against the plan)?$
    ^(so |and |well )*is (it|this|that|(the|her) race) (all )?(over|finished|done|ended)( now| yet| then)*$
    ^is she out of the race( now| then)*$
"""

SLOWER = r"""
    \b\d+ percent (slower|slow|down|off|less|faster|quicker|up|more)
    (slows?|slowing|slowed|drops?|dropped|loses?|fades?|faded|speeds? up|faster|slower|quicker|\
      picks? up)\b.*\d+ percent
    \b(if|suppos\w*|say|assum\w*)\b.*\b(slow\w*|fad\w+|speed\w* up|faster|quicker|picks? up the pace|\
      loses? (pace|speed|time)|drops? (pace|speed|\d+ percent))
    \b\d+ percent\b.*\bslow
"""

LEAVES_NOW = r"""
    \b(if|suppos\w*|assum\w*|say|when|provided|once)\b.*\b(leave|leaves|left|leaving|goes|went|\
      sets? off|sets? out|heads? (out|off)|gets? going|gets? moving|starts?|going|departs?|\
      is out)\b.*\b(now|right away|straight away|this minute|LATER)\b
    \bleav(es|ing) (now|right away|straight away|LATER)\b
    \bif (she|they) (leaves?|goes?|left)\b
    \b(if|suppos\w*)\b.*\bNOW\b
"""

MISSED = r"""
    \bmissed her\b
    \bmiss(ed)?\b
    \b(has|did|have|had|is|was|could|might|may) (she|her|they)\b.*\b(already|been past|been through|\
      gone past|gone by|\
      gone through|been by|come through|came through|go through|get through|passed|pass|past|through|\
      go by|go past|come past|been and gone|slip|slipped)\b
    already (through|gone|past|been|passed|left)
    gone (past|through|by) (us|already)
    passed (us|already)
    too late
    got past us
    been and gone
    slipped (past|by)
    (she|her) (already )?(gone|been) (past|through)
    not see her go
    \bdid she (already )?leave\b
    (is|has) she (already )?(gone|left)\b
    \bgone (through|past|by)\b
    without us (seeing|noticing)
    \b(are|will|can|could|do|did) (we|i) (still |just |even )?(be )?\
      (in time|make it|catch|get (here|there) in time)\b
"""

CUT_OFF = r"""
    \bcutoff\b
    \bthe cut\b
    time limit
    make it in time
    in time for the
    inside the limit
    time barrier
    be timed out
    get timed out
    hours? limit
    closing time
    limit at
    (swept|sweep|sweeper) (catch|up|get)
    how much (time|slack|spare|buffer|margin) (has|does|is) (she|there)
    \benough time\b
    \bbe (pulled|stopped|kicked|taken out|disqualified)\b
    \btight\b
    \btime out\b
    \b(odds|chances?|likely)\b.*\b(make|makes|making)\b
"""

LAST_STOP = r"""
    how (much )?(long|many min|time|much time)\b.*\b(was|did|has|is|were|been|have) (she|her|\
      they)\b.*\b(at|in|stop\w*|there|spend|spent|stay\w*|last|sit|sat|aid|PT|rest\w*|take|took|been|\
      for)\b
    (last|previous) (stop|aid station|pit stop|break)\b.*
    how long (was|is) (the|her|that|this) (last )?(stop|break|rest|pit)
    stop time
    time (in|at) (the )?(aid|stop|last)
    how long (at|in) (the )?(last|PT|aid|stop)
    how long (did )?(she )?(stop\w*|sit|sat|rest|stay\w*)
    min (at|in) (the )?(last|PT)
    quick stop
    long stop
    time stopped
    \bhas she (stopped|rested|slept)\b
"""

HEARD = r"""
    \bwhat is (happening|going on|the situation|occurring)\b
    \b(did|have) (i|we) miss(ed)? (anything|something|much|owt)\b
    \blast (heard|hear|seen|saw|see|update|report|news|known|sighting|check in|checkin|ping|word|info|\
      contact|spotted|time (anyone|you|we|she was)|fix|time)
    \bwhen (did|was|has|have|is)\b.*\b(last|hear|heard|seen|latest|saw)\b
    \b(any|no|got) (more |new |fresh )?(news|word|updates?|info|sign|intel)
    heard (from|anything|about|owt|of)
    how (old|fresh|recent)
    latest (news|update|on|from|report|word|info|sighting)?$
    latest (news|update|report|word|sighting)
    what is the latest
    anyone (seen|heard)
    (anything|news) (from|of|about|on|yet) ?(she|her)?
    who saw her
    whens the last
    ^(news|updates?|status|latest)$
    seen her
    hear anything
    ^anything$
    \b(got|has|have|lost) (a |her |the )?signal\b
    \b(anything|what is|any) new\b
    ^new$
    \bheard\b
"""

PLAN_GAP = r"""
    \b(behind|ahead|early or late|late or early|time wise|timewise|up or down|down or up|on time|\
      on (plan|schedule|track|target|pace|course for)|off (plan|schedule|pace)|slipping|losing time|\
      lost time|gaining|running late|running early|(up|down) on|made up (time)?|making up)\b
    (against|vs|versus|compared (to|with)|relative to|to|with|than) (the |her |our )?(plan|schedule|\
      target|goal)\b
    how (is|s) she (doing|going|getting on) (on|for|with) (time|plan)
    how late
    how early is she
    goal (a|b|c)
    (slower|faster|quicker) than
    is she (late|early|slow|fast)\b
    how many min (down|up|late|early|off)
    target pace
    \bhow (slow|fast|quick)\b
    \bwhat (pace|speed)\b
    \blater than\b
"""

FINISH = r"""
    \bFINISH\b
    \bwhen (is|will|are|would) (she|it|this) (all )?(be )?(all )?(done|home|over)
    \b(finish\w*|the end|be done|is done|all over|get home|complete|finishing|home time|final time|\
      end time|final)\b
    \bat this (pace|rate|speed)\b
    \b(cross|over) the line\b
    \bkeeps? (this|it|going)( up)?\b
    \b(nearly|almost) (done|there|finished)\b
"""

AT = r"""
    \bPT\b(?=.*\b(when|what time|time|eta|arriv\w*|due|expect\w*|get|gets|reach\w*|there|be|soon|hit|\
      long until|make|see|estimate|likely|roll|land|come|in|prediction|forecast|window)\b)
    \b(when|what time|time|eta|arriv\w*|due|expect\w*|how long|how soon|get to|reach\w*|prediction|\
      forecast|window|is she at|been at|was she at|estimate)\b.*\bPT\b
"""

WHERE = r"""
    \b(far|much|km|miles|distance|long)\b.*\b(to go|left|remaining)\b
    \b(distance|km|miles) (left|remaining|to go)\b
    \bis she (still )?(moving|stopped|resting|running|walking|asleep|sleeping|going)\b
    \b(where|whereabouts|position|location|gps|tracker|coordinates|coords|pinpoint|locate)\b
    how far (along|has|in|is she|into|round|through|from|on)
    (what|which) (km|mile|kilometre|part|leg|section)
    on the (course|map|trail)
    (at|in) (what|which) (place|bit)
    find her
    track her
    \bcan (you|anyone|we|i) see (her|she)\b
    \bis she lost\b
    \bis she (still |there |now |already )*with (you|anyone|anybody|someone|somebody|PERSON|them)\b
"""

PLAN = r"""
    \bwhat (was|is) she (meant|supposed|due) to (do|run|be doing)\b
    \b(plan|plans|schedule|timetable|itinerary|splits?|all the( planned| target)? times|times for|\
      all times|whole thing|\
      timings|pace chart|target times?|running order|points)\b
    \b(list of|her) times\b
    ^(the )?times$
"""

NEXT = r"""
    \b(still )?ages( yet| away| left)?\b
    \b(next|when|eta|how long|due|get here|gets here|here yet|expected|expect|expecting|coming|\
      what time|far off|be here|arriv\w*|soon|in sight|on her way|forecast|prediction|how many min|\
      to us|nearly here|close|minutes away|min away|how far)\b
    \b(is|has|did|was) she (been )?(in|here|arrived?|come|there|back|got)\b
"""

MY_RACE = r"""
    \bam i (still )?(ok|fine|safe|good|all right|in time|in trouble|close) (for|with|on|to)\b.*\b(cutoff|time|limit)\b
    \bhow am i (doing|going|looking|getting on|placed|faring)\b
    \b(am|are) (i|we) (on (time|plan|schedule|track|target|pace)|ahead|behind|late|early|ok for time|doing (ok|\
      well|fine))\b
    \bhow (is|are) my (time|race|pace|timing)\b
    \b(will|can|do|am) i (still )?(going to )?(make|making|beat|beating) (it|the cutoff|cutoff|my (time|goal))\b
    ^my (time|race|splits?|progress)$
    \bhow (far|much|many min) (am i )?(behind|ahead|up|down)\b.*\b(i|my|me)\b|\bhow (far|much|many min) (behind|\
      ahead) am i\b
"""

GOALS = r"""
    \b(when|what time|where|at what|until when|till when|how late|latest)\b.*\bgoals?\b.*\b(change|changes|\
      changing|changeover|switch\w*|\
      over|flip\w*|gone|hold\w*|good|drop\w*|slip\w*|start\w*|become\w*|turn\w*|move\w*|end\w*|off|possible|\
        alive|still on)\b
    \bgoals?\b.*\b(change|changes|change over|changeover|switch)\b
    \b(when|until when|how long) (is|does|do|will|can|are)\b.*\bgoal (a|b|c)\b.*
    \bstill (on|make|in for|possible)\b.*\bgoal (a|b|c)\b
    \bgoal (a|b|c) (still|gone|possible|over|alive)\b
    ^(the |her )?(goals?|targets?|aims?)( change| times?)?$
    \b(change|changeover|switch) (of|to) goals?\b
"""

CLOSES = r"""
    \b(when|what time|how late|until when|till when)\b.*\b(close|closes|closing|closed|shut|shuts|shutting|\
      open until|open till)\b
    \b(closing|closure|shutting) time\b
    \bPT (close|closes|closing|shut|shuts)\b
"""
