"""The table of questions: the first line whose pattern is found in a sentence says what is asked.

Sentences come tidied, with names replaced: PT a point, PERSON somebody, FINISH the finish, LATER a time to
come, 'she' a runner. WE, GO and TROUBLE stand for their words below. The order is part of the table: what
is narrower stands first. To teach a new way of asking, add it to its line here and to the table in the
tests.
"""

from __future__ import annotations

from bot.words.meaning import Question

_WE = r"(?:we|i|us|me|you|crew|they)"
_GO = (
    r"(?:leave|go|set off|set out|head (?:off|out|over)|head|get going|get off|drive off|start driving|depart|"
    r"be off|move|get moving|hit the road|get away|make a move|get on the road|shoot off|take off|drive|leaving)"
)
_TROUBLE = (
    r"(?:feet|foot|blisters?|hot ?spot|stomach|tummy|belly|sick|vomit\w*|throw\w* up|puk\w*|nause\w*|fell|fall\w*|"
    r"ankle|knee|cold|shiver\w*|hypotherm\w*|hot|heat|overheat\w*|cramp\w*|chaf\w*|sleepy|falling asleep|"
    r"wants to (?:stop|quit|drop|give up)|(?:wont|not|can not|will not) (?:eat|drink)|dizzy|confused|thunder\w*|storm)"
)

