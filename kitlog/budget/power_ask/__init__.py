"""One JSON object in, one answer out: every question of `kitlog budget power`.

`reading.read_request` reads and checks the form (`request`), turns draws as pilots know them into W (`described`) and
refuses what tells no question or two; `ask.ask` answers; `answer_json` puts the answer into JSON. The calculations are
in `kitlog.budget.power` and `kitlog.budget.charging`.
"""
