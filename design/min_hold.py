"""How much deeper than a MIN hold's value can the crank really have gone?

Settles the coefficients of `backprobe.stages.probe.crank_range`. The shape is the starting profile of
ISO 16750-2 4.6.3 (fall, trough, recovery to a plateau with ripple), scaled to a drop and spread over what real
starters, batteries and temperatures do (spreads: our own estimate, no source):

* rest voltage 11.8-12.9 V; plateau drop 0.5-5 V (warm engine, strong battery .. cold engine, weak battery); the
  battery is not drawn below 5 V;
* inrush trough 1.1-1.8 times the plateau's mean drop, 1.4 most often (the ISO levels have 1.1-1.6 against the
  plateau's lower edge);
* fall 3-8 ms, trough 8-20 ms, recovery 40-70 ms (ISO: 5, 15, 50 ms); ripple 2-25 Hz, 8-25 % of the plateau drop;
* a MIN hold of 100 ms: means over consecutive windows of 100 ms at any phase against the crank; the hold keeps
  the lowest. Some meters overlap their windows (better); some need the dip to fill a window (worse by a part).

Prints, for bins of the *shown* drop, the 50th, 95th and 99.9th percentile and the greatest of the hidden part
(shown minimum minus true minimum), and the MIN above a limit at which the last violation hid. Run: python
design/min_hold.py [cranks]
"""

import math
import random
import sys

from backprobe.stages.probe.crank_range import hidden_V


def crank(rng):
    """A crank as (rest V, list of the drop at each millisecond)."""
    rest = rng.uniform(11.8, 12.9)
    plateau = math.exp(rng.uniform(math.log(0.5), math.log(5.0)))
    peak = plateau * rng.triangular(1.1, 1.8, 1.4)
    if rest - peak < 5.0:
        return crank(rng)
    fall, hold, recover = rng.uniform(3, 8), rng.uniform(8, 20), rng.uniform(40, 70)
    ripple, hz, phase = plateau * rng.uniform(0.08, 0.25), rng.uniform(2, 25), rng.uniform(0, 2 * math.pi)
    drops = []
    for ms in range(700):
        base = plateau + ripple * math.sin(2 * math.pi * hz * ms / 1000 + phase)
        if ms < fall:
            drop = peak * ms / fall
        elif ms < fall + hold:
            drop = peak
        elif ms < fall + hold + recover:
            part = (ms - fall - hold) / recover
            drop = peak + (base - peak) * part
        else:
            drop = base
        drops.append(drop)
    return rest, drops


def shown_drop(drops, window_ms, phase_ms):
    """The greatest mean drop over consecutive windows, the first one beginning `phase_ms` before the crank."""
    padded = [0.0] * phase_ms + drops
    return max(sum(padded[i : i + window_ms]) / window_ms for i in range(0, len(padded) - window_ms + 1, window_ms))


def allowed(drop):
    """What the product allows for at a shown drop [V] (12 V system, MIN hold of 100 ms)."""
    return hidden_V(12.4 - drop, 12.4, system_V=12, hold_ms=100.0)


def main():
    """Simulate and print."""
    cranks = int(sys.argv[1]) if len(sys.argv) > 1 else 40_000
    rng = random.Random(16750)
    bins, hiding = {}, {9.0: [], 10.0: []}
    for _ in range(cranks):
        rest, drops = crank(rng)
        shown = shown_drop(drops, 100, rng.randrange(100))
        hidden = max(drops) - shown
        bins.setdefault(int(shown / 0.5), []).append(hidden)
        for limit, found in hiding.items():
            if rest - max(drops) < limit <= rest - shown:
                found.append(rest - shown - limit)
    print("shown drop V   n       50 %   95 %  99.9 %   most   allowed")
    for b, hidden in sorted(bins.items()):
        hidden.sort()
        n = len(hidden)
        at = [hidden[min(n - 1, int(n * q))] for q in (0.5, 0.95, 0.999)]
        shares = "".join(f"{v:7.2f}" for v in [*at, hidden[-1]])
        print(f"{b / 2:4.1f}-{b / 2 + 0.5:4.1f}   {n:6}  {shares}   {allowed(b / 2 + 0.25):7.2f}")
    for limit, found in hiding.items():
        found.sort()
        n = len(found)
        above = f"95 % {found[int(n * 0.95)]:.2f}, 99 % {found[int(n * 0.99)]:.2f}, most {found[-1]:.2f} V"
        print(f"limit {limit} V: {n} hidden violations; MIN above the limit: {above}")


if __name__ == "__main__":
    main()
