"""Spanish: the walkround."""

SENTENCES = """
# stages/walkround/authority.py
Authority to work
= Permiso para trabajar
Authority to crank
= Permiso para arrancar
touch nothing until somebody who may has allowed the work; write who under [authority] (work_by)
= no toque nada hasta que alguien con potestad haya permitido el trabajo; anote quién en [authority] (work_by)
ask somebody who may allow a crank, and write who under [authority] (crank_by)
= pregunte a quien pueda permitir un arranque y anote quién en [authority] (crank_by)
cranking allowed by {crank_by}
= {crank_by} permitió el arranque
{work} allowed by {work_by}
= {work_by} permitió {work}
work and cranking
= el trabajo y el arranque
the work
= el trabajo
who allowed the work is not said
= no se dice quién permitió el trabajo
a crank was measured, yet it is said that nobody allowed one
= se midió durante un arranque, pero consta que nadie permitió arrancar
{refused}: without a crank no supply and no ignition can be proven
= {refused}: sin arranque no se puede comprobar ni alimentación ni contacto
who allowed cranking is not said
= no se dice quién permitió arrancar
{what} was refused by {by}
= {by} no permitió {what}
nobody allowed {what}
= nadie permitió {what}
# stages/walkround/battery_switch.py
Battery switch
= Cortabaterías
Battery switch in the negative side
= Cortabaterías en el lado negativo
look up in the maker's instructions how long after key-off the switch must stay closed (after_run_min)
= busque en las instrucciones del fabricante cuánto tiempo debe seguir cerrado el cortabaterías tras quitar la llave (after_run_min)
move the ground from the battery to the frame, so that the switch cuts it off
= pase la masa de la batería al chasis, para que el cortabaterías la corte
a battery switch
= un cortabaterías
no battery switch
= ningún cortabaterías
{sheet_says} on the sheet, {battery_switch} on the vehicle
= {sheet_says} en la hoja, {battery_switch} en el vehículo
look again, and put sheet or walkround right
= mire otra vez y corrija la hoja o la inspección
in the {battery_switch_side} side; {before_isolating}
= en el lado {battery_switch_side}; {before_isolating}
in which side of the battery it sits is not said
= no se dice en qué lado de la batería está
follow the cable from the switch: battery_switch_side = "positive" or "negative"
= siga el cable desde el cortabaterías: battery_switch_side = "positive" o "negative"
lead '{=lead}' is grounded at '{=place}': that bypasses the switch
= el cable '{lead}' está a masa en '{place}': eso puentea el cortabaterías
# stages/walkround/cautions.py
parking brake on, neutral, wheels chocked, PTO off, nobody beneath or near the engine, exhaust led away, and one agreed caller
= freno de mano puesto, punto muerto, ruedas calzadas, toma de fuerza desconectada, nadie debajo ni cerca del motor, gases de escape conducidos fuera y una sola persona acordada que da la orden
open the battery switch only after the maker's after-run time, which the maker's instructions state
= abra el cortabaterías solo después del tiempo de espera que indican las instrucciones del fabricante
open the battery switch only {#after_run_min} min after key-off, the maker's after-run time
= abra el cortabaterías solo {after_run_min} min después de quitar la llave, el tiempo de espera del fabricante
stay away from everything orange and what it leads to; follow the maker's procedure; high-voltage work is for licensed persons only
= no se acerque a nada naranja ni a lo que va conectado a ello; siga el procedimiento del fabricante; la alta tensión es solo para personas autorizadas
never probe, load, cut or splice it (mostly yellow, on older vehicles orange); battery off and the maker's waiting time before its plugs are touched
= no lo mida, cargue, corte ni empalme nunca (casi siempre amarillo, naranja en vehículos antiguos); batería desconectada y tiempo de espera del fabricante antes de tocar sus conectores
take both negatives off before anything is cut or joined, and put them on last
= desconecte ambos negativos antes de cortar o unir nada, y vuelva a ponerlos al final
its stop lamps and anti-lock brakes hang on the tractor's wiring: never tap those, and try all trailer lamps after the work; plugs of 12 V and 24 V trailers can look the same
= sus luces de freno y su ABS dependen del cableado de la tractora: no lo derive nunca, y pruebe todas las luces del remolque después del trabajo; los conectores de remolques de 12 V y de 24 V pueden parecer iguales
never tap it, and keep the work and its ground away from it; a short circuit there burns on
= no lo derive nunca, y mantenga el trabajo y su masa lejos de él; ahí un cortocircuito sigue ardiendo
the limits of live wires are twice as high; a wire near 12 V is a converter or a centre tap: no tap
= los límites de los cables con tensión se duplican; un cable cerca de 12 V es un convertidor o la toma central: no se deriva
no tap upstream of the battery switch without consent; no sparks, no heat and no test lamp where vapour can be
= nada de tomas antes del cortabaterías sin consentimiento; sin chispas, calor ni lámpara de prueba donde pueda haber vapores
the switch is in the negative side: a ground on the battery post bypasses it, so ground at the frame; with it open, measure against the frame
= el cortabaterías está en el lado negativo: una masa en el borne de la batería lo puentea, así que ponga la masa en el chasis; con él abierto, mida contra el chasis
# stages/walkround/condition.py
Condition before the work
= Estado antes del trabajo
Condition after the work
= Estado después del trabajo
key on before anything is touched: write lamps, codes and odometer under [before], and photograph the dash
= contacto puesto antes de tocar nada: anote testigos, códigos y cuentakilómetros en [before] y fotografíe el cuadro
when the work is done, key on: write lamps, codes and odometer under [after], and photograph the dash
= terminado el trabajo, contacto puesto: anote testigos, códigos y cuentakilómetros en [after] y fotografíe el cuadro
find out what set it before the vehicle goes back, put it right, and write [after] anew
= averigüe qué lo provocó antes de devolver el vehículo, corríjalo y escriba [after] de nuevo
say why under [after] (explained): a code that was cleared can no longer be looked into
= diga por qué en [after] (explained): un código borrado ya no se puede investigar
read the photos or the dash again: none of these figures runs backwards
= lea otra vez las fotos o el cuadro: ninguno de estos valores va hacia atrás
not written down: {join}
= no anotado: {join}
not written down yet
= aún no anotado
warning lamp
= testigo
fault code
= código de avería
as before
= como antes
before: {told}; {explained}
= antes: {told}; {explained}
{name} not known
= {name}: no se conoce
engine hours
= horas de motor
warning lamps
= testigos
fault codes
= códigos de avería
{name} {new} was not there before
= {name} {new}: no estaba antes
{name} {gone} is gone, and why is not said
= {name} {gone}: ya no está, y no se dice por qué
{name}: {#was} {unit} before, {#now} {unit_2} after
= {name}: {was} {unit} antes, {now} {unit_2} después
odometer in km and in miles: they cannot be compared
= cuentakilómetros en km y en millas: no se pueden comparar
read both in the same unit
= lea ambos en la misma unidad
# stages/walkround/hazards.py
High voltage
= Alta tensión
Restraint wiring near the work
= Cables de retención cerca del trabajo
Two batteries
= Dos baterías
Dangerous-goods body
= Carrocería para mercancías peligrosas
48 V system
= Sistema de 48 V
24 V system
= Sistema de 24 V
high voltage
= alta tensión
restraint wiring near the work
= cables de retención cerca del trabajo
two batteries
= dos baterías
battery switch
= cortabaterías
dangerous-goods body
= carrocería para mercancías peligrosas
look, and answer each with true or false under [hazards]
= mire y responda a cada uno con true o false en [hazards]
not said whether there is: {listed}
= no se dice si hay: {listed}
hazards looked for: {listed}
= peligros buscados: {listed}
no hazard found
= ningún peligro encontrado
the job sheet says there is no crank (electric or hybrid), the walkround that there is no high voltage
= la hoja de trabajo dice que no hay motor de arranque (eléctrico o híbrido); la inspección, que no hay alta tensión
ask a licensed person where low-voltage work may be done, and write who (high_voltage_by)
= pregunte a una persona autorizada dónde se puede trabajar en baja tensión y anote quién (high_voltage_by)
by {high_voltage_by}; {HIGH_VOLTAGE}
= por {high_voltage_by}; {HIGH_VOLTAGE}
work elsewhere, or follow the maker's procedure and write which it was (restraint_procedure)
= trabaje en otro sitio, o siga el procedimiento del fabricante y anote cuál fue (restraint_procedure)
{RESTRAINT}; procedure: {restraint_procedure}
= {RESTRAINT}; procedimiento: {restraint_procedure}
the unit takes at most {#most_V} V by its sheet, and the vehicle has {#system_V} V
= la unidad admite como máximo {most_V} V según su hoja, y el vehículo tiene {system_V} V
the dash stays shut: take a unit that is made for 24 V
= el salpicadero no se abre: tome una unidad hecha para 24 V
consent to tap upstream of the switch: {consent}
= consentimiento para una toma antes del cortabaterías: {consent}
look for the battery switch again, and ask the carrier how the body is cut off
= busque otra vez el cortabaterías y pregunte al transportista cómo se corta la carrocería
a dangerous-goods body, and no battery switch was found
= una carrocería para mercancías peligrosas, y no se encontró cortabaterías
# stages/walkround/identity.py
Vehicle as on the job sheet
= Vehículo según la hoja de trabajo
stop: make sure which vehicle this is, and put sheet and walkround right
= pare: asegúrese de qué vehículo es y corrija la hoja y la inspección
fleet number
= número de flota
nothing was read on the vehicle
= no se leyó nada en el vehículo
read VIN, plate and fleet number on the vehicle itself
= lea VIN, matrícula y número de flota en el propio vehículo
who holds the key is not said
= no se dice quién tiene la llave
write who holds the key (key_with)
= anote quién tiene la llave (key_with)
{name} {read}, not on the sheet
= {name} {read}, no consta en la hoja
key with {key_with}
= llave: {key_with}
{name} not read on the vehicle (the sheet says {said})
= {name} sin leer en el vehículo (la hoja dice {said})
read the {name} on the vehicle
= lea en el vehículo: {name}
{name}: {said} on the sheet, {read} on the vehicle{hint}
= {name}: {said} en la hoja, {read} en el vehículo{hint}
(of the two, the one on the {one} has the right check digit)
= (de los dos, el que está {one} tiene el dígito de control correcto)
# stages/walkround/previous_device.py
Devices fitted before
= Aparatos montados antes
look behind the dash, under the seats and at the batteries for another unit or an alarm; write it under [devices]
= mire tras el salpicadero, bajo los asientos y en las baterías si hay otra unidad o una alarma; anótelo en [devices]
ask whoever may say so, and write who consented (consent)
= pregunte a quien pueda decidirlo y anote quién consintió (consent)
nobody is said to have looked for another unit or an alarm
= no consta que alguien haya buscado otra unidad o una alarma
{what} ({fate} by consent of {consent})
= {what} ({fate} con el consentimiento de {consent})
found: {found}
= encontrado: {found}
no other device found
= no se encontró otro aparato
{what}: left or removed is not said
= {what}: no se dice si se dejó o se retiró
write fate = "left" or "removed"
= anote fate = "left" o "removed"
{what} was removed, and nobody is named who consented
= {what}: se retiró, y no se nombra a nadie que lo consintiera
{what} was left; by whose consent is not said
= {what}: se dejó; no se dice con el consentimiento de quién
# stages/walkround/unit_ready.py
Unit on the bench
= Unidad en el banco
Backup battery of the unit
= Batería de respaldo de la unidad
the dash stays shut
= el salpicadero no se abre
charge the unit's battery and measure again, or take another unit
= cargue la batería de la unidad y mida otra vez, o tome otra unidad
measure the unit's backup battery again with a more exact meter, or charge it first
= mida otra vez la batería de respaldo de la unidad con un medidor más exacto, o cárguela primero
what the unit's maker states, as the walkround gives it
= lo que indica el fabricante de la unidad, según la inspección
unit ready: firmware {firmware}
= unidad lista: firmware {firmware}
all but its backup battery is well: firmware {firmware}
= todo bien salvo su batería de respaldo: firmware {firmware}
unit ready: firmware {firmware}, {figures}
= unidad lista: firmware {firmware}, {figures}
backup {#volts} ± {#meter} V (≥ {#least_V} V)
= respaldo {volts} ± {meter} V (≥ {least_V} V)
its serial number was not read
= no se leyó su número de serie
read the serial number on the unit itself
= lea el número de serie en la propia unidad
write the serial number {=serial} into the job sheet
= anote el número de serie {serial} en la hoja de trabajo
serial number {=serial}; the job sheet has none
= número de serie {serial}; la hoja de trabajo no tiene ninguno
serial number {sheet_serial} on the sheet, {=serial} on the unit
= número de serie {sheet_serial} en la hoja, {serial} en la unidad
take the unit that was meant for this vehicle, or put the job sheet right
= tome la unidad prevista para este vehículo, o corrija la hoja de trabajo
it is not activated
= no está activada
have the unit activated, or take one that is
= haga activar la unidad, o tome una que lo esté
whether it is activated is not said
= no se dice si está activada
see that the unit is activated (activated)
= compruebe que la unidad está activada (activated)
what its lights showed is not said
= no se dice qué mostraron sus luces
power it on the bench and write what its lights do
= aliméntela en el banco y anote qué hacen sus luces
none of its lights came on
= no se encendió ninguna de sus luces
take another unit
= tome otra unidad
its firmware
= su firmware
which firmware it should have
= qué firmware debería tener
{which} is not said
= no se dice {which}
write firmware and firmware_wanted under [unit]
= anote firmware y firmware_wanted en [unit]
firmware {firmware}, {firmware_wanted} is wanted
= firmware {firmware}, se requiere {firmware_wanted}
have the unit brought to the firmware that is wanted
= haga poner en la unidad el firmware requerido
measure its backup battery (backup_V); backup = false for a unit without one
= mida su batería de respaldo (backup_V); backup = false si la unidad no tiene
its backup battery was not measured
= no se midió su batería de respaldo
write the lowest voltage that the unit's maker allows (backup_least_V)
= anote la tensión mínima que admite el fabricante de la unidad (backup_least_V)
its backup battery shows {#backup_V} V; the least it must have is not said
= su batería de respaldo muestra {backup_V} V; no se dice cuánto debe tener como mínimo
measured on the bench
= medido en el banco
# stages/walkround/upstream.py
measure {wire} with the battery switch open, against the frame
= mida {wire} con el cortabaterías abierto, contra el chasis
do not tap {wire} without consent: find a wire behind the battery switch, or write who consented
= no derive {wire} sin consentimiento: busque un cable detrás del cortabaterías, o anote quién consintió
{=wire}: dead with the battery switch open
= {wire}: sin tensión con el cortabaterías abierto
not measured yet with the battery switch open; on a dangerous-goods body it must be dead then
= aún sin medir con el cortabaterías abierto; en una carrocería para mercancías peligrosas debe estar entonces sin tensión
{#value} V with the switch open: upstream of it, by consent of {consent}
= {value} V con el cortabaterías abierto: está antes de él, con el consentimiento de {consent}
live with the battery switch open: upstream of it, and nobody is said to have consented
= con tensión con el cortabaterías abierto: está antes de él, y no consta que nadie lo consintiera
again, with a more exact meter
= otra vez, con un medidor más exacto
# stages/walkround/walkround.py
Photos of the walkround
= Fotos de la inspección
there is no walkround.toml: authority, identity, devices fitted before, condition, unit on the bench and hazards are not written down
= no hay walkround.toml: no están anotados el permiso, la identidad, los aparatos anteriores, el estado, la unidad en el banco ni los peligros
put the photos into the job folder, under photos/, or take their names out of walkround.toml
= ponga las fotos en la carpeta del trabajo, en photos/, o quite sus nombres de walkround.toml
copy the photo again from the camera, or take it again
= copie otra vez la foto de la cámara, o tómela de nuevo
walk round the vehicle before anything is touched, and write walkround.toml
= inspeccione el vehículo alrededor antes de tocar nada, y escriba walkround.toml
named and not there: {join}
= nombradas y no están: {join}
cannot be shown: {each}
= no se puede mostrar: {each}
# stages/walkround/identity.py
{join} as on the sheet{how}
= {join} según la hoja{how}
(of the VIN the last six were typed, the rest compared by eye)
= (del VIN se escribieron los últimos seis; el resto se comparó a ojo)
"""
