// What one touch may answer of the joints: as on the last vehicle of the type, and what a hand has seen on all of them.
import type { Value } from "../../core/sheet.ts";
import { valueIn, valuesIn } from "../../core/sheet.ts";
import type { Settings } from "../../store/settings.ts";
import type { Usual } from "../../store/usual.ts";
import type { Verdict } from "../judgement.ts";
import type { Ask } from "./ask.ts";
import { CIRCUIT, GROUND_DROP, JOINT, STANDING, type JointKey } from "./join.ts";
import type { Given, Offer } from "./offer.ts";

/** A lead of the unit, by its sheet. */
export interface Lead {
  readonly name: string;
  readonly purpose: string;
  readonly colour: string;
  readonly fuse_A: number | null;
}

/** The wire of this vehicle that was chosen for a lead, and where it is found. */
export interface Tap {
  readonly wire: string;
  readonly connector: string;
  readonly cavity: string;
}

/** What offers go by. */
export interface Joining {
  readonly sheet: string;
  readonly leads: readonly Lead[];
  readonly taps: Readonly<Record<string, Tap>>; // by what the lead is for
  readonly usual: Usual | null;
  readonly last: Usual | null; // of whatever type: what this phone joined last
  readonly atBody: readonly string[] | null; // wires at a body-builder connector, by the engine; null before it has spoken
  readonly leadsStand: Readonly<Record<string, Verdict>>; // by the engine; empty before it has spoken
  readonly lamp: Settings["lamp"] | null; // of the person's test lamp, as the probe uses it; null where nobody has said so yet
}

const FED = ["supply", "ignition"];
const CHOSEN: readonly JointKey[] = ["method", "fuse_type", "tap_most_A", "near_module", "length_m", "strip_mm", "overlap_mm"];
const HABITS: readonly JointKey[] = ["method", "strip_mm", "overlap_mm"];
const CRIMPED = ["crimped_butt", "ring_terminal"];
const APART_MM = 20; // of ends that are not used: twice of what is asked for
const FIRST_CUT_MM = 60;

export function leadsIn(unitSheet: string): Lead[] {
  return valuesIn(unitSheet, "lead", "name").map((name) => {
    const said = (key: string): Value | null => valueIn(unitSheet, { name: "lead", where: { key: "name", value: name } }, key);
    const fuse = said("fuse_A");
    return { name, purpose: String(said("purpose") ?? ""), colour: String(said("colour") ?? ""), fuse_A: typeof fuse === "number" ? fuse : null };
  });
}

const jointIn = (sheet: string, lead: string, key: JointKey): Value | null => valueIn(sheet, { name: "joint", where: { key: "lead", value: lead } }, key);

/** An answer, where there is one. */
const given = (ask: Ask, value: Value | null, lead?: string): Given[] => (value === null ? [] : [{ ask, value, ...(lead ? { which: { key: "lead", value: lead } } : {}) }]);

/** All joints as on the last vehicle of the type, each at this vehicle's own wire; null where there was none. */
export function asBefore(joining: Joining): Offer | null {
  const { usual, leads } = joining;
  if (usual === null) return null;
  const answers = [...leads.flatMap((lead) => chosenBefore(joining, usual, lead)), ...circuitBefore(joining, usual)];
  return answers.length > 0 ? { word: "joined_as", from: usual.from, given: answers } : null;
}

function chosenBefore({ sheet, taps }: Joining, usual: Usual, lead: Lead): Given[] {
  if (!valuesIn(usual.job, "joint", "lead").includes(lead.name)) return [];
  const isFed = FED.includes(lead.purpose);
  const isUsed = isFed || lead.purpose === "ground" || jointIn(sheet, lead.name, "wire") !== null;
  if (!isUsed) return [];
  const before = (key: JointKey): Value | null => jointIn(usual.job, lead.name, key);
  const tap = taps[lead.purpose] ?? null;
  return [
    ...(isFed ? given(JOINT.wire, tap?.wire ?? null, lead.name) : []),
    ...given(JOINT.fuse_A, lead.fuse_A ?? before("fuse_A"), lead.name),
    ...CHOSEN.flatMap((key) => given(JOINT[key], before(key), lead.name)),
    ...(isFed ? alikeAt(usual, lead, tap) : (["place", "undo"] as const).flatMap((key) => given(JOINT[key], before(key), lead.name))),
  ];
}

