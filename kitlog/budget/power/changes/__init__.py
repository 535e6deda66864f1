"""What would help: each change a pilot could make to the day is run, not advised.

`generate.candidates` makes the sensible changes of a day from what is to hand (`given.ToHand`); `weigh.weigh` runs each
of them in the likely and the high case and sorts them; `odds.odds` asks how often each makes the day last.
Changes themselves, pure functions from a day to a day, are in `edits`.
"""
