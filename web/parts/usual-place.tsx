// The place as in the last vehicle of the type, by one touch: what it says stands above the button.
import { placesIn, takenIn } from "../core/places.ts";
import { valueIn } from "../core/sheet.ts";
import { useShared } from "../page/context.ts";
import type { Around } from "../page/forms/offer.ts";
import type { Change } from "../page/use-sheet.ts";
import { formWordsIn } from "../words/form-words.ts";

export interface UsualPlaceOffer {
  readonly from: string;
  readonly place: string;
  readonly windscreen: boolean | null;
  readonly looked: readonly string[]; // all places of the sheet
  readonly sheet: string; // of places; empty where that vehicle has none
  readonly changes: readonly Change[]; // of the job sheet
}

/** What can be taken over; null where nothing can, or somebody has said where the unit sits. */
export function usualPlaceOf({ usual, sheet: jobSheet }: Around, mount: string): UsualPlaceOffer | null {
  const table = { name: "mount" };
  if (usual === null || mount !== "" || valueIn(jobSheet, table, "place") !== null) return null;
  const theirs = usual.mount ?? "";
  const taken = takenIn(theirs);
  const place = taken?.name ?? valueIn(usual.job, table, "place");
  if (typeof place !== "string") return null;
  const said = valueIn(usual.job, table, "windscreen");
  const windscreen = typeof said === "boolean" ? said : taken?.sits ? taken.sits === "screen" : null;
  const changes = [{ table, key: "place", value: place }, ...(windscreen === null ? [] : [{ table, key: "windscreen", value: windscreen }])];
  const looked = placesIn(theirs).map(({ name }) => name);
  return { from: usual.from, place, windscreen, looked, sheet: theirs, changes: changes.map((one) => ({ ...one, only: "unsaid" as const })) };
}

export function UsualPlace({ offer, onTake }: { offer: UsualPlaceOffer; onTake: () => void }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  return (
    <div class="at-once">
      <dl class="given">
        <div>
          <dt>{words("mount_place")}</dt>
          <dd>{offer.place}</dd>
        </div>
        {offer.looked.length > 1 && (
          <div>
            <dt>{words("places_as_usual")}</dt>
            <dd>{offer.looked.join(", ")}</dd>
          </div>
        )}
        {offer.windscreen !== null && (
          <div>
            <dt>{words("windscreen")}</dt>
            <dd>{words(offer.windscreen ? "yes" : "no")}</dd>
          </div>
        )}
      </dl>
      <button type="button" class="wide" onClick={onTake}>
        {words("as_usual", { vehicle: offer.from })}
      </button>
    </div>
  );
}
