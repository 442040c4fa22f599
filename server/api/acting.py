"""The calls that change something, as rows of the table of calls: what a conversation decides is done by them too."""

from __future__ import annotations

from server.api import followers, me, models, replanning, replies, reports
from server.api.ask import Route, Who
from server.api.who_may import Call
from server.conversation.telling import answer

_R = "/v1/events/{event}/runners/{runner}"
_E = "/v1/events/{event}"

ACTING: tuple[Route, ...] = (
    Route(
        "POST",
        f"{_R}/checkins",
        reports.check_in,
        "One report about a runner. Answered 'noted' once it is on the disk; the same key again says "
        "'same again', with other content it is a conflict.",
        answer.NotedAnswer,
        who=Who.DEVICE,
        body=models.CheckIn,
        errors=("conflict", "not_found"),
    ),
    Route(
        "POST",
        f"{_E}/checkins",
        reports.check_in_by_bib,
        "The same where the runner is told by her bib: for volunteers with a start list.",
        answer.NotedAnswer,
        body=models.CheckInByBib,
        errors=("conflict", "not_found"),
    ),
    Route(
        "POST",
        f"{_E}/race",
        reports.race_fact,
        "A race-level fact by the organiser: start delayed, runners held, cut-off moved, access closed.",
        answer.NotedAnswer,
        call=Call.RACE,
        body=models.RaceFact,
        errors=("conflict", "not_found"),
    ),
    Route(
        "POST",
        f"{_E}/changes",
        replanning.change,
        "The plan changed: who goes and in which car, a meeting left out, moved or added, kit, a person, a target given "
        "up; or the last such change taken back. With `dry_run` only what it would be for whom, worded.",
        answer.ChangeAnswer,
        call=Call.CHANGE,
        body=models.Change,
        errors=("not_now",),
    ),
    Route(
        "POST",
        f"{_E}/help",
        reports.call_for_help,
        "A call for help of somebody who does not say for which of many runners; taken back with `meant` it is hers.",
        answer.NotedAnswer,
        call=Call.HELP,
        body=models.CheckIn,
        errors=("conflict",),
    ),
    Route(
        "POST",
        "/v1/entries/{entry}/take-back",
        reports.take_back,
        "What an entry said no longer counts; taking back the taking back makes it count again.",
        answer.NotedAnswer,
        body=models.Correct,
        errors=("conflict",),
    ),
    Route(
        "POST",
        "/v1/entries/{entry}/confirm",
        reports.confirm,
        "An unconfirmed entry counts from now on.",
        answer.NotedAnswer,
        body=models.Correct,
        errors=("conflict",),
    ),
    Route(
        "POST",
        f"{_E}/notices/{{short}}/answer",
        me.answer,
        "Answer a notice of one's own by a word of its buttons or in free words.",
        answer.AnsweredAnswer,
        call=Call.ANSWER,
        body=models.Answer,
    ),
    Route(
        "POST",
        f"{_E}/group",
        me.group,
        "Have a group chat at the asking channel told what concerns the whole crew, or no longer.",
        replies.GroupBound,
        call=Call.GROUP,
        body=models.GroupChat,
    ),
    Route(
        "POST",
        f"{_R}/followers",
        followers.followers,
        "A link for followers given or taken back, by the runner alone: delayed, coarse, no positions, no crew.",
        answer.FollowersAnswer,
        call=Call.FOLLOWERS,
        body=models.Followers,
    ),
)
