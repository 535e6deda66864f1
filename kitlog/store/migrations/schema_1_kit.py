"""Schema 1: pilots, items with their facets, preferences."""

STATEMENTS = (
    """
CREATE TABLE pilot (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL CONSTRAINT pilot_id CHECK ("id" <> ''),
    name TEXT NOT NULL CONSTRAINT pilot_name CHECK ("name" <> ''),
    role TEXT NOT NULL,
    phone TEXT NOT NULL,
    notes TEXT NOT NULL,
    UNIQUE (id)
) STRICT
""",
    """
CREATE TABLE body_mass (
    pilot_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT body_mass_position CHECK (position >= 0),
    taken_on TEXT NOT NULL CONSTRAINT body_mass_taken_on
        CHECK ("taken_on" BETWEEN '1970-01-01' AND '2100-12-31'),
    mass_g INTEGER NOT NULL CONSTRAINT body_mass_mass_g CHECK ("mass_g" BETWEEN 20000 AND 250000),
    how TEXT NOT NULL,
    PRIMARY KEY (pilot_id, position),
    FOREIGN KEY(pilot_id) REFERENCES pilot (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE item (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    id TEXT NOT NULL CONSTRAINT item_id CHECK ("id" <> ''),
    name TEXT NOT NULL CONSTRAINT item_name CHECK ("name" <> ''),
    kind TEXT NOT NULL,
    quantity INTEGER NOT NULL CONSTRAINT item_quantity CHECK ("quantity" BETWEEN 0 AND 10000),
    mass_g INTEGER CONSTRAINT item_mass_g CHECK ("mass_g" BETWEEN 0 AND 200000),
    mass_source TEXT NOT NULL,
    zone TEXT,
    zone_on_foot TEXT,
    fitted_to TEXT,
    state TEXT NOT NULL,
    maker TEXT NOT NULL,
    model TEXT NOT NULL,
    serial TEXT NOT NULL,
    made_on TEXT CONSTRAINT item_made_on CHECK ("made_on" BETWEEN '1970-01-01' AND '2100-12-31'),
    bought_on TEXT CONSTRAINT item_bought_on CHECK ("bought_on" BETWEEN '1970-01-01' AND '2100-12-31'),
    first_used_on TEXT CONSTRAINT item_first_used_on
        CHECK ("first_used_on" BETWEEN '1970-01-01' AND '2100-12-31'),
    opening_h REAL CONSTRAINT item_opening_h CHECK ("opening_h" >= 0 AND "opening_h" <= 100000),
    opening_launches INTEGER CONSTRAINT item_opening_launches
        CHECK ("opening_launches" BETWEEN 0 AND 1000000),
    colour TEXT NOT NULL,
    value REAL CONSTRAINT item_value CHECK ("value" >= 0 AND "value" <= 1000000000.0),
    volume_ml INTEGER CONSTRAINT item_volume_ml CHECK ("volume_ml" BETWEEN 0 AND 1000000),
    notes TEXT NOT NULL,
    UNIQUE (id),
    FOREIGN KEY(fitted_to) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) STRICT
""",
    """
CREATE INDEX item_by_fitted_to ON item (fitted_to)
""",
    """
CREATE TABLE item_serves (
    item_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT item_serves_position CHECK (position >= 0),
    serves TEXT NOT NULL CONSTRAINT item_serves_serves CHECK ("serves" <> ''),
    PRIMARY KEY (item_id, position),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE wing (
    item_id TEXT NOT NULL,
    min_g INTEGER CONSTRAINT wing_min_g CHECK ("min_g" BETWEEN 0 AND 1000000),
    max_g INTEGER CONSTRAINT wing_max_g CHECK ("max_g" BETWEEN 0 AND 1000000),
    flat_m2 REAL CONSTRAINT wing_flat_m2 CHECK ("flat_m2" > 0 AND "flat_m2" <= 100),
    projected_m2 REAL CONSTRAINT wing_projected_m2 CHECK ("projected_m2" > 0 AND "projected_m2" <= 100),
    trim_kmh REAL CONSTRAINT wing_trim_kmh CHECK ("trim_kmh" > 0 AND "trim_kmh" <= 150),
    sink_ms REAL CONSTRAINT wing_sink_ms CHECK ("sink_ms" > 0 AND "sink_ms" <= 20),
    figures_g INTEGER CONSTRAINT wing_figures_g CHECK ("figures_g" BETWEEN 0 AND 1000000),
    PRIMARY KEY (item_id),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE harness (
    item_id TEXT NOT NULL,
    max_g INTEGER CONSTRAINT harness_max_g CHECK ("max_g" BETWEEN 0 AND 1000000),
    volume_l REAL CONSTRAINT harness_volume_l CHECK ("volume_l" >= 0 AND "volume_l" <= 500),
    PRIMARY KEY (item_id),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE reserve (
    item_id TEXT NOT NULL,
    min_g INTEGER CONSTRAINT reserve_min_g CHECK ("min_g" BETWEEN 0 AND 1000000),
    max_g INTEGER CONSTRAINT reserve_max_g CHECK ("max_g" BETWEEN 0 AND 1000000),
    sink_ms REAL CONSTRAINT reserve_sink_ms CHECK ("sink_ms" > 0 AND "sink_ms" <= 20),
    sink_at_g INTEGER CONSTRAINT reserve_sink_at_g CHECK ("sink_at_g" BETWEEN 0 AND 1000000),
    PRIMARY KEY (item_id),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE battery (
    item_id TEXT NOT NULL,
    wh REAL CONSTRAINT battery_wh CHECK ("wh" >= 0 AND "wh" <= 10000),
    mah REAL CONSTRAINT battery_mah CHECK ("mah" >= 0 AND "mah" <= 1000000),
    v REAL CONSTRAINT battery_v CHECK ("v" > 0 AND "v" <= 1000),
    health_pct REAL CONSTRAINT battery_health_pct CHECK ("health_pct" >= 0 AND "health_pct" <= 100),
    cutoff_pct REAL CONSTRAINT battery_cutoff_pct CHECK ("cutoff_pct" >= 0 AND "cutoff_pct" < 100),
    charge_max_w REAL CONSTRAINT battery_charge_max_w
        CHECK ("charge_max_w" >= 0 AND "charge_max_w" <= 1000),
    connector TEXT NOT NULL,
    place TEXT,
    offset_k REAL CONSTRAINT battery_offset_k CHECK ("offset_k" >= -50 AND "offset_k" <= 50),
    fixed_c REAL CONSTRAINT battery_fixed_c CHECK ("fixed_c" >= -40 AND "fixed_c" <= 60),
    PRIMARY KEY (item_id),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE way_of_use (
    item_id TEXT NOT NULL,
    position INTEGER NOT NULL CONSTRAINT way_of_use_position CHECK (position >= 0),
    name TEXT NOT NULL CONSTRAINT way_of_use_name CHECK ("name" <> ''),
    power_w REAL NOT NULL CONSTRAINT way_of_use_power_w CHECK ("power_w" >= 0 AND "power_w" <= 1000),
    basis TEXT NOT NULL,
    PRIMARY KEY (item_id, position),
    FOREIGN KEY(item_id) REFERENCES battery (item_id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE way_share (
    item_id TEXT NOT NULL,
    way INTEGER NOT NULL,
    position INTEGER NOT NULL CONSTRAINT way_share_position CHECK (position >= 0),
    during TEXT NOT NULL,
    share REAL NOT NULL CONSTRAINT way_share_share CHECK ("share" >= 0 AND "share" <= 1),
    PRIMARY KEY (item_id, way, position),
    FOREIGN KEY(item_id, way) REFERENCES way_of_use (item_id, position) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE bank (
    item_id TEXT NOT NULL,
    efficiency_pct REAL CONSTRAINT bank_efficiency_pct
        CHECK ("efficiency_pct" > 0 AND "efficiency_pct" <= 100),
    ports INTEGER CONSTRAINT bank_ports CHECK ("ports" BETWEEN 0 AND 100),
    port_w REAL CONSTRAINT bank_port_w CHECK ("port_w" >= 0 AND "port_w" <= 1000),
    total_w REAL CONSTRAINT bank_total_w CHECK ("total_w" >= 0 AND "total_w" <= 1000),
    min_w REAL CONSTRAINT bank_min_w CHECK ("min_w" >= 0 AND "min_w" <= 1000),
    off_s REAL CONSTRAINT bank_off_s CHECK ("off_s" >= 0 AND "off_s" <= 86400),
    quiescent_w REAL CONSTRAINT bank_quiescent_w CHECK ("quiescent_w" >= 0 AND "quiescent_w" <= 1000),
    PRIMARY KEY (item_id),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE garment (
    item_id TEXT NOT NULL,
    clo REAL CONSTRAINT garment_clo CHECK ("clo" >= 0 AND "clo" <= 10),
    layer TEXT,
    part TEXT NOT NULL,
    PRIMARY KEY (item_id),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE vessel (
    item_id TEXT NOT NULL,
    capacity_ml INTEGER CONSTRAINT vessel_capacity_ml CHECK ("capacity_ml" BETWEEN 0 AND 100000),
    PRIMARY KEY (item_id),
    FOREIGN KEY(item_id) REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) WITHOUT ROWID, STRICT
""",
    """
CREATE TABLE preference (
    entry INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL CONSTRAINT preference_name CHECK ("name" <> ''),
    value TEXT NOT NULL,
    UNIQUE (name)
) STRICT
""",
)