TABLE: tuple[tuple[Question, str], ...] = (
    (
        Question.AT,
        r"""
        ^(when|what time) (did|was|has) she\b(?!.*\b(last|miss\w*|already)\b).*\bPT\b
        """,
    ),
    (
        Question.USAGE,
        r"""
        what (else )?can (i|you|we) (ask|do|say|write|tell|help)
        what (things|questions|commands|stuff) (can|could)
        ^(commands?|usage|menu|instructions|manual|options|how to use)\b
        how (do|does|can) (i|this|it|we) (use |work|talk)
        what do you (know|do|understand)
        what are you for
        what can this
        how to (report|ask)
        how do (i|we) (report|ask|tell)
        """,
    ),
    (
        Question.SLOWER,
        r"""
        \b\d+ percent (slower|slow|down|off|less|faster|quicker|up|more)
        (slows?|slowing|slowed|drops?|dropped|loses?|fades?|faded|speeds? up|faster|slower|quicker|\
          picks? up)\b.*\d+ percent
        \b(if|suppos\w*|say|assum\w*)\b.*\b(slow\w*|fad\w+|speed\w* up|faster|quicker|picks? up the pace|\
          loses? (pace|speed|time)|drops? (pace|speed|\d+ percent))
        \b\d+ percent\b.*\bslow
        """,
    ),
    (
        Question.LEAVES_NOW,
        r"""
        \b(if|suppos\w*|assum\w*|say|when|provided|once)\b.*\b(leave|leaves|left|leaving|goes|went|\
          sets? off|sets? out|heads? (out|off)|gets? going|gets? moving|starts?|going|departs?|\
          is out)\b.*\b(now|right away|straight away|this minute|LATER)\b
        \bleav(es|ing) (now|right away|straight away|LATER)\b
        \bif (she|they) (leaves?|goes?|left)\b
        \b(if|suppos\w*)\b.*\bNOW\b
        """,
    ),
    (
        Question.HOW,
        r"""
        ^(is|has|was) she (been )?(eating|drinking|peeing|sick|hurt|injured|limping|smiling)( \w+)?$
        """,
    ),
    (
        Question.TAKE_BACK,
        r"""
        \b(take|get|have|collect|carry|bring|need) (\w+ ){0,2}back\b
        \b(take|collect|pick up|grab|get)\b (\w+ ){0,3}(from|off) (her|she)\b
        give (us|me) back
        \bshe\b.*\b(hands?|gives?) (us|me|over|back)
        swap out
        take away
        taking back
        drop(s|ping)? (off )?(with|on) us
        (she|her) (leaving|leave|dump|get rid of)\w* (with|here)
        what comes back
        get rid of
        \bgives? (us |me )?(anything|something|stuff|things?) back\b
        """,
    ),
    (
        Question.NUMBERS,
        r"""
        (number|phone|tel|telephone|contact|call|ring|reach)\b.*\b(race control|emergency|rescue|hq|\
          organis\w*|medics?|ambulance|police|race director)
        (race control|emergency|rescue|hq)s? (number|phone|tel|contact)
        who (do|should) (i|we) (call|ring|phone)
        ^numbers$
        ^(phone|emergency) numbers?$
        important numbers
        ^race control$
        """,
    ),
    (
        Question.CARDS,
        r"""
        \bTROUBLE\b.*\b(what (do|should|can)|what now|how do|any (tips|advice)|plan|do (i|we))\b
        \b(what (do|should|can)|what (now )?(if|about)|how do (i|we)|advice|plan for)\b.*\bTROUBLE\b
        \bcards?\b
        \bif then\b
        what (do|should|can) (i|we) do (now|about|if|when|with)
        """,
    ),
    (
        Question.PEOPLE,
        r"""
        ^where are (you|they|we)( all| lot| guys| now| right now| at| both)*$
        where (is|are|has|have|did|the)\b.*\b(everyone|PERSON|the others?|others|the crew|the car|the van|\
          rest of|you guys|other car|the team|the pacers?|safety contact)
        \bwho (is|are|has|will|was) (where|at|there|going|with|on|driving|in|doing|got|where|meeting|\
          crewing|pacing|next|here|taking|the)
        \bwhos?\b.*\b(PT|where|there|pac|driv|car|turn|shift|crew)
        PERSON.*\b(phone|number|contact|at|now|got to|there|on)\b
        (phone|number|reach|contact|call|ring|where) (\w+ )?PERSON
        is PERSON
        has PERSON
        \bwho (is|has) got
        ^PERSON$
        who goes
        everyone (at|now|is)
        anyone (at|else at) PT
        is anyone (at|there|already)
        who else
        \bwhich of us\b
        \bwho (takes|goes|drives|has|meets|paces|brings)\b
        \b(anyone|anybody|someone|somebody) with (her|she)\b
        \b(have|has|got) (a |her )?pacer\b
        """,
    ),
    (
        Question.PICTURE,
        r"""
        \b(picture|chart|profile|graph|image|diagram|elevation)\b
        ^(send |show )?(me )?(a |the )?map$
        """,
    ),
    (
        Question.DARK,
        r"""
        \b(dark|daylight|sunset|sundown|dusk|nightfall|sunrise|dawn|night time|light (there|at|by|when|\
          then|still|enough)|still light|get light|be light|light out)\b
        \bshe\b.*\b(need|want|have)\b.*\b(light|torch|lamp)
        in the light\b
        (does|will|did) she need.*\b(light|torch)
        \b(at|in the|is it|be|by) night\b
        """,
    ),
    (
        Question.WAIT,
        r"""
        \b(wait|waiting|stay|staying|hang (on|about)|hanging|hold on|stick about|\
          stick it out|sit tight|keep waiting)\b.*\b(or|longer|still|worth|on|any|more|for her|for she|\
          here|keep|should|go)\b
        \b(should|do|shall|worth|is it|must) (\w+ ){0,3}(wait|stay|waiting|staying|hang\w* (on|about)|\
          hold\w* on|keep waiting)
        give up on
        \bwait\?
        ^(so )?(wait|stay) or (go|leave|move)
        go or (wait|stay)
        (move|go|drive|head|push) on (to|or|now|yet|then)
        how (much )?long(er)? (do|should|shall|must|are) (we|i) (\w+ )?(wait|stay|hang|give)
        wait how long
        skip (PT|this|it)
        until when (do|should) (we|i) wait
        when (do|can|should) (we|i) give up
        \b(would|should) (you|we|i) (wait|stay|go)\b(?! to\b)(?!.*\bnow\b)
        \bskip\b
        """,
    ),
    (
        Question.MISSED,
        r"""
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
        """,
    ),
    (
        Question.CUT_OFF,
        r"""
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
        """,
    ),
    (
        Question.LAST_STOP,
        r"""
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
        """,
    ),
    (
        Question.DRIVE,
        r"""
        \b(drive|driving|by car|by road|drivetime)\b.*\b(long|far|time|min|km|take|to|from)\b
        \b(how long|how far|how many (km|min|miles)|distance|time)\b.*\b(drive|driving|by car|in the car|\
          by road)\b
        \b(drive|driving) time\b
        how (long|far) (will it|does it|would it|is it|do we|for us|to)( take)?\b.*\b(WE to (get|drive)|\
          from here|get there|get to|to PT|take us|PT from)\b
        how far (is|to) (PT|the next)
        ^drive\b
        how far away is PT
        """,
    ),
    (
        Question.LEAVE,
        r"""
        \b(when|what time|how soon|by when|how early|time)\b.*\bWE\b.*\bGO\b
        \b(when|what time|how soon) (to|for) GO
        time to GO
        leave by
        leaving time
        departure
        latest (time )?(WE )?(can |could |should |to )?.*GO
        WE (have to|need to|got to|supposed to|meant to|ought to|must|should) GO
        \b(should|shall|do|can|must) WE (have to |need to |better )?GO (now|yet|soon|already|NOW)
        when (are|is|am) WE (off|leaving|going|heading|setting off)
        how long (do|have) WE (have|got) (until|before|till)
        when WE GO
        when leave
        set off when
        ^leave\b
        when do WE need to be (on the road|off|out)
        \b(when|how early|what time|how soon|from when)\b.*\bWE\b.*\bbe (there|at PT|at FINISH|in place|in position)\b
        \btime (for|to) (a |have |get |some )*(coffee|tea|nap|sleep|eat|lunch|breakfast|dinner|shower|pub|kip)\b
        \bhow (much time|long) (do|have) WE (have|got)\b
        \b(go to|get some|have a) (sleep|nap|kip)\b
        \bwake up\b
        \bare (we|i) late\b
        """,
    ),
    (
        Question.MEETING,
        r"""
        \bpark(ing)?\b
        \bdirections\b
        \bhow (do|can|should) (we|i) get (to|there)\b
        \b(postcode|address|walk in|crew access)\b
        \b(is there|got|any|have) (phone )?signal (at|there|in)\b
        \bopen (to|for) crew\b
        \bare (we|i) allowed\b
        \brules\b
        \b(where|when|what|which)\b.*\bWE\b.*\b(see|meet|meeting|seeing|next|go next|go to|going|\
          supposed to be|need to be|meant to be|have to be|should be|do next|doing next|catch)\b
        next (meeting|meet|crew|rendezvous|job|crew point|crew stop|pit stop|appointment)
        meet(ing)? (point|place)
        (our|my) next
        where (do|should|are|shall|will|now|to) WE
        where next
        where to (next|now)
        what (is|comes) next for WE
        ^meeting
        when (is|are) (the|our|my) (next )?meet
        be where
        where (is|are) (the|our) next
        """,
    ),
    (
        Question.HEARD,
        r"""
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
        """,
    ),
    (
        Question.PLAN_GAP,
        r"""
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
        """,
    ),
    (
        Question.FOOD,
        r"""
        \b(eat|eats|eating|drink|drinks|drinking|food|feed|soup|fuel|fuelling|nutrition|calories|kcal|\
          bottles?|gels?|fluids?|hungry|snack|meal|menu|noodles|rice|coke|coffee|tea|broth|carbs?|\
          electrolytes?|sandwich\w*|salt|to eat|sip)\b
        """,
    ),
    (
        Question.BRING,
        r"""
        \b(bring|pack|packing|kit|gear|stuff|things|clothes|shoes|socks|poles|jacket|layers?|head torch|\
          torch|spare|batteries|drop bag|bag|equipment|kitlist|checklist)\b
        \b(what|which|anything)\b.*\b(we|i|us|me|you|she|her)\b.*\b(need|take|have ready|hand|give|\
          get ready|carry|prepare|lay out|bring|hold|fetch|have out|have with|swap|change|pick up)\b
        have ready
        (get|be) ready (for|at)
        what (do|should) (we|i) (need|hand|give|have)
        need (at|for|there)
        ready for her
        change of
        \banything (special|else|particular|extra)\b
        \bshould (we|i) (get|bring|buy|have|take|carry)\b
        \bwhat is in the\b
        """,
    ),
    (
        Question.HOW,
        r"""
        \bhow (is|s|was|are) (she|her|things|it|our girl|the runner)( (look|feel|hold|cop|doing|going|seem|\
          getting)\w*)?\
          ( (on|up|so far|now|today|there|at PT|right now))*$
        \bhow (does|did|do) (she|her|it) (look|feel|seem|cope)
        is (she|everything) (ok|fine|well|good|all right|eating|drinking|struggling|suffering|hurting|\
          happy|tired|strong|in good|in a)
        (she|her) (ok|alright|good|fine)\b
        what (is|are) she (feeling|looking)
        how (does|did|do) she (look|feel|seem)
        what (shape|state|condition|mood)
        feeling\b
        in good (shape|form)
        how are (her|the) (feet|legs|spirits)
        (her )?(mood|spirits|morale) \?
        \bhow is she\b
        \b(did|does|do) she (look|seem|feel|sound)\b
        """,
    ),
    (
        Question.FINISH,
        r"""
        \bFINISH\b
        \bwhen (is|will|are|would) she (be )?(all )?(done|home|over)
        \b(finish\w*|the end|be done|is done|all over|get home|complete|finishing|home time|final time|\
          end time|final)\b
        \bat this (pace|rate|speed)\b
        \b(cross|over) the line\b
        \bkeeps? (this|it|going)( up)?\b
        \b(nearly|almost) (done|there|finished)\b
        """,
    ),
    (
        Question.AT,
        r"""
        \bPT\b(?=.*\b(when|what time|time|eta|arriv\w*|due|expect\w*|get|gets|reach\w*|there|be|soon|hit|\
          long until|make|see|estimate|likely|roll|land|come|in|prediction|forecast|window)\b)
        \b(when|what time|time|eta|arriv\w*|due|expect\w*|how long|how soon|get to|reach\w*|prediction|\
          forecast|window|is she at|been at|was she at|estimate)\b.*\bPT\b
        """,
    ),
    (
        Question.WHERE,
        r"""
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
        """,
    ),
    (
        Question.PLAN,
        r"""
        \b(plan|plans|schedule|timetable|itinerary|splits?|all the( planned| target)? times|times for|\
          all times|whole thing|\
          timings|pace chart|target times?|running order|points)\b
        \b(list of|her) times\b
        """,
    ),
    (
        Question.NEXT,
        r"""
        \b(next|when|eta|how long|due|get here|gets here|here yet|expected|expect|expecting|coming|\
          what time|far off|be here|arriv\w*|soon|in sight|on her way|forecast|prediction|how many min|\
          to us|nearly here|close|minutes away|min away|how far)\b
        \b(is|has|did|was) she (been )?(in|here|arrived?|come|there|back|got)\b
        """,
    ),
)

SHORT = {"WE": _WE, "GO": _GO, "TROUBLE": _TROUBLE}
