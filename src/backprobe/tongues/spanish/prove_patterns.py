"""Spanish: patterns in reports, and notes on them."""

SENTENCES = """
# stages/prove/notes.py
Times of the script without a zone were taken as UTC.
= Las horas del guion sin zona se tomaron como UTC.
Times of the reports without a zone were taken as UTC.
= Las horas de los informes sin zona se tomaron como UTC.
The script's rows did not stand in the order of time; they were put in order.
= Las filas del guion no estaban en el orden del tiempo; se ordenaron.
{skipped_rows} rows of reports could not be read, the first: {skipped}.
= {skipped_rows} filas de informes no se pudieron leer, la primera: {skipped}.
{bad_cells} cells of reports could not be read and were left empty.
= {bad_cells} celdas de informes no se pudieron leer y quedaron vacías.
The reports have neither an ignition nor an event column: nothing can be said of the key.
= Los informes no tienen columna de contacto ni de suceso: nada se puede decir de la llave.
The file holds {len} units; beside {=unit_id}: {shown}.
= El archivo tiene {len} unidades; además de {unit_id}: {shown}.
The reports have no unit_id: all were taken for the job's unit.
= Los informes no tienen unit_id: todos se tomaron por los de la unidad del trabajo.
Nobody said how the reports name the job's unit: the file's only one, {=unit_id}, was taken.
= Nadie dijo cómo nombran los informes la unidad del trabajo: se tomó la única del archivo, {unit_id}.
the reports have no received_at
= los informes no tienen received_at
no report arrived while it was fresh
= ningún informe llegó mientras era reciente
As {why}, each delay is the sum of the unit's delay and its clock's offset.
= Como {why}, cada retraso es la suma del retraso de la unidad y del desfase de su reloj.
An on-delay of about 18 s more than usual may be GPS time (gps_time): only received_at can tell.
= Un retraso de activación unos 18 s mayor de lo usual puede ser hora GPS (gps_time): solo received_at lo dice.
The unit seems to report turns before they happen: the script's clock is behind the server's.
= La unidad parece informar los giros antes de que ocurran: el reloj del guion va atrasado respecto al servidor.
The server's own times are off by the same quarter hours as the unit's: the export is in a local zone.
= Las horas del propio servidor se desvían los mismos cuartos de hora que las de la unidad: la exportación está en una zona local.
{unset} reports bear a date from before the unit's clock was set.
= {unset} informes llevan una fecha anterior a que se ajustara el reloj de la unidad.
{unplaced} reports of a clock that was never set cannot be placed in time.
= {unplaced} informes de un reloj que nunca se ajustó no se pueden situar en el tiempo.
the longest crank was {#longest_s} s
= el arranque más largo fue de {longest_s} s
That not_live_in_crank is not named proves nothing: the off-delay is not known, {said}.
= Que no se nombre not_live_in_crank no prueba nada: no se conoce el retraso de desconexión, {said}.
That not_live_in_crank is not named proves nothing: off is reported only after {#value_s} s, {said}. Read the wire in a crank with the meter's MIN hold.
= Que no se nombre not_live_in_crank no prueba nada: la desconexión se informa solo tras {value_s} s, {said}. Lea el cable en un arranque con la retención MIN del medidor.
Off is reported after {#value_s} s and {said}: an ignition lost in crank would show.
= La desconexión se informa tras {value_s} s y {said}: un contacto perdido en el arranque se vería.
Of the unit's ignition events within the script, {more} more were only counted.
= De los sucesos de contacto de la unidad dentro del guion, otros {more} solo se contaron.
No report of the unit is from the time of the script: is it the right day, and the right time zone?
= Ningún informe de la unidad es del tiempo del guion: ¿es el día correcto, y la zona horaria?
No unit sheet states the off debounce: an off up to {#off_limit_s} s late counts as healthy (common practice, no source).
= Ninguna hoja de unidad indica el antirrebote de desconexión: una desconexión con hasta {off_limit_s} s de retraso cuenta como sana (práctica común, sin fuente).
No power-up shows before the first turn of the key: all of the unit's reports were taken for this job's.
= No se ve un encendido de la unidad antes del primer giro de la llave: todos sus informes se tomaron por los de este trabajo.
The power-up is taken to be the end of the last silence of over {#GAP_S} hours.
= Se toma por encendido el final del último silencio de más de {GAP_S} horas.
Where the vehicle stands is not known: give it with --at LAT,LON or in job.toml.
= No se sabe dónde está el vehículo: indíquelo con --at LAT,LON o en job.toml.
How well the vehicle's place is known was not said: {#PLACE_ACCURACY_M} m was taken.
= No se dijo con qué exactitud se conoce el lugar del vehículo: se tomaron {PLACE_ACCURACY_M} m.
No report since power-up has a position.
= Ningún informe desde el encendido tiene posición.
'Constant' and 'ignition off' are proven over a parked night ({#ignition_off_h} h).
= 'Permanente' y 'contacto quitado' están comprobados durante una noche aparcado ({ignition_off_h} h).
'Constant' is proven for {hours_text}, 'ignition off' for {hours_text_2}; reports over one parked night ({#NIGHT_H} h) prove them fully.
= 'Permanente' está comprobado durante {hours_text}, 'contacto quitado' durante {hours_text_2}; los informes de una noche aparcado ({NIGHT_H} h) los comprueban del todo.
# stages/prove/patterns.py
Another unit of the same yard reported these turns of the key: two units, or two labels, were swapped.
= Otra unidad del mismo patio informó estos giros de la llave: se cambiaron dos unidades, o dos etiquetas.
The serial on the unit in this vehicle, and the vehicle in which this job's unit really is.
= La serie de la unidad en este vehículo, y el vehículo en que está de verdad la unidad de este trabajo.
The unit restarts while the engine is cranked: its supply dips below what it needs.
= La unidad se reinicia mientras gira el motor de arranque: su alimentación cae por debajo de lo que necesita.
The supply's tap, fuse and ground under load, with the meter's MIN hold in a crank; a tap nearer the battery.
= Toma, fusible y masa de la alimentación con carga, con la retención MIN del medidor en un arranque; una toma más cerca de la batería.
The ignition lead sits on a wire that goes dead while the starter turns.
= El cable de contacto de la unidad está en un cable que se queda sin tensión mientras gira el motor de arranque.
The ignition tap: take a wire that stays live in crank; read it there with the meter's MIN hold.
= La toma de contacto: tome un cable que siga con tensión en el arranque; léalo ahí con la retención MIN del medidor.
The ignition lead sits on an accessory wire: the unit goes on before the ignition does.
= El cable de contacto de la unidad está en un cable de accesorios: la unidad se activa antes que el contacto.
The ignition tap: take a wire that is dead in accessory and live in crank.
= La toma de contacto: tome un cable sin tensión en accesorios y con tensión en el arranque.
The ignition lead sits on a constant supply: the unit never sees the key turned off.
= El cable de contacto de la unidad está en una alimentación permanente: la unidad nunca ve quitar la llave.
The ignition tap and its splice to the supply lead; read the wire 10 minutes after key-off, doors shut.
= La toma de contacto y su empalme con el cable de alimentación; lea el cable 10 minutos después de quitar la llave, puertas cerradas.
The ignition lead sits on retained power: it goes off with a door or a timer, not with the key.
= El cable de contacto de la unidad está en una alimentación temporizada: se apaga con una puerta o un temporizador, no con la llave.
The ignition tap: take a wire that falls at key-off; read it with the key off and the doors still shut.
= La toma de contacto: tome un cable que caiga al quitar la llave; léalo con la llave quitada y las puertas aún cerradas.
The unit goes on only once the engine has started: it senses voltage or motion, or sits on a wire that is live only while the engine runs.
= La unidad se activa solo cuando el motor ya arrancó: detecta tensión o movimiento, o está en un cable con tensión solo en marcha.
Whether the ignition lead is connected at all, the wire it sits on, and the unit's ignition setting.
= Si el cable de contacto de la unidad está conectado, el cable en que está, y el ajuste de contacto de la unidad.
The unit goes on when the vehicle is unlocked or a door is opened, before the key: the lead sits on a wire that the body controller wakes.
= La unidad se activa al desbloquear el vehículo o abrir una puerta, antes de la llave: está en un cable que despierta el módulo de carrocería.
The ignition tap: take a wire that stays dead until the key is turned.
= La toma de contacto: tome un cable que siga sin tensión hasta girar la llave.
The unit reports on when the key is off, and off when it is on.
= La unidad informa activo con la llave quitada, e inactivo con ella puesta.
The input's polarity in the unit's settings, and whether the lead sits on a switched ground.
= La polaridad de la entrada en los ajustes de la unidad, y si el cable está en una masa conmutada.
The unit's ignition flips while the key stands still: the lead makes no firm contact.
= El contacto de la unidad cambia mientras la llave no se mueve: el cable no hace contacto firme.
The ignition splice and crimp (pull test), the connector's pin, and a lead that was never connected.
= El empalme y el prensado del contacto (prueba de tracción), el pin del conector, y un cable que nunca se conectó.
The unit's date is wrong by 1,024 weeks, or stands in 1980: its GNSS clock rolled over or was never set.
= La fecha de la unidad se desvía 1,024 semanas, o está en 1980: su reloj GNSS dio la vuelta o nunca se ajustó.
The unit's firmware, and its antenna's view of the sky at power-up.
= El firmware de la unidad, y la vista del cielo de su antena al encenderse.
The times are off by whole quarter hours: one clock, or one export, is in a local time zone.
= Las horas se desvían cuartos de hora enteros: un reloj, o una exportación, está en una zona horaria local.
The unit's zone setting, the server's export, and the zone in which the script was written; all in UTC.
= El ajuste de zona de la unidad, la exportación del servidor y la zona en que se escribió el guion; todo en UTC.
The unit's stamps run 18 s ahead: it reports GPS time without taking off the leap seconds.
= Las horas de la unidad van 18 s adelantadas: informa hora GPS sin quitar los segundos intercalares.
The unit's firmware and time setting.
= El firmware y el ajuste de hora de la unidad.
The unit reports the right turns of the key at a place where the vehicle is not: an old position is kept.
= La unidad informa los giros correctos de la llave en un lugar donde no está el vehículo: conserva una posición vieja.
The antenna, its cable and its view of the sky; the age of the fix in the unit's own status.
= La antena, su cable y su vista del cielo; la antigüedad de la posición en el estado de la propia unidad.
Many reports came in at once, or bear the server's time: the unit was out of reach, or does not stamp them itself, so lateness cannot be judged.
= Llegaron muchos informes a la vez, o llevan la hora del servidor: la unidad estuvo fuera de alcance, o no los sella ella misma, así que no se puede juzgar el retraso.
Coverage and the cellular antenna; then turn the key through the script again with the data light on.
= Cobertura y antena celular; luego gire la llave otra vez según el guion con la luz de datos encendida.
The first key-on is not in the reports because the modem was still attaching to the network.
= El primer contacto no está en los informes porque el módem aún se registraba en la red.
Nothing on the wires: wait for the data light, then turn the key through the script again.
= Nada en los cables: espere la luz de datos y gire luego la llave otra vez según el guion.
The unit shows its ignition only at its report interval, and a state of the script was shorter than debounce and two intervals, so that turns or their timing could not be seen.
= La unidad muestra su contacto solo en su intervalo de informes, y un estado del guion fue más corto que el antirrebote y dos intervalos, así que no se pudieron ver giros o sus tiempos.
Nothing on the wires: hold each state longer (backprobe prove --plan), or set the unit to report ignition.
= Nada en los cables: mantenga más tiempo cada estado (backprobe prove --plan), o ajuste la unidad para que informe el contacto.
The last report came before the final off could have come.
= El último informe llegó antes de que pudiera llegar la última desconexión.
Nothing on the wires: wait until the off has been reported, then fetch the reports again.
= Nada en los cables: espere a que se informe la desconexión y traiga luego los informes otra vez.
look at
= mire
"""