/** Where the joint is and how it is taken out again, in words that name this vehicle's own wire. */
function alikeAt(usual: Usual, lead: Lead, tap: Tap | null): Given[] {
  const [place, undo, wire] = (["place", "undo", "wire"] as const).map((key) => jointIn(usual.job, lead.name, key));
  const isThere = sameTap(usual, lead.purpose, tap);
  const put = typeof undo === "string" && typeof wire === "string" && undo.includes(wire) ? (tap ? undo.replaceAll(wire, tap.wire) : null) : undo;
  return [...(isThere ? given(JOINT.place, place ?? null, lead.name) : []), ...given(JOINT.undo, put ?? null, lead.name)];
}

/** Whether this vehicle is tapped at the same connector and cavity as the last one was. */
function sameTap(usual: Usual, purpose: string, tap: Tap | null): boolean {
  const named = valuesIn(usual.job, "wire", "name").find((name) => wireIn(usual.job, name, "lead") === purpose);
  if (named === undefined || tap === null) return false;
  if (tap.connector === "") return named === tap.wire;
  return wireIn(usual.job, named, "connector") === tap.connector && wireIn(usual.job, named, "cavity") === tap.cavity;
}

const wireIn = (sheet: string, name: string, key: string): Value | null => valueIn(sheet, { name: "wire", where: { key: "name", value: name } }, key);

/** The tapped circuit's own fuse and load, where it is the same circuit. */
function circuitBefore({ taps }: Joining, usual: Usual): Given[] {
  if (!sameTap(usual, "supply", taps["supply"] ?? null)) return [];
  return Object.values(CIRCUIT).flatMap((ask) => given(ask, valueIn(usual.job, { name: "join" }, ask.key)));
}

/** On the first vehicle of a type: its own wires, the fuses of the unit's sheet, method and strip as this phone had them last. */
export function asFirst({ leads, taps, usual, last }: Joining): Offer | null {
  if (usual !== null) return null;
  const answers = leads.filter(({ purpose }) => FED.includes(purpose) || purpose === "ground").flatMap((lead) => {
    const habits = HABITS.flatMap((key) => given(JOINT[key], last ? jointIn(last.job, lead.name, key) : null, lead.name));
    const method = lead.purpose === "ground" ? given(JOINT.method, "ring_terminal", lead.name) : [];
    const wire = taps[lead.purpose]?.wire ?? null;
    return [...given(JOINT.wire, wire, lead.name), ...given(JOINT.fuse_A, lead.fuse_A, lead.name), ...(habits.some(({ ask }) => ask.key === "method") ? habits : [...method, ...habits])];
  });
  if (answers.length === 0) return null;
  return last ? { word: "joined_as_last", from: last.from, given: answers } : { word: "joined_first", from: null, given: answers };
}

const PARTED = ["wrapped_splice", "crimped_butt", "soldered_sleeve", "tap_connector"];

/** Whether a lead was spliced into the vehicle's own wiring, at no body-builder connector: then the engine asks why, and where. */
export function isSpliced({ sheet, taps, atBody }: Joining, lead: Lead): boolean {
  const tap = taps[lead.purpose];
  return atBody !== null && FED.includes(lead.purpose) && PARTED.includes(String(jointIn(sheet, lead.name, "method"))) && !atBody.includes(tap?.wire ?? "");
}

