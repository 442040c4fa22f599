"""What the server answers to a question, as values: the `data` of a reply, before it is worded.

These are the shapes that go over HTTP: `pydantic.TypeAdapter(X).dump_python(value, mode="json")` on the
server, `TypeAdapter(X).validate_python(data)` in the bot. Ids and names both travel, so that nobody has to
look them up. Times are aware; probabilities 0..1; distances km on the course. A field that the asker's part
may not see is None or empty.
"""

from server.wording.answer.crew import (
    CardsAnswer,
    CarryOut,
    KitAnswer,
    MeetingAnswer,
    NextAnswer,
    OtherCar,
    PeopleAnswer,
    PersonThere,
)
from server.wording.answer.here import (
    AnsweredAnswer,
    EventHere,
    JoinAnswer,
    MeAnswer,
    NotedAnswer,
    PointHere,
    RunnerHere,
)
from server.wording.answer.race import (
    AlarmHere,
    AskedHere,
    ChangeAt,
    CutOffAnswer,
    CutOffsAnswer,
    DoorHours,
    EarlierOut,
    FactorMinutes,
    FactsAnswer,
    ForecastAnswer,
    Freshness,
    Known,
    LightAt,
    MissedAnswer,
    PlanAnswer,
    PlanRow,
    PointAnswer,
    Said,
    StageAnswer,
    StopFact,
    TorchPart,
)

__all__ = [
    "AlarmHere",
    "AnsweredAnswer",
    "AskedHere",
    "CardsAnswer",
    "CarryOut",
    "ChangeAt",
    "CutOffAnswer",
    "CutOffsAnswer",
    "DoorHours",
    "EarlierOut",
    "EventHere",
    "FactorMinutes",
    "FactsAnswer",
    "ForecastAnswer",
    "Freshness",
    "JoinAnswer",
    "KitAnswer",
    "Known",
    "LightAt",
    "MeAnswer",
    "MeetingAnswer",
    "MissedAnswer",
    "NextAnswer",
    "NotedAnswer",
    "OtherCar",
    "PeopleAnswer",
    "PersonThere",
    "PlanAnswer",
    "PlanRow",
    "PointAnswer",
    "PointHere",
    "RunnerHere",
    "Said",
    "StageAnswer",
    "StopFact",
    "TorchPart",
]
