"""Spanish: fuses and the way of the current."""

SENTENCES = """
# stages/join/fuse_calc.py
fit a fuse of {#largest_A} A, the largest that holds on this wire and loop, or thicker wire
= monte un fusible de {largest_A} A, el mayor que sirve con este cable y lazo, o un cable más grueso
# stages/join/fuse_findings.py
at {#ambient_C} °C the wire carries {said} A for good, alone or in a small bundle
= a {ambient_C} °C el cable lleva {said} A de forma continua, solo o en un mazo pequeño
a {#rating_A} A fuse can let {#least_A} A flow for minutes, and the wire gets too hot
= un fusible de {rating_A} A puede dejar pasar {least_A} A durante minutos, y el cable se calienta demasiado
fit a fuse of at most {#WIRE_OVER_FUSE} A, or thicker wire
= monte un fusible de {WIRE_OVER_FUSE} A como máximo, o un cable más grueso
at {#ambient_C} °C the surroundings are as hot as the insulation may get: the wire carries nothing
= a {ambient_C} °C el entorno está tan caliente como admite el aislante: el cable no puede llevar nada
lead the wire where it is cooler, or take wire with better insulation
= lleve el cable por donde haga menos calor, o tome un cable con mejor aislante
is the wire thick enough for its {#rating_A} A fuse
= si el cable es bastante grueso para su fusible de {rating_A} A
a dead short at the unit's end draws {#short_A} A
= un cortocircuito franco en el extremo de la unidad toma {short_A} A
check the loop's resistance: so little is rare; otherwise put a fuse that breaks more near the battery
= revise la resistencia del lazo: tan poca es rara; si no, ponga cerca de la batería un fusible que corte más
what the fuse can break
= lo que el fusible puede cortar
at {#ambient_C} °C {#hot_A} A are left of {#rating_A} A, and {#LOAD_PART} of that for good
= a {ambient_C} °C quedan {hot_A} A de {rating_A} A, y de eso {LOAD_PART} de forma continua
fit a larger fuse, if the wire allows it, or put the load on another circuit
= monte un fusible mayor, si el cable lo permite, o pase la carga a otro circuito
the load on the fuse
= la carga del fusible
# stages/join/fuse_resistance.py
({said} mΩ {standing}: not used)
= ({said} mΩ {standing}: no se usa)
the fuse's {said} mΩ by our own model{beside}
= los {said} mΩ del fusible según nuestro propio modelo{beside}
# stages/join/fuse_tap.py
pull the tap, turn it round so that the live terminal feeds both fuses, and measure that each is live by itself
= saque la derivación, déle la vuelta para que el borne con tensión alimente ambos fusibles, y mida que cada uno tenga tensión por sí solo
of '{=name}' right_way: whether the slot's live terminal feeds both fuses of the tap
= de '{name}' right_way: si el borne con tensión de la ranura alimenta ambos fusibles de la derivación
of '{=name}' tap_most_A: what tap and slot may carry in all, as printed on them
= de '{name}' tap_most_A: lo que derivación y ranura pueden llevar en total, según lo impreso en ellas
vehicle_load_A: what the tapped circuit carries without the unit
= vehicle_load_A: lo que lleva el circuito derivado sin la unidad
the tap is the wrong way round: the unit's current goes through the vehicle's own fuse too
= la derivación está al revés: la corriente de la unidad pasa también por el fusible del vehículo
Which way round the fuse tap of '{=name}' sits
= Hacia qué lado está la derivación en portafusible de '{name}'
the slot's live terminal feeds both fuses ({PRACTICE})
= el borne con tensión de la ranura alimenta ambos fusibles ({PRACTICE})
printed on the tap
= impreso en la derivación
What the fuse tap of '{=name}' carries in all
= Lo que lleva en total la derivación en portafusible de '{name}'
{#load_A} A of the vehicle and {#unit_A} A of the unit go through one terminal
= {load_A} A del vehículo y {unit_A} A de la unidad pasan por un mismo borne
take a slot with less on it, or the body-builder connector
= tome una ranura con menos carga, o el conector de carrocero
# stages/join/lead_fuse.py
tap_drop_mV and tap_load_A: how much the tapped wire drops under a load
= tap_drop_mV y tap_load_A: cuánto cae el cable derivado con una carga
of type {fuse_type}
= de tipo {fuse_type}
when the fuse of {#fuse_A} A at '{=name}' opens: no blade fuse{kind} is made so
= cuándo abre el fusible de {fuse_A} A en '{name}': no se fabrica así ningún fusible de cuchilla {kind}
{because}; at an end of what the loop may be: {because_2}
= {because}; en un extremo de lo que puede ser el lazo: {because_2}
# stages/join/path.py
the {#rating_A} A fuse
= el fusible de {rating_A} A
lead '{=name}'
= cable '{name}'
drop_mV and drop_A across that joint
= drop_mV y drop_A en esa unión
the joint of '{=lead}'
= la unión de '{lead}'
drop_mV and load_A under [ground]
= drop_mV y load_A en [ground]
the ground
= la masa
# stages/join/path_budget.py
voltage-drop test under load: wire at most 0.2 V and ground at most 0.1 V, together
= prueba de caída con carga: cable como máximo 0.2 V y masa como máximo 0.1 V, juntos
What '{=name}' may lose on its whole way
= Lo que puede perder '{name}' en todo su camino
up to the tap the vehicle's own wiring takes {said} mV more
= hasta la toma, el cableado del vehículo toma {said} mV más
up to the tap the vehicle's own wiring takes at most {said} mV more; {OWN_SAG}
= hasta la toma, el cableado del vehículo toma como máximo {said} mV más; {OWN_SAG}
What the unit may lose on its whole way
= Lo que puede perder la unidad en todo su camino
at {#peak_A} A {eaten}
= a {peak_A} A {eaten}
all else {said} mV
= todo lo demás {said} mV
nobody read {join}: taken as usual
= nadie leyó {join}: se toma lo usual
read the drop across {name} under a known load, and write it down: {unread}
= lea la caída en {name} con una carga conocida y anótela: {unread}
it takes {said} mV
= toma {said} mV
shorten it or take thicker wire
= acorte el cable o tómelo más grueso
clean, tighten or make it again
= limpie, apriete o rehaga
look at {name} first, {takes}: {mend}
= mire primero {name}, {takes}: {mend}
# stages/join/questions.py
{=name}, which carries {said} A
= {name}, que lleva {said} A
# stages/join/short_circuit.py
shorten the loop, mend its joints and ground, take thicker wire, or fit a smaller fuse
= acorte el lazo, repare sus uniones y masa, tome cable más grueso, o monte un fusible menor
fit a smaller fuse or thicker wire
= monte un fusible menor o un cable más grueso
look up when this fuse opens in its maker's data sheet
= busque cuándo abre este fusible en la hoja de datos de su fabricante
a dead short behind a {#rating_A} A fuse of type {type}
= un cortocircuito franco tras un fusible de {rating_A} A de tipo {type}
the fuse is sure to open from {#clears_from_A} A only
= el fusible abre con seguridad solo desde {clears_from_A} A
the loop is too resistive: {#current_A} A flow, {sure}
= el lazo tiene demasiada resistencia: pasan {current_A} A, {sure}
at the unit's end
= en el extremo de la unidad
nearer the fuse
= más cerca del fusible
at {#current_A} A {where} {opens}
= a {current_A} A {where} {opens}
{opens}, and the wire carries that current for good
= {opens}, y el cable lleva esa corriente de forma continua
{opens}; a wire with the least copper that its name allows stands {#withstands_s} s
= {opens}; un cable con el mínimo cobre que admite su nombre aguanta {withstands_s} s
{stands}; beyond {#VALID_TO_S} s that leaves cooling out, and the wire does not carry it for good
= {stands}; más allá de {VALID_TO_S} s eso no cuenta el enfriamiento, y el cable no la lleva de forma continua
the fuse opens within {#most_s} s at the latest
= el fusible abre en {most_s} s a lo más tarde
one of {#as_A} A opens within {#most_s} s, one of {#rating_A} A later
= uno de {as_A} A abre en {most_s} s, uno de {rating_A} A más tarde
# stages/join/tap_fuse.py
no fuse is named at the joint with {wire}: from there on nothing protects the wire
= no se nombra ningún fusible en la unión con {wire}: desde ahí nada protege el cable
a fuse of {#fuse_A} A in '{lead}': when it opens, the unit's current seeks another way to ground
= un fusible de {fuse_A} A en '{lead}': cuando abre, la corriente de la unidad busca otro camino a masa
The fuse of the {purpose} lead '{=name}'
= El fusible del cable de {purpose} '{name}'
of {#fuse_A} A
= de {fuse_A} A
put a fuse {asked}into '{=name}', close to the joint, and write it down as fuse_A
= ponga un fusible {asked} en '{name}', cerca de la unión, y anótelo como fuse_A
{#fuse_A} A at the joint with {=wire}; the unit's sheet asks for no certain one
= {fuse_A} A en la unión con {wire}; la hoja de la unidad no pide ninguno en concreto
at the joint with {=wire}
= en la unión con {wire}
put in the fuse that the unit's sheet asks for: {#most_A} A
= ponga el fusible que pide la hoja de la unidad: {most_A} A
The ground lead '{=name}'
= El cable de masa '{name}'
take the fuse out of the ground; the fuse belongs into the supply, at its tap
= quite el fusible de la masa; el fusible va en la alimentación, en su toma
# stages/join/vehicle_fuse.py
take a circuit with more to spare; never put a larger fuse into the vehicle's own holder
= tome un circuito con más reserva; no ponga nunca un fusible mayor en el portafusible del vehículo
fit a smaller fuse at the tap, else a short at the unit takes the vehicle's own circuit with it
= monte un fusible menor en la toma; si no, un corto en la unidad se lleva el circuito del vehículo
{and}: the tapped circuit's own fuse and load
= {and}: fusible y carga propios del circuito derivado
{#load_A} A and the unit's {#peak_A} A on {#rating_A} A, at {#ambient_C} °C
= {load_A} A y los {peak_A} A de la unidad sobre {rating_A} A, a {ambient_C} °C
The tapped circuit's own fuse
= El fusible propio del circuito derivado
{#unit_A} A at the tap below the vehicle's {#vehicle_A} A{by_gates}
= {unit_A} A en la toma, menos que los {vehicle_A} A del vehículo{by_gates}
Which of the two fuses opens first
= Cuál de los dos fusibles abre primero
at a dead short of {#short_A} A
= con un cortocircuito franco de {short_A} A
{at} the unit's is not sure to open
= {at} no es seguro que abra el de la unidad
{at} the unit's opens within {#latest_s} s, the vehicle's nobody says when
= {at} el de la unidad abre en {latest_s} s; del vehículo nadie dice cuándo
beyond its last gate by our own model
= más allá de su última puerta según nuestro propio modelo
{at} the unit's opens within {#latest_s} s, the vehicle's not before {#earliest_s} s{beyond}
= {at} el de la unidad abre en {latest_s} s; el del vehículo, no antes de {earliest_s} s{beyond}
{opens}: their gates alone do not say which is first
= {opens}: sus puertas solas no dicen cuál es primero
# stages/join/tap_bound.py
the battery's own sag is in it
= incluye lo que cae la propia batería
measure it directly: the drop between the battery and the tap, under a load
= mídala directamente: la caída entre la batería y la toma, con una carga
from the readings of {=wire}, key {key}: {=typed} V, and {=typed_2} V under {#load_A} A, up to the tap {said} mΩ, {said_2} mΩ at most; {OWN_SAG}
= según las lecturas de {wire}, llave {key}: {typed} V, y {typed_2} V con {load_A} A, hasta la toma {said} mΩ, {said_2} mΩ como máximo; {OWN_SAG}
"""
