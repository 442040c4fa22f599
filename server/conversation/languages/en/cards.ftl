# The built-in if-then cards. Their sources stand in server/conversation/telling/cards.py. For crew and runner, not for treating:
# whatever hurts, bleeds or confuses is for the race's medics, who decide.

card-red-flag = Any one of these: call { $emergency } now and do as they say, then race control, { $race_control }. A medic is fetched, and she does not leave until the medic has said she may.
card-call-medic = the medics at the point; between points race control, { $race_control }
card-call-race-control = race control, { $race_control }

card-flag-life-1 = she does not wake, can hardly be woken, or does not breathe normally
card-flag-life-2 = a fit
card-flag-life-3 = chest pain
card-flag-life-4 = face, lips or tongue swell, or she wheezes
card-flag-life-5 = hot and confused
card-flag-life-6 = weak on one side, or one side of the face hangs
card-flag-life-7 = bleeding that does not stop under a firm hand: go on pressing

card-flag-always-1 = she is confused, talks oddly, does not know where she is
card-flag-always-2 = she faints, or is short of breath at rest
card-flag-always-3 = a severe headache, or one that grows
card-flag-always-4 = she cannot see or speak properly
card-flag-always-5 = her heart beats irregularly
card-flag-always-6 = muscles too painful, swollen or weak to stand on

card-flag-head-1 = neck pain
card-flag-head-2 = growing confusion, unusual behaviour, or she grows drowsier
card-flag-head-3 = vomiting again and again
card-flag-head-4 = weakness or tingling in arms or legs
card-flag-head-5 = a headache that is severe or grows
card-flag-head-6 = she sees or hears badly, or double

card-flag-water-1 = vomiting, bloated, confused or with a headache: too much water does this as well as too little; a medic before more drink or salt

## feet
card-feet = a hot spot, a blister, wet or swollen feet
card-feet-try-1 = stop at the first rub, not at the next point
card-feet-try-2 = shoe and sock off, sand and grit out, dry the foot
card-feet-try-3 = tape or cover as she has practised; fresh dry socks
card-feet-try-4 = lace more loosely if the foot has swollen, spare shoes half a size larger
card-feet-try-5 = blisters that need more than a cover are for the medics
card-feet-red-1 = she cannot put weight on the foot
card-feet-red-2 = numb, white or blue toes that do not warm up
card-feet-red-3 = a deep cut, or a wound that is hot, red and spreading

## stomach
card-stomach = nausea, vomiting, nothing stays down
card-stomach-try-1 = read the flags first: they outrank every step here
card-stomach-try-2 = slow to a walk, get out of the sun, loosen what presses on the stomach
card-stomach-try-3 = pause food for ten to twenty minutes, then small bites of something plain
card-stomach-try-4 = sip to thirst, no more; no pills for pain or salt unless the medics say so
card-stomach-try-5 = no ibuprofen or its like, above all when she is dry, vomits, or has dark or no urine
card-stomach-try-6 = only with no flag at all: give it half an hour before deciding anything
card-stomach-red-1 = vomiting again and again, or with blood or black
card-stomach-red-2 = swollen hands or face, or heavier than at the start
card-stomach-red-3 = not even sips of water stay down
card-stomach-red-4 = no urine for many hours, or it is dark like cola
card-stomach-red-5 = belly pain that does not let go

## fall
card-fall = she has fallen
card-fall-try-1 = before she moves: do head, neck or back hurt, does anything tingle? Then she stays as she lies, and you call
card-fall-try-2 = did she hit her head? Then take the card ‘head injury’, even if she feels well
card-fall-try-3 = else sit, breathe; wrists, ribs, knees: what hurts, what does not move
card-fall-try-4 = warm layer on while sitting
card-fall-try-5 = stand, then walk fifty metres, then decide
card-fall-try-6 = clean and cover a graze; anything deeper is for the medics
card-fall-red-1 = she hit her head, even if she feels well
card-fall-red-2 = neck or back pain, tingling, or no feeling in a limb: do not move her
card-fall-red-3 = she cannot walk, or a joint or bone looks wrong

## head-injury
card-head-injury = she hit her head
card-head-injury-try-1 = her race is over until a medic has seen her, however well she feels
card-head-injury-try-2 = neck pain or tingling: she stays as she lies, and nobody moves her head
card-head-injury-try-3 = she is not left alone: somebody watches her, through the night as well
card-head-injury-try-4 = she does not drive, and does not decide by herself that she is well
card-head-injury-try-5 = no pills for pain, no alcohol
card-head-injury-red-1 = she cannot remember the fall, or what came before it
card-head-injury-red-2 = dizzy, sick, unsteady, dazed, or light and noise hurt

