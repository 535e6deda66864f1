"""Tonight's charging: what goes on which port, from when to when, so that all is full, or as full as can be.

`tonight.charge_tonight` plans one evening; `remedies.remedies` computes what one more port or an earlier start would
give; `storage.for_storage` says what to do with cells that will lie for weeks; `ask.answer` does the same from JSON to
JSON. The flow is that of `kitlog.budget.power`: a charger is a supply without end, its total shared by water-filling, a
cell tapers above its knee. Figures are planning estimates. Wrong input raises `kitlog.fault.InputFault`; the codes
stand in `check_evening`.
"""
