"""Schema 2: draws with a range and what they are taken from, charge on hand, chargers, the evening of an outing."""

STATEMENTS = (
    """
ALTER TABLE battery ADD COLUMN on_hand_pct REAL CONSTRAINT battery_on_hand_pct
    CHECK ("on_hand_pct" >= 0 AND "on_hand_pct" <= 100)
""",
    """
ALTER TABLE battery ADD COLUMN on_hand_at TEXT
""",
    """
ALTER TABLE battery ADD COLUMN swollen_on TEXT CONSTRAINT battery_swollen_on
    CHECK ("swollen_on" BETWEEN '1970-01-01' AND '2100-12-31')
""",
    """
ALTER TABLE bank ADD COLUMN rated_mah REAL CONSTRAINT bank_rated_mah
    CHECK ("rated_mah" >= 0 AND "rated_mah" <= 1000000)
""",
    """
CREATE TABLE way_of_use_2 (
    item_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT way_of_use_position CHECK (position >= 0),
    name TEXT NOT NULL CONSTRAINT way_of_use_name CHECK ("name" <> ''),
    power_w REAL CONSTRAINT way_of_use_power_w CHECK ("power_w" >= 0 AND "power_w" <= 1000),
    low_w REAL CONSTRAINT way_of_use_low_w CHECK ("low_w" >= 0 AND "low_w" <= 1000),
    high_w REAL CONSTRAINT way_of_use_high_w CHECK ("high_w" >= 0 AND "high_w" <= 1000),
    current_ma REAL CONSTRAINT way_of_use_current_ma CHECK ("current_ma" >= 0 AND "current_ma" <= 1000000),
    at_v REAL CONSTRAINT way_of_use_at_v CHECK ("at_v" > 0 AND "at_v" <= 100),
    lasts_h REAL CONSTRAINT way_of_use_lasts_h CHECK ("lasts_h" > 0 AND "lasts_h" <= 10000),
    from_pct REAL CONSTRAINT way_of_use_from_pct CHECK ("from_pct" >= 0 AND "from_pct" <= 100),
    to_pct REAL CONSTRAINT way_of_use_to_pct CHECK ("to_pct" >= 0 AND "to_pct" <= 100),
    over_h REAL CONSTRAINT way_of_use_over_h CHECK ("over_h" > 0 AND "over_h" <= 10000),
    measured_on TEXT CONSTRAINT way_of_use_measured_on
        CHECK ("measured_on" BETWEEN '1970-01-01' AND '2100-12-31'),
    basis TEXT NOT NULL,
    source TEXT NOT NULL,
    PRIMARY KEY (item_id, position),
    FOREIGN KEY(item_id) REFERENCES battery (item_id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
INSERT INTO way_of_use_2 (item_id, position, name, power_w, basis, source)
SELECT item_id, position, name, power_w, basis, '' FROM way_of_use
""",
    """
DROP TABLE way_of_use
""",
    """
ALTER TABLE way_of_use_2 RENAME TO way_of_use
""",
    """
CREATE TABLE charger (
    item_id TEXT NOT NULL,
    total_w REAL CONSTRAINT charger_total_w CHECK ("total_w" >= 0 AND "total_w" <= 1000),
    PRIMARY KEY (item_id),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE charger_port (
    item_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT charger_port_position CHECK (position >= 0),
    power_w REAL CONSTRAINT charger_port_power_w CHECK ("power_w" >= 0 AND "power_w" <= 1000),
    connector TEXT NOT NULL,
    fixed_cable INTEGER NOT NULL CONSTRAINT charger_port_fixed_cable CHECK ("fixed_cable" IN (0, 1)),
    PRIMARY KEY (item_id, position),
    FOREIGN KEY(item_id) REFERENCES charger (item_id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE start_charge (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT start_charge_position CHECK (position >= 0),
    item TEXT NOT NULL CONSTRAINT start_charge_item CHECK ("item" <> ''),
    low_pct REAL NOT NULL CONSTRAINT start_charge_low_pct CHECK ("low_pct" >= 0 AND "low_pct" <= 100),
    likely_pct REAL NOT NULL CONSTRAINT start_charge_likely_pct
        CHECK ("likely_pct" >= 0 AND "likely_pct" <= 100),
    high_pct REAL NOT NULL CONSTRAINT start_charge_high_pct CHECK ("high_pct" >= 0 AND "high_pct" <= 100),
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE evening (
    outing_id TEXT NOT NULL,
    from_at TEXT NOT NULL,
    bed_at TEXT NOT NULL,
    up_at TEXT NOT NULL,
    leave_at TEXT NOT NULL,
    sockets INTEGER CONSTRAINT evening_sockets CHECK ("sockets" BETWEEN 0 AND 100),
    place_c REAL CONSTRAINT evening_place_c CHECK ("place_c" >= -60 AND "place_c" <= 60),
    PRIMARY KEY (outing_id),
    FOREIGN KEY(outing_id) REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE charge_priority (
    outing_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT charge_priority_position CHECK (position >= 0),
    item TEXT NOT NULL CONSTRAINT charge_priority_item CHECK ("item" <> ''),
    PRIMARY KEY (outing_id, position),
    FOREIGN KEY(outing_id) REFERENCES evening (outing_id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
)
