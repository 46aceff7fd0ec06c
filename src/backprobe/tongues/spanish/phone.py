"""Spanish: what the phone says in its own words."""

SENTENCES = """
# the end of a job
what is missing is not said: what, who owes it and until when
= no se dice qué falta: qué, quién lo debe y hasta cuándo
{what}: who owes it is not said
= {what}: no se dice quién lo debe
{what}: until when is not said
= {what}: no se dice hasta cuándo
why the job was abandoned is not said
= no se dice por qué se abandonó el trabajo
what was undone is not said: what was taken out again, or that nothing had been touched
= no se dice qué se deshizo: qué se quitó otra vez, o que no se había tocado nada
what was restored is not said: fuses put back, functions tested again, or that nothing had been touched
= no se dice qué se repuso: fusibles repuestos, funciones probadas otra vez, o que no se había tocado nada
put right what fails, or undo the work and end the job as abandoned; complete the hand-over
= corrija lo que falla, o deshaga el trabajo y termínelo como abandonado; complete la entrega
complete the hand-over with what is not said
= complete la entrega con lo que falta por decir
nothing shows that the unit works in the vehicle: the proof was not made
= nada muestra que la unidad funcione en el vehículo: no se hizo la comprobación
nothing says how this job ends: say it at the hand-over
= nada dice cómo termina este trabajo: dígalo en la entrega
settle it; or end the job as provisional at the hand-over, saying who owes what until when
= resuélvalo; o termine el trabajo como provisional en la entrega, diciendo quién debe qué y hasta cuándo
tell the desk: the entries of this job were altered
= avise a la oficina: se alteraron las anotaciones de este trabajo
# the job as a whole
the job names {=meter_file} for the meter's figures; they are not on this phone
= el trabajo nombra {meter_file} para los valores del medidor; no están en este teléfono
the place is described; where the vehicle stands is not said
= el sitio está descrito; no se dice dónde está el vehículo
take this phone's position at the mount, or ask the desk to write down where the vehicle works
= tome la posición de este teléfono en el montaje, o pida a la oficina que anote dónde trabaja el vehículo
ask the desk to write down where the vehicle stands
= pida a la oficina que anote dónde está el vehículo
Where the vehicle stands is not known.
= No se sabe dónde está el vehículo.
decide which of them is the {slot}, and choose that one alone
= decida cuál de ellos es el de {slot} y elija solo ese
{rival} is fit by its volts: name its circuit and choose it for the {slot}
= {rival} sirve por sus voltios: nombre su circuito y elíjalo para {slot}
no crank has been allowed: ask somebody who may allow it, and write who at the walkround
= no se ha permitido arrancar: pregunte a quien pueda permitirlo y anote quién en la inspección
wait for the unit's reports, or open their file at the proof, once the unit has had coverage
= espere los informes de la unidad, o abra su archivo en la comprobación, cuando haya tenido cobertura
ask the desk to write down how the reports name this unit
= pida a la oficina que anote cómo nombran los informes a esta unidad
this is missing: {script}
= falta {script}
key turns
= giros de la llave
reports
= informes
lights
= luces
readings
= lecturas
ask the desk to write down which is this unit
= pida a la oficina que anote cuál es esta unidad
figures such as 12.30 are expected
= se esperan valores como 12.30
seconds such as 41 are expected
= se esperan segundos como 41
the job has no VIN
= el trabajo no tiene VIN
read the VIN from the plate at the walkround
= lea el VIN de la placa en la inspección
ask the desk to write the serial number {=serial} into the job sheet
= pida a la oficina que anote el número de serie {serial} en la hoja de trabajo
# wires
do not use {=wire}; {found}
= no use {wire}; {found}
stray volts vanish under a test lamp: measure it so and give the lamp's current as load
= los voltios parásitos desaparecen con una lámpara de prueba: mídalo así y dé la corriente de la lámpara como carga
read it without and with a load of about 1 to 2 A (a test lamp) at one key position; give the lamp's current as load
= léalo sin carga y con una carga de 1 a 2 A (una lámpara de prueba) en la misma posición de la llave; dé la corriente de la lámpara como carga
# joints
join it to {wire} and say so at the joints
= únalo a {wire} y anótelo en las uniones
ask the desk to put the lead's name right
= pida a la oficina que corrija el nombre del cable
complete the joints: wire, place or end for each of them
= complete las uniones: cable, lugar o extremo de cada uno
complete the joints: {missing}
= complete las uniones: {missing}
put a fuse {asked}into '{=lead}', close to the joint, and write it down
= ponga un fusible {asked} en '{lead}', cerca de la unión, y anótelo
volts of the supply wire in a crank: a recording of it
= voltios del cable de alimentación en un arranque: una grabación de él
length of '{=lead}', and its size in the unit's sheet
= longitud de '{lead}', y su sección en la hoja de la unidad
the drop of the ground: millivolts from the unit's ground to the battery's negative post, under a known load
= la caída de la masa: milivoltios desde la masa de la unidad al borne negativo de la batería, con una carga conocida
which side the battery switch is in
= en qué lado está el cortabaterías
in the unit's sheet, by how much its current rises when it transmits
= en la hoja de la unidad, cuánto sube su corriente cuando transmite
switch the signal on and off, look for the unit's report of each, write down the times of both
= active y desactive la señal, busque el informe de la unidad de cada cambio, y anote ambas horas
{join}: no input of the unit, which has: {inputs}
= {join}: no es una entrada de la unidad, que tiene: {inputs}
volts of '{=input}' when on and when off
= voltios de '{input}' activo e inactivo
volts of '{=input}' when on
= voltios de '{input}' activo
volts of '{=input}' when off, or that it is open then
= voltios de '{input}' inactivo, o que queda abierto
what keeps {wires} apart on '{=input}': diode, relay or nothing
= qué separa {wires} en '{input}': diodo, relé o nada
whether the coil of the relay at '{=input}' has a flyback diode
= si la bobina del relé en '{input}' tiene un diodo de rueda libre
what pulls '{=input}': the wire is open when off
= qué lleva '{input}' a un nivel: el cable queda abierto cuando no está activo
of '{=lead}', whether the slot's live terminal feeds both fuses of the tap
= de '{lead}', si el borne con tensión de la ranura alimenta ambos fusibles de la derivación
of '{=lead}', what tap and slot may carry in all, as printed on them
= de '{lead}', lo que derivación y ranura pueden llevar en total, según lo impreso en ellas
what the tapped circuit carries without the unit
= lo que lleva el circuito derivado sin la unidad
how much the tapped wire drops under a load, and which load
= cuánto cae el cable derivado con una carga, y con qué carga
the drop across that joint, and under which load
= la caída en esa unión, y con qué carga
the drop of the ground, and under which load
= la caída de la masa, y con qué carga
the joints
= las uniones
how '{=lead}' was joined
= cómo se unió '{lead}'
what pull a sample crimp stood
= qué tirón aguantó un prensado de muestra
how the joint of '{=lead}' is taken out again
= cómo se quita otra vez la unión de '{lead}'
why '{=lead}' is neither at the body-builder connector nor on a fuse tap
= por qué '{lead}' no está ni en el conector de carrocero ni en una derivación en portafusible
whether the splice of '{=lead}' is near the module that the wire feeds
= si el empalme de '{lead}' está cerca del módulo que alimenta el cable
what is behind the panel where the self-tapping screw went
= qué hay detrás del panel donde entró el tornillo autorroscante
stripped length
= largo pelado
overlap of the sleeve
= solape del manguito
strain relief
= alivio de tracción
drip loop
= bucle de goteo
cut length
= largo del corte
how hot it gets there
= cuánto calor hace ahí
bare wire before the barrel
= cable desnudo antes del casquillo
pull of a sample
= tirón de una muestra
near the module
= cerca del módulo
fuse of the vehicle's circuit
= fusible del circuito del vehículo
load of the vehicle's circuit
= carga del circuito del vehículo
in sight
= a la vista
of '{=lead}': {parts}
= de '{lead}': {parts}
of the unused '{=lead}': {parts}
= del cable sin usar '{lead}': {parts}
look up in 49 CFR 393.5 whether the device is vehicle safety technology, and say so; or take it off the windscreen
= consulte en 49 CFR 393.5 si el aparato es tecnología de seguridad del vehículo y anótelo; o quítelo del parabrisas
of the windscreen the distance from its swept area's edge, and whether the unit is in sight
= del parabrisas la distancia al borde del barrido, y si la unidad está a la vista
# the place of the unit
the unit hears less than its place should give: see which way up it lies, look for metal, foil or coated glass that is not described, and for what stood beside the vehicle
= la unidad oye menos de lo que debería dar su sitio: mire qué cara queda arriba, busque metal, lámina o vidrio con capa que no esté descrito, y qué había junto al vehículo
{count} places are named and not which was taken; '{place}' sees most
= hay {count} sitios nombrados y no se dice cuál se tomó; '{place}' es el que más ve
say which place was taken, for example '{=place}'
= diga qué sitio se tomó, por ejemplo '{place}'
what this fleet wants
= lo que quiere esta flota
# the parked vehicle
say how many days it shall stand
= diga cuántos días debe aguantar
the battery's capacity, as printed on it
= la capacidad de la batería, según lo impreso en ella
the battery's volts at rest, at the posts with no load
= los voltios de la batería en reposo, en los bornes sin carga
hours since the battery was charged
= horas desde la carga de la batería
the vehicle's own drain, measured without the unit once the vehicle sleeps
= el consumo del propio vehículo, medido sin la unidad cuando el vehículo duerme
the coldest in which it must start
= lo más frío en que debe arrancar
the unit's sheet states no current, asleep or idle
= la hoja de la unidad no indica ninguna corriente, dormida o en reposo
the unit's sheet does not state how often it reports while parked
= la hoja de la unidad no indica cada cuánto informa estando parada
the unit's sheet states no current while transmitting
= la hoja de la unidad no indica ninguna corriente al transmitir
the unit's sheet states no current asleep: it is taken to stay awake
= la hoja de la unidad no indica corriente dormida: se toma que sigue despierta
the unit's sheet states no current while transmitting: its peak is taken
= la hoja de la unidad no indica corriente al transmitir: se toma su máximo
the unit's sheet does not state how long a report takes: {text} ({standing})
= la hoja de la unidad no indica cuánto tarda un informe: {text} ({standing})
{#count} battery of 12 V in series in a {#system_V} V system: {#series} are expected\\nthe capacity is that of one; batteries side by side count as one with their capacities added
= {count} batería de 12 V en serie en un sistema de {system_V} V: se esperan {series}\\nla capacidad es la de una; las baterías en paralelo cuentan como una con sus capacidades sumadas
# the proof
take the planned key turns and wait for the unit's reports
= haga los giros de llave previstos y espere los informes de la unidad
take the planned key turns again
= haga otra vez los giros de llave previstos
Take the planned key turns again: {named} cannot be told.
= Haga otra vez los giros de llave previstos: no se puede juzgar {named}.
Take the planned key turns again: {named} was not reported.
= Haga otra vez los giros de llave previstos: no se informó {named}.
Take the planned key turns again: the unit reported an ignition event for which there is no turn.
= Haga otra vez los giros de llave previstos: la unidad informó un suceso de contacto para el que no hay giro.
Coverage and the cellular antenna; then take the planned key turns again with the data light on.
= Cobertura y antena celular; luego haga otra vez los giros de llave previstos con la luz de datos encendida.
Nothing on the wires: wait for the data light, then take the planned key turns again.
= Nada en los cables: espere la luz de datos y haga luego otra vez los giros de llave previstos.
Nothing on the wires: hold each state longer, or set the unit to report ignition.
= Nada en los cables: mantenga más tiempo cada estado, o ajuste la unidad para que informe el contacto.
ask the desk to write the unit's currents, idle and transmitting, into its sheet
= pida a la oficina que anote en su hoja las corrientes de la unidad, en reposo y al transmitir
The reports do not name a unit: all were taken for the job's unit.
= Los informes no nombran ninguna unidad: todos se tomaron por los de la unidad del trabajo.
the reports do not say when they were received
= los informes no dicen cuándo se recibieron
An on-delay of about 18 s more than usual may be GPS time: only the times of receipt can tell.
= Un retraso de activación unos 18 s mayor de lo usual puede ser hora GPS: solo lo dicen las horas de recepción.
That no loss of ignition in the crank is named proves nothing: the off-delay is not known, {said}.
= Que no se nombre una pérdida del contacto en el arranque no prueba nada: no se conoce el retraso de desconexión, {said}.
That no loss of ignition in the crank is named proves nothing: off is reported only after {#value_s} s, {said}. Read the wire in a crank with the meter's MIN hold.
= Que no se nombre una pérdida del contacto en el arranque no prueba nada: la desconexión se informa solo tras {value_s} s, {said}. Lea el cable en un arranque con la retención MIN del medidor.
the level of the supply is mostly the unit's own diode and converter; the change from idle to transmitting is joint and lead
= el nivel de la alimentación es sobre todo del diodo y convertidor de la propia unidad; el cambio de reposo a transmisión es de unión y cable
# the walkround
touch nothing until somebody who may has allowed the work; write who at the walkround
= no toque nada hasta que alguien con potestad haya permitido el trabajo; anote quién en la inspección
ask somebody who may allow a crank, and write who at the walkround
= pregunte a quien pueda permitir un arranque y anote quién en la inspección
look up in the maker's instructions how long after key-off the switch must stay closed, and write it down
= busque en las instrucciones del fabricante cuánto tiempo debe seguir cerrado el cortabaterías tras quitar la llave, y anótelo
follow the cable from the switch: is it in the positive or the negative side?
= siga el cable desde el cortabaterías: ¿está en el lado positivo o en el negativo?
key on before anything is touched: write down lamps, codes and odometer at the walkround, and photograph the dash
= contacto puesto antes de tocar nada: anote testigos, códigos y cuentakilómetros en la inspección y fotografíe el cuadro
when the work is done, key on: write down lamps, codes and odometer at the hand-over, and photograph the dash
= terminado el trabajo, contacto puesto: anote testigos, códigos y cuentakilómetros en la entrega y fotografíe el cuadro
find out what set it before the vehicle goes back, put it right, and write the condition after the work anew
= averigüe qué lo provocó antes de devolver el vehículo, corríjalo y anote de nuevo el estado después del trabajo
say why at the hand-over: a code that was cleared can no longer be looked into
= diga por qué en la entrega: un código borrado ya no se puede investigar
look, and answer each at the walkround
= mire y responda a cada uno en la inspección
look again, and put the walkround right or tell the desk
= mire otra vez y corrija la inspección, o avise a la oficina
stop: make sure which vehicle this is; put the walkround right or tell the desk
= pare: asegúrese de qué vehículo es; corrija la inspección o avise a la oficina
ask a licensed person where low-voltage work may be done, and write who
= pregunte a una persona autorizada dónde se puede trabajar en baja tensión y anote quién
work elsewhere, or follow the maker's procedure and write which it was
= trabaje en otro sitio, o siga el procedimiento del fabricante y anote cuál fue
write who holds the key
= anote quién tiene la llave
look behind the dash, under the seats and at the batteries for another unit or an alarm; write down what you found
= mire tras el salpicadero, bajo los asientos y en las baterías si hay otra unidad o una alarma; anote lo que encontró
ask whoever may say so, and write who consented
= pregunte a quien pueda decidirlo y anote quién consintió
say whether it was left or removed
= diga si se dejó o se retiró
see that the unit is activated, and say so
= compruebe que la unidad está activada y anótelo
write down which firmware the unit has and which is wanted
= anote qué firmware tiene la unidad y cuál se requiere
measure its backup battery, or say that the unit has none
= mida su batería de respaldo, o diga que la unidad no tiene
write down the lowest voltage that the unit's maker allows
= anote la tensión mínima que admite el fabricante de la unidad
the walkround was not made: authority, identity, devices fitted before, condition, unit on the bench and hazards are not written down
= no se hizo la inspección: no están anotados el permiso, la identidad, los aparatos anteriores, el estado, la unidad en el banco ni los peligros
do the walkround before anything is touched
= haga la inspección antes de tocar nada
take the photos again
= tome otra vez las fotos
take the photo again
= tome otra vez la foto
compare the plate at the windscreen or the door frame with the job
= compare la placa del parabrisas o del marco de la puerta con el trabajo
"""
