"""One row of labels that never overlap: each takes the free place nearest to where it wants to be."""


class Shelf:
    """A row from `low` to `high` in pixels, with a least gap between two things on it."""

    def __init__(self, low: float, high: float, gap: float = 0.0) -> None:
        self._low, self._high, self._gap = low, high, gap
        self._taken: list[tuple[float, float]] = []

    def block(self, left: float, right: float) -> None:
        """Keep everything off the stretch from `left` to `right`."""
        self._taken.append((left, right))

    def place(self, wanted: float, width: float, reach: float = float("inf")) -> float | None:
        """Take `width` pixels with the left edge nearest to `wanted`, at most `reach` away.

        Returns:
            The left edge, or None if there is no room; then nothing is taken.
        """
        spots = [wanted, self._low, self._high - width]
        spots += [right + self._gap for _, right in self._taken]
        spots += [left - self._gap - width for left, _ in self._taken]
        free = [spot for spot in spots if self._is_free(spot, width) and abs(spot - wanted) <= reach]
        if not free:
            return None
        chosen = min(free, key=lambda spot: abs(spot - wanted))
        self.block(chosen, chosen + width)
        return chosen

    def stretch(self, at: float) -> tuple[float, float]:
        """The free stretch around `at`, gaps kept; empty (both ends at `at`) where something lies already."""
        inside = any(left - self._gap < at < right + self._gap for left, right in self._taken)
        if inside or not self._low <= at <= self._high:
            return at, at
        lows = [right + self._gap for _, right in self._taken if right <= at]
        highs = [left - self._gap for left, _ in self._taken if left >= at]
        return max([self._low, *lows]), min([self._high, *highs])

    def beside(self, right_of: float, left_of: float, width: float) -> tuple[float, float]:
        """Take up to `width` pixels right of one place or left of another, never beyond what lies next to it.

        Returns:
            Left edge and width: all of it at the right, else all of it at the left, else what the longer side has.
        """
        right = max(0.0, self.stretch(right_of)[1] - right_of)
        left = max(0.0, left_of - self.stretch(left_of)[0])
        is_right = width <= right or (width > left and right >= left)
        taken = min(width, right if is_right else left)
        start = right_of if is_right else left_of - taken
        self.block(start, start + taken)
        return start, taken

    def _is_free(self, left: float, width: float) -> bool:
        slack = 1e-6
        if left < self._low - slack or left + width > self._high + slack:
            return False
        return all(
            left + width + self._gap <= start + slack or left >= end + self._gap - slack for start, end in self._taken
        )
