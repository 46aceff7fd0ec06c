"""What the phone says where the engine names a file, a setting of a sheet or a command: there is none of them there."""

SENTENCES = """
# the end of a job
what is missing is not said: [[hand_over.missing]] with what, owed_by and until
= what is missing is not said: what, who owes it and until when
{what}: who owes it is not said (owed_by)
= {what}: who owes it is not said
{what}: until when is not said (until)
= {what}: until when is not said
why the job was abandoned is not said (why)
= why the job was abandoned is not said
what was undone is not said (undone = what was taken out again, {nothing})
= what was undone is not said: what was taken out again, or that nothing had been touched
what was restored is not said (restored = fuses put back, functions tested again, {nothing})
= what was restored is not said: fuses put back, functions tested again, or that nothing had been touched
put right what fails, or undo the work and end the job as abandoned; complete [hand_over]
= put right what fails, or undo the work and end the job as abandoned; complete the hand-over
write into [hand_over] of the job sheet what is not said
= complete the hand-over with what is not said
nothing shows that the unit works in the vehicle: the job has no finding of the stage 'prove'
= nothing shows that the unit works in the vehicle: the proof was not made
nothing says how this job ends; write it into job.toml, for example:\\n  [hand_over]\\n  end = "provisional"\\n  told_driver = "what the driver was told"\\n  [[hand_over.missing]]\\n  what = "one parked night"\\n  owed_by = "who"\\n  until = 2026-04-07
= nothing says how this job ends: say it at the hand-over
settle it; or end the job as provisional, saying who owes what until when, in place of [hand_over] in job.toml
= settle it; or end the job as provisional at the hand-over, saying who owes what until when
put the journal back from a copy; backprobe verify JOBDIR names what was altered
= tell the desk: the entries of this job were altered
# the job as a whole
job.toml names {=meter_file} for the meter's figures; they are not there
= the job names {meter_file} for the meter's figures; they are not on this phone
{=file} describes the place; the job sheet does not say where the vehicle stands
= the place is described; where the vehicle stands is not said
write lat and lon under [place] into job.toml: where the vehicle works, to a degree
= take this phone's position at the mount, or ask the desk to write down where the vehicle works
write where the vehicle stands into the job sheet: [place] lat, lon and accuracy_m
= ask the desk to write down where the vehicle stands
Where the vehicle stands is not known: give it with --at LAT,LON or in job.toml.
= Where the vehicle stands is not known.
decide which of them is the {slot}, and give lead = "{slot_2}" to that one alone
= decide which of them is the {slot}, and choose that one alone
{rival} is fit by its volts: name its circuit, and give it lead = "{slot}"
= {rival} is fit by its volts: name its circuit and choose it for the {slot}
no crank has been allowed: ask somebody who may allow it, and write who under [authority] (crank_by)
= no crank has been allowed: ask somebody who may allow it, and write who at the walkround
fetch the unit's reports from its server once it has had coverage, and put them into the job folder
= wait for the unit's reports, or open their file at the proof, once the unit has had coverage
write the unit's id into the job sheet: [unit] id
= ask the desk to write down how the reports name this unit
there is no {script}
= this is missing: {script}
key-script.csv
= key turns
reports.csv
= reports
lights.csv
= lights
readings.csv
= readings
say which with --unit-id, or as id under [unit] in job.toml
= ask the desk to write down which is this unit
volts, after_min, load_A: expected figures such as 12.30
= figures such as 12.30 are expected
after_s: expected seconds such as 41
= seconds such as 41 are expected
the job sheet holds no VIN
= the job has no VIN
write the VIN from the plate into the job sheet
= read the VIN from the plate at the walkround
write the serial number {=serial} into the job sheet
= ask the desk to write the serial number {serial} into the job sheet
# wires
do not use {=wire}; {found} in the job sheet
= do not use {wire}; {found}
stray volts vanish under a test lamp: measure it so and write load_A
= stray volts vanish under a test lamp: measure it so and give the lamp's current as load
read it without and with a load of about 1 to 2 A (a test lamp) at one key position; write the load as load_A
= read it without and with a load of about 1 to 2 A (a test lamp) at one key position; give the lamp's current as load
# joints
join it to {wire} and write that into [[joint]] of the job sheet
= join it to {wire} and say so at the joints
put the lead's name right in [[joint]] of the job sheet, or complete the unit's sheet
= ask the desk to put the lead's name right
complete [[joint]] of the job sheet: wire, place or end for each of them
= complete the joints: wire, place or end for each of them
complete {table} of the job sheet: {missing}
= complete the joints: {missing}
put a fuse {asked}into '{=lead}', close to the joint, and write it down as fuse_A
= put a fuse {asked}into '{lead}', close to the joint, and write it down
volts of the supply wire in a crank: a recording of it, or crank_level
= volts of the supply wire in a crank: a recording of it
length_m of '{=lead}', and its size in the unit's sheet
= length of '{lead}', and its size in the unit's sheet
drop_mV and load_A: millivolts from the unit's ground to the battery's negative post, under a known load
= the drop of the ground: millivolts from the unit's ground to the battery's negative post, under a known load
switched_negative: which side the battery switch is in
= which side the battery switch is in
idle_mA and transmit_mA, in the unit's sheet: by how much its current rises when it transmits
= in the unit's sheet, by how much its current rises when it transmits
switch the signal on and off, look for the unit's report of each, write down reported_on and reported_off
= switch the signal on and off, look for the unit's report of each, write down the times of both
[[input]] of {join}: no input of the unit's sheet, which has: {inputs}
= {join}: no input of the unit, which has: {inputs}
[[input]] of '{=input}': on_V and off_V
= volts of '{input}' when on and when off
of '{=input}' on_V
= volts of '{input}' when on
of '{=input}' off_V, or floats_off
= volts of '{input}' when off, or that it is open then
isolation of '{=input}', which follows {wires}: diode, relay or none
= what keeps {wires} apart on '{input}': diode, relay or nothing
diode of '{=input}': whether the relay's coil has a flyback diode
= whether the coil of the relay at '{input}' has a flyback diode
pull of '{=input}' in the unit's sheet, or pulled: the wire is open when off
= what pulls '{input}': the wire is open when off
of '{=lead}' right_way: whether the slot's live terminal feeds both fuses of the tap
= of '{lead}', whether the slot's live terminal feeds both fuses of the tap
of '{=lead}' tap_most_A: what tap and slot may carry in all, as printed on them
= of '{lead}', what tap and slot may carry in all, as printed on them
vehicle_load_A: what the tapped circuit carries without the unit
= what the tapped circuit carries without the unit
tap_drop_mV and tap_load_A: how much the tapped wire drops under a load
= how much the tapped wire drops under a load, and which load
drop_mV and drop_A across that joint
= the drop across that joint, and under which load
drop_mV and load_A under [ground]
= the drop of the ground, and under which load
[join] and [[joint]]
= the joints
method of '{=lead}'
= how '{lead}' was joined
pull_N of a sample crimp
= what pull a sample crimp stood
undo of '{=lead}': how the joint is taken out again
= how the joint of '{lead}' is taken out again
why_spliced: why '{=lead}' is neither at the body-builder connector nor on a fuse tap
= why '{lead}' is neither at the body-builder connector nor on a fuse tap
near_module of '{=lead}': whether the splice is near the module that the wire feeds
= whether the splice of '{lead}' is near the module that the wire feeds
behind: what is behind the panel where the self-tapping screw went
= what is behind the panel where the self-tapping screw went
strip_mm
= stripped length
overlap_mm
= overlap of the sleeve
strain_relief
= strain relief
drip_loop
= drip loop
cut_mm
= cut length
hottest_C
= how hot it gets there
bare_mm
= bare wire before the barrel
pull_N
= pull of a sample
near_module
= near the module
vehicle_fuse_A
= fuse of the vehicle's circuit
vehicle_load_A
= load of the vehicle's circuit
in_sight
= in sight
of '{=lead}' {parts}
= of '{lead}': {parts}
of the unused '{=lead}' {parts}
= of the unused '{lead}': {parts}
look up in 49 CFR 393.5 whether the device is vehicle safety technology, and write safety_technology = true; or take it off the windscreen
= look up in 49 CFR 393.5 whether the device is vehicle safety technology, and say so; or take it off the windscreen
of the windscreen top_mm or bottom_mm, and in_sight
= of the windscreen the distance from its swept area's edge, and whether the unit is in sight
# the place of the unit
the unit hears less than its place should give: see which way up it lies, look for metal, foil or coated glass that mount.toml does not name, and for what stood beside the vehicle
= the unit hears less than its place should give: see which way up it lies, look for metal, foil or coated glass that is not described, and for what stood beside the vehicle
{=file} names {count} places and not which was taken; '{place}' sees most
= {count} places are named and not which was taken; '{place}' sees most
write into {=file} which place was taken: chosen = "{=place}"
= say which place was taken, for example '{place}'
{=file}: what this fleet wants
= what this fleet wants
# the parked vehicle
write into the sheet how long it shall stand: wanted_days
= say how many days it shall stand
[battery] capacity_Ah, as printed on the battery
= the battery's capacity, as printed on it
[battery] rest_V, at the posts with no load
= the battery's volts at rest, at the posts with no load
[battery] hours_since_charge
= hours since the battery was charged
[parked] vehicle_drain_mA, measured without the unit once the vehicle sleeps
= the vehicle's own drain, measured without the unit once the vehicle sleeps
[parked] coldest_C, the coldest in which it must start
= the coldest in which it must start
the unit's sheet states neither sleep_mA nor idle_mA
= the unit's sheet states no current, asleep or idle
the unit's sheet states no stopped_interval_s
= the unit's sheet does not state how often it reports while parked
the unit's sheet states neither transmit_mA nor peak_A
= the unit's sheet states no current while transmitting
the unit's sheet states no sleep_mA: it is taken to stay awake at idle_mA
= the unit's sheet states no current asleep: it is taken to stay awake
the unit's sheet states no transmit_mA: its peak_A is taken
= the unit's sheet states no current while transmitting: its peak is taken
the unit's sheet states no report_s: {text} ({standing})
= the unit's sheet does not state how long a report takes: {text} ({standing})
{#count} battery of 12 V in series in a {#system_V} V system: count = {#series} is expected\\ncapacity_Ah is that of one; batteries side by side count as one with their capacities added
= {count} battery of 12 V in series in a {system_V} V system: {series} are expected\\nthe capacity is that of one; batteries side by side count as one with their capacities added
# the proof
turn the key through a script (backprobe prove --plan) and fetch the unit's reports
= take the planned key turns and wait for the unit's reports
turn the key through the script again (backprobe prove --plan)
= take the planned key turns again
Turn the key through the script again (backprobe prove --plan): {named} cannot be told.
= Take the planned key turns again: {named} cannot be told.
Turn the key through the script again: {named} was not reported.
= Take the planned key turns again: {named} was not reported.
Turn the key through the script again: the unit reported an ignition event for which there is no turn.
= Take the planned key turns again: the unit reported an ignition event for which there is no turn.
Coverage and the cellular antenna; then turn the key through the script again with the data light on.
= Coverage and the cellular antenna; then take the planned key turns again with the data light on.
Nothing on the wires: wait for the data light, then turn the key through the script again.
= Nothing on the wires: wait for the data light, then take the planned key turns again.
Nothing on the wires: hold each state longer (backprobe prove --plan), or set the unit to report ignition.
= Nothing on the wires: hold each state longer, or set the unit to report ignition.
write the unit's currents, idle_mA and transmit_mA, into its sheet
= ask the desk to write the unit's currents, idle and transmitting, into its sheet
The reports have no unit_id: all were taken for the job's unit.
= The reports do not name a unit: all were taken for the job's unit.
the reports have no received_at
= the reports do not say when they were received
An on-delay of about 18 s more than usual may be GPS time (gps_time): only received_at can tell.
= An on-delay of about 18 s more than usual may be GPS time: only the times of receipt can tell.
That not_live_in_crank is not named proves nothing: the off-delay is not known, {said}.
= That no loss of ignition in the crank is named proves nothing: the off-delay is not known, {said}.
That not_live_in_crank is not named proves nothing: off is reported only after {#value_s} s, {said}. Read the wire in a crank with the meter's MIN hold.
= That no loss of ignition in the crank is named proves nothing: off is reported only after {value_s} s, {said}. Read the wire in a crank with the meter's MIN hold.
supply_V: the level is mostly the unit's own diode and converter; the change from idle to transmitting is joint and lead
= the level of the supply is mostly the unit's own diode and converter; the change from idle to transmitting is joint and lead
# the walkround
touch nothing until somebody who may has allowed the work; write who under [authority] (work_by)
= touch nothing until somebody who may has allowed the work; write who at the walkround
ask somebody who may allow a crank, and write who under [authority] (crank_by)
= ask somebody who may allow a crank, and write who at the walkround
look up in the maker's instructions how long after key-off the switch must stay closed (after_run_min)
= look up in the maker's instructions how long after key-off the switch must stay closed, and write it down
follow the cable from the switch: battery_switch_side = "positive" or "negative"
= follow the cable from the switch: is it in the positive or the negative side?
key on before anything is touched: write lamps, codes and odometer under [before], and photograph the dash
= key on before anything is touched: write down lamps, codes and odometer at the walkround, and photograph the dash
when the work is done, key on: write lamps, codes and odometer under [after], and photograph the dash
= when the work is done, key on: write down lamps, codes and odometer at the hand-over, and photograph the dash
find out what set it before the vehicle goes back, put it right, and write [after] anew
= find out what set it before the vehicle goes back, put it right, and write the condition after the work anew
say why under [after] (explained): a code that was cleared can no longer be looked into
= say why at the hand-over: a code that was cleared can no longer be looked into
look, and answer each with true or false under [hazards]
= look, and answer each at the walkround
look again, and put sheet or walkround right
= look again, and put the walkround right or tell the desk
stop: make sure which vehicle this is, and put sheet and walkround right
= stop: make sure which vehicle this is; put the walkround right or tell the desk
ask a licensed person where low-voltage work may be done, and write who (high_voltage_by)
= ask a licensed person where low-voltage work may be done, and write who
work elsewhere, or follow the maker's procedure and write which it was (restraint_procedure)
= work elsewhere, or follow the maker's procedure and write which it was
write who holds the key (key_with)
= write who holds the key
look behind the dash, under the seats and at the batteries for another unit or an alarm; write it under [devices]
= look behind the dash, under the seats and at the batteries for another unit or an alarm; write down what you found
ask whoever may say so, and write who consented (consent)
= ask whoever may say so, and write who consented
write fate = "left" or "removed"
= say whether it was left or removed
see that the unit is activated (activated)
= see that the unit is activated, and say so
write firmware and firmware_wanted under [unit]
= write down which firmware the unit has and which is wanted
measure its backup battery (backup_V); backup = false for a unit without one
= measure its backup battery, or say that the unit has none
write the lowest voltage that the unit's maker allows (backup_least_V)
= write down the lowest voltage that the unit's maker allows
there is no walkround.toml: authority, identity, devices fitted before, condition, unit on the bench and hazards are not written down
= the walkround was not made: authority, identity, devices fitted before, condition, unit on the bench and hazards are not written down
walk round the vehicle before anything is touched, and write walkround.toml
= do the walkround before anything is touched
put the photos into the job folder, under photos/, or take their names out of walkround.toml
= take the photos again
copy the photo again from the camera, or take it again
= take the photo again
compare the plate at the windscreen or the door frame with the job sheet
= compare the plate at the windscreen or the door frame with the job
"""
