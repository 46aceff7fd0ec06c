// Another phone has written the same sheet beside this one: that is said, with what differs; which of them holds the lead decides.
import { useEffect, useState } from "preact/hooks";
import { differences } from "../core/sheet-differences.ts";
import type { Value } from "../core/sheet.ts";
import { text } from "../core/standing.ts";
import { useShared } from "../page/context.ts";
import { inUnits, type Ask } from "../page/forms/ask.ts";
import type { OpenJob } from "../page/use-job.ts";
import type { SheetKind } from "../page/use-sheet.ts";
import { textOf } from "../store/blobs.ts";
import { formWordsIn, isFormWord } from "../words/form-words.ts";
import { saidOf, withoutMark } from "./said.tsx";

interface Props {
  readonly open: OpenJob;
  readonly kind: SheetKind;
  readonly sheet: string; // the one that is shown
  readonly asks: readonly Ask[];
}

export function OtherSheets({ open, kind, sheet, asks }: Props) {
  const { language, units } = useShared();
  const words = formWordsIn(language);
  const others = useOthers(open, kind);
  if (others.length === 0) return null;
  const found = others.flatMap((other) => differences(sheet, other));
  const named = (table: string, key: string): Ask | undefined => asks.map((ask) => inUnits(ask, units, sheet)).find((ask) => ask.table === table.split(" ")[0] && ask.key === key);
  const said = (ask: Ask | undefined, value: Value | null): string => (value === null ? "–" : ask ? saidOf(ask, value, { words, units }) : String(value));
  return (
    <aside class="fault" role="note">
      <p>{words("other_sheet")}</p>
      <ul class="differs">
        {found.map(({ table, key, here, there }) => {
          const ask = named(table, key);
          const name = ask ? words(ask.word) : isFormWord(key) ? words(key) : `${table}.${key}`;
          return (
            <li key={`${table}.${key}.${String(there)}`}>
              {withoutMark(name)} {words("here_there", { here: said(ask, here), there: said(ask, there) })}
            </li>
          );
        })}
      </ul>
    </aside>
  );
}

/** The texts of the other sheets of that kind that stand. */
function useOthers(open: OpenJob, kind: SheetKind): readonly string[] {
  const [texts, setTexts] = useState<readonly string[]>([]);
  useEffect(() => {
    const digests = open.said.filter((one) => one.kind === kind).map((one) => text(one.body, "sha256"));
    const last = digests.at(-1);
    void (async () => {
      const read = await Promise.all([...new Set(digests)].filter((digest) => digest !== last).map(textOf));
      setTexts(read.filter((one): one is string => one !== null));
    })();
  }, [open.said]);
  return texts;
}
