// The places that the unit could have: taken over, described or chosen, each with the sky that it leaves, before anything is fixed.
import { useState } from "preact/hooks";
import { asMeters } from "../core/figures.ts";
import { freeName, placesIn, renamedPlace, takenIn, withoutPlace, withPlace, withTaken, type Place } from "../core/places.ts";
import { valueIn } from "../core/sheet.ts";
import { Choice } from "../parts/choice.tsx";
import { OpenFile } from "../parts/open-file.tsx";
import { Pictures } from "../parts/pictures.tsx";
import { SkyOf } from "../parts/sky-of.tsx";
import { UsualPlace, usualPlaceOf } from "../parts/usual-place.tsx";
import { formWordsIn } from "../words/form-words.ts";
import { named } from "../words/words.ts";
import { useKeeping, useShared } from "./context.ts";
import { PLACE_ASKS } from "./forms/mount.ts";
import type { Around } from "./forms/offer.ts";
import { isSeat, SEATS, type Seat } from "./forms/places.ts";
import { PlaceFold } from "./place-fold.tsx";
import { Questions } from "./questions.tsx";
import type { OpenJob } from "./use-job.ts";
import { useSheet, type Change, type Sheet } from "./use-sheet.ts";
import { useSky, type Sky } from "./use-sky.ts";
import { WhereItStands } from "./where-it-stands.tsx";

interface Props {
  readonly id: string;
  readonly open: OpenJob;
  readonly around: Around;
  readonly job: Sheet;
}

export function MountPlaces({ id, open, around, job }: Props) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const keeping = useKeeping();
  const mount = useSheet(id, "mount", open);
  const sheet = mount.text ?? "";
  const { sky, behind } = useSky(sheet, around.jobSheet);
  const [edited, setEdited] = useState<string | null>(null);
  const places = placesIn(sheet);
  const write = (made: (before: string) => string, changes: readonly Change[] = []): void =>
    void keeping(async () => {
      await mount.rewrite(made);
      if (changes.length > 0) await job.change(changes);
    });
  const take = (place: Place): void => write((before) => withTaken(before, place.name), inJobSheet(place));
  const describe = (seat: Seat): void => {
    const name = freeName(sheet, words(seat));
    setEdited(name);
    write((before) => withPlace(before, { name, sits: seat }), places.length === 0 ? inJobSheet({ name, sits: seat }) : []);
  };
  const rename = (place: Place, typed: string): void => {
    const name = freeName(sheet, typed);
    setEdited(name);
    write((before) => renamedPlace(before, place.name, name), place.name === takenIn(sheet)?.name ? inJobSheet({ ...place, name }) : []);
  };
  if (mount.text === null) return null;
  const usual = usualPlaceOf(around, sheet);
  return (
    <section>
      <h2>{words("mount")}</h2>
      <p class="caution">{words("mount_caution")}</p>
      {usual && <UsualPlace offer={usual} onTake={() => write((before) => before || usual.sheet, usual.changes)} />}
      <Ranked sheet={sheet} sky={sky?.ok ? sky : null} onTake={take} />
      {places.length > 0 && <WhereItStands sheet={around.jobSheet} onKnown={(changes) => void keeping(() => job.change(changes))} />}
      {sky?.ok === false && (
        <p class="fault">
          {sky.error}
        </p>
      )}
      <OneSky open={open} sheet={sheet} sky={sky?.ok ? sky : null} behind={behind} />
      {places.map((place) =>
        isSeat(place.sits) ? (
          <PlaceFold
            key={place.name}
            seat={place.sits}
            name={place.name}
            sheet={sheet}
            figures={sky?.ok ? (sky.places.find(({ name }) => name === place.name)?.figures ?? []) : []}
            isOpen={edited === place.name}
            onAnswer={(changes) => void keeping(() => mount.change(changes))}
            onRename={(typed) => rename(place, typed)}
            {...(places.length > 1 ? { onTakeOut: () => write((before) => withoutPlace(before, place.name)) } : {})}
          />
        ) : null,
      )}
      <Describe first={places.length === 0 && usual === null} onSeat={describe} />
      <details class="single">
        <summary>{words("place_in_words")}</summary>
        <Questions asks={PLACE_ASKS.slice(0, 2)} which={null} sheet={around.sheet} onAnswer={(changes) => void keeping(() => job.change(changes))} />
      </details>
      <Questions asks={PLACE_ASKS.slice(2)} which={null} sheet={around.sheet} onAnswer={(changes) => void keeping(() => job.change(changes))} />
      <OpenFile kind="reception" open={open} />
    </section>
  );
}

/** What the job sheet says of a place that is taken; one that was measured does not say whether it is on the windscreen. */
function inJobSheet({ name, sits }: Place): Change[] {
  const place: Change = { table: { name: "mount" }, key: "place", value: name };
  return sits === null ? [place] : [place, { table: { name: "mount" }, key: "windscreen", value: sits === "screen" }];
}

/** The places, the best first once the engine has ranked them; a touch takes one. */
function Ranked({ sheet, sky, onTake }: { sheet: string; sky: Sky | null; onTake: (place: Place) => void }) {
  const { words: said, language } = useShared();
  const words = formWordsIn(language);
  const places = placesIn(sheet);
  if (places.length === 0) return null;
  const rank = (place: Place): number => sky?.places.findIndex(({ name }) => name === place.name) ?? -1;
  const options = [...places]
    .sort((one, other) => rank(one) - rank(other))
    .map((place) => {
      const found = sky?.places.find(({ name }) => name === place.name);
      const share = found && asMeters(Math.round(1000 * found.fix_share) / 10);
      const note = found && words("place_note", { share: share ?? "", used: String(found.satellites.median), verdict: named(said, "verdict", found.verdict) });
      return { value: place.name, label: place.name, note };
    });
  const taken = valueIn(sheet, { name: "" }, "chosen");
  return (
    <Choice
      legend={words("place_taken")}
      kind="list"
      options={options}
      value={typeof taken === "string" ? taken : null}
      onChange={(name) => onTake(places.find((place) => place.name === name) as Place)}
    />
  );
}

/** Predicted beside heard where something was heard there; else as predicted, of the place that was taken or of the best. */
function OneSky({ open, sheet, sky, behind }: { open: OpenJob; sheet: string; sky: Sky | null; behind: boolean }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const isHeard = open.said.some(({ kind }) => kind === "reception" || kind === "reports");
  if (isHeard && (takenIn(sheet) !== null || placesIn(sheet).length === 0)) return <Pictures open={open} names={["sky"]} />;
  if (sky) return <SkyOf svg={sky.svg} alt={sky.alt} caption={words("sky_predicted", { place: sky.shown })} behind={behind} />;
  return behind ? <p class="say">{words("sky_working")}</p> : null;
}

/** Where else it could sit: one touch adds the place, which then asks what is round it. */
function Describe({ first, onSeat }: { first: boolean; onSeat: (seat: Seat) => void }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const [asking, setAsking] = useState(first);
  if (!asking) {
    return (
      <button type="button" onClick={() => setAsking(true)}>
        {words(first ? "describe_place" : "another_place")}
      </button>
    );
  }
  const options = SEATS.map((seat) => ({ value: seat, label: words(seat) }));
  const chosen = (seat: Seat): void => {
    setAsking(false);
    onSeat(seat);
  };
  return <Choice legend={words("place_where")} kind="pair" options={options} value={null} onChange={chosen} />;
}
