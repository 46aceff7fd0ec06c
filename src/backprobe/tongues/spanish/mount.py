"""Spanish: the sky from a place."""

SENTENCES = """
# stages/mount/beside.py
the unit hears less than its place should give: see which way up it lies, look for metal, foil or coated glass that mount.toml does not name, and for what stood beside the vehicle
= la unidad oye menos de lo que debería dar su sitio: mire qué cara queda arriba, busque metal, lámina o vidrio con capa que mount.toml no nombra, y qué había junto al vehículo
{len} reports of the unit
= {len} informes de la unidad
Heard from '{name}', beside what was predicted
= Lo oído desde '{name}', junto a lo previsto
heard: {heard}; predicted for GPS alone: {predicted}
= oído: {heard}; previsto solo con GPS: {predicted}
predicted for this place: the HDOP that is kept for 95 % of a day at the worst heading
= previsto para este sitio: el HDOP que se mantiene el 95 % de un día con el peor rumbo
{#used} satellites half the time
= {used} satélites la mitad del tiempo
{#hdop_low} to {#hdop_high} in eight of ten
= {hdop_low} a {hdop_high} en ocho de diez
HDOP {#hdop} half the time, {spread} ({source})
= HDOP {hdop} la mitad del tiempo, {spread} ({source})
no fix for half the day
= sin posición durante medio día
HDOP {#hdop_median} for half the day
= HDOP {hdop_median} durante medio día
none for 95 % of it
= ninguna durante el 95 % de él
{#hdop_p95} for 95 % of it
= {hdop_p95} durante el 95 % de él
{half}, {most}, {median} satellites
= {half}, {most}, {median} satélites
# stages/mount/findings.py
GPS alone is reckoned with; a unit that hears other systems too does better.
= Se cuenta solo con GPS; una unidad que oye también otros sistemas lo hace mejor.
The sky from '{name}'
= El cielo desde '{name}'
% of the day
= % del día
{file} names {len} places and not which was taken; '{name}' sees most
= {file} nombra {len} sitios y no dice cuál se tomó; '{name}' es el que más ve
write into {=file} which place was taken: chosen = "{=name}"
= anote en {file} qué sitio se tomó: chosen = "{name}"
{least} satellite{s} at least
= {least} satélite{s} como mínimo
{heading}: {quality_words} for {#usual} % of 24 hours, {half}, {least} and {median} for half the day; in the way: {in_the_way}
= {heading}: {quality_words} durante el {usual} % de 24 horas, {half}, {least} y {median} durante medio día; estorba: {in_the_way}
at the worst heading, {#worst_heading_deg}°
= con el peor rumbo, {worst_heading_deg}°
take '{name}' instead: {#usual} % of the day
= tome en su lugar '{name}': {usual} % del día
before anything is fixed, let the unit lie there powered for ten minutes and judge what it hears
= antes de fijar nada, deje la unidad ahí alimentada diez minutos y juzgue lo que oye
look for a place behind glass without coating: many coated windscreens leave a patch free at the mirror
= busque un sitio tras vidrio sin capa: muchos parabrisas con capa dejan una zona libre junto al espejo
look for a place with glass or plastic above it instead of metal
= busque un sitio con vidrio o plástico encima en lugar de metal
# stages/mount/nominal.py
nominal constellation
= constelación nominal
# stages/mount/picture.py
The sky from '{name}', heading {#heading}°
= El cielo desde '{name}', rumbo {heading}°
{verdict}: a good fix for {#share} % of 24 hours.
= {verdict}: una buena posición durante el {share} % de 24 horas.
The heading is the worst one.
= El rumbo es el peor.
{told} Losses with what bends round edges.
= {told} Pérdidas contando lo que se curva en los bordes.
# stages/mount/wanted.py
PDOP {#pdop_most} or less
= PDOP {pdop_most} o menos
HDOP {#hdop_most} or less
= HDOP {hdop_most} o menos
four satellites
= cuatro satélites
{=file}: what this fleet wants
= {file}: lo que quiere esta flota
# stages/mount/findings.py
distances by choice, not measured: {basis}
= distancias elegidas, no medidas: {basis}
"""