/** What is seen on every joint that is made: one touch says each of these, and names them. */
export function seenOnAll({ sheet, leads, usual, last }: Joining): Offer | null {
  const made = leads.filter(({ name }) => jointIn(sheet, name, "method") !== null);
  const answers = made.flatMap(({ name }) => {
    const method = String(jointIn(sheet, name, "method"));
    const sample = CRIMPED.includes(method) ? (pulled(usual, name, method) ?? pulled(last, name, method)) : null;
    return [
      ...given(JOINT.tugged, true, name),
      ...given(JOINT.strain_relief, true, name),
      ...(usual && jointIn(usual.job, name, "damp") === true ? [] : given(JOINT.damp, false, name)), // where it got damp before, it is asked
      ...given(JOINT.pull_N, sample, name),
      ...(method === "fuse_tap" ? given(JOINT.right_way, true, name) : []),
    ];
  });
  const isDry = made.every(({ name }) => jointIn(sheet, name, "damp") !== null || answers.some(({ ask, which }) => ask.key === "damp" && which?.value === name));
  return answers.length > 0 ? { word: isDry ? "joints_seen" : "joints_tugged", from: null, given: answers } : null;
}

/** What a sample of the same crimp stood: it belongs to the tool and the terminal, not to the vehicle. */
const pulled = (before: Usual | null, lead: string, method: string): Value | null => (before && jointIn(before.job, lead, "method") === method ? jointIn(before.job, lead, "pull_N") : null);

/** The leads that are not used: each cut to a length of its own, capped, tied back. */
export function leftOver({ sheet, leads, usual }: Joining): Offer | null {
  const isJoined = (name: string): boolean => jointIn(sheet, name, "wire") !== null || (usual !== null && jointIn(usual.job, name, "wire") !== null);
  const left = leads.filter(({ purpose, name }) => !FED.includes(purpose) && purpose !== "ground" && !isJoined(name));
  if (left.length === 0) return null;
  const before = left.map(({ name }) => (usual ? jointIn(usual.job, name, "cut_mm") : null));
  const isApart = before.every((one, at) => typeof one === "number" && before.every((other, to) => to === at || Math.abs(one - Number(other)) >= APART_MM / 2));
  const cut = (at: number): Value | null => (isApart ? (before[at] ?? null) : left.length > 1 ? FIRST_CUT_MM + at * APART_MM : null);
  const answers = left.flatMap(({ name }, at) => [...given(JOINT.cut_mm, cut(at), name), ...given(JOINT.capped, true, name), ...given(JOINT.tied_back, true, name)]);
  return { word: left.length > 1 ? "left_over" : "left_over_one", from: null, given: answers };
}

/** The load that drops are read under: what the job holds, else the person's lamp, else that of a vehicle before; null where there is no lamp. */
export function usualLoad({ sheet, lamp, usual, last }: Joining): Value | null {
  const loadIn = (job: string | undefined): Value | null => valueIn(job ?? "", { name: GROUND_DROP.load.table }, GROUND_DROP.load.key);
  const amperes = lamp === null ? NaN : Number(lamp);
  const chosen = amperes > 0 ? amperes : lamp === null ? (loadIn(usual?.job) ?? loadIn(last?.job)) : null;
  return loadIn(sheet) ?? chosen;
}

/** A reading of the battery's volts with the key off, on the wire that the supply takes. */
export interface KeyOff {
  readonly wire: string;
  readonly volts: string;
}

/** For how long it can stand: the battery's kind and what is wanted as before, its volts as they were read already. */
export function standingBefore({ usual }: Joining, keyOff: KeyOff | null): Offer[] {
  const of = (ask: Ask): Given[] => given(ask, usual ? valueIn(usual.job, { name: ask.table }, ask.key) : null);
  const chosen = [STANDING.kind, STANDING.capacity_Ah, STANDING.coldest_C, STANDING.starts_to_C, STANDING.wanted_days].flatMap(of);
  const read = keyOff ? given(STANDING.rest_V, keyOff.volts) : [];
  return [
    ...(usual && chosen.length > 0 ? [{ word: "standing_as" as const, from: usual.from, given: chosen }] : []),
    ...(keyOff && read.length > 0 ? [{ word: "rest_as_read" as const, from: keyOff.wire, given: read }] : []),
  ];
}
