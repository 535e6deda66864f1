"""Measure published models of lithium-ion cells and print what the tests compare the power budget with, as JSON.

Run by hand, in an environment with PyBaMM (general battery models, https://pybamm.org, 788 MB with what it needs):
`python tests/reference/battery_cells.py > tests/reference/battery_cells.json`. Takes about three minutes.

The model is SPMe at constant power, isothermal, from full to 3.0 V (Marquis2019 3.105 V, its own limit). C-rates are by
nominal capacity x 3.7 V. Energies are given as hours at constant power over the hours of the reference.
"""

import json
import sys
from collections.abc import Iterator, Sequence
from typing import Any

import pybamm  # not among the dependencies: see above

STOP_V = {"OKane2022": 3.0, "Ecker2015": 3.0, "Ai2020": 3.0, "Marquis2019": 3.105}
TEMPS_C = (0, -10, -20)
NOMINAL_V = 3.7
MOST_H = 60
PULSES = ((1.0, 0.05), (0.1, 0.05), (0.03, 0.9))
"""Transmit, receive, standby: C-rate and share of the time."""

Step = tuple[float, float, float | None]
"""Power in W, temperature in deg C, hours; None: until the cell is empty."""


def hours(name: str, steps: Sequence[Step]) -> list[float]:
    """How long each step lasts in one cell, in h."""
    values = _values(name, steps[0][1])
    made = [_step(step, STOP_V[name]) for step in steps]
    simulation = pybamm.Simulation(
        pybamm.lithium_ion.SPMe(), parameter_values=values, experiment=pybamm.Experiment([tuple(made)])
    )
    solution = simulation.solve(initial_soc=1.0)
    return [float(step["Time [h]"].entries[-1] - step["Time [h]"].entries[0]) for step in solution.cycles[0].steps]


def _values(name: str, temp_c: float) -> Any:
    values = pybamm.ParameterValues(name)
    kelvin = 273.15 + temp_c
    values.update(
        {
            "Ambient temperature [K]": kelvin,
            "Initial temperature [K]": kelvin,
            "Lower voltage cut-off [V]": 2.0,  # the step ends first, so that another can follow
        }
    )
    return values


def _step(step: Step, stop_v: float) -> Any:
    power_w, temp_c, lasts_h = step
    ends = {"termination": f"{stop_v} V"} if lasts_h is None else {}
    most_h = MOST_H if lasts_h is None else lasts_h
    return pybamm.step.power(
        power_w, duration=f"{most_h} hours", period="2 minutes", temperature=273.15 + temp_c, **ends
    )


def watts(name: str, c_rate: float) -> float:
    """Power of a C-rate."""
    return float(c_rate * pybamm.ParameterValues(name)["Nominal cell capacity [A.h]"] * NOMINAL_V)


def usable(name: str) -> Iterator[dict[str, Any]]:
    """Energy to the cut-off against that at 25 deg C and 0.1C."""
    reference_h = hours(name, [(watts(name, 0.1), 25, None)])[0]
    for c_rate in (0.1, 0.5):
        for temp_c in (25, *TEMPS_C):
            lasts_h = hours(name, [(watts(name, c_rate), temp_c, None)])[0]
            share = lasts_h * c_rate / (reference_h * 0.1)
            yield {"cell": name, "c_rate": c_rate, "temp_c": temp_c, "usable": round(share, 4)}


def spells(name: str) -> Iterator[dict[str, Any]]:
    """Three days at 0.2C with a cold and a warm part; hours over those at 25 deg C all through."""
    power_w = watts(name, 0.2)
    warm_h = hours(name, [(power_w, 25, None)])[0]
    for temp_c in TEMPS_C:
        cold_h = hours(name, [(power_w, temp_c, None)])[0]
        if cold_h < 0.2 * warm_h:  # the cell collapses at once: nothing to compare
            continue
        for day, steps in {
            "half cold, then warm": [(power_w, temp_c, cold_h / 2), (power_w, 25, None)],
            "cold to cut-off, then warm": [(power_w, temp_c, None), (power_w, 25, None)],
            "half warm, then cold": [(power_w, 25, warm_h / 2), (power_w, temp_c, None)],
        }.items():
            try:
                found = hours(name, steps)
            except (pybamm.SolverError, TypeError, IndexError) as problem:
                sys.stderr.write(f"{name} {temp_c} {day}: {type(problem).__name__}\n")
                continue
            yield {
                "cell": name,
                "day": day,
                "temp_c": temp_c,
                "usable_cold": round(cold_h / warm_h, 4),
                "first": round(found[0] / warm_h, 4),
                "second": round(found[1] / warm_h, 4),
            }


def pulses(name: str, temp_c: float, minutes: float = 10.0) -> dict[str, Any]:
    """A radio's 5/5/90 in bursts against its mean power: run time over run time."""
    mean_w = sum(watts(name, rate) * share for rate, share in PULSES)
    steady_h = hours(name, [(mean_w, temp_c, None)])[0]
    burst = tuple(
        pybamm.step.power(
            watts(name, rate),
            duration=f"{minutes * share} minutes",
            period=f"{minutes * share / 4} minutes",
            termination=f"{STOP_V[name]} V",
            temperature=273.15 + temp_c,
        )
        for rate, share in PULSES
    )
    rounds = int(steady_h * 60 / minutes) + 2
    simulation = pybamm.Simulation(
        pybamm.lithium_ion.SPMe(),
        parameter_values=_values(name, temp_c),
        experiment=pybamm.Experiment([burst] * rounds, termination=f"{STOP_V[name]} V"),
    )
    lasts_h = float(simulation.solve(initial_soc=1.0)["Time [h]"].entries[-1])
    return {"cell": name, "temp_c": temp_c, "runtime": round(lasts_h / steady_h, 4)}


def measure() -> dict[str, Any]:
    """Everything."""
    return {
        "versions": {"pybamm": pybamm.__version__, "python": sys.version.split()[0]},
        "usable": [row for name in STOP_V for row in usable(name)],
        "spells": [row for name in STOP_V for row in spells(name)],
        "pulses": [pulses(name, temp_c) for name in ("OKane2022", "Ecker2015") for temp_c in (25, 0)],
    }


if __name__ == "__main__":
    pybamm.set_logging_level("ERROR")
    json.dump(measure(), sys.stdout, indent=1)
    sys.stdout.write("\n")
