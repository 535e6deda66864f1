"""Random days for comparisons: everything the rules know, in lively proportions; the same seed gives the same day."""

from random import Random


def seeded_day(seed):
    return random_day(Random(seed))


def random_day(rng):
    phases = [_phase(rng, f"p{k}") for k in range(rng.randint(1, 4))]
    banks = [_bank(rng, f"b{k}") for k in range(rng.choice((0, 1, 1, 1, 2)))]
    devices = [_device(rng, f"d{k}", phases) for k in range(rng.randint(1, 4))]
    return {"phases": phases, "devices": devices, "banks": banks, "plugs": _plugs(rng, phases, devices, banks)}


def _phase(rng, name):
    hours = 0 if rng.random() < 0.06 else rng.uniform(0.2, 6)
    return {"id": name, "hours": hours, "ambient_C": rng.uniform(-22, 32)}


def _maybe(rng, chance, value):
    return value if rng.random() < chance else None


def _bank(rng, name):
    bank = {"id": name, "cell_Wh": rng.uniform(3, 60), "start": rng.uniform(0.3, 1), "ports": 4}
    bank |= {"health": rng.uniform(0.7, 1), "eff": rng.uniform(0.75, 0.95), "temp_offset_C": rng.uniform(0, 12)}
    if rng.random() < 0.15:
        bank["cell_Wh"] = rng.choice((None, None, 0))
    if rng.random() < 0.3:
        bank["cutoff"] = rng.uniform(0, 0.1)
    if rng.random() < 0.65:
        bank["total_limit_W"] = rng.uniform(2, 18)
    if rng.random() < 0.4:
        bank["port_limit_W"] = rng.uniform(1, 10)
    if rng.random() < 0.5:
        bank["quiescent_W"] = rng.uniform(0.02, 0.2)
    if rng.random() < 0.6:
        bank |= {"min_out_W": rng.uniform(0.1, 1.5), "auto_off_s": rng.uniform(0, 3000)}
        bank["low_current_mode"] = rng.random() < 0.2
    return bank


def _device(rng, name, phases):
    device = {"id": name, "cell_Wh": rng.uniform(2, 25), "start": rng.uniform(0.15, 1)}
    device["draw_W"] = {phase["id"]: _draw(rng) for phase in phases if rng.random() < 0.85}
    device["temp_offset_C"] = rng.uniform(0, 15)
    device["restart_margin"] = rng.choice((0.05, 0.02, 0, None, rng.uniform(0, 0.4)))
    if rng.random() < 0.12:
        device["cell_Wh"] = 0
    if rng.random() < 0.4:
        device["cutoff"] = rng.uniform(0, 0.15)
    if rng.random() < 0.85:
        device |= {"charge_max_W": rng.uniform(0.5, 12), "charge_eff": rng.uniform(0.6, 1)}
        device["knee"] = rng.choice((0.8, 0.8, rng.uniform(0.2, 0.95), 1, 0))
    if rng.random() < 0.35:
        device["input_limit_W"] = rng.uniform(0.5, 10)
    if rng.random() < 0.1:
        device["temp_fixed_C"] = rng.uniform(15, 30)
    return device


def _draw(rng):
    if rng.random() < 0.2:
        share = rng.uniform(0, 1)
        return {"modes": [{"W": rng.uniform(0, 6), "share": share}, {"W": rng.uniform(0, 1), "share": 1 - share}]}
    return rng.uniform(0.02, 6) if rng.random() < 0.7 else rng.uniform(0.02, 0.8)


def _plugs(rng, phases, devices, banks):
    plugs = []
    for phase in phases:
        for device in devices:
            if banks and rng.random() < 0.6:
                plug = {"phase": phase["id"], "device": device["id"], "bank": rng.choice(banks)["id"]}
                if rng.random() < 0.45:
                    plug["connect_below"] = rng.uniform(0.1, 0.9)
                if rng.random() < 0.3:
                    plug["charge_to"] = rng.uniform(0.3, 1)
                plugs.append(plug)
    return plugs