## weather
card-weather = storm, lightning, fog, great heat or cold on its way
card-weather-try-1 = warm and waterproof layers on before she is cold, in the lee of something
card-weather-try-2 = lightning: into a car or building; none near: crouch low, feet together, apart from each other, away from ridges, trees and water; go on 30 minutes after the last thunder
card-weather-try-3 = fog: slower, from mark to mark, with whoever is near
card-weather-try-4 = heat: cool first, move second: shade, soak her, fan her, ice or wet cloths at neck, armpits and groin
card-weather-try-5 = high ground ahead: ask race control before going up; the race may be held
card-weather-red-1 = she shivers without end
card-weather-red-2 = somebody cannot get down by themselves
card-weather-life-1 = hot, and she staggers or falls, sweating or not: cool her while help is called, and go on until it comes
card-weather-life-2 = no longer shivers and still is cold
card-weather-life-3 = somebody was struck by lightning

## cannot-get-warm
card-cannot-get-warm = she is cold and does not warm up
card-cannot-get-warm-try-1 = slurred speech or stumbling: keep her lying, insulated from below and above, no walking; heat to the trunk over her clothing, not to arms and legs; move her gently
card-cannot-get-warm-try-2 = out of the wind, wet things off, everything dry on, hat and hood; no rubbing, no alcohol
card-cannot-get-warm-try-3 = off the ground: sit on a pack, blanket round her
card-cannot-get-warm-try-4 = something warm and sweet to drink if she is awake and swallows well
card-cannot-get-warm-try-5 = into the car or tent, with somebody beside her
card-cannot-get-warm-try-6 = she leaves only when she is warm and dry, in more than she came in
card-cannot-get-warm-red-1 = she shivers without end
card-cannot-get-warm-red-2 = clumsy hands
card-cannot-get-warm-red-3 = white or numb fingers, toes, nose or ears
card-cannot-get-warm-life-1 = no longer shivers and still is cold
card-cannot-get-warm-life-2 = slurred speech, stumbling, or drowsy with cold

## allergy
card-allergy = an allergic reaction: a sting, food or a pill
card-allergy-try-1 = swelling, wheezing, faint, or a rash all over: her own injector at once, as it says on it, and call { $emergency }
card-allergy-try-2 = lay her down, legs up; breathing hard: let her sit. She does not stand up or walk
card-allergy-try-3 = somebody stays with her; the injector goes to hospital with her, even if she feels well again
card-allergy-try-4 = an itch or a rash in one place only: stop, sit half an hour beside somebody, show it to the medics
card-allergy-try-5 = a sting left in the skin: scrape it out
card-allergy-red-1 = the rash spreads, or she feels sick or faint after a sting
card-allergy-red-2 = she has had a bad reaction before
card-allergy-life-1 = her own injector has been used, or is not there
card-allergy-life-2 = hoarse, a tight throat, or she cannot swallow

## diabetes
card-diabetes = she has diabetes and is not herself
card-diabetes-try-1 = her own plan comes first: her crew carry it, with her sugar, meter and numbers
card-diabetes-try-2 = shaky, sweating, pale, odd or cross: her own sugar at once, if she is awake and swallows well; then as her plan says
card-diabetes-try-3 = nothing by mouth if she can hardly be woken or does not swallow
card-diabetes-try-4 = she is not alone until she is herself again, and does not go on until her plan says she may
card-diabetes-try-5 = nobody but she touches her insulin
card-diabetes-red-1 = no better after the first step of her plan
card-diabetes-red-2 = great thirst, vomiting, belly pain, breath that smells of fruit
card-diabetes-red-3 = meter, pump or sugar is lost or broken
card-diabetes-life-1 = she cannot swallow, or does not follow what you say

## collapse
card-collapse = she collapses, at the finish or before it
card-collapse-try-1 = speak to her and look at her chest: no answer or no normal breath is { $emergency }, and the medics, now
card-collapse-try-2 = awake and clear, after the line: lying down, legs up, warm layer on, somebody beside her for half an hour
card-collapse-try-3 = down before the line, or not clear in her head: the medics at once, however short it was
card-collapse-try-4 = hot and confused: cool first, move second: soak her, fan her, ice at neck, armpits and groin
card-collapse-try-5 = nothing to drink until a medic has looked, if she vomits, is bloated, confused or has a headache
card-collapse-red-1 = she cannot stand again after some minutes lying down

