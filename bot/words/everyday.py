"""Everyday words that must not be taken for something else: for a mistyped key word, or for the name of a
point."""

from __future__ import annotations

RIGHT_AS_IT_IS = frozenset(
    """
    about after again always ankle another anyone anything arrives ask asked asks awaken back bad bark barn
    battery beating before being bending best better boast bog born both bottle bottles bread bridge
    bringing brings cake call called calling calls cap caste charger cheer cheers climb climbing climbs
    close coast coasted coffee cold coming corn could crew cross crossed dare darf dark dart date down drink
    driven driver drives drove dry each early eating eight either empty ending ends enough even event ever
    every everything eyes far farm fast feel feels feet felt fence field fight find fine finish finishes
    fired first fog food foot forest found from front full gate gave gel gels getting give given gives
    giving gloves going good grass great half hand hands haste hat having head heading headlight heads hear
    heard hears heating heel here high hill hills hired hold horn hosted hot house hurt hurts hut into
    jacket just keep keeps kept knee knees know known knows lake last lasted lasting late later lead learn
    learned least leaved leaves left legs lending less light like likes little live living long look looked
    looking looks love low made make makes making many map mark maybe mending might mining misses missing
    mist moist moor more most move moved moves much mud near neck need needs neither nest never night none
    nothing numbers often only onto open other over packed pain park parked part parts pass passes paste
    pasted path pending people perhaps phone picket place places point points poles posted quick race rain
    reading really rest retire retires rice right river road roast roasted rock rocks run runner runners
    said same say says seating second seem seems sending sheep shelter shirt shoes short shut side sight
    signal since sits sitting sleep slow slowly snow socks some someone something soon sore sound sounds
    soup spot spots stand stands start started starter starts stations steep stile still stone stones stop
    stops string strong such sweeps sweet take taken takes taking talk talking talks taste tasted tea team
    tell tells tending test testing text texts than that their them then there these they thing things
    think thinks third this those thought tight tired toast toe toes told torn track tracks trees under
    until upon very wade wailing waist waited waits wake walk walked walker walkers walking walks wall want
    wants warm waste wasted water weak weight well were west wet wheel which while white whole wind wired
    with without wood woods worn worse would yearn
    """.split()  # noqa: SIM905 - a list of words reads better as words
)
"""Words one slip away from a key word, right as they are."""

NO_NAMES = frozenset(
    """
    aid and at back bad big black bottom camp car checkpoint control crew down drive east end far finish
    first food good great green half head high hill home house in last line little long low lower near new
    next north of old on one out over park point race red rest road run second short side south start
    station stop the three top two under upper walk water way west white
    """.split()  # noqa: SIM905 - a list of words reads better as words
)
"""Words that may be part of a point's name, but alone never stand for the point."""

AROUND_IN_AND_OUT = frozenset(
    """
    she her is was has been just now the a of at in out off here there and ok hi yes again already back to from PT
    FINISH home came come went gone got runner aid station bit on
    """.split()  # noqa: SIM905 - a list of words reads better as words
)
"""The only words that may stand around a bare 'in' or 'out' for it to be taken for a report."""
