"""Tonight's charging, and what lies unused, as JSON: figures with their units, sentences beside them."""

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any

from kitlog.outing.outing import Outing
from kitlog.packing.evening_asked import Note, Piece
from kitlog.packing.evening_plan import ChargeLine, EveningHelp, EveningPlan, HandStep, Hang, other_starts
from kitlog.packing.on_hand import OnHand
from kitlog.packing.storage_due import StorageLine
from kitlog.wording.charge_lines import storage_act_text
from kitlog.wording.charge_text import (
    clock_of,
    help_text,
    missing_remedies,
    note_text,
    plan_tried_texts,
    step_text,
    summary_text,
)

Names = Mapping[str, str]


def charge_json(plan: EveningPlan, names: Names, outing: Outing) -> dict[str, Any]:
    """The plan of one evening. Hours run through the night: 30.5 is half past six the next morning."""
    return {
        "outing": outing.name,
        "evening_of": str(plan.day),
        "times": plan.times.model_dump(mode="json"),
        "times_assumed": plan.assumed,
        "summary": summary_text(plan),
        "all_full": plan.all_full,
        "all_chargeable_full": plan.all_chargeable_full,
        "full_by_h": plan.full_by_h,
        "full_by": None if plan.full_by_h is None else clock_of(plan.full_by_h, up=True),
        "things": [_line(line) for line in plan.lines],
        "other_starts": [
            {
                "item": names.get(one.item, one.item),
                "begins_pct": one.begins_pct,
                "planned_pct": one.planned_pct,
            }
            for one in other_starts(plan, outing)
        ],
        "not_planned": [item.name for item in plan.not_planned],
        "steps": [_step(step) for step in plan.steps],
        "cautions": [_note(note, names) for note in plan.notes],
        "remedies": [_help(found) for found in plan.helps or ()],
        "to_enter": list(missing_remedies(plan, names)),
        "bottleneck": _name(plan.bottleneck),
        "complete": plan.complete,
        "moves_compared": plan.moves_compared,
        "by_turns": [_name(piece) for piece in plan.by_turns],
        "tried": list(plan_tried_texts(plan)),
    }


def storage_json(lines: Sequence[StorageLine], now: datetime) -> list[dict[str, Any]]:
    """What lies unused, each with what to do."""
    return [
        {
            "item": line.item.name,
            "item_id": line.item.id,
            "act": line.act,
            "why": line.why,
            "sentence": storage_act_text(line),
            "from_pct": line.from_pct,
            "to_pct": line.to_pct,
            "last_used": None if line.last_used is None else str(line.last_used),
            "unused_days": None if line.last_used is None else (now.date() - line.last_used).days,
            **_on_hand(line.on_hand, now),
            "source": line.source,
        }
        for line in lines
    ]


def _on_hand(seen: OnHand, now: datetime) -> dict[str, Any]:
    age_h = None if seen.seen_at is None else (now - seen.seen_at).total_seconds() / 3600
    return {
        "on_hand_pct": seen.seen_pct,
        "on_hand_at": None if seen.seen_at is None else seen.seen_at.isoformat(),
        "on_hand_age_h": age_h,
        "on_hand_known": seen.known,
    }


def _line(line: ChargeLine) -> dict[str, Any]:
    return {
        "item": line.thing.item.name,
        "item_id": line.thing.item.id,
        "piece": line.thing.number or None,
        "start_pct": line.on_hand.reckoned_pct,
        "start_known": line.on_hand.known,
        "on_hand_pct": line.on_hand.seen_pct,
        "on_hand_at": None if line.on_hand.seen_at is None else line.on_hand.seen_at.isoformat(),
        "end_pct": line.end_pct,
        "full_h": line.full_h,
        "full_at": None if line.full_h is None else clock_of(line.full_h, up=True),
        "missing_Wh": line.missing_wh,
        "left_out": line.left_out or None,
        "hangs": [_hang(hang) for hang in line.hangs],
    }


def _hang(hang: Hang) -> dict[str, Any]:
    return {
        "charger": _name(hang.charger),
        "port": hang.port or None,
        "from_h": hang.from_h,
        "to_h": hang.to_h,
        "from": clock_of(hang.from_h),
        "to": clock_of(hang.to_h),
        "overnight": hang.overnight,
    }


def _step(step: HandStep) -> dict[str, Any]:
    return {
        "at_h": step.at_h,
        "at": clock_of(step.at_h),
        "charger": _name(step.charger),
        "port": step.port or None,
        "take_off": _name(step.take_off),
        "put_on": _name(step.put_on),
        "overnight": step.overnight,
        "sentence": step_text(step),
    }


def _note(note: Note, names: Names) -> dict[str, Any]:
    return {
        "code": note.code,
        "items": [names.get(item, item) for item in note.items],
        "value": note.value,
        "limit": note.limit,
        "source": note.source,
        "sentence": note_text(note, names),
    }


def _help(found: EveningHelp) -> dict[str, Any]:
    return {
        "kind": found.kind,
        "charger": _name(found.charger),
        "from_h": found.from_h,
        "full": found.full,
        "gained_Wh": found.gained_wh,
        "first_gain": _name(found.first_gain),
        "all_full": found.all_full,
        "all_chargeable_full": found.all_chargeable_full,
        "connectors": list(found.connectors),
        "power_W": found.power_w,
        "sockets": found.sockets,
        "sentence": help_text(found),
    }


def _name(piece: Piece | None) -> str | None:
    if piece is None:
        return None
    return f"{piece.item.name}, {piece.number}" if piece.number else piece.item.name
