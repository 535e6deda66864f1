"""Schema 1: outings and the ticks of the repack."""

STATEMENTS = (
    """
CREATE TABLE outing (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL CONSTRAINT outing_id CHECK ("id" <> ''),
    name TEXT NOT NULL CONSTRAINT outing_name CHECK ("name" <> ''),
    first_day TEXT NOT NULL CONSTRAINT outing_first_day
        CHECK ("first_day" BETWEEN '1970-01-01' AND '2100-12-31'),
    last_day TEXT NOT NULL CONSTRAINT outing_last_day
        CHECK ("last_day" BETWEEN '1970-01-01' AND '2100-12-31'),
    starts_at TEXT,
    time_zone TEXT CONSTRAINT outing_time_zone CHECK ("time_zone" <> ''),
    site_name TEXT NOT NULL,
    site_lat_deg REAL CONSTRAINT outing_site_lat_deg CHECK ("site_lat_deg" >= -90 AND "site_lat_deg" <= 90),
    site_lon_deg REAL CONSTRAINT outing_site_lon_deg
        CHECK ("site_lon_deg" >= -180 AND "site_lon_deg" <= 180),
    site_launch_m REAL CONSTRAINT outing_site_launch_m
        CHECK ("site_launch_m" >= -500 AND "site_launch_m" <= 9000),
    site_landing_m REAL CONSTRAINT outing_site_landing_m
        CHECK ("site_landing_m" >= -500 AND "site_landing_m" <= 9000),
    top_m REAL CONSTRAINT outing_top_m CHECK ("top_m" >= -500 AND "top_m" <= 9000),
    way_home TEXT NOT NULL,
    set_wing TEXT CONSTRAINT outing_set_wing CHECK ("set_wing" <> ''),
    set_harness TEXT CONSTRAINT outing_set_harness CHECK ("set_harness" <> ''),
    set_reserve TEXT CONSTRAINT outing_set_reserve CHECK ("set_reserve" <> ''),
    set_helmet TEXT CONSTRAINT outing_set_helmet CHECK ("set_helmet" <> ''),
    water_ml INTEGER CONSTRAINT outing_water_ml CHECK ("water_ml" BETWEEN 0 AND 100000),
    plugs_planned INTEGER NOT NULL CONSTRAINT outing_plugs_planned CHECK ("plugs_planned" IN (0, 1)),
    UNIQUE (id)
) STRICT
""",
    """
CREATE TABLE outing_type (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT outing_type_position CHECK (position >= 0),
    flight_type TEXT NOT NULL CONSTRAINT outing_type_flight_type CHECK ("flight_type" <> ''),
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE phase (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT phase_position CHECK (position >= 0),
    name TEXT NOT NULL CONSTRAINT phase_name CHECK ("name" <> ''),
    way TEXT NOT NULL,
    low_h REAL NOT NULL CONSTRAINT phase_low_h CHECK ("low_h" >= 0 AND "low_h" <= 240),
    likely_h REAL NOT NULL CONSTRAINT phase_likely_h CHECK ("likely_h" >= 0 AND "likely_h" <= 240),
    high_h REAL NOT NULL CONSTRAINT phase_high_h CHECK ("high_h" >= 0 AND "high_h" <= 240),
    air_c REAL CONSTRAINT phase_air_c CHECK ("air_c" >= -60 AND "air_c" <= 60),
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE person (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT person_position CHECK (position >= 0),
    name TEXT NOT NULL CONSTRAINT person_name CHECK ("name" <> ''),
    role TEXT NOT NULL,
    told_at TEXT,
    phone TEXT NOT NULL,
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE condition (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT condition_position CHECK (position >= 0),
    condition TEXT NOT NULL,
    holds INTEGER NOT NULL CONSTRAINT condition_holds CHECK ("holds" IN (0, 1)),
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE demanded (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT demanded_position CHECK (position >= 0),
    "by" TEXT NOT NULL,
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE pin (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT pin_position CHECK (position >= 0),
    item TEXT NOT NULL CONSTRAINT pin_item CHECK ("item" <> ''),
    n INTEGER CONSTRAINT pin_n CHECK ("n" BETWEEN 1 AND 10000),
    zone TEXT,
    zone_on_foot TEXT,
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE left_out (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT left_out_position CHECK (position >= 0),
    item TEXT NOT NULL CONSTRAINT left_out_item CHECK ("item" <> ''),
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE own_line (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT own_line_position CHECK (position >= 0),
    text TEXT NOT NULL CONSTRAINT own_line_text CHECK ("text" <> ''),
    mass_g INTEGER CONSTRAINT own_line_mass_g CHECK ("mass_g" BETWEEN 0 AND 200000),
    zone TEXT NOT NULL,
    zone_on_foot TEXT,
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE plug (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT plug_position CHECK (position >= 0),
    phase TEXT NOT NULL CONSTRAINT plug_phase CHECK ("phase" <> ''),
    device TEXT NOT NULL CONSTRAINT plug_device CHECK ("device" <> ''),
    bank TEXT NOT NULL CONSTRAINT plug_bank CHECK ("bank" <> ''),
    connect_below_pct REAL CONSTRAINT plug_connect_below_pct
        CHECK ("connect_below_pct" >= 0 AND "connect_below_pct" <= 100),
    charge_to_pct REAL NOT NULL CONSTRAINT plug_charge_to_pct
        CHECK ("charge_to_pct" >= 0 AND "charge_to_pct" <= 100),
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE use (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT use_position CHECK (position >= 0),
    item TEXT NOT NULL CONSTRAINT use_item CHECK ("item" <> ''),
    phase TEXT NOT NULL CONSTRAINT use_phase CHECK ("phase" <> ''),
    way TEXT NOT NULL CONSTRAINT use_way CHECK ("way" <> ''),
    share REAL NOT NULL CONSTRAINT use_share CHECK ("share" >= 0 AND "share" <= 1),
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE answer (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT answer_position CHECK (position >= 0),
    "check" TEXT NOT NULL CONSTRAINT answer_check CHECK ("check" <> ''),
    value TEXT NOT NULL,
    source TEXT NOT NULL,
    at TEXT NOT NULL,
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE override (
    outing_id TEXT NOT NULL CONSTRAINT override_outing_id CHECK ("outing_id" <> ''),
    position INTEGER NOT NULL CONSTRAINT override_position CHECK (position >= 0),
    finding TEXT NOT NULL CONSTRAINT override_finding CHECK ("finding" <> ''),
    reason TEXT NOT NULL CONSTRAINT override_reason CHECK ("reason" <> ''),
    at TEXT NOT NULL,
    struck_at TEXT,
    PRIMARY KEY (outing_id, position)
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE tick (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    outing_id TEXT NOT NULL,
    step TEXT NOT NULL,
    line TEXT NOT NULL CONSTRAINT tick_line CHECK ("line" <> ''),
    mark TEXT NOT NULL,
    at TEXT NOT NULL,
    who TEXT NOT NULL,
    reason TEXT NOT NULL,
    UNIQUE (outing_id, step, line),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) STRICT
""",
)
