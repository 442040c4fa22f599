"""Ways of asking about what crew do: when to leave, where to meet, what to bring, wait or go, who is where."""

from __future__ import annotations

TAKE_BACK = r"""
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
"""

WHO_HAS = r"""
    \bwho (is |has |have )?(got|has|have|carries|carrying|brings|bringing|packed|took) \
      (the|her|our|my|any|some|spare) (\w+ ){0,2}\
      (torch|head torch|lamp|batter\w+|kit|gear|jackets?|layers?|shoes|socks|poles|gels?|bottles?|food|soup|bags?|\
      drop bag|stove|charger|clothes|gloves|blanket|first aid)\b
"""

PEOPLE = r"""
    ^where are (you|they|we)( all| lot| guys| now| right now| at| both)*$
    where (is|are|has|have|did|the)\b.*\b(everyone|PERSON|the others?|others|(the|my|our) (crew|car|van|people|\
      support|team)|\
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
    \bwho (is |will |would )?(picks?|picking|fetch\w*|collect\w*|looks?|looking) (after )?(her|she|PERSON)\b
    ^(the )?(people|crew|team|everyone)$
    everyone (at|now|is)
    anyone (at|else at) PT
    is anyone (at|there|already)
    who else
    \bwhich of us\b
    \bwho (takes|goes|drives|has|meets|paces|brings)\b
    \b(anyone|anybody|someone|somebody) with (her|she)\b
    \b(have|has|got) (a |her )?pacer\b
"""

RIDE = r"""
    \bwho (is |will |was |has to |else )?(be )?(drives?|driving)\b(?! (with|along) )
    \bwho (is |will )?(takes?|taking|brings?|bringing|has|got) (the|our|my|her|a) (\w+ )?(car|van|bus|camper|truck|jeep)\b
    \b(which|what|whose) (car|van) (is |does |will )?(going|goes?|comes?|coming|drives?|driving|it|there|for|to|at)\b
    \b(is|are|does|do|will) (anyone|anybody|someone|somebody|any of (us|you)|PERSON) (\w+ )?(drive|driving) \
      (over |out |up |down )?(to|there|at)\b
    ^(drivers?|driver list|rides?)$
"""

WAIT = r"""
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
"""

DRIVE = r"""
    \b(drive|driving|by car|by road|drivetime)\b.*\b(long|far|time|min|km|take|to|from)\b
    \b(how long|how far|how many (km|min|miles)|distance|time)\b.*\b(drive|driving|by car|in the car|\
      by road)\b
    \b(drive|driving) time\b
    how (long|far) (will it|does it|would it|is it|do we|for us|to)( take)?\b.*\b(WE to (get|drive)|\
      from here|get there|get to|to PT|take us|PT from)\b
    how far (is|to) (PT|the next)
    ^drive\b
    how far away is PT
    \b(is it|are we) (\w+ )?far (to|from) (PT|FINISH|there|here|the next)\b
    \bhow far is it (to|from)\b
"""

LEAVE = r"""
    \b(when|what time|how soon|by when|how early|time)\b.*\bWE\b.*\bGO\b
    \b(when|what time|how soon) (to|for) GO
    time to GO
    \b(do|must|should|shall|have) WE (have to |need to |got to )?be (there|at PT|at FINISH|in place)\b
    \b(can|could|may|should|shall) (we|i) (now |just |still |maybe )*(go to bed|turn in|go to sleep|switch off)\b
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
    \btime (for|to) (nip|pop|grab|go|stop|find)\b
    \b(can|could|may) (we|i) (still )?(sleep|nap|rest|lie down|shower|eat|have a|get some|go for|go and get)\b
    \b(have|got) (we |i )?(still )?(any )?time\b
    \btime (for|to) (a |have |get |some )*(coffee|tea|nap|sleep|eat|lunch|breakfast|dinner|shower|pub|kip)\b
    \bhow (much time|long) (do|have) WE (have|got)\b
    \b(go to|get some|have a) (sleep|nap|kip)\b
    \bwake up\b
    \bare (we|i) late\b
"""

MEETING = r"""
    \bwhen (do|am|will|shall) (i|we) (start|PT|begin|take over|pace|pacing|on|up|join|joining)\b
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
    ^(the )?(meets?|meet ?ups?|rendezvous|appointments?)$
    when (is|are) (the|our|my) (next )?meet
    be where
    where (is|are) (the|our) next
"""

FOOD = r"""
    \b(eat|eats|eating|drink|drinks|drinking|food|feed|soup|fuel|fuelling|nutrition|calories|kcal|\
      bottles?|gels?|fluids?|hungry|snack|meal|menu|noodles|rice|coke|coffee|tea|broth|carbs?|\
      electrolytes?|sandwich\w*|salt|to eat|sip)\b
"""

BRING = r"""
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
"""

TOWARDS = r"""
    \b(should|shall|can|could|may|do|am|is it|would|ok if|allowed|want|thinking|how about|what if|worth|might|\
      ok to)\b.*\bWALK\b.*\bTOHER\b
    ^(we|i) (want|are|am) .*\bWALK\b.*\bTOHER\b
    \bWALK towards? (her|she)\b
    \b(go|going|set out|walk|walking|run) (and |to |out )*(look|looking|search|searching|find) for (her|she)\b
    \b(walk|walking|go|going|run|running|hike|hiking) (out )?(to|and) (meet|find) (her|she)\b
    \bsearch for (her|she)\b
    \bmeet (her|she) (half ?way|on the (course|trail|path|route))\b
"""

COVER = r"""
    \b(can|could|would|will|may|might|shall|should) (?!i\b|we\b|she\b)(\w+ ){1,3}(take( over)?|do|cover|go to) \
      (my|our|the|this|that) (next )?(meeting|turn|shift|drive|stop|handover)\b
    \b(can|could|would|will|may|might) (?!i\b|we\b|she\b)(\w+ ){1,3}(stand in|step in|fill in|go instead|cover)\b
    \b(swap|switch) (meetings?|shifts?|turns?|drives?)\b
    \bwho (can|could) (take over|cover|stand in|go instead|step in|take (my|our))\b
    \btake (my|our) (next )?(meeting|turn|shift|handover)\b
"""
