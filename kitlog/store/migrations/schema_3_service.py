"""Schema 3: recordings of flights, measurements and papers, rules by model, what calendars were told."""

_PAPER = """
    position INTEGER NOT NULL CONSTRAINT {table}_position CHECK (position >= 0),
    sha256 TEXT NOT NULL CONSTRAINT {table}_sha256 CHECK ("sha256" <> ''),
    name TEXT NOT NULL CONSTRAINT {table}_name CHECK ("name" <> ''),
    media_type TEXT NOT NULL,
    size INTEGER NOT NULL CONSTRAINT {table}_size CHECK ("size" BETWEEN 1 AND 67108864),
"""

STATEMENTS = (
    """
ALTER TABLE flight ADD COLUMN time_zone TEXT NOT NULL DEFAULT ''
""",
    """
ALTER TABLE flight ADD COLUMN max_gnss_m INTEGER CONSTRAINT flight_max_gnss_m
    CHECK ("max_gnss_m" BETWEEN -1000 AND 50000)
""",
    """
ALTER TABLE flight ADD COLUMN max_pressure_m INTEGER CONSTRAINT flight_max_pressure_m
    CHECK ("max_pressure_m" BETWEEN -1000 AND 50000)
""",
    """
ALTER TABLE flight ADD COLUMN found_airtime_min REAL CONSTRAINT flight_found_airtime_min
    CHECK ("found_airtime_min" >= 0 AND "found_airtime_min" <= 1440)
""",
    """
CREATE TABLE flight_recording (
    flight_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT flight_recording_position CHECK (position >= 0),
    sha256 TEXT NOT NULL CONSTRAINT flight_recording_sha256 CHECK ("sha256" <> ''),
    PRIMARY KEY (flight_id, position),
    FOREIGN KEY(flight_id) REFERENCES flight (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
ALTER TABLE item ADD COLUMN opening_ground_h REAL CONSTRAINT item_opening_ground_h
    CHECK ("opening_ground_h" >= 0 AND "opening_ground_h" <= 100000)
""",
    """
ALTER TABLE item ADD COLUMN belongs_to TEXT NOT NULL DEFAULT ''
""",
    """
ALTER TABLE item ADD COLUMN lent_to TEXT NOT NULL DEFAULT ''
""",
    """
ALTER TABLE item ADD COLUMN back_by TEXT CONSTRAINT item_back_by
    CHECK ("back_by" BETWEEN '1970-01-01' AND '2100-12-31')
""",
    f"""
CREATE TABLE item_paper (
    item_id TEXT NOT NULL,{_PAPER.format(table="item_paper")}
    PRIMARY KEY (item_id, position),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
ALTER TABLE service_rule ADD COLUMN event_days INTEGER NOT NULL DEFAULT 0 CONSTRAINT service_rule_event_days
    CHECK ("event_days" BETWEEN 0 AND 3650)
""",
    """
ALTER TABLE service_rule ADD COLUMN of_model TEXT CONSTRAINT service_rule_of_model CHECK ("of_model" <> '')
""",
    """
CREATE TABLE model_rule (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL CONSTRAINT model_rule_id CHECK ("id" <> ''),
    kind TEXT NOT NULL,
    maker TEXT NOT NULL,
    model TEXT NOT NULL CONSTRAINT model_rule_model CHECK ("model" <> ''),
    rule TEXT NOT NULL CONSTRAINT model_rule_rule CHECK ("rule" <> ''),
    months INTEGER CONSTRAINT model_rule_months CHECK ("months" BETWEEN 1 AND 1200),
    recommended_months INTEGER CONSTRAINT model_rule_recommended_months
        CHECK ("recommended_months" BETWEEN 1 AND 1200),
    hours REAL CONSTRAINT model_rule_hours CHECK ("hours" > 0 AND "hours" <= 100000),
    launches INTEGER CONSTRAINT model_rule_launches CHECK ("launches" BETWEEN 1 AND 1000000),
    due_on TEXT CONSTRAINT model_rule_due_on CHECK ("due_on" BETWEEN '1970-01-01' AND '2100-12-31'),
    event_days INTEGER NOT NULL CONSTRAINT model_rule_event_days CHECK ("event_days" BETWEEN 0 AND 3650),
    counts_from TEXT NOT NULL,
    ground_handling INTEGER NOT NULL CONSTRAINT model_rule_ground_handling
        CHECK ("ground_handling" IN (0, 1)),
    lead_days INTEGER NOT NULL CONSTRAINT model_rule_lead_days CHECK ("lead_days" BETWEEN 0 AND 3650),
    warn_days INTEGER NOT NULL CONSTRAINT model_rule_warn_days CHECK ("warn_days" BETWEEN 0 AND 3650),
    grounds TEXT NOT NULL,
    source TEXT NOT NULL,
    UNIQUE (id)
) STRICT
""",
    """
CREATE TABLE model_rule_event (
    rule_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT model_rule_event_position CHECK (position >= 0),
    event TEXT NOT NULL CONSTRAINT model_rule_event_event CHECK ("event" <> ''),
    PRIMARY KEY (rule_id, position),
    FOREIGN KEY(rule_id) REFERENCES model_rule (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
UPDATE service_record SET remarks = CASE WHEN remarks = '' THEN result ELSE result || char(10) || remarks END
WHERE result <> '' AND lower(trim(result)) NOT IN ('passed', 'passed with remarks', 'failed')
""",
    """
ALTER TABLE service_record ADD COLUMN verdict TEXT
""",
    """
UPDATE service_record SET verdict = lower(trim(result))
WHERE lower(trim(result)) IN ('passed', 'passed with remarks', 'failed')
""",
    """
ALTER TABLE service_record DROP COLUMN result
""",
    """
ALTER TABLE service_record RENAME COLUMN verdict TO result
""",
    """
ALTER TABLE service_record ADD COLUMN currency TEXT NOT NULL DEFAULT ''
""",
    """
ALTER TABLE service_record ADD COLUMN next_due_on TEXT CONSTRAINT service_record_next_due_on
    CHECK ("next_due_on" BETWEEN '1970-01-01' AND '2100-12-31')
""",
    """
ALTER TABLE service_record ADD COLUMN next_within_h REAL CONSTRAINT service_record_next_within_h
    CHECK ("next_within_h" > 0 AND "next_within_h" <= 100000)
""",
    """
CREATE TABLE record_measurement (
    record_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT record_measurement_position CHECK (position >= 0),
    what TEXT NOT NULL,
    value REAL NOT NULL CONSTRAINT record_measurement_value CHECK ("value" >= -100000 AND "value" <= 1000000),
    unit TEXT NOT NULL CONSTRAINT record_measurement_unit CHECK ("unit" <> ''),
    gauge TEXT NOT NULL,
    place TEXT NOT NULL,
    PRIMARY KEY (record_id, position),
    FOREIGN KEY(record_id) REFERENCES service_record (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    f"""
CREATE TABLE record_paper (
    record_id TEXT NOT NULL,{_PAPER.format(table="record_paper")}
    PRIMARY KEY (record_id, position),
    FOREIGN KEY(record_id) REFERENCES service_record (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE record_answer (
    record_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT record_answer_position CHECK (position >= 0),
    event_id TEXT NOT NULL CONSTRAINT record_answer_event_id CHECK ("event_id" <> ''),
    PRIMARY KEY (record_id, position),
    FOREIGN KEY(record_id) REFERENCES service_record (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
INSERT INTO record_answer (record_id, position, event_id)
SELECT r.id, row_number() OVER (PARTITION BY r.id ORDER BY e.entry) - 1, e.id
FROM service_record r JOIN event e ON e.item_id = r.item_id AND e."on" = r.done_on
WHERE EXISTS (
    SELECT 1 FROM record_rule rr JOIN rule_event re ON re.rule_id = rr.rule
    WHERE rr.record_id = r.id AND lower(re.event) = lower(e.kind)
)
""",
    """
CREATE TABLE reminder (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL CONSTRAINT reminder_id CHECK ("id" <> ''),
    sequence INTEGER NOT NULL CONSTRAINT reminder_sequence CHECK ("sequence" BETWEEN 0 AND 2000000000),
    "on" TEXT NOT NULL CONSTRAINT reminder_on CHECK ("on" BETWEEN '1970-01-01' AND '2100-12-31'),
    content TEXT NOT NULL CONSTRAINT reminder_content CHECK ("content" <> ''),
    cancelled INTEGER NOT NULL CONSTRAINT reminder_cancelled CHECK ("cancelled" IN (0, 1)),
    UNIQUE (id)
) STRICT
""",
)
"""From schema 2. A record of the day of an event answered it until now, and does so by name from here on."""
