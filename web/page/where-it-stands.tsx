// Where the vehicle stands, by the phone's own receiver: without it no sky can be predicted.
import { valueIn } from "../core/sheet.ts";
import { formWordsIn } from "../words/form-words.ts";
import { useShared } from "./context.ts";
import type { Change } from "./use-sheet.ts";

const PATIENCE_MS = 60_000; // a receiver without a line takes its time
const DEGREE_DIGITS = 6;
const TABLE = { name: "place" };

/** Asked only while the job sheet does not say it; with the position goes how well the phone knows it. */
export function WhereItStands({ sheet, onKnown }: { sheet: string; onKnown: (changes: readonly Change[]) => void }) {
  const { language, setFault } = useShared();
  const words = formWordsIn(language);
  if (valueIn(sheet, TABLE, "lat") !== null) return null;
  const known = ({ coords }: GeolocationPosition): void =>
    onKnown([
      { table: TABLE, key: "lat", value: Number(coords.latitude.toFixed(DEGREE_DIGITS)) },
      { table: TABLE, key: "lon", value: Number(coords.longitude.toFixed(DEGREE_DIGITS)) },
      { table: TABLE, key: "accuracy_m", value: Math.max(1, Math.ceil(coords.accuracy)) },
    ]);
  const ask = (): void =>
    navigator.geolocation.getCurrentPosition(known, (refusal) => setFault(words("no_position", { why: refusal.message })), {
      enableHighAccuracy: true,
      timeout: PATIENCE_MS,
    });
  return (
    <>
      <p class="say">{words("sky_nowhere")}</p>
      <button type="button" onClick={ask}>
        {words("take_here")}
      </button>
    </>
  );
}
