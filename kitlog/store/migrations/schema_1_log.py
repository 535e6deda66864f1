"""Schema 1: flights and service."""

STATEMENTS = (
    """
CREATE TABLE flight (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL CONSTRAINT flight_id CHECK ("id" <> ''),
    "on" TEXT NOT NULL CONSTRAINT flight_on CHECK ("on" BETWEEN '1970-01-01' AND '2100-12-31'),
    until TEXT CONSTRAINT flight_until CHECK ("until" BETWEEN '1970-01-01' AND '2100-12-31'),
    takeoff_at TEXT,
    landing_at TEXT,
    airtime_min REAL NOT NULL CONSTRAINT flight_airtime_min
        CHECK ("airtime_min" >= 0 AND "airtime_min" <= 10000000),
    ground_handling_min REAL NOT NULL CONSTRAINT flight_ground_handling_min
        CHECK ("ground_handling_min" >= 0 AND "ground_handling_min" <= 10000000),
    launches INTEGER NOT NULL CONSTRAINT flight_launches CHECK ("launches" BETWEEN 0 AND 100000),
    site TEXT NOT NULL,
    note TEXT NOT NULL,
    UNIQUE (id)
) STRICT
""",
    """
CREATE TABLE flown (
    flight_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT flown_position CHECK (position >= 0),
    item_id TEXT NOT NULL CONSTRAINT flown_item_id CHECK ("item_id" <> ''),
    PRIMARY KEY (flight_id, position),
    FOREIGN KEY(flight_id) REFERENCES flight (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE carried (
    flight_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT carried_position CHECK (position >= 0),
    item_id TEXT NOT NULL CONSTRAINT carried_item_id CHECK ("item_id" <> ''),
    PRIMARY KEY (flight_id, position),
    FOREIGN KEY(flight_id) REFERENCES flight (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE service_rule (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL CONSTRAINT service_rule_id CHECK ("id" <> ''),
    item_id TEXT NOT NULL,
    rule TEXT NOT NULL CONSTRAINT service_rule_rule CHECK ("rule" <> ''),
    months INTEGER CONSTRAINT service_rule_months CHECK ("months" BETWEEN 1 AND 1200),
    recommended_months INTEGER CONSTRAINT service_rule_recommended_months
        CHECK ("recommended_months" BETWEEN 1 AND 1200),
    hours REAL CONSTRAINT service_rule_hours CHECK ("hours" > 0 AND "hours" <= 100000),
    launches INTEGER CONSTRAINT service_rule_launches CHECK ("launches" BETWEEN 1 AND 1000000),
    due_on TEXT CONSTRAINT service_rule_due_on CHECK ("due_on" BETWEEN '1970-01-01' AND '2100-12-31'),
    counts_from TEXT NOT NULL,
    ground_handling INTEGER NOT NULL CONSTRAINT service_rule_ground_handling
        CHECK ("ground_handling" IN (0, 1)),
    lead_days INTEGER NOT NULL CONSTRAINT service_rule_lead_days CHECK ("lead_days" BETWEEN 0 AND 3650),
    warn_days INTEGER NOT NULL CONSTRAINT service_rule_warn_days CHECK ("warn_days" BETWEEN 0 AND 3650),
    grounds TEXT NOT NULL,
    source TEXT NOT NULL,
    applies INTEGER NOT NULL CONSTRAINT service_rule_applies CHECK ("applies" IN (0, 1)),
    UNIQUE (id),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) STRICT
""",
    """
CREATE INDEX service_rule_by_item_id ON service_rule (item_id)
""",
    """
CREATE TABLE rule_event (
    rule_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT rule_event_position CHECK (position >= 0),
    event TEXT NOT NULL CONSTRAINT rule_event_event CHECK ("event" <> ''),
    PRIMARY KEY (rule_id, position),
    FOREIGN KEY(rule_id) REFERENCES service_rule (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE service_record (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL CONSTRAINT service_record_id CHECK ("id" <> ''),
    item_id TEXT NOT NULL CONSTRAINT service_record_item_id CHECK ("item_id" <> ''),
    done_on TEXT NOT NULL CONSTRAINT service_record_done_on
        CHECK ("done_on" BETWEEN '1970-01-01' AND '2100-12-31'),
    hours REAL CONSTRAINT service_record_hours CHECK ("hours" >= 0 AND "hours" <= 1000000),
    launches INTEGER CONSTRAINT service_record_launches CHECK ("launches" BETWEEN 0 AND 10000000),
    who TEXT NOT NULL,
    result TEXT NOT NULL,
    cost REAL CONSTRAINT service_record_cost CHECK ("cost" >= 0 AND "cost" <= 1000000000.0),
    remarks TEXT NOT NULL,
    struck_at TEXT,
    UNIQUE (id)
) STRICT
""",
    """
CREATE TABLE record_rule (
    record_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT record_rule_position CHECK (position >= 0),
    rule TEXT NOT NULL CONSTRAINT record_rule_rule CHECK ("rule" <> ''),
    PRIMARY KEY (record_id, position),
    FOREIGN KEY(record_id) REFERENCES service_record (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE event (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL CONSTRAINT event_id CHECK ("id" <> ''),
    item_id TEXT NOT NULL CONSTRAINT event_item_id CHECK ("item_id" <> ''),
    "on" TEXT NOT NULL CONSTRAINT event_on CHECK ("on" BETWEEN '1970-01-01' AND '2100-12-31'),
    kind TEXT NOT NULL CONSTRAINT event_kind CHECK ("kind" <> ''),
    note TEXT NOT NULL,
    struck_at TEXT,
    UNIQUE (id)
) STRICT
""",
)
