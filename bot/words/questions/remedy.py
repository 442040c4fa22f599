"""Ways of asking what helps, what she may take and whether she may rest: the cards say what is tried first."""

from __future__ import annotations

REMEDY = r"""
    \bwhat (helps?|works|is good|can help|to do|cures?) (\w+ )?(with|for|against|about)\b
    ^(and |so |but )?what helps\b
    \b(does|do|will|would|can|could) (the |a |some )?(?!WE\b|she\b|her\b|anyone\b|somebody\b)\w+ (\w+ )?\
      help\b(?! (her|us|me) (find|get|out)\b)
    \b(can|may|should|could|must|ought|is|am|allowed) (she|we|i|it)( \w+)? (take|have|swallow|give her|give she|\
      go on with|run on|carry on|sleep|nap|lie down) ?(a |an |some |more |her )?(ibuprofen|paracetamol|aspirin|\
      painkillers?|pain killers?|pills?|tablets?|medicine|salt|caffeine|magnesium|coke|cola|electrolytes?|with|on)\b
    \b(can|may|should|is) she (allowed to |be allowed to )?(sleep|nap|lie down|take a nap|have a nap)\b
    \b(ibuprofen|paracetamol|aspirin|painkillers?)\b.*\b(ok|allowed|safe|good|bad|idea|should|can|may)\b
    \bhow (do|does|to|should|can) (\w+ )?(treat|tape|cure|stop|pop|dress|fix)\b
    ^(pop|drain|tape|burst) (the |a |her )?(blisters?|it)\b
"""
