"""Spanish: what limits rest on."""

SENTENCES = """
# limits/batteries.py
a battery maker's table (BCI style) at 26.7 °C; a second published table for its uncertainty
= tabla de un fabricante de baterías (estilo BCI) a 26.7 °C; una segunda tabla publicada para su incertidumbre
a vehicle maker's table for AGM batteries; 0 % by its last step (our own model)
= tabla de un fabricante de vehículos para baterías AGM; 0 % por su último paso (nuestro propio modelo)
0.024 V for 10 °F as printed beside the rest-voltage table: the hydrometer's convention
= 0.024 V por 10 °F según lo impreso junto a la tabla de tensión en reposo: la convención del densímetro
a battery maker's table for discharges above an hour; -10 °C from a second maker
= tabla de un fabricante de baterías para descargas de más de una hora; -10 °C de un segundo fabricante
IEEE 485 table 1, turned into parts of the capacity
= IEEE 485 tabla 1, convertida en partes de la capacidad
battery power and engine demand by temperature as a battery seller prints them
= potencia de la batería y demanda del motor por temperatura, según las imprime un vendedor de baterías
a car maker's workshop manual: half the cold-cranking current for 15 s
= manual de taller de un fabricante de coches: la mitad de la corriente de arranque en frío durante 15 s
3 to 20 % a month as a battery maker prints it, 5 % likely; doubling for 10 °C
= de 3 a 20 % al mes según lo imprime un fabricante de baterías, lo probable 5 %; el doble por cada 10 °C
# limits/constellation.py
GPS SPS Performance Standard, 5th edition, April 2020, table 3.2-1, read in a secondary document
= GPS SPS Performance Standard, 5.ª edición, abril de 2020, tabla 3.2-1, leído en un documento secundario
# limits/crimps.py
least pull of a crimp for one minute, UL 486A level, as a maker of terminals prints it (114-2157, revision G)
= tracción mínima de un prensado durante un minuto, nivel UL 486A, según lo imprime un fabricante de terminales (114-2157, revisión G)
least pull of a crimp, MIL-T-7928 level, as a maker of terminals prints it (114-2157, revision G)
= tracción mínima de un prensado, nivel MIL-T-7928, según lo imprime un fabricante de terminales (114-2157, revisión G)
# limits/fuse_lookup.py
no blade fuse is of type '{fuse_type}': C (medium), E (high current) or F (miniature)
= ningún fusible de cuchilla es de tipo '{fuse_type}': C (medio), E (alta corriente) o F (miniatura)
{#ratings} to {#ratings_2} A
= {ratings} a {ratings_2} A
a fuse of {#rating_A} A: blade fuses of type {fuse_type} are made for {span}
= un fusible de {rating_A} A: los fusibles de cuchilla de tipo {fuse_type} se fabrican de {span}
# limits/fuses.py
ISO 8820-3:2015, breaking capacity of blade fuses at 32 V
= ISO 8820-3:2015, poder de corte de los fusibles de cuchilla a 32 V
data sheet of a 40 A type E fuse: its rating in hot surroundings
= hoja de datos de un fusible de 40 A de tipo E: su valor con entorno caliente
data sheet of 58 V type C fuses naming ISO 8820-3 (2012): at most 0.75 of the rating for good
= hoja de datos de fusibles de 58 V de tipo C que nombran ISO 8820-3 (2012): como máximo 0.75 del valor de forma continua
the wire carries 1.35 times its fuse; up to 135 % of its rating can last minutes or longer
= el cable lleva 1.35 veces su fusible; hasta 135 % de su valor puede durar minutos o más
hot surroundings behind a dashboard: 60 °C
= entorno caliente tras un salpicadero: 60 °C
the vehicle's fuse is 2 times the unit's or more, so that the unit's opens first
= el fusible del vehículo es 2 veces el de la unidad o más, para que abra primero el de la unidad
data sheet of 32 V type C fuses 3 to 40 A naming ISO 8820-3, 2010
= hoja de datos de fusibles de 32 V de tipo C de 3 a 40 A que nombran ISO 8820-3, 2010
data sheet of a 32 V 10 A type C fuse naming ISO 8820-3
= hoja de datos de un fusible de 32 V 10 A de tipo C que nombra ISO 8820-3
data sheet of 32 V type C fuses of 35 and 40 A naming ISO 8820-3
= hoja de datos de fusibles de 32 V de tipo C de 35 y 40 A que nombran ISO 8820-3
data sheet of 32 V type F fuses
= hoja de datos de fusibles de 32 V de tipo F
data sheet of 32 V type E fuses naming ISO 8820-3:2002
= hoja de datos de fusibles de 32 V de tipo E que nombran ISO 8820-3:2002
# limits/iso_16750_2.py
ISO 16750-2:2003 4.5.3, level I; read in a generator's test file, not in the standard
= ISO 16750-2:2003 4.5.3, nivel I; leído en el archivo de prueba de un generador, no en la norma
ISO 16750-2:2012 4.6.3, level II
= ISO 16750-2:2012 4.6.3, nivel II
ISO 16750-2:2012 4.6.3, level III
= ISO 16750-2:2012 4.6.3, nivel III
ISO 16750-2:2012 4.6.3, level IV
= ISO 16750-2:2012 4.6.3, nivel IV
ISO 16750-2:2012 4.6.3, level I
= ISO 16750-2:2012 4.6.3, nivel I
ISO 16750-2:2006 4.6.3, level III; read in a generator's test file, not in the standard
= ISO 16750-2:2006 4.6.3, nivel III; leído en el archivo de prueba de un generador, no en la norma
# limits/joints.py
voltage-drop test under load: ground at most 0.1 V
= prueba de caída con carga: masa como máximo 0.1 V
voltage-drop test under load: wire or cable at most 0.2 V
= prueba de caída con carga: cable como máximo 0.2 V
voltage-drop test under load: switch at most 0.3 V
= prueba de caída con carga: interruptor como máximo 0.3 V
more than 1.0 V lost in a whole circuit is a fault
= más de 1.0 V perdidos en todo un circuito es una avería
a good joint of small wire shows next to nothing under load; published advice says 0 V
= una buena unión de cable fino no muestra casi nada con carga; la recomendación publicada dice 0 V
NASA-STD-8739.4 10.1: bare wire between insulation and crimp barrel
= NASA-STD-8739.4 10.1: cable desnudo entre aislante y casquillo
NASA-STD-8739.4 10.1: bare wire at the crimp of 20 AWG and thinner
= NASA-STD-8739.4 10.1: cable desnudo en el prensado de 20 AWG y más fino
NASA-STD-8739.4 10.1: bare wire at the crimp of 18 AWG and thicker
= NASA-STD-8739.4 10.1: cable desnudo en el prensado de 18 AWG y más grueso
wire diameters
= diámetros del cable
NASA-STD-8739.4 19.6: length of a lap splice
= NASA-STD-8739.4 19.6: longitud de un empalme solapado
NASA-STD-8739.4 19: turns around each wire of a wrapped and soldered splice
= NASA-STD-8739.4 19: vueltas alrededor de cada cable de un empalme envuelto y soldado
tape goes 1 inch past the insulation on each side: an aircraft maker's wiring manual
= la cinta pasa 1 pulgada del aislante a cada lado: manual de cableado de un fabricante de aviones
sleeve goes over the insulation on each side
= el manguito pasa sobre el aislante a cada lado
# limits/lookup.py
no class of meters is called '{=name}': {join}
= ninguna clase de medidor se llama '{name}': {join}
# limits/materials.py
nothing in the way
= nada que estorbe
nothing is there
= no hay nada ahí
plastic without metal or carbon in it
= plástico sin metal ni carbono
USGS radome test: no measurable difference by 3.2 mm of polycarbonate; up to 1 dB allowed for
= ensayo de radomo del USGS: sin diferencia medible con 3.2 mm de policarbonato; se admite hasta 1 dB
glass-fibre panel, as of a roof fairing
= panel de fibra de vidrio, como el de un deflector de techo
thin dry laminate
= laminado fino y seco
cloth, foam, leather, a headliner without foil
= tela, espuma, cuero, un techo interior sin lámina
thin and dry
= fino y seco
plain glass without coating
= vidrio simple sin capa
Kjaergaard et al. 2010, citing NISTIR 6055
= Kjaergaard et al. 2010, que cita NISTIR 6055
glass with a dark film or paint, without metal
= vidrio con lámina o pintura oscura, sin metal
Kjaergaard et al. 2010: tinted or painted
= Kjaergaard et al. 2010: tintado o pintado
heat-reflecting or heated glass, metallised film
= vidrio que refleja el calor o calefactado, lámina metalizada
vehicle glass up to 15 dB (module maker's guide, 2015); coated building glass 30 dB (APSURSI 2008)
= vidrio de vehículo hasta 15 dB (guía de un fabricante de módulos, 2015); vidrio de edificio con capa 30 dB (APSURSI 2008)
wood or plywood
= madera o contrachapado
carbon-fibre panel
= panel de fibra de carbono
conducts nearly as metal does
= conduce casi como el metal
sheet metal, a metal mesh, foil
= chapa, una malla metálica, lámina
opaque: more than 30 dB
= opaco: más de 30 dB
# limits/meters.py
low-cost hand meter, 2 to 3 readings a second (from memory, unverified)
= medidor de mano económico, 2 a 3 lecturas por segundo (de memoria, sin verificar)
workshop meter: 1 ms MIN as published; accuracy as a low-cost meter (from memory, unverified)
= medidor de taller: MIN de 1 ms según lo publicado; exactitud como un medidor económico (de memoria, sin verificar)
professional hand meter, 4 readings a second (from memory, unverified)
= medidor de mano profesional, 4 lecturas por segundo (de memoria, sin verificar)
# limits/parked.py
two makers' workshop manuals of cars: modules time out within 20 min; a repair site waits 60
= manuales de taller de dos fabricantes de coches: los módulos se duermen en 20 min; un sitio de reparación espera 60
two batteries in series at rest; a tenth of the charge is 0.08 V
= dos baterías en serie en reposo; una décima de la carga son 0.08 V
# limits/practice.py
a constant supply while the starter turns
= una alimentación permanente mientras gira el motor de arranque
a constant supply while the starter turns, twice the 12 V figure
= una alimentación permanente mientras gira el motor de arranque, el doble del valor de 12 V
an ignition that stays true through the crank
= un contacto que sigue activo durante el arranque
an ignition that stays true through the crank, twice the 12 V figure
= un contacto que sigue activo durante el arranque, el doble del valor de 12 V
the trade says 0 V; a 10 MΩ meter shows stray volts on a dead wire
= el oficio dice 0 V; un medidor de 10 MΩ muestra voltios parásitos en un cable sin tensión
the trade says 0 V; a 10 MΩ meter shows stray volts on a dead wire; twice the 12 V figure
= el oficio dice 0 V; un medidor de 10 MΩ muestra voltios parásitos en un cable sin tensión; el doble del valor de 12 V
battery level with the engine off, a low but living battery
= nivel de batería con el motor parado, una batería baja pero viva
battery level with the engine off, a low but living battery, twice the 12 V figure
= nivel de batería con el motor parado, una batería baja pero viva, el doble del valor de 12 V
drop of the supply under a load of 1 to 2 A
= caída de la alimentación con una carga de 1 a 2 A
retained power has gone this long after key-off, doors shut
= una alimentación temporizada ya se fue este tiempo después de quitar la llave, puertas cerradas
ISO 16750-2 long-term overvoltage of a 12 V system, read in a secondary document
= sobretensión prolongada ISO 16750-2 de un sistema de 12 V, leído en un documento secundario
ISO 16750-2 long-term overvoltage of a 24 V system
= sobretensión prolongada ISO 16750-2 de un sistema de 24 V
meter leads are the right way round; allows for a ground offset
= las puntas del medidor están bien puestas; admite un desfase de masa
# limits/reception.py
a position at 95 of 100 moments, once there is one
= una posición en 95 de 100 momentos, una vez que la hay
start without any knowledge: receivers' data sheets give 30 to 60 s
= arranque sin ningún dato: las hojas de datos de receptores dan de 30 a 60 s
four make a position, five show that one is wrong, six can leave it out
= cuatro hacen una posición, cinco muestran que uno está mal, seis pueden dejarlo fuera
HDOP at half of all moments: good geometry
= HDOP en la mitad de los momentos: buena geometría
HDOP 4 goes with PDOP 6, the most that SPS PS 2020, 3.8.1, counts as usable (read second-hand)
= HDOP 4 corresponde a PDOP 6, lo máximo que SPS PS 2020, 3.8.1, cuenta como útil (leído de segunda mano)
lower end of an open sky's link budget, 35.5 to 43.5 dB-Hz behind a receiver's losses (ael.cbnu.ac.kr)
= extremo bajo del balance de enlace a cielo abierto, 35.5 a 43.5 dB-Hz tras las pérdidas de un receptor (ael.cbnu.ac.kr)
GPS SPS Performance Standard 2020, table 3.8-3: 95 % of positions, average over the world
= GPS SPS Performance Standard 2020, tabla 3.8-3: 95 % de las posiciones, media sobre el mundo
satellites of which the receiver speaks, in three quarters of the compass: fewer show no sector
= satélites de los que habla el receptor, en tres cuartos de la brújula: con menos no se ve un sector
# limits/sky.py
a fix needs 28 to 32 dB-Hz (manual of a GPS test set): the lower end
= una posición necesita de 28 a 32 dB-Hz (manual de un equipo de prueba GPS): el extremo bajo
a fix needs 28 to 32 dB-Hz (manual of a GPS test set): the middle
= una posición necesita de 28 a 32 dB-Hz (manual de un equipo de prueba GPS): el medio
a fix needs 28 to 32 dB-Hz (manual of a GPS test set): the upper end
= una posición necesita de 28 a 32 dB-Hz (manual de un equipo de prueba GPS): el extremo alto
GPS SPS Performance Standard 2020, 3.8.1: mask angle, read in secondary documents
= GPS SPS Performance Standard 2020, 3.8.1: ángulo de máscara, leído en documentos secundarios
GPS SPS Performance Standard 2020, 3.8.1, read in secondary documents
= GPS SPS Performance Standard 2020, 3.8.1, leído en documentos secundarios
GPS SPS Performance Standard 2020, table 3.8-1 (open sky, worst place on earth), read second-hand
= GPS SPS Performance Standard 2020, tabla 3.8-1 (cielo abierto, el peor lugar de la Tierra), leído de segunda mano
a broadcast almanac is some km off after two weeks (IS-GPS-200)
= un almanaque emitido se desvía algunos km tras dos semanas (IS-GPS-200)
after half a year satellites may have been moved or replaced
= tras medio año puede haber satélites movidos o sustituidos
# limits/vin.py
United States
= Estados Unidos
# limits/windscreen.py
49 CFR 393.60(e)(1)(ii) (87 FR 12596, 2022): vehicle safety technology below the upper edge of the swept area
= 49 CFR 393.60(e)(1)(ii) (87 FR 12596, 2022): tecnología de seguridad del vehículo bajo el borde superior del barrido
49 CFR 393.60(e)(1)(ii) (87 FR 12596, 2022): vehicle safety technology above the lower edge of the swept area
= 49 CFR 393.60(e)(1)(ii) (87 FR 12596, 2022): tecnología de seguridad del vehículo sobre el borde inferior del barrido
49 CFR 393.60(e)(1)(i): antennas below the upper edge of the windscreen and outside the swept area
= 49 CFR 393.60(e)(1)(i): antenas bajo el borde superior del parabrisas y fuera del barrido
# limits/wires.py
UL 1581 largest resistances by gauge, read in a secondary document
= resistencias máximas UL 1581 por calibre, leído en un documento secundario
strandings of SAE J1128 wire as one maker's data sheet of 2015 prints them
= hilos de cable SAE J1128 según los imprime la hoja de datos de 2015 de un fabricante
wire size conversion chart of a car maker's wiring diagrams, 1998
= tabla de conversión de secciones de los esquemas de un fabricante de coches, 1998
NFPA 70 chapter 9 table 8: seven strands have about 2 % more than solid, read in a secondary document
= NFPA 70 capítulo 9 tabla 8: siete hilos tienen un 2 % más que el macizo, leído en un documento secundario
IEC 60228 largest conductor resistance at 20 °C, read in secondary documents
= resistencia máxima del conductor IEC 60228 a 20 °C, leído en documentos secundarios
ISO 6722-1:2011 largest conductor resistance at 20 °C
= resistencia máxima del conductor ISO 6722-1:2011 a 20 °C
33 CFR 183.425 table 5: stranded copper on boats up to 50 V at 30 °C
= 33 CFR 183.425 tabla 5: cobre multifilar en barcos hasta 50 V a 30 °C
FAA AC 43.13-1B (2001) table 11-9: how much less wires thinner than 18 AWG carry
= FAA AC 43.13-1B (2001) tabla 11-9: cuánto menos llevan los cables más finos que 18 AWG
PVC rated 70 °C
= PVC para 70 °C
IEC 60364-5-54 table A.54.4, read in secondary documents
= IEC 60364-5-54 tabla A.54.4, leído en documentos secundarios
PVC rated 80 °C
= PVC para 80 °C
IEC 60364-5-54 Annex A formula from 80 °C to the 160 °C of other PVC
= IEC 60364-5-54 Anexo A, fórmula de 80 °C a los 160 °C de otro PVC
PVC rated 90 °C
= PVC para 90 °C
PVC rated 105 °C
= PVC para 105 °C
IEC 60364-5-54 Annex A formula from 105 °C to the 160 °C of other PVC
= IEC 60364-5-54 Anexo A, fórmula de 105 °C a los 160 °C de otro PVC
cross-linked polyethylene rated 90 °C
= polietileno reticulado para 90 °C
cross-linked polyethylene rated 125 °C
= polietileno reticulado para 125 °C
IEC 60364-5-54 Annex A formula from 125 °C to the 250 °C of other cross-linked insulation
= IEC 60364-5-54 Anexo A, fórmula de 125 °C a los 250 °C de otro aislante reticulado
# limits/cab.py
figures of a cab that nobody has measured
= valores de una cabina que nadie ha medido
{#value} ({#least} to {#most})
= {value} ({least} a {most})
on the overhead shelf
= en la repisa superior
in the roof lining
= en el revestimiento del techo
on top of the dash
= sobre el salpicadero
behind the dash panel
= detrás del panel del salpicadero
on the windscreen, near its upper edge
= en el parabrisas, cerca de su borde superior
another place
= otro lugar
"""
