"""Spanish: inputs, ground and crank at the joints."""

SENTENCES = """
# stages/join/crank_low.py
the starter's inrush may hide a deeper dip (range by our own model)
= el pico del arranque puede ocultar una caída más honda (margen según nuestro propio modelo)
how long it stays below, no MIN hold says
= cuánto tiempo queda por debajo, no lo dice ninguna retención MIN
record the supply wire through a crank with a fast recorder: that shows how deep and how long it dips
= grabe el cable de alimentación durante un arranque completo con un registrador rápido: eso muestra cuánto cae y por cuánto tiempo
record the ignition wire through a crank with a fast recorder: that shows how deep and how long it dips
= grabe el cable de contacto durante un arranque completo con un registrador rápido: eso muestra cuánto cae y por cuánto tiempo
MIN hold of {#hold_ms} ms
= retención MIN de {hold_ms} ms
{=wire} in the crank: {#value_V} V ({#low_V} to {#high_V}), {by}
= {wire} en el arranque: {value_V} V ({low_V} a {high_V}), {by}
{shown}: {HIDES}
= {shown}: {HIDES}
{because}; {HOW_LONG}
= {because}; {HOW_LONG}
{because}; at {#peak_A} A {said} mV are lost in joint, fuse, lead and ground ({said_2} mΩ)
= {because}; a {peak_A} A se pierden {said} mV en unión, fusible, cable y masa ({said_2} mΩ)
{because}; below {#high_least_V} V the input is not sure to be on
= {because}; por debajo de {high_least_V} V no es seguro que la entrada esté activa
The ignition wire's lowest volts in a crank
= La tensión más baja del cable de contacto en un arranque
# stages/join/crank_volts.py
shorten the supply lead or take thicker wire, mend joint and ground, or tap nearer to the battery
= acorte el cable de alimentación o tome uno más grueso, repare unión y masa, o derive más cerca de la batería
volts of the supply wire in a crank: a recording of it, or crank_level
= voltios del cable de alimentación en un arranque: una grabación, o crank_level
the unit's peak current, in its sheet
= la corriente máxima de la unidad, en su hoja
length_m of '{=name}', and its size in the unit's sheet
= length_m de '{name}', y su sección en la hoja de la unidad
{SHEET} and {#margin_V} V more by {=file}
= {SHEET} y {margin_V} V más según {file}
{source}; at {#peak_A} A {said} mV are lost in joint, fuse, lead and ground ({said_2} mΩ)
= {source}; a {peak_A} A se pierden {said} mV en unión, fusible, cable y masa ({said_2} mΩ)
The unit's supply in a crank
= La alimentación de la unidad en un arranque
hold-up time: {basis}
= tiempo que aguanta: {basis}
{because}; down to {#likely_V} V ({#worst_V} to {#best_V}), {#least_V} V are needed
= {because}; hasta {likely_V} V ({worst_V} a {best_V}), hacen falta {least_V} V
Time below the unit's least volts
= Tiempo por debajo de la tensión mínima de la unidad
volts of the ignition wire in a crank: a recording of it
= voltios del cable de contacto en un arranque: una grabación
the ignition input's debounce, in the unit's sheet
= el tiempo antirrebote de la entrada de contacto, en la hoja de la unidad
debounce: {SHEET}
= tiempo antirrebote: {SHEET}
{source}; below {#high_least_V} V the input is not sure to be on
= {source}; por debajo de {high_least_V} V no es seguro que la entrada esté activa
The ignition input's longest dip in a crank
= La caída más larga de la entrada de contacto en un arranque
{because}; the level's figures are from memory and decide nothing alone
= {because}; los valores del nivel son de memoria y no deciden nada solos
find an ignition wire that stays live through the crank
= busque un cable de contacto que siga con tensión durante el arranque
record the tapped wires through a whole crank, from before it until the engine runs
= grabe los cables derivados durante un arranque completo, desde antes hasta que el motor quede en marcha
# stages/join/ground.py
clean the ground to bare metal, tighten it and seal it, or move it to a factory ground; then read the drop again
= limpie la masa hasta el metal, apriétela y séllela, o pásela a una masa de fábrica; luego lea otra vez la caída
drop_mV and load_A: millivolts from the unit's ground to the battery's negative post, under a known load
= drop_mV y load_A: milivoltios desde la masa de la unidad al borne negativo de la batería, con una carga conocida
restraint hardware: it must not be loosened, and its torque keeps people in their seats
= anclaje de retención: no se debe aflojar, y su par de apriete mantiene a las personas en su asiento
a module's own ground: what the unit draws shifts what the module reads
= la masa propia de un módulo: lo que toma la unidad desplaza lo que lee el módulo
high-voltage bonding: it is for safety alone
= conexión equipotencial de alta tensión: es solo para la seguridad
fuel hardware: a spark there starts a fire
= pieza de combustible: ahí una chispa provoca un incendio
brake hardware
= pieza de frenos
paint and plastic do not conduct
= la pintura y el plástico no conducen
a moving part: its ground comes and goes with it
= una pieza móvil: su masa va y viene con ella
switched_negative: which side the battery switch is in
= switched_negative: en qué lado está el cortabaterías
at the unit's peak of {#peak_A} A its supply reads {#peak_A_2} mV low, and every input as much
= con el máximo de {peak_A} A de la unidad, su alimentación se lee {peak_A_2} mV más baja, y lo mismo cada entrada
The ground under load
= La masa con carga
{#drop_mV} mV at {#load_A} A (±{#LOAD_SURE_TO}) are {said} mΩ ({said_2} to {said_3}){shift}
= {drop_mV} mV a {load_A} A (±{LOAD_SURE_TO}) son {said} mΩ ({said_2} a {said_3}){shift}
'{=place}': with the switch in the negative side the battery's post is not the frame's ground
= '{place}': con el cortabaterías en el lado negativo, el borne de la batería no es la masa del chasis
Where the unit is grounded
= Dónde va a masa la unidad
'{=place}': nothing speaks against it ({COMMON_PRACTICE}; the maker's own points go first)
= '{place}': nada habla en contra ({COMMON_PRACTICE}; los puntos del propio fabricante van primero)
move the ground to the vehicle's own ground point or bare metal of the frame, and read its drop again
= pase la masa al punto de masa del vehículo o a metal desnudo del chasis, y lea otra vez su caída
behind: what is behind the panel where the self-tapping screw went
= behind: qué hay detrás del panel donde entró el tornillo autorroscante
behind the panel: {behind}
= detrás del panel: {behind}
take the screw out, look at what it met, and ground at a stud or bolt instead
= saque el tornillo, mire qué alcanzó, y ponga la masa en un espárrago o perno
The self-tapping screw
= El tornillo autorroscante
behind it: {behind}
= detrás: {behind}
# stages/join/idle_transmit.py
read the drop across tap, fuse, each joint and ground while the unit transmits; make the worst joint again
= lea la caída en toma, fusible, cada unión y masa mientras la unidad transmite; rehaga la peor unión
read both again, one right after the other, with the engine off and nothing else switched
= lea ambas otra vez, una tras otra, con el motor parado y sin conmutar nada más
the supply rose while the unit drew more: the vehicle's own volts moved between the two readings
= la alimentación subió mientras la unidad tomaba más: los voltios del vehículo cambiaron entre las dos lecturas
read both again with one more digit at the unit's plug, or read the drop under a load of 1 A or more
= lea ambas otra vez con un dígito más en el conector de la unidad, o lea la caída con una carga de 1 A o más
idle_mA and transmit_mA, in the unit's sheet: by how much its current rises when it transmits
= idle_mA y transmit_mA, en la hoja de la unidad: cuánto sube su corriente cuando transmite
The supply from idle to transmitting, taken at 1 A
= La alimentación de reposo a transmisión, llevada a 1 A
{#idle_V} V idle, {#transmit_V} V transmitting: {#change_mV} mV, which is {mohm}
= {idle_V} V en reposo, {transmit_V} V al transmitir: {change_mV} mV, que son {mohm}
something on the way resists more than that
= algo en el camino resiste más que eso
{seen}; by what was read and by the leads it should be {mohm}
= {seen}; según lo leído y los cables deberían ser {mohm}
{likely} mΩ ({low} to {high})
= {likely} mΩ ({low} a {high})
# stages/join/input_sources.py
a diode each keeps them apart
= un diodo en cada uno los separa
a relay keeps them apart
= un relé los separa
hundreds of volts when it lets go
= cientos de voltios cuando suelta
What hangs on '{=name}'
= Qué cuelga de '{name}'
nothing that was written of it speaks against it ({PRACTICE})
= nada de lo anotado habla en contra ({PRACTICE})
put in what is named, then prove the input by a report of the unit
= ponga lo que se nombra y compruebe luego la entrada con un informe de la unidad
'{=lead}' joins {joined} with nothing between them
= '{lead}' une {joined} sin nada en medio
isolation of '{=name}', which follows {and}: diode, relay or none
= isolation de '{name}', que sigue a {and}: diodo, relé o nada
diode of '{=name}': whether the relay's coil has a flyback diode
= diode de '{name}': si la bobina del relé tiene un diodo de rueda libre
pull of '{=name}' in the unit's sheet, or pulled: the wire is open when off
= pull de '{name}' en la hoja de la unidad, o pulled: el cable queda abierto cuando no está activo
the wire is open when off and the input is not pulled {wanted}: it floats
= el cable queda abierto cuando no está activo y nada lleva la entrada hacia {wanted}: flota
the relay that keeps the wires apart has no flyback diode at its coil: {SPIKE}
= el relé que separa los cables no tiene diodo de rueda libre en su bobina: {SPIKE}
a coil without a flyback diode hangs on it: {SPIKE}
= de él cuelga una bobina sin diodo de rueda libre: {SPIKE}
the unit is set to active {active}, and the signal is active {kind}
= la unidad está puesta en activo {active}, y la señal es de activo {kind}
by a resistor that was put in
= por una resistencia añadida
inside the unit
= dentro de la unidad
open when off, pulled {wanted} {where}
= abierto cuando no está activo, llevado hacia {wanted} {where}
active {kind}
= activo {kind}
# stages/join/inputs.py
drive the input through a relay, or take a signal whose levels lie beyond the input's thresholds
= accione la entrada con un relé, o tome una señal cuyos niveles superen los umbrales de la entrada
switch the signal on and off, look for the unit's report of each, write down reported_on and reported_off
= active y desactive la señal, busque el informe de la unidad de cada cambio, y anote reported_on y reported_off
[[input]] of {join}: no input of the unit's sheet, which has: {join_2}
= [[input]] de {join}: no es una entrada de la hoja de la unidad, que tiene: {join_2}
thresholds of '{=name}', in the unit's sheet
= umbrales de '{name}', en la hoja de la unidad
[[input]] of '{=name}': on_V and off_V
= [[input]] de '{name}': on_V y off_V
of '{=name}' on_V
= de '{name}' on_V
open when off
= abierto cuando no está activo
{kind}, behind the relay
= {kind}, tras el relé
{kind}; {#low} to {#high} V go in the diode
= {kind}; de {low} a {high} V se quedan en el diodo
of '{=name}' off_V, or floats_off
= de '{name}' off_V, o floats_off
'{=name}' when it is {low}
= '{name}' en nivel {low}
{kind}; the unit's ground can take up to {#shift_V} V off
= {kind}; la masa de la unidad puede quitar hasta {shift_V} V
The proof of '{=name}' by a report
= La prueba de '{name}' con un informe
its change was not seen in a report
= su cambio no se vio en ningún informe
seen one way only
= visto en un solo sentido
on and off cannot both be of {on}
= activo e inactivo no pueden ser ambos de {on}
reported on at {on}, off at {off}
= informado activo a las {on}, inactivo a las {off}
# stages/join/join.py
[join] and [[joint]]
= [join] y [[joint]]
# stages/join/level_waveform.py
{basis} ({standing}): what a unit must survive, not how healthy a battery is
= {basis} ({standing}): lo que una unidad debe resistir, no lo sana que está una batería
ISO 16750-2 has no level {level} at {#system_V} V: {join}
= ISO 16750-2 no tiene nivel {level} a {system_V} V: {join}
level {level}: {SAYS}
= nivel {level}: {SAYS}
# stages/join/wire_calc.py
{warrant}: {#ohm} Ω at most; shown beside, not used
= {warrant}: {ohm} Ω como máximo; mostrado al lado, no usado
"""
