"""Spanish: the parked vehicle."""

SENTENCES = """
# stages/parked/answer.py
levels of ISO 16750-2 say what a unit must survive, not how well a battery is: none is used here
= los niveles de ISO 16750-2 dicen lo que una unidad debe resistir, no cómo está una batería: aquí no se usa ninguno
the load test says how well a battery is, not how long it lasts: it does not enter the days
= la prueba de carga dice cómo está una batería, no cuánto dura: no entra en los días
capacity to be had at the coldest, part of the rated
= capacidad disponible en lo más frío, parte de la nominal
the battery's age is unknown: new to 6 years is allowed for
= no se conoce la edad de la batería: se admite de nueva a 6 años
the battery's temperature is unknown: its own loss is taken at 25 °C
= no se conoce la temperatura de la batería: su propia pérdida se toma a 25 °C
currents of the unit are taken as its sheet states them, whatever the system's volts
= las corrientes de la unidad se toman como las indica su hoja, sean cuales sean los voltios del sistema
{#likely} days, anywhere from {#low} to {#high}
= {likely} días, entre {low} y {high}
# stages/parked/battery_calc.py
a rest
= un reposo
no battery gets to {#temperature_C} °C: are these °F? {#temperature_C_2} °F are {#as_C} °C
= ninguna batería llega a {temperature_C} °C: ¿son °F? {temperature_C_2} °F son {as_C} °C
a battery's temperature
= la temperatura de una batería
a rest voltage
= una tensión en reposo
{#rest_V} V at rest in a {#system_V} V system: is it a {#other_V} V system
= {rest_V} V en reposo en un sistema de {system_V} V: ¿es un sistema de {other_V} V
or was one battery of the two measured?
= o se midió una de las dos baterías?
{#rest_V} V over two batteries, each: {fault}
= {rest_V} V sobre dos baterías, cada una: {fault}
{#temperature_C} °C is hot for a battery: are these °F?
= {temperature_C} °C es mucho calor para una batería: ¿son °F?
the reading is to {#count_V} V only: can two decimals be read?
= la lectura es solo a saltos de {count_V} V: ¿se pueden leer dos decimales?
up to {#hours_since_charge} V of surface charge may still be on it
= aún puede tener hasta {hours_since_charge} V de carga superficial
{surface}: our own model; wait 8 h, better 24 h, and measure again
= {surface}: nuestro propio modelo; espere 8 h, mejor 24 h, y mida otra vez
below the tables' empty: charge and test the battery before it is relied on
= por debajo del vacío de las tablas: cargue y pruebe la batería antes de fiarse de ella
two in series show their mean: measure each, the weaker one counts
= dos en serie muestran su media: mida cada una, cuenta la más débil
the kind is unknown: flooded is likely, AGM (which rests higher) is allowed for
= no se conoce el tipo: lo probable es con tapones, y se admite AGM (que reposa más alto)
the printed correction for temperature is the hydrometer's: both with and without it are allowed for
= la corrección impresa por temperatura es la del densímetro: se admiten con ella y sin ella
# stages/parked/changes.py
{what} …: alone never enough{worst}
= {what} …: sola nunca basta {worst}
for the worst
= para lo peor
instead of {#at_present}
= en lugar de {at_present}
(for the likely only)
= (solo para lo probable)
report every
= informar cada
fit a battery of
= montar una batería de
keep it on a charger or panel that gives, on average
= mantenerla con un cargador o panel que dé, de media
# stages/parked/curve.py
Charge left while parked
= Carga que queda estando parado
# stages/parked/findings.py
look for a load on the centre tap, charge both singly, rest a day, read each
= busque una carga en la toma central, cargue ambas por separado, déjelas reposar un día y lea cada una
there is no more in it than a start at the coldest may need
= no queda en ella más de lo que puede necesitar un arranque en lo más frío
the vehicle's own drain takes most
= el consumo del propio vehículo se lleva la mayor parte
the unit takes most
= la unidad se lleva la mayor parte
the battery's own loss takes most
= la pérdida propia de la batería se lleva la mayor parte
Days parked
= Días parado
measure the battery at rest again
= mida otra vez la batería en reposo
Vehicle's own drain
= Consumo del propio vehículo
read it again {#SURELY_ASLEEP_MIN} min after locking, doors left shut
= léalo otra vez {SURELY_ASLEEP_MIN} min después de cerrar, sin abrir las puertas
nobody wrote how long after locking it was read
= nadie anotó cuánto después de cerrar se leyó
modules may be awake still
= puede haber módulos aún despiertos
most sleep by then
= la mayoría duerme ya entonces
{#value} mA, read {#minutes} min after locking: {state}
= {value} mA, leído {minutes} min después de cerrar: {state}
Two batteries in series
= Dos baterías en serie
{#rest_V} V and {#rest_V_2} V at rest
= {rest_V} V y {rest_V_2} V en reposo
the {weaker} is the weaker, and the weaker one counts
= la {weaker} es la más débil, y cuenta la más débil
cannot be reckoned without: {lacking}
= no se puede calcular sin: {lacking}
find out: {lacking}
= averigüe: {lacking}
starts at {#coldest_C} °C for {said_days}, anywhere from {said_days_2} to {said_days_3}: {bound}
= arranca a {coldest_C} °C durante {said_days}, entre {said_days_2} y {said_days_3}: {bound}
write into the sheet how long it shall stand: wanted_days
= anote en la hoja cuánto debe aguantar: wanted_days
{because}; the vehicle's drain was not read asleep
= {because}; el consumo del vehículo no se leyó dormido
as wanted in the job sheet
= según la hoja de trabajo
the job sheet wants none
= la hoja de trabajo no pide ninguno
the job sheet wants {#sheet}
= la hoja de trabajo pide {sheet}
{=file}, the fleet's own policy; {without}
= {file}, la política de la propia flota; {without}
read the vehicle's own drain again {#SURELY_ASLEEP_MIN} min after locking
= lea otra vez el consumo del propio vehículo {SURELY_ASLEEP_MIN} min después de cerrar
charge the battery full and have it tested; nothing else alone is enough
= cargue la batería por completo y hágala probar; nada más basta por sí solo
charge the battery full and read it after a day of rest, have it tested: too much is unsure
= cargue la batería por completo y léala tras un día de reposo, hágala probar: hay demasiadas dudas
# stages/parked/parked.py
{count} battery of 12 V in series in a {#system_V} V system: count = {in_series} is expected\\ncapacity_Ah is that of one; batteries side by side count as one with their capacities added
= {count} batería de 12 V en serie en un sistema de {system_V} V: se espera count = {in_series}\\ncapacity_Ah es la de una; las baterías en paralelo cuentan como una con sus capacidades sumadas
{len} rest voltages in a {#system_V} V system: one over all is expected
= {len} tensiones en reposo en un sistema de {system_V} V: se espera una sobre todas
[battery] capacity_Ah, as printed on the battery
= [battery] capacity_Ah, según lo impreso en la batería
[battery] rest_V, at the posts with no load
= [battery] rest_V, en los bornes sin carga
[battery] hours_since_charge
= [battery] hours_since_charge
[parked] vehicle_drain_mA, measured without the unit once the vehicle sleeps
= [parked] vehicle_drain_mA, medido sin la unidad cuando el vehículo duerme
[parked] coldest_C, the coldest in which it must start
= [parked] coldest_C, lo más frío en que debe arrancar
{=name} = {#value}: are these °F?
= {name} = {value}: ¿son °F?
the coldest expected, {#coldest_C} °C, is warmer than the battery is now, {#battery_C} °C: °F?
= lo más frío esperado, {coldest_C} °C, es más caliente que la batería ahora, {battery_C} °C: ¿°F?
a drain of 0 mA: was the meter in series, and its range fine enough?
= un consumo de 0 mA: ¿estaba el medidor en serie, y su escala era bastante fina?
a drain of {#value} mA: was that read in amperes?
= un consumo de {value} mA: ¿se leyó en amperios?
# stages/parked/rest_voltage.py
{#volts} V is no battery at rest: a cell is gone (five rest at 9.9 to 10.6 V), or a load is on\\ntake the load off, wait, and measure at the battery's posts again; if it stays, have the battery tested
= {volts} V no es una batería en reposo: le falta una celda (cinco reposan de 9.9 a 10.6 V), o hay una carga puesta\\nquite la carga, espere y mida otra vez en los bornes de la batería; si sigue así, haga probar la batería
{#volts} V is no battery at rest {#hours} h after its charge: a charger or the alternator is on\\ntake it off, wait, and measure again
= {volts} V no es una batería en reposo {hours} h después de su carga: hay un cargador o el alternador puesto\\nquítelo, espere y mida otra vez
no kind of battery is called '{kind}': {join}
= ninguna clase de batería se llama '{kind}': {join}
# stages/parked/supposed.py
an old battery lost 2 to 10 % of its rated capacity a year, 5 % likely
= una batería vieja perdió de 2 a 10 % de su capacidad nominal al año, lo probable 5 %
a full battery starts the engine down to -18 °C (where cold-cranking current is rated), at best to -29 °C
= una batería llena arranca el motor hasta -18 °C (donde se da la corriente de arranque en frío), como mucho hasta -29 °C
one report takes 5 to 60 s, 20 s likely
= un informe tarda de 5 a 60 s, lo probable 20 s
a current reading is right to 2 % and 3 counts
= una lectura de corriente es exacta a 2 % y 3 cuentas
a battery maker's 0.6 % for each kelvin (after IEC), for discharges of 10 to 20 h
= el 0.6 % por kelvin de un fabricante de baterías (según IEC), para descargas de 10 a 20 h
# stages/parked/unit_drain.py
the unit's sheet states neither sleep_mA nor idle_mA
= la hoja de la unidad no indica ni sleep_mA ni idle_mA
the unit's sheet states no stopped_interval_s
= la hoja de la unidad no indica stopped_interval_s
the unit's sheet states neither transmit_mA nor peak_A
= la hoja de la unidad no indica ni transmit_mA ni peak_A
the unit's sheet states no sleep_mA: it is taken to stay awake at idle_mA
= la hoja de la unidad no indica sleep_mA: se toma que sigue despierta con idle_mA
the unit's sheet states no transmit_mA: its peak_A is taken
= la hoja de la unidad no indica transmit_mA: se toma su peak_A
the unit's sheet states no report_s: {text} ({standing})
= la hoja de la unidad no indica report_s: {text} ({standing})
"""
