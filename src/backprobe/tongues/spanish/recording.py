"""Spanish: recordings."""

SENTENCES = """
# stages/probe/recording/cranks.py
the recording ends too soon to show whether the engine ran
= la grabación acaba demasiado pronto para mostrar si el motor arrancó
the key column says so
= lo dice la columna de la llave
the key column goes to running
= la columna de la llave pasa a en marcha
the recording ends in the crank
= la grabación acaba en el arranque
the level or the engine speed shows that the engine ran
= el nivel o el régimen muestran que el motor arrancó
the engine did not run afterwards
= el motor no quedó en marcha después
another attempt follows
= sigue otro intento
no attempt follows: taken for the one that started the engine
= no sigue otro intento: se toma por el que arrancó el motor
# stages/probe/recording/dip.py
record the start again, {#per_s} rows a second or faster
= grabe el arranque otra vez, con {per_s} filas por segundo o más
record a start: key off, on, crank, then ten seconds of running
= grabe un arranque: llave quitada, contacto, arranque y luego diez segundos en marcha
the channel held no value in the crank
= el canal no tuvo ningún valor en el arranque
no crank was found in the recording
= no se encontró ningún arranque en la grabación
dead before the crank ({#value_V} V): no constant supply
= sin tensión antes del arranque ({value_V} V): no es una alimentación permanente
fell to {#value_V} V in the crank; a sample outside the limit disproves at any speed of sampling
= cayó a {value_V} V en el arranque; una muestra fuera del límite lo refuta a cualquier velocidad de muestreo
whether this was a crank is not sure ({#sure}); lowest {#value_V} V in it
= no es seguro que esto fuera un arranque ({sure}); mínimo {value_V} V en él
{why}; whether this was a crank is not sure ({#sure})
= {why}; no es seguro que esto fuera un arranque ({sure})
lowest {#value_V} V in the crank, sampled every {#step_ms} ms: the whole dip was seen
= mínimo {value_V} V en el arranque, con una muestra cada {step_ms} ms: se vio toda la caída
lowest {#value_V} V in the crank, sampled every {#step_ms} ms: the inrush trough may have been missed and reach down to {#low_V} V (our own model)
= mínimo {value_V} V en el arranque, con una muestra cada {step_ms} ms: el hoyo del pico puede haberse perdido y bajar hasta {low_V} V (nuestro propio modelo)
one value every {#step_s} s
= un valor cada {step_s} s
its time is not known
= no se conoce su hora
sampled too slowly to prove a dip ({pace})
= muestreo demasiado lento para comprobar una caída ({pace})
{slow}: the lowest value shown, {#value_V} V, is inside the limit
= {slow}: el valor más bajo mostrado, {value_V} V, está dentro del límite
{slow}: the engine was cranked, but no sample fell noticeably (lowest {#value_V} V)
= {slow}: el motor de arranque giró, pero ninguna muestra cayó apreciablemente (mínimo {value_V} V)
lowest voltage of {=name} while the starter turns
= tensión más baja de {name} mientras gira el motor de arranque
# stages/probe/recording/sampling.py
read in a secondary document
= leído en un documento secundario
{SAMPLES_IN_TROUGH} samples inside the shortest inrush trough of the ISO 16750-2 starting profile, {#trough_s} ms at {#system_V} V ({standing})
= {SAMPLES_IN_TROUGH} muestras dentro del hoyo más corto del perfil de arranque de ISO 16750-2, {trough_s} ms a {system_V} V ({standing})
# stages/probe/recording/signs.py
a very deep fall ({#depth_V} V)
= una caída muy honda ({depth_V} V)
a deep fall ({#depth_V} V)
= una caída honda ({depth_V} V)
a fall of {#depth_V} V
= una caída de {depth_V} V
a shallow fall ({#depth_V} V)
= una caída leve ({depth_V} V)
a shallow fall ({#depth_V} V), sampled slowly
= una caída leve ({depth_V} V), con muestreo lento
within {#fall_ms} ms
= en {fall_ms} ms
a slow fall ({#fall_ms} ms)
= una caída lenta ({fall_ms} ms)
an inrush trough {#inrush_V} V below the plateau
= un hoyo de pico {inrush_V} V por debajo de la meseta
no inrush trough
= sin hoyo de pico
a compression ripple of {#ripple_Hz} Hz
= una ondulación de compresión de {ripple_Hz} Hz
a ripple of {#ripple_Hz} Hz, sampled coarsely
= una ondulación de {ripple_Hz} Hz, con muestreo grueso
no compression ripple
= sin ondulación de compresión
no compression ripple in that short time
= sin ondulación de compresión en ese tiempo tan corto
the level is unsteady while it is down
= el nivel es inestable mientras está bajo
the level is steady while it is down
= el nivel es estable mientras está bajo
too short for a starter ({#length_s} s)
= demasiado corto para un motor de arranque ({length_s} s)
long for a starter ({#length_s} s)
= largo para un motor de arranque ({length_s} s)
very long for a starter ({#length_s} s)
= muy largo para un motor de arranque ({length_s} s)
too long for a starter ({#length_s} s)
= demasiado largo para un motor de arranque ({length_s} s)
no recovery in sight
= no se ve recuperación
a deeper fall follows before any recovery
= sigue una caída más honda antes de recuperarse
{staying} does not switch as it does in the other cranks
= {staying} no conmuta como en los otros arranques
{dropped} is dead for just that time
= {dropped} está sin tensión justo ese tiempo
{started} is live only then
= {started} tiene tensión solo entonces
the level goes above rest afterwards ({#after_V} V)
= el nivel sube después por encima del reposo ({after_V} V)
the level goes back to rest only ({#after_V} V)
= el nivel vuelve solo al reposo ({after_V} V)
charging before and after alike ({#before_V} V): the engine was running
= cargando igual antes que después ({before_V} V): el motor estaba en marcha
at charging level before already ({#before_V} V)
= ya antes en nivel de carga ({before_V} V)
the engine was started {#since_s} s before
= el motor había arrancado {since_s} s antes
the engine speed rises to {#speed_rpm} /min
= el régimen del motor sube a {speed_rpm} /min
the engine turns at {#speed_rpm} /min
= el motor gira a {speed_rpm} /min
the engine speed stays at zero
= el régimen del motor sigue en cero
the engine was running at {#speed_rpm} /min already
= el motor ya giraba a {speed_rpm} /min
no dip was sampled, only the change of level
= no se muestreó ninguna caída, solo el cambio de nivel
seen on switched wires only
= visto solo en cables conmutados
# stages/probe/recording/view.py
the file's time stands still: all times are estimates from the row numbers
= la hora del archivo no avanza: todos los tiempos se estiman por el número de fila
{#skipped_count} lines could not be read and were left out
= {skipped_count} líneas no se pudieron leer y se dejaron fuera
no crank was found
= no se encontró ningún arranque
no start of the engine is shown: no level above rest, or the recording ends too soon
= no se ve que el motor arranque: ningún nivel por encima del reposo, o la grabación acaba demasiado pronto
a load from {#start_s} to {#end_s} s is not taken for a crank: {reasons}
= una carga de {start_s} a {end_s} s no se toma por un arranque: {reasons}
{NOTED_LOADS} more loads are not taken for cranks
= otras {NOTED_LOADS} cargas no se toman por arranques
no channel stands at the level of a supply
= ningún canal tiene el nivel de una alimentación
no battery channel: cranks were looked for on {=name}
= sin canal de batería: los arranques se buscaron en {name}
the battery channel does not show a battery: cranks were looked for on {=name}
= el canal de batería no muestra una batería: los arranques se buscaron en {name}
the battery channel reads {#lowest} V at {#lowest_s} s: taken for lost contact there
= el canal de batería marca {lowest} V a los {lowest_s} s: se toma por un contacto perdido ahí
"""
