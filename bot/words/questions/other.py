"""Ways of asking how she is, what to do in trouble, whom to call, about light, pictures and the bot itself."""

from __future__ import annotations

USAGE = r"""
    what (else )?can (i|you|we) (ask|do|say|write|tell|help)
    what (things|questions|commands|stuff) (can|could)
    ^(commands?|usage|menu|instructions|manual|options|how to use)\b
    how (do|does|can) (i|this|it|we) (\w+ )?(use |work|talk)
    what do you (know|do|understand)
    what are you for
    what can this
    how to (report|ask)
    how do (i|we) (report|ask|tell)
"""

DUTY = r"""
    ^(so |ok )?what (do|should|must|am|will|would) (i|we) (have|need|supposed|meant|expected)? ?(to )?(do|be doing)$
    what (is|are) (my|our) (job|jobs|duty|duties|part|role|task|tasks)\b
    what am i (doing|for|here for)( here)?$
    what (do|does) (i|a|the) (\w+ )?(safety contact|crew|pacer|organiser|volunteer|supporter) (have to |need to )?do
"""

HOW_PLAIN = r"""
    ^(is|has|was) she (been |badly |seriously )?(eating|drinking|peeing|sick|hurt|injured|limping|smiling|bleeding|\
      conscious|unconscious|breathing|confused|making sense)( \w+)?$
"""

NUMBERS = r"""
    (number|phone|tel|telephone|contact|call|ring|reach)\b.*\b(race control|emergency|rescue|hq|\
      organis\w*|medics?|ambulance|police|race director)
    (race control|emergency|rescue|hq)s? (number|phone|tel|contact)
    who (do|should) (i|we) (call|ring|phone)
    ^numbers$
    ^(phone|emergency) numbers?$
    important numbers
    ^race control$
"""

CARDS = r"""
    \bTROUBLE\b.*\b(what (do|should|can)|what now|how do|any (tips|advice)|plan|do (i|we))\b
    \b(what (do|should|can)|what (now )?(if|about)|how do (i|we)|advice|plan for)\b.*\bTROUBLE\b
    \bcards?\b
    \bif then\b
    what (do|should|can) (i|we) do (now|about|if|when|with)
"""

PICTURE = r"""
    \b(picture|chart|profile|graph|image|diagram|elevation)\b
    ^(send |show )?(me )?(a |the )?map$
"""

DARK = r"""
    \b(dark|daylight|sunset|sundown|dusk|nightfall|sunrise|dawn|night time|light (there|at|by|when|\
      then|still|enough)|still light|get light|be light|light out)\b
    \bshe\b.*\b(need|want|have)\b.*\b(light|torch|lamp)
    in the light\b
    (does|will|did) she need.*\b(light|torch)
    \b(at|in the|is it|be|by) night\b
"""

HOW = r"""
    \bwhat is she (up to|doing)\b
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
"""

TOLD = r"""
    \bwho (else )?(all )?(knows|know|is aware|has been (told|asked|informed|alerted|notified|called)|was (told|\
      asked|informed|\
      alerted|notified)|is told|got told|did you (tell|ask|alert|inform|notify)|have you (told|asked|alerted|\
        informed)|has \
      (answered|replied|responded|it|got it|got this|the alarm|been reached)|have they told|is on (it|this)|\
        is handling|is dealing|\
      holds|is holding|answered|replied)\b
    \b(does|do|did) (race control|everyone|anyone|anybody|the crew|they|PERSON) know\b
    \b(is|has) (race control|anyone|anybody|everyone|PERSON) (been )?(told|aware|informed|answered|replied|on it)\b
    \bhas (anyone|anybody|someone|PERSON) (answered|replied|responded|called|rung|picked up|taken it|got this)\b
    \b(anyone|anybody|someone) (on|handling|dealing with|got|holding) (it|this|the alarm)\b
    \b(is there|any) (an )?(open )?alarms?\b
    \balarm (is )?(still |now )?(open|on|over|going|active|closed)\b
    \b(is|was) (the|this|that|her) alarm\b
    \b(what|how) (about|is up with|is with|is happening with|happened to|happened with) (the|this|that|her) alarm\b
    ^(so |and |but |now )*what (has )?happened( to (she|her))?( now| here)?$
    \b(should|must) (i|we) be (worried|concerned|alarmed|scared)\b
    \b(do|should|must) (i|we) (need to |have to )?worry\b
    \bis she in (danger|trouble)\b
    ^alarms?$
    \bwhat is the alarm\b
    \bstate of the alarm\b
"""
