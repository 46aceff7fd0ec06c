"""Spanish: wires and their roles."""

SENTENCES = """
# stages/probe/findings.py
at key off
= con la llave quitada
in accessory
= en accesorios
at key on
= con el contacto puesto
while the engine cranks
= mientras gira el motor de arranque
while running
= con el motor en marcha
10 minutes after key-off
= 10 minutos después de quitar la llave
with the battery switch open
= con el cortabaterías abierto
on the charger
= en el cargador
the display
= la pantalla
a MIN hold
= una retención MIN
a MAX hold
= una retención MAX
a fast recorder
= un registrador rápido
out of gear, parking brake on, nobody near the engine
= sin marcha metida, freno de mano puesto, nadie cerca del motor
low-voltage wires only; orange cables are for licensed people
= solo cables de baja tensión; los naranjas son para personas autorizadas
no wire was found for it yet
= aún no se encontró cable para esto
reads as {words} ({share} by its volts)
= se lee como {words} ({share} por sus voltios)
that is no {name}
= eso no sirve de {name}
{=typed} V {where} contradicts the others
= {typed} V {where} contradice a los demás
{again} once more
= {again} una vez más
not sure enough to tap it
= no hay seguridad suficiente para derivarlo
{rival} is fit by its volts: name its circuit, and give it lead = "{=name}"
= {rival} sirve por sus voltios: nombre su circuito y déle lead = "{name}"
do not use {=name}; {found} in the job sheet
= no use {name}; {found} en la hoja de trabajo
do not use {name}; {wire}
= no use {name}; {wire}
find another wire
= busque otro cable
do not use {=name}
= no use {name}
measure {=name} {where} again, with a more exact meter if one can be had
= mida {name} {where} otra vez, con un medidor más exacto si lo hay
doors shut
= puertas cerradas
bring a meter with a MIN hold, or a fast recorder: a display cannot prove {=name} in the crank
= traiga un medidor con retención MIN o un registrador rápido: una pantalla no puede comprobar {name} en el arranque
{=name}: what it feeds
= {name}: qué alimenta
never tapped: {join}
= no se deriva nunca: {join}
circuit not identified: volts cannot show what a wire feeds
= circuito sin identificar: los voltios no muestran qué alimenta un cable
name the circuit of {=name}: fuse label, the maker's diagram or the body-builder connector
= nombre el circuito de {name}: rótulo del fusible, esquema del fabricante o conector de carrocero
identified as {join}
= identificado como {join}
in READY
= en READY
not measured yet {place}
= aún sin medir {place}
{place} it must be {wanted}
= {place} debe estar {wanted}
proven for {#or} minutes, not for a night
= comprobado durante {or} minutos, no durante una noche
too low, by {DISPLAY}
= demasiado bajo, según {DISPLAY}
by the display: it can have missed the dip
= según la pantalla: puede haberse perdido la caída
lowest value of a fast recording
= valor más bajo de una grabación rápida
MIN hold of {#min_capture_ms} ms
= retención MIN de {min_capture_ms} ms
{hold}: the starter's inrush may hide a deeper dip (range by our own model)
= {hold}: el pico del arranque puede ocultar una caída más honda (margen según nuestro propio modelo)
not measured yet
= aún sin medir
what kind of wire it is, is not certain yet
= aún no es seguro qué clase de cable es
looks like {words} ({share} by its volts), not proven yet
= parece {words} ({share} por sus voltios), aún sin comprobar
with {capture}
= con {capture}
measure {=wire} {where}
= mida {wire} {where}
a wire not yet measured
= un cable aún sin medir
# stages/probe/next_reading.py
the figure written down at {key} could not be taken: measure it again
= no se pudo usar el valor anotado con la llave en {key}: mídalo otra vez
{=typed} V at {key} does not fit the rest of this wire
= {typed} V con la llave en {key} no encaja con el resto de este cable
{odd}: clean the spot and press the probe on while MAX holds; a poor touch reads low
= {odd}: limpie el punto y apriete la punta mientras MAX retiene; un mal contacto da de menos
{odd}: measure it again
= {odd}: mídalo otra vez
tells wires that are live with the key out from switched ones
= distingue los cables con tensión sin la llave de los que conmuta la llave
a true ignition is dead in accessory
= un contacto verdadero no tiene tensión en accesorios
shows whether the key switches it
= muestra si lo conmuta la llave
shows whether it stays live while the engine cranks, and how low it goes
= muestra si sigue con tensión mientras gira el motor de arranque, y hasta dónde baja
shows whether it follows the charging battery
= muestra si sigue a la batería en carga
tells a constant from a wire that is held live for some minutes: key off 10 minutes, doors shut
= distingue un permanente de un cable que mantiene tensión unos minutos: llave quitada 10 minutos, puertas cerradas
an ignition is dead on the charger
= un contacto no tiene tensión en el cargador
shows whether it is live only in the crank: a start wire, never to be tapped
= muestra si solo tiene tensión en el arranque: un cable de arranque, que no se deriva nunca
{reason}; so far it looks like {likely}
= {reason}; por ahora parece {likely}
# stages/probe/permission.py
restraint (airbag) circuit
= circuito de retención (airbag)
brake circuit
= circuito de frenos
steering circuit
= circuito de dirección
engine or drive control
= control de motor o tracción
start circuit
= circuito de arranque
data bus
= bus de datos
sensor or signal line
= línea de sensor o de señal
twisted pair: a bus or sensor line
= par trenzado: una línea de bus o de sensor
yellow covering: restraint wiring
= cubierta amarilla: cableado de retención
orange covering: high voltage, on older vehicles restraint wiring
= cubierta naranja: alta tensión, en vehículos antiguos retención
circuit '{text}': {kind}
= circuito '{text}': {kind}
mark '{text}': {kind}
= marca '{text}': {kind}
# stages/probe/reasons.py
recorded low
= grabado bajo
live with the key on, dead in the crank: the unit would lose ignition at every start
= con tensión en contacto, sin ella en el arranque: la unidad perdería el contacto en cada arranque
live in accessory: the unit would count trips while somebody listens to the radio
= con tensión en accesorios: la unidad contaría viajes mientras alguien escucha la radio
live only in the crank: a start circuit is never tapped
= con tensión solo en el arranque: un circuito de arranque no se deriva nunca
held live for some minutes after key-off, then dead: neither a supply nor an ignition
= mantiene tensión unos minutos tras quitar la llave y luego la pierde: ni alimentación ni contacto
live only with the engine running: no use for a unit that must see the key
= con tensión solo con el motor en marcha: no sirve para una unidad que debe ver la llave
follows the lamps or is dimmed: not a feed to rely on
= sigue a las luces o está atenuado: no es una alimentación fiable
a sensor or bus level: a level at rest is no proof of a supply, and such a line is never tapped
= un nivel de sensor o de bus: un nivel en reposo no prueba que sea alimentación, y esa línea no se deriva nunca
no supply on it: a ground, a spare or an open end
= sin alimentación: una masa, un cable libre o un extremo abierto
near 12 V in a 24 V system: a converter or the tap between two batteries; no tap
= cerca de 12 V en un sistema de 24 V: un convertidor o la toma entre dos baterías; no se deriva
never tapped, whatever its volts
= no se deriva nunca, sean cuales sean sus voltios
by its volts: {said}
= por sus voltios: {said}
so far: {said}
= por ahora: {said}
fits no kind of wire: measure it again
= no encaja con ninguna clase de cable: mídalo otra vez
{=typed} V at {key} does not fit the other readings: set aside, measure it again
= {typed} V con la llave en {key} no encaja con las demás lecturas: apartado, mídalo otra vez
not measured yet for the {slot}: {join}
= aún sin medir para {slot}: {join}
{shown}, must be {state} ({wanted}){stray}
= {shown}, debe estar {state} ({wanted}){stray}
{shown}, {state}, but the meter's error reaches past the limit ({wanted})
= {shown}, {state}, pero el error del medidor pasa del límite ({wanted})
proven for {#or} minutes, no longer
= comprobado durante {or} minutos, no más
stray volts vanish under a test lamp: measure it so and write load_A
= los voltios parásitos desaparecen con una lámpara de prueba: mídalo así y anote load_A
may be stray volts: a test lamp tells, but only once its circuit is identified
= pueden ser voltios parásitos: una lámpara de prueba lo dice, pero solo cuando se identifique su circuito
crank: {DISPLAY} {#value_V} V
= arranque: {DISPLAY} {value_V} V
which can have missed the dip: it proves nothing
= que puede haberse perdido la caída: no prueba nada
part of the range is below it
= parte del margen queda por debajo
{shown}; limit {wanted}: {verdict}
= {shown}; límite {wanted}: {verdict}
true lowest {#or} to {#or_2} V
= mínimo verdadero {or} a {or_2} V
{true} as a hold of {#min_capture_ms} ms averages the inrush away (our own model)
= {true}, pues una retención de {min_capture_ms} ms promedia el pico (nuestro propio modelo)
isolated: {#level} V, dead with the battery switch open: the unit falls back on its own battery then
= batería cortada: {level} V, sin tensión con el cortabaterías abierto: la unidad queda entonces con su propia batería
isolated: {#level} V, live with the battery switch open: it hangs before the switch, ask first
= batería cortada: {level} V, con tensión con el cortabaterías abierto: cuelga antes del cortabaterías, pregunte primero
# stages/probe/supply_findings.py
read it without and with a load of about 1 to 2 A (a test lamp) at one key position; write the load as load_A
= léalo sin carga y con una carga de 1 a 2 A (una lámpara de prueba) en la misma posición de la llave; anote la carga como load_A
name its circuit first: a lamp on a restraint circuit can set it off; then read it without and with load
= nombre primero su circuito: una lámpara en un circuito de retención puede dispararlo; luego léalo sin y con carga
record {wire} through a crank with a fast recorder, if one can be had
= grabe {wire} durante un arranque con un registrador rápido, si lo hay
fit a unit made for this vehicle's system, or find a better feed
= monte una unidad hecha para el sistema de este vehículo, o busque una alimentación mejor
find a better feed, or clean the joint and measure again
= busque una alimentación mejor, o limpie la unión y mida otra vez
{=name}: drop under load
= {name}: caída con carga
{=typed} V without load, {=typed_2} V at {#load_A} A, key {key}
= {typed} V sin carga, {typed_2} V a {load_A} A, llave en {key}
{because}: higher under load, so they are no pair
= {because}: más alto con carga, así que no forman pareja
no reading without load at the key position of the loaded one
= ninguna lectura sin carga en la posición de la llave de la lectura con carga
read under {#load_A} A; about 1 to 2 A are wanted, with the engine not cranking
= leído con {load_A} A; se quieren de 1 a 2 A, sin que gire el motor de arranque
no reading under load yet
= aún ninguna lectura con carga
{=name}: the unit's own lowest supply
= {name}: la alimentación mínima de la propia unidad
in the crank
= en el arranque
below it the unit restarts at every start
= por debajo, la unidad se reinicia en cada arranque
lowest with key {key}
= mínimo con la llave en {key}
{=name}: the unit's own highest supply
= {name}: la alimentación máxima de la propia unidad
highest with key {key}
= máximo con la llave en {key}
the unit's sheet
= la hoja de la unidad
# stages/probe/tapping.py
one figure contradicts the others: not to be tapped before it was measured again
= un valor contradice a los demás: no se deriva hasta medirlo otra vez
its level with the engine running is low for a charged battery: measure another live wire there too
= su nivel con el motor en marcha es bajo para una batería cargada: mida también ahí otro cable con tensión
the limits are not met
= los límites no se cumplen
not everything was measured
= no se midió todo
too thin to tap it: a better capture may be had, or the range ends too far below the limit
= demasiado justo para derivarlo: quizá haya una captura mejor, o el margen acaba demasiado por debajo del límite
# stages/probe/wording.py
over 99%
= más del 99%
# stages/probe/findings.py
under a load of about 1 to 2 A (a test lamp)
= con una carga de 1 a 2 A (una lámpara de prueba)
the unit's reports close this: key on, off, and 10 minutes of key off after that
= esto lo cierran los informes de la unidad: contacto puesto, llave quitada, y 10 minutos más con la llave quitada
over {#minutes} minutes of key off
= durante {minutes} minutos con la llave quitada
lowest {place} by {source}
= mínimo {place} según {source}
# stages/probe/next_reading.py
shows how far the feed gives way; what only rests at battery level goes dead under a lamp
= muestra cuánto cede la alimentación; lo que solo reposa en el nivel de la batería se queda sin tensión con una lámpara
"""
