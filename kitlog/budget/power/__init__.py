"""The power budget: does it all last, from the first hour to the ride home?

`simulate.simulate` runs one day exactly; `longest_phase`, `smallest_bank`, `lowest_start` and `chance`, each in the
file of its name, ask of it; `ask.answer` does the same from JSON to JSON. Figures are planning estimates: an energy
bucket with a floor that rises in the cold. Wrong input raises `kitlog.fault.InputFault`; the codes stand in `checks`.
"""
