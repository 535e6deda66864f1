"""How the power of a day goes, as lines: each device and bank with a sentence, then charges at the times asked for."""

from collections.abc import Iterator

from kitlog.budget.power.late_plugs import late_plugs
from kitlog.budget.power.result import BankResult, DeviceResult
from kitlog.budget.power_ask.answers import DayCourse
from kitlog.wording.columns import paragraph, table
from kitlog.wording.figures import hours_text, percent_text, with_unit
from kitlog.wording.translate import _


def day_lines(course: DayCourse) -> Iterator[str]:
    """Devices, banks, charges at the times asked for, and plugs that come too late."""
    result = course.result
    rows = [(name, _device(device)) for name, device in result.devices.items()]
    rows += [(name, _bank(bank)) for name, bank in result.banks.items()]
    yield from table(rows, (False, False))
    yield from _samples(course)
    for plug in late_plugs(course.day):
        text = _("{device} is off before it is plugged into {bank} in {phase}: it switches itself off at {floor}")
        said = text.format(
            device=plug.device, bank=plug.bank, phase=plug.phase, floor=percent_text(100 * plug.floor_soc, 1)
        )
        yield from paragraph(said)


def _device(device: DeviceResult) -> str:
    parts = [_lasting(device), _charge(device)]
    if device.on_at_end and device.hours_more is not None and device.soc_end is not None:
        parts.append(_("{hours} more unplugged").format(hours=hours_text(device.hours_more)))
    if device.on_at_end and device.soc_end is not None and device.margin_wh < device.reserve_wh:
        keep = with_unit(device.reserve_wh, "Wh", 1)
        parts.append(_("under the {keep} to be kept after the cold").format(keep=keep))
    return "; ".join(parts)


def _lasting(device: DeviceResult) -> str:
    if device.first_off_h is None:
        return _("lasts")
    text = _("goes off at {at}, {off} off in all")
    if device.on_at_end:
        text = _("goes off at {at}, {off} off in all, on again at the end")
    return text.format(at=hours_text(device.first_off_h), off=hours_text(device.off_h))


def _charge(device: DeviceResult) -> str:
    if device.soc_end is None:
        return _("no cell of its own")
    return _("{charge} at the end").format(charge=percent_text(100 * device.soc_end, 1))


def _bank(bank: BankResult) -> str:
    parts = [_("gives {energy}").format(energy=with_unit(bank.delivered_wh, "Wh", 2))]
    if bank.auto_off_h is not None:
        asleep = _("switches itself off at {at}, under its least load")
        parts.append(asleep.format(at=hours_text(bank.auto_off_h)))
    if bank.empty_h is not None:
        parts.append(_("empty at {at}").format(at=hours_text(bank.empty_h)))
    elif bank.in_hand_wh is not None:
        text = _("{charge} at the end, {energy} left at its ports")
        energy = with_unit(bank.in_hand_wh, "Wh", 2)
        parts.append(text.format(charge=percent_text(100 * (bank.soc_end or 0.0), 1), energy=energy))
    return "; ".join(parts)


def _samples(course: DayCourse) -> Iterator[str]:
    devices = {name: one.samples_soc for name, one in course.result.devices.items() if one.samples_soc is not None}
    rows = [
        (
            _("at {time}").format(time=hours_text(at_h)),
            ", ".join(f"{name} {percent_text(100 * socs[place], 1)}" for name, socs in devices.items()),
        )
        for place, at_h in enumerate(course.sample_h)
    ]
    if rows and devices:
        yield from table(rows, (False, False))
