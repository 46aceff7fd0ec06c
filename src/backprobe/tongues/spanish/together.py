"""Spanish: what only comes together as the engine runs."""

SENTENCES = """
# leads, roles of wires
Supply wire: {=wire}
= Cable de alimentación: {wire}
Ignition wire: {=wire}
= Cable de contacto: {wire}
# the walkround
{what} (left by consent of {consent})
= {what} (se dejó con el consentimiento de {consent})
{what} (removed by consent of {consent})
= {what} (se retiró con el consentimiento de {consent})
position {at} is {meant}, not {read}
= la posición {at} fuera {meant}, no {read}
positions {at} are {meant}, not {read}
= las posiciones {at} fueran {meant}, no {read}
# where a wire was looked at
live {place}
= con tensión {place}
dead {place}
= sin tensión {place}
lowest {place}
= mínimo {place}
highest {place}
= máximo {place}
live at least {value}
= con tensión como mínimo {value}
at least {#value} {unit}
= como mínimo {value} {unit}
at most {#value} {unit}
= como máximo {value} {unit}
at least {#value}
= como mínimo {value}
at most {#value}
= como máximo {value}
{#low} to {#high}
= {low} a {high}
{#low} to {#high} {unit}
= {low} a {high} {unit}
off {#volts} V
= quitada {volts} V
accessory {#volts} V
= accesorios {volts} V
on {#volts} V
= contacto {volts} V
running {#volts} V
= en marcha {volts} V
after {#volts} V
= tras 10 min {volts} V
charging {#volts} V
= cargando {volts} V
isolated {#volts} V
= batería cortada {volts} V
off: {#volts} V
= quitada: {volts} V
accessory: {#volts} V
= accesorios: {volts} V
on: {#volts} V
= contacto: {volts} V
running: {#volts} V
= en marcha: {volts} V
after: {#volts} V
= tras 10 min: {volts} V
charging: {#volts} V
= cargando: {volts} V
constant {#share}
= permanente {share}
ignition {#share}
= contacto {share}
ignition not in crank {#share}
= contacto, no en el arranque {share}
accessory {#share}
= accesorios {share}
start {#share}
= arranque {share}
retained {#share}
= temporizado {share}
running only {#share}
= solo en marcha {share}
lighting {#share}
= luces {share}
signal {#share}
= señal {share}
no supply {#share}
= sin alimentación {share}
unknown {#share}
= desconocido {share}
constant {over}
= permanente {over}
# times, shares
{#days} days
= {days} días
{#hours} hours
= {hours} horas
on at {=time}
= activo a las {time}
off at {=time}
= inactivo a las {time}
look at {what}
= mire {what}
# what is named
{part} {#mV} mV ({#share})
= {part} {mV} mV ({share})
{=id} at azimuth {#az}°, elevation {#el}°
= {id} en azimut {az}°, elevación {el}°
{=id} at azimuth {#az}°, elevation {#el}°, not heard
= {id} en azimut {az}°, elevación {el}°, no oído
{=id} at azimuth {#az}°, elevation {#el}°, {#dB} dB-Hz, {use}
= {id} en azimut {az}°, elevación {el}°, {dB} dB-Hz, {use}
# what to measure
measure {=wire} at key off{rest}
= mida {wire} con la llave quitada{rest}
measure {=wire} at key off again, with a more exact meter if one can be had
= mida {wire} con la llave quitada otra vez, con un medidor más exacto si lo hay
measure {=wire} in accessory{rest}
= mida {wire} en accesorios{rest}
measure {=wire} in accessory again, with a more exact meter if one can be had
= mida {wire} en accesorios otra vez, con un medidor más exacto si lo hay
measure {=wire} at key on{rest}
= mida {wire} con el contacto puesto{rest}
measure {=wire} at key on again, with a more exact meter if one can be had
= mida {wire} con el contacto puesto otra vez, con un medidor más exacto si lo hay
measure {=wire} while the engine cranks{rest}
= mida {wire} mientras gira el motor de arranque{rest}
measure {=wire} while the engine cranks again, with a more exact meter if one can be had
= mida {wire} mientras gira el motor de arranque otra vez, con un medidor más exacto si lo hay
measure {=wire} while running{rest}
= mida {wire} con el motor en marcha{rest}
measure {=wire} while running again, with a more exact meter if one can be had
= mida {wire} con el motor en marcha otra vez, con un medidor más exacto si lo hay
measure {=wire} 10 minutes after key-off{rest}
= mida {wire} 10 minutos después de quitar la llave{rest}
measure {=wire} 10 minutes after key-off again, with a more exact meter if one can be had
= mida {wire} 10 minutos después de quitar la llave otra vez, con un medidor más exacto si lo hay
measure {=wire} with the battery switch open{rest}
= mida {wire} con el cortabaterías abierto{rest}
measure {=wire} with the battery switch open again, with a more exact meter if one can be had
= mida {wire} con el cortabaterías abierto otra vez, con un medidor más exacto si lo hay
measure {=wire} on the charger{rest}
= mida {wire} en el cargador{rest}
measure {=wire} on the charger again, with a more exact meter if one can be had
= mida {wire} en el cargador otra vez, con un medidor más exacto si lo hay
measure {=wire} in READY{rest}
= mida {wire} en READY{rest}
measure {=wire} in READY again, with a more exact meter if one can be had
= mida {wire} en READY otra vez, con un medidor más exacto si lo hay
measure a wire not yet measured {where}
= mida un cable aún sin medir {where}
{#metres} m north
= {metres} m al norte
{#metres} m north-east
= {metres} m al noreste
{#metres} m east
= {metres} m al este
{#metres} m south-east
= {metres} m al sureste
{#metres} m south
= {metres} m al sur
{#metres} m south-west
= {metres} m al suroeste
{#metres} m west
= {metres} m al oeste
{#metres} m north-west
= {metres} m al noroeste
at {#A} A at the unit's end {opens}
= a {A} A en el extremo de la unidad {opens}
at {#A} A nearer the fuse {opens}
= a {A} A más cerca del fusible {opens}
{=place}\\nexpected: {expected}
= {place}\\nse espera: {expected}
row {=line}, {=column}: "{=text}" ({expected})
= fila {line}, columna {column}: "{text}" ({expected})
{=file}: expected {expected}
= {file}: se espera {expected}
a system of {#system_V} V is not known: 12 or 24
= no se conoce un sistema de {system_V} V: 12 o 24
{=id}: {#value_dB} dB, {#least_dB} to {#most_dB} dB; {warrant}.
= {id}: {value_dB} dB, {least_dB} a {most_dB} dB; {warrant}.
Passed over: {each}
= Pasado por alto: {each}
{#margin} {unit} inside
= {margin} {unit} dentro
{#margin} {unit} outside
= {margin} {unit} fuera
plastic {#loss} dB
= plástico {loss} dB
fibreglass {#loss} dB
= fibra de vidrio {loss} dB
metal {#loss} dB
= metal {loss} dB
glass {#loss} dB
= vidrio {loss} dB
coated_glass {#loss} dB
= vidrio con capa {loss} dB
tinted_glass {#loss} dB
= vidrio tintado {loss} dB
wood {#loss} dB
= madera {loss} dB
carbon {#loss} dB
= fibra de carbono {loss} dB
fabric {#loss} dB
= tela {loss} dB
open {#loss} dB
= abierto {loss} dB
# what stands around a place
above: {material}, {=away} mm from the unit
= encima: {material}, a {away} mm de la unidad
above: {material}, {away} mm from the unit, {rake}° against the floor, up to {#top} mm
= encima: {material}, a {away} mm de la unidad, {rake}° respecto al suelo, hasta {top} mm
ahead: {material}, {=away} mm from the unit
= delante: {material}, a {away} mm de la unidad
ahead: {material}, {away} mm from the unit, {rake}° against the floor, up to {#top} mm
= delante: {material}, a {away} mm de la unidad, {rake}° respecto al suelo, hasta {top} mm
behind: {material}, {=away} mm from the unit
= detrás: {material}, a {away} mm de la unidad
behind: {material}, {away} mm from the unit, {rake}° against the floor, up to {#top} mm
= detrás: {material}, a {away} mm de la unidad, {rake}° respecto al suelo, hasta {top} mm
left: {material}, {=away} mm from the unit
= a la izquierda: {material}, a {away} mm de la unidad
left: {material}, {away} mm from the unit, {rake}° against the floor, up to {#top} mm
= a la izquierda: {material}, a {away} mm de la unidad, {rake}° respecto al suelo, hasta {top} mm
right: {material}, {=away} mm from the unit
= a la derecha: {material}, a {away} mm de la unidad
right: {material}, {away} mm from the unit, {rake}° against the floor, up to {#top} mm
= a la derecha: {material}, a {away} mm de la unidad, {rake}° respecto al suelo, hasta {top} mm
undone: {=text}
= deshecho: {text}
restored: {=text}
= repuesto: {text}
why: {=text}
= por qué: {text}
# in pictures
{what} at least {#value} {unit}
= {what} como mínimo {value} {unit}
{what} at most {#value} {unit}
= {what} como máximo {value} {unit}
restart
= reinicio
frame
= chasis
battery
= batería
key
= llave
worst
= lo peor
likely
= lo probable
best
= lo mejor
worst {#days} d
= lo peor {days} d
likely {#days} d
= lo probable {days} d
best {#days} d
= lo mejor {days} d
predicted
= previsto
heard
= oído
Centre: straight up; rim: horizon
= Centro: vertical; borde: horizonte
{lead} is joined to {wire} by {joint} behind a fuse of {fuse}.
= {lead} está unido a {wire} con {joint} detrás de un fusible de {fuse}.
{lead} is joined to {wire} by {joint} without a fuse.
= {lead} está unido a {wire} con {joint} sin fusible.
{lead} is joined to {wire} by {joint} behind a fuse of {fuse}
= {lead} está unido a {wire} con {joint} detrás de un fusible de {fuse}
{lead} is joined to {wire} by {joint} without a fuse
= {lead} está unido a {wire} con {joint} sin fusible
{lead} is joined to {wire} behind a fuse of {fuse}
= {lead} está unido a {wire} detrás de un fusible de {fuse}
{lead} is joined to {wire} without a fuse
= {lead} está unido a {wire} sin fusible
BK black
= BK negro
BN brown
= BN marrón
RD red
= RD rojo
OG orange
= OG naranja
YE yellow
= YE amarillo
GN green
= GN verde
BU blue
= BU azul
VT violet
= VT violeta
GY grey
= GY gris
WH white
= WH blanco
PK pink
= PK rosa
TQ turquoise
= TQ turquesa
corner of {street} and {=other}
= esquina de {street} y {other}
roundabout of {street} and {=other}
= rotonda de {street} y {other}
crossing of {street} and {=other}
= cruce de {street} y {other}
junction of {street} and {=other}
= cruce de {street} y {other}
{name}: a text is expected
= {name}: se espera un texto
at least {#value}…
= como mínimo {value}…
at most {#value}…
= como máximo {value}…
{#share} % of the day
= {share} % del día
key turns: expected {expected}
= giros de la llave: se espera {expected}
reports: expected {expected}
= informes: se espera {expected}
a script in which the key is turned on
= un guion en que se gira la llave a contacto
there is only: {done}
= solo hay: {done}
Walkround
= Inspección
Journal
= Diario
Hazards
= Peligros
Reception
= Recepción
"""