## wrong-turn
card-wrong-turn = off the course
card-wrong-turn-try-1 = stop: no mark for some minutes means look round, not go on faster
card-wrong-turn-try-2 = compare map, watch and the last mark that was sure
card-wrong-turn-try-3 = go back the way she came to that mark, never a short cut across
card-wrong-turn-try-4 = if she cannot tell where she is: stay put, warm layer on, call
card-wrong-turn-try-5 = tell the crew how long it cost, so that they do not worry at the wrong time
card-wrong-turn-red-1 = she is lost and it gets dark, cold or foggy
card-wrong-turn-red-2 = she is on steep or dangerous ground
card-wrong-turn-red-3 = she is hurt and alone
card-wrong-turn-red-4 = she is confused, talks oddly, does not know where she is

## lost-kit
card-lost-kit = torch, jacket, phone or other required kit is lost or broken
card-lost-kit-try-1 = say at once what is missing; the rules may need it
card-lost-kit-try-2 = without light or warm layer: stay with somebody who has both as far as the next point
card-lost-kit-try-3 = crew: which car has the spare, and is that point still ahead of her
card-lost-kit-try-4 = a phone is lost: tell crew and race control that silence from her means nothing
card-lost-kit-try-5 = no spare: ask at the aid station, before she leaves it
card-lost-kit-red-1 = no light, and night before the next point
card-lost-kit-red-2 = no warm or waterproof layer, and bad weather or high ground ahead

## drowsy-driver
card-drowsy-driver = a driver is drowsy, falling asleep at the wheel
card-drowsy-driver-try-1 = stop at the next safe place and take the key out; an open window and music keep nobody awake
card-drowsy-driver-try-2 = somebody else drives, or nobody: write ‘I can't drive’ here, and the others are asked to cover the meeting
card-drowsy-driver-try-3 = a coffee (none for who must not have it), then twenty minutes of sleep in the parked car, alarm set
card-drowsy-driver-try-4 = after it: walk round the car; still heavy eyes means sleep, not driving
card-drowsy-driver-try-5 = she can wait, with a blanket and an aid station; a crew in the ditch helps nobody
card-drowsy-driver-red-1 = the head nods, the eyes fall shut, the lane is left, the last miles are not remembered: no metre more
card-drowsy-driver-red-2 = a crash or a near one: { $emergency } first, then race control
card-drowsy-driver-red-3 = no other driver and no safe place to stop: tell race control

## runner-late
card-runner-late = she is late and nobody has seen her
card-runner-late-try-1 = look at the race's own results, and ask race control whether she went through unseen
card-runner-late-try-2 = one of you stays at the point, awake; who goes is said by name, never all
card-runner-late-try-3 = write ‘not here yet’ when asked: it counts; who knows more writes that
card-runner-late-try-4 = nobody goes onto the course alone or in the dark to look for her
card-runner-late-try-5 = do not ring her again and again: her battery may be what she has left
card-runner-late-red-1 = she asked for help, or sounded ill or confused when last heard
card-runner-late-red-2 = storm, cold, heat or steep ground, and no word of her past the latest time she was expected
card-runner-late-red-3 = the sweep is through and she was not seen
card-runner-late-red-4 = an alarm is open: do what it says first, and in danger call { $emergency }

## wants-to-stop
card-wants-to-stop = she wants to stop
card-wants-to-stop-try-1 = if she is hurt or ill this is the wrong card: take that one
card-wants-to-stop-try-2 = not in the low hours, not on an empty stomach: warm, dry, fed first, twenty minutes, no shouting
card-wants-to-stop-try-3 = ask what exactly is wrong; each answer has its card
card-wants-to-stop-try-4 = no red flag on any card and the way ahead is safe: perhaps only to the next point, and decide there
card-wants-to-stop-try-5 = it is her race: a decision made warm and fed is not talked away twice
card-wants-to-stop-try-6 = if she retires: tell race control at once, hand in the number, wait for her crew in the warm
card-wants-to-stop-red-1 = she wants to stop and cannot say why, or says things that make no sense
card-wants-to-stop-red-2 = she sits down to stay somewhere that is not a point: race control must know where
card-wants-to-stop-red-3 = she is confused, talks oddly, does not know where she is
