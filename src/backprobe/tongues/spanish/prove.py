"""Spanish: the proof."""

SENTENCES = """
# stages/prove/findings.py
turn the key through a script (backprobe prove --plan) and fetch the unit's reports
= gire la llave según el guion (backprobe prove --plan) y traiga los informes de la unidad
Whether the unit works in the vehicle
= Si la unidad funciona en el vehículo
# stages/prove/next_step.py
Take the ignition lead off at once and find the wire again: it seems to sit on the start circuit, which must never be tapped.
= Quite de inmediato el cable de contacto de la unidad y busque otra vez el cable: parece estar en el circuito de arranque, que no se deriva nunca.
Look for the ignition lead: connected at its tap, in its pin, and the unit's ignition setting.
= Revise el cable de contacto de la unidad: conectado en su toma, en su pin, y el ajuste de contacto de la unidad.
Turn the key through the script again: {named} was not reported.
= Gire la llave otra vez según el guion: no se informó {named}.
Turn the key through the script again (backprobe prove --plan): {named} cannot be told.
= Gire la llave otra vez según el guion (backprobe prove --plan): no se puede juzgar {named}.
Look at the antenna and its view of the sky: the unit reports another place than the vehicle's.
= Mire la antena y su vista del cielo: la unidad informa un lugar distinto del vehículo.
Turn the key through the script again: the unit reported an ignition event for which there is no turn.
= Gire la llave otra vez según el guion: la unidad informó un suceso de contacto para el que no hay giro.
Look at the supply's tap, fuse, joints and ground: the voltage falls too far when the unit transmits.
= Mire toma, fusible, uniones y masa de la alimentación: la tensión cae demasiado cuando la unidad transmite.
Give the place where the vehicle stands, and wait until the unit reports a position.
= Indique dónde está el vehículo y espere a que la unidad informe una posición.
Fetch the reports again once the unit has had a clear sky for ten minutes.
= Traiga los informes otra vez cuando la unidad haya tenido cielo despejado diez minutos.
Leave the vehicle parked overnight and fetch the reports again: that proves constant and off fully.
= Deje el vehículo aparcado toda la noche y traiga los informes otra vez: eso comprueba del todo el permanente y la desconexión.
'{key}' at {written}
= '{key}' a las {written}
# stages/prove/plan.py
key off; wait
= llave quitada; espere
accessory, no further: the unit must not go on
= accesorios, no más: la unidad no debe activarse
ignition on, do not start: the unit must go on without the engine
= contacto, sin arrancar: la unidad debe activarse sin el motor
start; brake on, out of gear, nobody beneath, and an agreed caller
= arranque; freno puesto, sin marcha metida, nadie debajo, y una persona acordada que da la orden
engine runs
= motor en marcha
key off, doors still shut: the unit must go off with the key
= llave quitada, puertas aún cerradas: la unidad debe desactivarse con la llave
get out, shut the doors, and wait for the last report
= salga, cierre las puertas y espere el último informe
# stages/prove/prove.py
say which with --unit-id, or as id under [unit] in job.toml
= diga cuál con --unit-id, o como id en [unit] de job.toml
{=file} holds {len} units ({names}): {where}
= {file} tiene {len} unidades ({names}): {where}
reports of unit {=unit_id}, whose turns of the key these are; the file holds: {names}
= informes de la unidad {unit_id}, de la que son estos giros de la llave; el archivo tiene: {names}
# stages/prove/supply.py
supply_V: the level is mostly the unit's own diode and converter; the change from idle to transmitting is joint and lead
= supply_V: el nivel es sobre todo del diodo y convertidor de la propia unidad; el cambio de reposo a transmisión es de unión y cable
# stages/prove/turn_findings.py
turn the key through the script again (backprobe prove --plan)
= gire la llave otra vez según el guion (backprobe prove --plan)
Ignition {word}, as the unit reported it
= Contacto {word}, según lo informó la unidad
{#usual_s} s debounce by the unit's sheet, and {#OVER_DEBOUNCE_S} s
= {usual_s} s de antirrebote según la hoja de la unidad, y {OVER_DEBOUNCE_S} s
a healthy unit reports {word} within that time
= una unidad sana informa {word} en ese tiempo
the script holds no turn of the key to {word}
= el guion no tiene ningún giro de la llave a {word}
'{key}' at {written}: {state}
= '{key}' a las {written}: {state}
1 turn
= 1 giro
{len} turns
= {len} giros
{matched} of {turns} reported
= informados {matched} de {turns}
the delay and the offset of the unit's clock together
= el retraso y el desfase del reloj de la unidad juntos
the unit's clock, {#value_s} s ± {#u_s} s, is taken off
= descontado el reloj de la unidad, {value_s} s ± {u_s} s
{AGAIN}: what the unit does in a crank shows only there
= {AGAIN}: lo que hace la unidad en un arranque solo se ve ahí
The unit through the crank
= La unidad durante el arranque
the script holds no crank
= el guion no tiene ningún arranque
pattern: {and}
= patrón: {and}
no turn of the key was reported
= no se informó ningún giro de la llave
1 crank
= 1 arranque
{len} cranks
= {len} arranques
no restart in {times}, the longest {#cranks} s
= ningún reinicio en {times}, el más largo de {cranks} s
{lived}; off is reported after {#value_s} s: an ignition lost in it would show
= {lived}; la desconexión se informa tras {value_s} s: un contacto perdido en él se vería
not known
= no conocido
only after {#value_s} s
= solo tras {value_s} s
{lived}. That it stayed on proves nothing of the ignition wire, as off is reported {late}: that rests on the wire's own readings in the crank
= {lived}. Que siguiera activa no prueba nada del cable de contacto, pues la desconexión se informa ({late}): eso descansa en las lecturas del propio cable en el arranque
Ignition events for which no key was turned
= Sucesos de contacto para los que no se giró la llave
reported: {named}
= informado: {named}
mend first what the pattern shows
= corrija primero lo que muestra el patrón
{AGAIN}: nobody did it
= {AGAIN}: nadie lo hizo
# stages/prove/unit_findings.py
one parked night covered by reports
= una noche aparcado cubierta por informes
write where the vehicle stands into the job sheet: [place] lat, lon and accuracy_m
= anote en la hoja de trabajo dónde está el vehículo: [place] lat, lon y accuracy_m
leave the vehicle parked overnight, then fetch the reports again
= deje el vehículo aparcado toda la noche y traiga luego los informes otra vez
none of the {len} patterns that a fault leaves in reports is there
= no está ninguno de los {len} patrones que una avería deja en los informes
Patterns of a fault
= Patrones de una avería
no turn of the key was reported: there is nothing to look for them in
= no se informó ningún giro de la llave: no hay dónde buscarlos
see first that the unit reports the key
= compruebe primero que la unidad informa la llave
The unit that fits: {other_unit}.
= La unidad que encaja: {other_unit}.
Pattern: {str}
= Patrón: {str}
Where the unit takes itself to be
= Dónde cree estar la unidad
no report since power-up has a position
= ningún informe desde el encendido tiene posición
where the vehicle stands is not known{where}
= no se sabe dónde está el vehículo{where}
wait until the unit reports a position, under open sky
= espere a que la unidad informe una posición, a cielo abierto
from where the vehicle stands, by {fixes} fixes; joint accuracy of both {#u_m} m
= desde donde está el vehículo, con {fixes} posiciones; exactitud conjunta de ambos {u_m} m
{#DOUBTFUL} times the joint accuracy of {#u_m} m: beyond it lie 3 of 100,000 fixes
= {DOUBTFUL} veces la exactitud conjunta de {u_m} m: más allá quedan 3 de 100,000 posiciones
look at the antenna and its view of the sky; fetch again
= mire la antena y su vista del cielo; traiga los informes otra vez
reported from: {text}
= informado desde: {text}
from power-up to the first report with a position
= del encendido al primer informe con posición
look at {and} again, and at what the unit's sheet says of it
= mire otra vez {and}, y lo que la hoja de la unidad dice de ello
The unit's lights
= Las luces de la unidad
{light}: not looked at
= {light}: sin mirar
after {#after_s} s
= tras {after_s} s
{shown}; the sheet knows {pattern}
= {shown}; la hoja conoce {pattern}
the level of {#level_V} V is mostly the unit's own
= el nivel de {level_V} V es sobre todo de la propia unidad
The supply when the unit transmits
= La alimentación cuando la unidad transmite
it falls by {#change_V} V ± {#u_V} V: joint, fuse, lead and ground{level}
= cae {change_V} V ± {u_V} V: unión, fusible, cable y masa{level}
write the unit's currents, idle_mA and transmit_mA, into its sheet
= anote las corrientes de la unidad, idle_mA y transmit_mA, en su hoja
look at the supply's tap, fuse, joints and ground: the voltage falls too far when the unit transmits
= mire toma, fusible, uniones y masa de la alimentación: la tensión cae demasiado cuando la unidad transmite
{basis}, taken at 1 A
= {basis}, llevado a 1 A
the supply was lost {hours_text} after the final off
= la alimentación se perdió {hours_text} después de la última desconexión
'constant' is proven for {hours_text}
= 'permanente' está comprobado durante {hours_text}
find out what takes the supply away while the vehicle is parked: a switch, a timer, a loose joint
= averigüe qué quita la alimentación con el vehículo aparcado: un interruptor, un temporizador, una unión floja
Reports over a parked night
= Informes de una noche aparcado
{for_h}, 'ignition off' for {hours_text}
= {for_h}, 'contacto quitado' durante {hours_text}
# stages/prove/wirings.py
until {release}
= hasta {release}
woken by {woken_by} ({wake})
= despertado por {woken_by} ({wake})
"""
