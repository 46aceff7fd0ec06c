// One section of a form: what one touch may answer, the questions one by one, the photos.
import { text } from "../core/standing.ts";
import { probeTable } from "../core/probe-table.ts";
import { AtOnce } from "../parts/at-once.tsx";
import { Photos } from "../parts/photos.tsx";
import { formWordsIn } from "../words/form-words.ts";
import { useShared } from "./context.ts";
import type { Section } from "./forms/ask.ts";
import { changesOf, stillOpen, type Around, type Offer } from "./forms/offer.ts";
import { claimEntry } from "./probe-entries.ts";
import { Questions } from "./questions.tsx";
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
  const offers = (section.offers?.(around) ?? []).map((offer) => stillOpen(offer, around.sheet)).filter((offer): offer is Offer => offer !== null);
  const answer = (changes: readonly Change[]): void => onAnswer(changes, claimed(changes, open));
  const questions = <Questions asks={section.asks} which={null} sheet={around.sheet} onAnswer={answer} />;
  return (
    <section>
      <h2>{words(section.title)}</h2>
      {section.caution && <p class="caution">{words(section.caution)}</p>}
      {offers.map((offer) => (
        <AtOnce key={offer.word} offer={offer} onTake={() => answer(changesOf(offer))} />
      ))}
      {section.offers ? (
        <details class="single">
          <summary>{words("one_by_one")}</summary>
          {questions}
        </details>
      ) : (
        questions
      )}
      {section.photos?.map((shows) => (
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
