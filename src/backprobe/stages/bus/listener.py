"""Takes a bus log in, frame by frame, in memory that does not grow with it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field

from backprobe.errors import Place
from backprobe.evidence.frame import Frame
from backprobe.formats import j1939
from backprobe.formats.bus_faults import CLOCK_SET_BACK, BusFaults
from backprobe.formats.j1939_transport import Lost, Transport
from backprobe.stages.bus.engine import EngineTrack
from backprobe.stages.bus.envelope import EnvelopeTrack
from backprobe.stages.bus.key_cycle import Crank, cranked
from backprobe.stages.bus.nodes import MOST_NODES, LoadTrack, NodeTrack
from backprobe.stages.bus.volts import VoltTrack

LOST, CUT = "lost_packets", "cut_by_the_log"
BURST_S = 0.25  # frames closer than this are one stretch of talk
BACK_S = 0.5  # a stamp that lies so far back was set back; less is the order in which buses were written
EDGE_S = 5.0  # a long message that is half there so soon after the beginning was cut by the log
MOST_VINS = 16
KEY_ON_V, KEY_OFF_V = 8.0, 4.0  # keyswitch potential, 12 V system and above


@dataclass(slots=True)
class Listener:
    """Takes frames in; `faults` counts what was passed over."""

    faults: BusFaults
    frames: int = 0
    begun_s: float = 0.0
    last_s: float = 0.0
    burst_s: float = 0.0
    set_back_s: float = 0.0
    eleven_bit: int = 0
    errors: list[int] = field(default_factory=lambda: [0, 0])
    engines: dict[int, EngineTrack] = field(default_factory=dict)
    wakes_s: list[tuple[float, float]] = field(default_factory=list)  # first engine speed, and the burst's beginning
    keyswitch: list[tuple[float, bool]] = field(default_factory=list)
    volts: VoltTrack = field(default_factory=VoltTrack)
    nodes: dict[tuple[str, int], NodeTrack] = field(default_factory=dict)
    loads: dict[str, LoadTrack] = field(default_factory=dict)
    transport: Transport = field(default_factory=Transport)
    vins: Counter[tuple[str, int]] = field(default_factory=Counter)
    lost: Counter[str] = field(default_factory=Counter)
    distance: dict[int, float] = field(default_factory=dict)
    speed_kmh: float | None = None
    clock: tuple[float, float] | None = None
    cranks: list[Crank] = field(default_factory=list)
    volt_points: EnvelopeTrack = field(default_factory=EnvelopeTrack)
    rpm_points: EnvelopeTrack = field(default_factory=EnvelopeTrack)

    def take(self, frame: Frame) -> None:
        """Take in the next frame."""
        if frame.error:
            self.errors[1 if self.frames else 0] += 1
            return
        time_s = self._time(frame)
        self.frames += 1
        load = self.loads.get(frame.channel)
        if load is None:
            load = self.loads.setdefault(frame.channel, LoadTrack())
        load.take(time_s, frame)
        if not frame.extended:
            self.eleven_bit += 1
            return
        source = frame.can_id & 0xFF
        node = self.nodes.get((frame.channel, source))
        if node is None:
            node = NodeTrack.begun(frame.channel, source, time_s=time_s)
            if len(self.nodes) < MOST_NODES:
                self.nodes[frame.channel, source] = node
        node.take(time_s)
        read = _READ.get(j1939.group_of(frame.can_id))
        if read is not None and not frame.remote:
            read(self, frame)

    def _time(self, frame: Frame) -> float:
        """The frame's time from the first one; time goes on where the clock was set back."""
        if not self.frames:
            self.begun_s = frame.time_s
        time_s = frame.time_s - self.begun_s + self.set_back_s
        if time_s < self.last_s:
            if self.last_s - time_s > BACK_S:
                place = Place(self.faults.file, None, f"frame {self.frames + 1:,} of the log")
                back = f"a time not before that of the frame before; it is {self.last_s - time_s:.3f} s earlier"
                self.faults.add(CLOCK_SET_BACK, place, expected=back)
                self.set_back_s += self.last_s - time_s
            time_s = self.last_s
        if time_s - self.last_s > BURST_S or not self.frames:
            self.burst_s = time_s
        self.last_s = time_s
        return time_s

    def _engine_speed(self, frame: Frame) -> None:
        rpm = j1939.ENGINE_SPEED.value(frame.data)
        if rpm is None:
            return
        source = frame.can_id & 0xFF
        engine = self.engines.get(source)
        if engine is None:
            engine = self.engines.setdefault(source, EngineTrack())
        attempts, appeared = len(engine.attempts), len(engine.appeared_s)
        engine.take(self.last_s, rpm)
        if engine is not self.engine:
            return
        self.rpm_points.take(self.last_s, rpm)
        if len(engine.appeared_s) > appeared:
            self.wakes_s.append((self.last_s, self.burst_s))
        if len(engine.attempts) > attempts:
            self.cranked(engine)

    @property
    def engine(self) -> EngineTrack | None:
        """The engine that counts: the first one's computer where it talks, else whoever reports a speed first."""
        return self.engines.get(j1939.ENGINE) or next(iter(self.engines.values()), None)

    def cranked(self, engine: EngineTrack) -> None:
        """Keep the engine's last turn of the starter, with what the supply did in it."""
        self.cranks.append(cranked(engine.attempts[-1], self.volts))

    def _volts(self, frame: Frame) -> None:
        battery_V = j1939.BATTERY_V.value(frame.data)
        key_V = j1939.KEYSWITCH_V.value(frame.data)
        if key_V is not None:
            self._key_volts(key_V)
        if battery_V is None and key_V is not None and key_V > KEY_OFF_V:
            battery_V = key_V  # behind the key's switch it is the supply only while the key is on
        if battery_V is None:
            return
        engine = self.engine
        running = engine is not None and engine.state == "runs"
        self.volts.take(self.last_s, battery_V, node=frame.can_id & 0xFF, running=running)
        self.volt_points.take(self.last_s, battery_V)

    def _key_volts(self, key_V: float) -> None:
        on = self.keyswitch[-1][1] if self.keyswitch else None
        now = True if key_V >= KEY_ON_V else False if key_V <= KEY_OFF_V else on
        if now is not None and now is not on and len(self.keyswitch) < MOST_NODES:
            self.keyswitch.append((self.last_s, now))

    def _packets(self, frame: Frame) -> None:
        for found in self.transport.take(frame._replace(time_s=self.last_s)):
            if isinstance(found, Lost):
                early = found.pgn is None and found.time_s < EDGE_S
                self.lost[CUT if early else LOST] += 1
            elif found.pgn == j1939.VIN:
                self._vin(found.data, source=found.source)

    def _whole_vin(self, frame: Frame) -> None:
        self._vin(frame.data, source=frame.can_id & 0xFF)

    def _vin(self, data: bytes, *, source: int) -> None:
        text = j1939.vin_text(data)
        if text is not None and (len(self.vins) < MOST_VINS or (text, source) in self.vins):
            self.vins[text, source] += 1

    def _far(self, frame: Frame) -> None:
        for quantity in (j1939.DISTANCE_KM_FINE, j1939.DISTANCE_KM):
            if quantity.pgn == j1939.group_of(frame.can_id):
                value = quantity.value(frame.data)
                if value is not None and (quantity.spn not in self.distance or frame.can_id & 0xFF == j1939.ENGINE):
                    self.distance[quantity.spn] = value

    def _fast(self, frame: Frame) -> None:
        speed_kmh = j1939.VEHICLE_SPEED.value(frame.data)
        if speed_kmh is not None:
            self.speed_kmh = max(self.speed_kmh or 0.0, speed_kmh)

    def _says_time(self, frame: Frame) -> None:
        said_s = j1939.time_date_s(frame.data)
        if said_s is not None:
            self.clock = said_s, self.last_s


_READ: dict[int, Callable[[Listener, Frame], None]] = {
    j1939.EEC1: Listener._engine_speed,
    j1939.VEP1: Listener._volts,
    j1939.CCVS1: Listener._fast,
    j1939.TP_CM: Listener._packets,
    j1939.TP_DT: Listener._packets,
    j1939.VIN: Listener._whole_vin,
    j1939.DISTANCE: Listener._far,
    j1939.DISTANCE_FINE: Listener._far,
    j1939.TIME_DATE: Listener._says_time,
}
