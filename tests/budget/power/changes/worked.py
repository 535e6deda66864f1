"""The worked cross-country day in the figures of its table: likely and high case, bank under the shell.

Source: an independent reference integrator behind that table, confirmed by a fixed-step twin (2 s steps).
"""

from kitlog.budget.power.day import Day

HOURS = {"low": (1, 2.5, 0.5, 1), "likely": (1.5, 4.5, 1, 2), "high": (2.5, 6, 2, 4)}
PHASES = (("wait", 14), ("flight", -2), ("walk", 20), ("ride", 18))
EVERY = tuple(name for name, _ in PHASES)

PHONE = {"id": "phone", "cell_Wh": 17.3, "health": 0.9, "charge_max_W": 7, "cutoff": 0.05}
DARK = {"wait": 0.6, "flight": 1.1, "walk": 0.9, "ride": 0.8}
LIT = {**DARK, "flight": 2.6}
COMPUTER = {"id": "computer", "cell_Wh": 11.1, "health": 0.95, "cutoff": 0.05}
COMPUTER |= {"draw_W": {"wait": 0.2, "flight": 0.45, "walk": 0.1}}
RADIO = {"id": "radio", "cell_Wh": 11.1, "health": 0.9, "cutoff": 0.05, "draw_W": dict.fromkeys(EVERY, 0.8362)}
MESSENGER = {"id": "messenger", "cell_Wh": 4.6, "cutoff": 0.05, "draw_W": dict.fromkeys(EVERY, 0.07)}
GLOVES = {"id": "gloves", "cell_Wh": 16.2, "health": 0.9, "cutoff": 0.05, "temp_offset_C": 10}
GLOVES |= {"draw_W": {"flight": 3.24}}
VARIO = {"id": "vario", "cell_Wh": 0.9, "cutoff": 0.05, "draw_W": {"flight": 0.15}}
BANK = {"id": "bank", "cell_Wh": 38.5, "health": 0.9, "temp_fixed_C": 15, "quiescent_W": 0.05, "ports": 2}
BANK |= {"min_out_W": 0.25, "auto_off_s": 32}


def worked(case="likely", *, lit=False, more=(), plugs=(), bank=BANK):
    """The day; `more` devices beside phone, computer, radio, messenger, gloves; `plugs`: (phase, device)."""
    phone = {**PHONE, "draw_W": LIT if lit else DARK}
    devices = [phone, COMPUTER, RADIO, MESSENGER, GLOVES, *more]
    return Day.model_validate(
        {
            "phases": [
                {"id": name, "ambient_C": air_c, "hours": hours}
                for (name, air_c), hours in zip(PHASES, HOURS[case], strict=True)
            ],
            "devices": devices,
            "banks": [bank] if bank else [],
            "plugs": [{"phase": phase, "device": device, "bank": "bank"} for phase, device in plugs],
        }
    )
