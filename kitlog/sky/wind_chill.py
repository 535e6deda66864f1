"""Wind chill, 2001 index of Environment Canada and the US weather service."""

WARMEST_C = 10.0
LEAST_WIND_KMH = 4.8


def wind_chill_c(air_c: float, wind_kmh: float) -> float:
    """Wind chill in deg C for air in deg C and the 10 m wind in km/h.

    W = 13.12 + 0.6215 T - 11.37 V^0.16 + 0.3965 T V^0.16, valid for T <= 10 C and V > 4.8 km/h; outside that it is the
    air temperature.
    """
    if air_c > WARMEST_C or wind_kmh <= LEAST_WIND_KMH:
        return air_c
    power: float = wind_kmh**0.16
    return 13.12 + 0.6215 * air_c - 11.37 * power + 0.3965 * air_c * power
