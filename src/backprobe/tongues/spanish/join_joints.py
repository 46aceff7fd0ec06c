"""Spanish: joints."""

SENTENCES = """
# stages/join/as_built.py
join it to {wire} and write that into [[joint]] of the job sheet
= únalo a {wire} y anótelo en [[joint]] de la hoja de trabajo
Joints of leads that the unit does not have
= Uniones de cables que la unidad no tiene
{join}: no lead of {=name}, which has: {join_2}
= {join}: no es un cable de {name}, que tiene: {join_2}
put the lead's name right in [[joint]] of the job sheet, or complete the unit's sheet
= corrija el nombre del cable en [[joint]] de la hoja de trabajo, o complete la hoja de la unidad
{=name} (which of the two joints it has)
= {name} (cuál de sus dos uniones)
of {len} leads {joined} are joined, {grounded} grounded at the frame, {unused} not used
= de {len} cables, {joined} unidos, {grounded} a masa en el chasis, {unused} sin usar
Where each lead of the unit went
= Adónde fue cada cable de la unidad
not told of {join}
= no se dice de {join}
complete [[joint]] of the job sheet: wire, place or end for each of them
= complete [[joint]] de la hoja de trabajo: cable, lugar o extremo de cada uno
nothing is said
= no se dice nada
where it is grounded
= dónde va a masa
neither a wire nor what was done with its end
= ni un cable ni qué se hizo con su extremo
The wire on the {purpose} lead '{=name}'
= El cable del vehículo en el cable de {purpose} '{name}'
a wire that was proven for the {purpose}
= un cable comprobado para {purpose}
not used: {left}
= sin usar: {left}
joined to {=wire}, but no wire stands proven for the {purpose}
= unido a {wire}, pero no hay ningún cable comprobado para {purpose}
settle first which wire is the {purpose}
= aclare primero qué cable es el de {purpose}
joined to {=wire}; the wire that was proven for the {purpose} is {wanted}
= unido a {wire}; el cable que se comprobó para {purpose} es {wanted}
move the joint from {=wire} to {wanted}, or prove {=wire_2} first
= pase la unión de {wire} a {wanted}, o compruebe primero {wire_2}
joined to {=wire}, the wire that was proven for it
= unido a {wire}, el cable que se comprobó para ello
# stages/join/heat.py
move the joint to where it is cooler, or take wire and sleeve for that heat
= pase la unión a donde haga menos calor, o tome cable y manguito para ese calor
The heat at the joint of '{=name}'
= El calor en la unión de '{name}'
it gets {#hottest_C} °C hot there
= ahí se llega a {hottest_C} °C
a {words} loosens in heat
= con el calor se afloja: {words}
{what}: what its conductor may have for good
= {what}: lo que su conductor admite de forma continua
# stages/join/joint_figures.py
make the joint again
= rehaga la unión
cover the joint anew: at least {#value} mm past the insulation on each side
= cubra la unión de nuevo: como mínimo {value} mm más allá del aislante a cada lado
{#overlap_mm} mm of sleeve on each side ({#value} mm are {standing})
= {overlap_mm} mm de manguito a cada lado ({value} mm: {standing})
{because}; the figure is from memory and decides nothing alone
= {because}; el valor es de memoria y no decide nada solo
look up in the sleeve's data sheet how far it must go over the insulation
= busque en la hoja de datos del manguito cuánto debe cubrir del aislante
crimp a new one: {#value} to {#value_2} mm of bare wire before the barrel
= prense uno nuevo: de {value} a {value_2} mm de cable desnudo antes del casquillo
The joint of '{=name}': bare wire before the barrel
= La unión de '{name}': cable desnudo antes del casquillo
{AGAIN}: at least {#value} turns of the lead around the parted strands
= {AGAIN}: como mínimo {value} vueltas del cable alrededor de los hilos separados
the size of '{=name}', in the unit's sheet
= la sección de '{name}', en la hoja de la unidad
crimp another sample with the right die, and pull again; then make the joint again
= prense otra muestra con la matriz correcta y tire otra vez; luego rehaga la unión
{AGAIN}: it takes more than a joint should
= {AGAIN}: toma más de lo que debe una unión
The joint of '{=name}': {it}
= La unión de '{name}': {it}
# stages/join/joint_work.py
method of '{=name}'
= method de '{name}'
pull_N of a sample crimp
= pull_N de un prensado de muestra
of '{=name}' {join}
= de '{name}' {join}
{sleeve_words}nothing that was written of it speaks against it ({PRACTICE})
= {sleeve_words} nada de lo anotado habla en contra ({PRACTICE})
{AGAIN}: another method, or what is named put right
= {AGAIN}: otro método, o lo que se nombra corregido
{#strip_mm} mm stripped, {#least_mm} to {#most_mm} mm are usual
= {strip_mm} mm pelados, lo usual son de {least_mm} a {most_mm} mm
no strain relief: the joint itself takes every pull
= sin alivio de tracción: la propia unión recibe cada tirón
nobody tugged at it
= nadie tiró de ella
a tap connector cuts strands and loosens with heat: not for a supply or a ground
= un conector de derivación corta hilos y se afloja con el calor: no para alimentación ni masa
a pair of leads is twisted together only where two leads of the unit share one joint
= dos cables se retuercen juntos solo donde dos cables de la unidad comparten una unión
a fuse tap in a ground
= una derivación en portafusible en una masa
a ring terminal on a stud without a fuse at it
= un terminal de ojal en un espárrago sin fusible junto a él
water reaches it, and a {words} is not tight
= le llega agua, y no es estanco: {words}
water runs along the lead into it: no drip loop
= el agua corre por el cable hasta ella: sin bucle de goteo
# stages/join/matter.py
What is known of the {name}
= Qué se sabe: {name}
not told: {join}
= no se dice: {join}
complete {table} of the job sheet: {missing}
= complete {table} de la hoja de trabajo: {missing}
# stages/join/order.py
({PRACTICE}: body-builder connector, then fuse tap, then splice near the module)
= ({PRACTICE}: conector de carrocero, luego derivación en portafusible, luego empalme cerca del módulo)
a wire's insulation was pierced: water gets in and the strands rot
= se perforó el aislante de un cable: entra agua y los hilos se pudren
a connector's cavity was spread: its contact no longer holds its pin
= se abrió la cavidad de un conector: su contacto ya no sujeta el pin
mend the place, with a new piece of wire or a new contact; back-probe at the connector from now on
= repare el punto con un trozo de cable o un contacto nuevos; desde ahora mida por detrás del conector
How the wires were probed
= Cómo se midieron los cables
Where '{=name}' was connected
= Dónde se conectó '{name}'
a {words} in the vehicle's own wire, which must be given back as it was
= en el cable del propio vehículo, que debe devolverse como estaba: {words}
take the joint out, mend the wire, and use the body-builder connector or a fuse tap
= quite la unión, repare el cable y use el conector de carrocero o una derivación en portafusible
undo of '{=name}': how the joint is taken out again
= undo de '{name}': cómo se quita otra vez la unión
the body-builder connector
= el conector de carrocero
a fuse tap
= una derivación en portafusible
why_spliced: why '{=name}' is neither at the body-builder connector nor on a fuse tap
= why_spliced: por qué '{name}' no está ni en el conector de carrocero ni en una derivación en portafusible
near_module of '{=name}': whether the splice is near the module that the wire feeds
= near_module de '{name}': si el empalme está cerca del módulo que alimenta el cable
a splice near the module
= un empalme cerca del módulo
a splice far from the module that the wire feeds
= un empalme lejos del módulo que alimenta el cable
write down exactly where it is, so that the next one finds it
= anote exactamente dónde está, para que el siguiente lo encuentre
'{=name}' joins {=wire}: two circuits are bridged
= '{name}' une {wire}: dos circuitos quedan puenteados
Whether two circuits were bridged
= Si se puentearon dos circuitos
each lead is at one wire, or what it follows is kept apart
= cada cable está en uno solo del vehículo, o lo que sigue está separado
take the lead off one of them; where one input must follow both, a diode or a relay keeps them apart
= suelte el cable de uno de ellos; donde una entrada deba seguir a ambos, los separa un diodo o un relé
# stages/join/policy.py
{file}, the fleet's own policy; without it {#value} {unit}, {basis}
= {file}, la política de la propia flota; sin ella {value} {unit}, {basis}
the fleet's policy asks for {side} {#value} {=unit}
= la política de la flota pide {side} {value} {unit}
# stages/join/unused.py
{left}: insulated, held, and no other end beside it (common practice, no source)
= {left}: aislado, sujeto y sin otro extremo al lado (práctica común, sin fuente)
cut it to a length of its own, insulate its end and tie it back; then write down what was done
= córtelo a una longitud propia, aísle su extremo y átelo atrás; luego anote qué se hizo
of the unused '{=lead}' {join}
= del cable sin usar '{lead}' {join}
The unused lead '{=lead}'
= El cable sin usar '{lead}'
its end is bare
= su extremo está desnudo
it hangs loose
= cuelga suelto
cut to {#cut_mm} mm as '{=lead}' to {#cut_mm_2}: their ends can meet
= cortado a {cut_mm} mm y '{lead}' a {cut_mm_2}: sus extremos pueden tocarse
"""
