"""What can be measured from outside, in Prometheus' text form; names start with `stilepost_`.

One registry a server, so that tests may run many. Labels are few and never name a person or a runner.
"""

from __future__ import annotations

from prometheus_client import CollectorRegistry, Counter, Gauge, Histogram, generate_latest

from server.api.envelope import FAULTS


class Metrics:
    """The counters and gauges, incremented where things happen."""

    def __init__(self) -> None:
        self.registry = CollectorRegistry()
        self.requests = Counter(
            "stilepost_requests", "Requests answered", ["route", "status"], registry=self.registry
        )
        self.request_seconds = Histogram(
            "stilepost_request_seconds", "Time to answer a request", registry=self.registry
        )
        self.errors = Counter(
            "stilepost_errors", "Errors answered, by code", ["code"], registry=self.registry
        )
        self.entries = Counter(
            "stilepost_entries", "Entries handed in", ["kind", "status"], registry=self.registry
        )
        self.notices = Counter("stilepost_notices", "Notices made", ["kind"], registry=self.registry)
        self.ticks = Histogram("stilepost_tick_seconds", "Time one tick took", registry=self.registry)
        self.judged = Counter("stilepost_judged", "Runners judged", registry=self.registry)
        self.tick_failures = Counter(
            "stilepost_tick_failures", "Events a tick could not judge", registry=self.registry
        )
        self.tick_age = Gauge(
            "stilepost_tick_age_seconds", "Seconds since the last whole tick", registry=self.registry
        )
        self.inbox = Gauge(
            "stilepost_inbox_waiting", "Updates stored and not worked off", registry=self.registry
        )
        self.streams = Gauge("stilepost_streams_open", "Page streams open", registry=self.registry)
        self.unreached = Gauge(
            "stilepost_alarms_unanswered", "Alarms nobody has answered", registry=self.registry
        )
        for code in FAULTS:
            self.errors.labels(code)

    def text(self) -> bytes:
        """Everything in Prometheus' text form."""
        return generate_latest(self.registry)
