"""Spanish: the pictures."""

SENTENCES = """
# job/heard_picture.py
over what was predicted to stand in the way
= sobre lo que se preveía que estorbaba
{=file}: the sky as the receiver heard it{beside}
= {file}: el cielo como lo oyó el receptor{beside}
# job/mount_picture.py
The sky left to the unit
= El cielo que le queda a la unidad
The sky as predicted
= El cielo según la previsión
heading {#heading_deg}°
= rumbo {heading_deg}°
at the worst heading
= con el peor rumbo
{name}, {headed}, under the nominal GPS constellation
= {name}, {headed}, bajo la constelación GPS nominal
a good fix, of a day
= una buena posición, del día
HDOP, half the time
= HDOP, la mitad del tiempo
HDOP, 95 % (heard: 90 %)
= HDOP, 95 % (oído: 90 %)
satellites, half the time
= satélites, la mitad del tiempo
# job/parked_picture.py
How long the vehicle can stand: the charge left in its battery, day by day.
= Cuánto puede estar parado el vehículo: la carga que queda en su batería, día a día.
# job/picture.py
{=name}: the supply while the starter turns
= {name}: la alimentación mientras gira el motor de arranque
crank, {share} sure
= arranque, {share} seguro
The file's clock stood still: times are estimates from the row numbers.
= El reloj del archivo estaba parado: los tiempos se estiman por el número de fila.
# job/turns_picture.py
What the unit reported
= Lo que informó la unidad
Hatched above: an ignition must be live. Hatched below: unit {unit} said on. Between: how late it said so. UTC, {day}.
= Rayado arriba: un contacto debe tener tensión. Rayado abajo: la unidad {unit} dijo activo. En medio: con cuánto retraso lo dijo. UTC, {day}.
(no id)
= (sin identificador)
no report
= sin informe
not heard
= no oído
not reported
= no informado
not seen
= no visto
{word} {#late_s} s late
= {word} con {late_s} s de retraso
{word} within {#late_s} s
= {word} en menos de {late_s} s
{off}: no ignition was turned
= {off}: no se giró ningún contacto
# job/wiring.py
The wiring as it was built. Colours in the letters of IEC 60757: {letters}.
= El cableado como quedó hecho. Colores con las letras de IEC 60757: {letters}.
{#largest_A} A
= {largest_A} A
{=lead} (not on the unit's sheet)
= {lead} (no está en la hoja de la unidad)
{#mm2} mm²
= {mm2} mm²
cavity {cavity}
= cavidad {cavity}
The wiring as it was built.
= El cableado como quedó hecho.
# drawings/bus_cycle.py
Neither a voltage nor an engine speed was reported.
= No se informó ni tensión ni régimen del motor.
# drawings/margin_bar.py
no limit is set for this
= no hay límite para esto
no value
= sin valor
# drawings/margin_words.py
the evidence allows {span}
= lo observado admite {span}
Limit: {limit_text}
= Límite: {limit_text}
Margin: {margin_text}
= Margen: {margin_text}
Verdict: {verdict}
= Veredicto: {verdict}
Basis: {warrant}
= Base: {warrant}
on the limit
= en el límite
# drawings/parked_curve.py
Firm line: the charge left, likely; tint around it: worst to best. Hatched: what a start at {it} °C may need, dashed: likely. Parts of the rated charge, against days parked.
= Línea firme: la carga que queda, probable; tinte alrededor: de lo peor a lo mejor. Rayado: lo que puede necesitar un arranque a {it} °C, a trazos: lo probable. Partes de la carga nominal, según los días parado.
Wanted: {#wanted_days} days.
= Se quieren: {wanted_days} días.
The charge falls from {#likely} of the rated; a start at {#coldest_C} °C needs {#needed}, {#needed_2} to {#needed_3}. It is reached after {#likely_2} days, at the earliest {#low}, at the latest {#high}.{wanted}
= La carga baja desde el {likely} de la nominal; un arranque a {coldest_C} °C necesita el {needed}, del {needed_2} al {needed_3}. Se alcanza tras {likely_2} días, lo antes {low}, lo más tarde {high}.{wanted}
wanted {#wanted_days} d
= se quieren {wanted_days} d
# drawings/sky.py
Sky plot
= Plano del cielo
# drawings/sky_pair.py
as predicted
= según la previsión
as heard
= según lo oído
{what}: predicted {predicted}
= {what}: previsto {predicted}
heard {heard}
= oído {heard}
As heard: {described_sky}
= Según lo oído: {described_sky}
As predicted: {described_sky} {figures}.
= Según la previsión: {described_sky} {figures}.
# drawings/sky_plot.py
Centre: straight up; rim: horizon. The fuller a mark, the stronger the signal (15 to 50 dB-Hz).
= Centro: vertical; borde: horizonte. Cuanto más llena la marca, más fuerte la señal (15 a 50 dB-Hz).
No satellite's place in the sky is known.
= No se conoce el lugar de ningún satélite en el cielo.
used for the position
= usado para la posición
heard, not used
= oído, no usado
{label}: azimuth {#from_deg}° to {#to_deg}°
= {label}: azimut {from_deg}° a {to_deg}°
the vehicle's front points to {#heading_deg}°
= el frente del vehículo apunta a {heading_deg}°
in the way
= estorba
No satellite's place is known
= No se conoce el lugar de ningún satélite
not used
= no usado
azimuth {#az_deg}°, elevation {#el_deg}°
= azimut {az_deg}°, elevación {el_deg}°
# drawings/trace.py
Crank waveform
= Forma de onda del arranque
# drawings/turns.py
the hand
= la mano
the unit
= la unidad
none to report
= nada que informar
The key: {hand}. The unit: {told}.
= La llave: {hand}. La unidad: {told}.
# drawings/waveform.py
Line: the lowest value of each step. Tint: up to the highest.
= Línea: el valor más bajo de cada paso. Tinte: hasta el más alto.
Nothing was recorded that can be drawn.
= No se grabó nada que se pueda dibujar.
Limit {label}
= Límite {label}
{label} from {seconds} to {seconds_2}
= {label} de {seconds} a {seconds_2}
key {label} from {seconds}
= llave {label} desde {seconds}
{=name}: nothing recorded
= {name}: nada grabado
{=name}: lowest {low_text}, highest {high_text}
= {name}: mínimo {low_text}, máximo {high_text}
# drawings/wiring.py
not told where it went
= no se dice adónde fue
No lead was joined yet.
= Aún no se unió ningún cable de la unidad.
Wiring of {unit}
= Cableado de {unit}
fuse {fuse}
= fusible {fuse}
behind a fuse of {fuse}
= detrás de un fusible de {fuse}
{lead} is grounded: {stated}.
= {lead} va a masa: {stated}.
place not stated
= lugar no indicado
{lead} is not used: {joint}.
= {lead} no se usa: {joint}.
without a fuse
= sin fusible
{lead} is joined to {wire}.
= {lead} está unido a {wire}.
"""
