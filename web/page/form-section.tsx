// One section of a form: what one touch may answer, the questions one by one, the photos.
import { text } from "../core/standing.ts";
import { probeTable } from "../core/probe-table.ts";
import { isAsked, Photos } from "../parts/photos.tsx";
import { formWordsIn } from "../words/form-words.ts";
import { AskGroup } from "./ask-group.tsx";
import { useShared } from "./context.ts";
import type { Section } from "./forms/ask.ts";
import type { Around } from "./forms/offer.ts";
import { claimEntry } from "./probe-entries.ts";
import type { NewEntry, OpenJob } from "./use-job.ts";
import type { Answer, Change } from "./use-sheet.ts";

interface Props {
  readonly section: Section;
  readonly open: OpenJob;
  readonly around: Around;
  readonly onAnswer: Answer;
}

export function FormSection({ section, open, around, onAnswer }: Props) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const answer = (changes: readonly Change[]): void => onAnswer(changes, claimed(changes, open));
  return (
    <section>
      <h2>{words(section.title)}</h2>
      {section.caution && <p class="caution">{words(section.caution)}</p>}
      <AskGroup asks={section.asks} offers={section.offers?.(around) ?? []} rare={section.rare?.(around) ?? []} expected={section.expected?.(around) ?? {}} sheet={around.sheet} onAnswer={answer} />
      {section.photos?.filter(isAsked).map((shows) => (
        <Photos key={shows} shows={shows} open={open} />
      ))}
    </section>
  );
}

/** VIN and serial are claimed for the job, too, where its sheet does not name any: then they are checked as its own. */
function claimed(changes: readonly Change[], open: OpenJob): NewEntry[] {
  const table = probeTable(open.said);
  const job = open.said.findLast((one) => one.kind === "job");
  return changes.flatMap(({ table: { name }, key, value }) => {
    const slot = `${name}.${key}` === "vehicle.vin" ? "vin" : `${name}.${key}` === "unit.serial" ? "serial" : null;
    if (slot === null || typeof value !== "string" || !job || text(job.body, slot) !== "") return [];
    return table.claims.get(slot)?.values.includes(value) ? [] : [claimEntry(slot, value, table.claims.get(slot))];
  });
}
